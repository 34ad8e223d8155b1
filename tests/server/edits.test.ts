// What the server changes in a text when it is asked: fixes of findings, and the formatter.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { CodeAction, Diagnostic, Range, TextEdit } from 'vscode-languageserver/node.js';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Client } from './client.ts';
import { PATIO } from './patio.ts';

let folder: string;
let client: Client;
const at = (name: string): string => pathToFileURL(path.join(folder, name)).href;
const ALL: Range = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-edits-'));
  client = new Client();
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

/** Asks as an editor does on save: without any findings. */
function actions(name: string, only?: string[], range = ALL): Promise<CodeAction[]> {
  const context = { diagnostics: [], ...(only === undefined ? {} : { only }) };
  return client.ask('textDocument/codeAction', { textDocument: { uri: at(name) }, range, context });
}

async function findings(name: string, ids: readonly string[]): Promise<Diagnostic[]> {
  const wanted = JSON.stringify(ids);
  const told = await client.findings(
    at(name),
    ({ diagnostics }) => JSON.stringify(diagnostics.map(({ code }) => code)) === wanted
  );
  return told.diagnostics;
}

function applied(text: string, edits: readonly TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create('', 'paving', 1, text), [...edits]);
}

const editsOf = ({ edit }: CodeAction, name: string): TextEdit[] => edit!.changes![at(name)]!;

test('a fix carries the finding that it mends, as it was sent; nothing need be sent along', async () => {
  await client.start(folder);
  const text = PATIO.replace('type-1 150', 'typ-1 150').replace('  traffic foot\n', '');
  await client.open(at('a.paving'), text);
  const told = await findings('a.paving', ['traffic-not-said', 'unknown-name']);
  const offered = await actions('a.paving', ['quickfix']);
  expect(offered.map(({ title, kind, isPreferred }) => [title, kind, isPreferred])).toEqual([
    ['Write `traffic foot`', 'quickfix', false],
    ['Write `traffic cars`', 'quickfix', false],
    ['Write `traffic trucks`', 'quickfix', false],
    ['Write `type-1`', 'quickfix', false]
  ]);
  expect(offered.map(({ diagnostics }) => diagnostics)).toEqual([[told[0]], [told[0]], [told[0]], [told[1]]]);
  const edits = [...editsOf(offered[0]!, 'a.paving'), ...editsOf(offered[3]!, 'a.paving')];
  expect(applied(text, edits)).toBe(PATIO);
});

test('one change that mends two findings is offered once, for both', async () => {
  await client.start(folder);
  // The same material with the wrong role in two areas: one change of its declaration mends both.
  const material = 'material stone { role joint-filler, compacted 2.2 t/m3 }\n';
  const patio = PATIO.replace('type-1', 'stone');
  const second = patio
    .slice(patio.indexOf('area'))
    .replace('area patio', 'area path')
    .replace('3 x 4 m', '3 x 4 m, corner (9, 0) m');
  await client.open(at('a.paving'), `${material}${patio}\n${second}`);
  const told = await findings('a.paving', ['wrong-role', 'wrong-role']);
  const roles = (await actions('a.paving', ['quickfix'])).filter(({ title }) => title.startsWith('Give `stone`'));
  expect(roles.map(({ diagnostics }) => diagnostics)).toEqual([told]);
});

test('only what stands at the place that is asked about, and of the kinds that are asked for', async () => {
  await client.start(folder);
  await client.open(at('a.paving'), PATIO.replace('typ', 'tip').replace('house-wall', 'hose-wall'));
  await findings('a.paving', ['unknown-name', 'unknown-name']);
  const line = (line: number): Range => ({ start: { line, character: 12 }, end: { line, character: 12 } });
  expect((await actions('a.paving', undefined, line(12))).map(({ title }) => title)).toEqual([
    'Write `type-1`',
    'Declare tipe-1 here, with the figures of type-1 to begin with'
  ]);
  expect(await actions('a.paving', undefined, line(8))).toEqual([]);
  const other = (await actions('a.paving', ['refactor'])).map(({ kind }) => kind);
  expect(other).toEqual(['refactor.rewrite']);
  expect(await actions('a.paving', ['source'])).toEqual([]);
  expect((await actions('a.paving', ['quickfix'])).length).toBe(2);
});

test('all that is safe is fixed at once, also what only shows when the first is done, and nothing else', async () => {
  await client.start(folder);
  const text = PATIO.replace('  traffic foot\n', '  traffic foot\n'.repeat(4))
    .replace('  base    type-1', '  sub-base type-1')
    .replace('house-wall', 'lawn');
  await client.open(at('a.paving'), text);
  const ids = ['said-twice', 'said-twice', 'said-twice', 'sub-base-alone', 'open-edge-without-edging'];
  await findings('a.paving', ids);
  expect((await actions('a.paving')).filter(({ kind }) => kind!.startsWith('source'))).toEqual([]);
  for (const only of ['source.fixAll.paving', 'source.fixAll', 'source']) {
    const [all, ...others] = await actions('a.paving', [only]);
    expect(others).toEqual([]);
    expect([all!.title, all!.kind, all!.diagnostics!.length]).toEqual([
      'Fix all that is safe',
      'source.fixAll.paving',
      4
    ]);
    const wanted = PATIO.replace('house-wall', 'lawn').replace('base    type-1', 'base type-1');
    expect(applied(text, editsOf(all!, 'a.paving'))).toBe(wanted);
  }
});

