// What the side bar shows of a job, as an editor asks for it.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import {
  createConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type CodeLens
} from 'vscode-languageserver/node.js';
import { NodeFiles } from '../../server/node-files.ts';
import type { ContentsRow, ContentsTableResult, JobContentsResult } from '../../server/plan-protocol.ts';
import { setUp } from '../../server/set-up.ts';
import type { Workspace } from '../../server/workspace.ts';
import { Client } from './client.ts';
import { PATIO } from './patio.ts';

const UNIT = 'unit block { size 200 x 100 x 60 mm }\n';
const WITH_UNITS = PATIO.replace(UNIT, 'use "units.paving"\n');

let folder: string;
let client: Client;
let workspace: Workspace;
const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).href;
const job = (): string => uriOf('job.paving');

/** A server in this process, so that its counters can be read. */
beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-contents-'));
  const texts = { 'job.paving': WITH_UNITS, 'units.paving': UNIT, 'lonely.paving': UNIT };
  for (const [name, text] of Object.entries(texts)) writeFileSync(path.join(folder, name), text);
  const [toServer, fromServer] = [new PassThrough(), new PassThrough()];
  const connection = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(fromServer));
  const files = new NodeFiles({ root: folder, shownFrom: folder });
  workspace = setUp(connection, uri => files.read(new URL(uri).pathname));
  client = new Client({ from: fromServer, to: toServer, cut: () => connection.dispose() });
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

const contents = (uri: string): Promise<JobContentsResult> =>
  client.ask('paving/jobContents', { textDocument: { uri } });
const tableOf = (uri: string, row: string): Promise<ContentsTableResult> =>
  client.ask('paving/contentsTable', { textDocument: { uri }, row });

function allIn(row: ContentsRow): ContentsRow[] {
  return [row, ...row.inside.flatMap(allIn)];
}

async function rowOf(uri: string, id: string): Promise<ContentsRow | undefined> {
  const found = await contents(uri);
  return found === null ? undefined : allIn(found.row).find(row => row.id === id);
}

test('what is asked right after typing is told of the newest text', async () => {
  await client.open(job(), WITH_UNITS);
  expect((await rowOf(job(), 'area:patio#netArea'))?.value).toBe('12.00 m2');
  for (const [size, area] of [
    ['5 x 4 m', '20.00 m2'],
    ['6 x 4 m', '24.00 m2']
  ] as const) {
    await client.change(job(), WITH_UNITS.replace('3 x 4 m', size));
    expect((await rowOf(job(), 'area:patio#netArea'))?.value).toBe(area);
  }
  expect((await tableOf(job(), 'area:patio/layers')).table).toMatch(/^What\tThickness\t[^]*\n.*\t24\.00 m2\t/);
});

test('rows lead to the text of their things, and their numbers to where they are written', async () => {
  await client.open(job(), WITH_UNITS);
  const lines = WITH_UNITS.split('\n');
  const lineOf = async (id: string): Promise<string | undefined> => {
    const place = (await rowOf(job(), id))?.place;
    return place === undefined || place.uri !== job() ? undefined : lines[place.range.start.line]?.trim();
  };
  expect(await lineOf('job')).toBe('job "Small patio" {');
  expect(await lineOf('area:patio')).toBe('area patio {');
  expect(await lineOf('area:patio/layers/base')).toBe('base    type-1 150 mm');
  const thickness = (await rowOf(job(), 'area:patio/layers/base#thickness'))!.place!.range;
  expect(lines[thickness.start.line]!.slice(thickness.start.character, thickness.end.character)).toBe('150 mm');
  expect((await rowOf(job(), 'order/unit:block'))?.place?.uri).toBe(uriOf('units.paving'));
});

test('while the text is broken the last numbers stand there, marked, and no longer once it is mended', async () => {
  await client.open(job(), WITH_UNITS);
  const before = (await contents(job()))!;
  expect(allIn(before.row).filter(({ stale }) => stale)).toEqual([]);
  await client.change(job(), WITH_UNITS.replace('3 x 4 m', '3 x'));
  const area = (await rowOf(job(), 'area:patio'))!;
  expect(area.value).toMatch(/^before the error in line 8: 12\.00 m2 · /);
  const rows = allIn(area);
  expect(rows.length).toBeGreaterThan(20);
  expect(rows.filter(({ stale, value }) => stale !== true || !value.startsWith('before the error'))).toEqual([]);
  await client.change(job(), WITH_UNITS);
  expect(await contents(job())).toEqual(before);
});

test('a file that a job uses leads to that job; one that none uses to nothing', async () => {
  await client.open(uriOf('units.paving'), UNIT);
  expect(await contents(uriOf('units.paving'))).toBeNull();
  await client.open(job(), WITH_UNITS);
  const own = (await contents(job()))!;
  expect(own.uri).toBe(job());
  expect(await contents(uriOf('units.paving'))).toEqual(own);
  await client.open(uriOf('lonely.paving'), UNIT);
  expect(await contents(uriOf('lonely.paving'))).toBeNull();
  expect(await tableOf(uriOf('lonely.paving'), 'job')).toEqual({});
  await client.change(uriOf('units.paving'), UNIT.replace('60 mm', '60'));
  expect((await rowOf(job(), 'area:patio'))?.value).toMatch(/^before the error in line 1 of units\.paving: /);
});

test('rows and tables after the lenses work nothing out', async () => {
  await client.open(job(), WITH_UNITS);
  await client.ask<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: job() } });
  const work = workspace.work;
  expect(work.computations).toBeGreaterThan(0);
  const first = await contents(job());
  expect(allIn(first!.row).length).toBeGreaterThan(40);
  expect(await contents(job())).toEqual(first);
  expect((await tableOf(job(), 'job')).table).toContain('Small patio');
  expect(await tableOf(job(), 'area:gone')).toEqual({});
  expect(workspace.work).toEqual(work);
});
