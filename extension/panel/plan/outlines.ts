// The outline of a thing, to mark it by: its own shape where it has one, else what it is in the middle of.
import type { LiveShape } from '../../../server/plan-protocol.ts';
import { boundsOf, chordsOf, pathOf, tenth } from './corners.ts';
import type { Prepared } from './prepared.ts';
import { REACH_OF_SIGN, standOf } from './signs.ts';
import { barOf } from './units-in-view.ts';
import type { Bounds, OnScreen } from './view.ts';

/** A thing of more shapes, or rows, than these is marked by what surrounds it all: a browser paints so many at once. */
const MOST_OUTLINED = 300;

/** Words of a path of SVG; empty where the thing isn't drawn. */
export function outlineOf(key: string, prepared: Prepared, at: OnScreen): string {
  const shapes = prepared.shapesOf.get(key) ?? [];
  const own = outlinedOf(shapes);
  if (own.length === 0) return marksOf(shapes, at) || boundsPath(prepared.things.get(key)?.bounds, at);
  const parts = own.slice(0, MOST_OUTLINED + 1).flatMap(shape => outlinesOf(shape, at));
  if (own.length > MOST_OUTLINED || parts.length > MOST_OUTLINED)
    return boundsPath(prepared.things.get(key)?.bounds, at);
  return parts.join('');
}

/** An area is its ground, or what is known of it; anything else all its paths and rows. */
function outlinedOf(shapes: readonly LiveShape[]): readonly LiveShape[] {
  const ground = shapes.filter(({ kind, ink }) => kind === 'path' && (ink === 'ground' || ink === 'outline-only'));
  return ground.length > 0 ? ground : shapes.filter(({ kind }) => kind === 'path' || kind === 'rows');
}

function outlinesOf(shape: LiveShape, at: OnScreen): string[] {
  if (shape.kind === 'path') return shape.loops.map(loop => pathOf(loop, shape.closed, at));
  if (shape.kind !== 'rows') return [];
  const bounds = boundsOf(chordsOf(shape.form, true));
  if (bounds === undefined) return [];
  return shape.runs.slice(0, MOST_OUTLINED + 1).flatMap(run => {
    const bar = barOf(run, bounds);
    return bar === undefined ? [] : [polygon(bar, at)];
  });
}

function marksOf(shapes: readonly LiveShape[], at: OnScreen): string {
  const signs = shapes.filter(({ kind }) => kind === 'mark');
  return (signs.length > 0 ? signs : shapes)
    .slice(0, MOST_OUTLINED)
    .map(shape => {
      if (shape.kind !== 'mark' && shape.kind !== 'text') return '';
      const place = { x: at.a * shape.x + at.c * shape.y + at.e, y: at.b * shape.x + at.d * shape.y + at.f };
      const { x, y } = shape.kind === 'mark' ? standOf(shape.sign, place) : place;
      const radius = shape.kind === 'mark' ? REACH_OF_SIGN[shape.sign] + 4 : 12;
      return `M${tenth(x - radius)} ${tenth(y)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
    })
    .join('');
}

function boundsPath(bounds: Bounds | undefined, at: OnScreen): string {
  if (bounds === undefined) return '';
  const [left, bottom, right, top] = bounds;
  return polygon([left, bottom, right, bottom, right, top, left, top], at);
}

function polygon(corners: readonly number[], { a, b, c, d, e, f }: OnScreen): string {
  const places: string[] = [];
  for (let index = 0; index < corners.length; index += 2) {
    const [x, y] = [corners[index]!, corners[index + 1]!];
    places.push(`${tenth(a * x + c * y + e)} ${tenth(b * x + d * y + f)}`);
  }
  return `M${places.join('L')}z`;
}
