// Loads and the hours of carrying.
import { describe, expect, test } from 'vitest';
import type { Rate } from '../../language/job/work.ts';
import { tripsFor } from '../../language/schedule/carrying.ts';
import { scheduleOf } from '../../language/schedule/schedule.ts';
import {
  area,
  CUBIC_FOOT,
  CUBIC_YARD,
  FOOT,
  given,
  job,
  layer,
  LEVEL,
  LEVEL_SITE,
  numbersOf,
  rectangle
} from '../quantities/jobs.ts';
import { scheduled, taskOf } from './scheduled.ts';

function rate(task: Rate['task'], takes: number, per: Rate['per'], more: Partial<Rate> = {}): Rate {
  const name = `${task}-${per}`;
  return {
    key: `rate:${name}`,
    name,
    task,
    takes: given(takes),
    per,
    when: [],
    source: 'test',
    status: 'read',
    ...more
  };
}

/** A dig of one cubic yard loose, carted by barrow over so many feet. */
function oneCubicYard(rates: readonly Rate[]) {
  // A square yard, 1 ft deep in soil that does not swell is a third of a cubic yard; three of them.
  const site = { ...LEVEL_SITE, soil: { ...LEVEL_SITE.soil, swell: given(0) } };
  const dug = area(rectangle(9 * FOOT, 3 * FOOT), {
    site,
    finish: LEVEL,
    layers: [layer('base', FOOT, { past: given(0) })]
  });
  const of = job([dug], { carting: { digBy: 'hand', barrow: given(3 * CUBIC_FOOT), run: given(100 * FOOT) } });
  const { quantities } = numbersOf(of);
  return {
    quantities,
    schedule: scheduleOf({ job: of, quantities, work: { tasks: [], rates }, hires: [], prices: [] })
  };
}

describe('published hours', () => {
  test('O-78: 100 ft each way at 200 ft a minute, 0.75 min lost a trip: 9 trips and 15.75 min for a cubic yard', () => {
    const { quantities, schedule } = oneCubicYard([
      rate('cart-away', 0.75 / 60, 'piece'),
      rate('cart-away', 1 / (200 * FOOT) / 60, 'm')
    ]);
    expect(quantities.dig.looseVolume / CUBIC_YARD).toBeCloseTo(1, 9);
    const { working, hours } = taskOf(schedule, 'cart-away');
    expect(working.map(({ amount }) => [amount.per, amount.value])).toEqual([
      ['piece', expect.closeTo(9, 9)],
      ['m', expect.closeTo(1800 * FOOT, 6)]
    ]);
    expect(hours! * 60).toBeCloseTo(15.75, 9);
    expect((hours! * 60) / 9).toBeCloseTo(1.75, 9);
    expect(schedule.carrying[0]).toMatchObject({
      what: 'Spoil',
      barrows: 9,
      walk: expect.closeTo(1800 * FOOT, 6) as number
    });
  });

  test.each([
    ['20 cu yd in a day of 10 h', 20, 0.5],
    ['15 cu yd in a day of 10 h', 15, 0.6667]
  ])('O-79: shovelling %s', (_, aDay, hours) => {
    const { schedule } = oneCubicYard([rate('dig', 10 / (aDay * CUBIC_YARD), 'm3')]);
    expect(taskOf(schedule, 'dig').hours).toBeCloseTo(hours, 4);
  });
});

describe('trips', () => {
  test('by what a load holds or by what it may weigh, whichever is more', () => {
    expect(tripsFor({ volume: 10, mass: 17_000 }, { volume: 6, mass: 8000 })).toBe(3);
    expect(tripsFor({ volume: 20, mass: 17_000 }, { volume: 6, mass: 8000 })).toBe(4);
    expect(tripsFor({ volume: 12, mass: 16_000 }, { volume: 6 })).toBe(2);
    expect(tripsFor({ volume: 12 }, { mass: 8000 })).toBeUndefined();
  });

  test('what is full to the last digit asks for no other trip', () => {
    expect(tripsFor({ volume: 0.3 }, { volume: 0.1 })).toBe(3);
    expect(tripsFor({ volume: 0.31 }, { volume: 0.1 })).toBe(4);
  });

  test('stone and sand come in by barrow where it is dug by hand or the way of barrows is told, and by none else', async () => {
    const spec = (digBy: string): string => `job "Terrace" {
  rules north-america
  dig by ${digBy}
  access 4 ft wide, barrow run 40 ft
}
site { soil sand, winters mild, benchmark sill, ground level with sill }
unit slab { size 16 x 16 x 2 in }
area terrace {
  outline rectangle 12 x 16 ft
  traffic foot
  finish level with sill
  paving slab in running-bond
  base crushed-stone 6 in
  edges { all round meets lawn, edging spiked-strip }
}
`;
    const unsaid = spec('hand').replace('access 4 ft wide, barrow run 40 ft', '');
    expect(taskOf(await scheduled(unsaid), 'base').working.map(({ amount }) => amount.per)).toEqual([
      'm3',
      'piece',
      'kg'
    ]);
    const measures = async (digBy: string, id: string): Promise<string[]> =>
      taskOf(await scheduled(spec(digBy)), id).working.map(({ amount }) => amount.per);
    expect(await measures('hand', 'base')).toEqual(['m3', 'piece', 'm', 'kg']);
    // The digger loads what goes by barrow.
    expect(await measures('machine, 1.5 t', 'base')).toEqual(['m3', 'piece', 'm', 'm3']);
    expect(await measures('machine, 1.5 t', 'cart-away')).toEqual(['piece', 'm', 'm3']);
    const driven = spec('machine, 1.5 t').replace(', barrow run 40 ft', '');
    expect(taskOf(await scheduled(driven), 'base').working.map(({ amount }) => amount.per)).toEqual(['m3']);
  });
});
