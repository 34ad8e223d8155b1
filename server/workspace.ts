// What stands open in an editor: its texts, the language of each folder, and what each open job comes to.
import {
  CodeLensRefreshRequest,
  InlayHintRefreshRequest,
  SemanticTokensRefreshRequest,
  TextDocuments,
  type CancellationToken,
  type ClientCapabilities,
  type Connection
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Paving, type Evaluation, type Look } from '../language/paving.ts';
import type { Parse } from '../language/syntax/parse.ts';
import { diagnosticsOf, toldOf, type Result, type Told } from './diagnostics.ts';
import { FolderFiles, NOWHERE, sameAddress, type ReadInFolder } from './folder-files.ts';
import { listFilesRequest, workNotification, type ListFilesResult, type WorkParams } from './protocol.ts';

/** Typing pauses for a moment before anything is worked out, ms. */
const PAUSE = 50;

/** The longest the server works before it looks whether something newer has come, ms. */
const SLICE = 10;

interface Language {
  readonly paving: Paving;
  readonly files: FolderFiles;
}

interface Run {
  cancelled: boolean;
  timer: ReturnType<typeof setTimeout> | undefined;
  readonly ended: Promise<void>;
  readonly end: () => void;
}

/** A file as it stands now, with all it uses; and the address of each file that is named as findings name it. */
export interface Seen extends Look {
  readonly uri: string;
  readonly files: FolderFiles;
  /** Reads a text that stands in no file, to see what a change would come to. */
  readonly parse: Parse;
}

/** All addresses inside are in the one spelling of `sameAddress`; a document's own is used towards the editor. */
export class Workspace {
  readonly connection: Connection;
  private readonly read: ReadInFolder;
  private readonly documents = new TextDocuments(TextDocument);
  private readonly open = new Map<string, TextDocument>();
  private readonly languages = new Map<string, Language>();
  private readonly results = new Map<string, Result>();
  private readonly failed = new Set<string>();
  private readonly runs = new Map<string, Run>();
  /** What was last sent of each file that has findings. */
  private readonly published = new Map<string, string>();
  private folders: string[] = [];
  private toldWorking = false;
  private client: ClientCapabilities = {};

  constructor(connection: Connection, read: ReadInFolder) {
    this.connection = connection;
    this.read = read;
  }

  begin(folders: readonly string[], client: ClientCapabilities): void {
    this.folders = folders.map(sameAddress);
    this.client = client;
  }

