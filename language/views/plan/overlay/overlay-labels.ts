import type { Label, Layer, Shape } from '../../../drawing/drawing.ts';
import { chordCorners, insideCorners } from '../../../drawing/chord-corners.ts';
import { BOLD, LETTER_HEIGHT, LINE_HEIGHT, textWidth } from '../../../drawing/lettering.ts';
import { roomFor } from '../../../drawing/room.ts';
import { type Box, lineBox } from '../../../drawing/taken.ts';
import type { Loop, Point } from '../../../geometry/index.ts';
import type { System } from '../../../job/job.ts';
import { printAs } from '../../../measures/print.ts';
import { ground } from '../page.ts';
import { pointLabels } from '../point-labels.ts';
import type { Surroundings } from '../surroundings.ts';
import type { AreaChange } from './area-changes.ts';
import { areaLabel, markLabels, pointLabel } from './change-words.ts';
import { labelBeside } from './label-beside.ts';
import { type MarkChange, middleOfMark } from './mark-changes.ts';
import type { PlanChanges } from './plan-changes.ts';
import type { PointChange } from './point-changes.ts';

/** Sizes of letters, mm on paper. */
const MARK_SIZE = 2.3;
const AREA_SIZES = [3.6, 3, 2.4];
const PATCH_SIZES = [2.8, 2.3];

/** Free space round a text, in sizes of its letters. */
const CLEAR = 0.5;

/** Where a text is looked for about the roomiest place: steps of so many sizes of its letters. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4].map(step => step * 1.3);

/** All that is written, nothing over another: what has changed before what stays. */
export function overlayLabels(
  { areas, ground: changed, marks, points }: PlanChanges,
  system: System,
  around: Surroundings
): Layer[] {
  takeCrosses(points, around);
  const isNew = ({ fate }: { readonly fate: string }): boolean => fate !== 'stays';
  const stays = (one: { readonly fate: string }): boolean => !isNew(one);
  const shapes = [
    ...marks.filter(isNew).flatMap(mark => markLabel(mark, system, around)),
    ...pointLabels(
      points.filter(isNew).map(point => labelled(point, system)),
      around
    ),
    ...areas.flatMap(area => areaName(area, system, around)),
    ...patchLabels(areas, changed, system, around),
    ...pointLabels(
      points.filter(stays).map(point => labelled(point, system)),
      around
    ),
    ...marks.filter(stays).flatMap(mark => markLabel(mark, system, around))
  ];
  return shapes.length === 0 ? [] : [{ key: 'names', shapes }];
}

/** What a point's cross and the arrow to it take up. */
function takeCrosses(points: readonly PointChange[], { sheet, taken }: Surroundings): void {
  const width = ground(sheet, 1.5);
  for (const { name, fate, before, after, at } of points) {
    if (name === undefined) continue;
    taken.add({ at, width, height: width, turn: 0 });
    if (fate !== 'moves') continue;
    taken.add({ at: before!.at, width: 2 * width, height: 2 * width, turn: 0 });
    taken.add(lineBox(before!.at, after!.at));
  }
}

/** Heights stand under the name, or alone. */
function labelled(point: PointChange, system: System): Parameters<typeof pointLabels>[0][number] {
  const { key, name, at, heights } = point;
  return { key, at, heights, ...(name === undefined ? {} : { name: pointLabel(point, system) }) };
}

function markLabel(mark: MarkChange, system: System, around: Surroundings): Shape[] {
  const { key, fate, before, after } = mark;
  const from = middleOfMark((after ?? before)!);
  const ink = fate === 'stays' ? 'text' : 'strong';
  for (const text of markLabels(mark, system)) {
    const label = textAt(`${key}/name`, ink, text, from, ground(around.sheet, MARK_SIZE));
    const placed = labelBeside(label, from, around);
    if (placed.length > 0) return placed;
  }
  return [];
}

function areaName(area: AreaChange, system: System, around: Surroundings): Shape[] {
  const { key, before, after } = area;
  const { outline, keptOut } = (after ?? before)!;
  const loops = [outline, ...keptOut.map(one => one.outline)];
  const lines = areaLabel(area, system);
  return linesIn(loops, lines, AREA_SIZES, `${key}/name`, around) ?? besideArea(key, loops, lines, around);
}

/** An area too small for its name has it beside. */
function besideArea(key: string, loops: readonly Loop[], lines: readonly string[], around: Surroundings): Shape[] {
  const from = roomFor(loops.map(chordCorners), { width: 1, height: 1 }, 0)?.at;
  if (from === undefined) return [];
  const label = textAt(`${key}/name`, 'strong', lines.join(', '), from, ground(around.sheet, AREA_SIZES.at(-1)!));
  return labelBeside(label, from, around);
}

/** How much ground goes or comes, in it, where an area keeps the rest. */
function patchLabels(
  areas: readonly AreaChange[],
  { given, added }: PlanChanges['ground'],
  system: System,
  around: Surroundings
): Label[] {
  const changed = new Set(areas.filter(({ fate }) => fate === 'changes').map(({ key }) => key));
  return [
    ...given.map(one => ({ ...one, sign: '−', part: 'ground-given' })),
    ...added.map(one => ({ ...one, sign: '+', part: 'ground-added' }))
  ].flatMap(({ key, loops, size, sign, part }) =>
    changed.has(key)
      ? (linesIn(loops, [`${sign}${printAs('area', size, system)}`], PATCH_SIZES, `${key}/${part}/size`, around) ?? [])
      : []
  );
}

/** Lines of text in the roomiest free place within outlines, as large as there is room. */
function linesIn(
  loops: readonly Loop[],
  lines: readonly string[],
  sizes: readonly number[],
  key: string,
  { sheet, taken, walls }: Surroundings
): Label[] | undefined {
  const corners = loops.map(chordCorners);
  const shape = {
    width: Math.max(...lines.map(textWidth)) * BOLD + CLEAR,
    height: (lines.length - 1) * LINE_HEIGHT + LETTER_HEIGHT + CLEAR
  };
  const room = roomFor(corners, shape, 0);
  if (room === undefined) return undefined;
  for (const size of sizes.map(paper => ground(sheet, paper))) {
    if (size > room.times) continue;
    const boxes = STEPS.flatMap(up =>
      STEPS.map((right): Box => ({
        at: { x: room.at.x + right * size, y: room.at.y + up * size },
        width: shape.width * size,
        height: shape.height * size,
        turn: 0
      }))
    );
    const free = boxes.find(box => insideCorners(corners, box.at) && taken.isFree(box) && walls.isFree(box));
    if (free === undefined) continue;
    taken.add(free);
    return lines.map((text, line) => {
      const rise = ((lines.length - 1) / 2 - line) * LINE_HEIGHT * size;
      const at = { x: free.at.x, y: free.at.y + rise };
      return textAt(line === 0 ? key : `${key}/${line + 1}`, line === 0 ? 'strong' : 'text', text, at, size);
    });
  }
  return undefined;
}

function textAt(key: string, ink: 'strong' | 'text', text: string, at: Point, size: number): Label {
  return { kind: 'label', key, ink, at, text, size, turn: 0, anchor: 'middle' };
}
