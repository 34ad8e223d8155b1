// Price lists as plain data: what suppliers, prices, stock and allowances come to, exact and in SI.
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import type { Given, Job } from '../../language/job/job.ts';
import type { Money, PriceList, SoldAs, SoldPacked, Stock, Supplier } from '../../language/job/prices.ts';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { evaluated, inMemory } from './in-memory.ts';

const JOB = 'job "T" { rules north-america, currency USD }\n';

async function read(text: string, others: Readonly<Record<string, string>> = {}): Promise<Evaluation & { job: Job }> {
  const evaluation = await evaluated(JOB + text, others);
  const told = evaluation.findings.filter(({ family, severity }) => family === 'fault' && severity === 'error');
  expect(told.map(({ message }) => message)).toEqual([]);
  return evaluation as Evaluation & { job: Job };
}

// ---- drawn: one line each, in SI ----

const si = ({ value }: Given): string => String(Number(value.toPrecision(9)));
const cost = ({ amount, currency }: Money): string => `${amount} ${currency}`;

function drawnWay(way: SoldAs): string {
  const said = [
    way.word === 'mixed-pack'
      ? way.holds.map(({ unit, count }) => `${si(count)} ${unit}`).join(' + ')
      : way.word === 'loose'
        ? `per ${way.per}`
        : `${si(way.holds)} ${way.measure}`,
    cost(way.price),
    ...(way.word === 'loose' && way.step !== undefined ? [`steps ${si(way.step)}`] : []),
    ...(way.least === undefined ? [] : [`least ${si(way.least)}`]),
    ...way.breaks.map(({ from, price }) => `from ${si(from)} ${cost(price)}`),
    ...(way.deposit === undefined ? [] : [`deposit ${cost(way.deposit)}`]),
    ...(way.weight === undefined ? [] : [`weighs ${si(way.weight)} kg`])
  ];
  return `${way.word}: ${said.join(', ')}`;
}

const drawn = ({ ways }: PriceList): string[] => ways.map(drawnWay);

async function waysOf(price: string, things = ''): Promise<string[]> {
  const { job } = await read(`${things}\n${price}`);
  expect(job.prices).toHaveLength(1);
  return drawn(job.prices[0]!);
}

function drawnSupplier({ name, tax, priced, delivery }: Supplier): string {
  const { charge, loadMass, loadVolume, leastMass, leastOrder, freeFrom } = delivery ?? {};
  return [
    name,
    ...(tax === undefined ? [] : [`tax ${tax}`]),
    ...(priced === undefined ? [] : [`on ${priced.on}${priced.validDays ? `, ${si(priced.validDays)} days` : ''}`]),
    ...(charge === undefined ? [] : [`a load ${cost(charge)}`]),
    ...(loadMass === undefined ? [] : [`of ${si(loadMass)} kg`]),
    ...(loadVolume === undefined ? [] : [`of ${si(loadVolume)} m3`]),
    ...(leastMass === undefined ? [] : [`least ${si(leastMass)} kg`]),
    ...(leastOrder === undefined ? [] : [`least ${cost(leastOrder)}`]),
    ...(freeFrom === undefined ? [] : [`free from ${cost(freeFrom)}`])
  ].join('; ');
}

function drawnStock({ thing, amount, measure, packs }: Stock): string {
  const inPacks = packs === undefined ? '' : ` = ${si(packs.count)} ${packs.word} x ${si(packs.holds)}`;
  return `${thing}: ${si(amount)} ${measure}${inPacks}`;
}

const SLAB = 'unit slab-16 { size 15 7/8 x 15 7/8 x 2 in }';

describe('A supplier', () => {
  test('says when its prices were told, what tax they hold, and what bringing costs', async () => {
    const { job } = await read(
      `supplier gravel-pit {
        prices   on 2026-03-01, valid 60 days
        tax      added
        delivery 65 USD a load, load 8 short ton, load 6 m3, least order 2 short ton, free from 500 USD
      }
      supplier near-by { delivery least order 100 USD }
      price crushed-stone from gravel-pit { loose for 38 USD per short ton }`
    );
    expect(job.suppliers.map(drawnSupplier)).toEqual([
      'gravel-pit; tax added; on 2026-03-01, 60 days; a load 65 USD; of 7257.47792 kg; of 6 m3; least 1814.36948 kg; free from 500 USD',
      'near-by; least 100 USD'
    ]);
    expect(job.prices[0]).toMatchObject({ thing: 'material:crushed-stone', supplier: 'supplier:gravel-pit' });
  });

  test('may be stood over by a price', async () => {
    const { job } = await read(
      `price crushed-stone { prices on 2026-03-02, tax included, according-to "Spring list", loose for 38 USD per t }`
    );
    expect(job.prices[0]).toMatchObject({ tax: 'included', priced: { on: '2026-03-02' }, from: 'Spring list' });
    expect(job.prices[0]).not.toHaveProperty('supplier');
  });
});

