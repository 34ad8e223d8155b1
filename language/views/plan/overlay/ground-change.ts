import { type Loop, selfCrossing, signedAreaOf } from '../../../geometry/index.ts';
import { apart, boundsOf } from '../../../geometry/bounds.ts';
import { differenceOf, intersectionOf } from '../../../geometry/loop-clip.ts';
import { runAs } from '../../../geometry/regions-of.ts';
import type { AreaChange } from './area-changes.ts';

/** Ground that no longer belongs to any area, that belongs to one only now, or that goes from one to another. */
export interface GroundChange {
  readonly given: readonly GroundOfArea[];
  readonly added: readonly GroundOfArea[];
  readonly passed: readonly (GroundOfArea & { readonly to: string })[];
}

export interface GroundOfArea {
  readonly key: string;
  /** Of the area. */
  readonly name: string;
  /** Outer outlines anticlockwise, holes clockwise. */
  readonly loops: readonly Loop[];
  /** m2 */
  readonly size: number;
}

/** m2: what is less, rounding has left. */
const LEAST = 1e-5;

/** Arcs stay arcs. Areas whose outline crosses itself enclose nothing that could be told. */
export function groundChange(areas: readonly AreaChange[]): GroundChange {
  const known = areas.filter(({ fate }) => fate !== 'unknown');
  const older = known.flatMap(({ key, before }) => (before === undefined ? [] : groundOf(key, before)));
  const newer = known.flatMap(({ key, after }) => (after === undefined ? [] : groundOf(key, after)));
  return {
    given: older.flatMap(one => less(one, newer)),
    added: newer.flatMap(one => less(one, older)),
    passed: older.flatMap(one =>
      newer.flatMap(other => {
        if (other.key === one.key || areApart(one.loops, other.loops)) return [];
        // Where both lay over each other before, nothing is passed on.
        const own = older.find(({ key }) => key === other.key);
        const loops = less({ ...one, loops: intersectionOf(one.loops, other.loops) }, own ? [own] : []);
        return loops.map(passed => ({ ...passed, to: other.name }));
      })
    )
  };
}

function groundOf(key: string, { name, outline }: { name: string; outline: Loop }): GroundOfArea[] {
  if (selfCrossing(outline)) return [];
  return [{ key, name, loops: [runAs(outline, 'outer')], size: 0 }];
}

function less(ground: GroundOfArea, others: readonly GroundOfArea[]): GroundOfArea[] {
  let { loops } = ground;
  for (const other of others) if (!areApart(loops, other.loops)) loops = differenceOf(loops, other.loops);
  const kept = loops.filter(loop => Math.abs(signedAreaOf(loop)) > LEAST);
  const size = kept.reduce((sum, loop) => sum + signedAreaOf(loop), 0);
  return size > LEAST ? [{ ...ground, loops: kept, size }] : [];
}

function areApart(one: readonly Loop[], other: readonly Loop[]): boolean {
  return one.every(loop => other.every(against => apart(boundsOf(loop), boundsOf(against), 0)));
}
