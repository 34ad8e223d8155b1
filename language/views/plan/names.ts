import type { Label, Shape } from '../../drawing/drawing.ts';
import { chordCorners, insideCorners } from '../../drawing/chord-corners.ts';
import { BOLD, LETTER_HEIGHT, LINE_HEIGHT, textWidth } from '../../drawing/lettering.ts';
import { roomFor } from '../../drawing/room.ts';
import type { Point } from '../../geometry/index.ts';
import { isDrawn } from './area-shapes.ts';
import { calledOut } from './call-out.ts';
import { labelBox } from './cut-numbers.ts';
import { ground } from './page.ts';
import type { PlanArea } from './plan-input.ts';
import type { Surroundings } from './surroundings.ts';

/** Sizes of letters, mm on paper. */
const KEPT_OUT_SIZES = [2.4, 2];
const AREA_SIZES = [4, 3, 2.4];

/** Free space round a name, in sizes of its letters. */
const CLEAR = 0.5;

/** Where a name is looked for about the roomiest place of its area: steps of so many sizes of its letters. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4].map(step => step * 1.3);

/** Names of boxes, pits and insets: in them where they fit on one line or two, else beside. */
export function keptOutNames(areas: readonly PlanArea[], around: Surroundings): { labels: Label[]; leaders: Shape[] } {
  const labels: Label[] = [];
  const leaders: Shape[] = [];
  for (const { key, kind, name, outline, lid } of areas.flatMap(area => area.keptOut).filter(isDrawn)) {
    const corners = [chordCorners(outline)];
    const lids = lid === undefined ? [] : [lid];
    const within = [
      [`${kind} ${name}`, ...lids],
      [kind, name, ...lids]
    ].map(lines => linesWithin(corners, lines, `${key}/name`, around));
    const found = within.reduce((best, lines) => ((lines?.[0]?.size ?? 0) > (best?.[0]?.size ?? 0) ? lines : best));
    if (found) {
      for (const label of found) around.taken.add(labelBox(label));
      labels.push(...found);
      continue;
    }
    const from = roomFor(corners, boxFor(['n']), 0)?.at;
    if (from === undefined) continue;
    const label = nameLabel(
      `${key}/name`,
      [`${kind} ${name}`, ...lids].join(', '),
      from,
      ground(around.sheet, KEPT_OUT_SIZES.at(-1)!)
    );
    const called = calledOut({ label, from, boxOf: labelBox, around });
    if (called === undefined) continue;
    labels.push(called.label);
    leaders.push(...called.leader);
  }
  return { labels, leaders };
}

function linesWithin(
  corners: readonly (readonly Point[])[],
  lines: readonly string[],
  key: string,
  { sheet }: Surroundings
): Label[] | undefined {
  const room = roomFor(corners, boxFor(lines), 0);
  const size = room && KEPT_OUT_SIZES.map(paper => ground(sheet, paper)).find(one => one <= room.times);
  if (!room || size === undefined) return undefined;
  return lines.map((text, line) => {
    const rise = ((lines.length - 1) / 2 - line) * LINE_HEIGHT * size;
    return nameLabel(line === 0 ? key : `${key}/${line + 1}`, text, { x: room.at.x, y: room.at.y + rise }, size);
  });
}

/** Names of areas, where there are several or one has no numbers: in the roomiest place that no number stands in. */
export function areaNames(areas: readonly PlanArea[], { sheet, taken }: Surroundings): Label[] {
  const named = areas.filter(({ noNumbers }) => areas.length > 1 || noNumbers !== undefined);
  return named.flatMap(({ key, name, outline, keptOut, noNumbers }) => {
    const text = noNumbers === undefined ? name : `${name}: no numbers`;
    const corners = [outline, ...keptOut.map(one => one.outline)].map(chordCorners);
    const room = roomFor(corners, boxFor([text]), 0);
    if (room === undefined) return [];
    const labels = AREA_SIZES.flatMap(paper => {
      const size = Math.min(ground(sheet, paper), room.times);
      const places = STEPS.flatMap(up =>
        STEPS.map(right => ({ x: room.at.x + right * size, y: room.at.y + up * size }))
      );
      const inside = places.filter(place => insideCorners(corners, place));
      return inside.map(at => nameLabel(`${key}/name`, text, at, size));
    });
    const label = labels.find(one => taken.isFree(labelBox(one))) ?? labels[0];
    if (label === undefined) return [];
    taken.add(labelBox(label));
    return [label];
  });
}

/** The box of some lines of text for letters of size one. */
function boxFor(lines: readonly string[]): { width: number; height: number } {
  return {
    width: Math.max(...lines.map(textWidth)) * BOLD + CLEAR,
    height: (lines.length - 1) * LINE_HEIGHT + LETTER_HEIGHT + CLEAR
  };
}

function nameLabel(key: string, text: string, at: Point, size: number): Label {
  return { kind: 'label', key, ink: 'strong', at, text, size, turn: 0, anchor: 'middle' };
}
