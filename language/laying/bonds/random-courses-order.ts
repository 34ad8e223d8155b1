import type { Cells } from '../../geometry/courses.ts';
import { randomShare, randomWhole } from './random-numbers.ts';

/**
 * The order of the lengths in one course. It is a round: after the last length the first follows again, so that a
 * course reaches as far as it has to either way. Metres.
 */
export interface CourseOrder {
  /** Where the first length of the round starts along the course. */
  readonly start: number;
  /** Which length stands in each place. */
  readonly lengths: readonly number[];
  /** From the start of the round to the start of each place, and to its end. */
  readonly places: readonly number[];
}

/** What the courses are made of. Metres. */
export interface MixedLengths {
  /** Each length and its joint. */
  readonly pitches: readonly number[];
  /** The least from a cross joint to one of the next course, middle to middle. */
  readonly jointsApart: number;
  readonly seed: number;
}

/** Units in a round, at least: so many that nobody sees it come back, so few that an order is found at once. */
const UNITS_IN_ROUND = 48;

/** Places where a course is tried to start, and units tried at each of them, before it gives up shuffling. */
const STARTS_TRIED = 6;
const UNITS_TRIED = 2000;

/** In metres: rounding that must not make joints just far enough apart too near. */
const ROUNDING = 1e-9;

/** Numbers drawn for each course: for its places, and then for its starts. */
const DRAWN_FOR_STARTS = 1_000_000;

/** The first course: it starts with a whole unit at nought. */
export function firstOrder(mix: MixedLengths): CourseOrder {
  return orderOf(0, shuffled(mix, 0), mix);
}

/**
 * The order of a course that lies next to another: the lengths of the round shuffled, no cross joint too near to one of
 * its neighbour. Undefined when none is found.
 */
export function nextOrder(mix: MixedLengths, course: number, neighbour: CourseOrder): CourseOrder | undefined {
  const seed = seedOf(mix, course);
  const isApart = (place: number): boolean => jointGap(neighbour, place) >= mix.jointsApart - ROUNDING;
  for (let attempt = 0; attempt < STARTS_TRIED; attempt++) {
    const start = startWithin(neighbour, mix, seed, attempt);
    if (start === undefined) continue;
    const lengths = arranged(shuffled(mix, course), start, mix, isApart);
    if (lengths) return orderOf(start, lengths, mix);
  }
  return shifted(neighbour, mix, seed);
}

function seedOf({ seed }: MixedLengths, course: number): number {
  // Courses before the first take the odd places in the row of numbers, the others the even ones.
  return randomWhole(seed, course < 0 ? -2 * course - 1 : 2 * course);
}

/** The same number of each length, in an order drawn for the course. */
function shuffled(mix: MixedLengths, course: number): number[] {
  const seed = seedOf(mix, course);
  const kinds = mix.pitches.length;
  const lengths = Array.from({ length: kinds * Math.ceil(UNITS_IN_ROUND / kinds) }, (_, place) => place % kinds);
  for (let last = lengths.length - 1; last > 0; last--) {
    swap(lengths, last, Math.floor(randomShare(seed, last) * (last + 1)));
  }
  return lengths;
}

function swap(lengths: number[], one: number, other: number): void {
  const kept = lengths[one] ?? 0;
  lengths[one] = lengths[other] ?? 0;
  lengths[other] = kept;
}

/** A start far enough from the joints beside it, in a place of the neighbour that is drawn. */
function startWithin(neighbour: CourseOrder, mix: MixedLengths, seed: number, attempt: number): number | undefined {
  const draw = (place: number): number => randomShare(seed, DRAWN_FOR_STARTS + 2 * attempt + place);
  const place = Math.floor(draw(0) * neighbour.lengths.length);
  const left = neighbour.places[place] ?? 0;
  const right = neighbour.places[place + 1] ?? left;
  const room = right - left - 2 * mix.jointsApart;
  return room < -ROUNDING ? undefined : neighbour.start + left + mix.jointsApart + Math.max(0, room) * draw(1);
}

/** Arranges lengths so that every joint stands apart, in an order as near as can be to the one they are in. */
function arranged(
  lengths: number[],
  start: number,
  { pitches }: MixedLengths,
  isApart: (place: number) => boolean
): number[] | undefined {
  let left = UNITS_TRIED;
  const arrangeFrom = (place: number, from: number): boolean => {
    if (place === lengths.length) return true;
    const tried = new Set<number>();
    for (let other = place; other < lengths.length; other++) {
      const length = lengths[other] ?? 0;
      if (tried.has(length)) continue;
      tried.add(length);
      if (left-- <= 0) return false;
      const to = from + (pitches[length] ?? 0);
      if (!isApart(to)) continue;
      swap(lengths, place, other);
      if (arrangeFrom(place + 1, to)) return true;
      swap(lengths, place, other);
    }
    return false;
  };
  return arrangeFrom(0, start) ? lengths : undefined;
}

/** The neighbour's order over again, moved along: where no other is found, and where the shortest length allows it. */
function shifted(neighbour: CourseOrder, mix: MixedLengths, seed: number): CourseOrder | undefined {
  const room = Math.min(...mix.pitches) - 2 * mix.jointsApart;
  if (room < -ROUNDING) return undefined;
  const move = mix.jointsApart + Math.max(0, room) * randomShare(seed, DRAWN_FOR_STARTS + 2 * STARTS_TRIED);
  const forward = randomShare(seed, DRAWN_FOR_STARTS + 2 * STARTS_TRIED + 1) < 0.5;
  return { ...neighbour, start: neighbour.start + (forward ? move : -move) };
}

function orderOf(start: number, lengths: readonly number[], { pitches }: MixedLengths): CourseOrder {
  const places = [0];
  for (const length of lengths) places.push((places[places.length - 1] ?? 0) + (pitches[length] ?? 0));
  const round = places[places.length - 1] ?? 1;
  return { start: start - Math.floor(start / round) * round, lengths, places };
}

/** Metres from a place along a course to the nearest start of a unit in it. */
function jointGap(order: CourseOrder, place: number): number {
  const { at, lastFrom } = cellsOfOrder(order);
  const before = lastFrom(place);
  return Math.min(place - at(before), at(before + 1) - place);
}

/** The units of a course as cells, each with the joint after it, numbered from the start of the round. */
export function cellsOfOrder({ start, places }: CourseOrder): Cells {
  const count = places.length - 1;
  const round = places[count] ?? 1;
  const at = (cell: number): number => {
    const rounds = Math.floor(cell / count);
    return start + rounds * round + (places[cell - rounds * count] ?? 0);
  };
  const lastFrom = (place: number): number => {
    const rounds = Math.floor((place - start) / round);
    let low = rounds * count;
    let high = low + count;
    // Rounding may put a place at the very end of a round just into the next one.
    if (at(low) > place) return low - 1;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (at(middle) <= place) low = middle;
      else high = middle;
    }
    return low;
  };
  const firstFrom = (place: number): number => {
    const last = lastFrom(place);
    return at(last) < place ? last + 1 : last;
  };
  return { at, lastFrom, firstFrom };
}

/** Which length a unit of a course has. */
export function lengthAt({ lengths }: CourseOrder, cell: number): number {
  return lengths[((cell % lengths.length) + lengths.length) % lengths.length] ?? 0;
}
