import type { System } from '../job/job.ts';
import { printAs } from '../measures/print.ts';
import { shownQuantitiesOf, type Owner } from '../quantities/catalogue.ts';

/** One line of a table: a quantity in words and as it prints. */
export interface Row {
  readonly key: string;
  readonly words: string;
  readonly value: string;
  /** As it prints in the other system; absent for counts and shares. */
  readonly other?: string;
}

/** The numbers of one owner as rows, in the catalogue's order; what has no number has no row. */
export function rowsOf(owner: Owner, numbers: object, system: System, isBed = false): Row[] {
  return shownQuantitiesOf(owner).flatMap(({ key, words, print, printBed }) => {
    const value = (numbers as Readonly<Record<string, unknown>>)[key];
    const style = isBed ? (printBed ?? print) : print;
    if (typeof value !== 'number') return [];
    const row = { key, words, value: printAs(style, value, system) };
    return [style === 'count' || style === 'share' ? row : { ...row, other: printAs(style, value, OTHER[system]) }];
  });
}

const OTHER: Readonly<Record<System, System>> = { imperial: 'metric', metric: 'imperial' };
