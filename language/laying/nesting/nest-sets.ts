/** How many pieces of each kind, by the kind's index; kinds of none are left out, the others in order. */
export type PieceSet = readonly Member[];

interface Member {
  readonly kind: number;
  readonly count: number;
}

/** Units that are all filled with the same pieces. */
export interface Filled {
  readonly set: PieceSet;
  readonly units: number;
}

/** The same for the same pieces. */
export function keyOf(set: PieceSet): string {
  return set.map(({ kind, count }) => `${kind}*${count}`).join(' ');
}

/** A set with one piece more. */
export function withOne(set: PieceSet, kind: number): PieceSet {
  const place = set.findIndex(member => member.kind >= kind);
  const at = place < 0 ? set.length : place;
  const same = set[at]?.kind === kind ? set[at] : undefined;
  return [...set.slice(0, at), { kind, count: (same?.count ?? 0) + 1 }, ...set.slice(same ? at + 1 : at)];
}

/** A set with so many pieces of a kind fewer. */
export function without(set: PieceSet, kind: number, fewer: number): PieceSet {
  return set.flatMap(member => {
    const count = member.kind === kind ? member.count - fewer : member.count;
    return count > 0 ? [{ kind: member.kind, count }] : [];
  });
}

/** A set of one kind. */
export function setOf(kind: number, count: number): PieceSet {
  return [{ kind, count }];
}

/** How many pieces of a kind are in a set. */
export function countOf(set: PieceSet, kind: number): number {
  return set.find(member => member.kind === kind)?.count ?? 0;
}

/** How many pieces are in a set. */
export function sizeOf(set: PieceSet): number {
  return set.reduce((sum, { count }) => sum + count, 0);
}

/** In how many ways a set can be parted in two, the order counted, nothing and everything among them. */
export function partingsOf(set: PieceSet): number {
  return set.reduce((product, { count }) => product * (count + 1), 1);
}

/** One of those ways: both parts, by a number from 0 to the count of ways less one. The last is everything and nothing. */
export function parted(set: PieceSet, way: number): readonly [PieceSet, PieceSet] {
  const one: Member[] = [];
  const other: Member[] = [];
  let left = way;
  for (const { kind, count } of set) {
    const taken = left % (count + 1);
    left = (left - taken) / (count + 1);
    if (taken > 0) one.push({ kind, count: taken });
    if (taken < count) other.push({ kind, count: count - taken });
  }
  return [one, other];
}

/** A demand, counts by kind, less so many units of a set. */
export function demandLeft(demand: readonly number[], set: PieceSet, units = 1): number[] {
  const left = [...demand];
  for (const { kind, count } of set) left[kind]! -= units * count;
  return left;
}

/** How many pieces a demand has. */
export function piecesIn(demand: readonly number[]): number {
  return demand.reduce((sum, count) => sum + count, 0);
}

/** How many units are filled. */
export function unitsOf(filled: readonly Filled[]): number {
  return filled.reduce((sum, { units }) => sum + units, 0);
}
