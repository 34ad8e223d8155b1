// Tasks in the order of the trade, what they wait for, and the days they lie on.
import { describe, expect, test } from 'vitest';
import { MOST_YEARS } from '../../language/schedule/place-tasks.ts';
import { noEndText } from '../../language/views/schedule-days.ts';
import { evaluated } from '../language/in-memory.ts';
import { daysOf, drive, orderOf, scheduled, scheduleFor, taskOf } from './scheduled.ts';

describe('the order', () => {
  test('kerbs on concrete come before the base, and the base waits for them', async () => {
    const schedule = await scheduled(drive());
    expect(orderOf(schedule)).toEqual([
      'locate',
      'set-out',
      'dig',
      'cart-away',
      'edging',
      'base',
      'bed',
      'laying/drive/herringbone-90',
      'cutting',
      'vibrating',
      'joints',
      'clean-up',
      'second-sweeping'
    ]);
    expect(taskOf(schedule, 'base').holds[0]).toEqual({
      kind: 'concrete',
      text: '3 days for the concrete of kerb to set before anything is compacted against it.',
      days: 3,
      source: 'the job',
      status: 'practice'
    });
    const [edging, base] = ['edging', 'base'].map(id => taskOf(schedule, id).when!);
    expect(base!.startDay).toBeGreaterThanOrEqual(edging!.endDay + 3);
  });

  test('edging set after laying comes behind the cutting, and what is vibrated waits for its concrete', async () => {
    const schedule = await scheduled(drive().replace('set before laying', 'set after laying'));
    const order = orderOf(schedule);
    expect(order.slice(order.indexOf('cutting'), order.indexOf('joints'))).toEqual([
      'cutting',
      'edging-after',
      'vibrating'
    ]);
    expect(taskOf(schedule, 'vibrating').holds.map(({ kind }) => kind)).toEqual(['concrete']);
    expect(taskOf(schedule, 'base').holds.some(({ kind }) => kind === 'concrete')).toBe(false);
  });

  test('a strip on spikes that is set before laying stands on the base', async () => {
    const schedule = await scheduled(drive().replace('edging kerb set', 'edging spiked-strip set'));
    const order = orderOf(schedule);
    expect(order.slice(order.indexOf('base'), order.indexOf('laying/drive/herringbone-90'))).toEqual([
      'base',
      'edging-before',
      'bed'
    ]);
  });

  test('where the text does not say when, concrete is set first, and a strip when the units lie', async () => {
    const unsaid = drive().replace(' set before laying', '');
    expect(orderOf(await scheduled(unsaid))).toContain('edging');
    expect(orderOf(await scheduled(unsaid.replace('edging kerb', 'edging spiked-strip')))).toContain('edging-after');
  });

  test('stone is compacted in layers, and boxes, drains and geotextile have their places', async () => {
    const schedule = await scheduled(`${drive('', { area: 'geotextile' })}
drain gutter {
  channel along drive-end to drive-corner, 130 mm wide, 100 mm deep, on concrete 150 mm below and both sides
  grate 5 mm below sill at drive-end and drive-corner
}
point drive-end at (0, 6) m
point drive-corner at (3, 6) m
box valve in drive {
  rectangle 300 x 300 mm, centre (1.5, 3) m
  lid 20 mm below sill
  in use, set flush
}
box old-valve in drive {
  circle 200 mm across, centre (1, 1) m
  lid 20 mm below sill
  out of use, cut down and bury
}
`);
    const order = orderOf(schedule);
    expect(order.slice(order.indexOf('cart-away'), order.indexOf('laying/drive/herringbone-90'))).toEqual([
      'cart-away',
      'buried-boxes',
      'drains',
      'edging',
      'geotextile',
      'base',
      'boxes',
      'bed'
    ]);
    expect(taskOf(schedule, 'base').title).toBe(
      'Spread and compact the base: type-1 200 mm in 2 compaction layers of 100 mm'
    );
    expect(taskOf(schedule, 'base').holds.filter(({ kind }) => kind === 'concrete')).toHaveLength(2);
    // The concrete of kerbs sets while the geotextile is rolled out.
    expect(taskOf(schedule, 'geotextile').holds).toEqual([]);
    // 3 m of channel, (0.13 + 2 x 0.15) x 0.15 below and 2 x 0.15 x 0.10 beside it.
    const concrete = taskOf(schedule, 'drains').working.find(({ amount }) => amount.per === 'm3')!;
    expect(concrete.amount.value).toBeCloseTo(3 * (0.43 * 0.15 + 2 * 0.15 * 0.1), 12);
  });

  test('units set by hand are tapped down; a plate that is hired for vibrating is not needed for them', async () => {
    const hire = 'hire "Plate" 45 GBP a day, for base and vibrating\n currency GBP';
    const vibrated = await scheduled(drive(hire));
    expect(vibrated.hires).toMatchObject([{ title: 'Plate', tasks: ['base', 'vibrating'] }]);
    const tapped = await scheduled(drive(hire).replace('weight 2.7 kg', 'weight 2.7 kg, set by hand'));
    expect(orderOf(tapped)).toContain('tapping');
    expect(orderOf(tapped)).not.toContain('vibrating');
    expect(tapped.hires).toMatchObject([{ title: 'Plate', tasks: ['base'] }]);
  });

  test('by hand or by machine, and by the soil', async () => {
    const rateOfDig = async (text: string): Promise<string> =>
      taskOf(await scheduled(text), 'dig').working[0]!.rate.name;
    expect(await rateOfDig(drive())).toBe('dig-by-machine-clay');
    expect(await rateOfDig(drive().replace('by machine, 1.5 t', 'by hand'))).toBe('dig-by-hand-clay');
    expect(await rateOfDig(drive().replace('by machine, 1.5 t', 'by hand').replace('soil clay', 'soil sand'))).toBe(
      'dig-by-hand'
    );
  });
});

