// Fast typing with requests in flight: the end is as if the text had been opened so, and nothing piles up.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import {
  CancellationTokenSource,
  createConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type CodeAction,
  type CodeLens,
  type Hover,
  type InlayHint
} from 'vscode-languageserver/node.js';
import { NodeFiles } from '../../server/node-files.ts';
import { setUp } from '../../server/set-up.ts';
import type { Workspace } from '../../server/workspace.ts';
import { Client } from './client.ts';

const SAMPLES = path.resolve(import.meta.dirname, '../../samples');
const FILE = path.join(SAMPLES, 'courtyard.paving');
const URI = pathToFileURL(FILE).href;
const TEXT = readFileSync(FILE, 'utf8');

const clients: Client[] = [];
afterEach(async () => {
  for (const client of clients.splice(0)) await client.stop();
});

/** A server in this process, so that its counters can be read. */
async function started(): Promise<{ client: Client; workspace: Workspace }> {
  const [toServer, fromServer] = [new PassThrough(), new PassThrough()];
  const connection = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(fromServer));
  const files = new NodeFiles({ root: SAMPLES, shownFrom: SAMPLES });
  const workspace = setUp(connection, uri => files.read(new URL(uri).pathname));
  const client = new Client({ from: fromServer, to: toServer, cut: () => connection.dispose() });
  clients.push(client);
  await client.start(SAMPLES);
  return { client, workspace };
}