describe('A price', () => {
  test('of stone, loose and in bags', async () => {
    expect(
      await waysOf(`price crushed-stone {
        loose    for 38 USD per short ton, in steps of 1/2 short ton, at least 1 short ton, from 10 short ton for 35 USD per short ton
        loose    for 45 USD per m3, in steps of 0.5 m3
        bulk-bag of 850 kg for 62 USD, deposit 10 USD
        bag      of 0.5 cu ft for 4.98 USD, from 56 for 4.49 USD, weight 50 lb
      }`)
    ).toEqual([
      'loose: per kg, 1900000/45359237 USD, steps 453.59237, least 907.18474, from 9071.8474 250000/6479891 USD',
      'loose: per m3, 45 USD, steps 0.5',
      'bulk-bag: 850 kg, 62 USD, deposit 10 USD',
      'bag: 0.0141584233 m3, 4.98 USD, from 56 4.49 USD, weighs 22.6796185 kg'
    ]);
  });

  test('of units, by the piece and in packs of so many or of so much area', async () => {
    expect(
      await waysOf(
        `price slab-16 {
          piece for 3.95 USD, at least 4
          pack-layer of 15 for 57 USD, pallet of 90 for 315 USD, deposit 20 USD, weight 3900 lb
          pack of 8.6 m2 for 210 USD, box-of 6 for 22 USD
          loose for 30.25 USD per m2
        }`,
        SLAB
      )
    ).toEqual([
      'piece: 1 piece, 3.95 USD, least 4',
      'pack-layer: 15 piece, 57 USD',
      'pallet: 90 piece, 315 USD, deposit 20 USD, weighs 1769.01024 kg',
      'pack: 8.6 m2, 210 USD',
      'box-of: 6 piece, 22 USD',
      'loose: per m2, 30.25 USD'
    ]);
  });

  test('of cloth by the roll, and of edging by the length', async () => {
    const { job } = await read(
      `material kerb { role edging, size 915 x 100 x 200 mm }
      price separation-cloth { roll of 12.5 x 432 ft for 85 USD, roll of 500 sq ft for 60 USD }
      price kerb { length of 915 mm for 6.20 USD, pallet of 60 for 331 USD, loose for 3.20 USD per ft, roll of 10 m for 44 USD }`
    );
    expect(job.prices.map(drawn)).toEqual([
      ['roll: 501.676416 m2, 85 USD', 'roll: 46.45152 m2, 60 USD'],
      ['length: 0.915 m, 6.2 USD', 'pallet: 60 piece, 331 USD', 'loose: per m, 4000/381 USD', 'roll: 10 m, 44 USD']
    ]);
    const [roll] = job.prices[0]!.ways;
    expect(roll).toMatchObject({ roll: { width: { value: 3.81 }, length: { value: 131.6736 } } });
  });

  test('of packs of several sizes, under a name of its own', async () => {
    const { job } = await read(
      `${SLAB}
      unit slab-8 { size 7 7/8 x 7 7/8 x 2 in }
      price slab-mix { mixed-pack of 10 slab-16 and 5 slab-8 for 220 USD, from 3 for 200 USD, weight 600 lb }`
    );
    const [price] = job.prices;
    expect(drawn(price!)).toEqual([
      'mixed-pack: 10 unit:slab-16 + 5 unit:slab-8, 220 USD, from 3 200 USD, weighs 272.155422 kg'
    ]);
    expect(price!.name).toBe('slab-mix');
    expect(price).not.toHaveProperty('thing');
  });

  test('of concrete, which ships, or is declared by the job', async () => {
    const price = 'price concrete { loose for 140 USD per m3, in steps of 0.5 m3, bag of 25 kg for 5 USD }';
    const shipped = await read(price);
    expect(drawn(shipped.job.prices[0]!)).toEqual(['loose: per m3, 140 USD, steps 0.5', 'bag: 25 kg, 5 USD']);
    expect(shipped.job.concrete).toMatchObject({ name: 'concrete', loose: { value: 2200 } });
    const own = await read('material kerb-mix { role concrete, loose 2.1 t/m3, compacted 2.1 t/m3 }');
    expect(own.job.concrete).toMatchObject({ name: 'kerb-mix', loose: { value: 2100 } });
    expect(own.findings.filter(({ id }) => id === 'never-used')).toEqual([]);
  });

  test('may be nought, for what is given', async () => {
    expect(await waysOf('price crushed-stone { loose for 0 USD per t }')).toEqual(['loose: per kg, 0 USD']);
  });

  test('is exact: what is written comes back, and a rate is a fraction of it', async () => {
    for (const [written, per] of [
      ['0.10', '1 kg'],
      ['19.75', '1 tonne'],
      ['38', '1 short ton'],
      ['4.49', '50 lb']
    ] as const) {
      const { job } = await read(
        `price crushed-stone { loose for ${written} USD / ${per}, bag of ${per} for ${written} USD }`
      );
      const [loose, bag] = job.prices[0]!.ways as [SoldAs, SoldPacked];
      expect(new Fraction(bag.price.amount).equals(new Fraction(written))).toBe(true);
      // The masses are doubles: the price of one pack by the rate differs by no more than they do.
      const by = new Fraction(loose.price.amount).mul(bag.holds.value).valueOf();
      expect(by / Number(written)).toBeCloseTo(1, 12);
    }
  });

  test('of something that only other jobs know is passed over in a shared file, and told in the job itself', async () => {
    const shared = {
      'prices.paving': `price slab-16 { piece for 3.95 USD }
        price slab-99 { piece for 9 USD }
        price slab-mix { mixed-pack of 10 slab-16 and 5 slab-99 for 90 USD }`
    };
    const { job, findings } = await read(`use "prices.paving"\n${SLAB}`, shared);
    expect(job.prices.map(({ name }) => name)).toEqual(['slab-16']);
    expect(job.missing).toEqual([]);
    expect(findings.filter(({ file }) => file === 'prices.paving')).toEqual([]);
    const own = await evaluated(`${JOB}price slab-99 { piece for 9 USD }`);
    expect(own.findings.map(({ id }) => id)).toContain('unknown-name');
  });

  test("in a shared file is of the job's own thing before one that ships by that name", async () => {
    // What ships by that name is stone; here it is an edging, which has a length.
    const shared = { 'prices.paving': 'price type-1 { length of 915 mm for 6.20 USD }' };
    const { job } = await read('use "prices.paving"\nmaterial type-1 { role edging, width 50 mm }', shared);
    expect(job.prices.map(drawn)).toEqual([['length: 0.915 m, 6.2 USD']]);
    const { findings } = await evaluated(`${JOB}use "prices.paving"`, shared);
    expect(findings.map(({ id }) => id)).toContain('sale-does-not-fit');
  });

  test('that is faulty is missing, and takes no area and no other price with it', async () => {
    const evaluation = await evaluated(`${JOB}
      ${SLAB}
      price slab-16 { piece for 3.95 GBP }
      price crushed-stone { loose for 38 USD per short ton }
      price washed-sand { bag of 50 lb for }
      area a {
 outline rectangle 12 x 16 ft
 traffic foot
 }`);
    const { prices, missing, areas } = evaluation.job!;
    expect(prices.map(({ name }) => name)).toEqual(['crushed-stone']);
    expect(missing.map(({ name }) => name)).toEqual(['the price of slab-16', 'the price of washed-sand']);
    expect(areas).toHaveLength(1);
  });

  test('from a supplier that is faulty is missing too', async () => {
    const { job } = await evaluated(`${JOB}
      supplier yard { delivery 65 GBP a load }
      price crushed-stone from yard { loose for 38 USD per short ton }`);
    expect(job!.suppliers).toEqual([]);
    expect(job!.missing.map(({ key }) => key)).toEqual(['supplier:yard', 'price:crushed-stone@yard']);
  });
});

