// The same two jobs: what is bought at invented prices, what is carried, what is done in which order, and what to mind.
// Worked by hand from the figures of the two specs.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { NeedQuantities } from '../../../language/buying/order-contract.ts';
import type { Schedule } from '../../../language/schedule/contract.ts';
import { drain, Paving } from '../../../language/paving.ts';
import { type PricedJob, pricedJob } from '../../../language/priced-job.ts';
import { Session } from '../../../language/session/session.ts';
import { clientSheet } from '../../../language/views/text/quote/client-sheet.ts';
import type { VariantEvaluation } from '../../../language/variants.ts';
import { inMemory } from '../../language/in-memory.ts';
import { CUBIC_FOOT, CUBIC_YARD, FOOT, SHORT_TON } from '../../quantities/jobs.ts';
import { Ordered } from '../ordered.ts';
import type { Entered } from '../read.ts';
import { wholeJob } from './whole-job.ts';

/** The job as planned, and with all that its log tells. */
interface Twice {
  readonly planned: Entered;
  readonly logged: Entered;
}

async function twice(name: 'terrace' | 'drive'): Promise<Twice> {
  const logged = await wholeJob(name);
  return { planned: await logged.beforeLog(), logged };
}

function need(job: Entered, item: string, measure: string): NeedQuantities['in'][number] {
  return job.need(item)!.in.find(one => one.measure === measure)!;
}

/** Tasks in their order, with what they wait for in days. */
function orderOf({ tasks }: Schedule): string[] {
  return tasks.map(({ id, holds }) =>
    [id, ...new Set(holds.filter(({ days }) => days !== undefined).map(({ kind, days }) => `${kind} ${days}`))].join(
      ', '
    )
  );
}

/** Ids of cautions by the task that they stand at. */
function cautionsOf({ tasks }: Schedule): Readonly<Record<string, string[]>> {
  return Object.fromEntries(
    tasks.filter(({ cautions }) => cautions.length > 0).map(({ id, cautions }) => [id, cautions.map(one => one.id)])
  );
}

function caution({ tasks }: Schedule, id: string): string {
  return tasks.flatMap(({ cautions }) => cautions).find(one => one.id === id)!.text;
}

/** With its price; the jobs here tell nothing as done. */
function priced({ evaluation: { job, numbers } }: Entered): PricedJob {
  return drain(pricedJob(job!, numbers!, new Session(), 'job'));
}

function eachOnce(schedule: Schedule): void {
  const all = Object.values(cautionsOf(schedule)).flat();
  expect(new Set(all).size).toBe(all.length);
}

