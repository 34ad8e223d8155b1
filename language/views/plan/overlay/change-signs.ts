import type { Shape, Sheet } from '../../../drawing/drawing.ts';
import { cornerLoop, distance, type Point } from '../../../geometry/index.ts';
import { ground } from '../page.ts';

/** Half the width of the cross over what is gone, mm on paper. */
const CROSS = 1.5;

/** mm on paper: length of an arrow's head and half its width. */
const HEAD = 2.2;
const HALF_HEAD = 0.75;

/** A slanting cross over something that is gone; upright ones are points. */
export function goneCross(key: string, { x, y }: Point, sheet: Sheet, says?: string): Shape[] {
  const half = ground(sheet, CROSS);
  const line = (part: string, up: number): Shape => ({
    kind: 'line',
    key: `${key}/gone/${part}`,
    ink: 'gone-cross',
    sides: [{ from: { x: x - half, y: y - up }, to: { x: x + half, y: y + up } }],
    ...(says === undefined ? {} : { says })
  });
  return [line('rising', half), line('falling', -half)];
}

/** An arrow from an old place to the new one; none where it would be all head. */
export function moveShapes(key: string, from: Point, to: Point, sheet: Sheet, says?: string): Shape[] {
  const length = distance(from, to);
  const [head, half] = [ground(sheet, HEAD), ground(sheet, HALF_HEAD)];
  if (length < head) return [];
  const way = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const at = (ahead: number, left: number): Point => ({
    x: to.x + ahead * way.x - left * way.y,
    y: to.y + ahead * way.y + left * way.x
  });
  const said = says === undefined ? {} : { says };
  return [
    { kind: 'line', key: `${key}/move`, ink: 'move', sides: [{ from, to: at(-head, 0) }], ...said },
    {
      kind: 'outlines',
      key: `${key}/move/head`,
      ink: 'move',
      loops: [cornerLoop([at(-head, -half), to, at(-head, half)])],
      ...said
    }
  ];
}
