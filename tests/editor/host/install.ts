// Fetches an editor and a browser once: the editor out of an npm package, without building or downloading anything else.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import chromium from '@sparticuz/chromium';
import { places } from './places.ts';

// This release carries editor 1.100, the oldest the extension is made for, and runs on Node 20.
const editorPackage = 'code-server@4.100.3';

export function installEditor(): void {
  const done = path.join(places.editor, 'installed');
  if (existsSync(done) && readFileSync(done, 'utf8') === editorPackage) return;
  rmSync(places.editor, { recursive: true, force: true });
  mkdirSync(places.editor, { recursive: true });
  const run = (program: string, ...given: string[]) =>
    execFileSync(program, given, { cwd: places.editor, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
  const archive = run('npm', 'pack', '--silent', editorPackage).trim();
  run('tar', '-xzf', archive, '--strip-components=3', 'package/lib/vscode');
  rmSync(path.join(places.editor, archive));
  run('npm', 'install', '--ignore-scripts', '--omit=dev', '--no-audit', '--no-fund', '--loglevel=error');
  writeFileSync(done, editorPackage);
}

/** The browser's program: the one named in CHROMIUM_PATH, else the one from npm, else Debian's. */
export async function installBrowser(): Promise<string> {
  const named = process.env['CHROMIUM_PATH'];
  if (named) return named;
  if (missingForBrowser().length > 0 && process.getuid?.() === 0) {
    const quietly = { stdio: ['ignore', 'ignore', 'inherit'] as ['ignore', 'ignore', 'inherit'] };
    execFileSync('apt-get', ['update', '-qq'], quietly);
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...missingForBrowser()], quietly);
  }
  const missing = missingForBrowser();
  if (missing.length === 0) return unpackBrowser();
  const debian = '/usr/bin/chromium';
  if (existsSync(debian)) return debian;
  throw new Error(
    `The browser lacks ${missing.join(', ')}: apt-get install them, or name a Chromium in CHROMIUM_PATH.`
  );
}

/** The Debian packages that the browser needs and a bare machine lacks. */
function missingForBrowser(): string[] {
  const libraries = execFileSync('/sbin/ldconfig', ['-p'], { encoding: 'utf8' });
  const needed = { libnss3: 'libnss3.so', libnspr4: 'libnspr4.so', libexpat1: 'libexpat.so.1' };
  const missing = Object.entries(needed).filter(([, file]) => !libraries.includes(file));
  const fonts = existsSync('/etc/fonts/fonts.conf') ? [] : ['fontconfig-config', 'fonts-dejavu-core'];
  return [...missing.map(([name]) => name), ...fonts];
}

async function unpackBrowser(): Promise<string> {
  mkdirSync(places.browser, { recursive: true });
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = places.browser; // where that package unpacks to
  try {
    return await chromium.executablePath();
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
}
