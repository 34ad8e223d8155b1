import type { RuleSum, Test, Worked } from '../job/rule.ts';
import type { System } from '../job/job.ts';
import { TIE } from './limits.ts';
import type { Value } from './members/member.ts';

/** Thrown where a rule can't be worked out: it is told at the rule. */
export class RuleFailure extends Error {}

/** What a rule reads: its quantities by name, and what a need came to. */
export interface Reads {
  value(name: string): Value;
  readonly worked?: Readonly<Record<Worked, number>>;
}

/** A difference of doubles that should be nought is hardly ever just that. */
const HAIR = 1e-12;

/** A sum in SI; undefined where it reads something that the job does not say. */
export function sumOf(sum: RuleSum, reads: Reads): number | undefined {
  switch (sum.is) {
    case 'number':
      return sum.value;
    case 'quantity':
      return reads.value(sum.name) as number | undefined;
    case 'worked':
      return reads.worked?.[sum.name];
    case 'sum': {
      const [left, right] = [sumOf(sum.left, reads), sumOf(sum.right, reads)];
      if (left === undefined || right === undefined) return undefined;
      if (sum.sign === '/' && Math.abs(right) < HAIR) throw new RuleFailure('divides by nought');
      return sum.sign === '+'
        ? left + right
        : sum.sign === '-'
          ? left - right
          : sum.sign === '*'
            ? left * right
            : left / right;
    }
    default:
      throw new RuleFailure('holds a sum that this program does not know');
  }
}

/** What a test came to. Undefined: it compares something that the job does not say. */
export interface Outcome {
  readonly met: boolean;
  /** Of a comparison: the limit in each system, and by how much the value misses it in the job's own, both SI. */
  readonly limit?: Readonly<Record<System, number>>;
  readonly missing?: number;
}

export function outcomeOf(test: Test, reads: Reads, system: System): Outcome | undefined {
  if (test.is !== 'compared') {
    const words = reads.value(test.of);
    const met = test.is === 'said' ? isSaid(words) : isOneOf(words, test.words, test.isName);
    // What is not said is neither one word nor another.
    if (test.is === 'words' && !isSaid(words)) return undefined;
    return { met: met !== test.not };
  }
  const left = sumOf(test.left, reads);
  const [imperial, metric] = [sumOf(test.limit.imperial, reads), sumOf(test.limit.metric, reads)];
  if (left === undefined || imperial === undefined || metric === undefined) return undefined;
  const limit = { imperial, metric };
  // A limit met exactly passes; the looser of two that differ by a hair judges.
  const tie = TIE * Math.max(1, Math.abs(limit[system]));
  const [least, greatest] = [Math.min(imperial, metric), Math.max(imperial, metric)];
  switch (test.sign) {
    case 'at least':
      return { met: left >= least - tie, limit, missing: limit[system] - left };
    case 'at most':
      return { met: left <= greatest + tie, limit, missing: left - limit[system] };
    case 'more than':
      return { met: left > least + tie, limit, missing: limit[system] - left };
    case 'less than':
      return { met: left < greatest - tie, limit, missing: left - limit[system] };
  }
}

function isSaid(value: Value): boolean {
  return value !== undefined && (typeof value === 'number' || value.length > 0);
}

/** A name of several words is also what its last ones say: `stiff-clay` is clay. Words out of a fixed list are not. */
function isOneOf(value: Value, words: readonly string[], isName: boolean): boolean {
  if (value === undefined || typeof value === 'number') return false;
  return value.some(name => words.some(word => name === word || (isName && name.endsWith(`-${word}`))));
}
