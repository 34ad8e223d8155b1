import type { Key, System } from '../job/job.ts';
import type { Hire, MoneyWords } from '../job/money-lines.ts';
import type { TaxIn } from '../buying/tax-basis.ts';
import type { TaskWord } from '../job/work.ts';
import type { From } from '../quantities/contract.ts';
import type { CostPlace } from './cost-line.ts';
import type { Minor } from '../money/money.ts';

/** All that costs and price are worked out from. */
export interface CostInputs {
  readonly job: Key;
  /** Absent: that of the first amount of money is taken. */
  readonly currency?: string;
  readonly system: System;
  readonly money: MoneyWords;
  readonly ordered: readonly OrderedItem[];
  readonly deliveries: readonly OrderedDelivery[];
  readonly tasks: readonly TaskHours[];
  readonly hires: readonly HiredDays[];
  /** Absent where it is not known how much is dug. */
  readonly takenAway?: TakenAway;
  readonly areas: readonly PricedArea[];
  /** What is taken for granted of what is there already, in sentences. */
  readonly assumed?: readonly string[];
  /** Of all areas together, m2: `/totals/netArea` of the numbers of the job. */
  readonly netArea: number;
}

/** One thing that is bought. */
export interface OrderedItem {
  readonly thing: Key;
  readonly name: string;
  /** Its lines in the order; empty where there is enough on hand. Absent: it has no price. */
  readonly lines?: readonly OrderedLine[];
  /** Where it goes. */
  readonly shares: readonly CostShare[];
}

/** A line of the order, in hundredths. */
export interface OrderedLine {
  readonly cost: Minor;
  /** Given back, and no part of the cost. */
  readonly deposit?: Minor;
  /** Whether tax is in its cost; absent: not said. */
  readonly tax?: TaxIn;
  /** Where in the numbers of the job it stands: `/order/0`. */
  readonly pointer: string;
}

export interface OrderedDelivery extends OrderedLine {
  readonly supplier: Key;
  readonly name: string;
}

/** Part of something: how much of it goes to a place, in whatever measure all of its parts have. */
export interface CostShare extends CostPlace {
  readonly amount: number;
}

/** Work that takes time. */
export interface TaskHours {
  readonly id: string;
  readonly title: string;
  /** Absent: a task of one's own. */
  readonly task?: TaskWord;
  /** Hours of one person; absent where no rate tells any of them. */
  readonly hours?: number;
  /** Where these hours come from. */
  readonly from: From;
  /** What has to be done in it and no rate tells the hours of. */
  readonly noRate: readonly string[];
  /** Hours by place; empty: the job as a whole. */
  readonly shares: readonly Omit<CostShare, 'work' | 'task'>[];
}

export interface HiredDays {
  readonly hire: Hire;
  /** Working days on which it is needed, and calendar days from the first of them to the last; absent where no schedule tells. */
  readonly days?: number;
  readonly span?: number;
}

/** What is dug and taken away, soft spots and old paving counted in: loose m3, kg. */
export interface TakenAway {
  readonly looseVolume: number;
  readonly mass: number;
  /** Truck loads, where the job tells what a truck takes. */
  readonly loads?: number;
  readonly shares: readonly { readonly area: Key; readonly amount: number }[];
}

export interface PricedArea {
  readonly key: Key;
  readonly name: string;
  /** m2. */
  readonly netArea: number;
  /** Where in the numbers of the job it stands: `/areas/0/netArea`. */
  readonly pointer: string;
}
