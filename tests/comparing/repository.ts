import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { folder, paving, type Ran } from '../cli/run.ts';

/** Nothing of the machine's own settings counts, and nothing of them is touched. */
export const ENVIRONMENT: NodeJS.ProcessEnv = {
  ...process.env,
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'A layer',
  GIT_AUTHOR_EMAIL: 'layer@site.invalid',
  GIT_COMMITTER_NAME: 'A layer',
  GIT_COMMITTER_EMAIL: 'layer@site.invalid'
};

/** A real repository in a folder that is gone when the test is over. */
export class Repository {
  readonly at: string;

  constructor(files: Readonly<Record<string, string | Uint8Array>> = {}) {
    this.at = folder(files);
    this.git('init', '--quiet', '--initial-branch=main');
  }

  /** What git says; it has to go well. */
  git(...given: string[]): string {
    const { code, out, err } = this.tryGit(...given);
    if (code !== 0) throw new Error(`git ${given.join(' ')}: ${err}`);
    return out;
  }

  tryGit(...given: string[]): Ran {
    const { status, stdout, stderr } = spawnSync('git', given, { cwd: this.at, env: ENVIRONMENT, encoding: 'utf8' });
    return { code: status, out: stdout, err: stderr };
  }

  write(files: Readonly<Record<string, string | Uint8Array>>): this {
    for (const [name, content] of Object.entries(files)) {
      mkdirSync(path.dirname(path.join(this.at, name)), { recursive: true });
      writeFileSync(path.join(this.at, name), content);
    }
    return this;
  }

  remove(name: string): this {
    rmSync(path.join(this.at, name), { recursive: true });
    return this;
  }

  commit(message = 'Written'): this {
    this.git('add', '--all');
    this.git('commit', '--quiet', '--message', message);
    return this;
  }

  /** The command line, run in the repository or in a folder of it. */
  paving(given: readonly string[], below = '.', more: NodeJS.ProcessEnv = {}): Ran {
    return paving(given, { cwd: path.join(this.at, below), env: { ...ENVIRONMENT, ...more } });
  }
}
