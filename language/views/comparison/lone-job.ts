import type { System } from '../../job/job.ts';
import { printAs } from '../../measures/print.ts';
import { moneyText } from '../../money/money.ts';
import type { PricedJob } from '../../priced-job.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import { plainLine } from '../text/plain-line.ts';

export interface LoneJobInput {
  readonly kind: 'new' | 'gone';
  readonly title: string;
  readonly file: string;
  readonly quantities: JobQuantities;
  readonly priced?: PricedJob;
  readonly system: System;
}

/** A job that one side alone has, in one line with its area and its price, where all of it has numbers. */
export function loneJobLine({ kind, title, file, quantities, priced, system }: LoneJobInput): string {
  const costs = priced?.costs;
  const parts = [
    `${kind === 'new' ? 'New job' : 'Job gone'}: ${titleOf(title)}`,
    file,
    printAs('area', quantities.totals.netArea, system),
    ...(costs === undefined || costs.total === 0n || !quantities.complete
      ? []
      : [`to pay ${moneyText(costs.total, costs.currency)}`])
  ];
  return plainLine(parts.join(' · '));
}

export function titleOf(title: string): string {
  return title === '' ? 'Job without a title' : title;
}
