import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { CodeActionTriggerKind, type CodeAction } from 'vscode-languageserver/node.js';
import { withPosition } from '../cursor.ts';
import { Client } from './client.ts';

const JOB = (drawn: string): string => `job "Small patio" { rules britain }
site { soil common-earth, benchmark step, ground level with step }
unit block { size 200 x 100 x 60 mm }
area patio {
${drawn}
  traffic foot
  finish  level with step
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
`;

let folder: string;
let client: Client;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-offers-'));
  client = new Client();
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

async function actions(
  drawn: string,
  triggerKind: CodeActionTriggerKind = CodeActionTriggerKind.Invoked,
  only?: readonly string[]
): Promise<CodeAction[]> {
  const { text, position } = withPosition(JOB(drawn));
  const uri = pathToFileURL(path.join(folder, 'job.paving')).href;
  await client.open(uri, text);
  return client.ask<CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri },
    range: { start: position, end: position },
    context: { diagnostics: [], triggerKind, ...(only === undefined ? {} : { only }) }
  });
}

const PAVING = '  outline rectangle 1.045 x 0.52 m\n  pav‸ing  block in stack-bond, joints 5 mm from 5 mm to 5 mm';

test('a quick fix with its edit, for whoever opens the menu', async () => {
  const [inboard, ...more] = await actions(PAVING, CodeActionTriggerKind.Invoked, ['quickfix']);
  expect(more).toEqual([]);
  expect([inboard!.title, inboard!.kind]).toEqual([
    'Cut two units where a course would end in less than 50 mm: 5 more cuts, 5 fewer slivers, narrowest piece 100 mm instead of 20 mm, 0.5 m more sawing',
    'quickfix'
  ]);
  expect(Object.values(inboard!.edit!.changes!).flat()).toEqual([
    { range: { start: { line: 5, character: 60 }, end: { line: 5, character: 60 } }, newText: '\n  inboard-cuts 50 mm' }
  ]);
});

test('sizes at the outline', async () => {
  const titles = (
    await actions('  outline rectangle ‸1.045 x 0.515 m\n  paving  block in stack-bond, joints 5 mm')
  ).map(({ title }) => title);
  expect(titles).toContain('Make it 1.02 x 0.52 m: no cuts');
  expect(titles).toContain('Make it 1.225 x 0.52 m: no cuts');
});

test('not at every move of the cursor, and not where other kinds are asked for', async () => {
  expect(await actions(PAVING, CodeActionTriggerKind.Automatic)).toEqual([]);
  expect(await actions(PAVING, CodeActionTriggerKind.Invoked, ['refactor.extract'])).toEqual([]);
});