describe('P-03, common practice: the second sweeping', () => {
  const unbound = 'crew 2\n begins on 2026-04-13';

  test('unbound sand: 7 days after the joints were filled on a Friday, and some of it kept back', async () => {
    const schedule = await scheduled(`${drive(unbound)}log { 2026-04-24 done joints of drive }\n`);
    expect(taskOf(schedule, 'joints').done).toBe('2026-04-24');
    expect(taskOf(schedule, 'second-sweeping')).toMatchObject({
      when: { start: '2026-05-01', startWeekday: 5 },
      after: ['joints'],
      holds: [{ kind: 'second-sweeping', days: 7 }]
    });
    expect(taskOf(schedule, 'second-sweeping').holds[0]!.text).toContain('Keep');
  });

  test('planned, not logged: 7 days after the day on which it ends, or the next day that is worked', async () => {
    const schedule = await scheduled(drive(unbound));
    const days = (id: string): { start: string; end: string } =>
      taskOf(schedule, id).when as { start: string; end: string };
    const passed = (Date.parse(days('second-sweeping').start) - Date.parse(days('joints').end)) / 86_400_000;
    expect(passed).toBe(7);
  });

  test('the share that is kept back, where the material tells it', async () => {
    const text = drive().replace(
      'material bound-filler',
      'material own-sand { role joint-filler, unbound, compacted 1.68 t/m3, loose 1.52 t/m3, kept-back 20 % }\nmaterial bound-filler'
    );
    const schedule = await scheduled(text.replace('filled with kiln-dried-sand', 'filled with own-sand'));
    expect(taskOf(schedule, 'second-sweeping').holds[0]!.text).toContain('Keep 20 % of it back');
  });

  test('bound filler: once, in dry weather', async () => {
    const schedule = await scheduled(drive('', { joints: 'bound-filler' }));
    expect(orderOf(schedule)).not.toContain('second-sweeping');
    expect(taskOf(schedule, 'bound-joints')).toMatchObject({
      title: 'Fill the joints with bound-filler, once',
      holds: [{ kind: 'weather', text: expect.stringContaining('dry weather') as string }]
    });
  });
});

