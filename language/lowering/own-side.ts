import type { Point } from '../geometry/index.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import { sideOfLoop } from './finishes.ts';
import type { Declared } from './names.ts';
import type { NamedOutline, Outlines } from './outlines.ts';
import type { OutSide } from './points.ts';

/** The outline of an area that is not broken. */
export function outlineOf(context: Context, outlines: Outlines, area: Declared): NamedOutline | undefined {
  const node = area.node as ast.Area;
  if (context.isBroken(area.text, node)) {
    context.breaks(area.name);
    return undefined;
  }
  return outlines.read(area.text, `area:${area.name}/outline`, node.items.find(ast.isOutline)?.shape);
}

/** `out` goes to the side of a line on which the area lies. */
export function ownSide(context: Context, outlines: Outlines, area: Declared | undefined): OutSide | undefined {
  if (area === undefined) return undefined;
  return (from: Point, to: Point) => {
    const outline = outlineOf(context, outlines, area);
    return outline === undefined ? 'left' : sideOfLoop(outline.loop, from, to);
  };
}
