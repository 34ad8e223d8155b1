import type { Job } from '../job/job.ts';
import { moneyText, type Minor } from '../money/money.ts';
import type { RawFinding } from './finding.ts';

/** Whether something is taken off the price: it alone can bring a price below nought. */
export function takesOff({ money: { extras } }: Job): boolean {
  return takenOff(extras).length > 0;
}

/** More is taken off than all else comes to. */
export function priceBelowNought({ money: { extras } }: Job, price: Minor, currency: string): RawFinding[] {
  const [first] = takenOff(extras);
  if (first === undefined || price >= 0n) return [];
  const message = `\`${first.title}\` takes off more than the job comes to: the price is ${moneyText(price, currency)}. Check the amount, and what has no price yet.`;
  return [{ id: 'price-below-nought', message, target: first.key }];
}

function takenOff(extras: Job['money']['extras']): Job['money']['extras'] {
  return extras.filter(({ cost }) => 'amount' in cost && cost.amount.startsWith('-'));
}