  listen(): void {
    this.documents.onDidChangeContent(({ document }) => this.changed(document));
    this.documents.onDidClose(({ document }) => this.closed(sameAddress(document.uri)));
    this.connection.onDidChangeWatchedFiles(({ changes }) => {
      for (const change of changes)
        for (const uri of this.standingFor(sameAddress(change.uri))) this.changedOutside(uri);
    });
    this.connection.onInitialized(() => {
      this.connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(folder => sameAddress(folder.uri)));
        const stay = this.folders.filter(folder => !gone.has(folder));
        this.folders = [...stay, ...added.map(folder => sameAddress(folder.uri))];
        // Which folder a file belongs to may have changed for each.
        // What was found stays until it is found anew.
        this.languages.clear();
        for (const uri of this.open.keys()) this.schedule(uri);
      });
    });
    this.documents.listen(this.connection);
  }

  // ---- what features ask for ----

  /** The open text of a file, as typed by now. */
  documentOf(uri: string): TextDocument | undefined {
    return this.open.get(sameAddress(uri));
  }

  /** The address of a file as the editor spells it. */
  editorsAddress(uri: string): string {
    return this.open.get(uri)?.uri ?? uri;
  }

  /** A file as it stands now, with all it uses; undefined when it cannot be read. */
  async look(address: string): Promise<Seen | undefined> {
    const uri = sameAddress(address);
    const { paving, files } = this.languageOf(uri);
    await paving.load(uri);
    return seenIn(paving, files, uri);
  }

  /** Every job spec in the folder of a file, open or not, each with all it uses; `all` is false when there are too many. */
  async lookAround(address: string): Promise<{ readonly seen: readonly Seen[]; readonly all: boolean }> {
    const uri = sameAddress(address);
    return this.lookThrough(this.languageOf(uri), [uri]);
  }

  /** Every job spec in an open folder, open or not. */
  async lookIn(folder: string): Promise<readonly Seen[]> {
    return (await this.lookThrough(this.languageOfFolder(folder), [])).seen;
  }

  private async lookThrough(
    { paving, files }: Language,
    more: readonly string[]
  ): Promise<{ readonly seen: readonly Seen[]; readonly all: boolean }> {
    const listed = await this.listFiles(files.folder);
    // A folder inside this one that is open by itself has a language of its own.
    const uris = [...new Set([...more, ...this.openIn(files), ...listed.uris.map(sameAddress)])].filter(
      uri => this.languageOf(uri).files === files
    );
    for (const uri of uris) await paving.load(uri);
    // All are looked at in one go: none is of another time than the others.
    return { seen: uris.flatMap(uri => seenIn(paving, files, uri) ?? []), all: listed.all };
  }

  /** What the editor makes of completions. */
  get completionSupport(): { readonly snippetSupport?: boolean; readonly labelDetailsSupport?: boolean } {
    return this.client.textDocument?.completion?.completionItem ?? {};
  }

  /** The folders that are open, for what is looked for in all of them. */
  get openFolders(): readonly string[] {
    return this.folders;
  }

  /** What a file comes to by now, as far as it is worked out; of a file without a job, what an open job that uses it does. */
  resultOf(address: string): Result | undefined {
    const uri = sameAddress(address);
    const own = this.results.get(uri);
    if (own?.evaluation.job !== undefined) return own;
    const using = [...this.results.values()].find(
      ({ evaluation, files }) =>
        evaluation.job !== undefined && evaluation.texts.some(({ file }) => files.uriOf(file) === uri)
    );
    return using ?? own;
  }

  /** Waits until the newest text of a file is worked out, and of the jobs that use it; ends at once when nobody waits any more. */
  async settled(address: string, token: CancellationToken): Promise<Result | undefined> {
    const uri = sameAddress(address);
    const given = new Promise<void>(resolve => token.onCancellationRequested(() => resolve()));
    for (let run = this.runOf(uri); run !== undefined && !token.isCancellationRequested; run = this.runOf(uri))
      await Promise.race([run.ended, given]);
    return this.resultOf(uri);
  }

  /** What is told of a file, once its newest text is worked out. */
  async findingsOf(address: string, token: CancellationToken): Promise<Told[]> {
    await this.settled(address, token);
    return toldOf(sameAddress(address), this.results);
  }

  /**
   * What would be found in a file, and in the job that it belongs to now, if its text were another; undefined when nobody
   * waits any more.
   */
  tryOut(address: string, text: string, token: CancellationToken): Promise<Evaluation | undefined> {
    const uri = sameAddress(address);
    const main = this.resultOf(uri)?.evaluation.file ?? uri;
    return this.sliced(this.languageOf(main).paving.tryOut(main, uri, text), token);
  }

  /** Does long work between what else is asked; undefined when nobody waits for it any more. */
  sliced<T>(steps: Generator<void, T>, token: CancellationToken): Promise<T | undefined> {
    const run = { cancelled: token.isCancellationRequested };
    token.onCancellationRequested(() => (run.cancelled = true));
    return this.inSlices(steps, run);
  }

  /** Whether the editor takes changes of a text for a version of it. */
  get knowsVersionedEdits(): boolean {
    return this.client.workspace?.workspaceEdit?.documentChanges === true;
  }

  private runOf(uri: string): Run | undefined {
    return (
      this.runs.get(uri) ??
      this.readersOf(uri)
        .map(reader => this.runs.get(reader))
        .find(run => run !== undefined)
    );
  }

  /** Counts of what is held, for tests: it must not grow with typing. */
  get held(): { readonly results: number; readonly texts: number; readonly runs: number } {
    const languages = [...this.languages.values()];
    return {
      results: languages.reduce((sum, { paving }) => sum + paving.session.size, 0),
      texts: languages.reduce((sum, { paving }) => sum + paving.textsHeld, 0),
      runs: this.runs.size
    };
  }

  /** Counts of work done so far, for tests. */
  get work(): { readonly parses: number; readonly computations: number } {
    const languages = [...this.languages.values()];
    return {
      parses: languages.reduce((sum, { paving }) => sum + paving.parses, 0),
      computations: languages.reduce(
        (sum, { paving }) => sum + Object.values(paving.session.computations).reduce((all, count) => all + count, 0),
        0
      )
    };
  }

  // ---- keeping up with texts ----

  private changed(document: TextDocument): void {
    const uri = sameAddress(document.uri);
    this.open.set(uri, document);
    this.languageOf(uri).paving.setText(uri, document.getText());
    // A file may be used from another folder that holds it.
    for (const { paving } of this.languages.values()) if (paving.knows(uri)) paving.setText(uri, document.getText());
    this.schedule(uri);
    if (this.readersOf(uri).length > 0) this.refreshColours();
  }

  private closed(uri: string): void {
    this.stop(uri);
    this.open.delete(uri);
    this.results.delete(uri);
    this.failed.delete(uri);
    this.changedOutside(uri);
    for (const [folder, { paving }] of this.languages)
      if (![...this.open.keys()].some(other => paving.knows(other))) this.languages.delete(folder);
    this.publish();
    this.tellWork();
  }

  /** A file that stands open nowhere is read again when it is next wanted. */
  private changedOutside(uri: string): void {
    const readers = this.readersOf(uri);
    for (const { paving } of this.languages.values()) paving.forget(uri);
    for (const reader of readers) this.schedule(reader);
    if (readers.length > 0) this.refreshColours();
  }

  /** What a name is can hang on another file: the editor asks anew only for the text that was typed in. */
  private refreshColours(): void {
    if (this.client.workspace?.semanticTokens?.refreshSupport)
      this.connection.sendRequest(SemanticTokensRefreshRequest.type).catch(() => undefined);
  }

  /** What changed on disk, as the files that are wanted and not open: of a folder that comes or goes nothing else is told. */
  private standingFor(uri: string): string[] {
    const below = [...this.languages.values()].flatMap(({ paving }) => paving.knownBelow(uri));
    return [...new Set([uri, ...below])].filter(file => !this.open.has(file));
  }

  /** Open files that use a file, whether it could be read or not. */
  private readersOf(uri: string): string[] {
    return [...this.open.keys()].filter(
      main => main !== uri && this.languageOf(main).paving.filesOf(main).includes(uri)
    );
  }

  private openIn(files: FolderFiles): string[] {
    return [...this.open.keys()].filter(uri => this.languageOf(uri).files === files);
  }

  /** The language of a folder: files of one folder see nothing of another. */
  private languageOf(uri: string): Language {
    const inside = this.folders
      .filter(root => uri.startsWith(`${root}/`))
      .sort((left, right) => right.length - left.length);
    const unsaved = uri.startsWith('untitled:') ? (this.folders[0] ?? NOWHERE) : undefined;
    return this.languageOfFolder(inside[0] ?? unsaved ?? uri.slice(0, Math.max(0, uri.lastIndexOf('/'))));
  }

  private languageOfFolder(folder: string): Language {
    let language = this.languages.get(folder);
    if (language === undefined) {
      const files = new FolderFiles(folder, (file, root) => this.readOpenOrStored(file, root));
      language = { files, paving: new Paving(files) };
      this.languages.set(folder, language);
    }
    return language;
  }

  private async readOpenOrStored(uri: string, folder: string): ReturnType<ReadInFolder> {
    const document = this.open.get(uri);
    return document === undefined ? this.read(uri, folder) : { text: document.getText() };
  }

  private async listFiles(folder: string): Promise<ListFilesResult> {
    if (!this.folders.includes(folder)) return { uris: [], all: true };
    return this.connection.sendRequest<ListFilesResult>(listFilesRequest, { folder });
  }

  // ---- working out ----

  private stop(uri: string): void {
    const run = this.runs.get(uri);
    if (run === undefined) return;
    run.cancelled = true;
    clearTimeout(run.timer);
    this.runs.delete(uri);
    run.end();
  }

  private begun(uri: string): Run {
    this.stop(uri);
    let end = (): void => undefined;
    const ended = new Promise<void>(resolve => (end = resolve));
    const run: Run = { cancelled: false, timer: undefined, ended, end };
    this.runs.set(uri, run);
    this.tellWork();
    return run;
  }

  private tellWork(): void {
    const working = this.runs.size > 0;
    if (working === this.toldWorking) return;
    this.toldWorking = working;
    void this.connection.sendNotification(workNotification, { working } satisfies WorkParams);
  }

  /** Works out a file once typing pauses, and what uses it. */
  private schedule(uri: string): void {
    const run = this.begun(uri);
    run.timer = setTimeout(() => {
      void this.workOut(uri, run);
      for (const reader of this.readersOf(uri)) void this.workOut(reader, this.begun(reader));
    }, PAUSE);
  }

  private async workOut(uri: string, run: Run): Promise<void> {
    const { paving, files } = this.languageOf(uri);
    try {
      await paving.load(uri);
      const evaluation = await this.inSlices(paving.evaluate(uri), run);
      if (run.cancelled || evaluation === undefined) return;
      this.results.set(uri, { evaluation, files });
      paving.forgetUnread(this.openIn(files));
      this.failed.delete(uri);
    } catch (error) {
      if (run.cancelled) return;
      this.connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
      this.results.delete(uri);
      this.failed.add(uri);
    } finally {
      if (this.runs.get(uri) === run) this.runs.delete(uri);
      run.end();
      this.tellWork();
    }
    this.publish();
    const { codeLens, inlayHint } = this.client.workspace ?? {};
    const ignore = (): void => undefined;
    if (codeLens?.refreshSupport) this.connection.sendRequest(CodeLensRefreshRequest.type).catch(ignore);
    if (inlayHint?.refreshSupport) this.connection.sendRequest(InlayHintRefreshRequest.type).catch(ignore);
  }

  /** Works in slices, so that the next keystroke is heard and the work it makes idle is dropped. */
  private async inSlices<T>(steps: Generator<void, T>, run: Pick<Run, 'cancelled'>): Promise<T | undefined> {
    for (let started = Date.now(); !run.cancelled;) {
      const step = steps.next();
      if (step.done) return step.value;
      if (Date.now() - started < SLICE) continue;
      await new Promise(resume => setTimeout(resume, 0));
      started = Date.now();
    }
    return undefined;
  }

  // ---- findings ----

  /** Findings of every open file and of the files they use; what nothing speaks of any more is cleared. */
  private publish(): void {
    const all = diagnosticsOf(this.results, this.failed);
    for (const uri of this.published.keys()) if (!all.has(uri)) all.set(uri, []);
    for (const [uri, diagnostics] of all) {
      const document = this.open.get(uri);
      const version = document === undefined ? {} : { version: document.version };
      const params = { uri: document?.uri ?? uri, diagnostics, ...version };
      const sent = JSON.stringify(params);
      // Two jobs that use one file end one after the other: what has not changed is not sent twice.
      if (this.published.get(uri) === sent) continue;
      if (diagnostics.length === 0 && document === undefined) this.published.delete(uri);
      else this.published.set(uri, sent);
      void this.connection.sendDiagnostics(params);
    }
  }
}

function seenIn(paving: Paving, files: FolderFiles, uri: string): Seen | undefined {
  const look = paving.look(uri);
  return look && { ...look, uri, files, parse: paving.parse };
}
