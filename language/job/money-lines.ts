import type { Given, Key } from './job.ts';
import type { Money, PricedBy } from './prices.ts';

/** What the job says of money besides prices of what is bought. Shares are shares: 18 % is 0.18. */
export interface MoneyWords {
  /** For an hour of one person. */
  readonly labour?: Money;
  readonly hires: readonly Hire[];
  /** What taking away dug soil costs: by a measure of it, or by the container. */
  readonly disposal?: Disposal;
  readonly extras: readonly Extra[];
  readonly contingency?: Share;
  /** Share of the costs. */
  readonly overhead?: Given;
  /** `margin` is a share of the price, `markup` a share of the cost. */
  readonly profit?: { readonly way: 'margin' | 'markup'; readonly share: Given };
  readonly tax?: Given;
  /** Words that print on the client's sheet. */
  readonly excludes: readonly string[];
  readonly client?: string;
  readonly quote?: { readonly key: Key; readonly name: string; readonly on?: string; readonly validDays?: Given };
}

export type ShareOf = 'materials' | 'labour' | 'costs';

export interface Share {
  readonly share: Given;
  readonly of: ShareOf;
}

/** Hired by the day, for tasks. */
export interface Hire {
  readonly key: Key;
  readonly title: string;
  readonly charge: Money;
  readonly by: 'day' | 'week' | 'job';
  /** Words of the tasks that it is needed for. */
  readonly tasks: readonly string[];
}

export interface Disposal {
  readonly key: Key;
  readonly charge: Money;
  readonly by: Extract<PricedBy, 'kg' | 'm3'> | 'load' | 'container';
  /** What a container takes. */
  readonly volume?: Given;
  readonly mass?: Given;
}

/** A cost line of one's own: an amount, or a share. */
export interface Extra {
  readonly key: Key;
  readonly title: string;
  readonly cost: Money | Share;
  readonly untaxed: boolean;
  readonly noMargin: boolean;
}
