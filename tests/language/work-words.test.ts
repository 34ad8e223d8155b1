// What a job says of money and work, as plain data.
import { describe, expect, test } from 'vitest';
import { wordHelp } from '../../language/editing/word-help.ts';
import type { Job } from '../../language/job/job.ts';
import { COMES_AFTER } from '../../language/job/task-order.ts';
import { RATE_WORDS, TASK_WORDS, type Rate } from '../../language/job/work.ts';
import { evaluated } from './in-memory.ts';

async function jobOf(words: string, besides = ''): Promise<Job> {
  const { job, findings } = await evaluated(`job "T" {\n  rules britain\n  ${words}\n}\n${besides}`);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return job!;
}

async function faultsOf(words: string, besides = ''): Promise<string[]> {
  const { findings } = await evaluated(`job "T" {\n  rules britain\n  ${words}\n}\n${besides}`);
  return findings.map(({ id }) => id);
}

/** Without keys, and without what was written. */
function plain(value: unknown): unknown {
  const seen = JSON.stringify(value, (name, part: unknown) =>
    name === 'key' || name === 'written' ? undefined : part
  );
  return JSON.parse(seen);
}

describe('Money', () => {
  test.each([
    ['labour 24 GBP per hour', { labour: { amount: '24', currency: 'GBP' } }],
    ['labour 0.4 GBP per min', { labour: { amount: '24', currency: 'GBP' } }],
    ['labour 61/3 GBP per hour', { labour: { amount: '61/3', currency: 'GBP' } }],
    ['disposal 28 GBP per tonne', { disposal: { charge: { amount: '0.028', currency: 'GBP' }, by: 'kg' } }],
    ['disposal 33 GBP per m3', { disposal: { charge: { amount: '33', currency: 'GBP' }, by: 'm3' } }],
    ['disposal 310 GBP per load', { disposal: { charge: { amount: '310', currency: 'GBP' }, by: 'load' } }],
    [
      'disposal container of 6 m3, 8 tonne, for 290 GBP',
      {
        disposal: {
          charge: { amount: '290', currency: 'GBP' },
          by: 'container',
          volume: { value: 6 },
          mass: { value: 8000 }
        }
      }
    ],
    [
      'disposal container of 8 tonne for 290.50 GBP',
      { disposal: { charge: { amount: '290.5', currency: 'GBP' }, by: 'container', mass: { value: 8000 } } }
    ],
    ['overhead 10 %', { overhead: { value: 0.1 } }],
    ['margin 18 %', { profit: { way: 'margin', share: { value: 0.18 } } }],
    ['markup 125 %', { profit: { way: 'markup', share: { value: 1.25 } } }],
    ['tax 0', { tax: { value: 0 } }],
    ['contingency 8 % of materials', { contingency: { share: { value: 0.08 }, of: 'materials' } }],
    ['contingency 8 %', { contingency: { share: { value: 0.08 }, of: 'costs' } }],
    ['client "The household"', { client: 'The household' }],
    [
      'quote "quote-1" on 2026-03-02, valid 4 weeks',
      { quote: { name: 'quote-1', on: '2026-03-02', validDays: { value: 28 } } }
    ],
    ['excludes "Pipes"\n excludes "Gates; doors"', { excludes: ['Pipes', 'Gates; doors'] }]
  ])('%s', async (words, said) => {
    const { money } = await jobOf(words);
    expect(plain(money)).toEqual({ hires: [], extras: [], excludes: [], ...said });
  });

  test('what is hired: by the day, by the week, for the job; for tasks or for all of it', async () => {
    const { money } = await jobOf(
      'hire "Plate" 45 GBP a day, for base and vibrating\n hire "Saw" 210 GBP per week\n hire "Permit" 80 GBP for the job, for laying'
    );
    expect(plain(money.hires)).toEqual([
      { title: 'Plate', charge: { amount: '45', currency: 'GBP' }, by: 'day', tasks: ['base', 'vibrating'] },
      { title: 'Saw', charge: { amount: '210', currency: 'GBP' }, by: 'week', tasks: [] },
      { title: 'Permit', charge: { amount: '80', currency: 'GBP' }, by: 'job', tasks: ['laying'] }
    ]);
  });

  test('lines of one’s own: amounts, shares, and what is taken off', async () => {
    const { money } = await jobOf(
      'extra "Kerb" 1250 GBP, untaxed, no margin\n extra "Sundries" 2 % of labour\n extra "Risk" 3 %\n extra "Favour" -50.50 GBP, no margin'
    );
    const [no, yes] = [false, true];
    expect(plain(money.extras)).toEqual([
      { title: 'Kerb', cost: { amount: '1250', currency: 'GBP' }, untaxed: yes, noMargin: yes },
      { title: 'Sundries', cost: { share: { value: 0.02 }, of: 'labour' }, untaxed: no, noMargin: no },
      { title: 'Risk', cost: { share: { value: 0.03 }, of: 'costs' }, untaxed: no, noMargin: no },
      { title: 'Favour', cost: { amount: '-50.5', currency: 'GBP' }, untaxed: no, noMargin: yes }
    ]);
  });

  test('takes values of one’s own, and leads to where they stand', async () => {
    const { job, places } = await evaluated('let wage = 24 GBP per hour\njob "T" {\n  rules britain, labour wage\n}\n');
    expect(job!.money.labour).toEqual({ amount: '24', currency: 'GBP', key: 'job/labour', written: 'wage' });
    expect(places.get('job/labour')).toMatchObject({ line: 3, column: 25 });
  });

  test('all of it is in one currency', async () => {
    expect(await faultsOf('currency GBP, labour 24 USD per hour')).toEqual(['other-currency']);
    expect(await faultsOf('labour 24 USD per hour, extra "Kerb" 3 USD')).toEqual([]);
    expect(await faultsOf('labour 24 USD per hour, extra "Kerb" 3 EUR')).toEqual(['other-currency']);
  });

  test('a margin of almost all of the price is one, of all of it none', async () => {
    expect((await jobOf('margin 99.9 %')).money.profit?.share.value).toBe(0.999);
    expect(await faultsOf('margin 100 %')).toEqual(['out-of-range']);
  });
});

