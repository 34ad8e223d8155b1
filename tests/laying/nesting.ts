import { expect } from 'vitest';
import {
  areaOf,
  boundsOf,
  cornerLoop,
  CUTTING_TOLERANCE,
  type Loop,
  rectangleLoop
} from '../../language/geometry/index.ts';
import type { UnitShape } from '../../language/laying/cut-list/unit-shape.ts';
import type { Piece } from '../../language/laying/laid.ts';
import { nested } from '../../language/laying/nesting/nest.ts';
import {
  type Nested,
  type NestingInputs,
  type PlacedPiece,
  USUAL_NESTING_WORK
} from '../../language/laying/nesting/nested.ts';
import { chorded, movedLoop } from '../geometry/random-outlines.ts';
import { distanceApart, polygonOf, sharedArea } from '../geometry/second-opinion.ts';

/** A block 200 x 100 mm. */
export const BLOCK: UnitShape = { shape: 'rectangle', length: 0.2, width: 0.1 };

export function pieceOf(outline: Loop): Piece {
  return { outline, holes: [], area: areaOf(outline) };
}

/** A piece by its corners in millimetres, anticlockwise. */
export function cornered(...corners: readonly (readonly [number, number])[]): Piece {
  return pieceOf(cornerLoop(corners.map(([x, y]) => ({ x: x / 1000, y: y / 1000 }))));
}

/** A rectangle in millimetres. */
export function rectangle(length: number, width: number, left = 0, bottom = 0): Piece {
  return pieceOf(rectangleLoop(length / 1000, width / 1000, { x: left / 1000, y: bottom / 1000 }, 0));
}

export interface Case {
  readonly unit?: UnitShape;
  /** Millimetres; the usual 3 mm when not said. */
  readonly saw?: number;
  readonly finishedEdge?: boolean;
  readonly workLimit?: number;
}

/** Nests pieces, each with its count, and checks that what comes out can be cut and is all that was asked for. */
export function nest(demand: readonly (readonly [Piece, number])[], given: Case = {}): Nested {
  return nestCounted(demand, given).result;
}

/** The same, with how often it gave way. */
export function nestCounted(
  demand: readonly (readonly [Piece, number])[],
  { unit = BLOCK, saw = 3, finishedEdge = false, workLimit = USUAL_NESTING_WORK }: Case = {}
): { result: Nested; yields: number } {
  // Numbers that are no indices, as on a cut list.
  const pieces = demand.map(([piece, count], index) => ({ group: 10 + index, piece, count }));
  const inputs = { unit, pieces, sawCut: saw / 1000, finishedEdge, workLimit };
  const nesting = nested(inputs);
  let yields = 0;
  let step = nesting.next();
  for (; !step.done; step = nesting.next()) yields++;
  expectCuttable(inputs, step.value);
  return { result: step.value, yields };
}

function expectCuttable(inputs: NestingInputs, { unitsUsed, lowerBound, plan, proven }: Nested): void {
  expect(unitsUsed).toBeGreaterThanOrEqual(lowerBound);
  if (unitsUsed === lowerBound) expect(proven).toBe(true);
  expect(plan.reduce((sum, { units }) => sum + units, 0)).toBe(unitsUsed);
  const given = new Map<number, number>();
  for (const { units, pieces } of plan) {
    for (const { group } of pieces) given.set(group, (given.get(group) ?? 0) + units);
  }
  expect([...given].sort(([a], [b]) => a - b)).toEqual(
    inputs.pieces.filter(({ count }) => count > 0).map(({ group, count }) => [group, count])
  );
  for (const { pieces } of plan) expectApart(inputs, pieces);
}

function expectApart(inputs: NestingInputs, pieces: readonly PlacedPiece[]): void {
  const { unit, sawCut, finishedEdge } = inputs;
  const outlines = pieces.map(place => {
    if (finishedEdge) expect(place).toMatchObject({ turn: 0, y: expect.closeTo(0, 9) as number });
    return placed(inputs.pieces.find(({ group }) => group === place.group)!.piece.outline, place);
  });
  for (const outline of outlines) {
    const box = boundsOf(outline);
    expect(Math.min(box.left, box.bottom)).toBeGreaterThan(-1e-8);
    expect(Math.max(box.right - unit.length, box.top - unit.width)).toBeLessThan(1e-8);
  }
  const polygons = outlines.map(outline => polygonOf({ outer: chorded(outline, 50), holes: [] }));
  for (const [index, one] of polygons.entries()) {
    for (const other of polygons.slice(index + 1)) {
      expect(distanceApart(one, other)).toBeGreaterThan(sawCut - CUTTING_TOLERANCE - 1e-8);
      expect(sharedArea(one, other)).toBeLessThan(1e-10);
    }
  }
}

function placed(outline: Loop, { x, y, turn }: PlacedPiece): Loop {
  return movedLoop(outline, { mirrored: false, turn: (turn * Math.PI) / 180, move: { x, y } });
}
