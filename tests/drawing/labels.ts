import type { Drawing, Label } from '../../language/drawing/drawing.ts';
import { textWidth } from '../../language/drawing/lettering.ts';
import { lineBox, Taken } from '../../language/drawing/taken.ts';

export function labelsOf({ layers }: Drawing): Label[] {
  return layers.flatMap(({ shapes }) => shapes.filter(shape => shape.kind === 'label'));
}

/** Texts that lie over one drawn before them. */
export function textsOverOthers(drawing: Drawing): string[] {
  const taken = new Taken(0.5);
  return labelsOf(drawing).flatMap(({ at, text, size, turn, anchor }) => {
    // Figures alone, without the room kept free round them.
    const width = textWidth(text) * size * 0.98;
    const shift = anchor === 'start' ? width / 2 : 0;
    const middle = { x: at.x + shift * Math.cos(turn), y: at.y + shift * Math.sin(turn) };
    const box = { ...lineBox(middle, middle), width, height: 0.7 * size, turn };
    const free = taken.isFree(box);
    taken.add(box);
    return free ? [] : [text];
  });
}
