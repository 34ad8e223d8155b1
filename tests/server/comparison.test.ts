// What differs since HEAD and from any other revision, with real git: as an editor is told of it.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  CancellationTokenSource,
  createConnection,
  StreamMessageReader,
  StreamMessageWriter
} from 'vscode-languageserver/node.js';
import { GitHistory } from '../../server/git/git-history.ts';
import { NodeFiles } from '../../server/node-files.ts';
import type { CompareResult, OlderTextResult, RevisionsResult, ShownComparison } from '../../server/protocol.ts';
import { setUp } from '../../server/set-up.ts';
import type { Workspace } from '../../server/workspace.ts';
import { Client } from './client.ts';
import { PATIO } from './patio.ts';

// Neither the machine's settings nor the person's count: for git as the tests start it, and as the server does.
vi.stubEnv('GIT_CONFIG_GLOBAL', '/dev/null');
vi.stubEnv('GIT_CONFIG_NOSYSTEM', '1');

const ENVIRONMENT = {
  ...process.env,
  GIT_AUTHOR_NAME: 'A',
  GIT_AUTHOR_EMAIL: 'a@example.org',
  GIT_AUTHOR_DATE: '2027-03-01T12:00:00Z',
  GIT_COMMITTER_NAME: 'A',
  GIT_COMMITTER_EMAIL: 'a@example.org',
  GIT_COMMITTER_DATE: '2027-03-01T12:00:00Z'
};

let folder: string;
const clients: Client[] = [];
const at = (name: string): string => path.join(folder, name);
const uriOf = (name: string): string => pathToFileURL(at(name)).href;
const URI = (): string => uriOf('jobs/patio.paving');
const git = (...given: string[]): string =>
  execFileSync('git', given, { cwd: folder, env: ENVIRONMENT, encoding: 'utf8' });
const write = (name: string, text: string): void => writeFileSync(at(name), text);
function commit(subject: string): void {
  git('add', '-A');
  git('commit', '-q', '-m', subject);
}

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-compared-'));
  mkdirSync(at('jobs'));
  write('jobs/patio.paving', PATIO);
});

