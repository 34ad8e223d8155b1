// Whatever crew, tasks and log a job has: every task has its place, and nothing comes before what it waits for.
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { TASK_WORDS, type OwnTask, type TaskWord } from '../../language/job/work.ts';
import type { LogEntry, Stage } from '../../language/job/log.ts';
import type { Evaluation } from '../../language/paving.ts';
import type { Schedule } from '../../language/schedule/contract.ts';
import { dayNumber, dayText, weekdayOf } from '../../language/measures/days.ts';
import { evaluated } from '../language/in-memory.ts';
import { given } from '../quantities/jobs.ts';
import { drive, scheduleFor } from './scheduled.ts';

const STAGES: readonly Stage[] = ['dig', 'geotextile', 'edging', 'base', 'bed', 'paving', 'joints'];
const KEYS = ['a', 'b', 'c', 'd'];

const words = fc.uniqueArray(fc.constantFrom<TaskWord>(...TASK_WORDS), { maxLength: 2 });
const keys = fc.uniqueArray(fc.constantFrom(...KEYS), { maxLength: 2 });
const day = fc.integer({ min: 0, max: 700 }).map(number => dayText(dayNumber('2026-01-01') + number));

const ownTask = fc
  .record({
    after: words,
    before: words,
    afterOwn: keys,
    beforeOwn: keys,
    hours: fc.double({ min: 0.1, max: 60, noNaN: true })
  })
  .map(({ hours, ...more }) => ({ ...more, hours: given(hours) }));

const crew = fc.record({
  key: fc.constant('job/crew'),
  people: fc.integer({ min: 1, max: 6 }).map(people => given(people)),
  days: fc
    .uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 })
    .map(days => days.toSorted((one, two) => one - two)),
  hours: fc.constantFrom(1, 4, 7.5, 8, 10, 24).map(hours => given(hours))
});

const log = fc.array(
  fc
    .record({ date: day, stage: fc.constantFrom(...STAGES) })
    .map(({ date, stage }): LogEntry => ({ key: `log:${date}`, date, kind: 'done', stage, areas: ['area:drive'] })),
  { maxLength: 3 }
);

describe('any crew, any tasks, any log', () => {
  let evaluation: Evaluation;
  beforeAll(async () => {
    evaluation = await evaluated(drive());
  });

  test('tasks end before what waits for them begins, and only days of the crew are worked', () => {
    const input = fc.record({
      crew,
      own: fc.array(ownTask, { maxLength: KEYS.length }),
      log,
      begins: fc.option(day, { nil: undefined })
    });
    fc.assert(
      fc.property(input, ({ crew: by, own, log: logged, begins }) => {
        const { work } = evaluation.job!;
        const tasks = own.map((task, index): OwnTask => ({ ...task, key: KEYS[index]!, title: KEYS[index]! }));
        const schedule = scheduleFor(evaluation, {
          log: logged,
          work: { rates: work.rates, tasks, crew: by, ...(begins === undefined ? {} : { begins }) }
        });
        everythingHasItsPlace(schedule);
        expect(schedule.tasks).toHaveLength(13 + tasks.length);
      }),
      { seed: 7, numRuns: 300 }
    );
  });
});

function everythingHasItsPlace({ tasks, crew: by, days, hoursLeft, begins }: Schedule): void {
  const placeOf = new Map(tasks.map(({ id }, index) => [id, index]));
  for (const [index, { id, after, when, done, holds }] of tasks.entries()) {
    expect(after.every(other => placeOf.get(other)! < index)).toBe(true);
    expect(done === undefined).toBe(when !== undefined);
    if (when === undefined || id === 'locate') continue;
    expect(by.days).toContain(when.startWeekday);
    expect(when.startDay).toBeGreaterThanOrEqual(1);
    expect(when.endDay).toBeGreaterThanOrEqual(when.startDay);
    expect(when.start === undefined).toBe(begins === undefined);
    if (when.start !== undefined) expect(weekdayOf(dayNumber(when.start))).toBe(when.startWeekday);
    for (const other of after.map(key => tasks[placeOf.get(key)!]!)) {
      // The bed goes on while units are laid.
      if (other.when === undefined || other.id === 'locate' || other.id === 'bed') continue;
      expect(when.startDay).toBeGreaterThanOrEqual(other.when.endDay);
      for (const { days: passed = 0, kind } of holds)
        if ((kind === 'concrete' && other.id === 'edging') || (kind === 'second-sweeping' && other.id === 'joints'))
          expect(when.startDay).toBeGreaterThanOrEqual(other.when.endDay + passed);
    }
  }
  // Services are located before the crew comes.
  const located = tasks.find(({ id, done }) => id === 'locate' && done === undefined)?.hours ?? 0;
  const worked = (hoursLeft - located) / by.people.value / by.hours.value;
  expect(days).toBeGreaterThanOrEqual(worked - 1e-6);
}
