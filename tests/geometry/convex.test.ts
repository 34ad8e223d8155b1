import { describe, expect, it } from 'vitest';
import { boxShape, convexShape } from '../../language/geometry/convex.ts';
import { cutOf } from '../../language/geometry/cut-unit.ts';
import { inFrame } from '../../language/geometry/grid-frame.ts';
import { type Loop, loopWithin, rectangleLoop, regionArea, selfCrossing } from '../../language/geometry/index.ts';
import { pathOf, pathsArea } from '../../language/geometry/path-clip.ts';
import { piecesOf } from '../../language/geometry/pieces.ts';
import { loopOf } from './feet.ts';
import { chorded, randomHoles, randomOutline, seededNumbers } from './random-outlines.ts';
import { polygonOf, sharedArea } from './second-opinion.ts';

const origin = { x: 0, y: 0 };
const unit = boxShape({ left: 0, right: 1, bottom: 0, top: 1 });

function randomRegion(next: () => number) {
  for (;;) {
    const region = { outer: randomOutline(next, true), holes: randomHoles(next, next() < 0.5) };
    if (!selfCrossing(region.outer) && region.holes.every(hole => loopWithin(hole, region.outer))) return region;
  }
}

function pathsIn(outer: Loop, ...holes: Loop[]) {
  return inFrame({ outer, holes }, { origin, direction: 0, mirrored: false }).map(pathOf);
}

/** Corners round a circle in order, 3 to 8 of them. */
function randomConvex(next: () => number) {
  const count = 3 + Math.floor(next() * 6);
  const [x, y, reach] = [4 * next() - 2, 4 * next() - 2, 0.5 + 3 * next()];
  return Array.from({ length: count }, (_, index) => {
    const angle = ((index + 0.6 * next()) / count) * 2 * Math.PI;
    return { x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle) };
  });
}

describe('clipping to a convex shape', () => {
  it('agrees with an independent library on chords, and the pieces make it up', () => {
    const next = seededNumbers(91);
    for (let round = 0; round < 150; round++) {
      const region = randomRegion(next);
      const corners = randomConvex(next);
      const shape = convexShape(corners);
      const straight = { outer: chorded(region.outer, 5), holes: region.holes.map(hole => chorded(hole, 5)) };
      const polygon = polygonOf({ outer: loopOf(...corners.map(({ x, y }) => [x, y] as const)), holes: [] });
      const clipped = shape.clip(pathsIn(straight.outer, ...straight.holes));
      expect(pathsArea(clipped)).toBeCloseTo(sharedArea(polygonOf(straight), polygon), 9);
      const withArcs = shape.clip(pathsIn(region.outer, ...region.holes));
      const area = pathsArea(withArcs);
      if (area < 1e-6) continue;
      const pieces = piecesOf(withArcs, shape);
      expect(pieces.reduce((sum, piece) => sum + piece.area, 0)).toBeCloseTo(area, 9);
      expect(pieces.every(piece => piece.area > -1e-12)).toBe(true);
    }
  });

  it('a fan of shapes about a point makes up regions with arcs, closed formula, to 1e-9', () => {
    const next = seededNumbers(92);
    for (let round = 0; round < 100; round++) {
      const region = randomRegion(next);
      const centre = { x: next(), y: next() };
      const turn = 6 * next();
      const tip = (index: number) => ({
        x: centre.x + 30 * Math.cos(turn + (index * Math.PI) / 3),
        y: centre.y + 30 * Math.sin(turn + (index * Math.PI) / 3)
      });
      const paths = pathsIn(region.outer, ...region.holes);
      const sum = [0, 1, 2, 3, 4, 5]
        .map(index => pathsArea(convexShape([centre, tip(index), tip(index + 1)]).clip(paths)))
        .reduce((all, area) => all + area, 0);
      expect(sum / regionArea(region)).toBeCloseTo(1, 9);
    }
  });

  it('a box gives the same pieces as a box and as four corners', () => {
    const next = seededNumbers(93);
    for (let round = 0; round < 100; round++) {
      const region = randomRegion(next);
      const box = { left: -1 - 2 * next(), right: 0.5 + 2 * next(), bottom: -2 * next(), top: 1 + 2 * next() };
      const [asBox, asCorners] = [boxShape(box), convexShape(boxShape(box).corners)].map(shape =>
        cutOf(shape.clip(pathsIn(region.outer, ...region.holes)), shape, 0)
      );
      expect(asCorners?.pieces.map(({ area }) => area)).toEqual(
        asBox?.pieces.map(({ area }) => expect.closeTo(area, 9))
      );
    }
  });
});

describe('pieces of a unit', () => {
  it('a hole in the smaller of two pieces stays with it (by hand)', () => {
    // A slot from 0.40 to 0.45 m leaves 0.40 and 0.55 m²; the hole of 0.01 m² lies in the smaller one.
    const slot = rectangleLoop(0.05, 2, { x: 0.4, y: -0.5 }, 0);
    const hole = rectangleLoop(0.1, 0.1, { x: 0.1, y: 0.4 }, 0);
    const pieces = piecesOf(unit.clip(pathsIn(rectangleLoop(4, 4, { x: -1, y: -1 }, 0), slot, hole)), unit);
    expect(pieces.map(({ area, holes }) => [area, holes.length])).toEqual([
      [expect.closeTo(0.55, 12), 0],
      [expect.closeTo(0.39, 12), 1]
    ]);
  });

  it('an outline that leaves a unit and comes back along the same side leaves a clean piece (by hand)', () => {
    // It leaves on the right at 0.2 m, comes back beyond the unit and passes below: four corners, not a spike to the top.
    const outer = loopOf([-1, 0.2], [2, 0.2], [2, 3], [1.5, 3], [1.5, 0.1], [0.5, 0.1], [0.5, -1], [-1, -1]);
    const [piece, ...others] = piecesOf(unit.clip(pathsIn(outer)), unit);
    expect(others).toEqual([]);
    expect(piece?.area).toBeCloseTo(0.5 * 0.2 + 0.5 * 0.1, 12);
    const corners = piece?.rim.map(({ x0, y0 }) => [x0, y0]) ?? [];
    expect(corners.every(([, y = 1]) => y < 0.2 + 1e-9)).toBe(true);
    expect(corners).toHaveLength(6);
  });
});
