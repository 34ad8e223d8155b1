// Installs the package as a person's editor does, and says where it is.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { places } from './places.ts';

export interface Installed {
  /** The folder of installed extensions. */
  readonly extensions: string;
  /** The folder of ours in it. */
  readonly extension: string;
}

export function installExtension(): Installed {
  const extensions = path.join(places.served, 'installed');
  rmSync(extensions, { recursive: true, force: true });
  const data = mkdtempSync(path.join(tmpdir(), 'paving-install-'));
  const where = ['--extensions-dir', extensions, '--server-data-dir', data];
  execFileSync(
    process.execPath,
    [
      path.join(places.editor, 'out/server-main.js'),
      '--accept-server-license-terms',
      ...where,
      '--install-extension',
      places.package
    ],
    { stdio: 'pipe' }
  );
  rmSync(data, { recursive: true, force: true });
  const [folder] = readdirSync(extensions).filter(name => name.startsWith('paving-job-spec.'));
  if (!folder) throw new Error('The editor did not install the package.');
  // The hosts under test load a copy: the editor keeps notes of its own in the installed one's package.json.
  rmSync(places.extension, { recursive: true, force: true });
  cpSync(path.join(extensions, folder), places.extension, { recursive: true });
  return { extensions, extension: places.extension };
}
