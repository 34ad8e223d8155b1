// What the server answers where a person drags on the plan: edits of one text, for its version, or why there are none.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { dragRequest, type DragResult } from '../../server/plan-protocol.ts';
import { Client } from './client.ts';

const SITE = 'point C at (4, 3) m\n';
const JOB = `job "Small patio" { rules britain }
site { soil common-earth, benchmark step, ground level with step }
use "site.paving"
unit block { size 200 x 100 x 60 mm }
let wide = 4 m

point A at (0, 0)
point B at (wide, 0)
point D at (0, 3.00) m
area patio {
  outline A to B to C to D
  traffic foot
  finish  level with step
  paving  block in running-bond, joints 3 mm
  start   shifted (70, 0) mm
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
`;

let folder: string;
let client: Client;
const at = (name: string): string => pathToFileURL(path.join(folder, name)).href;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-drag-'));
  writeFileSync(path.join(folder, 'site.paving'), SITE);
  client = new Client();
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

const drag = (thing: string, x: number, y: number): Promise<DragResult> =>
  client.ask(dragRequest, { textDocument: { uri: at('job.paving') }, thing, to: [x, y] });

const onLine = (line: number, from: number, to: number) => ({
  start: { line, character: from },
  end: { line, character: to }
});

test('edits are for the version of the text as it stands now', async () => {
  await client.open(at('job.paving'), JOB);
  const edits = [{ range: onLine(8, 17, 19), newText: '25' }];
  expect(await drag('point:D', 0, 3250)).toEqual({ uri: at('job.paving'), version: 1, edits });
  const version = await client.change(at('job.paving'), `// Behind the house.\n${JOB}`);
  const moved = [{ range: onLine(9, 17, 19), newText: '25' }];
  expect(await drag('point:D', 0, 3250)).toEqual({ uri: at('job.paving'), version, edits: moved });
});

test('where laying begins is dragged by its shift', async () => {
  await client.open(at('job.paving'), JOB);
  const range = onLine(14, 23, 24);
  expect(await drag('area:patio/start', 70, 25)).toMatchObject({ edits: [{ range, newText: '25' }] });
});

test('what a used file tells is edited there, open or not', async () => {
  await client.open(at('job.paving'), JOB);
  const edits = [{ range: onLine(0, 13, 13), newText: '.5' }];
  expect(await drag('point:C', 4500, 3000)).toEqual({ uri: at('site.paving'), version: null, edits });
  await client.open(at('site.paving'), SITE);
  expect(await drag('point:C', 4500, 3000)).toEqual({ uri: at('site.paving'), version: 1, edits });
});

test('what can not be dragged says why', async () => {
  await client.open(at('job.paving'), JOB);
  expect(await drag('point:B', 4500, 0)).toEqual({ problem: 'x of B is worked out from wide: change that in line 5.' });
  await client.open(at('site.paving'), SITE);
  expect(
    await client.ask(dragRequest, { textDocument: { uri: at('other.paving') }, thing: 'point:B', to: [0, 0] })
  ).toEqual({
    problem: 'There is no job in this file.'
  });
});

test('a drag of a text that moves on meanwhile is refused', async () => {
  await client.open(at('job.paving'), JOB);
  const [asked] = await Promise.allSettled([drag('point:D', 0, 3250), client.change(at('job.paving'), `\n${JOB}`)]);
  expect(asked).toMatchObject({ status: 'rejected', reason: { message: 'The text has changed since.' } });
});

test('what would lie where it lies already is told so, and nothing is written', async () => {
  await client.open(at('job.paving'), JOB);
  expect(await drag('point:D', 0, 3000.2)).toEqual({
    problem: 'It lies there already, as finely as its measures are written.'
  });
});
