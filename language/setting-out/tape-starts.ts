import { distance, type Point } from '../geometry/index.ts';
import { movingPoints } from './rigidity.ts';
import { scattered } from './scattered.ts';
import { type Allowance, fitted } from './tape-fit.ts';
import { equationsOf, sumOfSquares } from './tape-equations.ts';
import {
  endsAround,
  type FreePoint,
  isOnSide,
  type Network,
  otherEnd,
  outOnSide,
  type Places,
  type Tape,
  tapesAt
} from './tape-network.ts';
import { FLAT, type Meeting, meetingOf, type NoMeeting } from './two-tapes.ts';

/** Arrangements (each point on one side or the other) followed at once: the sides of real yards leave two or three. */
const MOST_ARRANGEMENTS = 8;
/** Scattered starts for points that only hold each other: three such points have at most a dozen arrangements. */
const SCATTERED_STARTS = 48;
/** Steps from each: one that is not near by then leads nowhere, and what is near is fitted on anyhow. */
const STEPS_FROM_EACH = 40;
/** Arrangements of the placed points that such points are tried with, the best-fitting ones; they share the starts. */
const MOST_ARRANGEMENTS_HELD_TO = 2;
/** How far (m) two tapes may fail to meet at a point that a third one reaches too: the fit shares it out. */
const SHARED_MISS = 0.05;

/** Why a point found no place. */
export type StartFault =
  | {
      readonly kind: 'triangle-does-not-close';
      readonly point: string;
      readonly tapes: readonly [string, string];
      readonly apart: number;
      readonly because: NoMeeting['because'];
      readonly missesBy: number;
    }
  | { readonly kind: 'side-not-said'; readonly point: string }
  | { readonly kind: 'side-does-not-tell'; readonly point: string }
  | { readonly kind: 'not-fixed-in-place'; readonly points: readonly string[] };

export type Starts = { readonly arrangements: readonly Places[] } | { readonly fault: StartFault };

type Miss = NoMeeting & { readonly tapes: readonly [string, string] };

/**
 * Places near which a fit may begin: point after point by two tapes from placed ones, the best crossing first; what is
 * left then, together. With `keepSides`, points go to the side said wherever one of their two places lies there.
 */
export function startsOf(network: Network, keepSides: boolean, allowance: Allowance): Starts {
  let arrangements: readonly Places[] = [network.fixed];
  let waiting: readonly FreePoint[] = network.free;
  while (waiting.length > 0) {
    const next = nextToPlace(network, waiting, arrangements);
    if (!next) return heldTogether(network, arrangements, keepSides, allowance);
    const { point, how, among } = next;
    if ('missesBy' in how) return { fault: notClosing(point, how) };
    const fault = faultOfTwo(network, point, how, among);
    if (fault) return { fault };
    arrangements = bestOf(
      network,
      arrangements.flatMap(places => placedIn(network, point, places, keepSides))
    );
    waiting = waiting.filter(({ key }) => key !== point.key);
  }
  return { arrangements };
}

function notClosing(point: FreePoint, { tapes, apart, because, missesBy }: Miss): StartFault {
  return { kind: 'triangle-does-not-close', point: point.key, tapes, apart, because, missesBy };
}

interface Next {
  readonly point: FreePoint;
  readonly how: Meeting | Miss;
  /** Where the placed points are. */
  readonly among: Places;
}

/** A point whose tapes meet in no arrangement is next only where no other can be placed in any. */
function nextToPlace(
  network: Network,
  waiting: readonly FreePoint[],
  arrangements: readonly Places[]
): Next | undefined {
  let missing: Next | undefined;
  for (const among of arrangements) {
    const next = bestCrossing(network, waiting, among);
    if (next && !('missesBy' in next.how)) return next;
    missing ??= next;
  }
  return missing;
}

/** The point whose tapes from placed ones cross best. */
function bestCrossing(network: Network, waiting: readonly FreePoint[], among: Places): Next | undefined {
  let best: Next | undefined;
  for (const point of waiting) {
    const how = bestMeeting(network, point, among);
    if (how && (!best || isBetter(how, best.how))) best = { point, how, among };
  }
  return best;
}

/** The best crossing of a point's tapes from placed points, else their worst miss. */
function bestMeeting({ tapes }: Network, point: FreePoint, places: Places): Meeting | Miss | undefined {
  const tolerance = isChecked(tapes, point) ? SHARED_MISS : FLAT;
  const reaches = tapesAt(tapes, point.key).flatMap(tape => {
    const at = places.get(otherEnd(tape, point.key));
    return at ? [{ at, read: tape.read, key: tape.key }] : [];
  });
  let best: Meeting | Miss | undefined;
  reaches.forEach((one, index) => {
    for (const other of reaches.slice(index + 1)) {
      const meeting = meetingOf(one, other, tolerance);
      if (!meeting) continue;
      const how = 'missesBy' in meeting ? { ...meeting, tapes: [one.key, other.key] as const } : meeting;
      if (!best || isBetter(how, best)) best = how;
    }
  });
  return best;
}

