/** Where on a stretch something is least or most, and how much it is there. */
export interface Found {
  readonly at: number;
  readonly value: number;
}

/** Places looked up on each stretch before the least and most are closed in on. */
const LOOKED_UP = 32;

/** Rounds of closing in, each to 0.62 of the last: 60 leave 3e-13 of the stretch. */
const ROUNDS = 60;

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Least and most of a measure between two places; `breaks` are places where it may bend, in any order. */
export function extremesBetween(
  measure: (at: number) => number,
  from: number,
  to: number,
  breaks: readonly number[] = []
): { least: Found; most: Found } {
  const stops = stopsBetween(from, to, breaks);
  const places = stops
    .slice(1)
    .flatMap((end, index) => {
      const start = stops[index] ?? from;
      return Array.from({ length: LOOKED_UP }, (_, step) => start + ((end - start) * step) / LOOKED_UP);
    })
    .concat(to);
  const mirrored = leastOf(at => -measure(at), places);
  return { least: leastOf(measure, places), most: { at: mirrored.at, value: -mirrored.value } };
}

/** The ends of a stretch and the breaks between them, in order. */
export function stopsBetween(from: number, to: number, breaks: readonly number[]): number[] {
  const between = breaks.filter(at => at > from && at < to).sort((a, b) => a - b);
  return [from, ...between, to];
}

function leastOf(measure: (at: number) => number, places: readonly number[]): Found {
  const found = places.map(at => ({ at, value: measure(at) }));
  let best = 0;
  for (const [index, { value }] of found.entries()) if (value < found[best]!.value) best = index;
  const nearest = found[best]!;
  const low = places[best - 1] ?? nearest.at;
  const high = places[best + 1] ?? nearest.at;
  const closed = closedIn(measure, low, high);
  return closed.value < nearest.value ? closed : nearest;
}

function closedIn(measure: (at: number) => number, from: number, to: number): Found {
  let [low, high] = [from, to];
  let left = { at: high - GOLDEN * (high - low), value: 0 };
  let right = { at: low + GOLDEN * (high - low), value: 0 };
  left.value = measure(left.at);
  right.value = measure(right.at);
  for (let round = 0; round < ROUNDS; round++) {
    if (left.value <= right.value) {
      [high, right] = [right.at, left];
      const at = high - GOLDEN * (high - low);
      left = { at, value: measure(at) };
    } else {
      [low, left] = [left.at, right];
      const at = low + GOLDEN * (high - low);
      right = { at, value: measure(at) };
    }
  }
  return left.value <= right.value ? left : right;
}

/** The place between two, at which a condition begins to hold: it does not hold at the first and holds at the second. */
export function whereItBegins(holds: (at: number) => boolean, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let round = 0; round < ROUNDS; round++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
