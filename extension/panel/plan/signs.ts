// Signs of points, falls, starts and findings, in pixels: they differ by form, never by colour alone.
import type { LiveMark } from '../../../server/plan-protocol.ts';
import { tenth } from './corners.ts';
import type { Look } from './looks.ts';
import { type Box, boxAbout } from './letters.ts';
import type { Place } from './view.ts';

export type Sign = LiveMark['sign'];

/** From its middle outwards, pixels: that much is kept free round it, and that near it is meant. */
export const REACH_OF_SIGN: Readonly<Record<Sign, number>> = {
  point: 7,
  dot: 5,
  diamond: 5,
  fall: 20,
  start: 20,
  centre: 9,
  error: 10,
  warning: 10,
  note: 8
};

/** Signs of findings stand beside what they mark, so that it is seen: that far right and up, pixels. */
const BESIDE = 12;

/** Where the stem from what is marked ends, at the rim of the sign. */
const STEM_ENDS: Partial<Readonly<Record<Sign, Place>>> = {
  error: { x: 4, y: -4 },
  warning: { x: 3, y: -5 },
  note: { x: 7.4, y: -7.4 }
};

/** Where a sign stands that marks this place. */
export function standOf(sign: Sign, { x, y }: Place): Place {
  return STEM_ENDS[sign] === undefined ? { x, y } : { x: x + BESIDE, y: y - BESIDE };
}

/** So far from what it marks a sign stands at most, pixels. */
export const FARTHEST_STAND = BESIDE * Math.SQRT2;

/** From the sign to what it marks; empty where it stands there itself. */
export function stemPath(sign: Sign, { x, y }: Place): string {
  const end = STEM_ENDS[sign];
  return end === undefined ? '' : `M${tenth(x)} ${tenth(y)}L${tenth(x + end.x)} ${tenth(y + end.y)}`;
}

/** Of arrows, pixels from their place along them: where they begin and end, and half of what they take across. */
const ARROWS: Partial<Readonly<Record<Sign, { readonly from: number; readonly to: number; readonly half: number }>>> = {
  fall: { from: -18, to: 19, half: 4.5 },
  start: { from: 0, to: 26, half: 5.5 }
};

/** From end to end, pixels. */
export const LENGTH_OF_FALL = 37;

/** The boxes that a sign stands in: of an arrow a row of them along it. `turn` is clockwise; `size` a share of the usual. */
export function boxesOfSign(sign: Sign, place: Place, turn: number, size = 1): Box[] {
  const arrow = ARROWS[sign];
  if (arrow === undefined) return [boxAbout(standOf(sign, place), Math.min(REACH_OF_SIGN[sign], 9))];
  const [from, to, half] = [arrow.from * size, arrow.to * size, arrow.half];
  const parts = Math.max(1, Math.ceil((to - from) / half));
  return Array.from({ length: parts }, (_, part) => {
    const along = from + ((part + 0.5) * (to - from)) / parts;
    return boxAbout({ x: place.x + along * Math.cos(turn), y: place.y + along * Math.sin(turn) }, half);
  });
}

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

/** Pixels, where it isn't the usual. */
const PENS: Partial<Readonly<Record<Sign, number>>> = { start: 2.4, point: 1.3, fall: 1.3, diamond: 1 };

export function lookOfSign(sign: Sign, stale: boolean): Look {
  const isFilled = sign === 'fall' || sign === 'start' || sign === 'dot';
  return {
    name: `sign ${sign}${stale ? ' stale' : ''}`,
    classes: `${isFilled ? 'plan-fill-ink' : 'plan-fill-paper'} ${sign === 'dot' ? 'plan-rim' : 'plan-pen'}`,
    pen: PENS[sign] ?? 1.6,
    stale
  };
}

/** `turn` is clockwise, as the screen turns; `size` a share of the usual one, of what is not round. */
export function signPath(sign: Sign, { x, y }: Place, turn = 0, size = 1): string {
  const [cosine, sine] = [size * Math.cos(turn), size * Math.sin(turn)];
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
      return circle(3.8);
    case 'diamond':
      return `${line([-4, 0], [0, -4], [4, 0], [0, 4])}z`;
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
      return `${circle(6.5)}${line([0, -1], [0, 3.5])}${line([0, -3.5], [0, -2.7])}`;
  }
}
