// Random outlines with fixed seeds against an independent polygon library.
import { describe, expect, it } from 'vitest';
import { cutToColumns, cutToRows } from '../../language/geometry/courses.ts';
import { inFrame, shiftOf } from '../../language/geometry/grid-frame.ts';
import {
  baseOut,
  CUTTING_TOLERANCE,
  inside,
  loopWithin,
  overlapArea,
  perimeterOf,
  rectangleLoop,
  regionArea,
  selfCrossing,
  sharedWithAny,
  type Loop,
  type Region,
  type UnitGrid
} from '../../language/geometry/index.ts';
import { pathOf, pathsArea } from '../../language/geometry/path-clip.ts';
import { laid } from './laid.ts';
import { chorded, movedRegion, randomComb, randomHoles, randomOutline, seededNumbers } from './random-outlines.ts';
import { covers, isValid, movedOut, polygonOf, sharedArea, sharedWithUnion } from './second-opinion.ts';

const SEED = 20240511;
const CHORDS = 12;

function randomRegions(count: number, seed: number): { region: Region; next: () => number }[] {
  const next = seededNumbers(seed);
  const found: { region: Region; next: () => number }[] = [];
  while (found.length < count) {
    const outer = chorded(randomOutline(next, true), CHORDS);
    const holes = randomHoles(next, next() < 0.5).map(hole => chorded(hole, CHORDS));
    const motion = { mirrored: next() < 0.5, turn: 7 * next(), move: { x: 200 * next(), y: -200 * next() } };
    const region = movedRegion({ outer, holes }, motion);
    if (isValid(polygonOf(region))) found.push({ region, next });
  }
  return found;
}

function tileArea(grid: UnitGrid): number {
  return grid.length * grid.width;
}

/** Every unit of a grid that may meet a region, in the grid's own frame. */
function tilesOver(frame: readonly Loop[], grid: UnitGrid): { left: number; bottom: number }[] {
  const corners = frame.flatMap(loop => loop.map(side => side.from));
  const low = { x: Math.min(...corners.map(p => p.x)), y: Math.min(...corners.map(p => p.y)) };
  const high = { x: Math.max(...corners.map(p => p.x)), y: Math.max(...corners.map(p => p.y)) };
  const along = grid.length + grid.joint;
  const across = grid.width + grid.joint;
  const tiles: { left: number; bottom: number }[] = [];
  for (let course = Math.floor(low.y / across); course * across < high.y; course++) {
    const shift = shiftOf(course, grid);
    for (let place = Math.floor((low.x - shift) / along); shift + place * along < high.x; place++) {
      tiles.push({ left: shift + place * along, bottom: course * across });
    }
  }
  return tiles;
}