describe('Prices past their last day', () => {
  const text = `${JOB}price crushed-stone { prices on 2026-03-01, valid 60 days, loose for 38 USD per short ton }`;
  const told = async (today: string): Promise<string[]> => {
    const paving = new Paving(inMemory({ 'job.paving': text }), () => today);
    await paving.load('job.paving');
    return drain(paving.evaluate('job.paving'))!.findings.flatMap(({ id, line, column }) =>
      id === 'price-past' ? [`${line}:${column}`] : []
    );
  };

  test('are told from the day after', async () => {
    expect(await told('2026-04-30')).toEqual([]);
    expect(await told('2026-05-01')).toEqual(['2:23']);
  });

  test('are never told where no day passes', async () => {
    expect(await told('')).toEqual([]);
  });
});

describe('Stock and deliveries', () => {
  const things = `unit block-red { size 200 x 100 x 60 mm, pack 430 }
    material kerb { role edging, size 915 x 100 x 200 mm }
    price crushed-stone { bulk-bag of 850 kg for 62 USD }
    price block-red { pack of 500 for 250 USD, pallet of 1290 for 600 USD }
    price separation-cloth { roll of 4.5 x 100 m for 148 USD }`;

  test('are amounts, or packs by what the unit says, else by the prices', async () => {
    const { job } = await read(`${things}
      stock 12 block-red
      stock 2 pack block-red
      stock 1 pallet block-red
      stock 1 short ton crushed-stone
      stock 3 bulk-bag crushed-stone
      stock 1.5 m3 crushed-stone
      stock 1 roll separation-cloth
      stock 6 kerb
      stock 3 m kerb`);
    expect(job.stock.map(drawnStock)).toEqual([
      'unit:block-red: 12 piece',
      'unit:block-red: 860 piece = 2 pack x 430',
      'unit:block-red: 1290 piece = 1 pallet x 1290',
      'material:crushed-stone: 907.18474 kg',
      'material:crushed-stone: 2550 kg = 3 bulk-bag x 850',
      'material:crushed-stone: 1.5 m3',
      'material:separation-cloth: 450 m2 = 1 roll x 450',
      'material:kerb: 6 piece',
      'material:kerb: 3 m'
    ]);
  });

  test('by the pack count in the log, and in the working', async () => {
    const { job, numbers } = await read(`${things}
      log { 2026-04-17 delivered block-red 9 pack, batch "K-114", delivered crushed-stone 2 bulk-bag }`);
    expect(job.log).toMatchObject([
      { thing: 'unit:block-red', measure: '', amount: { value: 3870, written: '9 pack of 430' }, batch: 'K-114' },
      { thing: 'material:crushed-stone', measure: 'kg', amount: { value: 1700 } }
    ]);
    expect(numbers!.quantities.deliveries?.map(({ delivered }) => delivered)).toEqual([3870, 1700]);
    const { values } = numbers!.workings['/deliveries/0/delivered']!;
    expect(values.map(({ name, value }) => `${name} ${value}`)).toEqual([
      'packs on 2026-04-17 9',
      'one pack holds 430'
    ]);
  });
});

describe('Materials', () => {
  test('say what is bought besides the need, and how a joint filler sets', async () => {
    const { findings } = await read(
      'material yard-sand { role joint-filler, unbound, loss 5 %, moisture 4 %, settling 8 %, kept-back 20 % }'
    );
    expect(findings.map(({ id }) => id)).toEqual(['never-used']);
    const filled = async (words: string): Promise<unknown> => {
      const { job } = await read(
        `material filler { ${words} }\narea a { outline rectangle 12 x 16 ft\n joints filled with filler }`
      );
      const { allowances, unbound } = job.areas[0]!.jointFiller!;
      const shares = Object.entries(allowances ?? {}).map(([name, { value }]) => `${name} ${value}`);
      return { shares, unbound };
    };
    expect(await filled('role joint-filler, unbound, loss 5 %, moisture 4 %, settling 8 %, kept-back 20 %')).toEqual({
      shares: ['loss 0.05', 'moisture 0.04', 'settling 0.08', 'keptBack 0.2'],
      unbound: true
    });
    expect(await filled('role joint-filler, bound')).toEqual({ shares: [], unbound: false });
    expect(await filled('role joint-filler')).toEqual({ shares: [], unbound: undefined });
  });
});
