import { amountOf, exact, type Minor, rounded } from '../../money/money.ts';

/** So much of an amount of money, to the nearest hundredth; `share` is finite. */
export function shareOf(amount: Minor, share: number): Minor {
  return rounded(amountOf(amount).mul(exact(share)));
}

/** An amount as the text has it, so many times. */
export function timesAmount(amount: string, times: number): Minor {
  return rounded(exact(0).add(amount).mul(times));
}
