// The texts that stand open in an editor, and the language of each folder: what its files are, read and unread.
import type { CancellationToken } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { Paving, type Look } from '../language/paving.ts';
import type { Parse } from '../language/syntax/parse.ts';
import { abandoned } from './feature.ts';
import { FolderFiles, NOWHERE, type ReadInFolder } from './folder-files.ts';
import type { ListFilesResult } from './protocol.ts';
import { Slices } from './runs.ts';
import { today } from './today.ts';

export interface Language {
  readonly paving: Paving;
  readonly files: FolderFiles;
  /** How many requests read files just now: none of theirs may be let go. */
  looks: number;
}

/** A file as it stands now, with all it uses; and the address of each file that is named as findings name it. */
export interface Seen extends Look {
  readonly uri: string;
  readonly files: FolderFiles;
  /** Reads a text that stands in no file, to see what a change would come to. */
  readonly parse: Parse;
}

/** Job specs of a folder; `all` is false when there are too many to look through. */
export interface SeenAround {
  readonly seen: readonly Seen[];
  readonly all: boolean;
}

/** All addresses are in the one spelling of `sameAddress`. */
export class Languages {
  readonly open = new Map<string, TextDocument>();
  private folders: readonly string[] = [];
  private readonly byFolder = new Map<string, Language>();
  private readonly read: ReadInFolder;
  private readonly list: (folder: string) => Promise<ListFilesResult>;

  constructor(read: ReadInFolder, list: (folder: string) => Promise<ListFilesResult>) {
    this.read = read;
    this.list = list;
  }

  get openFolders(): readonly string[] {
    return this.folders;
  }

  /** Which folder a file belongs to may have changed for each: all are read anew. */
  setFolders(folders: readonly string[]): void {
    this.folders = folders;
    this.byFolder.clear();
  }

  // ---- open texts ----

  changed(uri: string, document: TextDocument): void {
    this.open.set(uri, document);
    this.of(uri).paving.setText(uri, document.getText());
    // A file may be used from another folder that holds it.
    for (const { paving } of this.byFolder.values()) if (paving.knows(uri)) paving.setText(uri, document.getText());
  }

  /** A file that stands open nowhere is read again when it is next wanted. */
  forget(uri: string): void {
    for (const { paving } of this.byFolder.values()) paving.forget(uri);
  }

  /** What changed on disk, as the files that are wanted and not open: of a folder that comes or goes nothing else is told. */
  standingFor(uri: string): string[] {
    const below = [...this.byFolder.values()].flatMap(({ paving }) => paving.knownBelow(uri));
    return [...new Set([uri, ...below])].filter(file => !this.open.has(file));
  }

  /** Open files that use a file, whether it could be read or not, as of when they were last looked into. */
  readersOf(uri: string): string[] {
    return [...this.open.keys()].filter(main => main !== uri && this.of(main).paving.lastFilesOf(main).includes(uri));
  }

  // ---- languages ----

  /** The language of a file's folder: files of one folder see nothing of another. */
  of(uri: string): Language {
    const inside = this.folders
      .filter(root => uri.startsWith(`${root}/`))
      .sort((left, right) => right.length - left.length);
    const unsaved = uri.startsWith('untitled:') ? (this.folders[0] ?? NOWHERE) : undefined;
    return this.ofFolder(inside[0] ?? unsaved ?? uri.slice(0, Math.max(0, uri.lastIndexOf('/'))));
  }

  /** Lets go of what no open file leads to, unless somebody looks at it just now. */
  letGo(): void {
    for (const [folder, language] of this.byFolder) {
      if (language.looks > 0) continue;
      const mains = this.openIn(language);
      if (mains.length === 0) this.byFolder.delete(folder);
      else language.paving.forgetUnreached(mains);
    }
  }

  private ofFolder(folder: string): Language {
    let language = this.byFolder.get(folder);
    if (language === undefined) {
      const files = new FolderFiles(folder, (file, root) => this.readOpenOrStored(file, root));
      language = { files, paving: new Paving(files, today), looks: 0 };
      this.byFolder.set(folder, language);
    }
    return language;
  }

  private openIn(language: Language): string[] {
    return [...this.open.keys()].filter(uri => this.of(uri) === language);
  }

  private async readOpenOrStored(uri: string, folder: string): ReturnType<ReadInFolder> {
    const document = this.open.get(uri);
    return document === undefined ? this.read(uri, folder) : { text: document.getText() };
  }

  // ---- looking ----

  async look(uri: string): Promise<Seen | undefined> {
    const language = this.of(uri);
    return this.looking(language, async () => {
      await language.paving.load(uri);
      return seenIn(language, uri);
    });
  }

  async lookAround(uri: string, token: CancellationToken): Promise<SeenAround> {
    return this.lookThrough(this.of(uri), [uri], token);
  }

  async lookIn(folder: string, token: CancellationToken): Promise<SeenAround> {
    return this.lookThrough(this.ofFolder(folder), [], token);
  }

  private lookThrough(language: Language, more: readonly string[], token: CancellationToken): Promise<SeenAround> {
    return this.looking(language, async () => {
      const { folder } = language.files;
      const listed = this.folders.includes(folder) ? await this.list(folder) : { uris: [], all: true };
      // A folder inside this one that is open by itself has a language of its own.
      const uris = [...new Set([...more, ...this.openIn(language), ...listed.uris])].filter(
        uri => this.of(uri) === language
      );
      const slices = new Slices();
      // What changes on disk meanwhile is read again.
      for (let left = uris; left.length > 0; left = uris.filter(uri => !language.paving.knows(uri)))
        for (const uri of left) {
          if (token.isCancellationRequested) throw abandoned();
          await language.paving.load(uri);
          await slices.pause();
        }
      // All are looked at in one go: none is of another time than the others.
      return { seen: uris.flatMap(uri => seenIn(language, uri) ?? []), all: listed.all };
    });
  }

  /** Uses the language of a file: nothing of it is let go meanwhile. */
  lookingAt<T>(uri: string, look: (language: Language) => Promise<T>): Promise<T> {
    const language = this.of(uri);
    return this.looking(language, () => look(language));
  }

  private async looking<T>(language: Language, look: () => Promise<T>): Promise<T> {
    language.looks++;
    try {
      return await look();
    } finally {
      language.looks--;
      // Of a folder with nothing open in it no pause in typing will come.
      if (this.openIn(language).length === 0) this.letGo();
    }
  }

  // ---- counts, for tests ----

  get held(): { readonly results: number; readonly texts: number } {
    const languages = [...this.byFolder.values()];
    return {
      results: languages.reduce((sum, { paving }) => sum + paving.session.size, 0),
      texts: languages.reduce((sum, { paving }) => sum + paving.textsHeld, 0)
    };
  }

  get work(): { readonly parses: number; readonly computations: number } {
    const languages = [...this.byFolder.values()];
    return {
      parses: languages.reduce((sum, { paving }) => sum + paving.parses, 0),
      computations: languages.reduce(
        (sum, { paving }) => sum + Object.values(paving.session.computations).reduce((all, count) => all + count, 0),
        0
      )
    };
  }
}

function seenIn({ paving, files }: Language, uri: string): Seen | undefined {
  const look = paving.look(uri);
  return look && { ...look, uri, files, parse: paving.parse };
}