describe('a garden terrace, dug by hand', () => {
  let planned: Entered;
  let logged: Entered;
  let order: Ordered;
  let schedule: Schedule;
  beforeAll(async () => {
    ({ planned, logged } = await twice('terrace'));
    order = new Ordered(planned);
    schedule = planned.schedule;
  });

  it('sand: 39 bags before any allowance, 46 as it is tipped, and loose is cheaper', () => {
    expect(Math.ceil(planned.cubicFeet('bed') / 0.5)).toBe(39);
    // 19.5 cu ft x 110 / 95 = 22.6; loose from 1/2 cu yd on.
    expect(order.choice('washed-sand', 'bag')).toMatchObject({ count: 46, cost: '229.08' });
    expect(order.choice('washed-sand', 'loose')).toMatchObject({ count: 2, cost: '34.00' });
    expect(order.amount('washed-sand') / CUBIC_YARD).toBeCloseTo(1, 9);
  });

  it('stone: 8.7 short tons, 9 as it is sold, in two loads of 8', () => {
    expect(need(planned, 'crushed-stone', 'kg').wanted! / SHORT_TON).toBeCloseTo(8.74, 2);
    expect(order.amount('crushed-stone') / SHORT_TON).toBeCloseTo(9, 9);
    expect(order.loads('gravel-yard')).toBe(2);
  });

  it('stone and sand share loads: the order is told with the least that any could cost', () => {
    // 34 + 9 x 38 for stone and sand, two loads of 65; 500 USD would bring them free.
    const { total, bound, proven, delivery } = order.cost;
    expect(delivery).toBe('130.00');
    expect(total).toBe('1178.01');
    expect(Number(bound)).toBeLessThanOrEqual(Number(total));
    expect(Number(bound) / Number(total)).toBeGreaterThan(0.99);
    expect(proven).toBe(bound === total);
  });

  it('stone, with the soft spot and 8.5 short tons delivered: half a ton short, a ton at least', () => {
    const stone = need(logged, 'crushed-stone', 'kg');
    expect(stone.wanted! / SHORT_TON).toBeCloseTo(9.02, 2);
    expect(stone.delivered! / SHORT_TON).toBeCloseTo(8.5, 9);
    expect(stone.toBuy! / SHORT_TON).toBeCloseTo(0.52, 2);
    expect(new Ordered(logged).amount('crushed-stone') / SHORT_TON).toBeCloseTo(1, 9);
  });

  it('slabs: 2 % for breakage and four put by; a pallet, three layers and eleven pieces', () => {
    const { used, breakage, keep, wanted } = need(planned, 'slab-16', 'piece');
    expect({ used, breakage, keep, wanted }).toEqual({ used: 139, breakage: 3, keep: 4, wanted: 139 + 3 + 4 });
    const { order: rows, orderCost } = planned.evaluation.numbers!.quantities;
    const slabs = rows!.filter(({ item }) => item === 'slab-16').map(({ pack, count, cost }) => [pack, count, cost]);
    // 146 = 90 + 3 x 15 + 11.
    expect(slabs).toEqual([
      ['piece', 11, '43.45'],
      ['pack layer of 15', 3, '171.00'],
      ['pallet of 90', 1, '315.00']
    ]);
    expect(orderCost).toMatchObject({ deposits: '20.00' });
  });

  it('spikes have no price: all else is bought', () => {
    expect(planned.need('spikes')!.choices).toEqual([]);
    const bought = new Set(planned.evaluation.numbers!.quantities.order!.map(({ item }) => item));
    expect([...bought]).toEqual([
      'slab-16',
      'washed-sand',
      'crushed-stone',
      'separation-cloth',
      'plain-sand',
      'spiked-strip'
    ]);
  });

  it('barrows: 83 out, 85 with the soft spot, 53 of stone and 8 of sand in, 85 ft each way', () => {
    const barrows = (job: Entered): unknown[] => job.schedule.carrying.map(one => one.barrows);
    // 82.3 loose cu yd x 9, 156.1 cu ft of stone and 22.6 of sand, 3 to a barrow.
    expect(barrows(planned)).toEqual([83, 53, 8]);
    expect(barrows(logged)).toEqual([85, 53, 8]);
    expect(planned.looseCubicFeet('base') / 3).toBeCloseTo(52.04, 2);
    expect(planned.looseCubicFeet('bed') / 3).toBeCloseTo(7.52, 2);
    for (const { barrows: count, walk } of schedule.carrying) expect(walk! / FOOT).toBeCloseTo(count! * 85 * 2, 6);
  });

  it('order of work: edging after laying, tapped by hand, swept again after a week', () => {
    expect(orderOf(schedule)).toEqual([
      'locate, lead 3',
      'set-out',
      'dig',
      'cart-away',
      'buried-boxes',
      'geotextile',
      'base',
      'boxes',
      'bed',
      'laying/terrace/running-bond',
      'cutting',
      'edging-after',
      'tapping',
      'joints',
      'clean-up',
      'second-sweeping, second-sweeping 7'
    ]);
  });

  it('days are Saturdays and Sundays, from the first after what is done', () => {
    const worked = logged.schedule.tasks.flatMap(({ when }) => when ?? []);
    expect(worked.length).toBeGreaterThan(0);
    for (const { startWeekday, endWeekday } of worked) {
      expect([6, 7]).toContain(startWeekday);
      expect([6, 7]).toContain(endWeekday);
    }
    expect(logged.schedule.begins).toEqual({ on: '2026-05-10', because: 'log' });
  });

  it('cautions, each once and at its task', () => {
    eachOnce(schedule);
    expect(cautionsOf(schedule)).toEqual({
      locate: ['services'],
      dig: ['dig-near-lines'],
      'cart-away': ['waste'],
      base: ['plate', 'walls', 'fumes'],
      'laying/terrace/running-bond': ['lifting', 'pallets'],
      cutting: ['dust', 'saw', 'slurry'],
      joints: ['sand-dust']
    });
    expect(caution(schedule, 'services')).toContain('irrigation, depth not proven');
    expect(caution(schedule, 'dig-near-lines')).toContain('By hand near every line');
    expect(caution(schedule, 'dig-near-lines')).toContain('Over the dig lead: irrigation');
    const lifting = caution(schedule, 'lifting');
    for (const told of ['slab-16 weighs 42 lb', 'two people, or a carrier', 'not for laying on one']) {
      expect(lifting).toContain(told);
    }
  });
});

