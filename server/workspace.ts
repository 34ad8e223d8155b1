// What stands open in an editor, and what each open job comes to.
import { TextDocuments, type CancellationToken, type ClientCapabilities, type Connection } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Compared } from '../language/comparing/compare.ts';
import { whyNotDragged } from '../language/editing/dragging/why-not-dragged.ts';
import type { Evaluation } from '../language/paving.ts';
import type { ShownFigures } from '../language/job-figures.ts';
import type { VariantEvaluation } from '../language/variants.ts';
import type { LivePlan } from '../language/views/live-plan/live-plan.ts';
import { Comparisons } from './comparisons.ts';
import { diagnosticsOf, toldOf, type Result, type Told } from './diagnostics.ts';
import { sameAddress, type ReadInFolder } from './folder-files.ts';
import type { History } from './history.ts';
import { Languages, type Seen, type SeenAround } from './languages.ts';
import { LivePlans } from './live-plans.ts';
import { listFilesRequest, workNotification, type ListFilesResult, type WorkParams } from './protocol.ts';
import { inSlices, Runs, type Run } from './runs.ts';
import { Shown } from './shown.ts';

/** Typing pauses for a moment before anything is worked out, ms. */
const PAUSE = 50;

/** All addresses inside are in the one spelling of `sameAddress`; a document's own is used towards the editor. */
export class Workspace {
  readonly connection: Connection;
  readonly comparisons: Comparisons;
  readonly livePlans: LivePlans;
  private readonly languages: Languages;
  private readonly documents = new TextDocuments(TextDocument);
  private readonly results = new Map<string, Result>();
  private readonly failed = new Set<string>();
  private readonly runs: Runs;
  private readonly shown: Shown;
  private readonly toldOfTooMany = new Set<string>();
  private client: ClientCapabilities = {};

  /** Without a history nothing is compared but files. */
  constructor(connection: Connection, read: ReadInFolder, history?: History) {
    this.connection = connection;
    this.comparisons = new Comparisons(this, history);
    this.livePlans = new LivePlans(this);
    this.languages = new Languages(read, folder => this.listFiles(folder));
    this.shown = new Shown(connection);
    this.runs = new Runs(working => {
      void connection.sendNotification(workNotification, { working } satisfies WorkParams);
    });
  }

  begin(folders: readonly string[], client: ClientCapabilities): void {
    this.languages.setFolders(folders.map(sameAddress));
    this.client = client;
  }

