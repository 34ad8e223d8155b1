import { distance, type Point } from '../geometry/index.ts';

/** A triangle of two tapes counts as flat where it closes, or fails to, by no more than this, m. */
export const FLAT = 0.001;

/** A limit met exactly passes, however its decimals round. */
const ROUNDING = 1e-6;

/** A length from a point that is placed. */
export interface Reach {
  readonly at: Point;
  readonly read: number;
}

/** Where two tapes meet. */
export interface Meeting {
  /** On the left of the line from the first tape's point to the second's, then on the right. */
  readonly places: readonly [Point, Point];
  /** On the line itself, each tape giving half of what is missing or over; where the triangle is flat. */
  readonly onLine?: Point;
  /** Sine of the angle at which the tapes meet: nought tells nothing across the line. */
  readonly sine: number;
}

export interface NoMeeting {
  /** How far apart the two points lie, m. */
  readonly apart: number;
  /** The tapes are together too short, or one of them is too long for the other. */
  readonly because: 'together-too-short' | 'difference-too-long';
  /** m, above nought. */
  readonly missesBy: number;
}

/**
 * Where two tapes meet, or by how much they fail to; up to `tolerance` m they still meet on the line. Nothing where both
 * are from one place.
 */
export function meetingOf(one: Reach, other: Reach, tolerance: number): Meeting | NoMeeting | undefined {
  const apart = distance(one.at, other.at);
  if (apart <= FLAT) return undefined;
  const [near, far] = [Math.min(one.read, other.read), Math.max(one.read, other.read)];
  const over = one.read + other.read - apart;
  const spare = apart - (far - near);
  if (over < -tolerance - ROUNDING) return { apart, because: 'together-too-short', missesBy: -over };
  if (spare < -tolerance - ROUNDING) return { apart, because: 'difference-too-long', missesBy: -spare };
  const along = { x: (other.at.x - one.at.x) / apart, y: (other.at.y - one.at.y) / apart };
  const onLine = from(one.at, along, flatAlong(one.read, other.read, apart, over <= spare), 0);
  if (over <= 0 || spare <= 0) return { places: [onLine, onLine], onLine, sine: 0 };
  // Heron's formula in factors, so that flat triangles keep their digits.
  const doubleArea = Math.sqrt((one.read + other.read + apart) * over * spare * (apart + far - near)) / 2;
  const foot = (apart + ((one.read - other.read) / apart) * (one.read + other.read)) / 2;
  const height = doubleArea / apart;
  const places: [Point, Point] = [from(one.at, along, foot, height), from(one.at, along, foot, -height)];
  const sine = doubleArea / (one.read * other.read);
  return Math.min(over, spare) <= FLAT + ROUNDING ? { places, onLine, sine } : { places, sine };
}

/** How far along the line a flat triangle's point lies: between the two points, or beyond the nearer one. */
function flatAlong(one: number, other: number, apart: number, between: boolean): number {
  if (between) return (one + apart - other) / 2;
  return one > other ? (apart + one + other) / 2 : (apart - one - other) / 2;
}

function from(at: Point, along: Point, forward: number, left: number): Point {
  return { x: at.x + along.x * forward - along.y * left, y: at.y + along.y * forward + along.x * left };
}
