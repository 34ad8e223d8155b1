import type { Shape, Sheet } from '../../drawing/drawing.ts';
import { textWidth } from '../../drawing/lettering.ts';
import { rectangleLoop } from '../../geometry/index.ts';
import type { System } from '../../job/job.ts';
import { printAs, printThickness } from '../../measures/print.ts';
import { ground, MARGIN, onGround } from './page.ts';

/** mm on paper: the bar is no longer than this, and stands at the foot of the sheet. */
const LONGEST = 62;
const HEIGHT = 1.8;
const SIZE = 2.5;

/** From the nought to the next figure, in sizes of the letters. */
const GAP = 0.8;

const FOOT = 0.3048;

/** Round lengths, and into how many parts each is parted. */
const ROUND: readonly (readonly [length: number, parts: number])[] = [
  [5, 5],
  [2, 4],
  [1, 4]
];

/** A bar of a round length, dark and light by turns, with its length at its middle and end. */
export function scaleBar(sheet: Sheet, system: System): Shape[] {
  const { length, parts } = roundLength(ground(sheet, LONGEST), system === 'imperial' ? FOOT : 1);
  const from = onGround(sheet, MARGIN, MARGIN + 3);
  const height = ground(sheet, HEIGHT);
  const part = length / parts;
  const fields = Array.from({ length: parts }, (_, index): Shape => {
    const corner = { x: from.x + index * part, y: from.y };
    const ink = index % 2 === 0 ? 'bar-dark' : 'bar-light';
    return {
      kind: 'outlines',
      key: `sheet/scale-bar/${index + 1}`,
      ink,
      loops: [rectangleLoop(part, height, corner, 0)]
    };
  });
  const label = (at: number, text: string): Shape => ({
    kind: 'label',
    key: `sheet/scale-bar/at-${at}`,
    ink: 'text',
    at: { x: from.x + at * part, y: from.y + height + ground(sheet, SIZE) },
    text,
    size: ground(sheet, SIZE),
    turn: 0,
    anchor: at === 0 ? 'start' : 'middle'
  });
  const ofPart = lengthText(part, system);
  const room = part - ground(sheet, SIZE * (textWidth('0') + GAP + textWidth(ofPart) / 2));
  const end = label(parts, lengthText(length, system));
  return [...fields, label(0, '0'), ...(room > 0 ? [label(1, ofPart)] : []), end];
}

function roundLength(longest: number, measure: number): { length: number; parts: number } {
  const tens = 10 ** Math.floor(Math.log10(longest / measure));
  const [round, parts] = ROUND.find(([length]) => length * tens * measure <= longest) ?? ROUND.at(-1)!;
  return { length: round * tens * measure, parts };
}

function lengthText(length: number, system: System): string {
  const measure = system === 'imperial' ? FOOT : 1;
  const wholes = length / measure;
  if (Math.abs(wholes - Math.round(wholes)) < 1e-9) return printAs('run', length, system);
  return system === 'metric' && length > 1 ? `${length} m` : printThickness(length, system);
}
