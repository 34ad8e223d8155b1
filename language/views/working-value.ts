import type { System } from '../job/job.ts';
import { printByMeasure } from '../measures/print.ts';
import { exact, moneyText, rounded } from '../money/money.ts';
import type { WorkingValue } from '../quantities/contract.ts';

/** Money, and money for one of a measure. */
const MONEY = /^[A-Z]{3}(?=\/|$)/;

/** A value of a working in the job's own measures; a share or a price as it was written, `43 %`, `28 GBP per tonne`. */
export function printWorkingValue({ value, measure, written }: WorkingValue, system: System): string {
  const isMoney = MONEY.test(measure);
  if ((measure === '' || isMoney) && /^[0-9]/.test(written ?? '')) return written!;
  return isMoney && measure.length === 3
    ? moneyText(rounded(exact(value)), measure)
    : printByMeasure(value, measure, system);
}
