import { HATCHES, type Hatch } from '../inks.ts';
import type { Tint } from '../tints.ts';
import { element, type SvgElement } from './element.ts';
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
): SvgElement {
  const { distance, pen } = HATCHES[hatch];
  const size = round(distance * paper);
  // Crossed lines stand upright, so that no turn of the paper makes them look like the others.
  const turn = hatch === 'lines' ? 45 : hatch === 'falling' ? -45 : 0;
  return element(
    'pattern',
    {
      id,
      width: size,
      height: size,
      patternUnits: 'userSpaceOnUse',
      patternTransform: turn === 0 ? undefined : `rotate(${turn})`
    },
    fill === 'none'
      ? undefined
      : element('rect', { class: `plan-fill-${fill}`, fill: WITHOUT_STYLE.paper, width: size, height: size }),
    tile(hatch, distance * paper, pen * paper)
  );
}

function tile(hatch: Hatch, distance: number, pen: number): SvgElement {
  const middle = round(distance / 2);
  const size = round(distance);
  const line = { fill: 'none', stroke: WITHOUT_STYLE.ink, 'stroke-width': round(pen) };
  if (hatch === 'dots') return element('circle', { class: 'plan-fill-ink', cx: middle, cy: middle, r: round(pen / 2) });
  if (hatch === 'rings')
    return element('circle', { class: 'plan-pen', cx: middle, cy: middle, r: round(distance * 0.36), ...line });
  return element('path', { class: 'plan-pen', d: linesOf(hatch, middle, size), ...line });
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
