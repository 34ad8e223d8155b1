import type { Shape } from '../../drawing/drawing.ts';
import { textWidth } from '../../drawing/lettering.ts';
import { MARGIN, ground, onGround } from '../plan/page.ts';
import type { SectionMark } from './section-input.ts';
import { NAMES, type SectionPage } from './section-page.ts';

/** mm on paper: letters, from row to row, and from a line to its text. */
const SIZE = 2.3;
const ROW = 3.4;
const OFF = 0.8;

/** Names over the cut in rows, each beginning at its upright line; what finds no row stands in the text. */
export function markNames(marks: readonly SectionMark[], page: SectionPage): Shape[] {
  const { sheet, namesFoot } = page;
  const rows = Math.floor(NAMES / ROW) - 1;
  const onPaper = (x: number): number => ((x - sheet.bounds.left) * 1000) / sheet.scale;
  const spans: { from: number; to: number; row: number }[] = [];
  return [...marks]
    .sort((a, b) => a.at - b.at)
    .flatMap((mark): Shape[] => {
      const place = page.place(mark);
      const from = onPaper(place.x);
      const to = from + OFF + textWidth(mark.text) * SIZE;
      // Under every name that its line would run through.
      const over = spans.filter(span => span.to + OFF > from);
      const row = Math.max(0, ...over.map(span => span.row + 1));
      if (row >= rows || to > sheet.width * 1000 - MARGIN) return [];
      spans.push({ from, to, row });
      const y = onGround(sheet, 0, namesFoot + NAMES - (row + 1) * ROW).y;
      return [
        {
          kind: 'line',
          key: `${mark.key}/line`,
          ink: 'leader',
          sides: [{ from: place, to: { x: place.x, y: y - ground(sheet, SIZE / 2) } }]
        },
        {
          kind: 'label',
          key: `${mark.key}/text`,
          ink: 'text',
          at: { x: place.x - ground(sheet, 0.3), y },
          text: mark.text,
          size: ground(sheet, SIZE),
          turn: 0,
          anchor: 'start'
        }
      ];
    });
}
