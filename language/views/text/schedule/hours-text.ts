import type { System } from '../../../job/job.ts';
import type { HoursLine, Task } from '../../../schedule/contract.ts';
import { hoursText } from '../../schedule-days.ts';
import type { Colours } from '../colours.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { wrapped } from '../wrapped.ts';
import { amountText, rateText } from './rate-text.ts';

/** How the hours of each task came about: so much, times the rate; then the rates with where they are from. */
export function hoursLines(tasks: readonly Task[], system: System, colours: Colours): string[] {
  const timed = tasks.filter(({ working }) => working.length > 0);
  const parts = timed.flatMap(({ title, working }) => [
    plainLine(title),
    ...table(
      COLUMNS,
      working.map(line => row(line, system)),
      colours
    ).map(line => `  ${line}`)
  ]);
  return [...parts, '', ...ratesText(timed.flatMap(({ working }) => working))];
}

const COLUMNS = [{ head: '' }, { head: '', right: true }, { head: '' }, { head: '', right: true }, { head: '' }];

/** Room for what an amount is of. */
const NAME_WIDTH = 36;

function row({ amount, takes, rate, hours, done }: HoursLine, system: System): string[] {
  const each = amount.per === 'job' ? rateText(takes, 'job', system) : `× ${rateText(takes, amount.per, system)}`;
  const name = amount.per === 'job' ? rate.name : amount.name;
  return [
    wrapped(plainLine(name), NAME_WIDTH, '  ').join('\n'),
    amountText(amount.value, amount.per, system),
    each,
    `= ${hoursText(hours)} h`,
    done === undefined ? '' : `done ${done}`
  ];
}

/** Each rate once: how long it takes as it is written, and where that is from. */
function ratesText(lines: readonly HoursLine[]): string[] {
  const rates = [...new Map(lines.map(({ rate }) => [rate.name, rate])).values()];
  return rates.flatMap(({ name, written, source }) =>
    wrapped(`${plainLine(name)}: ${written}. ${plainLine(source)}`, RATE_WIDTH, '  ')
  );
}

/** Room for a line of a rate, past its indent. */
const RATE_WIDTH = 96;
