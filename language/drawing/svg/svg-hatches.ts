import { HATCHES, type Hatch } from '../inks.ts';
import type { Tint } from '../tints.ts';
import { WITHOUT_STYLE } from './svg-style.ts';

/** A hatch over a filling, or over whatever lies under it. */
export interface Hatching {
  readonly hatch: Hatch;
  readonly fill: 'none' | 'paper' | 'ground' | 'unit' | Tint;
}

export function hatchId({ hatch, fill }: Hatching, ids: string): string {
  return `${ids}-${hatch}-${fill}`;
}

/** The tile of a hatch; `paper` is one millimetre on paper in the drawing's own measure. */
export function hatchPattern(
  { hatch, fill }: Hatching,
  { id, paper }: { readonly id: string; readonly paper: number }
): string {
  const { distance, pen } = HATCHES[hatch];
  const size = round(distance * paper);
  const attributes = `width="${size}" height="${size}" patternUnits="userSpaceOnUse"`;
  // Crossed lines stand upright, so that no turn of the paper makes them look like the others.
  const turn = hatch === 'lines' ? 45 : hatch === 'falling' ? -45 : 0;
  const turned = turn === 0 ? '' : ` patternTransform="rotate(${turn})"`;
  const filled = `<rect class="plan-fill-${fill}" fill="${WITHOUT_STYLE.paper}" width="${size}" height="${size}"/>`;
  return [
    `<pattern id="${id}" ${attributes}${turned}>`,
    ...(fill === 'none' ? [] : [filled]),
    tile(hatch, distance * paper, pen * paper),
    '</pattern>'
  ].join('');
}

function tile(hatch: Hatch, distance: number, pen: number): string {
  const middle = round(distance / 2);
  const size = round(distance);
  if (hatch === 'dots') return `<circle class="plan-fill-ink" cx="${middle}" cy="${middle}" r="${round(pen / 2)}"/>`;
  if (hatch === 'rings') {
    const ring = `cx="${middle}" cy="${middle}" r="${round(distance * 0.36)}" fill="none"`;
    return `<circle class="plan-pen" ${ring} stroke="${WITHOUT_STYLE.ink}" stroke-width="${round(pen)}"/>`;
  }
  const lines = linesOf(hatch, middle, size);
  return `<path class="plan-pen" d="${lines}" fill="none" stroke="${WITHOUT_STYLE.ink}" stroke-width="${round(pen)}"/>`;
}

function linesOf(hatch: Hatch, middle: number, size: number): string {
  if (hatch === 'crossed') return `M0 ${middle}h${size}M${middle} 0v${size}`;
  if (hatch === 'bricks') return `M0 0h${size}M0 ${middle}h${size}M${middle} 0v${middle}M0 ${middle}v${middle}`;
  // Short lines, each row set over by half.
  if (hatch === 'dashes') return `M0 ${round(size / 4)}h${middle}M${middle} ${round((size * 3) / 4)}h${middle}`;
  return `M0 ${middle}h${size}`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
