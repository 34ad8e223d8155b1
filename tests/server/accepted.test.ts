// What is set aside is no problem in the editor, until its day has passed.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { CodeAction, MarkupContent } from 'vscode-languageserver/node.js';
import { Client } from './client.ts';
import { PATIO } from './patio.ts';

let folder: string;
let client: Client;
let uri: string;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-'));
  uri = pathToFileURL(path.join(folder, 'job.paving')).href;
  client = new Client();
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true, force: true });
});

const THIN = PATIO.replace('type-1 150 mm', 'type-1 75 mm');
const accept = (until: string): string =>
  `accept base-too-thin on patio because "rock lies 75 mm down" until ${until}\n`;
const LINE = THIN.split('\n').length - 1;

test('a finding that is set aside is no problem, and has no fix; the `accept` tells of it', async () => {
  const text = THIN + accept('9999-12-31');
  await client.open(uri, text);
  const { diagnostics } = await client.findings(uri, ({ version }) => version === 1);
  expect(diagnostics.map(({ code }) => code)).not.toContain('base-too-thin');
  const base = { line: THIN.split('\n').findIndex(line => line.includes('type-1')), character: 4 };
  const actions = await client.ask<CodeAction[] | null>('textDocument/codeAction', {
    textDocument: { uri },
    range: { start: base, end: base },
    context: { diagnostics: [], only: ['quickfix'] }
  });
  expect((actions ?? []).map(({ title }) => title)).toEqual([]);
  const hover = await client.hover(uri, LINE, 1);
  const { value } = hover!.contents as MarkupContent;
  expect(value).toContain('**Sets aside** until 9999-12-31: rock lies 75 mm down');
  expect(value).toContain('- The base of patio, 75 mm, is 25 mm too thin');
});

test('past its day it is a problem again, and leads to where it was set aside', async () => {
  await client.open(uri, THIN + accept('2001-06-30'));
  const { diagnostics } = await client.findings(uri, ({ version }) => version === 1);
  const [thin] = diagnostics.filter(({ code }) => code === 'base-too-thin');
  expect(thin?.message).toContain('(set aside until 2001-06-30, which has passed)');
  expect(thin?.relatedInformation?.[0]).toMatchObject({
    message: 'Set aside here until 2001-06-30.',
    location: { uri, range: { start: { line: LINE, character: 0 } } }
  });
  const hover = await client.hover(uri, LINE, 1);
  expect((hover!.contents as MarkupContent).value).toContain('**Sets nothing aside now**, until 2001-06-30');
});
