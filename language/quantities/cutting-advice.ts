import type { Area, Job, Key, System } from '../job/job.ts';
import { betterSizes, type BetterSize } from '../laying/starts/better-sizes.ts';
import { type BetterStart, betterStarts } from '../laying/starts/better-starts.ts';
import type { AreaToLay } from '../laying/area-to-lay.ts';
import { type Cutting, cuttingOf } from '../laying/starts/cutting.ts';
import { isClearlyBetter } from '../laying/starts/fewer-cuts.ts';
import { layArea } from '../laying/lay-area.ts';
import { measureNamed } from '../measures/measures.ts';
import { areaToLay } from './area-to-lay.ts';

/** What an area leaves to cut, and how it could be less. */
export interface CuttingAdvice {
  readonly area: Key;
  readonly now: Cutting;
  readonly starts: readonly BetterStart[];
  readonly sizes: readonly BetterSize[];
  readonly inboard?: InboardAdvice;
}

/** Two units cut instead of one where a course would end in a sliver; `least` in m. */
export interface InboardAdvice {
  readonly least: number;
  readonly cutting: Cutting;
}

export type AdviceAbout = 'starts' | 'sizes' | 'inboard';

const INCH = measureNamed('in')!.factor.valueOf();

/** What lengths are measured in, m: as on a tape, joints finer; and how short a piece courses may end in: no sliver. */
const STEPS: Readonly<Record<System, { readonly tape: number; readonly joint: number; readonly piece: number }>> = {
  metric: { tape: 0.001, joint: 0.0001, piece: 0.05 },
  imperial: { tape: INCH / 16, joint: INCH / 64, piece: 2 * INCH }
};

/**
 * Looks for less to cut in one area of a job; undefined where it has no paving or can't be laid. Long work:
 * it is done for whoever asks for it.
 */
export function* cuttingAdvice(
  job: Job,
  area: Area,
  about: readonly AdviceAbout[]
): Generator<void, CuttingAdvice | undefined> {
  const toLay = areaToLay(area, new Map(job.areas.map(one => [one.key, one])));
  if (toLay === undefined) return undefined;
  const laid = yield* layArea(toLay);
  if (!('parts' in laid)) return undefined;
  const now = cuttingOf(laid, toLay);
  const { tape, joint } = STEPS[job.system];
  const may = { mayTurn: area.traffic.every(who => who === 'foot'), mayJoint: !sharesPaving(job, area) };
  const starts = about.includes('starts')
    ? yield* betterStarts(toLay, { shiftStep: tape, jointStep: joint, ...may })
    : undefined;
  const sizes = about.includes('sizes') ? yield* betterSizes(toLay, { sizeStep: tape }) : undefined;
  const inboard = about.includes('inboard') ? yield* inboardAdvice(toLay, now, job.system) : undefined;
  return {
    area: area.key,
    now,
    starts: starts?.better ?? [],
    sizes: sizes?.better ?? [],
    ...(inboard === undefined ? {} : { inboard })
  };
}

/** Other joints would be the joints of other areas too. */
function sharesPaving({ areas }: Job, { key, pavingAs }: Area): boolean {
  return pavingAs !== undefined || areas.some(other => other.pavingAs === key);
}

function* inboardAdvice(area: AreaToLay, now: Cutting, system: System): Generator<void, InboardAdvice | undefined> {
  const { field } = area;
  if (now.slivers === 0 || field.bond.way !== 'courses' || field.inboardCuts !== undefined) return undefined;
  const least = STEPS[system].piece;
  const laid = yield* layArea({ ...area, field: { ...field, inboardCuts: least } });
  if (!('parts' in laid)) return undefined;
  const cutting = cuttingOf(laid, area);
  // More units are cut: that is what it is about.
  return isClearlyBetter({ ...cutting, cutUnits: now.cutUnits, sawLength: now.sawLength }, now)
    ? { least, cutting }
    : undefined;
}
