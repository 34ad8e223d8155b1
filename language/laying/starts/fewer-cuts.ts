import type { Cutting } from './cutting.ts';

/** Metres of sawing that nobody would notice. */
const SAME_SAWING = 0.001;

/** Share of the sawing that has to be saved where nothing else is. */
const LESS_SAWING = 0.05;

/** In what order ways of laying are liked: fewest units cut, then fewest slivers, then the least sawing. */
export function byCutting(one: Cutting, other: Cutting): number {
  if (one.cutUnits !== other.cutUnits) return one.cutUnits - other.cutUnits;
  if (one.slivers !== other.slivers) return one.slivers - other.slivers;
  const sawing = one.sawLength - other.sawLength;
  return Math.abs(sawing) <= SAME_SAWING ? 0 : sawing;
}

/** Share of the cut units that has to be saved: for less nobody sets out anew. */
const FEWER_CUTS = 0.05;

/** Worth a change: clearly fewer units cut, or fewer slivers, and of neither more; or else clearly less sawing. */
export function isClearlyBetter(one: Cutting, now: Cutting): boolean {
  if (one.cutUnits > now.cutUnits || one.slivers > now.slivers) return false;
  if (one.cutUnits <= now.cutUnits * (1 - FEWER_CUTS) || one.slivers < now.slivers) return true;
  return one.sawLength < now.sawLength * (1 - LESS_SAWING) - SAME_SAWING;
}
