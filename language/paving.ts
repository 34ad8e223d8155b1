import { placed } from './findings/placed.ts';
import type { Finding, Place } from './findings/finding.ts';
import type { Job, Key } from './job/job.ts';
import { SHIPPED_FILE, SHIPPED_NAMES, SHIPPED_TEXT } from './library/shipped.ts';
import { lower } from './lowering/lower.ts';
import type { SpecText } from './lowering/names.ts';
import { usesOf, type Use } from './lowering/uses.ts';
import { gather, MOST_FILES, type ReadProblem, type SpecFiles, type UseProblem } from './project.ts';
import { computeJob, judgeJob } from './quantities/compute-job.ts';
import type { JobNumbers } from './quantities/contract.ts';
import { drain, Session } from './session/session.ts';
import { createParse, type Parse } from './syntax/parse.ts';

/** What one file comes to, with everything that it uses. */
export interface Evaluation {
  readonly file: string;
  /** Absent for a library, a file without `job`. */
  readonly job?: Job;
  readonly numbers?: JobNumbers;
  /** By file as in `texts`, then by place. */
  readonly findings: readonly Finding[];
  readonly places: ReadonlyMap<Key, Place>;
  /** The file itself first, then all it uses; `file` as shown. */
  readonly texts: readonly { readonly file: string; readonly text: string }[];
  /** Look-ups of names, a count of work. */
  readonly lookUps: number;
}

/** What a caller needs: findings alone, or numbers as well. */
export type Need = 'findings' | 'numbers';

type Stored = { readonly spec: SpecText } | { readonly problem: ReadProblem };

/**
 * The language as a whole, for the command line and the editor alike: keeps the texts, leads each file through parsing,
 * lowering, numbers and findings, and remembers what did not change.
 */
export class Paving {
  readonly session = new Session();
  private readonly files: SpecFiles;
  private readonly texts = new Map<string, Stored>();
  private readonly parse: Parse = createParse(name => SHIPPED_NAMES.has(name));
  private shippedText: SpecText | undefined;

  constructor(files: SpecFiles) {
    this.files = files;
  }

  /** The text of a file as it stands in an editor; it counts instead of the file's own. */
  setText(file: string, text: string): void {
    const stored = this.texts.get(file);
    if (stored !== undefined && 'spec' in stored && stored.spec.parsed.text === text) return;
    this.texts.set(file, { spec: { file: this.files.show(file), parsed: this.parse(text) } });
  }

  /** Drops a file's text, so that it is read again when it is next wanted. */
  forget(file: string): void {
    this.texts.delete(file);
    this.session.forget(file);
  }

  /** Why a file could not be read; undefined when it was, or was never wanted. */
  problemOf(file: string): ReadProblem | undefined {
    const stored = this.texts.get(file);
    return stored !== undefined && 'problem' in stored ? stored.problem : undefined;
  }

  /** Reads a file and all it uses, as far as they are not known yet. */
  async load(file: string): Promise<void> {
    const wanted = [file];
    const seen = new Set<string>();
    while (wanted.length > 0 && seen.size <= MOST_FILES) {
      const next = wanted.shift()!;
      if (seen.has(next)) continue;
      seen.add(next);
      if (!this.texts.has(next)) {
        const result = await this.files.read(next);
        // The editor's text may have come meanwhile; it stands over the file.
        if (!this.texts.has(next)) {
          if ('text' in result) this.setText(next, result.text);
          else this.texts.set(next, result);
        }
      }
      const stored = this.texts.get(next);
      if (stored === undefined || 'problem' in stored) continue;
      for (const use of usesOf(stored.spec)) {
        const used = this.files.resolve(next, use.path);
        if (used !== undefined) wanted.push(used);
      }
    }
  }

