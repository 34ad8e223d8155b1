// One set-up for the language server in Node and in a browser's worker: what differs is how files are read.
import {
  CodeLensRefreshRequest,
  MarkupKind,
  TextDocuments,
  TextDocumentSyncKind,
  type CodeLens,
  type Connection,
  type Hover,
  type InitializeParams
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Paving, type Evaluation } from '../language/paving.ts';
import { hoverAt } from '../language/views/hover.ts';
import { lensesIn } from '../language/views/lenses.ts';
import { diagnosticsOf, rangeOf, type Result } from './diagnostics.ts';
import { FolderFiles, sameAddress, type ReadInFolder } from './folder-files.ts';

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
}

/** All addresses inside are in the one spelling of `sameAddress`; a document's own is used towards the editor. */
export function setUp(connection: Connection, read: ReadInFolder): void {
  const documents = new TextDocuments(TextDocument);
  const open = new Map<string, TextDocument>();
  const languages = new Map<string, Language>();
  const results = new Map<string, Result>();
  const failed = new Set<string>();
  const runs = new Map<string, Run>();
  let published = new Set<string>();
  let folders: string[] = [];
  let refreshesLenses = false;

  connection.onInitialize((params: InitializeParams) => {
    folders = (params.workspaceFolders ?? []).map(folder => sameAddress(folder.uri));
    refreshesLenses = params.capabilities.workspace?.codeLens?.refreshSupport ?? false;
    return {
      capabilities: {
        textDocumentSync: TextDocumentSyncKind.Incremental,
        hoverProvider: true,
        codeLensProvider: {},
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } }
      }
    };
  });
  connection.onInitialized(() => {
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      const gone = new Set(removed.map(folder => sameAddress(folder.uri)));
      folders = [...folders.filter(folder => !gone.has(folder)), ...added.map(folder => sameAddress(folder.uri))];
      // Which folder a file belongs to may have changed for each.
      // What was found stays until it is found anew.
      languages.clear();
      for (const uri of open.keys()) schedule(uri);
    });
  });

  // ---- keeping up with texts ----

  documents.onDidChangeContent(({ document }) => {
    const uri = sameAddress(document.uri);
    open.set(uri, document);
    languageOf(uri).paving.setText(uri, document.getText());
    // A file may be used from another folder that holds it.
    for (const { paving } of languages.values()) if (paving.knows(uri)) paving.setText(uri, document.getText());
    schedule(uri);
  });
  documents.onDidClose(({ document }) => {
    const uri = sameAddress(document.uri);
    stop(uri);
    open.delete(uri);
    results.delete(uri);
    failed.delete(uri);
    changedOutside(uri);
    for (const [folder, { paving }] of languages)
      if (![...open.keys()].some(other => paving.knows(other))) languages.delete(folder);
    publish();
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const change of changes) {
      const uri = sameAddress(change.uri);
      if (!open.has(uri)) changedOutside(uri);
    }
  });

  /** A file that stands open nowhere is read again when it is next wanted. */
  function changedOutside(uri: string): void {
    const readers = readersOf(uri);
    for (const { paving } of languages.values()) paving.forget(uri);
    for (const reader of readers) schedule(reader);
  }

  /** Open files that use a file, whether it could be read or not. */
  function readersOf(uri: string): string[] {
    return [...open.keys()].filter(main => main !== uri && languageOf(main).paving.filesOf(main).includes(uri));
  }

  /** The language of a folder: files of one folder see nothing of another. */
  function languageOf(uri: string): Language {
    const inside = folders.filter(root => uri.startsWith(`${root}/`)).sort((left, right) => right.length - left.length);
    const unsaved = uri.startsWith('untitled:') ? folders[0] : undefined;
    const folder = inside[0] ?? unsaved ?? uri.slice(0, Math.max(0, uri.lastIndexOf('/')));
    let language = languages.get(folder);
    if (language === undefined) {
      const files = new FolderFiles(folder, readOpenOrStored);
      language = { files, paving: new Paving(files) };
      languages.set(folder, language);
    }
    return language;
  }

  async function readOpenOrStored(uri: string, folder: string): ReturnType<ReadInFolder> {
    const document = open.get(uri);
    return document === undefined ? read(uri, folder) : { text: document.getText() };
  }

  // ---- working out ----

  function stop(uri: string): void {
    const run = runs.get(uri);
    if (run === undefined) return;
    run.cancelled = true;
    clearTimeout(run.timer);
    runs.delete(uri);
  }

  /** Works out a file once typing pauses, and what uses it. */
  function schedule(uri: string): void {
    stop(uri);
    const run: Run = { cancelled: false, timer: undefined };
    run.timer = setTimeout(() => {
      void workOut(uri, run);
      for (const reader of readersOf(uri)) {
        stop(reader);
        const other: Run = { cancelled: false, timer: undefined };
        runs.set(reader, other);
        void workOut(reader, other);
      }
    }, PAUSE);
    runs.set(uri, run);
  }

  async function workOut(uri: string, run: Run): Promise<void> {
    const { paving, files } = languageOf(uri);
    try {
      await paving.load(uri);
      const evaluation = await inSlices(paving.evaluate(uri), run);
      if (run.cancelled || evaluation === undefined) return;
      results.set(uri, { evaluation, files });
      failed.delete(uri);
    } catch (error) {
      if (run.cancelled) return;
      connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
      results.delete(uri);
      failed.add(uri);
    }
    runs.delete(uri);
    publish();
    if (refreshesLenses) connection.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined);
  }

  /** Works in slices, so that the next keystroke is heard and the work it makes idle is dropped. */
  async function inSlices(steps: Generator<void, Evaluation | undefined>, run: Run): Promise<Evaluation | undefined> {
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
  function publish(): void {
    const all = diagnosticsOf(results, failed);
    for (const uri of published) if (!all.has(uri)) all.set(uri, []);
    for (const [uri, diagnostics] of all) {
      const document = open.get(uri);
      const version = document === undefined ? {} : { version: document.version };
      void connection.sendDiagnostics({ uri: document?.uri ?? uri, diagnostics, ...version });
    }
    published = new Set([...all].filter(([, diagnostics]) => diagnostics.length > 0).map(([uri]) => uri));
  }

  // ---- views ----

  connection.onHover(({ textDocument, position }): Hover | undefined => {
    const uri = sameAddress(textDocument.uri);
    const result = results.get(uri) ?? resultWith(uri);
    if (result === undefined) return undefined;
    const { evaluation, files } = result;
    const hover = hoverAt(evaluation, files.show(uri), position.line + 1, position.character + 1);
    return hover && { contents: { kind: MarkupKind.Markdown, value: hover.markdown }, range: rangeOf(hover.place) };
  });

  connection.onCodeLens(({ textDocument }): CodeLens[] => {
    const uri = sameAddress(textDocument.uri);
    const result = results.get(uri);
    if (result === undefined) return [];
    return lensesIn(result.evaluation, result.files.show(uri)).map(({ place, text }) => ({
      range: rangeOf(place),
      command: { title: text, command: '' }
    }));
  });

  /** A file without a job shows the numbers of an open job that uses it. */
  function resultWith(uri: string): Result | undefined {
    return [...results.values()].find(({ evaluation, files }) =>
      evaluation.texts.some(({ file }) => files.uriOf(file) === uri)
    );
  }

  documents.listen(connection);
  connection.listen();
}
