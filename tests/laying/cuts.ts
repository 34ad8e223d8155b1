import {
  arcByBow,
  areaOf,
  cornerLoop,
  type Loop,
  type Point,
  reversedLoop,
  signedAreaOf
} from '../../language/geometry/index.ts';
import type { CutList } from '../../language/laying/cut-list/cut-list.ts';
import type { CutUnit, Piece } from '../../language/laying/laid.ts';
import { makeCutList } from '../../language/laying/cut-list/make-cut-list.ts';
import type { UnitShape } from '../../language/laying/cut-list/unit-shape.ts';

/** A corner in millimetres, and how far the side after it bows out (or, negative, in). */
export type Corner = readonly [x: number, y: number, bow?: number];

/** An outline from corners in millimetres. */
export function outline(...corners: readonly Corner[]): Loop {
  const points = corners.map(([x, y]): Point => ({ x: x / 1000, y: y / 1000 }));
  return cornerLoop(points).map((side, index) => {
    const bow = (corners[index]?.[2] ?? 0) / 1000;
    if (bow === 0) return side;
    return arcByBow(side.from, side.to, Math.abs(bow), bow > 0 ? 'right' : 'left')!;
  });
}

/** A piece with its holes, whichever way round these run. */
export function piece(rim: Loop, ...holes: readonly Loop[]): Piece {
  const area = areaOf(rim) - holes.reduce((sum, hole) => sum + areaOf(hole), 0);
  return { outline: rim, holes: holes.map(hole => (signedAreaOf(hole) > 0 ? reversedLoop(hole) : hole)), area };
}

export const SHAPES: Readonly<Record<string, UnitShape>> = {
  slab: { shape: 'rectangle', length: 0.2, width: 0.1 },
  coping: { shape: 'rectangle', length: 0.2, width: 0.1, finishedEdge: true },
  square: { shape: 'rectangle', length: 0.3, width: 0.3 },
  hex: { shape: 'hexagon', length: 0.2, width: 0.173 }
};

/** A cut unit at the origin. */
export function cut(unit: string, ...pieces: readonly Piece[]): CutUnit {
  return { unit, at: { x: 0, y: 0, direction: 0 }, pieces };
}

/** The cut list of some units, made to the end. */
export function listOf(cuts: readonly CutUnit[]): CutList {
  const making = makeCutList(cuts, unit => SHAPES[unit]!);
  for (let step = making.next(); ; step = making.next()) if (step.done) return step.value;
}