describe('hours', () => {
  test('each with its working: so much, times the rate, with source and status', async () => {
    const schedule = await scheduled(drive());
    const { hours, working } = taskOf(schedule, 'dig');
    const [line] = working;
    expect(line).toMatchObject({
      amount: { name: 'dig of drive', per: 'm3', pointer: '/areas/0/dig/bankVolume', area: 'area:drive' },
      rate: { name: 'dig-by-machine-clay', status: 'practice' }
    });
    expect(line!.takes).toBeCloseTo(0.45, 12);
    expect(hours).toBeCloseTo(line!.amount.value * 0.45, 12);
    for (const task of schedule.tasks.filter(({ hours: known }) => known !== undefined))
      expect(task.hours).toBeCloseTo(
        task.working.reduce((sum, one) => sum + one.amount.value * one.takes, 0),
        9
      );
    expect(schedule.hours).toBeCloseTo(
      schedule.tasks.reduce((sum, task) => sum + (task.hours ?? 0), 0),
      9
    );
  });

  test('a rate that includes bed and joints leaves them no time of their own', async () => {
    const schedule = await scheduled(drive());
    expect(taskOf(schedule, 'laying/drive/herringbone-90').working[0]!.rate).toMatchObject({
      name: 'lay-herringbone',
      status: 'quoted'
    });
    expect(taskOf(schedule, 'bed')).toMatchObject({
      hours: 0,
      included: [{ name: 'bed of drive', rate: 'lay-herringbone' }]
    });
    expect(taskOf(schedule, 'second-sweeping').hours).toBeGreaterThan(0);
  });

  test("one's own rate of the same name stands over the one that ships; one with more words goes before", async () => {
    const own = `rate dig-by-machine-clay { of dig, when machine and clay, takes 2 h per m3 }
rate my-block { of laying, when block and herringbone, takes 1 h per m2 }
`;
    const schedule = await scheduled(own + drive());
    expect(taskOf(schedule, 'dig').working[0]).toMatchObject({ takes: 2, rate: { source: 'own figure' } });
    expect(taskOf(schedule, 'laying/drive/herringbone-90').working[0]).toMatchObject({ takes: 1 });
    // The own rate includes nothing.
    expect(taskOf(schedule, 'bed').hours).toBeGreaterThan(0);
  });

  test('what no rate tells is named, and the rest goes on', async () => {
    const evaluation = await evaluated(drive());
    const { job } = evaluation;
    const rates = job!.work.rates.filter(({ task }) => task !== 'cutting');
    const schedule = scheduleFor(evaluation, { work: { ...job!.work, rates } });
    const cutting = taskOf(schedule, 'cutting');
    expect(cutting.hours).toBeUndefined();
    expect(cutting.noRate.map(({ name }) => name)).toEqual(['saw length of block in drive']);
    expect(taskOf(schedule, 'clean-up').when).toBeDefined();
  });

  test('ground that two areas share is dug once', async () => {
    const text = `${drive()}
area turning {
  outline rectangle 3 x 3 m, corner (3, 2) m
  traffic cars
  finish level with sill
  paving block in herringbone-90, joints 3 mm
  base type-1 200 mm
  edges { all round meets lawn, edging kerb set before laying }
}
`;
    const evaluation = await evaluated(text);
    const { bankVolume } = evaluation.numbers!.quantities.dig;
    const { working } = taskOf(scheduleFor(evaluation), 'dig');
    expect(working.at(-1)!.amount).toMatchObject({ name: 'ground that areas share, dug once' });
    expect(working.at(-1)!.amount.value).toBeLessThan(0);
    expect(working.reduce((sum, { amount }) => sum + amount.value, 0)).toBeCloseTo(bankVolume, 9);
  });
});

