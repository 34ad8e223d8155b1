import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver/node.js';
import { Client } from './client.ts';
import { PATIO } from './patio.ts';

let folder: string;
let client: Client;
const at = (name: string): string => pathToFileURL(path.join(folder, name)).href;
const idsOf = (params: { diagnostics: readonly { code?: string | number }[] }): unknown[] =>
  params.diagnostics.map(({ code }) => code);

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-server-'));
  client = new Client();
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

test('findings come while typing, with their place, page and version, and go when mended', async () => {
  await client.open(at('patio.paving'), PATIO);
  expect((await client.findings(at('patio.paving'))).diagnostics).toEqual([]);
  const version = await client.change(at('patio.paving'), PATIO.replace('base    type-1', 'base    typ-1'));
  const broken = await client.findings(at('patio.paving'), ({ diagnostics }) => diagnostics.length > 0);
  expect(broken).toMatchObject({
    version,
    diagnostics: [
      {
        code: 'unknown-name',
        codeDescription: { href: 'paving-page:/unknown-name' },
        severity: 1,
        source: 'paving',
        range: { start: { line: 12, character: 10 }, end: { line: 12, character: 15 } }
      }
    ]
  });
  expect(broken.diagnostics[0]!.message).toContain('Did you mean `type-1`?');
  await client.change(at('patio.paving'), PATIO);
  await client.findings(at('patio.paving'), ({ diagnostics }) => diagnostics.length === 0);
});

test('hover tells headline, table and working; a lens stands above the job and each area', async () => {
  await client.open(at('patio.paving'), PATIO);
  await client.findings(at('patio.paving'));
  const base = (await client.hover(at('patio.paving'), 12, 12))!.contents as MarkupContent;
  expect(base.kind).toBe('markdown');
  // 3 x 4 m of 150 mm is 1.8 m3, at 2.2 t/m3 3.96 t (exact arithmetic).
  expect(base.value).toContain('**base of patio: type-1**');
  expect(base.value).toContain('| Compacted volume | 1.80 m3 | &emsp;2.35 cu yd |');
  expect(base.value).toContain('| Mass | 3.96 t | &emsp;4.37 short tons |');
  expect(base.value).toMatch(/_layer area × base thickness; layer area 12\.00 m2, base thickness 150 mm_/);
  const lenses = await client.lenses(at('patio.paving'));
  expect(lenses.map(({ range, command }) => [range.start.line, command!.title])).toEqual([
    [0, '12.00 m2 paved, 2.88 m3 to dig'],
    [6, expect.stringMatching(/^12\.00 m2 · \d+ whole, \d+ cut · dig 240 mm deep$/)]
  ]);
});

test('hover explains the word under the pointer, and marks it; in a broken text and in one without a job too', async () => {
  await client.open(at('patio.paving'), PATIO.replace('3 x 4 m', '3 x'));
  const foot = (await client.hover(at('patio.paving'), 8, 12))!;
  expect((foot.contents as MarkupContent).value).toMatch(/^People on foot/);
  expect(foot.range).toEqual({ start: { line: 8, character: 10 }, end: { line: 8, character: 14 } });
  await client.open(at('units.paving'), 'unit block { size 200 x 100 x 60 mm, made of clay }\n');
  const size = (await client.hover(at('units.paving'), 0, 18))!.contents as MarkupContent;
  expect(size.value).toBe('**200 mm** is about 7 7/8 in.');
});

test('hover in a used file shows the numbers of the job that uses it', async () => {
  const [job, used] = PATIO.split(/(?=site )/) as [string, string];
  await client.open(at('patio.paving'), used);
  await client.open(at('job.paving'), `${job}use "patio.paving"\n`);
  await client.findings(at('job.paving'));
  const { value } = (await client.hover(at('patio.paving'), 9, 3))!.contents as MarkupContent;
  expect(value).toMatch(/^\*\*base of patio: type-1\*\*[^]*\n---\n\nThe compacted stone/);
});

