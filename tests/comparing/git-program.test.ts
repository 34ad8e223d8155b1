// How git is started and stopped, with a program in its place.
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { GitHistory } from '../../server/git/git-history.ts';
import { gitOnWindowsPath } from '../../server/git/git-program.ts';
import { Git } from '../../server/git/git.ts';
import { folder } from '../cli/run.ts';
import { PATIO } from './jobs.ts';
import { Repository } from './repository.ts';

afterEach(() => {
  vi.unstubAllEnvs();
  vi.useRealTimers();
});

/** First on the path as git; it hears no request to end, and is gone when the test is over. */
function inPlaceOfGit(lines: string): { readonly at: string; readonly pid: (name?: string) => number | undefined } {
  const at = folder({});
  writeFileSync(path.join(at, 'git'), `#!/bin/sh\ntrap '' TERM\ncd '${at}'\necho $$ > own\n${lines}\n`);
  chmodSync(path.join(at, 'git'), 0o755);
  vi.stubEnv('PATH', `${at}:${process.env['PATH']!}`);
  const pid = (name = 'own'): number | undefined => {
    const file = path.join(at, name);
    return existsSync(file) ? Number(readFileSync(file, 'utf8')) || undefined : undefined;
  };
  onTestFinished(() => {
    for (const name of ['own', 'other']) {
      const id = pid(name);
      if (id !== undefined && isRunning(id)) process.kill(id, 'SIGKILL');
    }
  });
  return { at, pid };
}

/** Holds git's pipes, and outlives it. */
const WITH_ANOTHER = 'sleep 60 &\necho $! > other\nwait\nsleep 60';

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

/** What keeps this process going. */
const held = (): string[] => process.getActiveResourcesInfo().filter(name => /^(?:Pipe|Process)/.test(name));

describe('Git that does not end', () => {
  test('is stopped when its time is over; what it has started holds nobody up', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const { at, pid } = inPlaceOfGit(WITH_ANOTHER);
    const before = held();
    const asked = new Git(at).run(['log']).catch((error: unknown) => error);
    await vi.waitUntil(() => pid('other'), { timeout: 5000 });
    vi.advanceTimersByTime(20_000);
    expect(await asked).toMatchObject({ why: 'too long', message: 'git took too long, and was stopped.' });
    await vi.waitUntil(() => !isRunning(pid()!), { timeout: 5000 });
    await vi.waitUntil(() => held().length <= before.length, { timeout: 5000 });
    expect(isRunning(pid('other')!)).toBe(true);
  });

  test('is stopped when it answers with too much', async () => {
    const { at, pid } = inPlaceOfGit('yes &\necho $! > other\nwait\nsleep 60');
    await expect(new Git(at).run(['log'])).rejects.toMatchObject({ why: 'too large' });
    await vi.waitUntil(() => !isRunning(pid()!), { timeout: 5000 });
  });

  test('is stopped when nobody waits for it, and that is no failure of git', async () => {
    const { at, pid } = inPlaceOfGit(WITH_ANOTHER);
    const controller = new AbortController();
    const history = new GitHistory();
    const asked = history.list(pathToFileURL(at).href, controller.signal).catch((error: unknown) => error);
    await vi.waitUntil(() => pid('other'), { timeout: 5000 });
    controller.abort();
    // As the protocol numbers it: the request has been cancelled.
    expect(await asked).toMatchObject({ code: -32800 });
    await vi.waitUntil(() => !isRunning(pid()!), { timeout: 5000 });
    await expect(history.list(pathToFileURL(at).href, controller.signal)).rejects.toMatchObject({ code: -32800 });
    expect(history.starts).toBe(1);
  });

  test('is told apart from git that is not there', async () => {
    vi.stubEnv('PATH', folder({}));
    await expect(new Git(folder({})).run(['log'])).rejects.toMatchObject({ why: 'no git' });
  });

  test('is told apart when something else stops it', async () => {
    const { at } = inPlaceOfGit('kill -9 $$');
    await expect(new Git(at).run(['log'])).rejects.toMatchObject({ why: 'stopped' });
  });
});

describe('Settings in the environment', () => {
  const other = (): string => new Repository({ 'a.paving': PATIO }).commit().at;

  test.each<[string, () => NodeJS.ProcessEnv]>([
    ['a setting', () => ({ GIT_CONFIG_COUNT: '1', GIT_CONFIG_KEY_0: 'core.bare', GIT_CONFIG_VALUE_0: 'nonsense' })],
    ['settings that no git reads', () => ({ GIT_CONFIG_COUNT: 'many' })],
    ['settings of a caller', () => ({ GIT_CONFIG_PARAMETERS: "'core.bare'='nonsense'" })],
    ['a trace', () => ({ GIT_TRACE: '2', git_trace_setup: '2' })],
    ['another repository', () => ({ GIT_DIR: path.join(other(), '.git'), GIT_WORK_TREE: other() })]
  ])('%s is not heard', async (_, environment) => {
    const { at } = new Repository({ 'jobs/a.paving': PATIO }).commit();
    for (const [name, value] of Object.entries(environment())) vi.stubEnv(name, value);
    expect((await new Git(path.join(at, 'jobs')).run(['rev-parse', '--show-toplevel'])).toString()).toBe(`${at}\n`);
  });

  test('no trace is written, and the repository is found above any folder', async () => {
    const { at } = new Repository({ 'jobs/a.paving': PATIO }).commit();
    vi.stubEnv('GIT_TRACE', path.join(at, 'trace'));
    vi.stubEnv('GIT_CEILING_DIRECTORIES', at);
    expect((await new Git(path.join(at, 'jobs')).run(['rev-parse', '--show-prefix'])).toString()).toBe('jobs/\n');
    expect(existsSync(path.join(at, 'trace'))).toBe(false);
  });

  test('where the settings of the person lie is heard', async () => {
    const at = folder({ settings: '[paving]\n\tasked = yes\n' });
    vi.stubEnv('GIT_CONFIG_GLOBAL', path.join(at, 'settings'));
    expect((await new Git(at).run(['config', 'paving.asked'])).toString()).toBe('yes\n');
  });
});

describe('Git on Windows', () => {
  const there = ['C:\\Git\\cmd\\git.exe', 'D:\\tools\\git.exe', '\\\\server\\share\\git.exe', 'git.exe', '.\\git.exe'];
  const found = (...folders: string[]): string | undefined =>
    gitOnWindowsPath(folders.join(';'), file => there.includes(file));

  test.each([
    ['the first that is there', ['C:\\Windows', 'C:\\Git\\cmd', 'D:\\tools'], 'C:\\Git\\cmd\\git.exe'],
    ['in quotes, with slashes', ['"D:/tools/"'], 'D:\\tools\\git.exe'],
    ['on another machine', ['\\\\server\\share'], '\\\\server\\share\\git.exe'],
    ['after folders that count from elsewhere', ['', '.', 'tools', 'D:tools', '\\tools', 'D:\\tools'], there[1]],
    ['never in the folder of the job', ['', '.', '.\\', ' '], undefined],
    ['nowhere', ['C:\\Windows'], undefined]
  ])('is found: %s', (_, folders, file) => {
    expect(found(...folders)).toBe(file);
  });
});