describe('Work', () => {
  test.each([
    ['crew 2', 2, [1, 2, 3, 4, 5], 8],
    ['crew 2, Monday to Friday, 9 h a day', 2, [1, 2, 3, 4, 5], 9],
    ['crew 1, Saturdays and Sundays', 1, [6, 7], 8],
    ['crew 3, 7 h 30 min a day, Fri to Mon', 3, [1, 5, 6, 7], 7.5],
    ['crew 3, Monday, Wednesday and Fridays', 3, [1, 3, 5], 8]
  ])('%s', async (words, people, days, hours) => {
    const { crew } = (await jobOf(words)).work;
    expect([crew!.people.value, crew!.days, crew!.hours.value]).toEqual([people, days, hours]);
    expect(crew!.hours.assumed === undefined).toBe(words.includes(' a day'));
  });

  test('the first day, and no crew where none is said', async () => {
    const { work } = await jobOf('begins on 2026-04-13');
    expect([work.begins, work.crew, work.tasks]).toEqual(['2026-04-13', undefined, []]);
  });

  test('tasks of one’s own come after and before others', async () => {
    const { tasks } = (
      await jobOf(
        'task "Soakaway" 6 h, after dig and drains, before base\n task "Cover" 90 min, after "Soakaway", before "Look"\n task "Look" 1 h'
      )
    ).work;
    expect(tasks.map(({ hours, key, title, ...waits }) => [key, title, hours.value, waits])).toEqual([
      ['job/task-1', 'Soakaway', 6, { after: ['dig', 'drains'], before: ['base'], afterOwn: [], beforeOwn: [] }],
      ['job/task-2', 'Cover', 1.5, { after: [], before: [], afterOwn: ['job/task-1'], beforeOwn: ['job/task-3'] }],
      ['job/task-3', 'Look', 1, { after: [], before: [], afterOwn: [], beforeOwn: [] }]
    ]);
  });

  test('what waits for itself is left out, and waited for by nobody', async () => {
    const text = 'task "A" 1 h, after "B"\n task "B" 1 h, after laying, before bed';
    const { job, findings } = await evaluated(`job "T" {\n  rules britain\n  ${text}\n}\n`);
    expect(findings.map(({ id }) => id)).toEqual(['task-in-circle']);
    expect(job!.work.tasks.map(({ title, afterOwn }) => [title, afterOwn])).toEqual([['A', []]]);
  });

  test('every word of a task can stand after those before it, and before those after it', async () => {
    for (const word of TASK_WORDS) {
      for (const earlier of COMES_AFTER[word]) {
        expect(await faultsOf(`task "T" 1 h, after ${earlier}, before ${word}`)).toEqual([]);
        expect(await faultsOf(`task "T" 1 h, after ${word}, before ${earlier}`)).toEqual(['task-in-circle']);
      }
    }
  });
});

