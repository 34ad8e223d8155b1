import type { Buying, Key } from '../job/job.ts';
import { given, measured, multiply, roundedUp, sum } from './arithmetic.ts';
import type { UnitTotals } from './laying-stage.ts';
import type { Page } from './page.ts';

/** Units of one kind in an area: as they lie, how they are cut, and what that takes to buy. */
export function layingNumbers(
  { whole, cut, area: covered, cuts, nested }: UnitTotals,
  area: Key,
  { breakage }: Pick<Buying, 'breakage'>,
  page: Page<'laying'>
): void {
  const wholes = page.put('whole', measured('whole units', whole, '', area));
  page.put('cut', measured('cut units', cut, '', area));
  page.put('unitArea', measured('area of units and pieces', covered, 'm2', area));
  if (nested !== undefined) {
    const used = page.put('unitsUsed', sum(wholes, measured('units for the cut pieces', nested.used, '', area)));
    page.put('lowerBound', sum(wholes, measured('least units for the cut pieces', nested.lowerBound, '', area)));
    if (breakage !== undefined) {
      const broken = page.put('breakage', roundedUp(multiply(used, given('breakage', breakage, ''))));
      page.put('toBuy', sum(used, broken));
    }
  }
  if (cuts === undefined || cut === 0) return;
  const { smallestPiece, smallestShare, narrowestPiece, straightCuts, sawLength } = cuts;
  if (smallestPiece !== undefined) page.put('smallestPiece', measured('smallest piece', smallestPiece, 'm2', area));
  if (smallestShare !== undefined) page.put('smallestShare', measured('share of a unit', smallestShare, '', area));
  if (narrowestPiece !== undefined) page.put('narrowestPiece', measured('narrowest piece', narrowestPiece, 'm', area));
  page.put('straightCuts', measured('straight cuts', straightCuts, '', area));
  page.put('sawLength', measured('saw length', sawLength, 'm', area));
}
