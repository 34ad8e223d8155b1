// The tests read the bundles and the generated parser: build them when a source is newer than the last build.
import { execFileSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
const sources = ['language', 'server', 'extension', '.config', 'package.json'];
const lastBuilt = path.join(root, 'dist/built');

function newest(place: string): number {
  const entry = statSync(place, { throwIfNoEntry: false });
  if (!entry) return 0;
  if (!entry.isDirectory()) return entry.mtimeMs;
  const inside = readdirSync(place).filter(name => name !== 'generated');
  return Math.max(0, ...inside.map(name => newest(path.join(place, name))));
}

export default function setup(): void {
  const newestSource = Math.max(...sources.map(source => newest(path.join(root, source))));
  if (newestSource <= newest(lastBuilt)) return;
  try {
    execFileSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: 'inherit' });
  } catch {
    // The whole test run builds first and counts this as a failure: here a single test may still run on its sources.
    console.error('The build failed: the bundles in dist/ are missing or old.');
  }
}
