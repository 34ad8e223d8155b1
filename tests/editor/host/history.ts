// A folder of job specs under version control, for comparisons with what was committed.
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './places.ts';

/** Words that a page could take for markup. */
export const HOSTILE_TITLE = 'Drive <img src=x onerror=alert(1)> & <b>more</b>';

/** Neither the machine's settings nor the person's count. */
const ENVIRONMENT = {
  ...process.env,
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'A',
  GIT_AUTHOR_EMAIL: 'a@example.org',
  GIT_COMMITTER_NAME: 'A',
  GIT_COMMITTER_EMAIL: 'a@example.org'
};

/** Makes `history/drive.paving` in the folder, committed once, with the tag `quote-1`. */
export function makeHistory(folder: string): void {
  const top = path.join(folder, 'history');
  mkdirSync(top);
  const drive = readFileSync(path.join(root, 'samples/drive.paving'), 'utf8');
  writeFileSync(path.join(top, 'drive.paving'), drive.replace('Hill lane drive', HOSTILE_TITLE));
  copyFileSync(path.join(root, 'samples/merchant-prices.paving'), path.join(top, 'merchant-prices.paving'));
  const git = (...given: string[]) => execFileSync('git', given, { cwd: top, env: ENVIRONMENT, stdio: 'ignore' });
  git('init', '--quiet');
  git('add', '--all');
  git('commit', '--quiet', '--message', 'As quoted');
  git('tag', 'quote-1');
}
