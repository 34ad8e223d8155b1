import type { Label, Shape } from '../../../drawing/drawing.ts';
import { type Box, lineBox, reachOf } from '../../../drawing/taken.ts';
import { circleLoop, type Point } from '../../../geometry/index.ts';
import { labelBox } from '../cut-numbers.ts';
import { ground } from '../page.ts';
import { isOnSheet, type Surroundings } from '../surroundings.ts';

/** Ways in which a place beside is looked for, level ones first, and how far off, mm on paper; nearest first. */
const WAYS = [0, 8, 1, 15, 7, 9, 2, 14, 6, 10, 3, 13, 5, 11, 4, 12].map(part => (part * Math.PI) / 8);
const DISTANCES = [2, 3.5, 5.5, 8, 11, 15, 20, 26, 33];

/** Width of the dot at the end of the line, mm on paper. */
const DOT = 0.7;

/**
 * A label beside the place that it is about, with a line to its rim: outside all areas where that is as near, never
 * across an outline or over another text. Takes the room; nothing where there is none.
 */
export function labelBeside(label: Label, from: Point, around: Surroundings): Shape[] {
  const { sheet, taken, walls, lies } = around;
  for (const distance of DISTANCES) {
    const free = WAYS.flatMap(turn => {
      const placed = placedAt(label, from, turn, ground(sheet, distance));
      const box = labelBox(placed);
      const line = lineToRim(from, box);
      const isFree =
        taken.isFree(box) && walls.isFree(box) && isOnSheet(box, sheet) && taken.isFree(lineBox(from, line));
      return isFree && lies(placed.at) !== 'kept out' ? [{ placed, box, line }] : [];
    });
    const found = free.find(({ placed }) => lies(placed.at) === 'outside') ?? free[0];
    if (found === undefined) continue;
    const { placed, box, line } = found;
    taken.add(box);
    taken.add(lineBox(from, line));
    const key = `${label.key}/leader`;
    return [
      { kind: 'line', key, ink: 'leader', sides: [{ from, to: line }] },
      { kind: 'outlines', key: `${key}/dot`, ink: 'leader', loops: [circleLoop(from, ground(sheet, DOT / 2))] },
      placed
    ];
  }
  return [];
}

/** Into a slant the corner of the text comes nearest, not its side. */
function placedAt(label: Label, from: Point, turn: number, past: number): Label {
  const way = { x: Math.cos(turn), y: Math.sin(turn) };
  const box = labelBox(label);
  const isSlant = Math.abs(way.x) > HAIR && Math.abs(way.y) > HAIR;
  const reach = reachOf(box, way);
  const off = isSlant
    ? { x: (Math.sign(way.x) * box.width) / 2, y: (Math.sign(way.y) * box.height) / 2 }
    : { x: way.x * reach, y: way.y * reach };
  return { ...label, at: { x: from.x + off.x + past * way.x, y: from.y + off.y + past * way.y } };
}

/** Radians, about: what is nearly level is. */
const HAIR = 0.01;

/** The place of an upright box that is nearest, on its rim. */
function lineToRim({ x, y }: Point, { at, width, height }: Box): Point {
  const within = (value: number, middle: number, half: number): number =>
    Math.min(Math.max(value, middle - half), middle + half);
  return { x: within(x, at.x, width / 2), y: within(y, at.y, height / 2) };
}