function isBetter(how: Meeting | Miss, than: Meeting | Miss): boolean {
  if ('missesBy' in how) return 'missesBy' in than && how.missesBy > than.missesBy;
  return 'missesBy' in than || how.sine > than.sine;
}

/** More tapes than the two that place it. */
function isChecked(tapes: readonly Tape[], { key }: FreePoint): boolean {
  return endsAround(tapes, key).length > 2;
}

/** Two tapes leave two places, one on either side of them: nothing but the side said can tell which. */
function faultOfTwo(network: Network, point: FreePoint, how: Meeting, places: Places): StartFault | undefined {
  const { side } = point;
  if (isChecked(network.tapes, point) || (how.onLine && !side)) return undefined;
  if (!side) return { kind: 'side-not-said', point: point.key };
  const [left, right] = how.places;
  const outs = [left, right].map(place => outOnSide(point, withPlace(places, point, place)));
  const isTold = outs.every(out => out !== undefined)
    ? outs.some(out => out < -FLAT) || distance(left, right) <= 2 * FLAT
    : network.free.some(({ key }) => !places.has(key) && (key === side.from || key === side.to));
  return isTold ? undefined : { kind: 'side-does-not-tell', point: point.key };
}

/** The arrangement with the point in it: once for each place it may have, not at all where its tapes do not meet. */
function placedIn(network: Network, point: FreePoint, places: Places, keepSides: boolean): Places[] {
  const how = bestMeeting(network, point, places);
  if (!how || 'missesBy' in how) return [];
  const { onLine } = how;
  if (onLine && !point.side) return [withPlace(places, point, onLine)];
  const both = how.places.map(place => withPlace(places, point, place));
  // Whatever else is taped, a point on two tapes alone fits as well on either side.
  if (!keepSides && isChecked(network.tapes, point)) return both;
  const onSide = both.filter(arrangement => isOnSide(point, arrangement, FLAT));
  return onSide.length > 0 ? onSide : both;
}

function withPlace(places: Places, { key }: FreePoint, place: Point): Places {
  return new Map(places).set(key, place);
}

function bestOf({ tapes }: Network, arrangements: readonly Places[]): readonly Places[] {
  if (arrangements.length < 2) return arrangements;
  const none = new Map<string, number>();
  return arrangements
    .map(places => ({ places, sum: sumOfSquares(equationsOf(tapes, places, none)) }))
    .sort((one, other) => one.sum - other.sum)
    .slice(0, MOST_ARRANGEMENTS)
    .map(({ places }) => places);
}

/** Points none of which has two tapes from placed ones: tried from scattered starts, all together. */
function heldTogether(
  network: Network,
  arrangements: readonly Places[],
  keepSides: boolean,
  allowance: Allowance
): Starts {
  const [best] = arrangements;
  const moving = movingPoints(network, best!);
  if (moving.length > 0) return { fault: { kind: 'not-fixed-in-place', points: moving } };
  const loose = network.free.filter(({ key }) => !best!.has(key));
  const keys = loose.map(({ key }) => key);
  const tapes = network.tapes.filter(({ from, to }) => keys.includes(from) || keys.includes(to));
  const heldTo = arrangements.slice(0, MOST_ARRANGEMENTS_HELD_TO);
  const found = heldTo.flatMap(places =>
    Array.from({ length: SCATTERED_STARTS / heldTo.length }, (_, round) => {
      const steps = { left: Math.min(STEPS_FROM_EACH, allowance.left) };
      allowance.left -= steps.left;
      const fit = fitted(tapes, scattered(network, places, round), keys, steps);
      allowance.left += steps.left;
      return { ...fit, onSides: loose.every(point => isOnSide(point, fit.places, FLAT)) };
    })
  );
  const kept = found.filter(({ onSides }) => onSides);
  const sorted = (keepSides && kept.length > 0 ? kept : found)
    .sort((one, other) => one.sumOfSquares - other.sumOfSquares)
    .map(({ places }) => places);
  const differing = sorted.filter((places, index) => !sorted.slice(0, index).some(one => sameIn(keys, one, places)));
  return { arrangements: differing.slice(0, MOST_ARRANGEMENTS) };
}

function sameIn(keys: readonly string[], one: Places, other: Places): boolean {
  return keys.every(key => distance(one.get(key)!, other.get(key)!) <= FLAT);
}
