// From the ground to the screen and back: mm on the ground, y up; CSS pixels from the upper left of the drawing, y down.

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Left, bottom, right, top. */
export type Bounds = readonly [number, number, number, number];

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface View {
  /** In the middle of what is seen. */
  readonly x: number;
  readonly y: number;
  /** Pixels for one mm on the ground. */
  readonly scale: number;
  /** Radians by which the plan is turned anticlockwise. */
  readonly turn: number;
}

/** x' = a x + c y + e, y' = b x + d y + f. */
export interface OnScreen {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** Four pixels for one mm: a sixteenth of an inch is then wider than a finger's tremble. */
const LARGEST_SCALE = 4;

/** One pixel for two metres: past that a job of any size is a dot. */
const SMALLEST_SCALE = 0.0005;

/** Left free round a plan that is seen as a whole, for what is written about its points: a tenth of it, within these pixels. */
const RIM = { least: 28, most: 72 };

const rimOf = (length: number): number => Math.min(RIM.most, Math.max(RIM.least, length / 10));

export function onScreen({ x, y, scale, turn }: View, { width, height }: Size): OnScreen {
  const cosine = scale * Math.cos(turn);
  const sine = scale * Math.sin(turn);
  return {
    a: cosine,
    b: -sine,
    c: -sine,
    d: -cosine,
    e: width / 2 - x * cosine + y * sine,
    f: height / 2 + x * sine + y * cosine
  };
}

export function toScreen(view: View, size: Size, { x, y }: Place): Place {
  const { a, b, c, d, e, f } = onScreen(view, size);
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

export function toGround(view: View, size: Size, at: Place): Place {
  const right = (at.x - size.width / 2) / view.scale;
  const up = (size.height / 2 - at.y) / view.scale;
  const cosine = Math.cos(view.turn);
  const sine = Math.sin(view.turn);
  return { x: view.x + right * cosine + up * sine, y: view.y - right * sine + up * cosine };
}

/** What lay under the fingers moves with them, pixels. */
export function panned(view: View, right: number, down: number): View {
  const middle = toGround(view, { width: 0, height: 0 }, { x: -right, y: -down });
  return { ...view, ...middle };
}

/** What lies under a place of the screen stays there. */
export function zoomedAbout(view: View, size: Size, at: Place, factor: number): View {
  const scale = Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, view.scale * factor));
  const under = toGround(view, size, at);
  const moved = toGround({ ...view, scale }, size, at);
  return { ...view, scale, x: view.x + under.x - moved.x, y: view.y + under.y - moved.y };
}

/** Of the width, the most that is kept free on each side for what is written there. */
const MOST_BESIDE = 0.25;

/** All of it is seen, and so many pixels on its left and right. */
export function fitted([left, bottom, right, top]: Bounds, size: Size, turn: number, beside = 0): View {
  const cosine = Math.abs(Math.cos(turn));
  const sine = Math.abs(Math.sin(turn));
  const across = (right - left) * cosine + (top - bottom) * sine;
  const up = (right - left) * sine + (top - bottom) * cosine;
  const roomIn = (length: number, rim: number): number => Math.max(40, length - 2 * rim);
  const aside = Math.max(rimOf(size.width), Math.min(beside, MOST_BESIDE * size.width));
  const room = { width: roomIn(size.width, aside), height: roomIn(size.height, rimOf(size.height)) };
  const scale = Math.min(room.width / Math.max(across, 1), room.height / Math.max(up, 1));
  return {
    x: (left + right) / 2,
    y: (bottom + top) / 2,
    scale: Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, scale)),
    turn
  };
}

/** The same place stays in the middle. */
export function turnedTo(view: View, turn: number): View {
  return { ...view, turn };
}

/** By how much to turn the plan so that this direction lies level, the shorter way round. */
export function turnOf(direction: number): number {
  const turn = -direction % Math.PI;
  if (turn > Math.PI / 2) return turn - Math.PI;
  return turn <= -Math.PI / 2 ? turn + Math.PI : turn;
}

/** What is seen, and so many pixels more all round: upright on the ground, so more of it where the plan is turned. */
export function seenGround(view: View, size: Size, more: { readonly x: number; readonly y: number }): Bounds {
  const halfAcross = (size.width / 2 + more.x) / view.scale;
  const halfUp = (size.height / 2 + more.y) / view.scale;
  const cosine = Math.abs(Math.cos(view.turn));
  const sine = Math.abs(Math.sin(view.turn));
  const x = halfAcross * cosine + halfUp * sine;
  const y = halfAcross * sine + halfUp * cosine;
  return [view.x - x, view.y - y, view.x + x, view.y + y];
}

/** How far what was drawn has to be moved to be what is seen, pixels; undefined where it has to be drawn anew. */
export function shiftOf(drawn: View, view: View): Place | undefined {
  if (drawn.scale !== view.scale || drawn.turn !== view.turn) return undefined;
  return toScreen(view, { width: 0, height: 0 }, drawn);
}

export function meets(one: Bounds, other: Bounds): boolean {
  return one[0] <= other[2] && other[0] <= one[2] && one[1] <= other[3] && other[1] <= one[3];
}

export function around(all: Iterable<Bounds>): Bounds | undefined {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const one of all) {
    left = Math.min(left, one[0]);
    bottom = Math.min(bottom, one[1]);
    right = Math.max(right, one[2]);
    top = Math.max(top, one[3]);
  }
  return left <= right && bottom <= top ? [left, bottom, right, top] : undefined;
}

/** Pixels between two places. */
export function apart(one: Place, other: Place): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}
