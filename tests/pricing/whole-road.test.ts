// From the text of a job over its schedule to costs and price: only what is bought is told by hand.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Evaluation } from '../../language/paving.ts';
import { costsOf } from '../../language/pricing/costs.ts';
import { costInputsOf } from '../../language/pricing/inputs-of-job.ts';
import { sumOf } from '../../language/pricing/money.ts';
import { scheduleOf } from '../../language/schedule/schedule.ts';
import { evaluated } from '../language/in-memory.ts';
import { item, number, text } from './inputs.ts';

const WORDS = `job "Patio" {
  crew        2, Monday to Friday, 8 h a day
  labour      40 USD per hour
  hire        "Plate compactor" 75 USD a day, for base and vibrating
  disposal    container of 6 m3, 8 tonne, for 290 USD
  contingency 8 % of labour
  overhead    10 %
  markup      25 %
  extra       "Permit" 120 USD, untaxed, no margin
  task        "Soakaway" 6 h, after dig, before base
`;

async function patio(words = WORDS): Promise<Required<Evaluation>> {
  const sample = readFileSync('samples/first-job.paving', 'utf8');
  return (await evaluated(sample.replace(/job ".*" \{\n/, words))) as Required<Evaluation>;
}

async function priced(words = WORDS, log = true) {
  const { job, numbers } = await patio(words);
  const { quantities } = numbers;
  const work = { quantities, work: job.work, hires: job.money.hires, prices: job.prices };
  const schedule = scheduleOf({ job: log ? job : { ...job, log: [] }, ...work });
  const ordered = [item('crushed-stone', '285.29', { shares: [{ area: 'area:patio', work: 'base', amount: 1 }] })];
  return { schedule, costs: costsOf(costInputsOf(job, quantities, schedule, { ordered, deliveries: [] }))! };
}

test('hours by the rates, hires by the days that need them, containers by what is dug', async () => {
  const { schedule, costs } = await priced();
  const labour = costs.lines.filter(({ kind }) => kind === 'labour');
  expect(number(sumOf(labour.map(({ cost }) => cost)))).toBeCloseTo(schedule.hours * 40, 0);
  expect(labour.map(({ title, cost }) => `${title} ${text(cost)}`)).toContain('Labour: Soakaway 240.00');
  expect(schedule.hires[0]!.days).toBeGreaterThan(0);
  const of = (id: string): string => text(costs.lines.find(line => line.id === id)!.cost);
  expect(of('hire/1')).toBe((schedule.hires[0]!.days * 75).toFixed(2));
  // 7.03 cu yd loose, 5.38 m3: one container.
  expect(of('disposal')).toBe('290.00');
  const base = costs.areas[0]!.works.find(({ work }) => work === 'base')!;
  const ofBase = costs.parts.filter(({ work, area }) => work === 'base' && area === 'area:patio');
  expect(new Set(ofBase.map(({ line }) => line.kind))).toEqual(new Set(['material', 'labour', 'contingency']));
  expect(sumOf(ofBase.map(({ price }) => price))).toBe(base.price);
});

test('where nothing names the price of an hour, the hours are told and all else is priced', async () => {
  const { schedule, costs } = await priced(WORDS.replace(/ {2}labour .*\n/, ''));
  expect(costs.lines.map(({ kind }) => kind)).toEqual(['material', 'hire', 'disposal', 'extra']);
  const told = costs.unpriced.find(({ title }) => title === 'Labour')!;
  expect(told.because).toContain(`${Number(schedule.hours.toFixed(1))} hours and no price of an hour`);
});
