import { distance, type Loop, type Point } from '../../geometry/index.ts';
import type { AreaToLay } from '../area-to-lay.ts';
import { type Cutting, cuttingOf } from './cutting.ts';
import { byCutting, isClearlyBetter } from './fewer-cuts.ts';
import { runsAlong } from '../field-frame.ts';
import { layArea, setOutArea } from '../lay-area.ts';
import type { BondPattern } from '../bonds/pattern.ts';
import { endLines, pitchOf, reachOf, sizeOf, unitEdges, type Way } from './unit-lines.ts';

/** Length and width of a rectangle, m: along its first side and across it. */
export type Size = readonly [number, number];

/** Another size of a rectangle, and what it leaves to cut. */
export interface BetterSize {
  readonly size: Size;
  readonly cutting: Cutting;
}

export interface BetterSizes {
  readonly now: Cutting;
  /** At most one smaller and one larger, those without cuts first. */
  readonly better: readonly BetterSize[];
  /** Sizes tried: a counter of work. */
  readonly tried: number;
}

export interface SizeSearch {
  /** What a size is measured in, m. */
  readonly sizeStep: number;
}

/** Lengths looked at each way, smaller and larger. */
const MOST_LENGTHS = 3;

/**
 * The nearest sizes of a rectangle that leave less to cut, or nothing: one and the other side less than a unit shorter or
 * longer, the first corner where it is, units, joints and start as said. Undefined where the outline is no rectangle or
 * the area can't be laid.
 */
export function* betterSizes(area: AreaToLay, search: SizeSearch): Generator<void, BetterSizes | undefined> {
  const size = sizeOfRectangle(area.outline);
  if (size === undefined) return undefined;
  const laid = yield* layArea(area);
  if (!('parts' in laid)) return undefined;
  const now = cuttingOf(laid, area);
  const tried: BetterSize[] = [];
  const tryOut = function* (other: Size): Generator<void, void> {
    if (tried.some(one => one.size[0] === other[0] && one.size[1] === other[1])) return;
    const changed = { ...area, outline: resized(area.outline, other) };
    const result = yield* layArea(changed);
    if ('parts' in result) tried.push({ size: other, cutting: cuttingOf(result, changed) });
  };
  if (now.cutUnits > 0) {
    const lengths = yield* lengthsNear(area, size, 0, search);
    const widths = yield* lengthsNear(area, size, 1, search);
    for (const length of lengths) yield* tryOut([length, size[1]]);
    const longer = nearestOfEach(tried, size, 0);
    const before = tried.length;
    for (const width of widths) yield* tryOut([size[0], width]);
    const wider = nearestOfEach(tried.slice(before), size, 1);
    for (const length of longer) for (const width of wider) yield* tryOut([length, width]);
  }
  return { now, better: smallerAndLarger(tried, size, now), tried: tried.length };
}

/** In metres, and the cosine of an angle: what can't be told from a right angle. */
const SQUARE = 1e-6;

/** Undefined where an outline is no rectangle. */
function sizeOfRectangle(outline: Loop): Size | undefined {
  const [first, second] = outline;
  if (first === undefined || second === undefined || outline.length !== 4) return undefined;
  if (outline.some(({ arc }) => arc !== undefined)) return undefined;
  const square = resized(outline, [distance(first.from, first.to), distance(second.from, second.to)]);
  if (square.some(({ from }, index) => distance(from, outline[index]!.from) > SQUARE)) return undefined;
  return [distance(first.from, first.to), distance(second.from, second.to)];
}

/** A rectangle of another size with the same first corner and directions. */
function resized(outline: Loop, [length, width]: Size): Loop {
  const [{ from, to }, next] = [outline[0]!, outline[1]!];
  const along = unitVector(from, to);
  // Square to it, towards the side where the outline goes on.
  const left = (to.x - from.x) * (next.to.y - next.from.y) - (to.y - from.y) * (next.to.x - next.from.x) >= 0 ? 1 : -1;
  const across = { x: -left * along.y, y: left * along.x };
  const corner = (x: number, y: number): Point => ({
    x: from.x + x * along.x + y * across.x,
    y: from.y + x * along.y + y * across.y
  });
  const corners = [corner(0, 0), corner(length, 0), corner(length, width), corner(0, width)];
  return corners.map((at, index) => ({ from: at, to: corners[(index + 1) % corners.length]! }));
}

