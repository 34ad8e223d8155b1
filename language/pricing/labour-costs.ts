import type { Money } from '../job/prices.ts';
import type { HiredDays, TaskHours } from './cost-inputs.ts';
import type { CostPlace } from './cost-line.ts';
import type { CostSheet } from './cost-sheet.ts';
import { charge, quantity, type Reckoned, times, up, over, whole } from '../money/ledger.ts';
import { WORK_OF_TASK } from './task-works.ts';

const DAYS_IN_WEEK = 7;
const DAYS = { assumed: 'days with work that needs it' };
const SPAN = { assumed: 'from the first to the last day of its work' };

/** Hours of each task at the price of an hour; without that price one line tells how many hours have none. */
export function addLabour(sheet: CostSheet, tasks: readonly TaskHours[], rate: Money | undefined): void {
  for (const { title, noRate, hours } of tasks) {
    const what = noRate.length > 0 ? ` for ${noRate.join(', ')}` : '';
    if (hours === undefined || noRate.length > 0)
      sheet.leaveOut(`Labour: ${title}`, `no rate tells how long it takes${what}`);
  }
  const known = tasks.filter(({ hours = 0 }) => hours > 0);
  const hours = known.reduce((sum, task) => sum + task.hours!, 0);
  if (hours === 0) return;
  if (rate === undefined)
    sheet.leaveOut('Labour', `${Number(hours.toFixed(1))} hours and no price of an hour: \`labour\` tells it`);
  else if (sheet.counts('Labour', rate)) for (const task of known) addTask(sheet, task, rate);
}

function addTask(sheet: CostSheet, { id, title, task, hours, from, shares }: TaskHours, rate: Money): void {
  const where: CostPlace = task === undefined ? { work: 'other', title } : { work: WORK_OF_TASK[task], task };
  const worked = quantity(`hours of ${title}`, hours!, '', from);
  sheet.add({
    id: `labour/${id}`,
    kind: 'labour',
    title: `Labour: ${title}`,
    amount: times(worked, charge('labour for an hour', rate)),
    shares: shares.map(share => ({ ...where, ...share })),
    place: where
  });
}

export function addHires(sheet: CostSheet, hires: readonly HiredDays[]): void {
  hires.forEach((hired, index) => {
    const { key, title: what, charge: money, by, tasks } = hired.hire;
    const title = `Hire: ${what}`;
    const amount = costOfHire(hired);
    // Where none of its tasks is there, it costs nothing by the day; for the job it costs what it costs.
    const isNeeded = by === 'job' || hired.days !== 0;
    if (amount === undefined || (!isNeeded && tasks.length === 0))
      sheet.leaveOut(title, 'nothing tells for how many days', key);
    else if (isNeeded && sheet.counts(title, money))
      sheet.add({ id: `hire/${index + 1}`, kind: 'hire', title, amount, shares: [], place: { work: 'hire' } });
  });
}

/** By the day for the days that it is needed, by the week for all weeks that are begun from first to last. */
function costOfHire({ hire: { title, charge: money, by }, days, span }: HiredDays): Reckoned | undefined {
  const price = charge(`hire of ${title} for a ${by}`, money);
  switch (by) {
    case 'job':
      return price;
    case 'day':
      return days === undefined ? undefined : times(quantity('days of hire', days, '', DAYS), price);
    case 'week':
      if (span === undefined) return undefined;
      return times(up(over(quantity('days kept', span, '', SPAN), whole(DAYS_IN_WEEK))), price);
  }
}
