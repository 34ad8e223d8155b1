import { existsSync } from 'node:fs';
import { readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { ReadProblem, ReadResult, SpecFiles } from '../language/project.ts';
import { largestFile } from './protocol.ts';

/** The folder that the files used by a spec lie in: the nearest one above it that holds `.git`, else its own. */
export function rootOf(file: string): string {
  const own = path.dirname(file);
  for (let at = own; ; at = path.dirname(at)) {
    if (existsSync(path.join(at, '.git'))) return at;
    if (at === path.dirname(at)) return own;
  }
}

export interface Places {
  /** No file outside this folder is read. */
  readonly root: string;
  /** Files are shown by their path from here: the working directory, or the folder open in the editor. */
  readonly shownFrom: string;
  /** Told the bytes of each file read. */
  readonly onRead?: (file: string, bytes: Uint8Array) => void;
}

/** Files of one folder, known by their absolute paths. */
export class NodeFiles implements SpecFiles {
  private readonly places: Places;
  private realRoot: Promise<string> | undefined;

  constructor(places: Places) {
    this.places = places;
  }

  resolve(from: string, written: string): string | undefined {
    // Both kinds of slash part folders, so that a spec means the same on every machine.
    const parts = written.replaceAll('\\', '/').split('/');
    if (parts[0] === '' || /^[a-z]:/i.test(written) || written.includes('\0')) return undefined;
    const file = path.resolve(path.dirname(from), ...parts);
    return isInside(this.places.root, file) ? file : undefined;
  }

  async read(file: string): Promise<ReadResult> {
    try {
      this.realRoot ??= realpath(this.places.root);
      const real = await realpath(file);
      if (!isInside(await this.realRoot, real)) return { problem: 'outside' };
      const entry = await stat(real);
      if (entry.isDirectory()) return { problem: 'folder' };
      // A device or a pipe may never come to an end.
      if (!entry.isFile()) return { problem: 'binary' };
      if (entry.size > largestFile) return { problem: 'too-large' };
      const bytes = await readFile(real);
      const result = decode(bytes);
      if ('text' in result) this.places.onRead?.(file, bytes);
      return result;
    } catch (error) {
      const code = (error as { code?: unknown }).code;
      return { problem: code === 'EACCES' || code === 'EPERM' ? 'forbidden' : 'missing' };
    }
  }

  /** From the working directory (in the editor: the open folder), with forward slashes. */
  show(file: string): string {
    return path.relative(this.places.shownFrom, file).replaceAll(path.sep, '/');
  }
}

/** UTF-8 text without its mark; a text in another encoding is told from what is no text. */
export function decode(bytes: Uint8Array): { readonly text: string } | { readonly problem: ReadProblem } {
  const [first, second] = bytes;
  const isWide = (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
  if (isWide) return { problem: 'encoding' };
  if (bytes.includes(0)) return { problem: 'binary' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { problem: 'encoding' };
  }
}

function isInside(folder: string, file: string): boolean {
  const from = path.relative(folder, file);
  return from !== '..' && !from.startsWith(`..${path.sep}`) && !path.isAbsolute(from);
}
