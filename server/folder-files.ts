import { URI, Utils } from 'vscode-uri';
import type { ReadResult, SpecFiles } from '../language/project.ts';

/** Reads a file by its address, if it really lies in the folder, links followed. */
export type ReadInFolder = (uri: string, folder: string) => Promise<ReadResult>;

/** The files of one folder in an editor, by address; shown by their path in the folder. */
export class FolderFiles implements SpecFiles {
  private readonly folder: string;
  private readonly readInFolder: ReadInFolder;

  constructor(folder: string, read: ReadInFolder) {
    this.folder = folder;
    this.readInFolder = read;
  }

  resolve(from: string, path: string): string | undefined {
    if (/^(?:[/\\]|[a-z][a-z0-9+.-]*:)/i.test(path)) return undefined;
    const uri = Utils.resolvePath(Utils.dirname(URI.parse(from)), path.replaceAll('\\', '/')).toString();
    return uri.startsWith(`${this.folder}/`) ? uri : undefined;
  }

  read(file: string): Promise<ReadResult> {
    return this.readInFolder(file, this.folder);
  }

  show(file: string): string {
    return file.startsWith(`${this.folder}/`) ? decodeURIComponent(file.slice(this.folder.length + 1)) : file;
  }

  /** The address of a file by what `show` gave. */
  uriOf(shown: string): string {
    return shown.includes(':') && !shown.startsWith('/') && /^[a-z][a-z0-9+.-]*:\//i.test(shown)
      ? shown
      : Utils.joinPath(URI.parse(this.folder), ...shown.split('/')).toString();
  }
}
