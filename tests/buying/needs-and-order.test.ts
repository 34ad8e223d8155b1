// From a text to what is to be bought: needs with their allowances in sight, and the order that covers them.
import { describe, expect, test } from 'vitest';
import type { SoldAs } from '../../language/job/prices.ts';
import { area, given, job, layer, material, numbersOf, rectangle } from '../quantities/jobs.ts';
import { bought, linesOf, needIn, needOf, ordered } from './job-order.ts';

const SAND = 'material sand { role bed, compacted 100 lb per cu ft, loose 100 lb per cu ft }';

/** A bed alone, so large and so thick; `prices` are of its sand. */
const bed = (size: string, thickness: string, prices: string, more = ''): string =>
  `
job "Bed" { rules north-america, currency USD }
unit slab { size 12 x 12 x 2 in }
${more.includes('material sand') ? '' : SAND}
${more}
price sand { ${prices} }
area bed {
  outline rectangle ${size}
  traffic foot
  paving  slab in stack-bond, joints 0
  bed     sand ${thickness}
  base    none-there 1 in
  edges { all meets house-wall }
}`
    .replace('  base    none-there 1 in\n', '')
    .replace('edges { all meets', 'edges { the rest meets');

describe('bags', () => {
  test('O-80: a cubic yard is 54 bags of half a cubic foot (arithmetic)', async () => {
    // 27 ft x 12 ft x 1 in are 27 cubic feet.
    const job = await ordered(bed('27 x 12 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD'));
    expect(needIn(job, 'sand', 'm3').toBuy).toBeCloseTo(0.764554857984, 12);
    expect(bought(job, 'sand')).toEqual(['54 bag of 0.5 cu ft']);
    expect(linesOf(job, 'sand')[0]).toMatchObject({ cost: '268.92', proven: true });
  });

  test('P-05: a bed of 100 sq ft, 1 in, without allowance is 17 bags of half a cubic foot (arithmetic)', async () => {
    const job = await ordered(bed('10 x 10 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD'));
    expect(needIn(job, 'sand', 'm3').toBuy / 0.028316846592).toBeCloseTo(8.333, 3);
    expect(needOf(job, 'sand').assumptions).toContain('Nothing for loss.');
    expect(bought(job, 'sand')).toEqual(['17 bag of 0.5 cu ft']);
  });

  test('two more cost less where the price falls', async () => {
    const job = await ordered(bed('27 x 12 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD, from 56 for 4.49 USD'));
    expect(bought(job, 'sand')).toEqual(['56 bag of 0.5 cu ft']);
    expect(job.orderCost).toMatchObject({ total: '251.44', bound: '251.44', proven: true });
  });

  test('rounded over the whole job, not area by area', async () => {
    const job = await ordered(
      `${bed('10 x 10 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD')}
       area beside {
         outline rectangle 10 x 10 ft, corner (20, 0) ft
         traffic foot
         paving slab in stack-bond, joints 0
         bed sand 1 in
         edges { the rest meets house-wall }
       }`
    );
    // 17 for each by itself.
    expect(bought(job, 'sand')).toEqual(['34 bag of 0.5 cu ft']);
    expect(needOf(job, 'sand').for.map(({ area, from }) => `${area} ${from}`)).toEqual([
      'area:bed /areas/0/layers/0/mass',
      'area:beside /areas/1/layers/0/mass'
    ]);
  });
});

test('bagged or loose: what each costs alone and leaves, with the delivery of its own', async () => {
  const job = await ordered(
    `supplier yard { delivery 65 USD a load, load 7 cu yd }
     ${bed('27 x 12 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD')}
     price sand from yard { loose for 34 USD per cu yd, in steps of 1/2 cu yd, at least 1/2 cu yd }`
  );
  const shown = needOf(job, 'sand').choices.map(({ pack, count, cost, delivery }) => [pack, count, cost, delivery]);
  expect(shown).toEqual([
    ['bag of 0.5 cu ft', 54, '268.92', undefined],
    ['loose', 2, '34.00', '65.00']
  ]);
  expect(bought(job, 'sand')).toEqual(['2 loose']);
  expect(job.deliveryCharges).toMatchObject([{ name: 'yard', loads: 1, goods: '34.00', cost: '65.00' }]);
  expect(job.orderCost).toMatchObject({ goods: '34.00', delivery: '65.00', total: '99.00', proven: true });
});

