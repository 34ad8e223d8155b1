import type { Job } from '../../../job/job.ts';
import type { MoneyWords } from '../../../job/money-lines.ts';
import type { JobNumbers } from '../../../quantities/contract.ts';
import type { Costs } from '../../../pricing/costs.ts';
import type { Colours } from '../colours.ts';

/** What both sheets of a price are printed from: the client's, and the one with the costs behind it. */
export interface QuoteInput {
  readonly job: Job;
  readonly money: MoneyWords;
  readonly numbers: JobNumbers;
  readonly costs: Costs;
  readonly colours: Colours;
}

/** Sheets are signed on paper: no line is longer. */
export const SHEET_WIDTH = 80;
