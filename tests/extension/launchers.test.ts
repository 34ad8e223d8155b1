// The command line as the editor's terminal finds it on its path.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { root } from '../cli/run.ts';

const isWindows = process.platform === 'win32';

interface Ran {
  readonly code: number | null;
  readonly out: string;
}

/** Runs it in a folder with a space in its name, where no program is on the path but those named. */
function run(given: readonly string[], env: NodeJS.ProcessEnv): Ran {
  const top = mkdtempSync(path.join(tmpdir(), 'paving launcher-'));
  onTestFinished(() => rmSync(top, { recursive: true, force: true }));
  cpSync(path.join(root, 'dist/bin'), path.join(top, 'dist/bin'), { recursive: true });
  cpSync(path.join(root, 'dist/paving.cjs'), path.join(top, 'dist/paving.cjs'));
  const work = path.join(top, 'a job');
  mkdirSync(work);
  writeFileSync(path.join(work, 'my job.paving'), 'area patio {\n');
  const bin = path.join(top, 'dist/bin');
  const { status, stdout } = spawnSync('paving', given, {
    cwd: work,
    env: { ...env, PATH: [bin, env['PATH']].join(path.delimiter) },
    encoding: 'utf8',
    shell: isWindows
  });
  return { code: status, out: stdout };
}

/** A path with the few programs of the system, and without Node. */
function pathWithoutNode(): string {
  const bin = mkdtempSync(path.join(tmpdir(), 'paving-programs-'));
  onTestFinished(() => rmSync(bin, { recursive: true, force: true }));
  for (const program of ['sh', 'dirname']) symlinkSync(`/usr/bin/${program}`, path.join(bin, program));
  return bin;
}

test.skipIf(isWindows)('runs with the editor’s own Node where none is installed', () => {
  const { code, out } = run(['check', '--format', 'line', 'my job.paving'], {
    PATH: pathWithoutNode(),
    PAVING_NODE: process.execPath
  });
  expect(out).toMatch(/^my job\.paving:1:\d+: error: /);
  expect(code).toBe(1);
});

test('runs with the Node on the path where the editor tells of none, or of one that is gone', () => {
  const env = { ...process.env, PAVING_NODE: path.join(root, 'no/such/node') };
  expect(run(['--version'], env)).toMatchObject({ code: 0, out: expect.stringMatching(/^paving \d/) });
});

test.skipIf(isWindows)('may be run', () => {
  expect(statSync(path.join(root, 'dist/bin/paving')).mode & 0o111).toBe(0o111);
});