test('O-28: 1,000 cu yd in place, 30 % more loose, loads of 7 cu yd: 186 loads (construction estimating textbook)', async () => {
  // 90 ft x 100 ft x 3 ft are 1,000 cubic yards.
  const job = await ordered(
    bed(
      '90 x 100 ft',
      '3 ft',
      'bag of 1 cu yd for 999 USD',
      'material sand { role bed, compaction-factor 1.3 }'
    ).replace(
      'price sand {',
      `supplier pit { delivery 50 USD a load, load 7 cu yd }
       price sand from pit { loose for 10 USD per cu yd, in steps of 1 cu yd }
       price sand {`
    )
  );
  expect(needIn(job, 'sand', 'm3').toBuy / 0.764554857984).toBeCloseTo(1300, 9);
  expect(bought(job, 'sand')).toEqual(['1300 loose']);
  expect(job.deliveryCharges).toMatchObject([{ loads: 186, cost: '9300.00' }]);
});

describe('allowances in sight', () => {
  const POUND = 0.45359237;

  test('loss of all, water by mass, settling by volume', async () => {
    const job = await ordered(
      bed(
        '27 x 12 ft',
        '1 in',
        'bag of 50 lb for 4 USD',
        'material sand { role bed, compacted 110 lb per cu ft, loose 100 lb per cu ft, loss 5 %, moisture 4 %, settling 8 % }'
      )
    );
    const mass = needIn(job, 'sand', 'kg');
    expect(mass.used! / POUND).toBeCloseTo(2970, 6);
    expect(mass.loss! / POUND).toBeCloseTo(148.5, 6);
    expect(mass.moisture! / POUND).toBeCloseTo(0.04 * 3118.5, 6);
    expect(mass.wanted / POUND).toBeCloseTo(1.04 * 3118.5, 6);
    const loose = needIn(job, 'sand', 'm3');
    expect(loose.used! / 0.028316846592).toBeCloseTo(29.7, 6);
    expect(loose.wanted / 0.028316846592).toBeCloseTo((29.7 * 1.05) / 0.92, 6);
  });

  test('filler kept back for the second sweeping, of what is unbound', async () => {
    const job = await ordered(
      bed('10 x 10 ft', '1 in', 'bag of 50 lb for 4 USD').replace(
        'joints 0',
        'joints 1/8 in\n  joints filled with fine-sand'
      ) + '\nmaterial fine-sand { role joint-filler, unbound, loose 100 lb per cu ft, kept-back 20 % }'
    );
    const { used, keptBack, wanted } = needIn(job, 'fine-sand', 'kg');
    expect(keptBack).toBeCloseTo(0.2 * used!, 9);
    expect(wanted).toBeCloseTo(1.2 * used!, 9);
  });

  test('breakage and what is put by, of units', async () => {
    const job = await ordered(
      bed('10 x 10 ft', '1 in', 'bag of 50 lb for 4 USD').replace(
        'currency USD',
        'currency USD, breakage 2 %, keep 4 slab'
      ) + '\nprice slab { piece for 3.95 USD, pack-layer of 15 for 57 USD }'
    );
    expect(needIn(job, 'slab', 'piece')).toMatchObject({ used: 100, breakage: 2, keep: 4, toBuy: 106 });
    // Seven layers of 15 and one more, not eight layers.
    expect(bought(job, 'slab')).toEqual(['1 piece', '7 pack layer of 15']);
  });
});

test('what is on hand and what came already count against the need, whatever they are measured in', async () => {
  const job = await ordered(
    `${bed('27 x 12 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD')}
     stock 200 lb sand
     log { 2026-04-25 delivered sand 5 cu ft }`
  );
  const { wanted, onHand, delivered, toBuy } = needIn(job, 'sand', 'm3');
  const FOOT = 0.028316846592;
  expect([wanted, onHand, delivered, toBuy].map(amount => amount! / FOOT)).toEqual(
    [27, 2, 5, 20].map(amount => expect.closeTo(amount, 9))
  );
  expect(bought(job, 'sand')).toEqual(['40 bag of 0.5 cu ft']);
});

test('enough on hand: nothing is bought', async () => {
  const job = await ordered(`${bed('10 x 10 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD')}\nstock 5 short ton sand`);
  expect(needIn(job, 'sand', 'kg').toBuy).toBe(0);
  expect(job.order).toBeUndefined();
});

