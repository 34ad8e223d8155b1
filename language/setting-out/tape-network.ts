import type { Point } from '../geometry/index.ts';

/** A point by its key, in metres. */
export interface NamedPoint extends Point {
  readonly key: string;
}

/** A point whose place the tapes tell. `side`: where it lies as one looks along the line `from` … `to`. */
export interface FreePoint {
  readonly key: string;
  readonly side?: { readonly from: string; readonly to: string; readonly left: boolean };
}

/** A length taped between two points; `read` in metres, above nought. */
export interface Tape {
  readonly key: string;
  readonly from: string;
  readonly to: string;
  readonly read: number;
}

export type Places = ReadonlyMap<string, Point>;

/** Free points that hang together, the tapes among them and to the points that stand fast; all sorted by key. */
export interface Network {
  readonly free: readonly FreePoint[];
  readonly tapes: readonly Tape[];
  readonly fixed: Places;
}

/** The other end of a tape. */
export function otherEnd(tape: Tape, key: string): string {
  return tape.from === key ? tape.to : tape.from;
}

export function tapesAt(tapes: readonly Tape[], key: string): Tape[] {
  return tapes.filter(tape => tape.from === key || tape.to === key);
}

/** What a point is taped from, each once. */
export function endsAround(tapes: readonly Tape[], key: string): string[] {
  return [...new Set(tapesAt(tapes, key).map(tape => otherEnd(tape, key)))];
}

/** By key, so that the order in which things were stated changes no digit. */
export function byKey(one: { readonly key: string }, other: { readonly key: string }): number {
  return one.key < other.key ? -1 : one.key > other.key ? 1 : 0;
}

/** Networks that hang together: free points tied by a tape between them, or by the line that a side is said of. */
export function networksOf(free: readonly FreePoint[], tapes: readonly Tape[], fixed: Places): Network[] {
  const ties = new Map<string, string[]>(free.map(({ key }) => [key, []]));
  const tie = (one: string, other: string): void => {
    if (!ties.has(one) || !ties.has(other)) return;
    ties.get(one)!.push(other);
    ties.get(other)!.push(one);
  };
  for (const { from, to } of tapes) tie(from, to);
  for (const { key, side } of free) for (const end of side ? [side.from, side.to] : []) tie(key, end);
  const seen = new Set<string>();
  return free.flatMap(({ key }) => {
    if (seen.has(key)) return [];
    const together = new Set([key]);
    for (const reached of together) for (const end of ties.get(reached)!) together.add(end);
    for (const reached of together) seen.add(reached);
    const itsPoints = free.filter(point => together.has(point.key)).sort(byKey);
    const isIn = (end: string) => together.has(end) || fixed.has(end);
    const itsTapes = tapes.filter(({ from, to }) => isIn(from) && isIn(to) && !(fixed.has(from) && fixed.has(to)));
    return [{ free: itsPoints, tapes: itsTapes, fixed }];
  });
}

/**
 * How far (m) a point lies out on the side said for it, negative on the other side; nothing where no side is said or its
 * line has no direction.
 */
export function outOnSide(point: FreePoint, places: Places): number | undefined {
  const { side } = point;
  const at = places.get(point.key);
  const from = side && places.get(side.from);
  const to = side && places.get(side.to);
  if (!at || !from || !to) return undefined;
  const [x, y] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(x, y);
  if (length === 0) return undefined;
  const toLeft = (x * (at.y - from.y) - y * (at.x - from.x)) / length;
  return side.left ? toLeft : -toLeft;
}

/** Whether a point lies on the side said for it, or no farther than `tolerance` m off it; so does one without a side. */
export function isOnSide(point: FreePoint, places: Places, tolerance: number): boolean {
  return (outOnSide(point, places) ?? 0) >= -tolerance;
}