describe('days', () => {
  test('two people take half as long; weekends are no days of work', async () => {
    const [one, two] = await Promise.all(['crew 1', 'crew 2'].map(async crew => scheduled(drive(crew))));
    expect(two!.hours).toBeCloseTo(one!.hours, 9);
    expect(two!.days).toBeLessThan(one!.days);
    const weekend = await scheduled(drive('crew 2, Saturdays and Sundays'));
    const worked = weekend.tasks.filter(({ id }) => id !== 'locate').map(({ when }) => when!.startWeekday);
    expect([...new Set(worked)].toSorted()).toEqual([6, 7]);
    expect(taskOf(weekend, 'set-out').when).toMatchObject({ startDay: 1, startWeekday: 6 });
  });

  test('dates from the first day; a first day that is not worked leads to the next that is', async () => {
    const schedule = await scheduled(drive('begins on 2026-04-18'));
    // A Saturday.
    expect(taskOf(schedule, 'set-out').when).toMatchObject({ start: '2026-04-20', startDay: 1 });
  });

  test('services are asked for three days from Monday to Friday before the work', async () => {
    const dated = await scheduled(drive('begins on 2026-04-20'));
    expect(taskOf(dated, 'locate').when).toMatchObject({
      start: '2026-04-15',
      end: '2026-04-19',
      startDay: -4,
      endDay: 0
    });
    expect(taskOf(await scheduled(drive()), 'locate').when).not.toHaveProperty('start');
  });

  test('the bed is screeded bit by bit, to the end of laying', async () => {
    const schedule = await scheduled(drive());
    expect(taskOf(schedule, 'bed').hours).toBe(0);
    expect(taskOf(schedule, 'bed').when!.endDay).toBe(taskOf(schedule, 'laying/drive/herringbone-90').when!.endDay);
    const own = await scheduled(`rate lay-herringbone { of laying, when herringbone, takes 1.5 h per m2 }\n${drive()}`);
    expect(taskOf(own, 'bed').when!.endDay).toBe(taskOf(own, 'laying/drive/herringbone-90').when!.endDay);
  });

  test('what is logged as done is done: with it all that lies below; the rest goes on the day after', async () => {
    const log = `log {
  2026-04-14 done dig of drive
  2026-04-16 done edging of drive
}
`;
    const schedule = await scheduled(drive('begins on 2026-04-13') + log);
    expect(['locate', 'set-out', 'dig', 'cart-away'].map(id => daysOf(schedule, id))).toEqual(
      Array.from({ length: 4 }, () => 'done 2026-04-14')
    );
    expect(schedule.begins).toEqual({ on: '2026-04-17', because: 'log' });
    // Kerbs set on a Thursday: three whole days later it is Sunday evening.
    expect(taskOf(schedule, 'base').when).toMatchObject({ start: '2026-04-20' });
    expect(taskOf(schedule, 'dig')).toMatchObject({ hoursLeft: 0, holds: [], cautions: [] });
    expect(schedule.hoursLeft).toBeLessThan(schedule.hours);
    const whole = scheduleFor(await evaluated(drive('begins on 2026-04-13') + log), { log: [] });
    expect(whole.hoursLeft).toBeCloseTo(whole.hours, 9);
    expect(whole.hours).toBeCloseTo(schedule.hours, 9);
  });

  test('edging logged along one side leaves the others to do', async () => {
    const text = drive()
      .replace('rectangle 3 x 6 m', 'A to B to C to D')
      .replace('near meets road, flush', 'A to B meets road, flush');
    const points = 'point A at (0, 0) m\npoint B at (3, 0) m\npoint C at (3, 6) m\npoint D at (0, 6) m\n';
    const log = 'log { 2026-04-16 done edging of drive along C to B }\n';
    const schedule = await scheduled(points + text + log);
    const { done, hours, hoursLeft, working } = taskOf(schedule, 'edging');
    expect(done).toBeUndefined();
    expect(hoursLeft).toBeLessThan(hours!);
    expect(working.filter(line => line.done !== undefined).map(({ amount }) => amount.name)).toEqual([
      'kerb along B to C of drive',
      'concrete along B to C of drive'
    ]);
  });

  test('work without an end: hours are told, days are not, and it says so; what is hired for it has no days', async () => {
    const evaluation = await evaluated(
      drive(
        'task "Wall" 8 h, after dig\n  hire "Crane" 90 GBP a day, for "Wall"\n  hire "Digger" 80 GBP a day, for dig'
      )
    );
    const { work } = evaluation.job!;
    const most = MOST_YEARS * 365;
    const long = (days: number) => {
      const tasks = work.tasks.map(task => ({ ...task, hours: { ...task.hours, value: 8 * days } }));
      return scheduleFor(evaluation, { work: { ...work, tasks } });
    };
    expect(daysOf(long(most - 10), 'job/task-1')).not.toBe('none');
    expect(long(most - 10).noEnd?.from).not.toBe('job/task-1');
    const schedule = long(most + 1);
    expect(daysOf(schedule, 'dig')).not.toBe('none');
    expect(daysOf(schedule, 'job/task-1')).toBe('none');
    expect(schedule.hours).toBeGreaterThan(8 * most);
    expect(noEndText(schedule)).toBe(
      'No end within 10 years: from “Wall” on, hours are told and no days. Look whether the crew, a rate or a size is a slip.'
    );
    const [crane, digger] = schedule.hires;
    expect(crane).not.toHaveProperty('days');
    expect(digger).toMatchObject({ days: 1, daysLeft: 1 });
    expect(noEndText(scheduleFor(evaluation))).toBeUndefined();
  });

  test('what is done shrinks neither the days of the job nor of what is hired for it', async () => {
    const words = 'begins on 2026-04-13\n  hire "Digger" 80 GBP a day, for dig\n  hire "Fence" 60 GBP for the job';
    const log = 'log { 2026-04-14 done dig of drive }\n';
    const [before, after] = [await scheduled(drive(words)), await scheduled(drive(words) + log)];
    expect(before.days).toBe(before.daysLeft);
    expect(after.days).toBe(before.days);
    expect(after.daysLeft).toBeLessThan(after.days);
    const left = after.hires.map(({ daysLeft }) => daysLeft);
    expect(left).toEqual([0, after.daysLeft]);
    const daysOnly = ({ hires }: typeof before) => hires.map(({ title, days, span }) => ({ title, days, span }));
    expect(daysOnly(after)).toEqual(daysOnly(before));
    // What is hired for no task of its own is needed all through.
    expect(before.hires[1]!.days).toBe(before.days);
  });

  test("the wait for concrete: the edging's own, else that of the job's concrete, else what is common", async () => {
    const holdOf = async (text: string) =>
      taskOf(await scheduled(text), 'base').holds.find(({ kind }) => kind === 'concrete')!;
    const silent = drive().replace(/  wait 3 days .*\n/, '');
    const mix =
      'material rapid-mix { role concrete, compacted 2.2 t/m3, loose 2.2 t/m3\n wait 1 day before compacting against it }\n';
    expect(await holdOf(mix + drive())).toMatchObject({ days: 3, source: 'the job' });
    expect(await holdOf(mix + silent)).toMatchObject({ days: 1, source: 'the job' });
    expect(await holdOf(silent)).toMatchObject({ days: 3, source: 'common practice' });
  });

  test('the same text gives the same schedule', async () => {
    expect(scheduleFor(await evaluated(drive()))).toEqual(await scheduled(drive()));
  });
});