test('a fix may change a file that is used, for the version that the editor has', async () => {
  const materials = 'material stone { role joint-filler, compacted 2.2 t/m3 }\n';
  writeFileSync(path.join(folder, 'stone.paving'), materials);
  await client.start(folder, { workspace: { workspaceEdit: { documentChanges: true } } });
  const text = `use "stone.paving"\n${PATIO.replace('type-1', 'stone')}`;
  await client.open(at('a.paving'), text);
  await findings('a.paving', ['wrong-role']);
  const change = async (): Promise<unknown> => {
    const [first] = await actions('a.paving');
    expect(first!.title).toBe('Give `stone` the role `base` too');
    return first!.edit;
  };
  const here = { line: 0, character: 34 };
  const edits = [{ range: { start: here, end: here }, newText: ', base' }];
  expect(await change()).toEqual({
    documentChanges: [{ textDocument: { uri: at('stone.paving'), version: null }, edits }]
  });
  await client.open(at('stone.paving'), materials);
  const version = await client.change(at('stone.paving'), `${materials}\n`);
  await findings('stone.paving', []);
  expect(await change()).toEqual({
    documentChanges: [{ textDocument: { uri: at('stone.paving'), version }, edits }]
  });
});

test('findings of a used file are mended where they stand', async () => {
  await client.start(folder);
  const materials = 'material stone { role base, role base, compacted 2.2 t/m3 }\n';
  await client.open(at('stone.paving'), materials);
  await client.open(at('a.paving'), `use "stone.paving"\n${PATIO.replace('type-1', 'stone')}`);
  await findings('stone.paving', ['said-twice']);
  const [all] = await actions('stone.paving', ['source.fixAll']);
  expect(applied(materials, editsOf(all!, 'stone.paving'))).toBe('material stone { role base, compacted 2.2 t/m3 }\n');
});

test('a file that jobs of two folders use is mended where it stands, round by round', async () => {
  mkdirSync(path.join(folder, 'inner'));
  await client.start(folder);
  await client.changeFolders([at('inner')], []);
  const materials = `material stone { role base${', role base'.repeat(2)}, compacted 2.2 t/m3 }\n`;
  const job = PATIO.replace('type-1', 'stone');
  await client.open(at('a.paving'), `use "inner/stone.paving"\n${job}`);
  await client.open(at('inner/b.paving'), `use "stone.paving"\n${job}`);
  await client.open(at('inner/stone.paving'), materials);
  await findings('inner/stone.paving', ['said-twice', 'said-twice']);
  const [all] = await actions('inner/stone.paving', ['source.fixAll']);
  const mended = 'material stone { role base, compacted 2.2 t/m3 }\n';
  expect(applied(materials, editsOf(all!, 'inner/stone.paving'))).toBe(mended);
});

test('a text, a selection and the line that is typed are put in order, whatever the editor is set to', async () => {
  await client.start(folder);
  const untidy = PATIO.replace('  traffic foot', '      traffic    foot').replace('unit block', 'unit   block');
  await client.open(at('a.paving'), untidy);
  const textDocument = { uri: at('a.paving') };
  const options = { tabSize: 8, insertSpaces: false };
  const whole = await client.ask<TextEdit[]>('textDocument/formatting', { textDocument, options });
  const canonical = applied(untidy, whole);
  expect(canonical).toContain('\nunit block { size 200 x 100 x 60 mm }\n');
  expect(canonical).toContain('\n  traffic foot\n');
  const range = { start: { line: 8, character: 0 }, end: { line: 9, character: 0 } };
  const part = await client.ask<TextEdit[]>('textDocument/rangeFormatting', { textDocument, options, range });
  expect(applied(untidy, part)).toBe(untidy.replace('      traffic    foot', '  traffic foot'));

  const typed = 'area a {\n  edges {\n\n    }';
  await client.change(at('a.paving'), typed);
  const type = (line: number, character: number, ch: string): Promise<TextEdit[]> =>
    client.ask('textDocument/onTypeFormatting', { textDocument, options, position: { line, character }, ch });
  expect(applied(typed, await type(2, 0, '\n'))).toBe('area a {\n  edges {\n    \n    }');
  expect(applied(typed, await type(3, 5, '}'))).toBe('area a {\n  edges {\n\n  }');
});
