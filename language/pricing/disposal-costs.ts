import type { Disposal } from '../job/money-lines.ts';
import type { From } from '../quantities/contract.ts';
import type { TakenAway } from './cost-inputs.ts';
import type { CostSheet } from './cost-sheet.ts';
import { charge, larger, over, quantity, type Reckoned, times, up, written } from '../money/ledger.ts';

export const DISPOSAL = 'Taking away what is dug';

/** What taking away the soil costs: by its mass, its loose volume, the load or the container. */
export function addDisposal(sheet: CostSheet, taken: TakenAway | undefined, disposal: Disposal | undefined): void {
  if (taken === undefined) {
    if (disposal !== undefined) sheet.leaveOut(DISPOSAL, 'how much is dug is not known', disposal.key);
    return;
  }
  if (taken.mass === 0 && taken.looseVolume === 0) return;
  if (disposal === undefined) {
    sheet.leaveOut(DISPOSAL, 'no price: `disposal` tells it');
    return;
  }
  if (!sheet.counts(DISPOSAL, disposal.charge)) return;
  const amount = costOf(taken, disposal);
  if (amount === undefined) sheet.leaveOut(DISPOSAL, wanting(disposal), disposal.key);
  else
    sheet.add({
      id: 'disposal',
      kind: 'disposal',
      title: DISPOSAL,
      amount,
      shares: taken.shares.map(share => ({ ...share, work: 'dig', task: 'cart-away' })),
      place: { work: 'dig', task: 'cart-away' }
    });
}

function wanting({ by }: Disposal): string {
  return by === 'load'
    ? 'nothing tells how many loads there are: `truck-load` says what one takes'
    : 'nothing tells what a container takes';
}

const DUG: From = { assumed: 'all that is dug, soft spots and old paving included' };

function costOf(taken: TakenAway, { charge: money, by, volume, mass }: Disposal): Reckoned | undefined {
  const loose = quantity('loose volume taken away', taken.looseVolume, 'm3', DUG);
  const heavy = quantity('mass taken away', taken.mass, 'kg', DUG);
  switch (by) {
    case 'm3':
      return times(loose, charge('price of taking away', money, 'm3'));
    case 'kg':
      return times(heavy, charge('price of taking away', money, 'kg'));
    case 'load':
      return taken.loads === undefined
        ? undefined
        : times(quantity('loads', taken.loads, '', { pointer: '/dig/truckLoads' }), charge('price of a load', money));
    case 'container': {
      const byVolume = volume && up(over(loose, written('volume of a container', volume, 'm3')));
      const byMass = mass && up(over(heavy, written('mass that a container takes', mass, 'kg')));
      const [first, ...others] = [byVolume, byMass].filter(count => count !== undefined);
      return first && times(larger(first, ...others), charge('price of a container', money));
    }
  }
}
