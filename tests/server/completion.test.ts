// Completion as an editor asks for it.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { CompletionItem, CompletionList } from 'vscode-languageserver/node.js';
import { withPosition } from '../cursor.ts';
import { Client } from './client.ts';

let folder: string;
let client: Client;
const at = (name: string): string => pathToFileURL(path.join(folder, name)).href;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-completion-'));
  client = new Client();
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

/** What is offered at the drawn cursor of a file that is open; `typed` is the sign that asks. */
async function completed(name: string, drawn: string, typed?: string): Promise<CompletionItem[]> {
  const { text, position } = withPosition(drawn);
  await client.open(at(name), text);
  const { items, isIncomplete } = await client.ask<CompletionList>('textDocument/completion', {
    textDocument: { uri: at(name) },
    position,
    context: typed === undefined ? { triggerKind: 1 } : { triggerKind: 2, triggerCharacter: typed }
  });
  expect(isIncomplete).toBe(false);
  return items;
}

const labels = (items: readonly CompletionItem[]): string[] => items.map(({ label }) => label);

test('a statement comes with its help, its place and places to fill in, in the usual order', async () => {
  await client.start(folder, {
    textDocument: { completion: { completionItem: { snippetSupport: true, labelDetailsSupport: true } } }
  });
  const items = await completed('job.paving', 'job "A" { rules britain }\narea patio {\n  tr‸\n}\n');
  expect(labels(items).slice(0, 3)).toEqual(['outline', 'traffic', 'finish']);
  expect(labels([...items].sort((one, other) => (one.sortText! < other.sortText! ? -1 : 1)))).toEqual(labels(items));
  const traffic = items[1]!;
  expect(traffic).toMatchObject({
    filterText: 'traffic',
    insertTextFormat: 2,
    textEdit: {
      range: { start: { line: 2, character: 2 }, end: { line: 2, character: 4 } },
      newText: 'traffic ${1|foot,cars,trucks,turning|}'
    }
  });
  expect(traffic.labelDetails?.description).toMatch(/^What uses the area/);
  expect(items.filter(({ documentation }) => documentation !== undefined)).toEqual([]);
  const { documentation } = await client.ask<CompletionItem>('completionItem/resolve', traffic);
  expect(documentation).toMatchObject({ kind: 'markdown', value: expect.stringContaining('foot') as string });
});

test('an editor that fills nothing in gets plain text', async () => {
  await client.start(folder);
  const items = await completed('job.paving', 'job "A" { rules britain }\narea patio {\n  ‸\n}\n');
  const bed = items.find(({ label }) => label === 'bed')!;
  expect(bed.insertTextFormat).toBe(1);
  expect(bed.detail).toMatch(/^The screeded sand/);
  expect(bed.textEdit!.newText).toBe('bed sharp-sand 30 mm');
});

test('a space offers only what has to follow', async () => {
  await client.start(folder);
  expect(labels(await completed('a.paving', 'area patio {\n  traffic ‸\n}\n', ' '))).toContain('foot');
  for (const drawn of ['traffic foot ‸', '‸', '// base ‸', 'bed washed-sand 1 in ‸'])
    expect(await completed('b.paving', `area patio {\n  ${drawn}\n}\n`, ' '), drawn).toEqual([]);
  expect(await completed('c.paving', '//‸', '/')).toEqual([]);
});

test('files of the folder are offered where one is used, open or not, but none that would lead round in a circle', async () => {
  mkdirSync(path.join(folder, 'yard'));
  writeFileSync(path.join(folder, 'yard/stone.paving'), '');
  writeFileSync(path.join(folder, 'prices.paving'), '');
  writeFileSync(path.join(folder, 'whole.paving'), 'use "jobs/drive.paving"\n');
  mkdirSync(path.join(folder, 'jobs'));
  writeFileSync(path.join(folder, 'jobs/drive.paving'), '');
  await client.start(folder);
  const items = await completed('jobs/drive.paving', 'use "‸"\n', '"');
  expect(labels(items)).toEqual(['../prices.paving', '../yard/stone.paving']);
  expect(items[0]!.textEdit).toEqual({
    range: { start: { line: 0, character: 5 }, end: { line: 0, character: 5 } },
    newText: '../prices.paving'
  });
});

test('what another file declares is offered under its name', async () => {
  writeFileSync(path.join(folder, 'units.paving'), 'unit block-red { size 200 x 100 x 60 mm }\n');
  await client.start(folder);
  const items = await completed('job.paving', 'use "units.paving"\narea patio {\n  paving ‸\n}\n');
  expect(labels(items)).toEqual(['block-red']);
  expect(items[0]!.detail).toBe('Unit: size 200 x 100 x 60 mm');
  const { documentation } = await client.ask<CompletionItem>('completionItem/resolve', items[0]);
  expect(documentation).toMatchObject({ value: expect.stringContaining('units.paving, line 1') as string });
});