describe('Rates', () => {
  const named = ({ work }: Job, name: string): Rate[] => work.rates.filter(rate => rate.name === name);

  test('that ship say by whose word, and none is of 1908', async () => {
    const { work } = await jobOf('show metric');
    const told = (name: string): unknown[] =>
      work.rates
        .filter(rate => rate.name === name)
        .map(({ task, takes, per, when, includes, status }) => [task, takes.value, per, when, includes, status]);
    expect(told('lay-herringbone')).toEqual([['laying', 1.5, 'm2', ['herringbone'], ['bed', 'joints'], 'quoted']]);
    expect(told('lay-basket-weave')).toEqual([['laying', 1.2, 'm2', ['basket-weave'], ['bed', 'joints'], 'quoted']]);
    // Clay takes 1.5 times as long.
    const [light] = work.rates.filter(({ name }) => name === 'dig-by-hand');
    const [clay] = work.rates.filter(({ name }) => name === 'dig-by-hand-clay');
    expect(clay!.takes.value / light!.takes.value).toBeCloseTo(1.5, 12);
    expect([light!.status, clay!.status, clay!.when]).toEqual(['memory', 'memory', ['hand', 'clay']]);
    for (const { takes, source, status } of work.rates) {
      expect(takes.assumed?.source).toBe(source);
      expect(source).not.toContain('1908');
      expect(source.startsWith('Common practice')).toBe(status === 'practice');
      expect(source.startsWith('From memory')).toBe(status === 'memory');
      // The price book tells no edition: nobody read it itself.
      expect(/price book(?!.*as quoted)/.test(source), source).toBe(false);
      expect(status).not.toBe('read');
    }
    expect(clay!.source).toBe(
      'From memory, no source was read (about 1 cu yd an hour in light soil); Handbook: A price book for landscape and external works in Britain, clay 1.5 times, as quoted in other texts'
    );
    const [any] = work.rates.filter(({ name }) => name === 'lay-units');
    expect([any!.status, any!.source]).toEqual(['practice', expect.not.stringContaining('price book')]);
  });

  test('that ship tell of every task', async () => {
    const { work } = await jobOf('show metric');
    expect(new Set(work.rates.map(({ task }) => task))).toEqual(new Set(TASK_WORDS));
  });

  test('of one’s own stand over those that ship by the same name', async () => {
    const rate = 'rate lay-herringbone { of laying, when herringbone and block, takes 0.1 h per sq ft, includes bed }';
    const [own, ...others] = named(await jobOf('show metric', rate), 'lay-herringbone');
    expect(others).toEqual([]);
    expect(own).toMatchObject({
      per: 'm2',
      when: ['herringbone', 'block'],
      includes: ['bed'],
      source: 'own figure',
      status: 'practice'
    });
    expect(own!.takes).toMatchObject({ key: 'rate:lay-herringbone/takes', written: '0.1 h per sq ft' });
    expect(own!.takes.value).toBeCloseTo(0.1 / 0.09290304, 12);
    expect(own!.takes.assumed).toBeUndefined();
  });

  test('that can’t be read are left out: none that ships takes their place', async () => {
    const text = 'job "T" { rules britain }\nrate lay-herringbone { of laying, takes }\n';
    expect(named((await evaluated(text)).job!, 'lay-herringbone')).toEqual([]);
  });

  test.each([
    ['takes 1.5 h per m2', 'm2', 1.5],
    ['takes 30 min per ft', 'm', 0.5 / 0.3048],
    ['takes 2 h per tonne', 'kg', 0.002],
    ['takes 3 min per piece', 'piece', 0.05],
    ['takes 1.5 * 2 min per piece', 'piece', 0.05],
    ['takes 2 h for the job', 'job', 2]
  ])('%s', async (takes, per, hours) => {
    const [rate] = named(await jobOf('show metric', `rate x { of boxes and cutting, ${takes} }`), 'x');
    expect([rate!.per, rate!.takes.written]).toEqual([per, takes.replace('takes ', '')]);
    expect(rate!.takes.value).toBeCloseTo(hours, 12);
  });

  test('of several tasks stand there for each; words of `when` name soils, bonds, units and materials', async () => {
    const things =
      'unit slab-16 { size 400 x 400 x 40 mm }\nrate x { of bed and base, when slab-16 and clay and running-bond and type-1, takes 1 h per m2, cites price-book, "Q24", from-memory }';
    const rates = named(await jobOf('show metric', things), 'x');
    expect(rates.map(({ task }) => task)).toEqual(['bed', 'base']);
    expect(rates[0]!.when).toEqual(['slab-16', 'clay', 'running-bond', 'type-1']);
    expect(rates[0]!.status).toBe('memory');
    expect(await faultsOf('show metric', 'rate x { of bed, when slab-17, takes 1 h per m2 }')).toEqual([
      'unknown-word'
    ]);
  });
});

test('help is there for every word behind `when` of a rate', () => {
  expect(RATE_WORDS.filter(word => wordHelp(word, { block: 'rate', statement: 'when' }) === undefined)).toEqual([]);
});
