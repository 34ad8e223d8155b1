// One set-up for the language server in Node and in a browser's worker: what differs is how files are read.
import {
  CodeLensRefreshRequest,
  DiagnosticSeverity,
  MarkupKind,
  TextDocuments,
  TextDocumentSyncKind,
  type CodeLens,
  type Connection,
  type Diagnostic,
  type Hover,
  type InitializeParams
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Finding, Place } from '../language/findings/finding.ts';
import { Paving, type Evaluation } from '../language/paving.ts';
import { hoverAt } from '../language/views/hover.ts';
import { lensesIn } from '../language/views/lenses.ts';
import { pageScheme } from './protocol.ts';
import { FolderFiles, type ReadInFolder } from './folder-files.ts';

/** Typing pauses for a moment before anything is worked out. */
const PAUSE = 50;

/** The longest the server works before it looks whether something newer has come, ms. */
const SLICE = 10;

/** The editor shows at most 1,000 findings of a file; beyond this many a person has other troubles. */
const MOST_FINDINGS = 500;

interface Result {
  readonly evaluation: Evaluation;
  readonly files: FolderFiles;
}

export function setUp(connection: Connection, read: ReadInFolder): void {
  const documents = new TextDocuments(TextDocument);
  const languages = new Map<string, { paving: Paving; files: FolderFiles }>();
  const results = new Map<string, Result>();
  const running = new Map<string, { cancelled: boolean; timer: ReturnType<typeof setTimeout> }>();
  let folders: string[] = [];
  let refreshLenses = false;

  connection.onInitialize((params: InitializeParams) => {
    folders = (params.workspaceFolders ?? []).map(folder => bare(folder.uri));
    refreshLenses = params.capabilities.workspace?.codeLens?.refreshSupport ?? false;
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
    connection.workspace.onDidChangeWorkspaceFolders(change => {
      const removed = new Set(change.removed.map(folder => bare(folder.uri)));
      folders = [...folders.filter(folder => !removed.has(folder)), ...change.added.map(folder => bare(folder.uri))];
    });
  });

  // ---- keeping up with texts ----

  documents.onDidChangeContent(({ document }) => {
    languageOf(document.uri).paving.setText(document.uri, document.getText());
    schedule(document.uri);
    for (const main of readersOf(document.uri)) schedule(main);
  });
  documents.onDidClose(({ document }) => {
    stop(document.uri);
    results.delete(document.uri);
    languageOf(document.uri).paving.forget(document.uri);
    publish();
    for (const main of readersOf(document.uri)) schedule(main);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) {
      if (documents.get(uri) !== undefined) continue;
      for (const { paving } of languages.values()) paving.forget(uri);
      for (const main of readersOf(uri)) schedule(main);
    }
  });

  /** Open files that use a file, whether it could be read or not. */
  function readersOf(uri: string): string[] {
    return documents.keys().filter(main => main !== uri && languageOf(main).paving.filesOf(main).includes(uri));
  }

  /** The language of a folder: files of one folder see nothing of another. */
  function languageOf(uri: string): { paving: Paving; files: FolderFiles } {
    const folder =
      folders.filter(root => uri.startsWith(`${root}/`)).sort((left, right) => right.length - left.length)[0] ??
      uri.slice(0, uri.lastIndexOf('/'));
    let language = languages.get(folder);
    if (language === undefined) {
      const files = new FolderFiles(folder, read);
      language = { files, paving: new Paving(files) };
      languages.set(folder, language);
    }
    return language;
  }

  // ---- working out ----

  function stop(uri: string): void {
    const run = running.get(uri);
    if (run === undefined) return;
    run.cancelled = true;
    clearTimeout(run.timer);
    running.delete(uri);
  }

  function schedule(uri: string): void {
    stop(uri);
    const run = { cancelled: false, timer: setTimeout(() => void workOut(uri, run), PAUSE) };
    running.set(uri, run);
  }

  /** Works in slices, so that the next keystroke is heard and the work it makes idle is dropped. */
  async function workOut(uri: string, run: { cancelled: boolean }): Promise<void> {
    const { paving, files } = languageOf(uri);
    try {
      await paving.load(uri);
      const steps = paving.evaluate(uri);
      for (let started = Date.now(); ;) {
        if (run.cancelled) return;
        const step = steps.next();
        if (step.done) {
          if (step.value === undefined) return;
          results.set(uri, { evaluation: step.value, files });
          break;
        }
        if (Date.now() - started < SLICE) continue;
        await new Promise(resume => setTimeout(resume, 0));
        started = Date.now();
      }
    } catch (error) {
      connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
      failed.add(uri);
      publish();
      return;
    }
    failed.delete(uri);
    running.delete(uri);
    publish();
    if (refreshLenses) connection.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined);
  }

  // ---- findings ----

  const failed = new Set<string>();
  let published = new Set<string>();

  /** Findings of every open file and of the files they use; what nothing speaks of any more is cleared. */
  function publish(): void {
    const byUri = new Map<string, Diagnostic[]>();
    for (const [uri, { evaluation, files }] of results) {
      byUri.set(uri, byUri.get(uri) ?? []);
      for (const finding of evaluation.findings) {
        const at = files.uriOf(finding.file);
        // What a job finds in a file that stands open is told by that file as well: once is enough.
        if (
          at !== uri &&
          results.has(at) &&
          results
            .get(at)!
            .evaluation.findings.some(
              same => same.id === finding.id && same.line === finding.line && same.column === finding.column
            )
        )
          continue;
        byUri.set(at, [...(byUri.get(at) ?? []), diagnostic(finding, files)]);
      }
    }
    for (const uri of failed) byUri.set(uri, [INTERNAL, ...(byUri.get(uri) ?? [])]);
    for (const uri of published) if (!byUri.has(uri)) void connection.sendDiagnostics({ uri, diagnostics: [] });
    for (const [uri, diagnostics] of byUri) {
      const version = documents.get(uri)?.version;
      void connection.sendDiagnostics({
        uri,
        diagnostics: capped(diagnostics),
        ...(version === undefined ? {} : { version })
      });
    }
    published = new Set(byUri.keys());
  }

  // ---- views ----

  connection.onHover(({ textDocument, position }): Hover | undefined => {
    const result = results.get(textDocument.uri) ?? resultWith(textDocument.uri);
    if (result === undefined) return undefined;
    const hover = hoverAt(
      result.evaluation,
      result.files.show(textDocument.uri),
      position.line + 1,
      position.character + 1
    );
    return hover && { contents: { kind: MarkupKind.Markdown, value: hover.markdown }, range: rangeOf(hover.place) };
  });

  connection.onCodeLens(({ textDocument }): CodeLens[] => {
    const result = results.get(textDocument.uri);
    if (result === undefined) return [];
    return lensesIn(result.evaluation, result.files.show(textDocument.uri)).map(({ place, text }) => ({
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

/** A folder's address without a slash at its end. */
function bare(uri: string): string {
  return uri.replace(/\/+$/, '');
}

function rangeOf(place: Place): Diagnostic['range'] {
  return {
    start: { line: place.line - 1, character: place.column - 1 },
    end: { line: place.endLine - 1, character: place.endColumn - 1 }
  };
}

const SEVERITIES = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information
} as const;

function diagnostic(finding: Finding, files: FolderFiles): Diagnostic {
  return {
    range: rangeOf(finding),
    severity: SEVERITIES[finding.severity],
    source: 'paving',
    code: finding.id,
    codeDescription: { href: `${pageScheme}:/${finding.id}` },
    message: finding.source === undefined ? finding.message : `${finding.message}\n${finding.source}`,
    relatedInformation: finding.related.map(related => ({
      location: { uri: files.uriOf(related.file), range: rangeOf(related) },
      message: related.message
    }))
  };
}

/** Sorted by weight, so that what is left out weighs least; how many are left out is said. */
function capped(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  if (diagnostics.length <= MOST_FINDINGS) return [...diagnostics];
  const sorted = [...diagnostics].sort((left, right) => (left.severity ?? 1) - (right.severity ?? 1));
  const more = `${diagnostics.length - MOST_FINDINGS} more findings in this file are not shown.`;
  return [
    ...sorted.slice(0, MOST_FINDINGS),
    { range: sorted[0]!.range, severity: DiagnosticSeverity.Information, source: 'paving', message: more }
  ];
}

const INTERNAL: Diagnostic = {
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
  severity: DiagnosticSeverity.Error,
  source: 'paving',
  code: 'internal',
  codeDescription: { href: `${pageScheme}:/internal` },
  message: 'This program failed on this file; its numbers are not shown. The log (Output, Paving job spec) tells where.'
};