/** A number from nought up to, not including, `below`: the same row in every run. */
function row(seed: number): (below: number) => number {
  let state = seed;
  return below => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const SCRAPS = ['', ' ', '\n', '{', '}', '"', '4', ' mm', 'area ', 'terrace', ',', '// ', ' meets lawn'];

/** The text with a few characters taken out, or something written in. */
function edited(text: string, next: (below: number) => number): string {
  const at = next(text.length);
  const scrap = SCRAPS[next(SCRAPS.length)]!;
  return text.slice(0, at) + scrap + text.slice(at + (scrap === '' ? 1 + next(12) : 0));
}

async function shown(client: Client): Promise<unknown> {
  const textDocument = { uri: URI };
  const lines = TEXT.split('\n').length;
  const lenses = await client.ask<CodeLens[]>('textDocument/codeLens', { textDocument });
  const range = { start: { line: 0, character: 0 }, end: { line: lines, character: 0 } };
  const hints = await client.ask<InlayHint[]>('textDocument/inlayHint', { textDocument, range });
  const hovers: (Hover | null)[] = [];
  for (let line = 0; line < lines; line++) hovers.push(await client.hover(URI, line, 3));
  return { findings: client.published.get(URI)!.diagnostics, lenses, hints, hovers };
}

const REQUESTS = ['textDocument/hover', 'textDocument/codeLens', 'textDocument/inlayHint'];

test('after 500 edits all is as if the text had been opened so, and no more is held than after 50', async () => {
  const { client, workspace } = await started();
  await client.open(URI, TEXT);
  await client.findings(URI);
  const next = row(3);
  const pending: Promise<unknown>[] = [];
  const held: (typeof workspace.held)[] = [];
  let text = TEXT;
  for (let edit = 1; edit <= 500; edit++) {
    // Every fiftieth edit undoes all those before it.
    text = edit % 50 === 0 ? TEXT : edited(text, next);
    const version = await client.change(URI, text);
    const source = new CancellationTokenSource();
    const params = {
      textDocument: { uri: URI },
      position: { line: next(100), character: next(20) },
      range: { start: { line: 0, character: 0 }, end: { line: 200, character: 0 } }
    };
    pending.push(client.ask(REQUESTS[next(REQUESTS.length)]!, params, source.token).catch(() => undefined));
    if (next(2) === 0) setTimeout(() => source.cancel(), next(30));
    // Now and then the person stops to look.
    if (edit % 10 === 0) await new Promise(resume => setTimeout(resume, next(120)));
    if (edit % 50 !== 0) continue;
    await client.findings(URI, published => published.version === version);
    held.push(workspace.held);
  }
  await Promise.all(pending);
  expect(workspace.held.runs).toBe(0);
  expect(held).toHaveLength(10);
  expect(held.at(-1)!.results).toBeLessThanOrEqual(held[0]!.results);
  expect(held.at(-1)!.texts).toBeLessThanOrEqual(held[0]!.texts);
  const { client: fresh } = await started();
  await fresh.open(URI, TEXT);
  await fresh.findings(URI);
  expect(await shown(client)).toEqual(await shown(fresh));
});

test('a broken text at the end, too, is told as if it had been opened so', async () => {
  const broken = TEXT.replace('in third-bond', 'on third-bond');
  expect(broken).not.toBe(TEXT);
  const { client } = await started();
  await client.open(URI, '');
  for (let end = 1; end < broken.length; end += 97) await client.change(URI, broken.slice(0, end));
  const version = await client.change(URI, broken);
  await client.findings(URI, published => published.version === version);
  const { client: fresh } = await started();
  await fresh.open(URI, broken);
  await fresh.findings(URI);
  expect(await shown(client)).toEqual(await shown(fresh));
});

test('a path typed letter by letter leaves nothing behind', async () => {
  const { client, workspace } = await started();
  await client.open(URI, TEXT);
  for (let letters = 0; letters < 12; letters++) {
    const version = await client.change(URI, `use "${'abcdefghijkl'.slice(0, letters)}.paving"\n${TEXT}`);
    const { diagnostics } = await client.findings(URI, published => published.version === version);
    expect(diagnostics.map(({ code }) => code)).toContain('use-missing');
  }
  const version = await client.change(URI, TEXT);
  await client.findings(URI, published => published.version === version);
  expect(workspace.held.texts).toBe(1);
});

test('a second look works nothing out: hover, lenses and hints come from what is held', async () => {
  const { client, workspace } = await started();
  await client.open(URI, TEXT);
  await client.findings(URI);
  const first = await shown(client);
  const work = workspace.work;
  expect(work.parses).toBeGreaterThan(0);
  expect(work.computations).toBeGreaterThan(0);
  expect(await shown(client)).toEqual(first);
  expect(workspace.work).toEqual(work);
});

test('a move of the cursor tries nothing out; who asks for one kind of actions waits for no other', async () => {
  const { client, workspace } = await started();
  // With something that could be mended elsewhere in the file.
  const text = TEXT.replace(/^ {2}rules .*\n/m, '$&$&');
  expect(text).not.toBe(TEXT);
  await client.open(URI, text);
  await client.findings(URI);
  const before = text.slice(0, text.indexOf(' mm')).split('\n');
  const position = { line: before.length - 1, character: before.at(-1)!.length };
  const asked = async (context: object): Promise<{ kinds: (string | undefined)[]; parses: number }> => {
    const { parses } = workspace.work;
    const actions = await client.ask<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri: URI },
      range: { start: position, end: position },
      context: { diagnostics: [], ...context }
    });
    return { kinds: actions.map(({ kind }) => kind), parses: workspace.work.parses - parses };
  };
  const [invoked, automatic] = [1, 2];
  expect(await asked({ triggerKind: automatic })).toEqual({ kinds: [], parses: 0 });
  expect(await asked({ triggerKind: invoked, only: ['quickfix'] })).toEqual({ kinds: [], parses: 0 });
  expect(await asked({ triggerKind: invoked, only: ['refactor.rewrite'] })).toEqual({
    kinds: ['refactor.rewrite'],
    parses: 1
  });
  expect((await asked({ triggerKind: invoked })).kinds).toContain('refactor.extract');
});

test('a request whose text has moved on is abandoned; one that is taken back is answered at once', async () => {
  const { client } = await started();
  await client.open(URI, TEXT);
  await client.findings(URI);
  const hover = { textDocument: { uri: URI }, position: { line: 40, character: 3 } };
  await client.change(URI, `${TEXT}\n`);
  const stale = client.ask('textDocument/hover', hover).then(
    () => undefined,
    (error: { code?: number }) => error.code
  );
  await client.change(URI, `${TEXT}\n\n`);
  // As the protocol numbers it: the content has been modified.
  expect(await stale).toBe(-32801);
  await client.change(URI, TEXT);
  const source = new CancellationTokenSource();
  const taken = client.ask('textDocument/codeLens', { textDocument: { uri: URI } }, source.token).then(
    () => undefined,
    (error: { code?: number }) => error.code
  );
  source.cancel();
  expect(await taken).toBe(-32800);
});
