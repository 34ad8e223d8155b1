// What differs between a job as it stands and as it stood: at HEAD all along, and with anything else when it is asked.
import type { CancellationToken } from 'vscode-languageserver';
import { URI, Utils } from 'vscode-uri';
import { compareJobs, type Compared } from '../language/comparing/compare.ts';
import type { Comparison } from '../language/comparing/contract.ts';
import type { Evaluation } from '../language/paving.ts';
import type { Result } from './diagnostics.ts';
import { abandoned } from './feature.ts';
import type { FolderFiles } from './folder-files.ts';
import { Heads } from './heads.ts';
import { isProblem, type History, type Problem } from './history.ts';
import { OlderJobs, type OlderSpec } from './older-jobs.ts';
import type { ComparedWith, NamedRevision } from './protocol.ts';
import { headMovedNotification } from './protocol.ts';
import type { Workspace } from './workspace.ts';

/** Both sides, and what differs. */
export interface ComparedPair extends OlderSide {
  readonly newer: Compared;
  readonly comparison: Comparison;
}

export interface OlderSide {
  readonly older: Compared;
  /** Where its texts are: at a commit, or files of today. */
  readonly texts: OlderSpec | FolderFiles;
}

export class Comparisons {
  private readonly workspace: Workspace;
  private readonly history: History | undefined;
  private readonly heads: Heads | undefined;
  private readonly older: OlderJobs | undefined;
  private readonly compared = new WeakMap<Evaluation, WeakMap<Evaluation, Comparison>>();
  /** Commits whose specs could not be read: they are not tried again while somebody types. */
  private readonly unread = new Set<string>();
  private isTrusted = false;

  constructor(workspace: Workspace, history: History | undefined) {
    this.workspace = workspace;
    this.history = history;
    this.heads = history && new Heads(history);
    this.older = history && new OlderJobs(history);
  }

  trust(): void {
    this.isTrusted = true;
    this.workspace.figuresAreOld();
  }

  /** Commits may have been made: what is shown since HEAD is asked for anew where it has moved. */
  async lookAgain(): Promise<void> {
    if (!this.isTrusted) return;
    const left = (await this.heads?.lookAgain()) ?? [];
    if (left.length === 0) return;
    for (const commit of left) this.older?.drop(commit);
    this.unread.clear();
    this.workspace.figuresAreOld();
    void this.workspace.connection.sendNotification(headMovedNotification);
  }

  // ---- since HEAD ----

  /**
   * What a job differs in from HEAD, if that side is worked out by now; else it is begun, and the editor asks anew when it
   * ends. Nothing is waited for.
   */
  sinceHead(newer: Compared): Comparison | undefined {
    const { heads, older } = this;
    const folder = folderOf(newer.evaluation.file);
    if (heads === undefined || older === undefined || folder === undefined || !this.isTrusted) return undefined;
    const head = heads.known(folder);
    if (head !== undefined && (isProblem(head) || this.unread.has(head.commit))) return undefined;
    const ready = head && older.readyAt(specIn(folder, newer.evaluation.file, head));
    if (ready === undefined) void this.prepare(folder, newer.evaluation.file, heads, older);
    return ready?.job && this.compare(ready.job, newer);
  }

  private async prepare(folder: string, file: string, heads: Heads, older: OlderJobs): Promise<void> {
    try {
      const head = await heads.first(folder);
      if (isProblem(head)) return;
      const job = await older.jobAt(specIn(folder, file, head));
      if (job === undefined) return;
      if (isProblem(job)) this.unread.add(head.commit);
      else this.workspace.figuresAreOld();
    } catch (error) {
      if (!isAbandoned(error)) this.workspace.connection.console.error(String(error));
    }
  }

  // ---- as it is asked ----

  async revisions(address: string, token: CancellationToken): Promise<readonly NamedRevision[] | Problem> {
    const asked = this.asked(address);
    return isProblem(asked) ? asked : asked.history.list(asked.folder, signalOf(token));
  }

