import type { Label } from '../../drawing/drawing.ts';
import { BOLD, LETTER_HEIGHT, LINE_HEIGHT, textWidth } from '../../drawing/lettering.ts';
import { type Box, reachOf } from '../../drawing/taken.ts';
import type { Point } from '../../geometry/index.ts';
import { ground } from './page.ts';
import type { PlanPoint } from './plan-site.ts';
import { isOnSheet, type Surroundings } from './surroundings.ts';

/** Size of letters, and how far off its point a text may stand, mm on paper. */
const SIZE = 2.2;
const DISTANCES = [1.6, 2.6, 4, 6];

/** Ways in which a place is looked for: the slanting ones first, where lines seldom run. */
const WAYS = [1, 3, 7, 5, 2, 6, 0, 4].map(eighth => (eighth * Math.PI) / 4);

const CLEAR = 0.4;

/** Name and heights of each point beside it: outside of areas where there is room; left out where there is none at all. */
export function pointLabels(points: readonly PlanPoint[], around: Surroundings): Label[] {
  return points.flatMap(point => {
    const { name, heights } = point;
    const named = name === undefined ? [] : [name];
    const wishes = [[...named, ...heights], [[...named, ...heights].join(' ')], named].filter(
      lines => lines.length > 0
    );
    for (const lines of wishes) {
      const box = boxBeside(point.at, lines, around);
      if (box === undefined) continue;
      around.taken.add(box);
      return labelsIn(box.at, lines, point, ground(around.sheet, SIZE));
    }
    return [];
  });
}

function boxBeside(from: Point, lines: readonly string[], around: Surroundings): Box | undefined {
  const { sheet, taken, walls, lies } = around;
  const size = ground(sheet, SIZE);
  const width = (Math.max(...lines.map(textWidth)) * BOLD + CLEAR) * size;
  const height = ((lines.length - 1) * LINE_HEIGHT + LETTER_HEIGHT + CLEAR) * size;
  let over: Box | undefined;
  for (const distance of DISTANCES) {
    for (const turn of WAYS) {
      const way = { x: Math.cos(turn), y: Math.sin(turn) };
      const bare = { at: from, width, height, turn: 0 };
      // Into the slant the corner of the box comes nearest, not its side.
      const slant = Math.abs(way.x) > 0.1 && Math.abs(way.y) > 0.1;
      const off = slant
        ? { x: Math.sign(way.x) * (width / 2), y: Math.sign(way.y) * (height / 2) }
        : { x: way.x * reachOf(bare, way), y: way.y * reachOf(bare, way) };
      const past = ground(sheet, distance);
      const at = { x: from.x + off.x + past * way.x, y: from.y + off.y + past * way.y };
      const box = { ...bare, at };
      if (!taken.isFree(box) || !walls.isFree(box) || !isOnSheet(box, sheet)) continue;
      const where = lies(at);
      if (where === 'outside') return box;
      if (where === 'on units') over ??= box;
    }
  }
  return over;
}

function labelsIn(at: Point, lines: readonly string[], { key, name }: PlanPoint, size: number): Label[] {
  return lines.map((text, line): Label => ({
    kind: 'label',
    key: line === 0 ? `${key}/label` : `${key}/label/${line + 1}`,
    ink: line === 0 && name !== undefined ? 'strong' : 'text',
    at: { x: at.x, y: at.y + ((lines.length - 1) / 2 - line) * LINE_HEIGHT * size },
    text,
    size,
    turn: 0,
    anchor: 'middle'
  }));
}
