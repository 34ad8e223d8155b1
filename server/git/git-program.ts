import { existsSync } from 'node:fs';
import path from 'node:path';

let known: string | undefined;

/**
 * What is started as git. Windows would look for a bare name in the folder that git is asked in first, where anybody may
 * have put a program; there it is looked for on the path, once. Undefined where it is not there.
 */
export function gitProgram(): string | undefined {
  if (process.platform !== 'win32') return 'git';
  known ??= gitOnWindowsPath(process.env['PATH'] ?? '', existsSync);
  return known;
}

/** The first `git.exe` in a path's folders; those that count from where somebody is, or from the drive, are passed over. */
export function gitOnWindowsPath(folders: string, isThere: (file: string) => boolean): string | undefined {
  return folders
    .split(';')
    .map(folder => folder.replaceAll('"', '').trim())
    .filter(folder => /^(?:[a-z]:[\\/]|[\\/]{2}[^\\/])/i.test(folder))
    .map(folder => path.win32.join(folder, 'git.exe'))
    .find(isThere);
}
