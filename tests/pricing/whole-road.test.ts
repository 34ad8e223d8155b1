// From the text of a job over its order and schedule to costs and price.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { drain, type Evaluation } from '../../language/paving.ts';
import { minorOf, sumOf } from '../../language/money/money.ts';
import { type PricedJob, pricedJob } from '../../language/priced-job.ts';
import { Session } from '../../language/session/session.ts';
import { evaluateFormula } from '../quantities/evaluate-formula.ts';
import { evaluated } from '../language/in-memory.ts';
import { number, text } from './inputs.ts';

const WORDS = `job "Patio" {
  rules       north-america
  show        feet-and-inches
  currency    USD
  crew        2, Monday to Friday, 8 h a day
  labour      40 USD per hour
  hire        "Plate compactor" 75 USD a day, for base and vibrating
  disposal    container of 6 m3, 8 tonne, for 290 USD
  contingency 8 % of labour
  overhead    10 %
  markup      25 %
  extra       "Permit" 120 USD, untaxed, no margin
  task        "Soakaway" 6 h, after dig, before base
}

supplier gravel-pit {
  prices   on 2026-03-01, valid 60 days
  tax      added
  delivery 65 USD a load, load 8 short ton
}
price crushed-stone from gravel-pit { loose for 38 USD per short ton, in steps of 1/2 short ton }
price washed-sand from gravel-pit { loose for 42 USD per short ton, in steps of 1/2 short ton }
price slab-16 { piece for 3.95 USD }
price spiked-strip { length of 8 ft for 17.25 USD }
`;

async function priced(words = WORDS, more = ''): Promise<Required<PricedJob>> {
  const sample = readFileSync('samples/first-job.paving', 'utf8').replace(/job ".*" \{\n[^}]*\}\n/, words);
  const { job, numbers, findings } = (await evaluated(sample + more)) as Required<Evaluation>;
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return drain(pricedJob(job, numbers, new Session(), 'job')) as Required<PricedJob>;
}

const costOfLine = ({ costs }: PricedJob, id: string): string =>
  text(costs!.lines.find(line => line.id === id)?.cost ?? 0n);

test('what the order buys, by where it goes', async () => {
  const job = await priced();
  const { costs, numbers } = job;
  const { order, orderCost, deliveryCharges } = numbers.quantities;
  const bought = costs.lines.filter(({ kind }) => kind === 'material');
  expect(bought.map(({ title }) => title).sort()).toEqual(['crushed-stone', 'slab-16', 'spiked-strip', 'washed-sand']);
  expect(sumOf(bought.map(({ cost }) => cost))).toBe(minorOf(orderCost!.goods));
  // 7.51 short tons in steps of a half: 8, at 38; a slab at 3.95 each.
  expect(costOfLine(job, 'material/crushed-stone')).toBe('304.00');
  const slabs = order!.find(({ item }) => item === 'slab-16')!;
  expect(costOfLine(job, 'material/slab-16')).toBe((slabs.count! * 3.95).toFixed(2));
  expect(costOfLine(job, 'delivery/gravel-pit')).toBe(deliveryCharges![0]!.cost);
  const edging = costs.lines.find(({ id }) => id === 'material/spiked-strip')!;
  expect(edging.parts.map(({ edge }) => edge)).toEqual(['right', 'far', 'left']);
  expect(sumOf(edging.parts.map(({ cost }) => cost))).toBe(edging.cost);
  // The joint sand and the spikes of the strip have no price here.
  const unpriced = costs.unpriced.map(({ title }) => title);
  expect(unpriced).toContain('joint-sand');
  expect(unpriced.filter(title => bought.some(line => line.title === title))).toEqual([]);
});

test('hours by the rates, hires by the days that need them, containers by what is dug', async () => {
  const job = await priced();
  const { costs } = job;
  const labour = costs.lines.filter(({ kind }) => kind === 'labour');
  expect(labour.map(({ title, cost }) => `${title} ${text(cost)}`)).toContain('Labour: Soakaway 240.00');
  for (const { cost } of labour) expect(cost).toBeGreaterThan(0n);
  expect(number(minorOf(costOfLine(job, 'hire/1'))) % 75).toBe(0);
  // 7.03 cu yd loose, 5.38 m3: one container.
  expect(costOfLine(job, 'disposal')).toBe('290.00');
  const base = costs.areas[0]!.works.find(({ work }) => work === 'base')!;
  const ofBase = costs.parts.filter(({ work, area }) => work === 'base' && area === 'area:patio');
  expect(new Set(ofBase.map(({ line }) => line.kind))).toEqual(new Set(['material', 'labour', 'contingency']));
  expect(sumOf(ofBase.map(({ price }) => price))).toBe(base.price);
});

test('what was delivered and done is part of the price all the same', async () => {
  const log = `log {
  2026-04-25 delivered crushed-stone 6 short ton
  2026-04-26 done dig of patio
}
`;
  const [before, after] = [await priced(), await priced(WORDS, log)];
  expect(after.costs.total).toBe(before.costs.total);
  expect(after.days).toBe(before.days);
});

test('where nothing names the price of an hour, the hours are told and all else is priced', async () => {
  const { costs } = await priced(WORDS.replace(/ {2}labour .*\n/, ''));
  expect(costs.lines.filter(({ kind }) => kind === 'labour')).toEqual([]);
  expect(costs.unpriced.find(({ title }) => title === 'Labour')!.because).toMatch(
    /^\d+(\.\d)? hours and no price of an hour/
  );
  expect(costs.kinds.map(({ kind }) => kind)).toEqual(['material', 'delivery', 'hire', 'disposal', 'extra']);
});

test('every working comes to its amount', async () => {
  const { costs } = await priced();
  const amounts = new Map<string, bigint>(costs.lines.map(({ cost }, index) => [`/costs/lines/${index}/cost`, cost]));
  expect(amounts.size).toBeGreaterThan(15);
  for (const [pointer, cost] of amounts)
    expect(evaluateFormula(costs.workings[pointer]!), pointer).toBeCloseTo(number(cost), 6);
});
