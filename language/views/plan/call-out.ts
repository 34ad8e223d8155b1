import type { Label, Shape } from '../../drawing/drawing.ts';
import { type Box, lineBox, reachOf, type Taken } from '../../drawing/taken.ts';
import { circleLoop, type Point } from '../../geometry/index.ts';
import { ground } from './page.ts';
import { isOnSheet, type Surroundings } from './surroundings.ts';

/** Ways in which a place beside is looked for, and how far off, mm on paper. */
const WAYS = 24;
const DISTANCES = [2.5, 4, 6, 8.5, 11];

/** Width of the dot at the end of the line, mm on paper. */
const DOT = 0.7;

interface CallOut {
  readonly label: Label;
  /** The place that the label is about. */
  readonly from: Point;
  readonly boxOf: (label: Label) => Box;
  readonly around: Surroundings;
  /** What the label would better not lie over. */
  readonly spared?: Taken;
}

/**
 * A label beside the place that it is about, with a line to it: outside all areas where there is room, else over units, as
 * near as can be. Takes the room; undefined where there is none.
 */
export function calledOut(wish: CallOut): { label: Label; leader: Shape[] } | undefined {
  const { taken, walls, lies, sheet } = wish.around;
  let over: Label | undefined;
  let overSpared: Label | undefined;
  for (const distance of DISTANCES) {
    for (let way = 0; way < WAYS; way++) {
      const label = labelAt(wish, distance, (way * 2 * Math.PI) / WAYS);
      const box = wish.boxOf(label);
      const line = leaderLine(wish.from, label.at, box);
      const where = lies(label.at);
      if (where === 'kept out' || !walls.isFree(box) || !taken.isFree(box) || !isOnSheet(box, sheet)) continue;
      if (!taken.isFree(lineBox(line.from, line.to))) continue;
      if (where === 'outside') return taking(wish, label);
      if (wish.spared?.isFree(box) ?? true) over ??= label;
      else overSpared ??= label;
    }
  }
  const label = over ?? overSpared;
  return label && taking(wish, label);
}

function labelAt({ label, from, boxOf, around }: CallOut, distance: number, turn: number): Label {
  const way = { x: Math.cos(turn), y: Math.sin(turn) };
  const away = ground(around.sheet, distance) + reachOf(boxOf(label), way);
  return { ...label, at: { x: from.x + away * way.x, y: from.y + away * way.y } };
}

/** From the place to the rim of the label. */
function leaderLine(from: Point, at: Point, box: Box): { from: Point; to: Point } {
  const length = Math.hypot(at.x - from.x, at.y - from.y);
  const way = { x: (at.x - from.x) / length, y: (at.y - from.y) / length };
  const shown = Math.max(0, length - reachOf(box, way));
  return { from, to: { x: from.x + shown * way.x, y: from.y + shown * way.y } };
}

function taking({ from, boxOf, around: { sheet, taken } }: CallOut, label: Label): { label: Label; leader: Shape[] } {
  const box = boxOf(label);
  const line = leaderLine(from, label.at, box);
  taken.add(box);
  taken.add(lineBox(line.from, line.to));
  const key = `${label.key}/leader`;
  return {
    label,
    leader: [
      { kind: 'line', key, ink: 'leader', sides: [line] },
      { kind: 'outlines', key: `${key}/dot`, ink: 'leader', loops: [circleLoop(from, ground(sheet, DOT / 2))] }
    ]
  };
}
