// Cautions stand at the task where they belong, once, as the spec gives cause; and none of them is a clearance.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import type { Schedule } from '../../language/schedule/contract.ts';
import { evaluated, inMemory } from '../language/in-memory.ts';
import { drive, scheduled, scheduleFor } from './scheduled.ts';

/** Where each caution stands: `dust` at `cutting`. */
function placesOf({ tasks }: Schedule): Record<string, string> {
  return Object.fromEntries(tasks.flatMap(({ id, cautions }) => cautions.map(caution => [caution.id, id])));
}

function textOf({ tasks }: Schedule, id: string): string | undefined {
  return tasks.flatMap(({ cautions }) => cautions).find(caution => caution.id === id)?.text;
}

const PIPES = `
point P at (-1, 3) m
point Q at (4, 3) m
pipe garden-water {
  from P to Q
  carries water
  depth about 400 mm, not proven
}
`;

describe('where they stand', () => {
  test('a drive by a road, with kerbs on concrete', async () => {
    expect(placesOf(await scheduled(drive()))).toEqual({
      services: 'locate',
      'dig-near-lines': 'dig',
      'public-way': 'dig',
      waste: 'cart-away',
      'wet-concrete': 'edging',
      lifting: 'edging',
      plate: 'base',
      'lifting-often': 'laying/drive/herringbone-90',
      dust: 'cutting',
      saw: 'cutting',
      slurry: 'cutting',
      'sand-dust': 'joints'
    });
  });

  test('by walls and doors: shaking and fumes; without a road no public way', async () => {
    const schedule = await scheduled(drive().replace('near meets road, flush', 'near meets house-wall'));
    const places = placesOf(schedule);
    expect(places).toMatchObject({ walls: 'base', fumes: 'base' });
    expect(places).not.toHaveProperty('public-way');
  });

  test('lines that are told are named, and their depth is no proof', async () => {
    const schedule = await scheduled(drive() + PIPES);
    expect(textOf(schedule, 'services')).toMatch(/Told here: garden-water, depth not proven\. Others may lie here\.$/);
    expect(textOf(schedule, 'dig-near-lines')).toBe(
      'By hand near every line, marked or not; a stated depth is no proof. Over the dig lead: garden-water.'
    );
  });

  test('deeper than 1.2 m: stop', async () => {
    const deep = drive().replace('base type-1 200 mm', 'base type-1 1.2 m');
    // The rule on deep digs stops it as well.
    expect(textOf(scheduleFor(await evaluated(deep)), 'deep-dig')).toMatch(/^Stop: 1\.290 m deep\./);
    expect(textOf(await scheduled(drive()), 'deep-dig')).toBeUndefined();
  });

  test('what is done needs no more caution; what is told at a task that is done moves to the next where it belongs', async () => {
    const places = placesOf(await scheduled(`${drive()}log { 2026-04-20 done base of drive, done edging of drive }\n`));
    expect(places).not.toHaveProperty('services');
    expect(places).not.toHaveProperty('waste');
    expect(places).toMatchObject({ plate: 'vibrating', 'public-way': 'bed' });
  });

  test('a kerb of 915 x 100 x 200 mm is weighed', async () => {
    // 0.0183 m3 of 2,300 kg/m3.
    expect(textOf(await scheduled(drive()), 'lifting')).toMatch(
      /^kerb weighs about 42 kg\. .*two people, or a carrier/
    );
  });
});

const CLEARANCES =
  /complies|strong enough|safe to|is safe|no services|frost-proof|guarantee|no mask|no respirator is needed|none needed|not required|no permit/i;

describe('none is a clearance, and each is told once', () => {
  const folder = path.resolve(import.meta.dirname, '../../samples');
  const samples = readdirSync(folder).filter(name => name.endsWith('.paving'));
  const texts = Object.fromEntries(samples.map(name => [name, readFileSync(path.join(folder, name), 'utf8')]));

  test.each(samples)('%s', async name => {
    const paving = new Paving(inMemory(texts));
    await paving.load(name);
    const evaluation = drain(paving.evaluate(name))!;
    if (evaluation.job === undefined) return;
    const { tasks } = scheduleFor(evaluation, { log: [] });
    const cautions = tasks.flatMap(task => task.cautions);
    const holds = tasks.flatMap(task => task.holds);
    expect(cautions.length).toBeGreaterThan(5);
    expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
    expect([...cautions, ...holds].map(({ text }) => text).filter(text => CLEARANCES.test(text))).toEqual([]);
  });
});
