// Every task of every sample has its hours, and each by a rate that says where it is from.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import type { Job } from '../../language/job/job.ts';
import { taskHoursText } from '../../language/views/schedule-days.ts';
import { evaluated, inMemory } from '../language/in-memory.ts';
import { drive, scheduled, scheduleFor, taskOf } from './scheduled.ts';

const folder = path.resolve(import.meta.dirname, '../../samples');
const samples = readdirSync(folder, { recursive: true })
  .map(name => String(name).replaceAll(path.sep, '/'))
  .filter(name => name.endsWith('.paving'));
const texts = Object.fromEntries(samples.map(name => [name, readFileSync(path.join(folder, name), 'utf8')]));

/** Dug by hand, dug by machine, and with nothing done yet. */
const WAYS: readonly ((job: Job) => Partial<Job>)[] = [
  () => ({}),
  ({ carting }) => ({ log: [], carting: { ...carting, digBy: 'hand' } }),
  ({ carting }) => ({ log: [], carting: { ...carting, digBy: 'machine' } })
];

describe('hours', () => {
  test.each(samples)('%s', async name => {
    const paving = new Paving(inMemory(texts));
    await paving.load(name);
    const evaluation = drain(paving.evaluate(name))!;
    if (evaluation.job === undefined) return;
    for (const way of WAYS) {
      const { tasks } = scheduleFor(evaluation, way(evaluation.job));
      expect(tasks.length).toBeGreaterThan(8);
      for (const { id, title, hours, noRate, included, working } of tasks) {
        expect(hours, `${id}: ${title}`).toBeDefined();
        expect(noRate, id).toEqual([]);
        expect(hours! > 0 || included.length > 0, id).toBe(true);
        for (const { rate } of working) expect(rate.source, rate.name).not.toBe('');
      }
    }
  });

  test('that lie in those of another task say in which', async () => {
    const schedule = await scheduled(drive());
    expect(taskHoursText(taskOf(schedule, 'joints'))).toBe('with laying');
    expect(taskHoursText(taskOf(schedule, 'vibrating'))).toBe('0.5');
    const own = 'rate plate-and-sand { of vibrating, takes 0.1 h per m2, includes second-sweeping }\n';
    expect(taskHoursText(taskOf(await scheduled(own + drive()), 'second-sweeping'))).toBe('with vibrating');
  });

  test('fittings, concrete and tapping have theirs', async () => {
    const text = drive()
      .replace('near meets road, flush', 'near meets road, flush, concrete behind the last course')
      .replace('weight 2.7 kg }', 'weight 2.7 kg, set by hand }');
    const gully = `point GO at (1.5, 3) m
drain yard-gully in drive {
  gully rectangle 300 x 300 mm, centre (1.5, 3) m
  grate 5 mm below sill at GO
  outlet at GO to soakaway, class B125
}
`;
    const evaluation = await evaluated(text + gully);
    expect(evaluation.job!.missing).toEqual([]);
    const { tasks } = scheduleFor(evaluation);
    const rates = tasks.flatMap(({ working }) => working.map(({ rate }) => `${rate.name} ${rate.written}`));
    expect(rates).toEqual(
      expect.arrayContaining([
        'set-gully 2 h per piece',
        'back-last-course 0.15 h per m',
        'tap-down 0.1 h per m2',
        'load-by-machine 0.05 h per m3'
      ])
    );
  });
});