describe('a block drive with a turning area', () => {
  let planned: Entered;
  let logged: Entered;
  let order: Ordered;
  let schedule: Schedule;
  beforeAll(async () => {
    ({ planned, logged } = await twice('drive'));
    order = new Ordered(planned);
    schedule = planned.schedule;
  });

  it('stone: 39.1 t, 40 as it is sold; what was delivered covers it', () => {
    expect(need(planned, 'type-1', 'kg').wanted! / 1000).toBeCloseTo(39.18, 2);
    expect(order.amount('type-1')).toBeCloseTo(40_000, 6);
    expect(need(logged, 'type-1', 'kg').toBuy).toBe(0);
    expect(logged.evaluation.numbers!.quantities.order!.map(({ item }) => item)).not.toContain('type-1');
  });

  it('blocks: those of the tray are bought with the rest, 3887 in all: ten packs, or 17 more than the nine that came', () => {
    const { used, breakage, keep, toBuy } = need(planned, 'block-red', 'piece');
    expect({ used, breakage, keep, toBuy }).toEqual({ used: 3754 + 17, breakage: 76, keep: 40, toBuy: 3887 });
    expect(order.choice('block-red', 'pack')).toMatchObject({ count: 10, cost: '2120.00' });
    expect(planned.evaluation.numbers!.quantities.units.find(({ unit }) => unit === 'block-red')).toMatchObject({
      trays: 17,
      toBuy: 3887
    });
    expect(need(logged, 'block-red', 'piece')).toMatchObject({ delivered: 9 * 430, toBuy: 17 });
    const tray = planned.need('block-red')!.for.find(({ work }) => work === 'boxes');
    expect(tray).toMatchObject({ area: 'area:drive', amount: 17, from: '/boxes/0/trayUnits' });
  });

  it('the blocks of the tray cost what they are of the blocks, as work at boxes', () => {
    const { costs } = priced(planned);
    const blocks = costs!.lines.find(({ id }) => id === 'material/block-red')!;
    const [tray] = blocks.parts.filter(({ work }) => work === 'boxes');
    // 9 packs of 212 and 17 blocks of 0.68, by 17 of 2680 + 1075 + 17 used.
    expect(blocks.cost).toBe(191956n);
    expect(Number(tray!.cost)).toBeCloseTo((191956 * 17) / (2680 + 1075 + 17), -1);
  });

  it('cloth: laps by the roll that it is sold in', () => {
    const plain = planned.areas.reduce((sum, { geotextile }) => sum + (geotextile?.area ?? 0), 0);
    // 12 in of lap on rolls of 4.5 m.
    expect(need(planned, 'separation-cloth', 'm2').wanted).toBeCloseTo((plain * 4.5) / (4.5 - 0.3048), 9);
    expect(planned.need('separation-cloth')!.assumptions.join()).toContain('for rolls 4.500 m wide');
  });

  it('from cost to what is to pay: overhead of the costs, margin of the price, tax on all but the kerb crossing', () => {
    const { costs } = priced(planned);
    const all = costs!;
    const own = all.costs - all.passedOn;
    expect(all.passedOn).toBe(125_000n);
    expect(Number(all.overhead)).toBe(Math.round(Number(own) * 0.1));
    // 18 % of the price is 18/82 of what stands under it.
    expect(Number(all.profit)).toBe(Math.round((Number(own + all.overhead) * 18) / 82));
    expect(Number(all.profit) / Number(all.price - all.passedOn)).toBeCloseTo(0.18, 5);
    expect(all.price).toBe(all.costs + all.overhead + all.profit);
    expect(all.taxed).toBe(all.price - 125_000n);
    expect(Number(all.tax)).toBe(Math.round(Number(all.taxed) * 0.2));
    expect(all.total).toBe(all.price + all.tax);
    const soakaway = all.lines.find(({ title }) => title === 'Soakaway, dug and stoned')!;
    expect([soakaway.cost, soakaway.passedOn, soakaway.untaxed]).toEqual([64_000n, false, false]);
    // 6 h of one’s own task at 24 an hour.
    expect(all.lines.find(({ title }) => title === 'Labour: Soakaway')!.cost).toBe(14_400n);
  });

  it('the sheet for the client: whose it is, of what day, what is no part of it, and none of the costs behind it', () => {
    const { job, numbers, costs } = priced(planned) as Required<PricedJob>;
    const same = (words: string): string => words;
    const colours = { strong: same, faint: same, error: same, warning: same, note: same };
    const sheet = clientSheet({ job, money: job.money, numbers, costs, colours });
    expect(sheet).toContain('Price quote-1: Quarry Row drive\nClient: The household\n');
    expect(sheet).toContain('Dated 2026-03-02; holds 30 days, until 2026-04-01. All prices in GBP.');
    expect(sheet).toContain('- Work inside the footway; moving any service');
    expect(sheet).toMatch(/Dropped kerb by the road[^\n]* 1,250\.00/);
    expect(sheet).not.toMatch(/[Oo]verhead|[Mm]argin|an hour/);
  });

  it('sand: 2.44 m3 settled, 4.3 t, six bags of 850 kg', () => {
    const settled = planned.cubicFeet('bed') * CUBIC_FOOT;
    expect(settled * 1760).toBeCloseTo(need(planned, 'sharp-sand', 'kg').wanted!, 6);
    expect(order.packs('sharp-sand')).toBe(6);
  });

  it('kerb: straight pieces and pieces for curves are bought apart', () => {
    // Both curves: half a turn of 1.20 m.
    const curves = Math.PI * 1.2;
    const straight = planned.evaluation.numbers!.quantities.edging[0]!.length - curves;
    expect(need(planned, 'kerb-100 for curves', 'm').wanted).toBeCloseTo(curves, 9);
    expect(order.packs('kerb-100 for curves')).toBe(Math.ceil(curves / 0.305));
    expect(order.packs('kerb-100')).toBe(Math.ceil(straight / 0.915));
  });

  it('concrete: under and behind the kerb, and under the channel; what is not sized is said', () => {
    const concrete = need(planned, 'concrete', 'm3').wanted!;
    const kerb = planned.evaluation.numbers!.quantities.edging[0]!.concreteVolume!;
    // The channel: 0.15 m below it, and under the 0.15 m at either side.
    expect(concrete - kerb).toBeCloseTo(5.2 * (0.13 + 2 * 0.15) * 0.15, 9);
    expect(order.amount('concrete')).toBeCloseTo(2, 9);
    expect(planned.need('concrete')!.assumptions).toEqual([
      'Nothing for loss.',
      'Concrete behind last courses is not counted: its size is not said.',
      'Concrete beside garage-channel is counted below it alone: its depth is not said.'
    ]);
  });

  it('order of work: kerb, 3 days for its concrete, then the plate against it', () => {
    expect(orderOf(schedule)).toEqual([
      'locate, lead 3',
      'set-out',
      'dig',
      'job/task-1',
      'cart-away',
      'drains',
      'edging',
      'geotextile',
      'base, concrete 3',
      'boxes',
      'bed',
      'laying/drive/herringbone-45',
      'laying/drive/sailor-course',
      'laying/turning/herringbone-45',
      'cutting',
      'concrete',
      'vibrating, concrete 3',
      'joints',
      'clean-up',
      'second-sweeping, second-sweeping 7'
    ]);
    const edging = schedule.tasks.find(({ id }) => id === 'edging')!.when!;
    const base = schedule.tasks.find(({ id }) => id === 'base')!.when!;
    expect(base.startDay - edging.endDay).toBeGreaterThan(3);
    expect(schedule.tasks.find(({ id }) => id === 'job/task-1')).toMatchObject({
      title: 'Soakaway',
      hours: 6,
      after: ['dig']
    });
  });

  it('the base goes in two layers of 100 mm', () => {
    expect(schedule.tasks.find(({ id }) => id === 'base')!.title).toContain('200 mm in 2 compaction layers of 100 mm');
  });

  it('cautions, each once and at its task', () => {
    eachOnce(schedule);
    expect(cautionsOf(schedule)).toEqual({
      locate: ['services'],
      dig: ['dig-near-lines', 'public-way'],
      'cart-away': ['waste'],
      drains: ['wet-concrete'],
      edging: ['lifting'],
      base: ['plate', 'fumes'],
      'laying/drive/herringbone-45': ['lifting-often'],
      cutting: ['dust', 'saw', 'slurry'],
      joints: ['sand-dust']
    });
    expect(caution(schedule, 'waste')).toContain('registered waste carrier');
    expect(caution(schedule, 'wet-concrete')).toContain('burns skin');
    expect(caution(schedule, 'dust')).toContain('saw wet');
  });
});

