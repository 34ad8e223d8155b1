// Costs and prices: what is published, what is plain arithmetic, and what always holds.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costsOf, type Costs } from '../../language/pricing/costs.ts';
import { sumOf } from '../../language/money/money.ts';
import { costsJson } from '../../language/views/json/costs-json.ts';
import { SQUARE_FOOT } from '../quantities/jobs.ts';
import { evaluateFormula } from '../quantities/evaluate-formula.ts';
import { costs, extra, inputs, item, line, money, share, task, text } from './inputs.ts';

const area = (squareFeet: number) => [
  { key: 'area:patio', name: 'patio', netArea: squareFeet * SQUARE_FOOT, pointer: '/areas/0/netArea' }
];

/** Stone by the cubic yard under so many square feet, so deep. */
const stone = (squareFeet: number, inches: number, price: number) => ({
  system: 'imperial' as const,
  areas: area(squareFeet),
  // 324 square feet an inch deep are a cubic yard.
  ordered: [item('stone', `${Math.round(squareFeet * inches * price * 100)}/32400`)]
});

// Concrete Construction: Methods and Costs, 1908 (public domain), ch. XV.
describe('what a square foot costs', () => {
  // O-52: 27 cents per cu yd, 12 in deep: 1.0 cent per sq ft.
  test('of a foot of stone at 27 cents a cubic yard: one cent', () => {
    const { perUnit, costs: all } = costs(stone(100, 12, 0.27));
    expect(text(all)).toBe('1.00');
    expect(text(perUnit!.costs)).toBe('0.01');
  });

  // O-53: 0.65 + 1.20 + 3.60 + 1.35 + 0.60 + 1.60 = 9.00 cents per sq ft; here of 100 sq ft.
  test('is the sum of its lines', () => {
    const { perUnit, costs: all } = costs({
      system: 'imperial',
      areas: area(100),
      ordered: ['0.65', '1.20', '3.60', '1.35', '0.60', '1.60'].map((price, index) => item(`line-${index}`, price))
    });
    expect(text(all)).toBe('9.00');
    expect(text(perUnit!.costs)).toBe('0.09');
  });

  // O-54: gravel at 1.00 per cu yd, 4 in deep: 1.2 cents as printed, 1.2346 exactly; here of 10,000 sq ft.
  test('of 4 in of gravel at 1.00 a cubic yard: 1.2346 cents', () => {
    const { perUnit, costs: all } = costs(stone(10_000, 4, 1));
    expect(text(all)).toBe('123.46');
    expect(text(perUnit!.costs)).toBe('0.01');
  });
});

