// How long a round length on the ground is on the screen: a bar at the lower left of the drawing.
import type { LivePlan } from '../../../server/plan-protocol.ts';
import { type Box, LETTER_SIZE, widthOf } from './letters.ts';
import type { Size } from './view.ts';

/** Pixels. */
const LONGEST = 120;
const RIM = 14;
const AROUND = 6;

const INCH = 25.4;
const FOOT = 12 * INCH;

interface Round {
  /** mm on the ground. */
  readonly length: number;
  readonly text: string;
}

/** The shortest first: from what fits at the largest scale to what fits at the smallest. */
const ROUND: Readonly<Record<LivePlan['system'], readonly Round[]>> = {
  metric: [
    ...[10, 20, 50, 100, 200, 500].map(length => ({ length, text: `${length} mm` })),
    ...[1, 2, 5, 10, 20, 50, 100, 200].map(metres => ({ length: 1000 * metres, text: `${metres} m` }))
  ],
  imperial: [
    ...[1, 2, 3, 6].map(inches => ({ length: INCH * inches, text: `${inches} in` })),
    ...[1, 2, 5, 10, 20, 50, 100, 200, 500].map(feet => ({ length: FOOT * feet, text: `${feet} ft` }))
  ]
};

export interface ScaleBar {
  /** Pixels. */
  readonly length: number;
  readonly text: string;
}

/** Of the round lengths the longest that has room; `scale` in pixels for one mm. */
export function scaleBarOf(system: LivePlan['system'], scale: number): ScaleBar {
  const all = ROUND[system];
  const { length, text } = all.findLast(one => one.length * scale <= LONGEST) ?? all[0]!;
  return { length: length * scale, text };
}

/** Where it stands, with the paper behind it. */
export function boxOfScaleBar({ length, text }: ScaleBar, { height }: Size): Box {
  const width = Math.max(length, widthOf({ text, size: LETTER_SIZE, bold: false }));
  const bottom = height - RIM + AROUND;
  return [RIM - AROUND, bottom - 2 * AROUND - 1.7 * LETTER_SIZE, RIM + width + AROUND, bottom];
}

/** A line with a tick at each end. */
export function pathOfScaleBar({ length }: ScaleBar, { height }: Size): string {
  return `M${RIM} ${height - RIM - 6}v6h${length.toFixed(1)}v-6`;
}

/** Where its text begins, above it. */
export function textOfScaleBar({ height }: Size): { readonly x: number; readonly y: number } {
  return { x: RIM, y: height - RIM - 9 };
}
