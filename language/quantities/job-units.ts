import type { Given } from '../job/job.ts';
import type { Tray } from './boxes.ts';
import { type Expression, given, leaf, measured, multiply, roundedUp, sum } from './arithmetic.ts';
import type { LayingQuantities } from './contract.ts';
import type { Page } from './page.ts';

/** What the whole job says of buying one kind of unit. */
export interface UnitBuying {
  /** Name of the unit. */
  readonly unit: string;
  readonly keep?: Given;
  readonly trays?: readonly Tray[];
  /** Units for the pieces of all areas together, where offcuts may go from one to another. */
  readonly nested?: { readonly used: number; readonly lowerBound: number; readonly proven: boolean };
}

/** What one area takes of a kind of unit. */
export interface UnitInArea {
  readonly area: string;
  /** To its numbers: `/areas/0/laying/1`. */
  readonly pointer: string;
  readonly laying: LayingQuantities;
}

/** The units of one kind to buy for the whole job: used, for breakage, put by, in trays of covers. Tells whether fewer can't do. */
export function unitsToBuy(
  all: readonly UnitInArea[],
  { keep, trays = [], nested }: Omit<UnitBuying, 'unit'>,
  breakage: Given | undefined,
  jobKey: string,
  page: Page<'job-unit'>
): { readonly proven?: boolean } {
  const numbers = (key: 'whole' | 'unitsUsed' | 'lowerBound', words: string): Expression[] =>
    all.flatMap(({ area, pointer, laying }) => {
      const value = laying[key];
      return value === undefined ? [] : [leaf(`${words} in ${area}`, value, '', { pointer: `${pointer}/${key}` })];
    });
  const [used, ...moreUsed] = numbers('unitsUsed', 'units used');
  const [least, ...moreLeast] = numbers('lowerBound', 'least units');
  if (used === undefined || least === undefined || moreUsed.length + 1 < all.length) return {};
  const [whole, ...moreWhole] = numbers('whole', 'whole units');
  const wholes = sum(whole!, ...moreWhole);
  const alone = moreUsed.length === 0;
  const forPieces = (words: string, value: number): Expression => sum(wholes, measured(words, value, '', jobKey));
  const usedInAll = nested ? forPieces('units for the cut pieces of all areas', nested.used) : sum(used, ...moreUsed);
  const leastInAll = nested
    ? forPieces('least units for the cut pieces of all areas', nested.lowerBound)
    : sum(least, ...moreLeast);
  if (alone) {
    page.repeat('unitsUsed', used.value);
    page.repeat('lowerBound', least.value);
  }
  const total = alone ? used : page.put('unitsUsed', usedInAll);
  if (!alone) page.put('lowerBound', leastInAll);
  const broken = breakage && page.put('breakage', roundedUp(multiply(total, given('breakage', breakage, ''))));
  if (keep !== undefined) page.repeat('keep', keep.value);
  const kept = keep && given('units put by', keep, '');
  const [firstTray, ...moreTrays] = trays.map(({ name, count, pointer }) =>
    leaf(`units in the tray of ${name}`, count, '', { pointer })
  );
  if (firstTray !== undefined && moreTrays.length === 0) page.repeat('trays', firstTray.value);
  const paved = moreTrays.length === 0 ? firstTray : page.put('trays', sum(firstTray!, ...moreTrays));
  const besides = [broken, kept, paved].filter(one => one !== undefined);
  if (besides.length > 0) page.put('toBuy', sum(total, ...besides));
  const proven = nested?.proven ?? all.every(({ laying }) => laying.proven === true);
  return { proven };
}