  listen(): void {
    this.documents.onDidChangeContent(({ document }) => this.changed(document));
    this.documents.onDidClose(({ document }) => this.closed(sameAddress(document.uri)));
    this.documents.onDidSave(() => void this.comparisons.lookAgain());
    this.connection.onDidChangeWatchedFiles(({ changes }) => {
      if (changes.some(({ uri }) => HEAD_MOVES.test(uri))) void this.comparisons.lookAgain();
      for (const change of changes)
        for (const uri of this.languages.standingFor(sameAddress(change.uri))) this.changedOutside(uri);
    });
    this.connection.onInitialized(() => {
      this.connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(folder => sameAddress(folder.uri)));
        const stay = this.openFolders.filter(folder => !gone.has(folder));
        // What was found stays until it is found anew.
        this.languages.setFolders([...stay, ...added.map(folder => sameAddress(folder.uri))]);
        for (const uri of this.languages.open.keys()) this.schedule(uri);
      });
    });
    this.connection.onShutdown(() => this.runs.stopAll());
    this.documents.listen(this.connection);
  }

  // ---- what features ask for ----

  /** The open text of a file, as typed by now. */
  documentOf(uri: string): TextDocument | undefined {
    return this.languages.open.get(sameAddress(uri));
  }

  /** The address of a file as the editor spells it. */
  editorsAddress(uri: string): string {
    return this.languages.open.get(uri)?.uri ?? uri;
  }

  /** A file as it stands now, with all it uses; undefined when it cannot be read. */
  look(address: string): Promise<Seen | undefined> {
    return this.languages.look(sameAddress(address));
  }

  /**
   * Every job spec in the folder of a file, open or not, each with all it uses; `all` is false when there are too many.
   * Abandoned when nobody waits any more.
   */
  lookAround(address: string, token: CancellationToken): Promise<SeenAround> {
    return this.languages.lookAround(sameAddress(address), token);
  }

  /** The same of an open folder. */
  lookIn(folder: string, token: CancellationToken): Promise<SeenAround> {
    return this.languages.lookIn(folder, token);
  }

  /** Says, once of each folder, that what was looked for may stand in more places than were found. */
  tellTooMany(folder: string): void {
    if (this.toldOfTooMany.has(folder)) return;
    this.toldOfTooMany.add(folder);
    void this.connection.window.showWarningMessage(TOO_MANY);
  }

  /** What the editor makes of completions. */
  get completionSupport(): { readonly snippetSupport?: boolean; readonly labelDetailsSupport?: boolean } {
    return this.client.textDocument?.completion?.completionItem ?? {};
  }

  /** The folders that are open, for what is looked for in all of them. */
  get openFolders(): readonly string[] {
    return this.languages.openFolders;
  }

  /** What a file comes to by now, as far as it is worked out; of a file without a job, what an open job that uses it does. */
  resultOf(address: string): Result | undefined {
    const uri = sameAddress(address);
    const own = this.results.get(uri);
    if (own?.evaluation.job !== undefined) return own;
    const using = [...this.results.values()].find(
      result => result.evaluation.job !== undefined && addressesIn(result).includes(uri)
    );
    return using ?? own;
  }

  /**
   * Waits until the newest text of a file is worked out, of what it uses, and of the jobs that use it; ends at once when
   * nobody waits any more.
   */
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
    return this.sliced(this.languages.of(main).paving.tryOut(main, uri, text), token);
  }

  /** What the job of a result needs, costs and takes; undefined without a job, or when nobody waits any more. */
  figuresOf({ evaluation }: Result, token: CancellationToken): Promise<ShownFigures | undefined> {
    return this.sliced(this.languages.of(evaluation.file).paving.figures(evaluation), token);
  }

  /** The plan of the job of a result; undefined without a job, or when nobody waits any more. */
  livePlanOf({ evaluation }: Result, token: CancellationToken): Promise<LivePlan | undefined> {
    const { paving } = this.languages.of(evaluation.file);
    const look = paving.look(evaluation.file);
    const whyNot = look && whyNotDragged(look, evaluation.job);
    return this.sliced(paving.livePlan(evaluation, whyNot), token);
  }

  /** What the job of a result comes to as its variants have it. */
  async variantsOf({ evaluation: { file } }: Result, token: CancellationToken): Promise<VariantEvaluation[]> {
    return (await this.sliced(this.languages.of(file).paving.variants(file), token)) ?? [];
  }

  /** What a result is compared by; undefined where its texts have moved on meanwhile, or nobody waits any more. */
  async comparedOf({ evaluation }: Result, token: CancellationToken): Promise<Compared | undefined> {
    const { paving } = this.languages.of(evaluation.file);
    const priced = await this.sliced(paving.priced(evaluation), token);
    const look = paving.look(evaluation.file);
    const isOfNow = look?.project.texts.every(({ parsed }, index) => parsed.text === evaluation.texts[index]?.text);
    if (look === undefined || isOfNow !== true || token.isCancellationRequested) return undefined;
    return { evaluation, look, ...(priced === undefined ? {} : { priced }) };
  }

  /** The same of any job spec of an open folder, open or not; undefined when it cannot be read. */
  comparedFile(address: string, token: CancellationToken): Promise<(Compared & Result) | undefined> {
    const uri = sameAddress(address);
    return this.languages.lookingAt(uri, async ({ paving, files }) => {
      await paving.load(uri);
      const evaluation = await this.sliced(paving.evaluate(uri), token);
      const compared = evaluation && (await this.comparedOf({ evaluation, files }, token));
      return compared && { ...compared, files };
    });
  }

  /** Has the editor ask anew for what stands above jobs, though no text has changed. */
  figuresAreOld(): void {
    this.shown.figuresAreOld();
    if (this.runs.size === 0) this.shown.refresh(this.client);
  }

  /** Does long work between what else is asked; undefined when nobody waits for it any more. */
  sliced<T>(steps: Generator<void, T>, token: CancellationToken): Promise<T | undefined> {
    const run = { cancelled: token.isCancellationRequested };
    token.onCancellationRequested(() => (run.cancelled = true));
    return inSlices(steps, run);
  }

  /** Whether the editor takes changes of a text for a version of it. */
  get knowsVersionedEdits(): boolean {
    return this.client.workspace?.workspaceEdit?.documentChanges === true;
  }

  private runOf(uri: string): Run | undefined {
    const own = this.results.get(uri);
    const files = [uri, ...this.languages.readersOf(uri), ...(own === undefined ? [] : addressesIn(own))];
    return files.map(file => this.runs.of(file)).find(run => run !== undefined);
  }

  /** Counts of what is held, for tests: it must not grow with typing. */
  get held(): { readonly results: number; readonly texts: number; readonly runs: number; readonly plans: number } {
    return { ...this.languages.held, runs: this.runs.size, plans: this.livePlans.size };
  }

  /** Counts of work done so far, for tests. */
  get work(): { readonly parses: number; readonly computations: number } {
    return this.languages.work;
  }

  // ---- keeping up with texts ----

  private changed(document: TextDocument): void {
    const uri = sameAddress(document.uri);
    this.languages.changed(uri, document);
    this.schedule(uri);
  }

  private closed(uri: string): void {
    this.runs.stop(uri);
    this.languages.open.delete(uri);
    this.drop(uri);
    this.failed.delete(uri);
    this.livePlans.drop(uri);
    this.changedOutside(uri);
    this.languages.letGo();
    this.publish();
  }

  /** A file that stands open nowhere is read again when it is next wanted. */
  private changedOutside(uri: string): void {
    const readers = this.languages.readersOf(uri);
    this.languages.forget(uri);
    for (const reader of readers) this.schedule(reader);
  }

  private async listFiles(folder: string): Promise<ListFilesResult> {
    const { uris, all } = await this.connection.sendRequest<ListFilesResult>(listFilesRequest, { folder });
    return { uris: uris.map(sameAddress), all };
  }

  // ---- working out ----

  /** Works out a file once typing pauses, and what uses it. */
  private schedule(uri: string): void {
    const run = this.runs.begin(uri);
    run.timer = setTimeout(() => {
      void this.workOut(uri, run);
      for (const reader of this.languages.readersOf(uri)) void this.workOut(reader, this.runs.begin(reader));
    }, PAUSE);
  }

  private async workOut(uri: string, run: Run): Promise<void> {
    const { paving, files } = this.languages.of(uri);
    try {
      await paving.load(uri);
      const evaluation = await inSlices(paving.evaluate(uri), run);
      if (run.cancelled || evaluation === undefined) return;
      this.keep(uri, { evaluation, files });
      this.languages.letGo();
      this.failed.delete(uri);
    } catch (error) {
      if (run.cancelled) return;
      this.connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
      this.drop(uri);
      this.failed.add(uri);
    } finally {
      this.runs.ended(uri, run);
    }
    this.publish();
  }

  private keep(uri: string, result: Result): void {
    const before = this.results.get(uri);
    this.results.set(uri, result);
    const changed = changedBetween(before?.evaluation, result.evaluation);
    if (changed.length === 0) return;
    if (changed.some(file => result.files.uriOf(file) !== uri)) {
      this.shown.figuresAreOld();
      this.shown.coloursAreOld();
    }
    if (this.isShownElsewhere(uri, result)) this.shown.figuresAreOld();
  }

  private drop(uri: string): void {
    const before = this.results.get(uri);
    this.results.delete(uri);
    if (before !== undefined && this.isShownElsewhere(uri, before)) this.shown.figuresAreOld();
  }

  /** Whether another open file is part of a job. */
  private isShownElsewhere(uri: string, result: Result): boolean {
    return addressesIn(result).some(file => file !== uri && this.languages.open.has(file));
  }

  /** What is shown without being asked for; what the editor has to ask anew, once nothing is left to work out. */
  private publish(): void {
    this.shown.publish(diagnosticsOf(this.results, this.failed), this.languages.open);
    if (this.runs.size === 0) this.shown.refresh(this.client);
  }
}

function addressesIn({ evaluation, files }: Result): string[] {
  return evaluation.texts.map(({ file }) => files.uriOf(file));
}

/** The files, as shown, that came, went or read otherwise. */
function changedBetween(before: Evaluation | undefined, after: Evaluation): string[] {
  const [old, now] = [before?.texts ?? [], after.texts].map(
    texts => new Map(texts.map(({ file, text }) => [file, text]))
  ) as [Map<string, string>, Map<string, string>];
  return [...new Set([...old.keys(), ...now.keys()])].filter(file => old.get(file) !== now.get(file));
}

/** Git writes there whenever HEAD becomes another commit. */
const HEAD_MOVES = /\/\.git\/logs\/HEAD$/;

const TOO_MANY =
  'This folder holds more job specs than can be looked through: what is found may not be all there is. Open a smaller folder.';
