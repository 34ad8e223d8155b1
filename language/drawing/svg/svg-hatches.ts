import { HATCHES, type Hatch } from '../inks.ts';
import type { Tint } from '../tints.ts';
import { WITHOUT_STYLE } from './svg-style.ts';

/** A hatch over a filling: `plain` is the drawing's paper. */
export interface Hatching {
  readonly hatch: Hatch;
  readonly fill: 'paper' | 'unit' | Tint;
}

export function hatchId({ hatch, fill }: Hatching): string {
  return `plan-${hatch}-${fill}`;
}

/** The tile of a hatch; `paper` is one millimetre on paper in the drawing's own measure. */
export function hatchPattern(hatching: Hatching, paper: number): string {
  const { hatch, fill } = hatching;
  const { distance, pen } = HATCHES[hatch];
  const size = round(distance * paper);
  const attributes = `width="${size}" height="${size}" patternUnits="userSpaceOnUse"`;
  // Crossed lines stand upright, so that no turn of the paper makes them look like the others.
  const turned = hatch === 'lines' ? ' patternTransform="rotate(45)"' : '';
  return [
    `<pattern id="${hatchId(hatching)}" ${attributes}${turned}>`,
    `<rect class="plan-fill-${fill}" fill="${WITHOUT_STYLE.paper}" width="${size}" height="${size}"/>`,
    tile(hatch, distance * paper, pen * paper),
    '</pattern>'
  ].join('');
}

function tile(hatch: Hatch, distance: number, pen: number): string {
  const middle = round(distance / 2);
  const size = round(distance);
  if (hatch === 'dots') return `<circle class="plan-fill-ink" cx="${middle}" cy="${middle}" r="${round(pen / 2)}"/>`;
  const lines = hatch === 'crossed' ? `M0 ${middle}h${size}M${middle} 0v${size}` : `M0 ${middle}h${size}`;
  return `<path class="plan-pen" d="${lines}" fill="none" stroke="${WITHOUT_STYLE.ink}" stroke-width="${round(pen)}"/>`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
