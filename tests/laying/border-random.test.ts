import { describe, expect, it } from 'vitest';
import {
  areaOf,
  circleLoop,
  type Loop,
  loopWithin,
  rectangleLoop,
  type Region,
  regionArea,
  selfCrossing,
  sideLength
} from '../../language/geometry/index.ts';
import { reversedLoop } from '../../language/geometry/outline.ts';
import type { BandCourse, BorderCourse, LaidBorders } from '../../language/laying/borders/border.ts';
import { loopOf } from '../geometry/feet.ts';
import {
  type Motion,
  moved,
  movedLoop,
  movedRegion,
  randomHoles,
  randomOutline,
  seededNumbers
} from '../geometry/random-outlines.ts';
import { BLOCK, counts, laidArea, laidBorders, laidShapes, misplaced, toTheEnd } from './laid-borders.ts';

interface Job {
  readonly region: Region;
  readonly courses: readonly BorderCourse[];
  readonly bands: readonly BandCourse[];
}

interface LaidJob extends Job {
  readonly laid: LaidBorders;
}

type Numbers = () => number;

/** Corners on a circle: every corner an outer one. */
function convex(next: Numbers): Loop {
  const count = 3 + Math.floor(5 * next());
  return loopOf(
    ...Array.from({ length: count }, (_, place): [number, number] => {
      const angle = ((place + 0.6 * next()) / count) * 2 * Math.PI;
      return [4 * Math.cos(angle), 4 * Math.sin(angle)];
    })
  );
}

function letterL(next: Numbers): Loop {
  const [width, depth] = [3 + 3 * next(), 3 + 3 * next()];
  const [arm, leg] = [1.5 + next(), 1.5 + next()];
  const loop = loopOf([-1, -1], [width, -1], [width, arm - 1], [leg - 1, arm - 1], [leg - 1, depth], [-1, depth]);
  return movedLoop(loop, { mirrored: next() < 0.5, turn: 6 * next(), move: { x: 0, y: 0 } });
}

function someCourse(next: Numbers, along: BorderCourse['along']): BorderCourse {
  const usual = next() < 0.3 ? 0 : 0.006 * next();
  return {
    unit: BLOCK,
    lies: next() < 0.5 ? 'soldier' : 'sailor',
    joint: { least: usual * next(), usual, most: usual + 0.01 * next() },
    along,
    corners: next() < 0.5 ? 'mitred' : 'butted'
  };
}

function someJob(next: Numbers, outer: Loop): Job {
  const holes = randomHoles(next, next() < 0.5).filter(hole => loopWithin(hole, outer));
  const courses = Array.from({ length: 1 + Math.floor(2 * next()) }, () => {
    const all = next() < 0.5;
    return someCourse(
      next,
      outer.map(() => all || next() < 0.6)
    );
  });
  const round = holes.flatMap((_, hole) => (next() < 0.5 ? [someCourse(next, { hole })] : []));
  const band = { ...someCourse(next, []), from: { x: -6, y: 2 * next() }, to: { x: 6, y: 2 * next() } };
  return { region: { outer, holes }, courses: [...courses, ...round], bands: next() < 0.5 ? [band] : [] };
}

/** Jobs that can be laid, and how many were drawn to find them. */
function jobs(count: number, seed: number, outline: (next: Numbers) => Loop): { found: LaidJob[]; drawn: number } {
  const next = seededNumbers(seed);
  const found: LaidJob[] = [];
  let drawn = 0;
  while (found.length < count) {
    const outer = outline(next);
    if (selfCrossing(outer)) continue;
    drawn++;
    const job = someJob(next, outer);
    const laid = toTheEnd(job.region, job.courses, job.bands);
    if ('field' in laid) found.push({ ...job, laid });
  }
  return { found, drawn };
}

const KINDS = {
  convex,
  L: letterL,
  'any, with arcs': (next: Numbers) => randomOutline(next, true)
};

describe.each(Object.entries(KINDS))('random outlines, %s', (kind, outline) => {
  it('units, joints and field are the paving, to 1e-9', () => {
    const { found, drawn } = jobs(100, 51, outline);
    for (const { region, laid } of found) {
      expect(laidArea(laid) / regionArea(region)).toBeCloseTo(1, 9);
    }
    if (kind !== 'any, with arcs') expect(drawn).toBeLessThan(125);
  });

  it('no two pieces overlap and none lies outside, by an independent library', { timeout: 30_000 }, () => {
    for (const { region, courses, bands, laid } of jobs(12, 52, outline).found) {
      const shapes = [
        ...laid.borders.flatMap((course, place) => laidShapes(course, courses[place]!)),
        ...laid.bands.flatMap((course, place) => laidShapes(course, bands[place]!)),
        ...laid.field
      ];
      const { twice, outside } = misplaced(shapes, region);
      const round = region.outer.reduce((sum, side) => sum + sideLength(side), 0);
      expect(twice / areaOf(region.outer)).toBeLessThan(1e-6);
      // Units laid whole may miss the paving by the cutting tolerance.
      expect(outside).toBeLessThan(0.0005 * round * (courses.length + 1));
    }
  });

  it('moved, turned, mirrored and run the other way round: the same counts and areas', () => {
    const next = seededNumbers(53);
    for (const { region, courses, bands, laid: here } of jobs(30, 54, outline).found) {
      const motion: Motion = { mirrored: next() < 0.5, turn: 6 * next(), move: { x: 900 * next(), y: -400 * next() } };
      const there = laidBorders(
        movedRegion(region, motion),
        courses,
        bands.map(band => ({ ...band, from: moved(band.from, motion), to: moved(band.to, motion) }))
      );
      expect([...there.borders, ...there.bands].map(counts)).toEqual([...here.borders, ...here.bands].map(counts));
      expect(laidArea(there) / laidArea(here)).toBeCloseTo(1, 9);
      const back = laidBorders(
        { ...region, outer: reversedLoop(region.outer) },
        courses.map(course => ('hole' in course.along ? course : { ...course, along: [...course.along].reverse() })),
        bands
      );
      expect([...back.borders, ...back.bands].map(counts)).toEqual([...here.borders, ...here.bands].map(counts));
    }
  });
});

describe('many units', () => {
  it('clips at the ends only: smaller units take no more work', () => {
    const outer = rectangleLoop(30, 20, { x: 0, y: 0 }, 0.3);
    const holes = [circleLoop({ x: 15, y: 0.5 }, 0.4)];
    const course = someCourse(
      seededNumbers(1),
      outer.map(() => true)
    );
    const clipped = [BLOCK, { key: 'block', length: 0.04, width: 0.02 }].map(
      unit => laidBorders({ outer, holes }, [{ ...course, unit }]).borders[0]?.laid.clipped ?? NaN
    );
    expect(clipped[1]).toBeLessThan(2.5 * (clipped[0] ?? 0));
  });
});
