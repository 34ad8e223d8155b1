import type { Job, Key } from '../job/job.ts';
import type { JobFigures } from '../job-figures.ts';
import { moneyText } from '../money/money.ts';
import { markdownTable } from './markdown.ts';
import type { Bought } from './order-hover.ts';
import { hoursText, whenText } from './schedule-days.ts';

/** A task of one's own, by its key in the text as it is now: its hours and its days. */
export function ownTaskAt({ left }: JobFigures, job: Job, key: Key): Bought | undefined {
  const title = job.work.tasks.find(task => task.key === key)?.title;
  const task = left.tasks.find(({ word, title: own }) => word === undefined && own === title);
  if (title === undefined || task === undefined) return undefined;
  const rows = [...(task.hours === undefined ? [] : [['Hours of one person', hoursText(task.hours)]])];
  const when = whenText(task);
  return { headline: title, parts: [markdownTable(['', ''], when === '' ? rows : [...rows, ['When', when]])] };
}

/** What is hired: the days on which its tasks go on in the whole job, the tasks, and what it costs. */
export function hiredAt({ priced: { schedule, costs } }: JobFigures, job: Job, key: Key): Bought | undefined {
  const title = job.money.hires.find(hire => hire.key === key)?.title;
  const hire = schedule.hires.find(({ title: own }) => own === title);
  if (title === undefined || hire === undefined) return undefined;
  const { days, span, tasks } = hire;
  const titles = schedule.tasks.filter(({ id }) => tasks.includes(id)).map(task => task.title);
  const cost = costs?.lines.find(({ kind, title: line }) => kind === 'hire' && line === `Hire: ${title}`);
  const rows = [
    ['Days with work for it', days === undefined ? 'no end' : String(days)],
    ...(titles.length === 0 ? [] : [['For', titles.join('; ')]]),
    ...(span !== undefined && days !== undefined && span > days
      ? [['From the first to the last of them', `${span} days`]]
      : []),
    ...(cost === undefined ? [] : [['Cost', moneyText(cost.cost, costs!.currency)]])
  ];
  const unneeded = titles.length === 0 ? ['No task of the job needs it.'] : [];
  return { headline: title, parts: [markdownTable(['', ''], rows), ...unneeded] };
}