describe('the drive as it would be if water went down between the blocks', () => {
  const permeable = `variant permeable {
  area drive {
    base   open-graded-stone 300 mm
    bed    grit-2-6 50 mm
    joints filled with grit-2-6
  }
  area turning {
    base   open-graded-stone 300 mm
    bed    grit-2-6 50 mm
    joints filled with grit-2-6
  }
  drain garage-channel none
}
`;

  it('stands beside the first: thicker layers, no channel, another cost and other days', async () => {
    const read = (name: string): string => readFileSync(path.join(import.meta.dirname, `${name}.paving`), 'utf8');
    const files = { 'job.paving': read('drive') + permeable, 'merchant-prices.paving': read('merchant-prices') };
    const paving = new Paving(inMemory(files));
    await paving.load('job.paving');
    const written = drain(paving.evaluate('job.paving'))!.numbers!.quantities;
    const [{ name, evaluation, priced: price }] = drain(paving.variants('job.paving')) as [VariantEvaluation];
    expect(name).toBe('permeable');
    const { materials, totals, drains, needs, units } = evaluation.numbers!.quantities;
    expect(totals.netArea).toBeCloseTo(written.totals.netArea, 9);
    expect(units).toEqual(written.units);
    const volumes = Object.fromEntries(materials.map(one => [one.material, one.compactedVolume]));
    const base = written.materials.find(({ role }) => role === 'base')!;
    // The same ground, 300 instead of 200 mm of stone and 50 instead of 30 mm of bed.
    expect(volumes['open-graded-stone']).toBeCloseTo(base.compactedVolume * 1.5, 6);
    expect(volumes['grit-2-6']).toBeCloseTo(totals.netArea * 0.05, 6);
    expect(drains ?? []).toEqual([]);
    expect(needs!.map(({ item }) => item)).not.toContain('type-1');
    // Stone, bed and joints have no price in the list: told, and left out of the cost.
    expect(price!.costs!.unpriced.map(({ title }) => title)).toEqual(
      expect.arrayContaining(['open-graded-stone', 'grit-2-6'])
    );
    expect(price!.days).toBeGreaterThan(0);
  });
});
