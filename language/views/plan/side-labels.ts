import type { Label, Shape, Sheet } from '../../drawing/drawing.ts';
import { BOLD, LETTER_HEIGHT, LINE_HEIGHT, textWidth } from '../../drawing/lettering.ts';
import { type Box, reachOf } from '../../drawing/taken.ts';
import { circleLoop, type Point, signedAreaOf } from '../../geometry/index.ts';
import { pointAlong } from '../../geometry/outline.ts';
import type { System } from '../../job/job.ts';
import { printLength } from '../../measures/print.ts';
import { calledOut } from './call-out.ts';
import { upright } from './cut-numbers.ts';
import { ground } from './page.ts';
import type { PlanArea } from './plan-input.ts';
import { meetsText, nameAndLength, sideName, sidesTold } from './side-text.ts';
import { isOnSheet, type Surroundings } from './surroundings.ts';

/** Size of letters, mm on paper. */
const SIZE = 2.5;

/** How far off the side the text may stand, and how far along it from the middle (share of the length); nearest first. */
const DISTANCES = [2.2, 4, 6, 8.5, 11];
const ALONG = [0.5, 0.4, 0.6, 0.3, 0.7];

/** Free space round the text, mm on paper. */
const CLEAR = 0.8;

/** Text may be so much wider than its side, mm on paper. */
const OVERHANG = 10;

export interface SidesPlaced {
  readonly shapes: Shape[];
  /** Sides with no room beside them: a mark stands there, and the words in the legend. */
  readonly marked: readonly { readonly mark: string; readonly text: string }[];
}

/** Name, length and what is met of each side, outside of it. */
export function placeSides(areas: readonly PlanArea[], system: System, around: Surroundings): SidesPlaced {
  const shapes: Shape[] = [];
  const marked: { mark: string; text: string }[] = [];
  for (const one of areas) {
    for (const { area, index } of sidesTold(one)) {
      const labels = labelsBeside(area, index, system, around);
      if (labels) {
        shapes.push(...labels);
        continue;
      }
      const mark = `s${marked.length + 1}`;
      const meets = meetsText(area.sides[index]!);
      marked.push({ mark, text: [nameAndLength(area, index, system), ...(meets === '' ? [] : [meets])].join(', ') });
      shapes.push(...markOn(area, index, mark, around));
    }
  }
  return { shapes, marked };
}

/** Ways to part the text into lines; the first that finds room is taken. */
function layouts(area: PlanArea, index: number, system: System): string[][] {
  const side = area.sides[index]!;
  const meets = meetsText(side);
  const both = nameAndLength(area, index, system);
  const parted = [sideName(area, index), printLength(side.length, system)];
  if (meets === '') return [[both], parted];
  return [[both, meets], [`${both}, ${meets}`], [...parted, ...meets.split(/, (?=edging)/)]];
}

function labelsBeside(
  area: PlanArea,
  index: number,
  system: System,
  { sheet, taken, walls, lies }: Surroundings
): Label[] | undefined {
  const size = ground(sheet, SIZE);
  const longest = area.sides[index]!.length + ground(sheet, OVERHANG);
  for (const lines of layouts(area, index, system)) {
    const width = Math.max(textWidth(lines[0]!) * BOLD, ...lines.map(textWidth)) * size;
    if (width > longest) continue;
    const bare = { width, height: ((lines.length - 1) * LINE_HEIGHT + LETTER_HEIGHT) * size };
    const box = boxesBeside(area, index, bare, sheet).find(
      one =>
        lies(one.at) === 'outside' &&
        isOnSheet(one, sheet) &&
        walls.isFree(one) &&
        taken.isFree(clearOf(one, ground(sheet, CLEAR)))
    );
    if (box === undefined) continue;
    taken.add(box);
    return linesIn(box, lines, size, `${area.sides[index]!.key}/label`);
  }
  return undefined;
}

/** Where a text may stand, the best place first: along its side before level, near before far, at the middle before the ends. */
function boxesBeside(area: PlanArea, index: number, size: Pick<Box, 'width' | 'height'>, sheet: Sheet): Box[] {
  const places = ALONG.map(share => outwards(area, index, share));
  const isCurve = area.outline[index]!.arc !== undefined;
  return [0, 1].flatMap(choice =>
    DISTANCES.flatMap(distance =>
      places.map(({ at, way }) => {
        const bare = { ...size, at, turn: turnsAlong(way, isCurve)[choice]! };
        const off = ground(sheet, distance) + reachOf(bare, way);
        return { ...bare, at: { x: at.x + off * way.x, y: at.y + off * way.y } };
      })
    )
  );
}

