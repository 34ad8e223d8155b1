// Fast typing with requests in flight: the end is as if the text had been opened so, and nothing piles up.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
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
import { seeded } from '../language/seeded.ts';
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
async function started(capabilities: object = {}): Promise<{ client: Client; workspace: Workspace }> {
  const [toServer, fromServer] = [new PassThrough(), new PassThrough()];
  const connection = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(fromServer));
  const files = new NodeFiles({ root: SAMPLES, shownFrom: SAMPLES });
  const workspace = setUp(connection, uri => files.read(new URL(uri).pathname));
  const client = new Client({ from: fromServer, to: toServer, cut: () => connection.dispose() });
  clients.push(client);
  await client.start(SAMPLES, capabilities);
  return { client, workspace };
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

const REQUESTS = [
  'textDocument/hover',
  'textDocument/codeLens',
  'textDocument/inlayHint',
  'textDocument/completion',
  'textDocument/semanticTokens/full',
  'textDocument/codeAction'
];

/** What a request of any kind takes. */
function asked(uri: string, next: (below: number) => number): object {
  return {
    textDocument: { uri },
    position: { line: next(100), character: next(20) },
    range: { start: { line: 0, character: 0 }, end: { line: 200, character: 0 } },
    context: { diagnostics: [] }
  };
}

