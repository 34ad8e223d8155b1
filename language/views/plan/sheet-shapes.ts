import type { Shape, Sheet } from '../../drawing/drawing.ts';
import { textWidth } from '../../drawing/lettering.ts';
import { rectangleLoop } from '../../geometry/index.ts';
import { ground, HEADER, MARGIN, onGround } from './page.ts';

export function paperShape({ bounds }: Sheet): Shape {
  const { left, right, bottom, top } = bounds;
  const loop = rectangleLoop(right - left, top - bottom, { x: left, y: bottom }, 0);
  return { kind: 'outlines', key: 'sheet/paper', ink: 'sheet', loops: [loop] };
}

/** Sizes of letters, mm on paper. */
const TITLE_SIZE = 5.5;
const UNDER_TITLE_SIZE = 2.8;

/** A title as large as its line leaves, and one line under it. */
export function titlesOn(sheet: Sheet, title: string, under: string): Shape[] {
  const room = (sheet.width * 1000 - 2 * MARGIN) / textWidth(title);
  const top = sheet.height * 1000 - MARGIN;
  const label = (key: string, ink: 'strong' | 'text', text: string, size: number, down: number): Shape => {
    const at = onGround(sheet, MARGIN, top - down);
    return { kind: 'label', key, ink, at, text, size: ground(sheet, size), turn: 0, anchor: 'start' };
  };
  return [
    label('sheet/title', 'strong', title, Math.min(TITLE_SIZE, room), TITLE_SIZE / 2),
    label('sheet/under-title', 'text', under, UNDER_TITLE_SIZE, HEADER - UNDER_TITLE_SIZE * 2)
  ];
}
