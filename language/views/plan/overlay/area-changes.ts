import { areaOf, type Loop, type Side } from '../../../geometry/index.ts';
import { leftOver } from '../../../geometry/left-over.ts';
import { countsOf, unitText } from '../counts.ts';
import type { PlanArea, PlanInput } from '../plan-input.ts';
import { areLaidAlike } from './laid-alike.ts';
import { type Pair, paired } from './pairs.ts';

/** An area before and after. */
export interface AreaChange extends Pair<PlanArea> {
  readonly key: string;
  /** As it is called now. */
  readonly name: string;
  /** `unknown` where the plan that lacks it has an error in it. */
  readonly fate: 'comes' | 'goes' | 'stays' | 'changes' | 'unknown';
  /** Where it had another name. */
  readonly calledBefore?: string;
  /** Within the outline, m2. */
  readonly size: { readonly before?: number; readonly after?: number };
  readonly isOutlineSame: boolean;
  /** What is laid otherwise, in words. */
  readonly laying: readonly string[];
}

/** By key; one that is called otherwise is known by its outline. */
export function areaChanges(before: PlanInput | undefined, after: PlanInput | undefined): AreaChange[] {
  const drawn = (plan: PlanInput | undefined): PlanArea[] =>
    (plan?.areas ?? []).filter(({ outline }) => outline.length > 0);
  const pairs = paired(drawn(before), drawn(after), [
    (old, now) => old.key === now.key,
    (old, now) => haveSameOutline(old.outline, now.outline)
  ]);
  return pairs.map(pair => areaChange(pair, before, after));
}

function areaChange(pair: Pair<PlanArea>, before: PlanInput | undefined, after: PlanInput | undefined): AreaChange {
  const { before: old, after: now } = pair;
  const { key, name } = (now ?? old)!;
  const size = { ...(old && { before: areaOf(old.outline) }), ...(now && { after: areaOf(now.outline) }) };
  const isOutlineSame = old !== undefined && now !== undefined && haveSameOutline(old.outline, now.outline);
  const laying = old && now ? layingOf(old, now, before!, after!) : [];
  const calledBefore = old && now && old.name !== now.name ? { calledBefore: old.name } : {};
  const isSame = isOutlineSame && laying.length === 0 && old.name === now.name;
  const other = old === undefined ? before : now === undefined ? after : undefined;
  const isUnknown = other !== undefined && other.missing.length > 0;
  const lone = old === undefined ? 'comes' : now === undefined ? 'goes' : undefined;
  const fate = isUnknown ? 'unknown' : (lone ?? (isSame ? 'stays' : 'changes'));
  return { ...pair, key, name, fate, ...calledBefore, size, isOutlineSame, laying };
}

export function haveSameOutline(one: Loop, other: Loop): boolean {
  return liesOn(one, other) && liesOn(other, one);
}

/** Whether all of some sides runs along others. */
export function liesOn(sides: readonly Side[], others: readonly Side[]): boolean {
  return sides.every(side => leftOver(side, others).length === 0);
}

/** Units that lie elsewhere are told where nothing else moved them. */
function layingOf(old: PlanArea, now: PlanArea, before: PlanInput, after: PlanInput): string[] {
  const changes = layingChanges(old, now, before, after);
  const isElsewhere = changes.length === 0 && haveSameGround(old, now) && !areLaidAlike(old, now);
  return isElsewhere ? ['units lie otherwise'] : changes;
}

function haveSameGround(old: PlanArea, now: PlanArea): boolean {
  const loops = ({ outline, keptOut }: PlanArea): Loop[] => [outline, ...keptOut.map(one => one.outline)];
  const [was, is] = [loops(old), loops(now)];
  return was.length === is.length && was.every((loop, index) => haveSameOutline(loop, is[index]!));
}

/** What is laid where, part by part, where it is other units; how many stands in the tables. */
function layingChanges(old: PlanArea, now: PlanArea, before: PlanInput, after: PlanInput): string[] {
  if (old.noNumbers !== undefined || now.noNumbers !== undefined) {
    if (old.noNumbers === now.noNumbers) return [];
    const [what, when] = old.noNumbers === undefined ? [now.noNumbers, 'after'] : [old.noNumbers, 'before'];
    return [`no numbers ${when}: ${what}`];
  }
  const parts = (area: PlanArea, plan: PlanInput): Map<string, string> =>
    new Map(
      area.parts.map(part => [
        part.name,
        countsOf(part, plan.units)
          .map(({ unit }) => unitText(unit))
          .join('; ')
      ])
    );
  const [was, is] = [parts(old, before), parts(now, after)];
  return [
    ...[...is].flatMap(([name, units]) => {
      const units0 = was.get(name);
      if (units0 === undefined) return [`${name} of ${units} comes`];
      return units0 === units ? [] : [`${name} of ${units}, before of ${units0}`];
    }),
    ...[...was].filter(([name]) => !is.has(name)).map(([name, units]) => `${name} of ${units} goes`)
  ];
}
