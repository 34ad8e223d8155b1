import type { Costs } from '../../../pricing/costs.ts';

const TOTALS: Readonly<Record<string, string>> = {
  costs: 'Costs',
  passedOn: 'Passed on at cost',
  takenOff: 'Taken off',
  overhead: 'Overhead',
  price: 'Price without tax',
  taxed: 'Price that bears tax',
  tax: 'Tax',
  total: 'To pay',
  deposits: 'Deposits'
};

/** In words which amount a JSON pointer of the costs means; undefined of what only parts a line or adds its parts up. */
export function costLabel(pointer: string, { lines, areas }: Costs): string | undefined {
  const [list, at, ...rest] = pointer.split('/').slice(2);
  const key = rest.join('/');
  switch (list) {
    case 'lines':
      return key === 'cost' ? lines[Number(at)]!.title : undefined;
    case 'areas':
      return rest[0] === 'perUnit' ? `${areas[Number(at)]!.name}, ${rest[1]} for a unit of area` : undefined;
    case 'perUnit':
      return `${TOTALS[at!]} for a unit of area`;
    case 'profit':
      return 'Margin or markup';
    default:
      return at === undefined ? TOTALS[list!] : undefined;
  }
}
