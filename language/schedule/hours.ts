import type { Key } from '../job/job.ts';
import type { Rate, TaskWord } from '../job/work.ts';
import type { Amount, HoursLine, Included } from './contract.ts';
import type { Draft, Effort } from './draft.ts';

/** The hours of one task. */
export interface Hours {
  readonly lines: readonly HoursLine[];
  readonly noRate: readonly Amount[];
  /** Parts whose time another task's rate holds. */
  readonly included: readonly Included[];
}

/** Hours of all drafts by the rates, in their order. */
export function hoursOf(drafts: readonly Draft[], rates: readonly Rate[]): Hours[] {
  const holders = holdersAmong(drafts, rates);
  return drafts.map(draft => {
    const lines: HoursLine[] = [];
    const noRate: Amount[] = [];
    const included: Included[] = [];
    for (const effort of draft.efforts) {
      const holder = effort.brings === true ? undefined : holders.get(placeOf(effort.task, effort.amounts[0].area));
      const own = linesOf(effort, rates);
      if (holder !== undefined) included.push({ name: effort.amounts[0].name, rate: holder.name, task: holder.task });
      else if (own.length === 0) noRate.push(effort.amounts[0]);
      else lines.push(...own);
    }
    return { lines, noRate, included };
  });
}

/** For each task of an area that a rate of another task there includes, that rate. */
function holdersAmong(drafts: readonly Draft[], rates: readonly Rate[]): ReadonlyMap<string, Rate> {
  const holders = new Map<string, Rate>();
  for (const effort of drafts.flatMap(({ efforts }) => efforts))
    for (const amount of effort.amounts) {
      const rate = rateFor(effort, amount, rates);
      for (const task of rate?.includes ?? []) if (task !== effort.task) holders.set(placeOf(task, amount.area), rate!);
    }
  return holders;
}

function placeOf(task: TaskWord, area: Key | undefined): string {
  return `${task} ${area ?? ''}`;
}

function linesOf(effort: Effort, rates: readonly Rate[]): HoursLine[] {
  return effort.amounts.flatMap(amount => {
    const rate = rateFor(effort, amount, rates);
    if (rate === undefined) return [];
    const { name, key, source, status, takes } = rate;
    return [
      {
        amount,
        takes: takes.value,
        rate: {
          name,
          key,
          written: takes.written,
          source,
          status,
          ...(takes.assumed === undefined ? {} : { assumed: takes.assumed })
        },
        hours: amount.value * takes.value,
        ...(effort.done === undefined ? {} : { done: effort.done })
      }
    ];
  });
}

/**
 * Of the rates of a task that measure in the same way and whose words all hold the one with the most words counts; of two
 * the job's own, then the first.
 */
function rateFor({ task, words }: Effort, { per }: Amount, rates: readonly Rate[]): Rate | undefined {
  const fitting = rates.filter(
    rate => rate.task === task && rate.per === per && rate.when.every(word => words.includes(word))
  );
  const [first, ...others] = fitting;
  return others.reduce<Rate | undefined>((best, rate) => (goesBefore(rate, best!) ? rate : best), first);
}

function goesBefore(rate: Rate, best: Rate): boolean {
  if (rate.when.length !== best.when.length) return rate.when.length > best.when.length;
  return rate.takes.assumed === undefined && best.takes.assumed !== undefined;
}
