import type {
  Circle,
  CornerCut,
  Curve,
  Keep,
  Leg,
  Mark,
  Marking,
  Offset,
  SawPath,
  SlantingCut
} from './marking-out.ts';
import type { SideName } from './unit-shape.ts';

/** Prints a length, metres. */
export type PrintLength = (metres: number) => string;

/** What `along` and `across` mean, and the names of sides and corners, for the head of a list. */
export const HOW_MARKED =
  'The unit lies face up in front of you, its length from left to right. Along is from the left, across is from the near side. Mark everything before the first cut.';

/** The cuts of one piece in words. A piece without any is the unit but for what a saw takes anyway. */
export function markingsText(markings: readonly Marking[], print: PrintLength): string {
  if (markings.length === 0) return 'whole, but for what a saw takes';
  return markings.map(marking => markingText(marking, print)).join('; ');
}

/** One cut in words, to stand within a sentence or table. */
function markingText(marking: Marking, print: PrintLength): string {
  switch (marking.kind) {
    case 'square-cut': {
      const { size, across, keep } = marking;
      const kept = keep === 'right' || keep === 'far' ? `, keeping the ${sideText(keep)}` : '';
      return `cut to ${print(size)} ${across === 'length' ? 'long' : 'wide'}${kept}`;
    }
    case 'strip-off':
      return `cut ${print(marking.size)} off the ${sideText(marking.side)}`;
    case 'slanting-cut':
      return slantingText(marking, print);
    case 'corner-cut':
      return cornerText(marking, print);
    case 'corner-notch': {
      const { along, across, corner } = marking;
      return `notch ${print(along)} along by ${print(across)} across out of the ${corner} corner`;
    }
    case 'side-notch': {
      const { width, depth, start, side } = marking;
      return `notch ${print(width)} wide and ${print(depth)} deep in the ${sideText(side)}, ${print(start.at)} from the ${start.from} corner`;
    }
    case 'curve':
      return curveText(marking, print);
    case 'circle':
      return circleText(marking, print);
    case 'opening': {
      const { length, width, along, across } = marking;
      return `hole ${print(length)} along by ${print(width)} across, starting ${print(along)} along and ${print(across)} across`;
    }
    case 'saw-path':
      return pathText(marking, print);
  }
}

function sideText(side: SideName): string {
  return side === 'left' || side === 'right' ? `${side} end` : `${side} side`;
}

function markText({ side, from, at }: Mark, print: PrintLength): string {
  return at === 0 ? `the ${from} corner` : `${print(at)} along the ${sideText(side)} from the ${from} corner`;
}

function keepText(keep: Keep): string {
  if (keep === 'inside' || keep === 'outside') return `keeping the ${keep}`;
  if (keep === 'between the marks') return 'keeping what lies between the marks';
  return `keeping the ${'side' in keep ? sideText(keep.side) : `${keep.corner} corner`}`;
}

function slantingText({ marks: [first, second], keep }: SlantingCut, print: PrintLength): string {
  const held = endHeld(first, second);
  if (held === undefined) {
    return `straight cut from ${markText(first, print)} to ${markText(second, print)}, ${keepText(keep)}`;
  }
  const along = (mark: Mark): string => `${print(mark.at)} along the ${sideText(mark.side)}`;
  return `straight cut from ${along(first)} to ${along(second)}, both from the ${held}, which is kept`;
}

/** The end, or side, that both marks are measured from and that is kept. */
function endHeld(first: Mark, second: Mark): string | undefined {
  if (first.at === 0 || second.at === 0) return undefined;
  const [near, far] = [first.side, second.side];
  const common = first.from.split(' ').find(word => second.from.split(' ').includes(word));
  const opposite = (near === 'near' && far === 'far') || (near === 'left' && far === 'right');
  if (!opposite || common === undefined) return undefined;
  return common === 'left' || common === 'right' ? `${common} end` : `${common} side`;
}

function cornerText({ corner, marks: [first, second], keep }: CornerCut, print: PrintLength): string {
  const along = (mark: Mark): string => `${print(mark.at)} along the ${sideText(mark.side)}`;
  const what = keep === 'rest' ? `cut the ${corner} corner off,` : `keep only the ${corner} corner, cut`;
  return `${what} from ${along(first)} to ${along(second)}, both from that corner`;
}

function curveText({ marks, radius, bow, bows, chord, heights, keep }: Curve, print: PrintLength): string {
  const [from, to] = marks.map(mark => markText(mark, print));
  const off = heights.map(({ at, height }) => `${print(height)} at ${print(at)}`).join(', ');
  const bowed = `${print(bow)} ${bows} over a chord of ${print(chord)}`;
  return `curve of radius ${print(radius)} from ${from} to ${to}, ${keepText(keep)}, bowing ${bowed}; height off the chord, from the first mark: ${off}`;
}

function circleText({ diameter, along, across, keep }: Circle, print: PrintLength): string {
  const what = keep === 'inside' ? 'cut to a circle' : 'round hole';
  return `${what} ${print(diameter)} across, its middle ${print(along)} along and ${print(across)} across`;
}

function pathText({ start, legs, closed, keep }: SawPath, print: PrintLength): string {
  const place = ({ along, across }: Offset): string => `${print(along)} along and ${print(across)} across`;
  const leg = (each: Leg, index: number): string => {
    const { arc } = each;
    const curve = arc ? `in a curve of radius ${print(arc.radius)} bowing ${print(arc.bow)} ${arc.bows} ` : '';
    return closed && index === legs.length - 1 ? `${curve}back to the start` : `${curve}to ${place(each)}`;
  };
  return `saw from ${place(start)} ${legs.map(leg).join(', ')}, ${keepText(keep)}`;
}
