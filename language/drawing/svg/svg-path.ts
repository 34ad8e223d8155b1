import type { Loop, Point, Side } from '../../geometry/index.ts';
import { pointAlong, radiusOf } from '../../geometry/outline.ts';
import type { Rows } from '../drawing.ts';
import { pointOnPlan } from '../on-plan.ts';

/*
 * Paths in tenths of a millimetre on the ground, x from the left of the sheet, y down from its top. Steps are differences of
 * rounded places, so that rounding never adds up along a path.
 */

/** Where a sheet begins, m. */
export interface Corner {
  readonly left: number;
  readonly top: number;
}

const TENTHS_PER_METRE = 10_000;

/** A length in mm to a tenth. */
export function millimetres(metres: number): string {
  return print(Math.round(metres * TENTHS_PER_METRE));
}

function print(tenths: number): string {
  return String(tenths / 10);
}

/** A place on the sheet in tenths of a millimetre. */
export function onSheet({ x, y }: Point, { left, top }: Corner): Point {
  return { x: Math.round((x - left) * TENTHS_PER_METRE), y: Math.round((top - y) * TENTHS_PER_METRE) };
}

/** Sides that follow each other; `closed` where the last ends where the first begins. */
export function sidesPath(sides: readonly Side[], corner: Corner, closed: boolean): string {
  const [first] = sides;
  if (!first) return '';
  let at = onSheet(first.from, corner);
  let path = `M${pair(at)}`;
  sides.forEach((side, index) => {
    // The last straight side of a closed path is drawn by closing it.
    if (closed && !side.arc && index === sides.length - 1) return;
    for (const part of drawableParts(side)) {
      const to = onSheet(part.to, corner);
      path += part.arc ? arc(part, to) : step(at, to);
      at = to;
    }
  });
  return closed ? `${path}z` : path;
}

/** An arc of more than half a turn is no longer told by its ends: it is drawn in halves. */
function drawableParts(side: Side): Side[] {
  if (!side.arc || Math.abs(side.arc.turn) < Math.PI * 0.999) return [side];
  const middle = pointAlong(side, 0.5);
  const half = { centre: side.arc.centre, turn: side.arc.turn / 2 };
  return [
    { from: side.from, to: middle, arc: half },
    { from: middle, to: side.to, arc: half }
  ].flatMap(drawableParts);
}

function arc(side: Side, to: Point): string {
  const radius = millimetres(radiusOf(side, side.arc!));
  // On the sheet y runs down: what turns anticlockwise on the plan sweeps the other way in SVG.
  return `A${radius} ${radius} 0 0 ${side.arc!.turn > 0 ? 0 : 1} ${pair(to)}`;
}

export function loopsPath(loops: readonly Loop[], corner: Corner): string {
  return loops.map(loop => sidesPath(loop, corner, true)).join('');
}

/** All units of rows in one path, each from where the one before began. */
export function rowsPath({ form, runs }: Rows, corner: Corner): string {
  const corners = form.map(side => side.from);
  const parts: string[] = [];
  let before: Point = { x: 0, y: 0 };
  for (const { first, step: pitch, count } of runs) {
    for (let number = 0; number < count; number++) {
      const placed = { ...first, x: first.x + number * pitch.x, y: first.y + number * pitch.y };
      const places = corners.map(point => onSheet(pointOnPlan(point, placed), corner));
      const start = places[0]!;
      parts.push(parts.length === 0 ? `M${pair(start)}` : `m${pair(minus(start, before))}`);
      for (let index = 1; index < places.length; index++) parts.push(step(places[index - 1]!, places[index]!));
      parts.push('z');
      before = start;
    }
  }
  return parts.join('');
}

function step(from: Point, to: Point): string {
  const { x, y } = minus(to, from);
  if (y === 0) return `h${print(x)}`;
  return x === 0 ? `v${print(y)}` : `l${pair({ x, y })}`;
}

function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

function pair({ x, y }: Point): string {
  return y < 0 ? `${print(x)}${print(y)}` : `${print(x)} ${print(y)}`;
}
