import { divide, type Expression, measured, multiply, plainNumber, subtract } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { Running } from './laying-stage.ts';
import type { Book } from './page.ts';

/** Courses between one running size and the next: as many as a tape is held over (common practice). */
const EVERY = 5;

/** More lines than this nobody holds a tape to; the pitch repeats anyway. */
const MOST_LINES = 40;

/** Below this sine of their turn courses run along the side or square to it, and meet it nowhere between. */
const SQUARE = 1e-6;

/**
 * Running sizes: from the face of the first unit to the far face of every fifth course, and of every fifth unit along a
 * course. Of courses that lie aslant also how far apart they are along the side that they begin at.
 */
export function runningSizes(running: Running, key: string, book: Book): NumbersOf<'running-size'>[] {
  const { pitch, joint, extent, turn } = running;
  const line = (way: 'along' | 'across'): ((count: number) => Expression | undefined) => {
    const one = pitch[way];
    if (one === undefined) return () => undefined;
    const step = measured(way === 'across' ? 'course and joint' : 'unit and joint', one, 'm', key);
    const gap = measured('joint', joint[way], 'm', key);
    return count => {
      const size = subtract(multiply(plainNumber(count), step), gap);
      return size.value <= extent[way] + joint[way] ? size : undefined;
    };
  };
  const [across, along] = [line('across'), line('along')];
  const aslant = Math.min(Math.abs(Math.sin(turn)), Math.abs(Math.cos(turn))) > SQUARE;
  const sine = measured('sine of the turn', Math.abs(Math.sin(turn)), '', key);
  const lines: NumbersOf<'running-size'>[] = [];
  for (let count = EVERY; lines.length < MOST_LINES; count += EVERY) {
    const [far, on] = [across(count), along(count)];
    if (far === undefined && on === undefined) break;
    const page = book.page('running-size', `/runningSizes/${lines.length}`);
    page.repeat('courses', count);
    const size = far && page.put('across', far);
    if (size !== undefined && aslant) page.put('alongSide', divide(size, sine));
    if (on !== undefined) page.put('along', on);
    lines.push(page.numbers);
  }
  return lines;
}
