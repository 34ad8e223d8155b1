import type { System } from '../job/job.ts';
import { type KeyOf, shownQuantitiesOf } from '../quantities/catalogue.ts';
import type { BorderRowQuantities, LayingQuantities } from '../quantities/contract.ts';
import { printAs } from '../measures/print.ts';
import { markdownTable } from './markdown.ts';
import { rowsOf } from './rows.ts';

/** What is asked first of units: how many there are, how many are cut, and how many to buy. */
export const HEADLINE: readonly KeyOf<'laying'>[] = ['whole', 'cut', 'unitsUsed', 'breakage', 'toBuy', 'sawLength'];

/** Kinds of units side by side, a column each under `head`: all that tables show, or some. */
export function unitsMarkdown(
  laying: readonly LayingQuantities[],
  system: System,
  head = '',
  only?: readonly KeyOf<'laying'>[]
): string {
  const kinds = laying.map(one => new Map(rowsOf('laying', one, system).map(({ key, value }) => [key, value])));
  const shown = shownQuantitiesOf('laying').filter(({ key }) => only?.some(each => each === key) ?? true);
  const rows = shown
    .map(({ key, words }) => [words, ...kinds.map(kind => kind.get(key) ?? '')])
    .filter(([, ...values]) => values.some(value => value !== ''));
  const bonds = only === undefined ? [['Laid in', ...laying.map(({ bond }) => bond)]] : [];
  return markdownTable([head, ...laying.map(({ unit }) => unit)], [...bonds, ...rows]);
}

/** The rows of one border or band: how many units, and the joint that they came to. */
export function rowsMarkdown(rows: readonly BorderRowQuantities[], system: System): string {
  if (rows.length === 0) return '';
  const along = ({ border, sides }: BorderRowQuantities): string =>
    sides.join(', ') || (border.startsWith('band') ? 'across' : 'round');
  const cells = rows.map(row => [
    along(row),
    printAs('count', row.units, system),
    printAs('joint', row.joint, system),
    row.wholeUnits ? 'whole' : 'cut alike'
  ]);
  return markdownTable(['Along', 'Units', 'Joint', 'Ends'], cells);
}
