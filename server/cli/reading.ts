import { createHash } from 'node:crypto';
import type { AcceptedFinding, Finding } from '../../language/findings/finding.ts';
import { toldOnce } from '../../language/findings/told-once.ts';
import type { Project } from '../../language/lowering/project.ts';
import { ruleNames } from '../../language/lowering/rule-pages.ts';
import { pageOfRule } from '../../language/pages.ts';
import { drain, Paving, type Evaluation, type Need } from '../../language/paving.ts';
import type { PricedJob } from '../../language/priced-job.ts';
import type { Schedule } from '../../language/schedule/contract.ts';
import type { ReadProblem } from '../../language/project.ts';
import type { VariantEvaluation } from '../../language/variants.ts';
import { decode, NodeFiles, rootOf } from '../node-files.ts';
import { asPage, type Page } from './pages.ts';
import { Progress } from './progress.ts';
import { evaluatedInFull, pricedInFull, settled } from './settled.ts';
import type { SpecPath } from './spec-paths.ts';
import { failedFinding, unreadable, unreadableFinding } from './unreadable.ts';
import { shownAs } from './with-job.ts';

/** All files asked for, worked out. */
export interface Reading {
  readonly evaluations: readonly Evaluation[];
  /** Of all evaluations, each once, by file and place. */
  readonly findings: readonly Finding[];
  /** What is set aside, in the same order. */
  readonly accepted: readonly AcceptedFinding[];
  readonly complaints: readonly string[];
  /** Files asked for by name that have no job, as shown. */
  readonly libraries: readonly string[];
  textOf(file: string): string | undefined;
  hashOf(file: string): string;
  /** What an evaluation comes to as its variants have it, each with its price. */
  variantsOf(evaluation: Evaluation): Promise<readonly VariantEvaluation[]>;
  /** Cost, price and days of the whole job. */
  pricedOf(evaluation: Evaluation): Promise<PricedJob | undefined>;
  /** Tasks and days of what is left of the job. */
  scheduleOf(evaluation: Evaluation): Schedule | undefined;
  /** The page of a rule of one's own. */
  rulePageOf(name: string): Page | undefined;
}

/** Works out each file; one that cannot be read, or makes this program fail, never stops the others. */
export async function readSpecs(
  specs: readonly SpecPath[],
  standardInput: () => Promise<Uint8Array>,
  need: Need | 'order',
  folders: Folders
): Promise<Reading> {
  const evaluated: Evaluation[] = [];
  const pavings = new Map<Evaluation, Paving>();
  const projects: (() => Project | undefined)[] = [];
  const lost: Finding[] = [];
  const libraries: string[] = [];
  const complaints: string[] = [];
  const progress = new Progress(specs.length);
  for (const [index, { file, byName, fromStandardInput }] of specs.entries()) {
    progress.at(index);
    const { paving, show } = folders.of(file);
    try {
      const problem = fromStandardInput === undefined ? undefined : folders.take(file, await standardInput());
      if (problem === undefined) await paving.load(file);
      const evaluation = problem === undefined ? await workedOut(paving, file, need) : undefined;
      if (evaluation !== undefined) {
        evaluated.push(evaluation);
        pavings.set(evaluation, paving);
        projects.push(() => paving.look(file)?.project);
        if (byName && evaluation.job === undefined) libraries.push(show);
        continue;
      }
      const why = problem ?? paving.problemOf(file) ?? 'missing';
      complaints.push(unreadable(show, why));
      lost.push(unreadableFinding(show, why));
    } catch {
      complaints.push(
        `${show} made this program fail; the other files are not touched by it. Please report it with the file.`
      );
      lost.push(failedFinding(show));
    }
  }
  progress.end();
  const evaluations = withoutParts(evaluated);
  const texts = new Map(
    evaluated.flatMap(({ texts }) => texts.map(({ file, text }): [string, string] => [file, text]))
  );
  return {
    evaluations,
    findings: inOrder([...lost, ...evaluations.flatMap(({ findings }) => findings)]),
    accepted: inOrder(evaluations.flatMap(({ accepted }) => accepted)),
    complaints,
    libraries,
    textOf: file => texts.get(file),
    hashOf: file => folders.hashes.get(file)!,
    variantsOf: evaluation => {
      const paving = pavings.get(evaluation)!;
      return settled(
        paving,
        () => paving.variants(evaluation.file),
        variants => variants.flatMap(variant => [variant.evaluation.numbers, variant.priced?.numbers])
      );
    },
    pricedOf: evaluation => pricedInFull(pavings.get(evaluation)!, evaluation),
    scheduleOf: evaluation => drain(pavings.get(evaluation)!.scheduled(evaluation)),
    rulePageOf: name => {
      const [project] = projects.flatMap(look => look() ?? []).filter(each => ruleNames(each).own.includes(name));
      const page = project && pageOfRule(project, name);
      return page === undefined ? undefined : asPage(name, page);
    }
  };
}

