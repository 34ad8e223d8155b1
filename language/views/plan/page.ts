import type { Sheet } from '../../drawing/drawing.ts';
import type { Bounds } from '../../geometry/bounds.ts';
import type { Point } from '../../geometry/index.ts';
import type { System } from '../../job/job.ts';
import { roundScale } from './scales.ts';

/** The sheet that a plan is drawn on, and what goes where on it. */
export interface Page {
  readonly sheet: Sheet;
  readonly legend: LegendRoom;
}

/** Room of the legend, mm on paper from the lower left of the sheet. */
export interface LegendRoom {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly height: number;
}

/** mm on paper. */
export const MARGIN = 8;
export const HEADER = 15;
export const FOOTER = 14;
export const COLUMN = 60;

/** Round the plan, for what is written beside its sides. */
const BESIDE = 11.5;

/** A plan smaller than this on paper is worth nothing. */
const LEAST_PLAN = 30;

interface Format {
  readonly name: string;
  readonly short: number;
  readonly long: number;
}

/** What a printer at home takes, and what a copy shop does; mm. */
const FORMATS: Readonly<Record<System, readonly [Format, Format]>> = {
  metric: [
    { name: 'A4', short: 210, long: 297 },
    { name: 'A3', short: 297, long: 420 }
  ],
  imperial: [
    { name: 'letter', short: 215.9, long: 279.4 },
    { name: 'tabloid, 11 x 17 in', short: 279.4, long: 431.8 }
  ]
};

/** mm on paper: in a unit less wide numbers are hard to read, and the larger sheet is taken. */
const LEGIBLE_UNIT = 3;

export interface PageWish {
  readonly plan: Bounds;
  readonly system: System;
  /** Height of the legend in one column, mm on paper. */
  readonly legend: number;
  /** Width of the narrowest unit, m. */
  readonly narrowest: number;
}

/** The page on which the plan comes out largest: the small format, or the large one where units would be hard to read. */
export function pageFor(wish: PageWish): Page {
  const [small, large] = FORMATS[wish.system];
  const page = largest(small, wish);
  return (wish.narrowest * 1000) / page.sheet.scale >= LEGIBLE_UNIT ? page : largest(large, wish);
}

function largest({ name, short, long }: Format, wish: PageWish): Page {
  const pages = [
    [long, short],
    [short, long]
  ].flatMap(([width, height]) => [beside(name, width!, height!, wish), below(name, width!, height!, wish)]);
  return pages.reduce((best, page) => (valueOf(page, wish) < valueOf(best, wish) ? page : best));
}

/** A legend that does not fit counts for more than any scale. */
function valueOf({ sheet, legend }: Page, wish: PageWish): number {
  return sheet.scale * (legend.height * legend.columns < wish.legend ? 1000 : 1);
}

/** The legend in a column at the right. */
function beside(format: string, width: number, height: number, wish: PageWish): Page {
  const top = height - MARGIN - HEADER;
  const left = width - MARGIN - COLUMN;
  const legend = { left, top, columns: 1, height: top - MARGIN };
  const zone = { left: MARGIN, right: left, bottom: MARGIN + FOOTER, top };
  return { sheet: sheetFor({ format, width, height, zone }, wish), legend };
}

/** The legend in columns at the foot, above the scale bar. */
function below(format: string, width: number, height: number, wish: PageWish): Page {
  const columns = Math.floor((width - 2 * MARGIN) / COLUMN);
  // A little more than its share, as what belongs together is not parted.
  const share = Math.min(height / 2, wish.legend / columns + UNPARTED);
  const top = MARGIN + FOOTER + share;
  const legend = { left: MARGIN, top, columns, height: share };
  const zone = { left: MARGIN, right: width - MARGIN, bottom: top, top: height - MARGIN - HEADER };
  return { sheet: sheetFor({ format, width, height, zone }, wish), legend };
}

/** mm on paper: the tallest thing in a legend, about. */
const UNPARTED = 11;

interface Paper {
  readonly format: string;
  readonly width: number;
  readonly height: number;
  /** Room for the plan, mm on paper. */
  readonly zone: Bounds;
}

/** The plan in the middle of its room, at the finest round scale at which it fits. */
function sheetFor({ format, width, height, zone }: Paper, { plan, system }: PageWish): Sheet {
  const across = Math.max(LEAST_PLAN, zone.right - zone.left - 2 * BESIDE);
  const up = Math.max(LEAST_PLAN, zone.top - zone.bottom - 2 * BESIDE);
  const needed = Math.max((plan.right - plan.left) / across, (plan.top - plan.bottom) / up) * 1000;
  const scale = roundScale(needed, system);
  const ground = (paper: number): number => (paper * scale) / 1000;
  const left = (plan.left + plan.right) / 2 - ground((zone.left + zone.right) / 2);
  const bottom = (plan.bottom + plan.top) / 2 - ground((zone.bottom + zone.top) / 2);
  const bounds = { left, right: left + ground(width), bottom, top: bottom + ground(height) };
  return { format, width: width / 1000, height: height / 1000, scale, bounds };
}

/** A length on paper, mm, on the ground, m. */
export function ground({ scale }: Sheet, paper: number): number {
  return (paper * scale) / 1000;
}

/** A place on paper, mm from the lower left of the sheet, on the plan. */
export function onGround(sheet: Sheet, x: number, y: number): Point {
  return { x: sheet.bounds.left + ground(sheet, x), y: sheet.bounds.bottom + ground(sheet, y) };
}