test('a used file counts as it stands in the editor, else as on disk, and what changes in it is seen', async () => {
  writeFileSync(path.join(folder, 'units.paving'), 'unit block { size 200 x 100 x 60 mm }\n');
  const job = PATIO.replace('unit block { size 200 x 100 x 60 mm }', 'use "units.paving"');
  await client.open(at('patio.paving'), job);
  expect((await client.findings(at('patio.paving'))).diagnostics).toEqual([]);
  await client.open(at('units.paving'), 'unit brick { size 200 x 100 x 60 mm }\n');
  await client.findings(at('patio.paving'), params => idsOf(params).includes('unknown-name'));
  await client.close(at('units.paving'));
  await client.findings(at('patio.paving'), ({ diagnostics }) => diagnostics.length === 0);
  writeFileSync(path.join(folder, 'units.paving'), 'unit block { size 200 x 100 mm }\n');
  await client.changedOnDisk(at('units.paving'));
  const used = await client.findings(at('units.paving'), params => idsOf(params).includes('wrong-kind'));
  expect(used.diagnostics[0]!.range.start.line).toBe(0);
});

test('nothing that can be typed silences the server', async () => {
  const bad: Record<string, string> = {
    'brackets-too-deep': `let a = ${'('.repeat(500)}1${')'.repeat(500)}\n`,
    'sum-too-long': `let a = 1${' + 1'.repeat(5000)}\n`,
    'text-too-long': `// ${'long '.repeat(1_000_000)}\n`,
    'use-in-circle': 'use "use-in-circle.paving"\n',
    'use-outside': 'use "../../etc/other.paving"\n',
    'odd-character': '\u0000\u0001€\n'
  };
  for (const [id, text] of Object.entries(bad)) {
    writeFileSync(path.join(folder, `${id}.paving`), text);
    await client.open(at(`${id}.paving`), text);
  }
  await client.open(at('patio.paving'), PATIO);
  for (const id of Object.keys(bad)) {
    const { diagnostics } = await client.findings(at(`${id}.paving`), params => idsOf(params).includes(id));
    expect(diagnostics.length).toBeGreaterThan(0);
  }
  expect((await client.findings(at('patio.paving'))).diagnostics).toEqual([]);
  expect(await client.lenses(at('patio.paving'))).toHaveLength(2);
});

test('fast typing is worked out once, at its end', async () => {
  await client.open(at('patio.paving'), PATIO);
  await client.findings(at('patio.paving'));
  const before = client.history.length;
  let version = 0;
  for (let mm = 1; mm <= 20; mm++)
    version = await client.change(at('patio.paving'), PATIO.replace('150 mm', `${150 + mm} mm`));
  await client.findings(at('patio.paving'), params => params.version === version);
  expect(client.history.length - before).toBeLessThanOrEqual(3);
});

test('a file that was never saved has its findings', async () => {
  await client.open('untitled:Untitled-1', PATIO.replace('base    type-1', 'base    typ-1'));
  const { diagnostics } = await client.findings('untitled:Untitled-1', params => params.version === 1);
  expect(diagnostics.map(({ code }) => code)).toEqual(['unknown-name']);
});

test('a file that was never saved, with no folder open, is told to be saved before it uses another', async () => {
  const alone = new Client();
  await alone.start();
  for (const uri of ['untitled:Untitled-1', 'untitled:/somewhere/patio.paving']) {
    await alone.open(uri, PATIO.replace('unit block { size 200 x 100 x 60 mm }', 'use "units.paving"'));
    const { diagnostics } = await alone.findings(uri, params => params.version === 1);
    const [missing] = diagnostics.filter(({ code }) => String(code).startsWith('use-'));
    expect(missing).toMatchObject({
      code: 'use-missing',
      message: 'Save this file first: the path units.paving counts from the place where it is saved.'
    });
  }
  await alone.stop();
});

test('a whole folder that comes or goes takes the used file in it along', async () => {
  mkdirSync(path.join(folder, 'shared/yard'), { recursive: true });
  const units = path.join(folder, 'shared/yard/units.paving');
  writeFileSync(units, 'unit block { size 200 x 100 x 60 mm }\n');
  const use = 'use "shared/yard/units.paving"';
  await client.open(at('patio.paving'), PATIO.replace('unit block { size 200 x 100 x 60 mm }', use));
  await client.findings(at('patio.paving'), ({ diagnostics }) => diagnostics.length === 0);
  rmSync(path.join(folder, 'shared'), { recursive: true });
  await client.changedOnDisk(at('shared'), 3);
  await client.findings(at('patio.paving'), params => idsOf(params).includes('use-missing'));
  mkdirSync(path.dirname(units), { recursive: true });
  writeFileSync(units, 'unit block { size 200 x 100 x 60 mm }\n');
  await client.changedOnDisk(at('shared'), 1);
  await client.findings(at('patio.paving'), ({ diagnostics }) => diagnostics.length === 0);
});

