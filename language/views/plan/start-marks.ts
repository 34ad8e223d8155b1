import type { Shape, Sheet } from '../../drawing/drawing.ts';
import { type Box, lineBox } from '../../drawing/taken.ts';
import { cornerLoop, type Point } from '../../geometry/index.ts';
import { labelBox, upright } from './cut-numbers.ts';
import { ground } from './page.ts';
import type { PlanArea } from './plan-input.ts';
import type { Surroundings } from './surroundings.ts';

/** mm on paper: how far beside the first course the arrow stands, its length, its head, and its letters. */
const OFF = 2.6;
const LENGTH = 12;
const HEAD = 3;
const HALF_HEAD = 1.1;
const SIZE = 2.3;

/** An arrow beside the first course from where laying begins, the way the courses run; over the units where no room is. */
export function startMarks(areas: readonly PlanArea[], around: Surroundings): Shape[] {
  const { sheet, taken, lies } = around;
  return areas.flatMap(({ key, start }): Shape[] => {
    if (start === undefined) return [];
    if (start.inRings) return centreCross(`${key}/start`, start, around);
    const { x, y, direction, mirrored } = start;
    const along = { x: Math.cos(direction), y: Math.sin(direction) };
    const away = mirrored ? { x: -along.y, y: along.x } : { x: along.y, y: -along.x };
    const at = (forward: number, off: number): Point => ({
      x: x + ground(sheet, forward) * along.x + ground(sheet, off) * away.x,
      y: y + ground(sheet, forward) * along.y + ground(sheet, off) * away.y
    });
    const off = [1, LENGTH].every(forward => lies(at(forward, OFF)) === 'outside') ? OFF : 0;
    taken.add({ ...lineBox(at(0, off), at(LENGTH, off)), height: ground(sheet, 2 * HALF_HEAD) });
    return [
      ...arrow(`${key}/start`, forward => at(forward, off), away, sheet),
      ...word(`${key}/start/word`, at(0, off), along, around)
    ];
  });
}

/** Half the width of the cross at the centre of rings, mm on paper. */
const HALF_CROSS = 2.4;

function centreCross(key: string, centre: Point, { sheet, taken }: Surroundings): Shape[] {
  const half = ground(sheet, HALF_CROSS);
  taken.add({ at: centre, width: 2 * half, height: 2 * half, turn: 0 });
  const line = (part: string, right: number, up: number): Shape => ({
    kind: 'line',
    key: `${key}/${part}`,
    ink: 'start',
    sides: [{ from: { x: centre.x - right, y: centre.y - up }, to: { x: centre.x + right, y: centre.y + up } }],
    says: 'Centre of the rings'
  });
  return [line('across', half, 0), line('up', 0, half)];
}

/** A bar where laying begins, a line, and a head. */
function arrow(key: string, at: (forward: number) => Point, away: Point, sheet: Sheet): Shape[] {
  const beside = (point: Point, off: number): Point => ({
    x: point.x + ground(sheet, off) * away.x,
    y: point.y + ground(sheet, off) * away.y
  });
  const base = at(LENGTH - HEAD);
  const head = cornerLoop([beside(base, HALF_HEAD), at(LENGTH), beside(base, -HALF_HEAD)]);
  const bar = { from: beside(at(0), HALF_HEAD), to: beside(at(0), -HALF_HEAD) };
  return [
    { kind: 'line', key: `${key}/line`, ink: 'start', sides: [{ from: at(0), to: base }] },
    { kind: 'line', key: `${key}/bar`, ink: 'start', sides: [bar] },
    { kind: 'outlines', key: `${key}/head`, ink: 'start', loops: [head], says: 'Start and way of the courses' }
  ];
}

/** The word behind the arrow, else ahead of it; left out where neither is free: the legend tells the arrow. */
function word(key: string, tail: Point, along: Point, { sheet, taken, walls }: Surroundings): Shape[] {
  const size = ground(sheet, SIZE);
  const turn = upright(Math.atan2(along.y, along.x));
  for (const forward of [-5, LENGTH + 5]) {
    const at = { x: tail.x + ground(sheet, forward) * along.x, y: tail.y + ground(sheet, forward) * along.y };
    const label = { kind: 'label', key, ink: 'strong', at, text: 'start', size, turn, anchor: 'middle' } as const;
    const box: Box = labelBox(label);
    if (!taken.isFree(box) || !walls.isFree(box)) continue;
    taken.add(box);
    return [label];
  }
  return [];
}
