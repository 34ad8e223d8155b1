// Cautions stand at the task where they belong, once, as the spec gives cause; and none of them is a clearance.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import type { Schedule } from '../../language/schedule/contract.ts';
import { scheduleText } from '../../language/views/text/schedule/schedule-text.ts';
import { evaluated, inMemory } from '../language/in-memory.ts';
import { drive, scheduled, scheduleFor } from './scheduled.ts';

/** Where each caution stands: `dust` at `cutting`. */
function placesOf({ tasks }: Schedule): Record<string, string> {
  return Object.fromEntries(tasks.flatMap(({ id, cautions }) => cautions.map(caution => [caution.id, id])));
}

function textOf({ tasks }: Schedule, id: string): string | undefined {
  return tasks.flatMap(({ cautions }) => cautions).find(caution => caution.id === id)?.text;
}

const same = (text: string): string => text;
const PLAIN = { strong: same, faint: same, error: same, warning: same, note: same };

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

/** Specs that provoke a caution, where it then stands, and what it says; `without` gives no cause for it. */
const PROVOKED: readonly {
  readonly of: string;
  readonly spec: string;
  readonly id: string;
  readonly at: string;
  readonly says: RegExp;
  readonly without?: string;
}[] = [
  { of: 'services', spec: drive(), id: 'services', at: 'locate', says: /Public lines and private ones/ },
  { of: 'a private line', spec: drive() + PIPES, id: 'services', at: 'locate', says: /garden-water, depth not proven/ },
  { of: 'a line in the dig', spec: drive() + PIPES, id: 'dig-near-lines', at: 'dig', says: /no proof.*garden-water/ },
  { of: 'waste', spec: drive(), id: 'waste', at: 'cart-away', says: /registered waste carrier/ },
  {
    of: 'a footway',
    spec: drive(),
    id: 'public-way',
    at: 'dig',
    says: /guarded and lit.*leave of the road authority/,
    without: meeting('lawn')
  },
  {
    of: 'a road by its own name',
    spec: `existing town-road { kind road }\n${meeting('town-road')}`,
    id: 'public-way',
    at: 'dig',
    says: /leave of the road authority/
  },
  {
    of: 'dust, a little sawing',
    spec: drive(),
    id: 'dust',
    at: 'cutting',
    says: /saw wet, never dry.*up to 4 h.*wear one anyway.*over 4 h.*factor of 10.*closed place: a factor of 10/
  },
  {
    of: 'dust, a day of sawing',
    spec: drive().replace('rectangle 3 x 6 m', 'rectangle 12 x 40 m').replace('herringbone-90', 'herringbone-45'),
    id: 'dust',
    at: 'cutting',
    says: /at 8\.0 h in one shift the table asks for a protection factor of 10/
  },
  { of: 'water at an electric saw, eyes, ears', spec: drive(), id: 'saw', at: 'cutting', says: /Eyes and ears.*water/ },
  { of: 'slurry', spec: drive(), id: 'slurry', at: 'cutting', says: /out of drains, channels and the street/ },
  { of: 'ears and hands at the plate', spec: drive(), id: 'plate', at: 'base', says: /ears protected.*shakes hands/ },
  {
    of: 'fumes by a wall',
    spec: meeting('house-wall'),
    id: 'fumes',
    at: 'base',
    says: /garages and closed yards.*carbon monoxide can kill/,
    without: meeting('lawn')
  },
  { of: 'fumes by a channel', spec: meeting('drain-channel'), id: 'fumes', at: 'base', says: /Engines off in garages/ },
  {
    of: 'fumes by a garage with its own floor',
    spec: `existing garage-floor { kind concrete-slab }\n${meeting('garage-floor')}`,
    id: 'fumes',
    at: 'base',
    says: /Engines off in garages/
  },
  {
    of: 'vibration by old walls',
    spec: meeting('garden-wall'),
    id: 'walls',
    at: 'base',
    says: /old or weak walls.*stop at any crack: an engineer/,
    without: meeting('lawn')
  },
  {
    of: 'wet concrete',
    spec: drive(),
    id: 'wet-concrete',
    at: 'edging',
    says: /burns skin and eyes/,
    without: drive().replace(/  concrete 300.*\n  wait.*\n/, '')
  },
  {
    of: 'lifting, with the limits of the method',
    spec: drive(),
    id: 'lifting',
    at: 'edging',
    says: /two people, or a carrier.*not for laying on one's knees/
  },
  {
    of: 'lifting by the thousand',
    spec: drive(),
    id: 'lifting-often',
    at: 'laying/drive/herringbone-90',
    says: /not covered by the lifting equation; no figure here says what a back bears/
  },
  { of: 'dry sand', spec: drive(), id: 'sand-dust', at: 'joints', says: /lungs and eyes protected/ }
];

function meeting(kind: string): string {
  return drive().replace(
    'near meets road, flush',
    `near meets ${kind}, ${kind === 'lawn' ? 'edging kerb set before laying' : 'flush'}`
  );
}

describe('each is told once, at its task, as a spec gives cause', () => {
  test.each(PROVOKED)('$of', async ({ spec, id, at, says, without }) => {
    const { tasks } = scheduleFor(await evaluated(spec));
    const told = tasks.flatMap(task =>
      task.cautions.filter(caution => caution.id === id).map(({ text }) => ({ at: task.id, text }))
    );
    expect(told.map(one => one.at)).toEqual([at]);
    expect(told[0]!.text).toMatch(says);
    expect(told[0]!.text).not.toMatch(CLEARANCES);
    if (without !== undefined) expect(placesOf(scheduleFor(await evaluated(without)))).not.toHaveProperty(id);
  });

  test('a channel between two areas gives off no fumes', async () => {
    const evaluation = await evaluated(drive());
    const [area] = evaluation.job!.areas;
    const meets = { name: 'rill', openGround: false, holds: true, drain: 'drain:rill' };
    const beside = (count: number) => {
      const edges = area!.edges.map((edge, index) => (index < count ? { ...edge, meets } : edge));
      return placesOf(scheduleFor(evaluation, { areas: [{ ...area!, edges }] }));
    };
    expect(beside(1)).toHaveProperty('fumes');
    expect(beside(2)).not.toHaveProperty('fumes');
  });

  test('local codes and licensed practice stand over all of them', async () => {
    const schedule = await scheduled(drive());
    const text = scheduleText({ file: 'job.paving', schedule, system: 'metric', workings: false, colours: PLAIN });
    expect(text.endsWith('Local codes and licensed practice stand over everything here.')).toBe(true);
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