  async with(
    result: Result,
    against: ComparedWith,
    token: CancellationToken
  ): Promise<ComparedPair | Problem | undefined> {
    const found =
      'revision' in against
        ? await this.atRevision(result.evaluation.file, against.revision, token)
        : await this.ofFile(against.uri, token);
    if (isProblem(found)) return found;
    const newer = await this.workspace.comparedOf(result, token);
    if (newer === undefined) return undefined;
    return { ...found, newer, comparison: this.compare(found.older, newer) };
  }

  /** The text of a spec at a commit; of folders alone that something was compared in. */
  async olderText(spec: OlderSpec): Promise<string | Problem> {
    const text = this.isTrusted && this.heads?.knows(spec.folder) === true ? await this.older?.textAt(spec) : undefined;
    return text ?? { problem: 'This text is not at hand any more. Compare again.' };
  }

  private async atRevision(file: string, revision: string, token: CancellationToken): Promise<OlderSide | Problem> {
    const asked = this.asked(file);
    if (isProblem(asked)) return asked;
    const { folder, history, heads, older } = asked;
    await heads.first(folder);
    const found = await history.find(folder, revision, signalOf(token));
    if (isProblem(found)) return found;
    const at = specIn(folder, file, found);
    const job = await older.jobAt(at, token);
    if (job !== undefined && isProblem(job)) return job;
    if (job === undefined) return { problem: `There is no ${at.path} in ${revision}.` };
    return hasJob(job) ? { older: job, texts: at } : { problem: `At ${revision} there is no job in ${at.path}.` };
  }

  private async ofFile(uri: string, token: CancellationToken): Promise<OlderSide | Problem> {
    const job = await this.workspace.comparedFile(uri, token);
    const name = Utils.basename(URI.parse(uri));
    if (job === undefined) return { problem: `${name} could not be read.` };
    return hasJob(job) ? { older: job, texts: job.files } : { problem: `There is no job in ${name}.` };
  }

  /** What git is asked with, or why it is not. */
  private asked(address: string): Problem | (Required<Pick<OlderSpec, 'folder'>> & Asked) {
    const { history, heads, older } = this;
    if (history === undefined || heads === undefined || older === undefined) return { problem: NO_GIT };
    if (!this.isTrusted) return { problem: NOT_TRUSTED };
    const folder = folderOf(address);
    return folder === undefined ? { problem: NOT_ON_DISK } : { folder, history, heads, older };
  }

  /** Once for the same two texts: lens and panel show the same. */
  private compare(older: Compared, newer: Compared): Comparison {
    let withOlder = this.compared.get(newer.evaluation);
    if (withOlder === undefined) {
      withOlder = new WeakMap();
      this.compared.set(newer.evaluation, withOlder);
    }
    let comparison = withOlder.get(older.evaluation);
    if (comparison === undefined) {
      comparison = compareJobs(older, newer);
      withOlder.set(older.evaluation, comparison);
    }
    return comparison;
  }

  /** Counts for tests. */
  get counts(): { readonly starts: number; readonly commits: number } {
    return { starts: this.history?.starts ?? 0, commits: this.older?.size ?? 0 };
  }
}

interface Asked {
  readonly history: History;
  readonly heads: Heads;
  readonly older: OlderJobs;
}

const NO_GIT = 'Git can’t be asked here: the editor runs in a browser. Compare with another file instead.';
const NOT_TRUSTED =
  'Trust this folder to compare with its history: git is started only in folders that you trust. Another file can be compared with all the same.';
const NOT_ON_DISK = 'This file lies in no folder of this machine yet, and has no history. Save it in one first.';

function specIn(folder: string, file: string, { commit, prefix }: { commit: string; prefix: string }): OlderSpec {
  return { folder, commit, path: prefix + Utils.basename(URI.parse(file)) };
}

/** The folder of a file on this machine. */
function folderOf(file: string): string | undefined {
  const uri = URI.parse(file);
  return uri.scheme === 'file' ? Utils.dirname(uri).toString() : undefined;
}

function hasJob({ evaluation }: Compared): boolean {
  return evaluation.job !== undefined;
}

function isAbandoned(error: unknown): boolean {
  return (error as { code?: unknown }).code === abandoned().code;
}

function signalOf(token: CancellationToken): AbortSignal {
  const controller = new AbortController();
  token.onCancellationRequested(() => controller.abort());
  if (token.isCancellationRequested) controller.abort();
  return controller.signal;
}