describe('overhead, margin and markup', () => {
  const thousand = { ordered: [item('stone', '1000')] };

  // P-21: plain arithmetic.
  test('25 % markup on 1,000 is 1,250.00, 25 % margin is 1,333.33', () => {
    expect(text(costs({ ...thousand, money: { profit: { way: 'markup', share: share(0.25) } } }).price)).toBe(
      '1250.00'
    );
    expect(text(costs({ ...thousand, money: { profit: { way: 'margin', share: share(0.25) } } }).price)).toBe(
      '1333.33'
    );
  });

  test('a margin is of costs and overhead, and tax comes on top of all of it', () => {
    const { overhead, profit, price, tax, total } = costs({
      ...thousand,
      money: { overhead: share(0.1), profit: { way: 'margin', share: share(0.18) }, tax: share(0.2) }
    });
    // 1,100 / 0.82 = 1,341.463…; a fifth of 1,341.46 is 268.292.
    expect([overhead, profit, price, tax, total].map(text)).toEqual([
      '100.00',
      '241.46',
      '1341.46',
      '268.29',
      '1609.75'
    ]);
  });

  test('a margin of all of the price is no price', () => {
    const { unpriced, profit } = costs({ ...thousand, money: { profit: { way: 'margin', share: share(1) } } });
    expect(unpriced).toEqual([
      { title: 'Margin', because: 'a margin is a share of the price, less than all of it', inside: true }
    ]);
    expect(profit).toBe(0n);
  });

  test('what is taken off comes off the price as written, before tax: nothing comes on top, no share is of it', () => {
    const {
      costs: direct,
      passedOn,
      takenOff,
      price,
      tax,
      total,
      parts,
      lines
    } = costs({
      ...thousand,
      money: {
        contingency: { share: share(0.1), of: 'costs' },
        profit: { way: 'margin', share: share(0.2) },
        tax: share(0.2),
        extras: [extra('Discount', money('-500'))]
      }
    });
    // (1,000 + 100) / 0.8 = 1,375, less 500.
    expect([direct, passedOn, takenOff, price, tax, total].map(text)).toEqual([
      '1100.00',
      '0.00',
      '-500.00',
      '875.00',
      '175.00',
      '1050.00'
    ]);
    expect(lines.find(({ title }) => title === 'Discount')).toMatchObject({ kind: 'taken-off', passedOn: true });
    expect(text(parts.find(({ line }) => line.title === 'Discount')!.price)).toBe('-500.00');
    expect(sumOf(parts.map(part => part.price))).toBe(price);
  });

  test('that labour and extras are taken as without tax is said once, where there is a tax', () => {
    const words = { labour: money('30'), extras: [extra('Permit', money('100'))] };
    const asked = { tasks: [task('Dig', 8), task('Base', 2)], money: words };
    const said = 'Prices of labour and extras are taken as without tax.';
    expect(costs({ ...asked, money: { ...words, tax: share(0.2) } }).assumed.filter(one => one === said)).toHaveLength(
      1
    );
    expect(costs(asked).assumed).not.toContain(said);
  });

  test('a line without margin is passed on at cost, one without tax bears none', () => {
    const { price, passedOn, taxed, tax, total, parts } = costs({
      ...thousand,
      money: {
        overhead: share(0.1),
        profit: { way: 'margin', share: share(0.5) },
        tax: share(0.2),
        extras: [
          extra('Dropped kerb', money('1250'), { untaxed: true, noMargin: true }),
          extra('Permit', money('100'), { untaxed: true })
        ]
      }
    });
    // (1,000 + 100) × 1.1 / 0.5 = 2,420, and 1,250; of the 2,420 the permit bears an eleventh.
    expect([price, passedOn, taxed, tax, total].map(text)).toEqual([
      '3670.00',
      '1250.00',
      '2200.00',
      '440.00',
      '4110.00'
    ]);
    expect(parts.map(part => text(part.price))).toEqual(['2200.00', '1250.00', '220.00']);
  });

  // A public schedule of rates for 100 sq ft of blocks, with its own figures: profit 10 % and overhead 3.5 %, both of
  // the costs, and a factor of 1.08108 for tax.
  test('shares of the costs do not stand on one another', () => {
    const { price, total, perUnit } = costs({
      system: 'imperial',
      areas: area(100),
      ordered: [item('all', '14856')],
      money: {
        extras: [
          extra('Profit', { share: share(0.1), of: 'costs' }),
          extra('Overhead', { share: share(0.035), of: 'costs' })
        ],
        tax: share(0.08108)
      }
    });
    expect(text(price)).toBe('16861.56');
    expect(text(total)).toBe('18228.70');
    expect(text(perUnit!.total)).toBe('182.29');
  });
});

describe('tax in prices', () => {
  test('is taken off where the job puts it on the price once', () => {
    const {
      costs: all,
      total,
      assumed
    } = costs({
      ordered: [item('stone', '0', { lines: [line('120', 'included')] }), item('sand', '100')],
      money: { tax: share(0.2) }
    });
    expect(text(all)).toBe('200.00');
    expect(text(total)).toBe('240.00');
    expect(assumed).toEqual(['Tax of 20 % is taken off prices that have it in, and put on the price once.']);
  });

  test('is told where the job says none', () => {
    const {
      costs: all,
      total,
      assumed
    } = costs({
      ordered: [item('stone', '0', { lines: [line('120', 'included')] }), item('sand', '100')]
    });
    expect(text(all)).toBe('220.00');
    expect(text(total)).toBe('220.00');
    expect(assumed).toEqual(['Tax comes on top of the price of sand; the job says no tax, so it is not in.']);
  });

  test('is told where it is not said whether it is in', () => {
    const stoneBought = item('stone', '0', { lines: [line('120', 'not said')] });
    const { assumed } = costs({ ordered: [stoneBought], money: { tax: share(0.2) } });
    expect(assumed).toEqual(['Whether tax is in the price of stone is not said; taken as without.']);
  });
});

