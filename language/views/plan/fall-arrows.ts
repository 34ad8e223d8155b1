import type { Label, Shape } from '../../drawing/drawing.ts';
import { BOLD, textWidth } from '../../drawing/lettering.ts';
import type { Box } from '../../drawing/taken.ts';
import { cornerLoop, type Point } from '../../geometry/index.ts';
import { upright } from './cut-numbers.ts';
import { ground } from './page.ts';
import type { FallPlace, PlanFall } from './plan-site.ts';
import type { Surroundings } from './surroundings.ts';

/** mm on paper: length of an arrow, of its head, half the width of the head, and its letters. */
const LENGTH = 13;
const HEAD = 2.6;
const HALF_HEAD = 0.8;
const SIZE = 2.4;

/** Of arrow and text together across, mm on paper, and how far the text stands off the line. */
const ACROSS = 5.4;
const OFF = 1.9;

/** Arrows down the steepest lines, each with its slope; where none finds room, the plan as text tells the fall. */
export function fallArrows(falls: readonly PlanFall[], around: Surroundings): Shape[] {
  return falls.flatMap(({ key, places }) => {
    const found = places.find(place => isFree(boxOf(place, around), around));
    if (found === undefined) return [];
    around.taken.add(boxOf(found, around));
    return arrowShapes(key, found, around);
  });
}

/** Arrow and text; the text stands on its upper side. */
function boxOf({ at, down, text }: FallPlace, { sheet }: Surroundings): Box {
  const width = Math.max(LENGTH + 1, textWidth(text) * BOLD * SIZE);
  const turn = upright(down);
  const middle = aside(at, turn, ground(sheet, OFF - HALF_HEAD) / 2 + ground(sheet, 0.4));
  return { at: middle, width: ground(sheet, width), height: ground(sheet, ACROSS - HALF_HEAD), turn };
}

function isFree(box: Box, { taken, walls, lies }: Surroundings): boolean {
  const ends = [-1, 1].map(end => ({
    x: box.at.x + ((end * box.width) / 2) * Math.cos(box.turn),
    y: box.at.y + ((end * box.width) / 2) * Math.sin(box.turn)
  }));
  return taken.isFree(box) && walls.isFree(box) && ends.every(end => lies(end) === 'on units');
}

function aside({ x, y }: Point, turn: number, off: number): Point {
  return { x: x - off * Math.sin(turn), y: y + off * Math.cos(turn) };
}

function arrowShapes(key: string, { at, down, text }: FallPlace, { sheet }: Surroundings): Shape[] {
  const point = (forward: number, off: number): Point => {
    const [ahead, left] = [ground(sheet, forward), ground(sheet, off)];
    return aside({ x: at.x + ahead * Math.cos(down), y: at.y + ahead * Math.sin(down) }, down, left);
  };
  const tip = LENGTH / 2;
  const head = cornerLoop([point(tip - HEAD, -HALF_HEAD), point(tip, 0), point(tip - HEAD, HALF_HEAD)]);
  const turn = upright(down);
  const label: Label = {
    kind: 'label',
    key: `${key}/text`,
    ink: 'strong',
    at: aside(at, turn, ground(sheet, OFF)),
    text,
    size: ground(sheet, SIZE),
    turn,
    anchor: 'middle'
  };
  return [
    { kind: 'line', key: `${key}/line`, ink: 'fall', sides: [{ from: point(-tip, 0), to: point(tip - HEAD, 0) }] },
    { kind: 'outlines', key: `${key}/head`, ink: 'fall', loops: [head], says: `Falls ${text}` },
    label
  ];
}