  /** The files that a loaded file leads to through `use`, itself included. */
  filesOf(file: string): string[] {
    const seen = new Set<string>();
    const follow = (at: string): void => {
      if (seen.has(at)) return;
      seen.add(at);
      const stored = this.texts.get(at);
      if (stored === undefined || 'problem' in stored) return;
      for (const use of usesOf(stored.spec)) {
        const used = this.files.resolve(at, use.path);
        if (used !== undefined) follow(used);
      }
    };
    follow(file);
    return [...seen];
  }

  /**
   * Works out a loaded file, in steps; undefined when it could not be read (see `problemOf`). Where findings alone are
   * needed, numbers are left out; the findings are the same.
   */
  *evaluate(file: string, need: Need = 'numbers'): Generator<void, Evaluation | undefined> {
    const stored = this.texts.get(file);
    if (stored === undefined || 'problem' in stored) return undefined;
    const ids = new Map<SpecText, string>([[stored.spec, file]]);
    const { project, findings } = gather(stored.spec, this.shipped(), (from, use) => {
      const found = this.used(ids.get(from)!, use);
      if ('id' in found) return found;
      ids.set(found.spec, found.file);
      return found.spec;
    });
    yield;
    const lowered = lower(project);
    yield;
    const numbers = lowered.job && need === 'numbers' ? yield* computeJob(lowered.job, this.session, file) : undefined;
    const found = numbers?.findings ?? (lowered.job && (yield* judgeJob(lowered.job, this.session, file))) ?? [];
    const order = project.texts.map(text => text.file);
    const placedFindings = found.map(raw => placed(raw, lowered.places, project.main.file));
    return {
      file,
      ...(lowered.job === undefined ? {} : { job: lowered.job }),
      ...(numbers === undefined ? {} : { numbers }),
      findings: inOrder([...findings, ...lowered.findings, ...placedFindings], order),
      places: lowered.places,
      texts: project.texts.map(text => ({ file: text.file, text: text.parsed.text })),
      lookUps: lowered.lookUps
    };
  }

  private shipped(): SpecText {
    this.shippedText ??= { file: SHIPPED_FILE, parsed: this.parse(SHIPPED_TEXT) };
    return this.shippedText;
  }

  private used(from: string, use: Use): { readonly file: string; readonly spec: SpecText } | UseProblem {
    const file = this.files.resolve(from, use.path);
    if (file === undefined) return { id: 'use-outside', message: USE_PROBLEMS.outside(use.path) };
    const stored = this.texts.get(file) ?? { problem: 'missing' };
    if ('spec' in stored) return { file, spec: stored.spec };
    const id = { missing: 'use-missing', outside: 'use-outside' }[stored.problem as string] ?? 'use-unreadable';
    return { id, message: USE_PROBLEMS[stored.problem](use.path) };
  }
}

export { drain };

const USE_PROBLEMS: Readonly<Record<ReadProblem, (path: string) => string>> = {
  missing: path => `There is no file ${path}. The path counts from this file.`,
  forbidden: path => `The file ${path} may not be read: you have no right to it.`,
  folder: path => `The path ${path} is a folder. Name a file in it.`,
  binary: path => `The file ${path} is no text.`,
  encoding: path => `The file ${path} is no UTF-8 text. Save it as UTF-8.`,
  'too-large': path => `The file ${path} is too large to be a job spec.`,
  outside: path => `The file ${path} lies outside this folder; only files inside it can be used. Copy it in.`
};

/** One finding is told once, though a used file may be reached in several ways. */
function inOrder(findings: readonly Finding[], files: readonly string[]): Finding[] {
  const rank = new Map(files.map((file, index) => [file, index]));
  const seen = new Set<string>();
  const once = findings.filter(finding => {
    const name = [finding.id, finding.file, finding.line, finding.column, finding.message].join('\n');
    if (seen.has(name)) return false;
    seen.add(name);
    return true;
  });
  return once.sort(
    (left, right) =>
      (rank.get(left.file) ?? files.length) - (rank.get(right.file) ?? files.length) ||
      left.line - right.line ||
      left.column - right.column
  );
}
