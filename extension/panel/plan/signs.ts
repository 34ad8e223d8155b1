// Signs of points, falls, starts and findings, in pixels: they differ by form, never by colour alone.
import type { LiveMark } from '../../../server/plan-protocol.ts';
import { tenth } from './corners.ts';
import type { Look } from './looks.ts';
import type { Place } from './view.ts';

export type Sign = LiveMark['sign'];

/** From its middle outwards, pixels: that much is kept free round it, and that near it is meant. */
export const REACH_OF_SIGN: Readonly<Record<Sign, number>> = {
  point: 7,
  dot: 5,
  diamond: 7,
  fall: 20,
  start: 20,
  centre: 9,
  error: 10,
  warning: 10,
  note: 10
};

/** Of two signs in one place the one that comes first here is drawn last, and meant first. */
export const SIGNS_BY_RANK: readonly Sign[] = [
  'error',
  'warning',
  'note',
  'point',
  'start',
  'diamond',
  'dot',
  'centre',
  'fall'
];

export function lookOfSign(sign: Sign, stale: boolean): Look {
  const isFilled = sign === 'fall' || sign === 'start' || sign === 'dot';
  return {
    name: `sign ${sign}${stale ? ' stale' : ''}`,
    classes: `${isFilled ? 'plan-fill-ink' : 'plan-fill-paper'} plan-pen`,
    pen: sign === 'start' ? 2.4 : sign === 'point' || sign === 'fall' ? 1.3 : 1.6,
    stale
  };
}

/** `turn` is clockwise, as the screen turns. */
export function signPath(sign: Sign, { x, y }: Place, turn = 0): string {
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  const at = (right: number, down: number): string =>
    `${tenth(x + right * cosine - down * sine)} ${tenth(y + right * sine + down * cosine)}`;
  const line = (...places: readonly (readonly [number, number])[]): string =>
    places.map(([right, down], index) => `${index === 0 ? 'M' : 'L'}${at(right, down)}`).join('');
  const circle = (radius: number): string =>
    `M${tenth(x - radius)} ${tenth(y)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
  switch (sign) {
    case 'point':
      return `${circle(3.5)}${line([-6, 0], [-3.5, 0])}${line([3.5, 0], [6, 0])}${line([0, -6], [0, -3.5])}${line([0, 3.5], [0, 6])}`;
    case 'dot':
      return circle(3);
    case 'diamond':
      return `${line([-6, 0], [0, -6], [6, 0], [0, 6])}z`;
    case 'centre':
      return line([-8, 0], [8, 0]) + line([0, -8], [0, 8]);
    case 'fall':
      return `${line([-18, 0], [12, 0])}${line([10, -4], [19, 0], [10, 4])}z`;
    case 'start':
      return `${line([0, -7], [0, 7])}${line([0, 0], [18, 0])}${line([16, -5], [26, 0], [16, 5])}z`;
    case 'error':
      return `${line([-8, -8], [8, -8], [8, 8], [-8, 8])}z${line([-4, -4], [4, 4])}${line([4, -4], [-4, 4])}`;
    case 'warning':
      return `${line([0, -9], [9, 7], [-9, 7])}z${line([0, -3.5], [0, 2])}${line([0, 4], [0, 5])}`;
    case 'note':
      return `${circle(8.5)}${line([0, -1.5], [0, 4.5])}${line([0, -4.5], [0, -3.5])}`;
  }
}
