import { inside, type Loop, type Point, pointAlong } from '../geometry/index.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import type { Declared } from './names.ts';
import type { NamedOutline, Outlines } from './outlines.ts';
import type { Beside } from './points.ts';

/** The outline of an area that is not broken. */
export function outlineOf(context: Context, outlines: Outlines, area: Declared): NamedOutline | undefined {
  const node = area.node as ast.Area;
  if (context.isBroken(area.text, node)) {
    context.breaks(area.name);
    return undefined;
  }
  return outlines.read(area.text, `area:${area.name}/outline`, node.items.find(ast.isOutline)?.shape);
}

/** An area as what a place or a fall is told beside. */
export function besideArea(context: Context, outlines: Outlines, area: Declared | undefined): Beside | undefined {
  if (area === undefined) return undefined;
  const outline = (): NamedOutline | undefined => outlineOf(context, outlines, area);
  return {
    out: (from: Point, to: Point) => {
      const loop = outline()?.loop;
      return loop === undefined ? 'left' : sideOfLoop(loop, from, to);
    },
    side: name => {
      const shape = outline();
      const first = shape?.sideNames.indexOf(name) ?? -1;
      if (shape === undefined || first < 0) return undefined;
      return { from: shape.loop[first]!.from, to: shape.loop[shape.sideNames.lastIndexOf(name)]!.to };
    },
    get sideNames() {
      return outline()?.sideNames ?? [];
    },
    sidesMeeting: thing => sidesMeeting(area.node as ast.Area, thing)
  };
}

/** The sides that are said, each by itself, to meet a thing. */
function sidesMeeting({ items }: ast.Area, thing: string): string[] {
  return items.filter(ast.isEdges).flatMap(edges =>
    edges.items.flatMap(item => {
      const { sides = [], points = [], legs = [] } = item.where ?? {};
      if (item.thing?.$refText !== thing) return [];
      if (points.length === 2) return [points.map(({ $refText }) => $refText).join(' to ')];
      return [...sides, ...legs.flatMap(({ first, last }) => (last === undefined ? [`leg ${first}`] : []))];
    })
  );
}

/** The side of a line on which a shape lies: where it lies beside the middle of the line, else where most of it lies. */
export function sideOfLoop(loop: Loop, from: Point, to: Point): 'left' | 'right' {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const step = BESIDE / length;
  const left = inside(loop, { x: middle.x - dy * step, y: middle.y + dx * step });
  const right = inside(loop, { x: middle.x + dy * step, y: middle.y - dx * step });
  if (left !== right) return left ? 'left' : 'right';
  const places = loop.flatMap(side => [side.from, pointAlong(side, 0.5)]);
  const off = places.reduce((sum, at) => sum + dx * (at.y - from.y) - dy * (at.x - from.x), 0);
  return off >= 0 ? 'left' : 'right';
}

/** So far beside a line is looked, m. */
const BESIDE = 0.002;
