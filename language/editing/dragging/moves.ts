import Fraction from 'fraction.js';
import { distance, type Point } from '../../geometry/index.ts';
import type { System } from '../../job/job.ts';
import type { ToldFrom } from '../../lowering/context.ts';
import type { Why, WrittenAlong, WrittenPair, WrittenPolar } from '../../lowering/handles/told-handle.ts';
import type { WrittenNumber } from '../../lowering/handles/written-number.ts';
import { polar } from '../../setting-out/spots.ts';
import type { TextEdit } from '../../syntax/text-edit.ts';
import { decimalStyle, styleOf, usualStyle } from './number-style.ts';
import { type Edits, numberEdits, over, pairEdits } from './pair-edits.ts';
import { stepOfStyle, written, writtenAnew } from './written-anew.ts';

/** Moves what two coordinates tell. */
export function pairMove(source: string, pair: WrittenPair, by: Point, system: System): Edits {
  return pairEdits(source, pair, [valueOf(pair.x) + by.x, valueOf(pair.y) + by.y], system);
}

/** Moves what lies so far along a line and off it; what lay on the line is told how far it lies off it now. */
export function alongMove(
  { along, aside, end }: WrittenAlong,
  { from, to, side }: Extract<ToldFrom, { side: unknown }>,
  by: Point,
  system: System
): Edits {
  const length = distance(from, to);
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const way = side === 'left' ? 1 : -1;
  const forward = valueOf(along) + by.x * x + by.y * y;
  const off = (aside === undefined ? 0 : valueOf(aside.off)) + way * (by.y * x - by.x * y);
  if (aside === undefined) {
    const { edits, within } = numberEdits([{ number: along, to: forward }], system);
    return { edits: [...edits, ...offLine(along, off, side, { end, system })], within: [within[0]!, within[0]!] };
  }
  // Beyond the line the other word takes the place of a minus.
  const crosses = aside.where !== 'out' && off < 0 && valueOf(aside.off) > 0;
  const number = { number: aside.off, to: crosses ? -off : off };
  const edits = numberEdits([{ number: along, to: forward }, number], system);
  const word = crosses ? [{ ...aside.word, text: OTHER[side] }] : [];
  return { ...edits, edits: [...edits.edits, ...word] };
}

const OTHER = { left: 'right', right: 'left' } as const;

function offLine(
  along: WrittenNumber,
  off: number,
  side: 'left' | 'right',
  { end, system }: { readonly end: number; readonly system: System }
): TextEdit[] {
  const style = styleOf(along) ?? usualStyle(system);
  const step = stepOfStyle(style);
  const value = step.mul(Math.round(Math.abs(off) / step.valueOf()));
  if (value.equals(0)) return [];
  return [{ start: end, end, text: `, ${written(value, style).text} ${off < 0 ? OTHER[side] : 'out'}` }];
}

/** Moves what lies so far from a point at an angle. */
export function polarMove(
  { away, turn }: WrittenPolar,
  { centre, zero }: Extract<ToldFrom, { centre: unknown }>,
  by: Point,
  system: System
): Edits | Why {
  const before = valueOf(turn);
  const now = polar(centre, valueOf(away), zero + (before * Math.PI) / 180);
  const to = { x: now.x + by.x, y: now.y + by.y };
  const far = distance(centre, to);
  const { edits, within } = numberEdits([{ number: away, to: far }], system);
  if (far <= within[0]!) return { why: 'It can lie no nearer to the point that it is told from.' };
  const angle = ((Math.atan2(to.y - centre.y, to.x - centre.x) - zero) * 180) / Math.PI;
  // The way round that changes it least.
  const after = angle + 360 * Math.round((before - angle) / 360);
  const style = angleStyle(turn, far);
  const anew = writtenAnew(turn, style, after);
  const aside = (stepOfStyle(style).valueOf() / 2) * DEGREE * far;
  return { edits: [...edits, ...(anew === undefined ? [] : [over(turn, anew.text)])], within: [within[0]!, aside] };
}

const DEGREE = Math.PI / 180;
/** m */
const MILLIMETRE = 0.001;

/** Degrees with as many decimals as lead to a millimetre that far away. */
function angleStyle(turn: WrittenNumber, far: number): ReturnType<typeof decimalStyle> {
  const [part] = turn.parts;
  const measure = { word: part?.measure ?? 'degrees', space: part?.measure === undefined ? ' ' : part.space };
  return decimalStyle(
    [{ ...measure, factor: new Fraction(1) }],
    part?.number ?? '0',
    { between: ' ', bare: false },
    MILLIMETRE / (far * DEGREE)
  );
}

function valueOf({ value }: WrittenNumber): number {
  return value.valueOf();
}