function unitVector(from: Point, to: Point): Point {
  const length = distance(from, to);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** Lengths of one side, the nearest first, with which units come out even: from end to end, or at the end that moves. */
function* lengthsNear(area: AreaToLay, size: Size, side: 0 | 1, { sizeStep }: SizeSearch): Generator<void, number[]> {
  const set = yield* setOutArea(area);
  if ('part' in set || set.setOut.pattern === undefined) return [];
  const { regions } = set.ground;
  const { pattern } = set.setOut;
  const way: Way = runsAlong(area.outline[side]!, pattern.frame) ? 'along' : 'across';
  // Courses at a slant never come out even.
  if (!endLines(regions, pattern, way).some(({ units }) => units !== 'meet')) return [];
  const [low, high] = reachOf(regions, pattern, way);
  const changes = [...evenChanges(pattern, way, high - low), ...endChanges(pattern, way, low, high)];
  // Never shorter than whole units take: what is over lies in the joint at the edge.
  const lengths = changes.map(change => Math.ceil((size[side] + change) / sizeStep - ON_STEP) * sizeStep);
  const others = [...new Set(lengths)].filter(
    length => length > sizeStep && Math.abs(length - size[side]) > sizeStep / 2
  );
  const byNearness = others.sort((one, other) => Math.abs(one - size[side]) - Math.abs(other - size[side]));
  const some = (isOf: (length: number) => boolean): number[] => byNearness.filter(isOf).slice(0, MOST_LENGTHS);
  return [...some(length => length < size[side]), ...some(length => length > size[side])];
}

/** In steps. */
const ON_STEP = 1e-4;

/** To whole pitches without the last joint; in a bond that is moved on from course to course also to parts of one. */
function evenChanges(pattern: BondPattern, way: Way, reach: number): number[] {
  const [unit] = pattern.units;
  const pitch = pitchOf(pattern, way);
  if (unit === undefined || !(pitch > 0)) return [];
  const gap = pitch - sizeOf(unit, way);
  const parts = way === 'along' ? [0, unit.offset % 1] : [0];
  return parts.flatMap(part => {
    const over = reach + gap - part * pitch;
    const whole = Math.floor(over / pitch + ON_STEP);
    return [whole, whole + 1].map(pitches => pitches * pitch - over);
  });
}

/** So that the end that moves lies at the end of a unit, or at the beginning where the courses run towards the corner. */
function endChanges(pattern: BondPattern, way: Way, low: number, high: number): number[] {
  const pitch = pitchOf(pattern, way);
  if (!(pitch > 0)) return [];
  const { begin, end } = unitEdges(pattern, way);
  const remainder = (by: number): number => ((by % pitch) + pitch) % pitch;
  return [
    ...end.flatMap(edge => [-remainder(high - edge), pitch - remainder(high - edge)]),
    ...begin.flatMap(edge => [-remainder(edge - low), pitch - remainder(edge - low)])
  ];
}

/** The best shorter and the best longer of sizes that differ one way alone. */
function nearestOfEach(tried: readonly BetterSize[], size: Size, side: 0 | 1): number[] {
  const best = (some: readonly BetterSize[]): number[] =>
    [...some]
      .sort((one, other) => byCutting(one.cutting, other.cutting))
      .slice(0, 1)
      .map(one => one.size[side]);
  return [
    ...best(tried.filter(one => one.size[side] < size[side])),
    ...best(tried.filter(one => one.size[side] > size[side]))
  ];
}

function smallerAndLarger(tried: readonly BetterSize[], size: Size, now: Cutting): BetterSize[] {
  const areaOf = ([length, width]: Size): number => length * width;
  const better = tried
    .filter(({ cutting }) => isClearlyBetter(cutting, now))
    .sort(
      (one, other) =>
        byCutting(one.cutting, other.cutting) ||
        Math.abs(areaOf(one.size) - areaOf(size)) - Math.abs(areaOf(other.size) - areaOf(size))
    );
  const smaller = better.find(one => areaOf(one.size) < areaOf(size));
  const larger = better.find(one => areaOf(one.size) > areaOf(size));
  return [smaller, larger].flatMap(one => one ?? []).sort((one, other) => byCutting(one.cutting, other.cutting));
}
