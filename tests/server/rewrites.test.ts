import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { CodeAction, TextEdit } from 'vscode-languageserver/node.js';
import type { PointsFromTableResult } from '../../server/protocol.ts';
import { Client } from './client.ts';

const UNITS = 'unit block { size 200 x 100 x 60 mm }\n';
const JOB = `job "Small patio" { rules britain }
site { soil common-earth, benchmark step, ground level with step }
use "units.paving"

area patio {
  outline rectangle 4 x 3 m
  traffic foot
  finish  level with step
  paving  block in running-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
`;

let folder: string;
let client: Client;
const at = (name: string): string => pathToFileURL(path.join(folder, name)).href;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-rewrites-'));
  writeFileSync(path.join(folder, 'units.paving'), UNITS);
  client = new Client();
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

const place = (text: string, words: string) => {
  const before = text.slice(0, text.indexOf(words)).split('\n');
  return { line: before.length - 1, character: before.at(-1)!.length };
};

async function actions(uri: string, text: string, words: string, only: readonly string[]): Promise<CodeAction[]> {
  const position = place(text, words);
  return client.ask<CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri },
    range: { start: position, end: position },
    context: { diagnostics: [], only }
  });
}

const editsOf = (action: CodeAction | undefined, uri: string): TextEdit[] => action?.edit?.changes?.[uri] ?? [];

test('rewrites are offered by their kinds, with their edits', async () => {
  await client.open(at('job.paving'), JOB);
  const [rewrite, ...more] = await actions(at('job.paving'), JOB, '150 mm', ['refactor.rewrite']);
  expect(more).toEqual([]);
  expect(rewrite).toMatchObject({ title: 'Write 5 7/8 in, rounded by 0.8 mm', kind: 'refactor.rewrite' });
  const start = place(JOB, '150 mm');
  const range = { start, end: { ...start, character: start.character + '150 mm'.length } };
  expect(editsOf(rewrite, at('job.paving'))).toEqual([{ range, newText: '5 7/8 in' }]);
  const all = await actions(at('job.paving'), JOB, '150 mm', ['refactor']);
  expect(all.map(({ kind }) => kind)).toEqual(['refactor.rewrite', 'refactor.extract']);
});

test('a value that gets a name asks for another one', async () => {
  await client.open(at('job.paving'), JOB);
  const [extract] = await actions(at('job.paving'), JOB, '150 mm', ['refactor.extract']);
  expect(extract!.title).toBe('Name 150 mm with let');
  expect(editsOf(extract, at('job.paving')).map(({ newText }) => newText)).toEqual([
    'let layer-thickness = 150 mm\n\n',
    'layer-thickness'
  ]);
  expect(extract!.command).toMatchObject({ command: 'paving.nameHere', arguments: [at('job.paving'), 4, 4] });
});

test('what a used file would do to the open job that uses it is tried out too', async () => {
  const job = JOB.replace('rules britain', 'rules north-america, show metric').replace('type-1 150 mm', 'type-1 stone');
  const units = `${UNITS}let stone = 150 mm\n`;
  await client.open(at('units.paving'), units);
  await client.open(at('job.paving'), job);
  const titles = async (): Promise<string[]> =>
    (await actions(at('units.paving'), units, '150 mm', ['refactor.rewrite'])).map(({ title }) => title);
  expect(await titles()).toEqual(['Write 5 7/8 in, rounded by 0.8 mm']);
  // Where winters freeze 150 mm are usual, and 5 7/8 in would be a hair less.
  await client.change(at('job.paving'), job.replace('site { ', 'site { winters freeze, '));
  expect(await titles()).toEqual([]);
});

test('a table is written as points', async () => {
  await client.open(at('job.paving'), JOB);
  const ask = (table: string): Promise<PointsFromTableResult> =>
    client.ask('paving/pointsFromTable', {
      textDocument: { uri: at('job.paving') },
      range: { start: place(JOB, '\narea'), end: place(JOB, '\narea') },
      table
    });
  const there = place(JOB, '\narea');
  expect(await ask('name,x (m),y (m)\nA,0,0\nB,3.6,0')).toEqual({
    choices: [
      {
        title: 'Paste as 2 points',
        text: 'point A at (0, 0)\npoint B at (3.6, 0) m',
        range: { start: there, end: there }
      }
    ],
    isPlain: true
  });
  expect(await ask('words')).toEqual({ problem: expect.stringContaining('no table of points') as string });
});

test('into a file of points alone they go in the measures of the job that uses it', async () => {
  const titles = async (show: string): Promise<string[]> => {
    await client.open(
      at(`${show}.paving`),
      `job "Yard" { rules north-america, show ${show} }\nuse "points-${show}.paving"\n`
    );
    await client.open(at(`points-${show}.paving`), '');
    await client.findings(at(`${show}.paving`));
    const start = { line: 0, character: 0 };
    const found = await client.ask<PointsFromTableResult>('paving/pointsFromTable', {
      textDocument: { uri: at(`points-${show}.paving`) },
      range: { start, end: start },
      table: 'A 0 0\nB 3 1'
    });
    return 'choices' in found ? found.choices.map(({ title }) => title) : [found.problem];
  };
  expect(await titles('metric')).toEqual(['Paste as 2 points in m', 'Paste as 2 points in mm']);
  expect(await titles('feet-and-inches')).toEqual(['Paste as 2 points in ft', 'Paste as 2 points in in']);
});
