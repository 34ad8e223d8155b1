/** One course end, in metres along the course: from where to where it is laid once the two units are cut. */
export interface CourseEnd {
  readonly from: number;
  readonly to: number;
  /** Width of the joint between the two pieces. */
  readonly joint: number;
  /** No piece is shorter, and no joint lies nearer to one of the course beside where that can be helped. */
  readonly least: number;
}

/** In metres. */
const ROUNDING = 1e-9;

/**
 * Where the middle of the joint between two pieces lies: in the middle, so that they are equal, or as near to it as keeps
 * it off the joints of the courses beside, given by their middles. Undefined where a piece would still be too short.
 */
export function inboardJoint({ from, to, joint, least }: CourseEnd, beside: readonly number[]): number | undefined {
  const first = from + least + joint / 2;
  const last = to - least - joint / 2;
  if (first > last + ROUNDING) return undefined;
  const middle = (from + to) / 2;
  const isApart = (at: number): boolean => beside.every(other => Math.abs(other - at) >= least - ROUNDING);
  const places = [middle, ...beside.flatMap(other => [other - least, other + least])];
  const fitting = places.filter(at => at >= first - ROUNDING && at <= last + ROUNDING && isApart(at));
  return fitting.reduce<number>(
    (best, at) => (Math.abs(at - middle) < Math.abs(best - middle) ? at : best),
    fitting[0] ?? middle
  );
}