function workedOut(paving: Paving, file: string, need: Need | 'order'): Promise<Evaluation | undefined> {
  return need === 'order' ? evaluatedInFull(paving, file) : Promise.resolve(drain(paving.evaluate(file, need)));
}

/** One memory for each folder that files are used from, since the folder decides what may be read. */
export class Folders {
  /** SHA-256 of each file read, by the file as shown. */
  readonly hashes = new Map<string, string>();
  private readonly folders = new Map<string, { readonly paving: Paving; readonly files: NodeFiles }>();
  private readonly today: () => string;

  /** `asOf`: the day on which it is asked what is set aside. */
  constructor(asOf: string) {
    this.today = () => asOf;
  }

  /** A file was written: whoever reads it reads it again. */
  changed(file: string): void {
    for (const { paving } of this.folders.values()) paving.forget(file);
  }

  of(file: string): { readonly paving: Paving; readonly show: string } {
    const root = rootOf(file);
    let folder = this.folders.get(root);
    if (folder === undefined) {
      const files: NodeFiles = new NodeFiles({
        root,
        shownFrom: process.cwd(),
        onRead: (read, bytes) => this.hash(files.show(read), bytes)
      });
      folder = { files, paving: new Paving(files, this.today) };
      this.folders.set(root, folder);
    }
    return { paving: folder.paving, show: folder.files.show(file) };
  }

  /** Text that came over standard input stands for a file. */
  take(file: string, bytes: Uint8Array): ReadProblem | undefined {
    const { paving, show } = this.of(file);
    const result = decode(bytes);
    if ('problem' in result) return result.problem;
    this.hash(show, bytes);
    paving.setText(file, result.text);
    return undefined;
  }

  private hash(shown: string, bytes: Uint8Array): void {
    this.hashes.set(shown, createHash('sha256').update(bytes).digest('hex'));
  }
}

/** A file without a job that another file asked for uses is told as part of that one. */
function withoutParts(evaluations: readonly Evaluation[]): Evaluation[] {
  const told = new Set<string>();
  const kept = new Set<Evaluation>();
  const keep = (evaluation: Evaluation): void => {
    kept.add(evaluation);
    for (const { file } of evaluation.texts) told.add(file);
  };
  evaluations.filter(({ job }) => job !== undefined).forEach(keep);
  const libraries = evaluations.filter(({ job }) => job === undefined);
  // The ones that use most come first, so that a part is not told before its whole.
  const wholesFirst = [...libraries].sort((left, right) => right.texts.length - left.texts.length);
  for (const library of wholesFirst) if (!told.has(shownAs(library))) keep(library);
  return evaluations.filter(evaluation => kept.has(evaluation));
}

/** By file and place, each once. */
export function inOrder<T extends Finding>(findings: readonly T[]): T[] {
  return toldOnce(findings).sort(
    (left, right) =>
      compare(left.file, right.file) ||
      left.line - right.line ||
      left.column - right.column ||
      compare(left.id, right.id)
  );
}

function compare(left: string, right: string): number {
  return left < right ? -1 : left > right ? 1 : 0;
}