afterEach(async () => {
  for (const client of clients.splice(0)) await client.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** A server in this process, so that its counters can be read. */
async function started(
  { trusted = true, history = new GitHistory() }: { trusted?: boolean; history?: GitHistory | null } = {},
  root = folder
): Promise<{ client: Client; workspace: Workspace }> {
  const [toServer, fromServer] = [new PassThrough(), new PassThrough()];
  const connection = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(fromServer));
  const files = new NodeFiles({ root, shownFrom: root });
  const workspace = setUp(connection, uri => files.read(new globalThis.URL(uri).pathname), history ?? undefined);
  const client = new Client({ from: fromServer, to: toServer, cut: () => connection.dispose() });
  clients.push(client);
  await client.start(root, { workspace: { codeLens: { refreshSupport: true } } }, { trusted });
  return { client, workspace };
}

async function opened(options: Parameters<typeof started>[0] = {}, text = PATIO): ReturnType<typeof started> {
  const found = await started(options);
  await found.client.open(URI(), text);
  await found.client.findings(URI());
  return found;
}

const sinceHead = async (client: Client): Promise<string> => {
  const titles = (await client.lenses(URI())).map(({ command }) => command!.title);
  return titles.find(title => title.includes('since HEAD')) ?? 'nothing';
};

const compared = (client: Client, revision: string): Promise<CompareResult> =>
  client.ask('paving/compare', { textDocument: { uri: URI() }, against: { revision } });

const shown = async (client: Client, revision: string): Promise<ShownComparison> => {
  const result = await compared(client, revision);
  if ('problem' in result) throw new Error(result.problem);
  return result;
};

const problemOf = async (client: Client, revision: string): Promise<string> => {
  const result = await compared(client, revision);
  return 'problem' in result ? result.problem : `compared: ${result.between}`;
};

const LARGER = PATIO.replace('type-1 150 mm', 'type-1 200 mm');

describe('Since HEAD', () => {
  beforeEach(() => {
    git('init', '-q');
    commit('First');
  });

  test('a lens tells what differs, leads to the comparison, and goes when nothing does', async () => {
    const { client } = await opened();
    expect(LARGER).not.toBe(PATIO);
    expect(await sinceHead(client)).toBe('nothing');
    await client.change(URI(), LARGER);
    await client.becomes(() => sinceHead(client), /^since HEAD: \+[0-9.]+ t of stone/);
    const lens = (await client.lenses(URI())).find(({ command }) => command!.title.startsWith('since HEAD'))!;
    expect(lens.command).toMatchObject({ command: 'paving.compareWithHead', arguments: [URI()] });
    await client.change(URI(), PATIO);
    expect(await sinceHead(client)).toBe('nothing');
  });

  test('typing starts git never, and works the older side out once', async () => {
    const { client, workspace } = await opened({}, LARGER);
    await client.becomes(() => sinceHead(client), /^since HEAD/);
    const { starts } = workspace.comparisons.counts;
    // Once where HEAD is, four times for all specs of its commit.
    expect(starts).toBe(5);
    for (let edit = 0; edit < 20; edit++) {
      await client.change(URI(), `${LARGER}\n// ${edit}`);
      expect(await sinceHead(client)).toMatch(/^since HEAD/);
    }
    expect(workspace.comparisons.counts).toEqual({ starts, commits: 1 });
  });

  test('the other lenses wait for nothing; the editor asks anew when the older side is worked out', async () => {
    const { client } = await opened({}, LARGER);
    expect((await client.lenses(URI())).map(({ command }) => command!.title)).toEqual([
      expect.stringMatching(/ paved, /),
      expect.stringMatching(/^12\.00 m2 · /)
    ]);
    await client.becomes(() => Promise.resolve(String(client.refreshes['codeLens'])), /[1-9]/);
    expect(await sinceHead(client)).toMatch(/^since HEAD/);
  });

  test('while the text has an error the last one stays, marked', async () => {
    const { client } = await opened({}, LARGER);
    await client.becomes(() => sinceHead(client), /^since HEAD/);
    const before = await sinceHead(client);
    await client.change(URI(), LARGER.replace('type-1 200 mm', 'type-1 200 m m'));
    expect(await sinceHead(client)).toMatch(/^before the error in line \d+: since HEAD: /);
    expect(await sinceHead(client)).toContain(before);
  });

  test('a commit is noticed when the text is saved, and when the person comes back to it', async () => {
    const { client, workspace } = await opened({}, LARGER);
    await client.becomes(() => sinceHead(client), /^since HEAD/);
    write('jobs/patio.paving', LARGER);
    commit('Thicker');
    await client.tell('textDocument/didSave', { textDocument: { uri: URI() } });
    await client.becomes(() => sinceHead(client), /^nothing$/);
    git('reset', '-q', '--hard', 'HEAD~1');
    await client.tell('paving/lookAgain', {});
    await client.becomes(() => sinceHead(client), /^since HEAD/);
    git('reset', '-q', '--hard', 'HEAD@{1}');
    await client.changedOnDisk(uriOf('.git/logs/HEAD'));
    await client.becomes(() => sinceHead(client), /^nothing$/);
    expect((await shown(client, 'HEAD')).sections).toEqual([]);
    expect(client.headMoves).toBe(3);
    // What HEAD has left is let go of.
    expect(workspace.comparisons.counts.commits).toBe(1);
  });

  test('a file that is new since, and one that is no job, have no lens and no further starts', async () => {
    write('jobs/new.paving', LARGER);
    write('jobs/units.paving', 'unit flag { size 400 x 400 x 50 mm }\n');
    const { client, workspace } = await opened({}, LARGER);
    await client.becomes(() => sinceHead(client), /^since HEAD/);
    const { starts } = workspace.comparisons.counts;
    for (const name of ['jobs/new.paving', 'jobs/units.paving']) {
      await client.open(uriOf(name), LARGER);
      const titles = (await client.lenses(uriOf(name))).map(({ command }) => command!.title);
      expect(titles.filter(title => title.includes('HEAD'))).toEqual([]);
    }
    expect(workspace.comparisons.counts.starts).toBe(starts);
  });

  test('used files are taken as they were', async () => {
    const unit = 'unit block { size 200 x 100 x 60 mm }\n';
    expect(PATIO).toContain(unit);
    const parted = `use "units.paving"\n${PATIO.replace(unit, '')}`;
    write('jobs/units.paving', unit);
    write('jobs/patio.paving', parted);
    commit('In two files');
    const { client } = await opened({}, parted);
    await client.open(uriOf('jobs/units.paving'), unit.replace('60 mm', '80 mm'));
    await client.becomes(() => sinceHead(client), /^since HEAD: /);
    const { sections } = await shown(client, 'HEAD');
    const [edit] = sections[0]!.rows;
    expect(edit!.places.after?.uri).toBe(uriOf('jobs/units.paving'));
    expect(edit!.places.before?.uri).toMatch(/^paving-older:\/jobs\/HEAD(?: |%20)units\.paving\?/);
  });
});

describe('Another revision', () => {
  beforeEach(() => {
    git('init', '-q', '-b', 'main');
    commit('First');
    git('tag', 'quote-1');
    write('jobs/patio.paving', LARGER);
    commit('A thicker base');
    git('branch', 'thicker');
    write('notes.txt', 'nothing to do with it');
    commit('Notes');
  });

  test('is chosen from branches, tags and the commits that touch the folder; git is started twice', async () => {
    const { client, workspace } = await opened();
    const before = workspace.comparisons.counts.starts;
    const answer = await client.ask<RevisionsResult>('paving/revisions', { textDocument: { uri: URI() } });
    if ('problem' in answer) throw new Error(answer.problem);
    expect(workspace.comparisons.counts.starts - before).toBe(2);
    expect(answer.revisions.map(({ kind, name }) => (kind === 'commit' ? kind : `${kind} ${name}`)).sort()).toEqual(
      ['head HEAD', 'branch main', 'branch thicker', 'tag quote-1', 'commit', 'commit'].sort()
    );
    expect(answer.revisions.filter(({ kind }) => kind === 'commit').map(({ subject }) => subject)).toEqual([
      'A thicker base',
      'First'
    ]);
    expect(answer.revisions.find(({ name }) => name === 'quote-1')).toMatchObject({
      date: '2027-03-01',
      subject: 'First'
    });
  });

  test('is compared in words, with the places in either text', async () => {
    const { client } = await opened({}, LARGER);
    const { title, between, sections } = await shown(client, 'quote-1');
    expect([title, between]).toEqual(['Small patio', 'quote-1 to the working copy']);
    const [edit] = sections[0]!.rows;
    expect(edit!.cells.join(' | ')).toMatch(/^1 \| area .*, base \| 150 mm \| 200 mm \| \+50 mm$/);
    const line = LARGER.split('\n').findIndex(text => text.includes('type-1 200 mm'));
    expect(edit!.places.after).toMatchObject({ uri: URI(), range: { start: { line } } });
    const older = await client.ask<OlderTextResult>('paving/olderText', { uri: edit!.places.before!.uri });
    expect(older).toEqual({ text: PATIO });
  });

  test('that holds the same says that nothing differs', async () => {
    const { client } = await opened({}, LARGER);
    expect((await shown(client, 'thicker')).sections).toEqual([]);
  });

  test.each([
    ['nowhere', /^There is no revision nowhere here\./],
    ['--output=x', /is no name of a revision/],
    ['a..b', /is no name of a revision/],
    ['main:jobs', /is no name of a revision/]
  ])('called %s is refused in a plain sentence', async (name, words) => {
    const { client } = await opened();
    expect(await problemOf(client, name)).toMatch(words);
  });

  test('that has not the file says so', async () => {
    renameSync(at('jobs/patio.paving'), at('jobs/terrace.paving'));
    const { client } = await started();
    await client.open(uriOf('jobs/terrace.paving'), LARGER);
    const result = await client.ask('paving/compare', {
      textDocument: { uri: uriOf('jobs/terrace.paving') },
      against: { revision: 'quote-1' }
    });
    expect(result).toEqual({ problem: 'There is no jobs/terrace.paving in quote-1.' });
  });

  test('whose text was broken says so, and never fails', async () => {
    write('jobs/patio.paving', PATIO.replace('150 mm', '150 m m').replace('}', '{'));
    commit('Broken');
    const { client } = await opened();
    expect((await shown(client, 'HEAD')).notes).toEqual([
      expect.stringMatching(/^The older text has (?:an error|\d+ errors): what is sound is compared/)
    ]);
  });

  test('that nobody waits for any more is given up', async () => {
    const { client } = await opened();
    const source = new CancellationTokenSource();
    const asked = client.ask('paving/revisions', { textDocument: { uri: URI() } }, source.token).then(
      () => 'answered',
      (error: { code?: number }) => error.code
    );
    source.cancel();
    // As the protocol numbers it: the request has been cancelled.
    expect(await asked).toBe(-32800);
  });

  test('no more than three are kept', async () => {
    const { client, workspace } = await opened({}, LARGER);
    for (let count = 0; count < 4; count++) {
      write('jobs/patio.paving', PATIO.replace('150 mm', `${151 + count} mm`));
      commit(`Version ${count}`);
      await shown(client, 'HEAD');
    }
    expect(workspace.comparisons.counts.commits).toBe(3);
  });

  test('four asked for at once are all shown', async () => {
    const { client, workspace } = await opened({}, LARGER.replace('200 mm', '220 mm'));
    const revisions = Array.from({ length: 3 }, (_, count) => {
      write('jobs/patio.paving', PATIO.replace('150 mm', `${151 + count} mm`));
      commit(`Version ${count}`);
      git('tag', `version-${count}`);
      return `version-${count}`;
    });
    const all = await Promise.all(['quote-1', ...revisions].map(revision => shown(client, revision)));
    expect(all.map(({ sections }) => sections[0]!.rows[0]!.cells[2])).toEqual(['150 mm', '151 mm', '152 mm', '153 mm']);
    expect(workspace.comparisons.counts.commits).toBe(3);
  });

  test('reads no text where nothing was compared', async () => {
    const { client } = await opened();
    const query = (folderOf: string): string =>
      encodeURIComponent(
        JSON.stringify({ folder: folderOf, commit: git('rev-parse', 'HEAD').trim(), path: 'notes.txt' })
      );
    for (const asked of [query(pathToFileURL(tmpdir()).href), 'nonsense', query(uriOf('jobs'))])
      expect(await client.ask('paving/olderText', { uri: `paving-older:/x?${asked}` })).toHaveProperty('problem');
  });
});

describe('Another file', () => {
  test('needs no git, and no trust', async () => {
    write('jobs/first.paving', PATIO);
    const { client, workspace } = await opened({ trusted: false }, LARGER);
    const result = await client.ask<ShownComparison>('paving/compare', {
      textDocument: { uri: URI() },
      against: { uri: uriOf('jobs/first.paving') }
    });
    expect(result.between).toBe('jobs/first.paving to jobs/patio.paving');
    expect(result.sections[0]!.rows[0]!.places.before!.uri).toBe(uriOf('jobs/first.paving'));
    expect(workspace.comparisons.counts.starts).toBe(0);
  });

  test('that is not there, or has no job, says so', async () => {
    write('jobs/units.paving', 'unit flag { size 400 x 400 x 50 mm }\n');
    const { client } = await opened();
    const compare = (name: string): Promise<CompareResult> =>
      client.ask('paving/compare', { textDocument: { uri: URI() }, against: { uri: uriOf(name) } });
    expect(await compare('jobs/gone.paving')).toEqual({ problem: 'gone.paving could not be read.' });
    expect(await compare('jobs/units.paving')).toEqual({ problem: 'There is no job in units.paving.' });
  });
});

describe('Where there is no history', () => {
  test('a folder that is not trusted starts no git, until it is', async () => {
    git('init', '-q');
    commit('First');
    const { client, workspace } = await opened({ trusted: false }, LARGER);
    expect(await sinceHead(client)).toBe('nothing');
    expect(await problemOf(client, 'HEAD')).toMatch(/^Trust this folder to compare with its history/);
    await client.tell('textDocument/didSave', { textDocument: { uri: URI() } });
    expect(workspace.comparisons.counts.starts).toBe(0);
    await client.tell('paving/trusted', {});
    await client.becomes(() => sinceHead(client), /^since HEAD/);
  });

  test('a browser says that it has no git', async () => {
    const { client } = await opened({ history: null }, LARGER);
    expect(await sinceHead(client)).toBe('nothing');
    expect(await problemOf(client, 'HEAD')).toMatch(/^Git can’t be asked here/);
  });

  test('a folder without git, or without a commit, says what to do', async () => {
    const { client } = await opened({}, LARGER);
    expect(await sinceHead(client)).toBe('nothing');
    expect(await problemOf(client, 'HEAD')).toMatch(/under no version control by git\. Compare two files instead\.$/);
    git('init', '-q');
    expect(await problemOf(client, 'HEAD')).toMatch(/^There is nothing to compare with yet: commit first/);
    const list = await client.ask('paving/revisions', { textDocument: { uri: URI() } });
    expect(list).toMatchObject({ problem: expect.stringMatching(/^There is nothing to compare with yet/) as string });
  });

  test('a text that is not saved says so', async () => {
    const { client } = await started();
    await client.open('untitled:Untitled-1', LARGER);
    const against = { revision: 'HEAD' };
    const result = await client.ask('paving/compare', { textDocument: { uri: 'untitled:Untitled-1' }, against });
    expect(result).toMatchObject({ problem: expect.stringMatching(/has no history\. Save it/) as string });
  });
});
