import { URI, Utils } from 'vscode-uri';
import type { ReadResult, SpecFiles } from '../language/project.ts';

/** Reads a file by its address, if it really lies in the folder, links followed. */
export type ReadInFolder = (uri: string, folder: string) => Promise<ReadResult>;

/** The one spelling of an address; editors differ in what they encode. */
export function sameAddress(uri: string): string {
  return URI.parse(uri).toString().replace(/\/+$/, '');
}

/** Stands for the folder of a file that is not saved yet while no folder is open: nothing can be used from there. */
export const NOWHERE = '';

/** The files of one folder in an editor, by address; shown by their path in the folder. */
export class FolderFiles implements SpecFiles {
  readonly folder: string;
  private readonly readInFolder: ReadInFolder;
  /** Addresses by what was shown of them. */
  private readonly shown = new Map<string, string>();

  constructor(folder: string, read: ReadInFolder) {
    this.folder = folder;
    this.readInFolder = read;
  }

  resolve(from: string, path: string): string | undefined {
    if (/^(?:[/\\]|[a-z][a-z0-9+.-]*:)/i.test(path)) return undefined;
    // A file that is not saved yet counts as standing in the folder.
    const at = this.isInside(from) ? Utils.dirname(URI.parse(from)) : URI.parse(this.folder);
    const uri = Utils.resolvePath(at, path.replaceAll('\\', '/')).toString();
    return this.isInside(uri) || this.folder === NOWHERE ? uri : undefined;
  }

  read(file: string): Promise<ReadResult> {
    return this.folder === NOWHERE ? Promise.resolve({ problem: 'unsaved' }) : this.readInFolder(file, this.folder);
  }

  show(file: string): string {
    const { path } = URI.parse(file);
    const shown = this.isInside(file) ? path.slice(URI.parse(this.folder).path.length + 1) : path;
    this.shown.set(shown, file);
    return shown;
  }

  /** The address of a file by what `show` gave. */
  uriOf(shown: string): string {
    return this.shown.get(shown) ?? shown;
  }

  private isInside(file: string): boolean {
    return file.startsWith(`${this.folder}/`);
  }
}
