import type { Border } from '../job/job.ts';
import type { CourseRun } from '../laying/borders/border.ts';
import { divide, type Expression, given, measured, multiply, plainNumber, subtract } from './arithmetic.ts';
import type { BorderRowQuantities } from './contract.ts';
import type { LaidTotals } from './laying-stage.ts';
import type { LayeredArea } from './layers-stage.ts';
import type { Book } from './page.ts';

/** In metres: a joint that comes of its row to this is told by the row's length and its units. */
const SAME_JOINT = 1e-9;

/** The rows of all borders and bands: how many units, and the joint that they came to. */
export function borderRows(area: LayeredArea, { rows }: LaidTotals, book: Book): BorderRowQuantities[] {
  const edging = [...area.borders, ...area.bands];
  return rows
    .flatMap(({ part, runs }) => {
      const border = edging.find(({ key }) => key === part);
      return border === undefined ? [] : runs.map(run => ({ border, run }));
    })
    .map(({ border, run }, index): BorderRowQuantities => {
      const page = book.page('border-row', `/borderRows/${index}`);
      const { length, units, opening, fits } = run;
      const long = length === undefined ? undefined : page.put('length', measured('row', length, 'm', border.key));
      const count = page.put('units', measured('units in a row', units, '', border.key));
      page.put('joint', jointOf(border, run, long, count));
      if (opening !== undefined) page.put('opening', measured('widest joint', opening.widest, 'm', border.key));
      return {
        border: border.key.slice(border.key.lastIndexOf('/') + 1),
        unit: border.unit.name,
        course: border.course,
        sides: run.hole === undefined ? run.sides.map(side => area.edges[side]!.name) : [],
        wholeUnits: fits,
        ...page.numbers
      };
    });
}

function jointOf(
  { unit, course, joint: asked, key }: Pick<Border, 'unit' | 'course' | 'joint' | 'key'>,
  { units, joint, fits }: CourseRun,
  length: Expression | undefined,
  count: Expression
): Expression {
  if (length !== undefined && fits && units > 1) {
    const size =
      course === 'soldier-course' ? given('unit width', unit.width, 'm') : given('unit length', unit.length, 'm');
    const even = divide(subtract(length, multiply(count, size)), subtract(count, plainNumber(1)));
    if (Math.abs(even.value - joint) <= SAME_JOINT) return even;
  }
  const word = joint === asked.width.value ? 'joint as asked for' : 'joint with which whole units fit';
  return measured(word, joint, 'm', key);
}
