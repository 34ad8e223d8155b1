import { crossedOddly, runsOf } from './level-line.ts';
import { areaOf, pointAlong, reversedLoop, signedAreaOf } from './outline.ts';
import type { Loop, Region } from './shapes.ts';

/** An outline run anticlockwise, or clockwise as a hole is. */
export function runAs(loop: Loop, way: 'outer' | 'hole'): Loop {
  return signedAreaOf(loop) > 0 === (way === 'outer') ? loop : reversedLoop(loop);
}

/** The outlines of a region, the outer one anticlockwise, the holes clockwise. */
export function loopsOf({ outer, holes }: Region): Loop[] {
  return [runAs(outer, 'outer'), ...holes.map(hole => runAs(hole, 'hole'))];
}

/** Regions from outlines that do not cross, outer ones anticlockwise and holes clockwise, each hole with its outer one. */
export function regionsOf(loops: readonly Loop[]): Region[] {
  const regions = loops
    .filter(loop => signedAreaOf(loop) > 0)
    .map(outer => ({ outer, holes: [] as Loop[], runs: runsOf([outer]), area: areaOf(outer) }));
  for (const hole of loops.filter(loop => signedAreaOf(loop) < 0)) {
    const [side] = hole;
    const around = regions
      .filter(({ runs }) => side && crossedOddly(runs, pointAlong(side, 0.5)))
      .sort((a, b) => a.area - b.area);
    around[0]?.holes.push(hole);
  }
  return regions.map(({ outer, holes }) => ({ outer, holes }));
}
