import type { Extra, Share, ShareOf } from '../job/money-lines.ts';
import type { CostKind, CostLine, CostPart } from './cost-line.ts';
import type { CostSheet } from './cost-sheet.ts';
import { charge, plus, type Reckoned, times, written } from '../money/ledger.ts';

const KINDS_OF: Readonly<Record<ShareOf, readonly CostKind[]>> = {
  materials: ['material', 'delivery'],
  labour: ['labour'],
  costs: ['material', 'delivery', 'labour', 'hire', 'disposal', 'extra']
};

/** Words of what a share is of. */
export const SHARE_OF: Readonly<Record<ShareOf, string>> = {
  materials: 'materials and their delivery',
  labour: 'labour',
  costs: 'costs'
};

/**
 * Cost lines of one's own, and the contingency. Shares are of the lines that were there before any share, so that their
 * order changes nothing.
 */
export function addOwnCosts(sheet: CostSheet, extras: readonly Extra[], contingency: Share | undefined): void {
  extras.forEach((extra, index) => {
    if (!('share' in extra.cost) && sheet.counts(extra.title, extra.cost))
      addExtra(sheet, extra, index, charge(extra.title, extra.cost));
  });
  const before = sheet.lines.map((line, index) => ({ line, amount: sheet.named(index) }));
  extras.forEach((extra, index) => {
    if (!('share' in extra.cost)) return;
    const amount = shareOf(extra.title, extra.cost, before);
    if (amount === undefined) sheet.leaveOut(extra.title, noBase(extra.cost), extra.key);
    else addExtra(sheet, extra, index, amount);
  });
  if (contingency === undefined) return;
  const amount = shareOf('contingency', contingency, before);
  if (amount === undefined) sheet.leaveOutInside('Contingency', noBase(contingency));
  else
    sheet.add({
      id: 'contingency',
      kind: 'contingency',
      title: 'Contingency',
      amount,
      shares: partsIn(contingency, before).map(({ cost, pointer: _pointer, ...place }) => ({
        ...place,
        amount: Number(cost)
      })),
      place: { work: 'other' }
    });
}

interface Before {
  readonly line: CostLine;
  readonly amount: Reckoned;
}

function addExtra(sheet: CostSheet, extra: Extra, index: number, amount: Reckoned): void {
  const { title, untaxed, noMargin } = extra;
  const place = { work: 'other', title } as const;
  const id = `extra/${index + 1}`;
  // What is taken off is a discount on the price: no share is of it, and nothing comes on top.
  const isTakenOff = amount.exact.compare(0) < 0;
  const kind = isTakenOff ? 'taken-off' : 'extra';
  sheet.add({ id, kind, title, amount, shares: [], place, untaxed, passedOn: noMargin || isTakenOff });
}

/** A share of lines; undefined where none of them is priced. */
function shareOf(name: string, { share, of }: Share, before: readonly Before[]): Reckoned | undefined {
  const [first, ...others] = linesOf(of, before).map(({ amount }) => amount);
  return first && times(written(`share for ${name}`, share), plus(first, ...others));
}

function noBase({ of }: Share): string {
  return `it is a share of ${SHARE_OF[of]}, and none of these is priced`;
}

function linesOf(of: ShareOf, before: readonly Before[]): Before[] {
  return before.filter(({ line }) => KINDS_OF[of].includes(line.kind));
}

function partsIn({ of }: Share, before: readonly Before[]): CostPart[] {
  return linesOf(of, before).flatMap(({ line }) => line.parts);
}
