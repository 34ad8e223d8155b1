import { EDGE_TOLERANCE, shareAlong } from './containment.ts';
import { distanceToSide } from './contacts.ts';
import { distance, pointAlong, sideLength } from './outline.ts';
import type { Side } from './shapes.ts';

/** Shares of a stretch at which it is looked up: what crosses another side, or touches it, does not lie on it. */
const LOOKED_UP = [0.25, 0.5, 0.75];

/**
 * What of a side lies on none of the others, within a micrometre: stretches in their order along it, arcs as arcs. Which
 * way the others run is all the same.
 */
export function leftOver(side: Side, others: readonly Side[]): Side[] {
  const near = others.filter(other => [other.from, other.to].some(end => isOn(side, end)) || isOn(other, side.from));
  const ends = near.flatMap(({ from, to }) => [from, to]).filter(end => isOn(side, end));
  const shares = [0, ...ends.map(end => shareAlong(side, end)), 1].sort((one, two) => one - two);
  const hair = EDGE_TOLERANCE / sideLength(side);
  const stretches: { from: number; to: number }[] = [];
  shares.slice(1).forEach((to, index) => {
    const from = shares[index]!;
    if (!(to - from > hair) || near.some(other => liesOn(side, from, to, other))) return;
    const last = stretches.at(-1);
    if (last && from - last.to <= hair) last.to = to;
    else stretches.push({ from, to });
  });
  return stretches.map(({ from, to }) => partOf(side, from, to));
}

function isOn(side: Side, point: Side['from']): boolean {
  return distanceToSide(side, point) <= EDGE_TOLERANCE;
}

function liesOn(side: Side, from: number, to: number, other: Side): boolean {
  return LOOKED_UP.every(share => isOn(other, pointAlong(side, from + share * (to - from))));
}

function partOf(side: Side, from: number, to: number): Side {
  const ends = { from: pointAlong(side, from), to: pointAlong(side, to) };
  return side.arc ? { ...ends, arc: { ...side.arc, turn: side.arc.turn * (to - from) } } : ends;
}

/** Sides that follow each other, each run a line of its own. */
export function runsInRow(sides: readonly Side[]): Side[][] {
  const runs: Side[][] = [];
  for (const side of sides) {
    const last = runs.at(-1)?.at(-1);
    if (last && distance(last.to, side.from) <= EDGE_TOLERANCE) runs.at(-1)!.push(side);
    else runs.push([side]);
  }
  return runs;
}