describe("tasks of one's own", () => {
  test('stand where they say: after, before, between each other', async () => {
    const schedule = await scheduled(
      drive(`task "Soakaway" 6 h, after dig, before base
  task "Cable" 2 h, before bed
  task "Photos" 1 h`)
    );
    const order = schedule.tasks.map(({ title, id }) => (id.startsWith('job') ? title : id));
    expect(order.slice(order.indexOf('dig'), order.indexOf('cart-away'))).toEqual(['dig', 'Soakaway']);
    expect(order[order.indexOf('bed') - 1]).toBe('Cable');
    expect(order[order.indexOf('clean-up') - 1]).toBe('Photos');
    const soakaway = schedule.tasks.find(({ title }) => title === 'Soakaway')!;
    expect(soakaway).toMatchObject({ after: ['dig'], hours: 6 });
    expect(taskOf(schedule, 'base').after).toContain(soakaway.id);
  });

  test('what can be done while concrete sets is done then', async () => {
    const without = await scheduled(drive('crew 2'));
    const schedule = await scheduled(drive('crew 2\n task "Fence" 8 h, after edging'));
    const fence = schedule.tasks.find(({ title }) => title === 'Fence')!;
    expect(fence.when!.endDay).toBeLessThan(taskOf(schedule, 'base').when!.startDay);
    expect(daysOf(schedule, 'base')).toBe(daysOf(without, 'base'));
  });

  test('words that lead in circles neither hang nor leave a task out', async () => {
    const evaluation = await evaluated(drive());
    const { job } = evaluation;
    const hours = { value: 1, written: '1 h' };
    const own = (name: string, more: object) => ({
      key: name,
      title: name,
      hours,
      after: [],
      before: [],
      afterOwn: [],
      beforeOwn: [],
      ...more
    });
    const tasks = [
      own('a', { afterOwn: ['b'], beforeOwn: ['c'] }),
      own('b', { afterOwn: ['a'] }),
      own('c', { beforeOwn: ['a', 'c'] }),
      own('d', { after: ['laying'], before: ['dig'] })
    ];
    const schedule = scheduleFor(evaluation, { work: { ...job!.work, tasks } });
    expect(['a', 'b', 'c', 'd'].map(id => taskOf(schedule, id).when !== undefined)).toEqual([true, true, true, true]);
  });

  test('tasks each of which comes before the next two stand in their order', async () => {
    const count = 200;
    const tasks = Array.from({ length: count }, (_, index) => {
      const next = [index + 1, index + 2].filter(other => other < count).map(other => `"t${other}"`);
      return `  task "t${index}" 1 h${next.length === 0 ? ', before laying' : `, before ${next.join(' and ')}`}\n`;
    });
    const evaluation = await evaluated(drive().replace(/^(job "[^"]*" \{)/m, `$1\n${tasks.join('')}`));
    expect(evaluation.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const { tasks: placed } = scheduleFor(evaluation);
    const titles = placed.map(({ title }) => title).filter(title => /^t\d+$/.test(title));
    expect(titles).toEqual(tasks.map((_, index) => `t${index}`));
  });

  test('thousands of them, one after the other, fit between the bed and laying', async () => {
    const evaluation = await evaluated(drive());
    const keys = Array.from({ length: 3000 }, (_, index) => `own ${index}`);
    const tasks = keys.map((key, index) => ({
      key,
      title: key,
      hours: { value: 0.01, written: '0.01 h' },
      after: index === 0 ? (['bed'] as const) : [],
      before: [],
      afterOwn: keys.slice(Math.max(0, index - 1), index),
      beforeOwn: []
    }));
    const work = { ...evaluation.job!.work, tasks: [...tasks].reverse() };
    const ids = scheduleFor(evaluation, { work }).tasks.map(({ id }) => id);
    const begin = ids.indexOf(keys[0]!);
    expect(ids.slice(begin, begin + keys.length)).toEqual(keys);
    expect(ids[begin + keys.length]).toMatch(/^laying/);
  });
});