test('after 500 edits all is as if the text had been opened so, and no more is held than after 50', async () => {
  const { client, workspace } = await started();
  await client.open(URI, TEXT);
  await client.findings(URI);
  const next = seeded(3);
  const pending: Promise<unknown>[] = [];
  const held: (typeof workspace.held)[] = [];
  let text = TEXT;
  for (let edit = 1; edit <= 500; edit++) {
    // Every fiftieth edit undoes all those before it.
    text = edit % 50 === 0 ? TEXT : edited(text, next);
    const version = await client.change(URI, text);
    const source = new CancellationTokenSource();
    pending.push(client.ask(REQUESTS[next(REQUESTS.length)]!, asked(URI, next), source.token).catch(() => undefined));
    if (next(2) === 0) setTimeout(() => source.cancel(), next(30));
    // Now and then the person stops to look.
    if (edit % 10 === 0) await new Promise(resume => setTimeout(resume, next(120)));
    if (edit % 50 !== 0) continue;
    await client.findings(URI, published => published.version === version);
    // What is tried for rewrites is held too: that of the same text each time.
    await Promise.all(pending);
    await client.ask(
      'textDocument/codeAction',
      asked(URI, () => 0)
    );
    held.push(workspace.held);
  }
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

test('a keystroke abandons laying that nobody wants any more', async () => {
  const { client, workspace } = await started();
  const yards = (count: number, first: number): string => {
    const areas = Array.from({ length: count }, (_, index) => {
      const at = `corner (${40 * index}, 0) m, turned 7 degrees`;
      return `area yard-${index} { outline rectangle ${index === 0 ? first : 30} x 30 m, ${at}\n paving sett in herringbone-90, joints 2 mm\n }`;
    });
    return ['job "Yards" { rules britain }', 'unit sett { size 100 x 50 x 60 mm }', ...areas].join('\n');
  };
  // A dozen yards of some 170,000 setts each.
  await client.open(URI, yards(12, 30));
  while (workspace.work.computations === 0) await new Promise(resume => setImmediate(resume));
  const version = await client.change(URI, yards(1, 2));
  const { diagnostics } = await client.findings(URI, published => published.version === version);
  expect(diagnostics.map(({ message }) => message)).not.toContainEqual(expect.stringContaining('yard-11'));
  expect(client.history.filter(({ version: told }) => told === 1)).toEqual([]);
  expect(workspace.held.runs).toBe(0);
  // Besides the work for the second text a yard or two of the first were measured and begun, and no more.
  const { client: fresh, workspace: other } = await started();
  await fresh.open(URI, yards(1, 2));
  await fresh.findings(URI);
  expect(workspace.work.computations - other.work.computations).toBeGreaterThan(0);
  expect(workspace.work.computations - other.work.computations).toBeLessThan(10);
});

describe('In a file that others use', () => {
  const inSquare = (name: string): string => pathToFileURL(path.join(SAMPLES, 'square', name)).href;
  const textOf = (name: string): string => readFileSync(path.join(SAMPLES, 'square', name), 'utf8');
  const [job, used] = [inSquare('square.paving'), inSquare('arcade.paving')];
  const refreshed = { refreshSupport: true };
  const capabilities = { workspace: { codeLens: refreshed, inlayHint: refreshed, semanticTokens: refreshed } };
  const isIdle = (client: Client, workspace: Workspace): Promise<void> =>
    client.becomes(() => Promise.resolve(`${workspace.held.runs} ${String(client.work.at(-1))}`), /^0 false$/);

  async function opened(): Promise<{ client: Client; workspace: Workspace }> {
    const { client, workspace } = await started(capabilities);
    await client.open(job, textOf('square.paving'));
    await client.open(used, textOf('arcade.paving'));
    await client.findings(used);
    await isIdle(client, workspace);
    return { client, workspace };
  }

  test('typing is read once, when it pauses, and the editor asks anew once', async () => {
    const { client, workspace } = await opened();
    const { parses } = workspace.work;
    const before = { ...client.refreshes };
    const text = textOf('arcade.paving');
    let version = 0;
    for (let mm = 1; mm <= 10; mm++) version = await client.change(used, text.replace('150 mm', `${150 + mm} mm`));
    await client.findings(used, published => published.version === version);
    await isIdle(client, workspace);
    expect(workspace.work.parses - parses).toBe(1);
    const more = Object.entries(client.refreshes).map(([shown, count]) => count - before[shown]!);
    expect(more).toEqual([1, 1, 1]);
  });

  test('nothing is asked anew when nothing has changed, nor in a file that stands alone', async () => {
    const { client, workspace } = await opened();
    await client.open(URI, TEXT);
    await client.findings(URI);
    await isIdle(client, workspace);
    const before = { ...client.refreshes };
    await client.changedOnDisk(inSquare('merchant.paving'));
    const version = await client.change(URI, `${TEXT}// more\n`);
    await client.findings(URI, published => published.version === version);
    await isIdle(client, workspace);
    expect(client.refreshes).toEqual(before);
  });

  test('after fast typing with requests in flight, the job that uses it is as if both had been opened so', async () => {
    const { client, workspace } = await opened();
    const next = seeded(5);
    const text = textOf('arcade.paving');
    const pending: Promise<unknown>[] = [];
    for (let edit = 0; edit < 60; edit++) {
      await client.change(used, edited(text, next));
      const uri = next(2) === 0 ? job : used;
      pending.push(client.ask(REQUESTS[next(REQUESTS.length)]!, asked(uri, next)).catch(() => undefined));
      if (edit % 10 === 0) await new Promise(resume => setTimeout(resume, next(120)));
    }
    const last = text.replace('60 mm below', '70 mm below');
    const version = await client.change(used, last);
    await client.findings(used, published => published.version === version);
    await Promise.all(pending);
    await isIdle(client, workspace);
    const { client: fresh, workspace: other } = await started(capabilities);
    await fresh.open(used, last);
    await fresh.open(job, textOf('square.paving'));
    await fresh.findings(job);
    await isIdle(fresh, other);
    expect(await client.lenses(job)).toEqual(await fresh.lenses(job));
    expect(await client.lenses(used)).toEqual(await fresh.lenses(used));
    for (const uri of [job, used])
      expect(client.published.get(uri)!.diagnostics).toEqual(fresh.published.get(uri)!.diagnostics);
  });
});

describe('Looking through a folder', () => {
  test('keeps nothing that no open file uses', async () => {
    const { client, workspace } = await started();
    expect(await client.ask<unknown[]>('workspace/symbol', { query: 'terrace' })).not.toEqual([]);
    expect(workspace.held.texts).toBe(0);
    await client.open(URI, TEXT);
    await client.findings(URI);
    await client.ask('workspace/symbol', { query: 'terrace' });
    expect(workspace.held.texts).toBeGreaterThan(5);
    const version = await client.change(URI, `${TEXT}// more\n`);
    await client.findings(URI, published => published.version === version);
    expect(workspace.held.texts).toBe(1);
  });

  test('is broken off when nobody waits any more', async () => {
    const { client, workspace } = await started();
    await client.open(URI, TEXT);
    await client.findings(URI);
    const { parses } = workspace.work;
    const source = new CancellationTokenSource();
    const search = client.ask('workspace/symbol', { query: 'terrace' }, source.token).then(
      () => undefined,
      (error: { code?: number }) => error.code
    );
    source.cancel();
    expect(await search).toBe(-32800);
    expect(workspace.work.parses).toBe(parses);
  });

  test('tells once that there are too many files to look through', async () => {
    const { client } = await started();
    client.listsAll = false;
    await client.ask('workspace/symbol', { query: 'terrace' });
    await client.ask('workspace/symbol', { query: 'terrac' });
    expect(client.warnings).toEqual([expect.stringContaining('more job specs than can be looked through')]);
  });
});
