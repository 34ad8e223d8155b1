// Which units of a run meet what is seen, by arithmetic alone; and how they are written.
import type { RunEntry } from './prepared.ts';
import { isInside, tenth } from './corners.ts';
import type { Bounds, OnScreen } from './view.ts';

/** Units from the first to before the last. */
export interface Some {
  readonly from: number;
  readonly to: number;
}

export function someInView({ run, form }: RunEntry, seen: Bounds): Some {
  const [x, y, , stepX, stepY, count] = run;
  let [from, to] = [0, count - 1];
  for (const [first, step, low, high] of [
    [x, stepX, seen[0] - form.reach, seen[2] + form.reach],
    [y, stepY, seen[1] - form.reach, seen[3] + form.reach]
  ] as const) {
    if (step === 0) {
      if (first < low || first > high) return { from: 0, to: 0 };
      continue;
    }
    const [one, other] = [(low - first) / step, (high - first) / step];
    from = Math.max(from, Math.ceil(Math.min(one, other)));
    to = Math.min(to, Math.floor(Math.max(one, other)));
  }
  return from > to ? { from: 0, to: 0 } : { from, to: to + 1 };
}

/** All units of a run look alike: what follows the first corner is written once. */
export function unitsPath({ shape, run }: RunEntry, { from, to }: Some, at: OnScreen): string {
  if (from >= to) return '';
  const [x, y, direction, stepX, stepY] = run;
  const outline = formPath(shape.form, direction, at);
  const parts: string[] = [];
  for (let number = from; number < to; number++) {
    const [cornerX, cornerY] = [x + number * stepX + outline.x, y + number * stepY + outline.y];
    parts.push(`M${tenth(at.a * cornerX + at.c * cornerY + at.e)} ${tenth(at.b * cornerX + at.d * cornerY + at.f)}`);
    parts.push(outline.rest);
  }
  return parts.join('');
}

interface FormPath {
  /** Its first corner, from the place of its frame, on the ground. */
  readonly x: number;
  readonly y: number;
  /** What follows that corner, on the screen. */
  readonly rest: string;
}

function formPath(form: readonly number[], direction: number, { a, b, c, d }: OnScreen): FormPath {
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  const count = form.length / 3;
  const ground = (index: number): [number, number] => {
    const [x, y] = [form[3 * index]!, form[3 * index + 1]!];
    return [x * cosine - y * sine, x * sine + y * cosine];
  };
  const first = ground(0);
  // Steps are differences of rounded places, so that rounding never adds up.
  const screen = (index: number): [number, number] => {
    const [x, y] = ground(index);
    const [right, up] = [x - first[0], y - first[1]];
    return [tenth(a * right + c * up), tenth(b * right + d * up)];
  };
  let rest = '';
  for (let side = 0; side < count; side++) {
    const next = (side + 1) % count;
    const [from, to] = [screen(side), screen(next)];
    const step = `${tenth(to[0] - from[0])} ${tenth(to[1] - from[1])}`;
    const bend = form[3 * side + 2]!;
    if (bend !== 0) {
      const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const radius = tenth((chord * (1 + bend * bend)) / (4 * Math.abs(bend)));
      rest += `a${radius} ${radius} 0 0 ${bend > 0 ? 0 : 1} ${step}`;
    } else if (next !== 0) rest += `l${step}`;
  }
  return { x: first[0], y: first[1], rest: `${rest}z` };
}

/** A step that strays by less than this share of the unit from its side still makes one bar. */
const ASTRAY = 0.02;

/** The bar that a run's units make together, corners by turns; undefined where they lie askew, one beside the other. */
export function barOf(run: RunEntry['run'], [left, bottom, right, top]: Bounds): readonly number[] | undefined {
  const [x, y, direction, stepX, stepY, count] = run;
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  const along = stepX * cosine + stepY * sine;
  const across = stepY * cosine - stepX * sine;
  const isStraight =
    Math.abs(across) < ASTRAY * (top - bottom) || Math.abs(along) < ASTRAY * (right - left) || count === 1;
  if (!isStraight) return undefined;
  const [farAlong, farAcross] = [along * (count - 1), across * (count - 1)];
  const [x0, x1] = [left + Math.min(0, farAlong), right + Math.max(0, farAlong)];
  const [y0, y1] = [bottom + Math.min(0, farAcross), top + Math.max(0, farAcross)];
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1]
  ].flatMap(([right, up]) => [x + right! * cosine - up! * sine, y + right! * sine + up! * cosine]);
}

/** The unit of a run that a place lies in, or undefined: only those are looked at whose frames can reach it. */
export function unitAt(entry: RunEntry, { x, y }: { readonly x: number; readonly y: number }): number | undefined {
  const { from, to } = someInView(entry, [x, y, x, y]);
  const [firstX, firstY, direction, stepX, stepY] = entry.run;
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  for (let number = from; number < to; number++) {
    const [right, up] = [x - firstX - number * stepX, y - firstY - number * stepY];
    const place = { x: right * cosine + up * sine, y: up * cosine - right * sine };
    if (isInside([entry.form.chords], place)) return number;
  }
  return undefined;
}