describe('what has no price', () => {
  test('is left out and told, and everything else is priced', () => {
    const { lines: _lines, ...withoutPrice } = item('cloth', '0');
    const { lines, unpriced, price } = costs({
      ordered: [withoutPrice, item('stone', '80'), item('on-hand', '0', { lines: [] })],
      tasks: [task('Dig', 8), task('Base', 6.5), task('Laying', undefined)],
      takenAway: { looseVolume: 8, mass: 12_000, shares: [] },
      hires: [{ hire: { key: 'hire:1', title: 'Plate', charge: money('45'), by: 'day', tasks: [] } }],
      money: {
        extras: [extra('Permit', money('60', 'EUR'))],
        contingency: { share: share(0.1), of: 'labour' }
      }
    });
    expect(lines.map(({ id }) => id)).toEqual(['material/stone']);
    expect(text(price)).toBe('80.00');
    expect(unpriced.map(({ title, because }) => `${title}: ${because}`)).toEqual([
      'cloth: no price',
      'Labour: Laying: no rate tells how long it takes',
      'Labour: 14.5 hours and no price of an hour: `labour` tells it',
      'Hire: Plate: nothing tells for how many days',
      'Taking away what is dug: no price: `disposal` tells it',
      'Permit: its price is in EUR, the job counts in USD',
      'Contingency: it is a share of labour, and none of these is priced'
    ]);
  });

  test('and where nothing names money there are no costs', () => {
    const { currency: _currency, ...nothing } = inputs({ tasks: [task('Dig', 8)] });
    expect(costsOf(nothing)).toBeUndefined();
    const extras = [extra('Permit', money('60', 'EUR'))];
    expect(costsOf({ ...nothing, money: { ...nothing.money, extras } })!.currency).toBe('EUR');
  });
});

describe('hours, hires and what is taken away', () => {
  test('hours at the price of an hour, by place', () => {
    const { lines, areas, tasks } = costs({
      areas: ['a', 'b'].map((name, index) => ({
        key: `area:${name}`,
        name,
        netArea: 10,
        pointer: `/areas/${index}/netArea`
      })),
      tasks: [
        task('dig', 10, {
          task: 'dig',
          shares: [
            { area: 'area:a', amount: 4 },
            { area: 'area:b', amount: 6 }
          ]
        }),
        task('edging', 1.5, { task: 'edging', shares: [{ area: 'area:b', edge: 'A to B', amount: 1 }] }),
        task('Soakaway', 6)
      ],
      money: { labour: money('24') }
    });
    expect(lines.map(({ title, cost }) => [title, text(cost)])).toEqual([
      ['Labour: dig', '240.00'],
      ['Labour: edging', '36.00'],
      ['Labour: Soakaway', '144.00']
    ]);
    expect(areas.map(({ cost }) => text(cost))).toEqual(['96.00', '180.00']);
    expect(areas[1]!.edges.map(({ edge, cost }) => [edge, text(cost)])).toEqual([['A to B', '36.00']]);
    expect(tasks.map(({ task: word, cost }) => [word, text(cost)])).toEqual([
      ['dig', '240.00'],
      ['edging', '36.00']
    ]);
  });

  test.each([
    ['day', 3, 9, '135.00'],
    ['week', 3, 7, '45.00'],
    ['week', 3, 8, '90.00'],
    ['job', undefined, undefined, '45.00'],
    ['job', 0, 0, '45.00']
  ] as const)('hire by the %s, %s days of work within %s', (by, days, span, cost) => {
    const hire = { key: 'hire:1', title: 'Plate', charge: money('45'), by, tasks: [] };
    const hired = { hire, ...(days === undefined ? {} : { days, span }) };
    expect(text(costs({ hires: [hired] }).costs)).toBe(cost);
  });

  test.each(['day', 'week'] as const)('hire by the %s for no task, and no day of work: told, not lost', by => {
    const hire = { key: 'hire:1', title: 'Plate', charge: money('45'), by, tasks: [] };
    expect(costs({ hires: [{ hire, days: 0, span: 0 }] }).unpriced).toMatchObject([
      { title: 'Hire: Plate', because: 'nothing tells for how many days' }
    ]);
    const forTask = { ...hire, tasks: ['dig'] };
    expect(costs({ hires: [{ hire: forTask, days: 0, span: 0 }] }).unpriced).toEqual([]);
  });

  const taken = { looseVolume: 13, mass: 17_000, loads: 3, shares: [] };
  test.each([
    ['7/250', 'kg', {}, '476.00'],
    ['30', 'm3', {}, '390.00'],
    ['95', 'load', {}, '285.00'],
    // 3 by volume, 3 by mass; with 5 t a container 4 by mass.
    ['290', 'container', { volume: 6, mass: 8000 }, '870.00'],
    ['290', 'container', { volume: 6, mass: 5000 }, '1160.00'],
    ['290', 'container', { volume: 13 }, '290.00']
  ] as const)('%s for a %s %j', (amount, by, { volume, mass }: { volume?: number; mass?: number }, cost) => {
    const disposal = {
      key: 'job/disposal',
      charge: money(amount),
      by,
      ...(volume === undefined ? {} : { volume: { value: volume, written: `${volume} m3` } }),
      ...(mass === undefined ? {} : { mass: { value: mass, written: `${mass} kg` } })
    };
    expect(text(costs({ takenAway: taken, money: { disposal } }).costs)).toBe(cost);
  });

  test('loads that nobody counts have no price', () => {
    const { loads: _loads, ...uncounted } = taken;
    const disposal = { key: 'job/disposal', charge: money('95'), by: 'load' as const };
    const { unpriced, lines } = costs({ takenAway: uncounted, money: { disposal } });
    expect(lines).toEqual([]);
    expect(unpriced[0]!.because).toContain('`truck-load`');
  });
});

