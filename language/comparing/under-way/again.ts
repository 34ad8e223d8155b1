import type { Job } from '../../job/job.ts';
import type { Hire } from '../../job/money-lines.ts';
import type { Stage } from '../../job/log.ts';
import type { Hold, Schedule, Task } from '../../schedule/contract.ts';
import { decimalText } from '../../money/money.ts';
import type { Costs } from '../../pricing/costs.ts';
import type { Again, Built } from './contract.ts';
import { timesAmount } from './money-times.ts';

/** Which stage a task of the trade belongs to, by its id before any `/`. */
export const STAGE_OF_TASK: Readonly<Record<string, Stage>> = {
  dig: 'dig',
  'cart-away': 'dig',
  geotextile: 'geotextile',
  'sub-base': 'sub-base',
  base: 'base',
  edging: 'edging',
  'edging-before': 'edging',
  'edging-after': 'edging',
  bed: 'bed',
  laying: 'paving',
  cutting: 'paving',
  vibrating: 'paving',
  joints: 'joints',
  'bound-joints': 'joints',
  'second-sweeping': 'joints'
};

const DAYS_IN_WEEK = 7;

/** What the crew comes back to of what it had done: the tasks of the whole newer job, as far as there is more of them. */
export function againOf(job: Job, schedule: Schedule, built: readonly Built[], prices: Prices): Again {
  const more = moreOf(built);
  const tasks = schedule.tasks.flatMap(task => againIn(task, more));
  if (tasks.some(({ task }) => task.id === 'dig')) {
    // Ground is opened anew, so services are located anew.
    const locate = schedule.tasks.find(({ id }) => id === 'locate');
    if (locate !== undefined) tasks.unshift({ task: locate, hours: locate.hours ?? 0 });
  }
  const hours = tasks.reduce((sum, one) => sum + one.hours, 0);
  const crewDay = schedule.crew.people.value * schedule.crew.hours.value;
  const hires = job.money.hires.flatMap(hire => hiredAgain(hire, tasks, crewDay, prices));
  return {
    tasks: tasks.map(({ task: { id, title }, hours: own }) => ({
      id,
      title: title.replace(/:.*$/, ''),
      ...(own > 0 ? { hours: own } : {})
    })),
    hours,
    days: crewDay > 0 ? Math.ceil(hours / crewDay - 1e-9) : 0,
    hires,
    holds: holdsOf(schedule, tasks, built)
  };
}

/** What hires cost in the whole of either text. */
export interface Prices {
  readonly before?: Costs;
  readonly after?: Costs;
}

interface AgainTask {
  readonly task: Task;
  readonly hours: number;
}

/** The share of a stage of an area that is still to build, where part of it is built. */
type More = ReadonlyMap<string, number>;

function moreOf(built: readonly Built[]): More {
  const sums = new Map<string, { all: number; toBuild: number }>();
  for (const { stage, area, amounts } of built) {
    // Of a dig its volume is what takes the time.
    const amount = (stage === 'dig' && amounts.find(({ measure }) => measure === 'm3')) || amounts[0];
    if (amount === undefined) continue;
    const id = `${stage} ${area}`;
    const { all, toBuild } = sums.get(id) ?? { all: 0, toBuild: 0 };
    const left = amount.madeOtherwise + amount.toBuild;
    sums.set(id, { all: all + amount.stays + left, toBuild: toBuild + left });
  }
  return new Map([...sums].flatMap(([id, { all, toBuild }]) => (toBuild > 0 ? [[id, toBuild / all] as const] : [])));
}

function againIn(task: Task, more: More): AgainTask[] {
  const stage = STAGE_OF_TASK[task.id.replace(/\/.*$/, '')];
  if (stage === undefined) return [];
  const lines = task.working.map(({ amount: { area }, hours }) => ({
    hours,
    share: more.get(`${stage} ${area}`) ?? 0
  }));
  const unknown = task.noRate.some(({ area }) => more.has(`${stage} ${area}`));
  const hours = lines.reduce((sum, line) => sum + line.hours * line.share, 0);
  return hours > 0 || unknown ? [{ task, hours }] : [];
}

/** At least a day, or a week, however little there is to do; beyond what the whole of the newer text costs more already. */
function hiredAgain(hire: Hire, tasks: readonly AgainTask[], crewDay: number, prices: Prices): Again['hires'] {
  if (hire.by === 'job') return [];
  const own = tasks.filter(({ task: { id, word } }) => hire.tasks.some(name => name === id || name === word));
  if (own.length === 0 || !(crewDay > 0)) return [];
  const hours = own.reduce((sum, one) => sum + one.hours, 0);
  const days = Math.max(1, Math.ceil(hours / crewDay - 1e-9));
  const costIn = (costs: Costs | undefined): bigint =>
    costs?.lines.find(({ title }) => title === `Hire: ${hire.title}`)?.cost ?? 0n;
  const times = hire.by === 'week' ? Math.ceil(days / DAYS_IN_WEEK) : days;
  const charge = timesAmount(hire.charge.amount, times);
  const already = costIn(prices.after) - costIn(prices.before);
  const cost = charge > already ? charge - (already > 0n ? already : 0n) : 0n;
  return [{ title: hire.title, days, cost: decimalText(cost) }];
}

/** Waits of the tasks that are gone back to; for concrete only that of edging which is set in it anew. */
function holdsOf({ tasks: all }: Schedule, tasks: readonly AgainTask[], built: readonly Built[]): Hold[] {
  const edged = built.flatMap(({ material, amounts }) => (material && amounts[0]!.toBuild > 0 ? [material] : []));
  const own = tasks.flatMap(({ task }) => task.holds).filter(({ kind }) => kind !== 'concrete');
  const concrete = all
    .flatMap(({ holds }) => holds)
    .filter(({ kind, text }) => kind === 'concrete' && edged.some(name => text.includes(` ${name} `)));
  return [...new Map([...own, ...concrete].map(hold => [hold.text, hold])).values()];
}
