import { distance, type Point } from '../../../geometry/index.ts';
import type { PlanInput } from '../plan-input.ts';
import type { PlanPoint } from '../plan-site.ts';
import { type Pair, paired } from './pairs.ts';
import { fateOfLone } from './seen.ts';

/** A named point, or a corner without a name, before and after. */
export interface PointChange extends Pair<PlanPoint> {
  readonly key: string;
  readonly name?: string;
  readonly calledBefore?: string;
  readonly fate: 'comes' | 'goes' | 'stays' | 'moves' | 'changes' | 'unknown';
  /** Where it lies now, or did. */
  readonly at: Point;
  /** Finishes there, where they differ: `20.165 → 20.180 m`. */
  readonly heights: readonly string[];
}

/** m: less is no move that could be set out. */
export const SAME_PLACE = 0.0005;

/** Corners without a name are told where their heights differ; what lies outside of either plan is left out. */
export function pointChanges(before: PlanInput | undefined, after: PlanInput | undefined): PointChange[] {
  const [older, newer] = [before?.site?.points ?? [], after?.site?.points ?? []];
  const lies = (old: PlanPoint, now: PlanPoint): boolean => distance(old.at, now.at) <= SAME_PLACE;
  const pairs = paired(older, newer, [
    (old, now) => old.name !== undefined && old.key === now.key,
    (old, now) => (old.name === undefined) === (now.name === undefined) && lies(old, now)
  ]);
  return pairs.flatMap(pair => pointChange(pair, before, after));
}

function pointChange(
  pair: Pair<PlanPoint>,
  before: PlanInput | undefined,
  after: PlanInput | undefined
): PointChange[] {
  const { before: old, after: now } = pair;
  const { key, name, at } = (now ?? old)!;
  const named = name === undefined ? {} : { name };
  if (old === undefined || now === undefined) {
    const isOld = now === undefined;
    const fate = name === undefined ? undefined : fateOfLone([at], { isOld, other: isOld ? after : before });
    return fate === undefined ? [] : [{ ...pair, key, ...named, fate, at, heights: [] }];
  }
  const heights = heightsFromTo(old.heights, now.heights);
  const calledBefore = old.name === undefined || old.name === name ? {} : { calledBefore: old.name };
  const isSame = heights.length === 0 && old.name === name;
  const fate = distance(old.at, now.at) > SAME_PLACE ? 'moves' : isSame ? 'stays' : 'changes';
  if (name === undefined && heights.length === 0) return [];
  return [{ ...pair, key, ...named, ...calledBefore, fate, at, heights }];
}

function heightsFromTo(before: readonly string[], after: readonly string[]): string[] {
  if (before.length === 0 || after.length === 0) return [];
  if (before.length !== after.length) {
    const [old, now] = [before.join(', '), after.join(', ')];
    return old === now ? [] : [fromTo(old, now)];
  }
  return after.flatMap((now, index) => (before[index] === now ? [] : [fromTo(before[index]!, now)]));
}

/** `179 → 195 mm below`: words at the end that both share are told once. */
export function fromTo(before: string, after: string): string {
  const [old, now] = [before.split(' '), after.split(' ')];
  let shared = 0;
  while (
    shared < Math.min(old.length, now.length) - 1 &&
    old.at(-1 - shared) === now.at(-1 - shared) &&
    !/^\d/.test(now.at(-1 - shared)!)
  ) {
    shared++;
  }
  return `${old.slice(0, old.length - shared).join(' ')} → ${after}`;
}
