import type { System } from '../job/job.ts';
import { printAs, type PrintStyle } from '../measures/print.ts';
import { type LevelDatum, levelStyleOf, printLevelWithMark } from '../measures/print-level.ts';
import { shownQuantitiesOf, type Owner } from '../quantities/catalogue.ts';

/** One line of a table: a quantity in words and as it prints. */
export interface Row {
  readonly key: string;
  readonly words: string;
  readonly value: string;
  /** As it prints in the other system; absent for counts and shares. */
  readonly other?: string;
}

/** The numbers of one owner as rows, in the catalogue's order; what has no number has no row. Heights need the datum. */
export function rowsOf(owner: Owner, numbers: object, system: System, isBed = false, datum?: LevelDatum): Row[] {
  const print = (style: PrintStyle, value: number, of: System): string =>
    style === 'level' && datum !== undefined
      ? printLevelWithMark(value, datum, levelStyleOf(of))
      : printAs(style, value, of);
  return shownQuantitiesOf(owner).flatMap(({ key, words, print: asPrinted, printBed }) => {
    const value = (numbers as Readonly<Record<string, unknown>>)[key];
    const style = isBed ? (printBed ?? asPrinted) : asPrinted;
    if (typeof value !== 'number') return [];
    const row = { key, words, value: print(style, value, system) };
    return [ONE_WAY.has(style) ? row : { ...row, other: print(style, value, OTHER[system]) }];
  });
}

/** These are the same in every system. */
const ONE_WAY: ReadonlySet<PrintStyle> = new Set(['count', 'share', 'angle', 'number']);

const OTHER: Readonly<Record<System, System>> = { imperial: 'metric', metric: 'imperial' };
