/** Lengths and the like that agree to so much of themselves are one: sums in another order end in another digit. */
const SAME = 1e-9;

export function isAlike(one: number, other: number): boolean {
  return Math.abs(one - other) <= SAME * Math.max(1, Math.abs(one), Math.abs(other));
}