describe('against an independent polygon library', () => {
  it(
    'areas, perimeters, unit pieces one by one and totals of whole and cut units agree for 200 outlines',
    { timeout: 20_000 },
    () => {
      for (const { region, next } of randomRegions(200, SEED)) {
        const polygon = polygonOf(region);
        expect(regionArea(region) / polygon.getArea()).toBeCloseTo(1, 9);
        const perimeter = [region.outer, ...region.holes].reduce((sum, loop) => sum + perimeterOf(loop), 0);
        expect(perimeter / polygon.getLength()).toBeCloseTo(1, 9);

        const start = region.outer[0]?.from ?? { x: 0, y: 0 };
        const grid: UnitGrid = {
          origin: { x: start.x + next(), y: start.y + next() },
          direction: 6 * next(),
          mirrored: next() < 0.5,
          length: 0.8 + next(),
          width: 0.5 + 0.6 * next(),
          joint: next() < 0.3 ? 0 : 0.05 * next(),
          offset: next()
        };
        const frame = inFrame(region, grid);
        const [outer = [], ...holes] = frame;
        const framed = polygonOf({ outer, holes });
        const paths = frame.map(pathOf);
        let worst = 0;
        const seen = { whole: 0, cut: 0, perhapsWhole: 0, perhapsCut: 0, area: 0 };
        for (const { left, bottom } of tilesOver(frame, grid)) {
          const ours = pathsArea(cutToRows(cutToColumns(paths, left, left + grid.length), bottom, bottom + grid.width));
          const tile = rectangleLoop(grid.length, grid.width, { x: left, y: bottom }, 0);
          const theirs = sharedArea(framed, polygonOf({ outer: tile, holes: [] }));
          worst = Math.max(worst, Math.abs(ours - theirs) / tileArea(grid));
          seen.area += theirs;
          const missing = tileArea(grid) - theirs;
          const rim = 2 * (grid.length + grid.width);
          if (missing < 1e-9) seen.whole++;
          else if (missing < CUTTING_TOLERANCE * rim) seen.perhapsWhole++;
          else if (theirs > CUTTING_TOLERANCE * rim) seen.cut++;
          else if (theirs > 0) seen.perhapsCut++;
        }
        expect(worst).toBeLessThan(1e-9);
        const units = laid(region, grid);
        expect(units.unitArea / seen.area).toBeCloseTo(1, 9);
        expect(units.whole).toBeGreaterThanOrEqual(seen.whole);
        expect(units.whole).toBeLessThanOrEqual(seen.whole + seen.perhapsWhole);
        expect(units.whole + units.cut).toBeGreaterThanOrEqual(seen.whole + seen.cut + seen.perhapsWhole);
        expect(units.cut).toBeLessThanOrEqual(seen.cut + seen.perhapsCut + seen.perhapsWhole);
      }
    }
  );

  it('crossing outlines, outlines within others and shared areas agree', () => {
    const next = seededNumbers(SEED + 1);
    const verdicts = { crossing: 0, within: 0, overlapping: 0 };
    for (let round = 0; round < 300; round++) {
      const a = chorded(randomOutline(next, true), 6);
      const shuffled = [...a];
      const one = shuffled[0];
      const other = shuffled[3];
      // Two corners exchanged: mostly a crossing outline, now and then a good one.
      const corners = a.map(side => (side === one ? other : side === other ? one : side)?.from ?? side.from);
      const mixed = corners.map((from, index) => ({ from, to: corners[(index + 1) % corners.length] ?? from }));
      const crosses = !isValid(polygonOf({ outer: mixed, holes: [] }));
      expect(selfCrossing(mixed) !== undefined).toBe(crosses);
      verdicts.crossing += crosses ? 1 : 0;

      const polygon = polygonOf({ outer: a, holes: [] });
      if (!isValid(polygon)) continue;
      const size = 1 + 2.5 * next();
      const b = rectangleLoop(size, size, { x: 4 * next() - 2 - size / 2, y: 4 * next() - 2 - size / 2 }, 3 * next());
      const box = polygonOf({ outer: b, holes: [] });
      const within = covers(polygon, box);
      expect(loopWithin(b, a)).toBe(within);
      verdicts.within += within ? 1 : 0;
      const shared = sharedArea(polygon, box);
      // Corners on whole nanometres along some metres of edge.
      expect(Math.abs(overlapArea(a, b) - shared)).toBeLessThan(1e-7);
      verdicts.overlapping += shared > 0 ? 1 : 0;
      const point = { x: 12 * next() - 6, y: 12 * next() - 6 };
      const dot = rectangleLoop(1e-5, 1e-5, { x: point.x - 5e-6, y: point.y - 5e-6 }, 0);
      expect(inside(a, point)).toBe(covers(polygon, polygonOf({ outer: dot, holes: [] })));
    }
    expect(verdicts.crossing).toBeGreaterThan(50);
    expect(verdicts.within).toBeGreaterThan(50);
    expect(verdicts.overlapping).toBeGreaterThan(200);
  });

  it('ground that several share is counted once, gaps and kept-out shapes left out', () => {
    const next = seededNumbers(SEED + 5);
    let several = 0;
    for (let round = 0; round < 100; round++) {
      const box = (size: number): Loop =>
        rectangleLoop(size, size, { x: 4 * next() - 2 - size / 2, y: 4 * next() - 2 - size / 2 }, 3 * next());
      const grounds = Array.from({ length: 4 }, () => {
        const outer = box(2 + 3 * next());
        const { from, to } = outer[0]!;
        const hole = rectangleLoop(0.4, 0.4, { x: (from.x + to.x) / 2 - 0.2, y: (from.y + to.y) / 2 - 0.2 }, 0);
        const keptOut = loopWithin(hole, outer) ? [hole] : [];
        return { loops: [outer], keptOut };
      });
      const polygons = grounds.map(({ loops, keptOut }) => polygonOf({ outer: loops[0]!, holes: keptOut }));
      const [first, ...others] = grounds;
      const shared = sharedWithUnion(polygons[0]!, polygons.slice(1));
      expect(Math.abs(sharedWithAny(first!, others) - shared)).toBeLessThan(1e-7);
      const oneByOne = polygons.slice(1).reduce((sum, other) => sum + sharedArea(polygons[0]!, other), 0);
      if (oneByOne > shared + 1e-3) several++;
    }
    expect(several).toBeGreaterThan(30);
  });

  it('a base of one width all round agrees, notches closing up included', () => {
    const next = seededNumbers(SEED + 2);
    const verdicts = { exact: 0, cleaned: 0 };
    for (let round = 0; round < 200; round++) {
      const loop = round % 2 === 0 ? randomComb(next) : randomOutline(next, false);
      const polygon = polygonOf({ outer: loop, holes: [] });
      const width = 0.05 + 0.8 * next();
      if (!isValid(polygon) || sharpestCorner(loop) < 0.55) continue;
      const base = baseOut(
        loop,
        loop.map(() => width)
      );
      verdicts[base.exact ? 'exact' : 'cleaned']++;
      expect(base.area / movedOut(polygon, width).getArea()).toBeCloseTo(1, 6);
    }
    expect(verdicts.exact).toBeGreaterThan(50);
    expect(verdicts.cleaned).toBeGreaterThan(30);
  });
});

/** The smallest angle inside a corner of an anticlockwise outline, in radians. */
function sharpestCorner(loop: Loop): number {
  const angles = loop.map((side, index) => {
    const after = loop[(index + 1) % loop.length] ?? side;
    const back = Math.atan2(side.from.y - side.to.y, side.from.x - side.to.x);
    const onward = Math.atan2(after.to.y - after.from.y, after.to.x - after.from.x);
    return (back - onward + 4 * Math.PI) % (2 * Math.PI);
  });
  return Math.min(...angles);
}
