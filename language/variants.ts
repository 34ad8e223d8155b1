import type { AcceptedFinding, Finding, TextChange } from './findings/finding.ts';
import type { Key } from './job/job.ts';
import { lower } from './lowering/lower.ts';
import type { Project } from './lowering/project.ts';
import { type Origin, type VariantProject, variantProjects } from './lowering/variant-projects.ts';
import { variantsIn } from './lowering/variants.ts';
import type { Evaluation } from './paving.ts';
import type { PricedJob } from './priced-job.ts';
import type { Session } from './session/session.ts';
import type { Parse } from './syntax/parse.ts';

/** What a job comes to as one of its variants has it. */
export interface VariantEvaluation {
  readonly key: Key;
  readonly name: string;
  readonly evaluation: Evaluation;
  /** Of the evaluation, each at the place where it was written. */
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
  readonly priced?: PricedJob;
}

/** What hangs on how often a thing is used, or on rules: no fault of the variant. */
const OF_THE_JOB_ALONE: ReadonlySet<string> = new Set(['never-used', 'accept-unmatched']);

/** A variant as a project of its own, with all faults of text and names in it. */
export interface ReadVariant extends VariantProject {
  readonly faults: readonly Finding[];
}

/** Reads the sound variants of a project; what they came to is remembered in `scope` until one of its texts changes. */
export function* readVariants(
  project: Project,
  { parse, session, scope }: { readonly parse: Parse; readonly session: Session; readonly scope: string }
): Generator<void, readonly ReadVariant[]> {
  if (variantsIn(project).length === 0) {
    session.forget(scope);
    return [];
  }
  const inputs = project.texts.map(({ file, parsed }) => ({ file, text: parsed.text }));
  return yield* session.recall({ scope, stage: 'variants', thing: project.main.file }, inputs, () =>
    readAnew(project, parse)
  );
}

function* readAnew(project: Project, parse: Parse): Generator<void, readonly ReadVariant[]> {
  const read: ReadVariant[] = [];
  for (const variant of yield* variantProjects(project, parse)) {
    const { findings } = lower(variant.project);
    const faults = findings.filter(({ id, family }) => family === 'fault' && !OF_THE_JOB_ALONE.has(id));
    read.push({ ...variant, faults });
    yield;
  }
  return read;
}

/** The faults that a job has as one of its variants has it, and does not have itself. */
export function variantFaults(variants: readonly ReadVariant[], known: readonly Finding[]): Finding[] {
  return variants.flatMap(variant => variant.faults.flatMap(finding => newlyTold(finding, variant, known)));
}

/** Findings at the places where they were written; what was written nowhere is told at the variant's name. */
export function asWritten<T extends Finding>(findings: readonly T[], variant: VariantProject): T[] {
  return findings
    .filter(({ id }) => !OF_THE_JOB_ALONE.has(id))
    .map(finding => ({
      ...finding,
      ...(variant.originOf(finding)?.place ?? variant.place),
      related: relatedAsWritten(finding, variant),
      fixes: fixesAsWritten(finding, variant, () => true)
    }));
}

function newlyTold(finding: Finding, variant: VariantProject, known: readonly Finding[]): Finding[] {
  const origin = variant.originOf(finding);
  const isKnown = known.some(
    other =>
      other.id === finding.id &&
      ((other.message === finding.message && other.target === finding.target) ||
        (other.file === origin?.place.file && other.line === origin.place.line && other.column === origin.place.column))
  );
  if (isKnown) return [];
  const related = relatedAsWritten(finding, variant);
  const told = { ...finding, target: variant.key };
  // A fix that changes what stands outside the variant would change the job.
  if (origin?.isOwn)
    return [{ ...told, ...origin.place, related, fixes: fixesAsWritten(finding, variant, ({ isOwn }) => isOwn) }];
  const here = origin === undefined ? [] : [{ ...origin.place, message: 'Here.' }];
  const message = `In the variant ${variant.name}: ${finding.message}`;
  return [{ ...told, message, ...variant.place, related: [...here, ...related], fixes: [] }];
}

function relatedAsWritten({ related }: Finding, variant: VariantProject): Finding['related'] {
  return related.flatMap(({ message, ...place }) => {
    const origin = variant.originOf(place);
    return origin === undefined ? [] : [{ ...origin.place, message }];
  });
}

/** Fixes all of whose changes stand where they may. */
function fixesAsWritten(
  { fixes }: Finding,
  variant: VariantProject,
  mayStand: (origin: Origin) => boolean
): Finding['fixes'] {
  return fixes.flatMap(fix => {
    const edits = fix.edits.flatMap(({ place, text }): TextChange[] => {
      const origin = variant.originOf(place);
      return origin !== undefined && mayStand(origin) ? [{ place: origin.place, text }] : [];
    });
    return edits.length < fix.edits.length ? [] : [{ ...fix, edits }];
  });
}
