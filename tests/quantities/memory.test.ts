import { expect, it } from 'vitest';
import { type Counted, Session, type Stage } from '../../language/session/session.ts';
import { area, job, layer, meeting, numbersOf, paving, rectangle, unit } from './jobs.ts';
import { rulesOf } from '../shipped-rules.ts';
import type { Area, Edge, Job } from '../../language/job/job.ts';

const small = (name: string, x: number, more: Partial<Area> = {}): Area =>
  area(rectangle(2, 2, x, 0), {
    name,
    layers: [layer('base', 0.15)],
    paving: paving(unit(0.2, 0.1, 0.06), 0.003),
    ...more
  });

/** Three areas in a row; the first two meet, the third lies apart. */
const row = (more: Partial<Area> = {}): Job =>
  job([small('a', 0), small('b', 2, more), small('c', 9)], { rules: rulesOf(['britain']) });

/** How often each stage was computed for a job; stages that were not are left out, and the rules that were judged. */
function computed(session: Session, of: Job): Partial<Record<Stage, number>> {
  const before = session.computations;
  numbersOf(of, session);
  const after = session.computations;
  const stages = (Object.keys(after) as Counted[]).filter(counted => counted !== 'judgements');
  const changed = stages.filter(stage => after[stage] > before[stage]);
  return Object.fromEntries(changed.map(stage => [stage, after[stage] - before[stage]]));
}

it('computes a job once; only neighbours are held against each other', () => {
  const session = new Session();
  expect(computed(session, row())).toEqual({
    outline: 3,
    laying: 3,
    cuts: 3,
    // Of each area, and of all that cut the same unit.
    nesting: 4,
    layers: 3,
    edges: 3,
    levels: 3,
    site: 1,
    pair: 1,
    neighbours: 1,
    job: 1,
    order: 1,
    rules: 3,
    'site-rules': 1
  });
  expect(computed(session, structuredClone(row()))).toEqual({});
});

it('an edit in one area recomputes what depends on it, and nothing else', () => {
  const session = new Session();
  numbersOf(row(), session);
  expect(computed(session, row({ layers: [layer('base', 0.2)] }))).toEqual({
    layers: 1,
    levels: 1,
    site: 1,
    pair: 1,
    job: 1,
    order: 1,
    rules: 1
  });
  expect(computed(session, row({ layers: [layer('base', 0.2)], traffic: ['cars'] }))).toEqual({
    // What stands beside areas is looked at against whole areas.
    site: 1,
    rules: 1
  });
  const joint = paving(unit(0.2, 0.1, 0.06), 0.004);
  expect(computed(session, row({ layers: [layer('base', 0.2)], traffic: ['cars'], paving: joint }))).toEqual({
    laying: 1,
    cuts: 1,
    nesting: 2,
    layers: 1,
    levels: 1,
    site: 1,
    // The sum of all units.
    job: 1,
    order: 1,
    rules: 1
  });
});

it('what a side is said to meet is held against shapes that are remembered', () => {
  const session = new Session();
  const met = [{}, { meets: meeting('b') }];
  const areas = (sides: readonly Partial<Edge>[]): Job =>
    job([area(rectangle(2, 2), { name: 'a' }, sides), area(rectangle(2, 2, 2, 0), { name: 'b' })]);
  expect(numbersOf(areas([]), session).findings).toHaveLength(2);
  expect(computed(session, areas(met))).not.toHaveProperty('neighbours');
  expect(numbersOf(areas(met), session).findings).toHaveLength(1);
});

it('gives the same numbers from the memory as without it', () => {
  const session = new Session();
  numbersOf(row(), session);
  const [first, ...others] = row({ layers: [layer('base', 0.2)] }).areas;
  const reordered = { ...row(), areas: [...others, first!] };
  expect(numbersOf(reordered, session)).toEqual(numbersOf(reordered));
});

it('drops what is no longer there, keeps what is only broken for now', () => {
  const session = new Session();
  numbersOf(row(), session);
  const { areas, ...rest } = row();
  const missing = [{ key: 'area:b', name: 'b', because: 'area:b' }];
  numbersOf({ ...rest, areas: [areas[0]!, areas[2]!], missing }, session);
  // Of the whole job alone: its totals changed, and which pieces come out of one unit.
  expect(computed(session, row())).toEqual({ nesting: 1, site: 1, job: 1, order: 1 });
  numbersOf({ ...rest, areas: [areas[0]!] }, session);
  // Twelve stages and the nesting of the whole job, what they are taken from, the last good numbers, and each rule.
  expect(session.size).toBe(15 + row().rules.length);
  session.forget('job');
  expect(session.size).toBe(0);
});

it('is bounded: what was used longest ago goes first', () => {
  const session = new Session(15);
  numbersOf(job([small('a', 0)]), session);
  expect(session.size).toBe(14);
  numbersOf({ ...job([small('z', 0)]), key: 'other' }, session);
  expect(session.size).toBe(15);
});

it('jobs of one name in two files do not meet', () => {
  const session = new Session();
  numbersOf(row(), session);
  const size = session.size;
  expect(computed(session, { ...row(), key: 'other' })).toMatchObject({ outline: 3 });
  expect(session.size).toBe(2 * size);
});