test('no density: what is sold by mass is left out, and that is said', () => {
  const sand = material('sand', 'bed', { compactionFactor: given(1.2) });
  const price = { amount: '4', currency: 'USD', written: '4 USD' };
  const bag = (key: string, holds: number, measure: 'm3' | 'kg'): SoldAs => ({
    key,
    word: 'bag',
    holds: { value: holds, written: `${holds} ${measure}` },
    measure,
    price,
    breaks: []
  });
  const { quantities } = numbersOf(
    job([area(rectangle(5, 2), { layers: [layer('bed', 0.03, { material: sand })] })], {
      prices: [
        {
          key: 'price:sand',
          thing: sand.key,
          name: 'sand',
          ways: [bag('by-volume', 0.1, 'm3'), bag('by-mass', 1000, 'kg')]
        }
      ]
    })
  );
  expect(needOf(quantities, 'sand').in).toEqual([{ measure: 'm3', used: 0.36, wanted: 0.36, toBuy: 0.36 }]);
  expect(needOf(quantities, 'sand').assumptions).toContain(
    'Its densities are not known: only what is sold by volume can be compared.'
  );
  expect(bought(quantities, 'sand')).toEqual(['4 bag of 0.1 m3']);
  expect(quantities.orderAssumptions).toEqual([
    'Bag of 1000 kg of sand is left out: the mass of what is needed is not known; give its densities.'
  ]);
});

test('deposits stand apart from what it costs', async () => {
  const job = await ordered(
    `${bed('10 x 10 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD')}
     price slab { pallet of 50 for 150 USD, deposit 20 USD, weight 1000 lb }`
  );
  expect(linesOf(job, 'slab')[0]).toMatchObject({ count: 2, cost: '300.00', deposit: '40.00', proven: true });
  expect(job.orderCost).toMatchObject({ total: '384.66', deposits: '40.00' });
});

test('a price missing leaves everything else priced, with one note', async () => {
  const job = await ordered(bed('10 x 10 ft', '1 in', 'bag of 0.5 cu ft for 4.98 USD'));
  expect(job.order!.map(({ item }) => item)).toEqual(['sand']);
  expect(needOf(job, 'slab').choices).toEqual([]);
});

describe('edging, cloth, concrete', () => {
  const JOB = `
job "Path" { rules britain, currency GBP }
unit block { size 200 x 100 x 60 mm }
material kerb {
  role edging
  size 915 x 100 x 200 mm
  concrete 300 x 100 mm below
  haunch 100 x 75 mm behind
}
area path {
  outline rectangle 10 x 2 m
  traffic foot
  paving  block in stack-bond, joints 0
  bed     sharp-sand 30 mm
  base    type-1 100 mm
  geotextile cloth
  edges { near meets lawn, edging kerb set before laying; the rest meets house-wall }
}
material cloth { role geotextile, roll 4.5 x 100 m, lap 0.3 m }
`.replace('; the rest', '\n          the rest');

  test('kerbs by the piece and by the length, concrete loose or bagged', async () => {
    const job = await ordered(`${JOB}
price kerb { length of 915 mm for 6.20 GBP }
price concrete { loose for 140 GBP per m3, in steps of 0.5 m3, at least 1 m3
  bag of 25 kg for 4.90 GBP }
price cloth { roll of 4.5 x 25 m for 40 GBP }`);
    // 10 m of kerb: 10.93 pieces; (0.3 x 0.1 + 0.1 x 0.075) m2 x 10 m of concrete.
    expect(needIn(job, 'kerb', 'm').toBuy).toBeCloseTo(10, 9);
    expect(bought(job, 'kerb')).toEqual(['11 length of 915 mm']);
    expect(needIn(job, 'concrete', 'm3').toBuy).toBeCloseTo(0.375, 9);
    expect(needIn(job, 'concrete', 'kg').toBuy).toBeCloseTo(825, 6);
    expect(needOf(job, 'concrete').choices.map(({ pack, count, cost }) => [pack, count, cost])).toEqual([
      ['loose', 2, '140.00'],
      ['bag of 25 kg', 33, '161.70']
    ]);
    expect(bought(job, 'concrete')).toEqual(['2 loose']);
    expect(bought(job, 'cloth')).toEqual(['1 roll of 4.5 x 25 m']);
    expect(needOf(job, 'kerb').for).toMatchObject([{ area: 'area:path', work: 'edging', amount: 10, measure: 'm' }]);
  });
});