function clearOf(box: Box, space: number): Box {
  return { ...box, width: box.width + 2 * space, height: box.height + 2 * space };
}

/** Along the side, else level. Beside a curve level text is easiest to read. */
function turnsAlong(way: Point, curved: boolean): number[] {
  const along = upright(Math.atan2(way.y, way.x) + Math.PI / 2);
  return curved ? [0, along] : [along, 0];
}

/** A place on a side, and the way out of the area there, a step of length one. */
function outwards({ outline }: PlanArea, index: number, share: number): { at: Point; way: Point } {
  const side = outline[index]!;
  // A hair before and after: the way along an arc, too.
  const before = pointAlong(side, share - STEP);
  const after = pointAlong(side, share + STEP);
  const length = Math.hypot(after.x - before.x, after.y - before.y) || 1;
  const round = signedAreaOf(outline) < 0 ? -1 : 1;
  const way = { x: (round * (after.y - before.y)) / length, y: (round * (before.x - after.x)) / length };
  return { at: pointAlong(side, share), way };
}

const STEP = 1e-4;

function linesIn(box: Box, lines: readonly string[], size: number, key: string): Label[] {
  const up = { x: -Math.sin(box.turn), y: Math.cos(box.turn) };
  return lines.map((text, line) => {
    const rise = ((lines.length - 1) / 2 - line) * LINE_HEIGHT * size;
    const at = { x: box.at.x + rise * up.x, y: box.at.y + rise * up.y };
    const ink = line === 0 ? 'strong' : 'text';
    return {
      kind: 'label',
      key: line === 0 ? key : `${key}/${line + 1}`,
      ink,
      at,
      text,
      size,
      turn: box.turn,
      anchor: 'middle'
    };
  });
}

/** Half the width of a mark beside a side, and how far off it may stand, mm on paper. */
const MARK = 2.1;
const MARK_OFF = [1.7, 4, 7];

/** A mark is smaller than a text, and may stand anywhere along its side, the middle first. */
const MARK_ALONG = Array.from(
  { length: 37 },
  (_, index) => 0.5 + (index % 2 === 0 ? 0.0125 : -0.0125) * (index + (index % 2))
);

/** A mark in a ring beside the side, or on it, where it covers nothing; else at the end of a line. */
function markOn(area: PlanArea, index: number, mark: string, around: Surroundings): Shape[] {
  const { sheet, taken, walls, lies } = around;
  const radius = ground(sheet, MARK);
  const boxAt = (at: Point): Box => ({ at, width: 2 * radius, height: 2 * radius, turn: 0 });
  const places = [...MARK_OFF.map(off => MARK + off), 0].flatMap(off =>
    MARK_ALONG.map(share => {
      const { at, way } = outwards(area, index, share);
      return { x: at.x + ground(sheet, off) * way.x, y: at.y + ground(sheet, off) * way.y };
    })
  );
  const onSide = places.slice(-MARK_ALONG.length);
  const beside = places
    .slice(0, -MARK_ALONG.length)
    .find(at => lies(at) === 'outside' && walls.isFree(boxAt(at)) && taken.isFree(boxAt(at)));
  const key = `${area.sides[index]!.key}/mark`;
  const label = {
    kind: 'label',
    key: `${key}/text`,
    ink: 'text',
    text: mark,
    size: ground(sheet, 2),
    turn: 0
  } as const;
  const labelAt = (at: Point): Label => ({ ...label, at, anchor: 'middle' });
  const ringed = (text: Label): Shape[] => [
    { kind: 'outlines', key, ink: 'mark', loops: [circleLoop(text.at, radius)] },
    text
  ];
  const free = beside ?? onSide.find(place => taken.isFree(boxAt(place)));
  if (free !== undefined) {
    taken.add(boxAt(free));
    return ringed(labelAt(free));
  }
  const boxOf = ({ at }: Label): Box => boxAt(at);
  for (const from of onSide) {
    const called = calledOut({ label: labelAt(from), from, boxOf, around });
    if (called) return [...called.leader, ...ringed(called.label)];
  }
  return ringed(labelAt(onSide[0]!));
}
