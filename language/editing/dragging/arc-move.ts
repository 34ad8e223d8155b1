import { type Arc, distance, type Point, pointAlong, radiusOf, type Side } from '../../geometry/index.ts';
import type { System } from '../../job/job.ts';
import { LARGEST_LENGTH } from '../../lowering/context.ts';
import type { Why, WrittenArc } from '../../lowering/handles/told-handle.ts';
import type { TextEdit } from '../../syntax/text-edit.ts';
import { type Edits, numberEdits, over } from './pair-edits.ts';
import { styleOf, usualStyle } from './number-style.ts';
import { stepOfStyle, written } from './written-anew.ts';

/** Edits of what bends a side, and the size that they lead to, m. */
export interface ArcEdits extends Edits {
  readonly size: number;
}

/** Bends a side so that its middle comes as near to a place as it can: it moves square to the side alone. */
export function arcMove(written: WrittenArc, side: Side, to: Point, system: System): ArcEdits | Why {
  const { arc } = side;
  if (arc === undefined) return { why: STRAIGHT };
  if (written.bend === 'circle' || written.bend === 'across') {
    const radius = distance(arc.centre, to);
    return sized(written, written.bend === 'circle' ? radius : 2 * radius, [], system);
  }
  if (written.bend === 'rounded') return rounded(written, side, arc, to, system);
  const chord = distance(side.from, side.to);
  const middle = { x: (side.from.x + side.to.x) / 2, y: (side.from.y + side.to.y) / 2 };
  const top = pointAlong(side, 0.5);
  const rise = distance(middle, top);
  const reached = ((to.x - middle.x) * (top.x - middle.x) + (to.y - middle.y) * (top.y - middle.y)) / rise;
  const over = reached < 0 ? turnedOver(written) : [];
  if (written.bend === 'bowed') return sized(written, Math.abs(reached), over, system);
  const half = chord / 2;
  if (Math.abs(reached) > half)
    return { why: 'A radius makes half a circle at most: write `bowed` and how far, and it can be bent further.' };
  return sized(written, (reached * reached + half * half) / (2 * Math.abs(reached)), over, system, half);
}

/** The arc of a rounded corner moves along the line from the corner to its centre, as far as its radius grows. */
function rounded(written: WrittenArc, side: Side, arc: Arc, to: Point, system: System): ArcEdits | Why {
  const top = pointAlong(side, 0.5);
  const radius = radiusOf(side, arc);
  const inward = { x: (arc.centre.x - top.x) / radius, y: (arc.centre.y - top.y) / radius };
  const perRadius = 1 / Math.cos(arc.turn / 2) - 1;
  const moved = (to.x - top.x) * inward.x + (to.y - top.y) * inward.y;
  return sized(written, radius + moved / perRadius, [], system);
}

function sized(
  { size: number }: WrittenArc,
  size: number,
  more: readonly TextEdit[],
  system: System,
  least = 0
): ArcEdits | Why {
  const style = styleOf(number) ?? usualStyle(system);
  const step = stepOfStyle(style);
  if (!(size > step.valueOf() / 2)) return { why: STRAIGHT };
  if (size > LARGEST_LENGTH) return { why: STRAIGHT };
  const { edits, within } = numberEdits([{ number, to: size }], system);
  // A radius can't be rounded below half of its side.
  const rounded = step.mul(Math.round(size / step.valueOf()));
  if (edits.length > 0 && rounded.valueOf() < least) {
    const up = step.mul(Math.ceil(least / step.valueOf()));
    return { edits: [over(number, written(up, style).text), ...more], within, size: up.valueOf() };
  }
  return { edits: [...edits, ...more], within, size };
}

/** The other word for the side to which it bends; a space before it where none stood there. */
function turnedOver({ side }: WrittenArc): TextEdit[] {
  if (side === undefined) return [];
  const { says, word } = side;
  const text = says === 'in' ? 'out' : 'in';
  return [{ ...word, text: word.start === word.end ? ` ${text}` : text }];
}

const STRAIGHT = 'There it would be as good as straight: take the bend out of the text to make it so.';
