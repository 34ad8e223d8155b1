import type { Sheet } from '../../drawing/drawing.ts';
import type { Point } from '../../geometry/index.ts';
import type { System } from '../../job/job.ts';
import { COLUMN, FOOTER, HEADER, type LegendRoom, MARGIN, onGround } from '../plan/page.ts';
import { roundScale } from '../plan/scales.ts';
import type { Level, SectionInput } from './section-input.ts';

/** mm on paper: names over the cut, what the heads of the rows under it take, and the gap between cut and rows. */
export const NAMES = 27;
export const ROW_HEADS = 24;
const ROWS_GAP = 4;

/** Between the cut and the legend. */
const LEGEND_GAP = 7;

/** How many times larger heights may be drawn than lengths. */
const TIMES = [10, 5, 4, 3, 2, 1];

const FORMATS: Readonly<Record<System, readonly (readonly [name: string, width: number, height: number])[]>> = {
  metric: [
    ['A4', 297, 210],
    ['A3', 420, 297]
  ],
  imperial: [
    ['letter', 279.4, 215.9],
    ['tabloid, 11 x 17 in', 431.8, 279.4]
  ]
};

/** Coarser, and the larger sheet is taken. */
const FINE_ENOUGH = 64;

export interface SectionPage {
  readonly sheet: Sheet;
  readonly legend: LegendRoom;
  /** How many times larger heights are drawn than lengths. */
  readonly times: number;
  /** Top of the rows of heights, mm on paper from the foot of the sheet. */
  readonly rowsTop: number;
  /** Foot of the names, mm on paper. */
  readonly namesFoot: number;
  /** A place of the cut on the sheet. */
  place(level: Level): Point;
}

/** The sheet for a cut of a height, m, with rows of heights under it, mm on paper. */
export function sectionPage(
  input: SectionInput,
  span: { readonly low: number; readonly high: number },
  rows: number
): SectionPage {
  const [small, large] = FORMATS[input.system].map(format => pageOn(format, input, span, rows));
  return small!.sheet.scale <= FINE_ENOUGH ? small! : large!;
}

function pageOn(
  [format, width, height]: readonly [string, number, number],
  { length, past, system }: SectionInput,
  { low, high }: { readonly low: number; readonly high: number },
  rows: number
): SectionPage {
  const across = width - 2 * MARGIN - ROW_HEADS - COLUMN - LEGEND_GAP;
  const namesFoot = height - MARGIN - HEADER - NAMES;
  const up = Math.max(20, namesFoot - MARGIN - FOOTER - rows - ROWS_GAP);
  const paper = (size: number, scale: number): number => (size * 1000) / scale;
  const scale = roundScale(Math.max(paper(length + 2 * past, across), paper(high - low, up)), system);
  const times = TIMES.find(one => paper((high - low) * one, scale) <= up) ?? 1;
  const tall = paper((high - low) * times, scale);
  const foot = namesFoot - tall;
  const bounds = { left: 0, right: (width * scale) / 1000, bottom: 0, top: (height * scale) / 1000 };
  const sheet = { format, width: width / 1000, height: height / 1000, scale, bounds };
  const legend = { left: width - MARGIN - COLUMN, top: namesFoot, columns: 1, height: namesFoot - MARGIN };
  return {
    sheet,
    legend,
    times,
    rowsTop: foot - ROWS_GAP,
    namesFoot,
    place: ({ at, z }) =>
      onGround(sheet, MARGIN + ROW_HEADS + paper(at + past, scale), foot + paper((z - low) * times, scale))
  };
}
