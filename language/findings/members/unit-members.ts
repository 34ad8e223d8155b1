import type { Unit } from '../../job/job.ts';
import type { RawFix } from '../finding.ts';
import { printFine } from '../../measures/print.ts';
import { fixTo } from '../limits.ts';
import { length, type Member, words } from './member.ts';

/** What rules can look at in a unit. */
export const UNIT_MEMBERS: readonly Member<'unit'>[] = [
  {
    ...words('unit', 'unit', 'The name of the unit'),
    read: ({ unit }) => [unit.name]
  },
  {
    ...words('unit', 'made-of', 'What it is made of', ['concrete', 'clay']),
    read: ({ unit }) => [unit.madeOf]
  },
  {
    ...words('unit', 'sizes', 'Its sizes in the order in which they are written'),
    read: ({ unit: { length, width, thickness }, judged: { system } }) => [
      [`${printFine(length.value, system)} long`, `${printFine(width.value, system)} wide`].join(', '),
      `${printFine(thickness.value, system)} thick`
    ]
  },
  { ...length('unit', 'length', 'The longer side of its face'), read: ({ unit }) => longerSide(unit) },
  {
    ...length('unit', 'width', 'The shorter side of its face'),
    read: ({ unit }) => Math.min(unit.length.value, unit.width.value)
  },
  {
    ...length('unit', 'thickness', 'Its thickness'),
    read: ({ unit }) => unit.thickness.value,
    write: ({ unit, judged }, to) => (typeof to === 'string' ? [] : fixTo(to, unit.thickness, judged.system))
  },
  {
    name: 'face',
    of: 'unit',
    measure: 'm2',
    print: 'face',
    describe: 'Area of its face, length by width',
    read: ({ unit }) => unit.length.value * unit.width.value
  },
  {
    name: 'weight',
    of: 'unit',
    measure: 'kg',
    print: 'sand-mass',
    describe: 'Weight of a piece, where it is said',
    read: ({ unit }) => unit.weight?.value
  },
  {
    ...words('unit', 'order-of-sizes', 'Whether the thickness stands last', ['thickness-last', 'other']),
    read: ({ unit }) => [unit.thickness.value > longerSide(unit) ? 'other' : 'thickness-last'],
    write: ({ unit }, to) => (to === 'thickness-last' ? thicknessLast(unit) : [])
  }
];

/** The longer side of a unit's face, m. */
export function longerSide({ length, width }: Unit): number {
  return Math.max(length.value, width.value);
}

/** The sizes in the places of each other, the longest first. */
function thicknessLast({ length, width, thickness }: Unit): RawFix[] {
  const places = [length, width, thickness];
  const sizes = [...places].sort((one, other) => other.value - one.value);
  const edits = places.flatMap(({ key }, at) => (key === undefined ? [] : [{ over: key, text: sizes[at]!.written }]));
  return edits.length < places.length ? [] : [{ title: 'Put the thickness last', edits }];
}