test('spikes of two edgings are one need, and rounded to boxes over the job', async () => {
  const job = await ordered(`
job "Path" { rules north-america, currency USD }
unit slab { size 12 x 12 x 2 in }
material straight { role edging, width 0 in, spikes every 12 in }
material bent { role edging, width 0 in, spikes every 8 in }
price spikes { box-of 50 for 18.40 USD }
stock 5 spikes
area path {
  outline rectangle 24 x 10 ft
  traffic foot
  paving slab in stack-bond, joints 0
  edges { near meets lawn, edging straight
          far meets lawn, edging bent
          the rest meets house-wall }
}`);
  const [first, ...others] = job.needs!.filter(({ kind }) => kind === 'spikes');
  expect(others).toEqual([]);
  expect(first!.for).toHaveLength(2);
  const spikes = job.areas[0]!.edging.map(one => one.spikes!);
  expect(first!.in).toMatchObject([{ used: spikes[0]! + spikes[1]!, toBuy: spikes[0]! + spikes[1]! - 5 }]);
  expect(spikes[0]! + spikes[1]!).toBeGreaterThan(50);
  expect(bought(job, 'spikes')).toEqual(['2 box of 50']);
});

test('of several sizes in one pack: P-22, a pack of 10, 5 and 5, need 34, 16, 18: 4 packs (arithmetic)', async () => {
  // 34 on 17 x 2, 16 on 8 x 2, 18 on 9 x 2 slabs.
  const row = (name: string, long: number, unit: string, x: number): string => `
area ${name} {
  outline rectangle ${long} x 2 ft, corner (0, ${x}) ft
  traffic foot
  paving ${unit} in stack-bond, joints 0
  edges { the rest meets house-wall }
}`;
  const job = await ordered(`
job "Sizes" { rules north-america, currency USD }
unit cobble-a { size 12 x 12 x 2 in }
unit cobble-b { size 12 x 12 x 2 in }
unit cobble-c { size 12 x 12 x 2 in }
price cobble-mix { mixed-pack of 10 cobble-a and 5 cobble-b and 5 cobble-c for 220 USD }
${row('a', 17, 'cobble-a', 0)}${row('b', 8, 'cobble-b', 10)}${row('c', 9, 'cobble-c', 20)}`);
  expect(job.order!.map(({ item, need, count, left, cost }) => [item, need, count, left, cost])).toEqual([
    ['cobble-a', 34, 4, 6, '880.00'],
    ['cobble-b', 16, 4, 4, undefined],
    ['cobble-c', 18, 4, 2, undefined]
  ]);
  expect(job.orderCost).toMatchObject({ total: '880.00', proven: true });
});

describe('tax', () => {
  const STORE = (terms: string): string => `supplier store { tax included${terms} }
    price slab from store { piece for 12 USD }`;

  test('prices with tax in and prices without come to sums on one basis: total, bound, choices, lines', async () => {
    const job = await ordered(
      bed('10 x 10 ft', '1 in', 'tax added\n bag of 0.5 cu ft for 5 USD', STORE('')).replace(
        'currency USD',
        'currency USD, tax 20 %'
      )
    );
    // 100 slabs at 10 without tax, 17 bags at 5.
    expect(linesOf(job, 'slab')).toMatchObject([{ cost: '1000.00', tax: 'taken-off' }]);
    expect(needOf(job, 'slab').choices).toMatchObject([{ cost: '1000.00', tax: 'taken-off' }]);
    expect(job.orderCost).toMatchObject({ tax: 'without', goods: '1085.00', total: '1085.00', bound: '1085.00' });
  });

  test('all alike: as they stand', async () => {
    const job = await ordered(bed('10 x 10 ft', '1 in', 'tax included\n bag of 0.5 cu ft for 6 USD', STORE('')));
    expect(job.orderCost).toMatchObject({ tax: 'with', total: '1302.00' });
  });

  test('what its supplier takes no such order of says so', async () => {
    const job = await ordered(
      `supplier far { delivery 10 USD a load, least order 5000 USD }
       ${bed('10 x 10 ft', '1 in', 'bag of 0.5 cu ft for 5 USD')}
       price sand from far { bag of 0.5 cu ft for 4 USD }`
    );
    expect(needOf(job, 'sand').choices).toMatchObject([{ cost: '85.00' }, { cost: '68.00', notTaken: 'least-order' }]);
    expect(needOf(job, 'sand').choices[1]!.delivery).toBeUndefined();
  });
});
