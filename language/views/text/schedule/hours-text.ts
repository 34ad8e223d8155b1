import type { System } from '../../../job/job.ts';
import type { HoursLine, Task } from '../../../schedule/contract.ts';
import { hoursText } from '../../schedule-days.ts';
import type { Colours } from '../colours.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { amountText, rateText } from './rate-text.ts';

/** How the hours of each task came about: so much, times the rate; then the rates with where they are from. */
export function hoursLines(tasks: readonly Task[], system: System, colours: Colours): string[] {
  const timed = tasks.filter(({ working }) => working.length > 0);
  const parts = timed.flatMap(({ title, working }) => [
    plainLine(title),
    ...table(COLUMNS, working.map(line => row(line, system)), colours).map(line => `  ${line}`)
  ]);
  return [...parts, '', ...ratesText(timed.flatMap(({ working }) => working), colours)];
}

const COLUMNS = [{ head: '' }, { head: '', right: true }, { head: '' }, { head: '', right: true }, { head: '' }];

function row({ amount, takes, rate, hours, done }: HoursLine, system: System): string[] {
  const each = amount.per === 'job' ? rateText(takes, 'job', system) : `× ${rateText(takes, amount.per, system)}`;
  const name = amount.per === 'job' ? rate.name : amount.name;
  return [
    plainLine(name),
    amountText(amount.value, amount.per, system),
    each,
    `= ${hoursText(hours)} h`,
    done === undefined ? '' : `done ${done}`
  ];
}

function ratesText(lines: readonly HoursLine[], colours: Colours): string[] {
  const rates = [...new Map(lines.map(({ rate }) => [rate.name, rate])).values()];
  const rows = rates.map(({ name, written, source, status }) => [plainLine(name), written, STATUS[status], plainLine(source)]);
  return table([{ head: 'Rate' }, { head: 'Takes' }, { head: 'Known' }, { head: 'Source' }], rows, colours);
}

const STATUS = { read: 'read', practice: 'practice', memory: 'from memory' } as const;