describe('deposits and contingency', () => {
  test('a deposit is given back: no cost', () => {
    const lines = [line('945', 'added', '60')];
    const { costs: all, deposits } = costs({ ordered: [item('slab-16', '0', { lines })] });
    expect(text(all)).toBe('945.00');
    expect(text(deposits)).toBe('60.00');
  });

  test('contingency of the materials goes where they go', () => {
    const shares = [
      { area: 'area:patio', work: 'base' as const, amount: 2 },
      { area: 'area:patio', work: 'bed' as const, amount: 1 }
    ];
    const { areas, lines } = costs({
      ordered: [item('stone', '300', { shares })],
      tasks: [task('Soakaway', 6)],
      money: { labour: money('10'), contingency: { share: share(0.08), of: 'materials' } }
    });
    expect(text(lines.at(-1)!.cost)).toBe('24.00');
    expect(areas[0]!.works.map(({ work, cost }) => [work, text(cost)])).toEqual([
      ['base', '216.00'],
      ['bed', '108.00']
    ]);
  });
});

describe('always', () => {
  const cents = fc.integer({ min: 0, max: 500_000 }).map(all => (all / 100).toFixed(2));
  const percent = fc.integer({ min: 0, max: 900 }).map(all => share(all / 1000));
  const works = fc.constantFrom('base' as const, 'bed' as const, 'paving' as const, 'edging' as const);
  const areaKeys = fc.constantFrom('area:a', 'area:b', 'area:c');
  const shares = fc.array(
    fc.record({ area: areaKeys, work: works, amount: fc.integer({ min: 0, max: 5000 }).map(all => all / 77) }),
    { maxLength: 6 }
  );
  const ordered = fc
    .array(
      fc.tuple(fc.array(fc.tuple(cents, fc.constantFrom('included', 'added', 'not said')), { maxLength: 3 }), shares),
      { maxLength: 6 }
    )
    .map(all =>
      all.map(([lines, to], index) =>
        item(`thing-${index}`, '0', {
          shares: to,
          lines: lines.map(([cost, tax]) => line(cost, tax, '2.50'))
        })
      )
    );
  const tasks = fc.array(fc.tuple(fc.double({ min: 0.01, max: 60, noNaN: true }), shares), { maxLength: 5 }).map(all =>
    all.map(([hours, to], index) =>
      task(`task-${index}`, hours, {
        ...(index % 2 === 0 ? { task: 'laying' as const } : {}),
        shares: to.map(({ area: key, amount }) => ({ area: key, edge: 'A to B', amount }))
      })
    )
  );
  const extras = fc
    .array(fc.tuple(cents, percent, fc.boolean(), fc.boolean(), fc.boolean()), { maxLength: 4 })
    .map(all =>
      all.map(([amount, part, isShare, untaxed, noMargin], index) =>
        extra(`Extra ${index}`, isShare ? { share: part, of: 'costs' } : money(amount), { untaxed, noMargin })
      )
    );
  const jobs = fc
    .record({
      ordered,
      tasks,
      extras,
      labour: cents,
      overhead: percent,
      profit: percent,
      way: fc.constantFrom('margin' as const, 'markup' as const),
      tax: percent,
      contingency: percent
    })
    .map(({ ordered: things, tasks: work, extras: own, labour, overhead, profit, way, tax, contingency }) =>
      inputs({
        ordered: things,
        tasks: work,
        system: 'imperial',
        areas: ['a', 'b', 'c'].map((name, index) => ({
          key: `area:${name}`,
          name,
          netArea: 4.5 * (index + 1),
          pointer: `/areas/${index}/netArea`
        })),
        deliveries: [{ supplier: 'supplier:pit', name: 'pit', ...line('130', 'not said') }],
        takenAway: { looseVolume: 7.1, mass: 9_300, shares: [{ area: 'area:b', amount: 7.1 }] },
        money: {
          labour: money(labour),
          disposal: { key: 'job/disposal', charge: money('7/250'), by: 'kg' },
          extras: own,
          overhead,
          profit: { way, share: profit },
          tax,
          contingency: { share: contingency, of: 'materials' }
        }
      })
    );
  const RUNS = { seed: 5254, numRuns: 60 };

  test('sums equal their parts to the last digit', () => {
    fc.assert(
      fc.property(jobs, job => {
        const all = costsOf(job)!;
        const of = (key: 'cost' | 'price', list: readonly { cost: bigint; price: bigint }[]): bigint =>
          sumOf(list.map(each => each[key]));
        for (const line of all.lines) expect(sumOf(line.parts.map(({ cost }) => cost))).toBe(line.cost);
        expect(sumOf(all.lines.map(({ cost }) => cost))).toBe(all.costs);
        expect(sumOf(all.kinds.map(({ cost }) => cost))).toBe(all.costs);
        expect(of('cost', all.parts)).toBe(all.costs);
        expect(of('price', all.parts)).toBe(all.price);
        for (const key of ['cost', 'price'] as const) {
          const whole = key === 'cost' ? all.costs : all.price;
          expect(of(key, all.areas) + of(key, all.wholeJob)).toBe(whole);
          for (const each of all.areas) expect(of(key, each.works)).toBe(each[key]);
        }
        expect(all.costs + all.overhead + all.profit).toBe(all.price);
        expect(all.price + all.tax).toBe(all.total);
        const untaxed = all.parts.filter(({ line }) => line.untaxed);
        expect(all.taxed + of('price', untaxed)).toBe(all.price);
      }),
      RUNS
    );
  });

  test('every working comes to its amount, and every value in it stands where it says', () => {
    fc.assert(
      fc.property(jobs, job => {
        const all = costsOf(job)!;
        const json = { costs: costsJson(all) };
        for (const [pointer, working] of Object.entries(all.workings)) {
          const amount = Number(at(json, pointer));
          expect(Math.abs(evaluateFormula(working) - amount), `${pointer}: ${working.formula}`).toBeLessThan(1e-6);
          for (const { from, value } of working.values)
            if ('pointer' in from && from.pointer.startsWith('/costs/'))
              expect(Math.abs(Number(at(json, from.pointer)) - value), from.pointer).toBeLessThan(1e-6);
        }
      }),
      RUNS
    );
  });

  test('the order of things changes no total', () => {
    fc.assert(
      fc.property(jobs, job => {
        const totals = ({ costs: direct, price }: Costs) => [direct, price];
        const turned = { ...job, ordered: job.ordered.toReversed(), tasks: job.tasks.toReversed() };
        const [there, back] = [costsOf(job)!, costsOf(turned)!];
        expect(totals(back)).toEqual(totals(there));
      }),
      RUNS
    );
  });
});

/** What stands at a JSON pointer. */
function at(json: unknown, pointer: string): unknown {
  return pointer
    .split('/')
    .slice(1)
    .reduce<unknown>((holder, key) => (holder as Record<string, unknown>)[key], json);
}
