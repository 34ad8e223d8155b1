import Fraction from 'fraction.js';
import { rectangleLoop } from '../../geometry/index.ts';
import type { System } from '../../job/job.ts';
import type { SumList, WrittenSum } from '../../lowering/sums.ts';
import { feetAndInches } from '../../measures/lengths.ts';
import { INCH } from '../../measures/measures.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import { hasNames, isNought, standingAlone } from './written.ts';

/** Where the near-left corner of a rectangle is before it is turned: said, from the middle, or at nought. */
export interface RectangleSums {
  readonly size: SumList;
  readonly corner?: SumList;
  readonly centre?: SumList;
  readonly turned?: SumList;
}

export interface Corners {
  /** As they stand after `at`: `(12 ft, 0)`; from the near-left corner anticlockwise. */
  readonly written: readonly string[];
  /** How far rounding may have moved one, m. */
  readonly within: number;
}

/** The corners of a rectangle: exact, by the names that its size has; of one that is turned to a hundredth of a millimetre. */
export function cornersOf(parsed: ParsedText, sums: RectangleSums): Corners | undefined {
  if (sums.turned !== undefined) return turnedCorners(sums);
  const lists = [sums.size, sums.corner, sums.centre].filter(list => list !== undefined);
  const exact = lists.some(list => list.sums.some(hasNames)) ? undefined : exactCorners(sums);
  const written = exact ?? cornersAsSums(parsed, sums);
  return written && { written, within: 0 };
}

// ---- worked out ----

type Place = readonly [Fraction, Fraction];

function exactCorners(sums: RectangleSums): string[] | undefined {
  const system = sums.size.sums[0]!.system ?? sums.size.sums[1]!.system;
  const size = cornerAt(sums.size);
  const from = sums.centre && cornerAt(sums.centre);
  const corner = sums.corner && cornerAt(sums.corner);
  if (system === undefined || size === undefined) return undefined;
  const [x, y]: Place =
    from === undefined
      ? (corner ?? [new Fraction(0), new Fraction(0)])
      : [from[0].sub(size[0].div(2)), from[1].sub(size[1].div(2))];
  const [right, far] = [x.add(size[0]), y.add(size[1])];
  const places: Place[] = [
    [x, y],
    [right, y],
    [right, far],
    [x, far]
  ];
  const written = places.map(place => writtenPlace(place, system));
  return written.some(place => place === undefined) ? undefined : (written as string[]);
}

function cornerAt({ sums }: SumList): Place | undefined {
  const [x, y] = sums.map(({ amount }) => amount?.value);
  return x && y && [x, y];
}

/** `(3.65, 0) m`, `(12 ft 6 in, 0)`; undefined where that would round it. */
function writtenPlace(place: Place, system: System): string | undefined {
  const texts = place.map(length => (system === 'metric' ? inMetres(length) : inFeetAndInches(length)));
  if (texts.some(text => text === undefined)) return undefined;
  const measure = system === 'metric' && place.some(length => !length.equals(0)) ? ' m' : '';
  return `(${texts.join(', ')})${measure}`;
}

function inMetres(length: Fraction): string | undefined {
  return length.mul(10_000).d === 1n ? length.toString() : undefined;
}

function inFeetAndInches(length: Fraction): string | undefined {
  const inches = length.abs().div(INCH);
  if (inches.equals(0)) return '0';
  if (inches.mul(64).d !== 1n) return undefined;
  const written = feetAndInches(length.abs());
  if (length.compare(0) > 0) return written;
  return written.endsWith('in') && written.includes('ft') ? `-(${written})` : `-${written}`;
}

// ---- as sums ----

function cornersAsSums(parsed: ParsedText, { size, corner, centre }: RectangleSums): string[] | undefined {
  const texts = [...size.sums, ...((corner ?? centre)?.sums ?? [])].map(sum => operand(parsed, sum));
  if (texts.some(text => text === undefined)) return undefined;
  const [width, depth, at, up] = texts as [string, string, string?, string?];
  const [x, right] = ends(at, width, centre !== undefined);
  const [y, far] = ends(up, depth, centre !== undefined);
  return [`(${x}, ${y})`, `(${right}, ${y})`, `(${right}, ${far})`, `(${x}, ${far})`];
}

function ends(from: string | undefined, size: string, isMiddle: boolean): [string, string] {
  if (from === undefined || from === '0') return isMiddle ? [`-${size} / 2`, `${size} / 2`] : ['0', size];
  return isMiddle ? [`${from} - ${size} / 2`, `${from} + ${size} / 2`] : [from, `${from} + ${size}`];
}

/** A sum as a part of another. */
function operand(parsed: ParsedText, sum: WrittenSum): string | undefined {
  if (isNought(sum)) return '0';
  const written = standingAlone(parsed, sum);
  const isCompound = sum.form !== 'quantity' && sum.form !== 'name' && sum.form !== 'brackets';
  return isCompound && sum.given === undefined ? written && `(${written})` : written;
}

// ---- turned ----

/** A hundredth of a millimetre: nothing is set out closer. */
const TURNED_WITHIN = 1e-5;

function turnedCorners(sums: RectangleSums): Corners | undefined {
  const { size, corner, centre, turned } = sums;
  const lists = [size, corner, centre, turned].filter(list => list !== undefined);
  // What is worked out would no longer follow a name.
  if (lists.some(list => list.sums.some(sum => hasNames(sum) || sum.amount === undefined))) return undefined;
  const [width, depth] = valuesOf(size) as [number, number];
  const [x, y] = (centre && valuesOf(centre)) ?? [];
  const [left, near] = (corner && valuesOf(corner)) ?? [0, 0];
  const at = x === undefined || y === undefined ? { x: left!, y: near! } : { x: x - width / 2, y: y - depth / 2 };
  const [degrees] = valuesOf(turned!);
  const loop = rectangleLoop(width, depth, at, (degrees! * Math.PI) / 180);
  const isMetric = size.sums.some(({ system }) => system === 'metric');
  const written = loop.map(({ from }) => {
    const places = [from.x, from.y].map(length =>
      decimal(isMetric ? length : length / INCH.valueOf(), isMetric ? 5 : 3)
    );
    return `(${places.join(', ')})${places.every(place => place === '0') ? '' : isMetric ? ' m' : ' in'}`;
  });
  return { written, within: TURNED_WITHIN * 2 };
}

function valuesOf({ sums }: SumList): number[] {
  return sums.map(({ amount }) => amount!.value.valueOf());
}

/** As few digits as say it to so many places, never `-0`. */
function decimal(value: number, places: number): string {
  return String(Number(value.toFixed(places)) || 0);
}
