import type { System } from '../../job/job.ts';
import { printHeight, printSlope } from '../../measures/print.ts';
import type { Owner } from '../../quantities/catalogue.ts';
import type { AreaQuantities } from '../../quantities/contract.ts';
import type { Colours } from './colours.ts';
import { type Leading, numberRows, numberTable } from './number-table.ts';
import { cuttingText, runningSizesText, unitsText } from './units-text.ts';
import { wrapped } from './wrapped.ts';

/** The sides of a border in one line; more go on below. */
const LONGEST_SIDES = 20;

/** All numbers of one area: what it is, then a block of lines for each part that it has. */
export function areaText(area: AreaQuantities, system: System, colours: Colours): string {
  const rows = (owner: Owner, numbers: object | undefined): string[] => numberRows([[owner, numbers]], system, colours);
  const list = <T extends object>(owner: Owner, items: readonly T[], leading: readonly Leading<T>[]): string[] =>
    numberTable({ owner, items, leading, system, colours });
  const blocks = [
    rows('area', area),
    list('kept-out', area.keptOut, [{ head: 'Kept out', cell: ({ id }) => id.replace(':', ' ') }]),
    list('edge', area.edges, [
      { head: 'Side', cell: ({ name }, index) => (area.outline[index]?.turn === undefined ? name : `${name} (curve)`) },
      { head: 'Meets', cell: ({ meets }) => meets ?? 'not said' },
      { head: 'Edging', cell: ({ edging }) => edging ?? '' }
    ]),
    rows('dig', area.dig),
    list('layer', area.layers, [
      { head: 'Layer', cell: ({ role }) => role },
      { head: 'Material', cell: ({ material }) => material }
    ]),
    unitsText(area.laying ?? [], system, colours),
    cuttingText(area.laying ?? [], system, colours),
    list('border-row', area.borderRows ?? [], [
      { head: 'Border', cell: ({ course }) => course.replace('-', ' ') },
      { head: 'Of', cell: ({ unit }) => unit },
      {
        head: 'Along',
        cell: ({ border, sides }) =>
          wrapped(sides.join(', '), LONGEST_SIDES).join('\n') || (border.startsWith('band') ? 'across' : 'round')
      },
      { head: 'Ends', cell: ({ wholeUnits }) => (wholeUnits ? 'whole' : 'cut alike') }
    ]),
    runningSizesText(area.runningSizes ?? [], system, colours),
    rows('joints', area.joints),
    list('edging', area.edging, [{ head: 'Edging', cell: ({ material }) => material }]),
    list('geotextile', area.geotextile === undefined ? [] : [area.geotextile], [
      { head: 'Material', cell: ({ material }) => material }
    ])
  ];
  const shown = blocks.filter(block => block.length > 0).map(block => block.map(line => `  ${line}`).join('\n'));
  return [heading(area, system, colours), ...shown].join('\n\n');
}

/** `finish 3 in below door-sill, falling 1/4 in per ft (1:48)`: the height is that of the first place given. */
function finishText({ height, at, fall }: NonNullable<AreaQuantities['finish']>, system: System): string {
  const falls = fall === undefined ? 'level' : printSlope(fall, system);
  return `finish ${printHeight(height, at, system)}${falls === 'level' ? '' : `, falling ${falls}`}`;
}

function heading({ name, traffic, finish }: AreaQuantities, system: System, colours: Colours): string {
  const facts = [
    ...(traffic.length === 0 ? [] : [`traffic ${traffic.join(', ')}`]),
    ...(finish === undefined ? [] : [finishText(finish, system)])
  ];
  return [colours.strong(`Area ${name}`), ...facts].join(' · ');
}