test('tells when it begins to work, and when nothing is left to do', async () => {
  await client.open(at('patio.paving'), PATIO);
  await client.findings(at('patio.paving'));
  await client.becomes(() => Promise.resolve(client.work.join()), /^true,false$/);
  await client.change(at('patio.paving'), PATIO.replace('150 mm', '160 mm'));
  await client.becomes(() => Promise.resolve(client.work.join()), /^true,false,true,false$/);
});

test('an address that the editor spells in its own way is still the same file', async () => {
  // Brackets may be written as they are or as signs.
  const odd = `${at('jobs')}%20%282%29/patio.paving`;
  await client.open(odd, PATIO.replace('base    type-1', 'base    typ-1'));
  const { diagnostics } = await client.findings(odd, params => params.version === 1);
  expect(diagnostics.map(({ code }) => code)).toEqual(['unknown-name']);
});

test('a file used from two folders is one file: edits and closing are seen by both', async () => {
  mkdirSync(path.join(folder, 'sub'));
  writeFileSync(path.join(folder, 'sub/units.paving'), 'unit block { size 200 x 100 x 60 mm }\n');
  const job = PATIO.replace('unit block { size 200 x 100 x 60 mm }', 'use "sub/units.paving"');
  await client.open(at('patio.paving'), job);
  expect((await client.findings(at('patio.paving'), params => params.version === 1)).diagnostics).toEqual([]);
  await client.changeFolders([at('sub')], []);
  await client.open(at('sub/units.paving'), 'unit block { size 400 x 200 x 60 mm }\n');
  await client.becomes(async () => (await client.lenses(at('patio.paving')))[1]?.command?.title, / 124 whole, /);
  await client.change(at('sub/units.paving'), 'unit block { size 400 x 400 x 60 mm }\n');
  await client.becomes(async () => (await client.lenses(at('patio.paving')))[1]?.command?.title, / 59 whole, /);
  await client.close(at('sub/units.paving'));
  await client.becomes(async () => (await client.lenses(at('patio.paving')))[1]?.command?.title, / 532 whole, /);
});

test('a folder that comes or goes loses no unsaved text', async () => {
  writeFileSync(path.join(folder, 'units.paving'), 'unit block { size 200 x 100 x 60 mm }\n');
  await client.open(at('patio.paving'), PATIO.replace('unit block { size 200 x 100 x 60 mm }', 'use "units.paving"'));
  await client.open(at('units.paving'), 'unit block { size 400 x 400 x 60 mm }\n');
  const title = async (): Promise<string | undefined> => (await client.lenses(at('patio.paving')))[1]?.command?.title;
  await client.becomes(title, / 59 whole, /);
  await client.changeFolders([pathToFileURL(path.dirname(folder)).href], []);
  await client.change(
    at('patio.paving'),
    `// changed\n${PATIO.replace('unit block { size 200 x 100 x 60 mm }', 'use "units.paving"')}`
  );
  await client.findings(at('patio.paving'), params => params.version === 2);
  await client.becomes(title, / 59 whole, /);
});

test('what two open jobs find in a file that both use is told once', async () => {
  writeFileSync(path.join(folder, 'units.paving'), 'unit block { size 200 x 100 mm }\n');
  const job = PATIO.replace('unit block { size 200 x 100 x 60 mm }', 'use "units.paving"');
  await client.open(at('one.paving'), job);
  await client.open(at('two.paving'), job);
  await client.findings(at('two.paving'), params => params.version === 1);
  await client.hover(at('two.paving'), 0, 0);
  expect(client.published.get(at('units.paving'))!.diagnostics).toHaveLength(1);
});

test('a hundred thousand faults hold up no other file', { timeout: 300_000 }, async () => {
  await client.open(at('worst.paving'), `job "T" { rules britain }\n${'x\n'.repeat(100_000)}`);
  const { diagnostics } = await client.findings(at('worst.paving'));
  expect(diagnostics).toHaveLength(501);
  expect(diagnostics.at(-1)!.message).toMatch(/^99,\d{3} more findings/);
  await client.open(at('patio.paving'), PATIO);
  expect((await client.findings(at('patio.paving'))).diagnostics).toEqual([]);
});
