import type { Label, Shape } from '../../drawing/drawing.ts';
import { reachOf, Taken } from '../../drawing/taken.ts';
import { boundsOf, distance, type Point, pointAlong, type Side } from '../../geometry/index.ts';
import { calledOut } from './call-out.ts';
import { labelBox, upright } from './cut-numbers.ts';
import { ground } from './page.ts';
import type { PlanThing } from './plan-site.ts';
import { isOnSheet, SQUARE, type Surroundings } from './surroundings.ts';

/** Sizes of letters, mm on paper: of names, and of sections at both ends of their lines. */
const SIZE = 2.2;
const END_SIZE = 3;

/** How far off its line a text stands, and past the end of it, mm on paper. */
const OFF = [1.9, 3.4];
const PAST = [1.4, 3, 5, 8];

/** Where along a line a text is looked for, as shares of its length. */
const ALONG = [0.5, 0.35, 0.65, 0.25, 0.75];

/** Free room round a text, mm on paper. */
const CLEAR = 0.5;

/** Names of things at them; what finds no room is left to the legend and the plan as text. */
export function thingLabels(things: readonly PlanThing[], around: Surroundings): Shape[] {
  return things.flatMap(thing => {
    const { labelled, labels } = thing;
    if ('ends' in labelled) return endLabels(thing, labelled.ends, around);
    for (const text of labels) {
      const placed =
        'along' in labelled
          ? labelAlong(thing, text, labelled.along, around)
          : besideLabel(thing, text, labelled.beside, around);
      if (placed !== undefined) return placed;
    }
    const shortest = labels.at(-1);
    if (shortest === undefined || !('along' in labelled)) return [];
    return besideLabel(thing, shortest, pointAlong(labelled.along, 0.5), around) ?? [];
  });
}

function labelOf({ key }: PlanThing, text: string, at: Point, size: number, turn: number): Label {
  return { kind: 'label', key: `${key}/name`, ink: 'text', at, text, size, turn, anchor: 'middle' };
}

function isFree(label: Label, { sheet, taken, walls }: Surroundings): boolean {
  const box = labelBox(label);
  const wide = { ...box, width: box.width + ground(sheet, 2 * CLEAR) };
  return taken.isFree(box) && walls.isFree(wide) && isOnSheet(box, sheet);
}

function labelAlong(thing: PlanThing, text: string, side: Side, around: Surroundings): Label[] | undefined {
  const { sheet, taken } = around;
  const size = ground(sheet, SIZE);
  const turn = upright(Math.atan2(side.to.y - side.from.y, side.to.x - side.from.x));
  for (const off of OFF.flatMap(far => [far, -far])) {
    for (const share of ALONG) {
      const { x, y } = pointAlong(side, share);
      const at = { x: x - ground(sheet, off) * Math.sin(turn), y: y + ground(sheet, off) * Math.cos(turn) };
      const label = labelOf(thing, text, at, size, turn);
      const box = labelBox(label);
      const left = Math.min(share, 1 - share) * distance(side.from, side.to) + ground(sheet, 4);
      if (box.width / 2 > left || !isFree(label, around)) continue;
      taken.add(box);
      return [label];
    }
  }
  return undefined;
}

function besideLabel(thing: PlanThing, text: string, from: Point, around: Surroundings): Shape[] | undefined {
  const label = labelOf(thing, text, from, ground(around.sheet, SIZE), 0);
  const called = calledOut({ label, from, boxOf: labelBox, around, spared: hatched(thing, around) });
  return called && [...called.leader, called.label];
}

/** Texts are hard to read over the hatch of what they name. */
function hatched({ parts }: PlanThing, { sheet }: Surroundings): Taken {
  const taken = new Taken(ground(sheet, SQUARE));
  for (const part of parts) {
    if (!('loop' in part) || part.loop.length === 0) continue;
    const { left, right, bottom, top } = boundsOf(part.loop);
    taken.add({
      at: { x: (left + right) / 2, y: (bottom + top) / 2 },
      width: right - left,
      height: top - bottom,
      turn: 0
    });
  }
  return taken;
}

/** The name of a section at both ends of its line, the way that the line goes on. */
function endLabels(thing: PlanThing, [first, last]: readonly [Side, Side], around: Surroundings): Label[] {
  const text = thing.labels[0] ?? '';
  const size = ground(around.sheet, END_SIZE);
  return [
    { at: first.from, back: first.to, key: 'start' },
    { at: last.to, back: last.from, key: 'end' }
  ].flatMap(({ at, back, key }) => {
    const length = distance(at, back) || 1;
    const way = { x: (at.x - back.x) / length, y: (at.y - back.y) / length };
    for (const past of PAST) {
      for (const aside of [0, 3, -3, 6, -6]) {
        const label: Label = { ...labelOf(thing, text, at, size, 0), ink: 'strong', key: `${thing.key}/${key}` };
        const off = ground(around.sheet, past) + reachOf(labelBox(label), way);
        const across = ground(around.sheet, aside);
        const place = { x: at.x + off * way.x - across * way.y, y: at.y + off * way.y + across * way.x };
        const placed = { ...label, at: place };
        if (!isFree(placed, around)) continue;
        around.taken.add(labelBox(placed));
        return [placed];
      }
    }
    return [];
  });
}
