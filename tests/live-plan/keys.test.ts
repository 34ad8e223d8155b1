import { describe, expect, it } from 'vitest';
import { drain, type Evaluation } from '../../language/paving.ts';
import type { LivePlan, LiveThing } from '../../language/views/live-plan/live-plan.ts';
import { again, evaluated, JOBS, newPaving, pathOf, textOf } from '../samples/samples.ts';

describe.each(JOBS)('%s, drawn live', job => {
  it('has a key for each shape and thing, a thing for each shape, and counts as the quantities have them', async () => {
    const paving = newPaving();
    const evaluation = await evaluated(job, paving);
    const plan = drain(paving.livePlan(evaluation))!;
    expect(twice(plan.shapes.map(({ key }) => key))).toEqual([]);
    expect(twice(plan.things.map(({ key }) => key))).toEqual([]);
    expect(twice(plan.legend.map(({ key }) => key))).toEqual([]);
    const things = new Map(plan.things.map(thing => [thing.key, thing]));
    expect(plan.shapes.filter(({ thing }) => !things.has(thing))).toEqual([]);
    expect(plan.shapes.some(shape => 'stale' in shape)).toBe(false);
    expect(plan.notes).toEqual([]);
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
    expect(countsTold(plan)).toEqual(countsWorkedOut(evaluation));
    expect(unitsDrawn(plan)).toEqual(countsTold(plan));
  });
});

it('what lies elsewhere keeps its keys, and is drawn anew only where it differs', async () => {
  const file = 'terrace.paving';
  const paving = newPaving();
  const before = drain(paving.livePlan(await evaluated(file, paving)))!;
  const { plan: counted } = paving.session.computations;
  paving.setText(pathOf(file), `\n\n${textOf(file).replace('lid       4 3/4 in', 'lid       4 1/2 in')}`);
  const after = drain(paving.livePlan(again(paving, file)))!;
  expect(after.shapes).toEqual(before.shapes);
  expect(after.things.find(({ key }) => key === 'box:shut-off')).not.toEqual(
    before.things.find(({ key }) => key === 'box:shut-off')
  );
  expect(paving.session.computations.plan).toBe(counted);
});

it('numbers of cuts stand in things: a cut before others leaves their shapes as they are', async () => {
  const file = 'terrace.paving';
  const paving = newPaving();
  const before = drain(paving.livePlan(await evaluated(file, paving)))!;
  // A box more is cut round: other cuts are counted on.
  const text = textOf(file).replace(
    'box clean-out in terrace {',
    'box rod in terrace {\n  rectangle 4 x 4 in, centre (3 ft, 3 ft)\n}\n\nbox clean-out in terrace {'
  );
  paving.setText(pathOf(file), text);
  const after = drain(paving.livePlan(again(paving, file)))!;
  const cuts = ({ shapes }: LivePlan): Map<string, string> =>
    new Map(shapes.filter(({ content }) => content === 'cuts').map(cut => [cut.key, JSON.stringify(cut)]));
  const [old, now] = [cuts(before), cuts(after)];
  expect(now.size).toBeGreaterThan(old.size);
  expect([...old].filter(([key, cut]) => now.get(key) !== cut)).toEqual([]);
  expect(old.size).toBeGreaterThan(20);
  const numbers = ({ things }: LivePlan): Map<string, string> =>
    new Map(things.flatMap(({ key, number }) => (number === undefined ? [] : [[key, number]])));
  const moved = [...numbers(before)].filter(([key, number]) => numbers(after).get(key) !== number);
  expect(moved.length).toBeGreaterThan(0);
});

it('after many edits no more is held than after a few, and nothing once the file is let go', async () => {
  const file = 'terrace.paving';
  const paving = newPaving();
  await evaluated(file, paving);
  const held: number[] = [];
  for (let edit = 0; edit < 24; edit++) {
    const text = textOf(file);
    const lines = text.split('\n');
    const broken = lines.with(104 + edit, lines[104 + edit]!.slice(0, 6)).join('\n');
    for (const now of [broken, text]) {
      paving.setText(pathOf(file), now);
      drain(paving.livePlan(again(paving, file)));
    }
    held.push(paving.session.size);
  }
  expect(held.at(-1)).toBe(held[0]);
  paving.forget(pathOf(file));
  expect(paving.session.size).toBe(0);
});

function twice(keys: readonly string[]): string[] {
  const seen = new Set<string>();
  return keys.filter(key => seen.size === seen.add(key).size);
}

/** `terrace slab-18: 170 whole, 42 cut`, as the things of the plan tell. */
function countsTold({ things }: LivePlan): string[] {
  const told = (thing: LiveThing, words: string): string => thing.facts.find(([name]) => name === words)?.[1] ?? '';
  return things
    .filter(({ kind }) => kind === 'Units')
    .map(thing => `${thing.key}: ${told(thing, 'Whole')} whole, ${told(thing, 'Cut')} cut`)
    .sort();
}

function countsWorkedOut({ numbers }: Evaluation): string[] {
  return numbers!.quantities.areas
    .flatMap(({ id, laying }) => {
      const units = [...new Set((laying ?? []).map(({ unit }) => unit))];
      return units.map(unit => {
        const own = laying!.filter(row => row.unit === unit);
        const sum = (of: 'whole' | 'cut'): number => own.reduce((total, row) => total + row[of], 0);
        return `${id}/unit/${unit}: ${sum('whole')} whole, ${sum('cut')} cut`;
      });
    })
    .sort();
}

/** The same counted on the drawing; a cut unit of several pieces has a shape for each, and is one. */
function unitsDrawn({ shapes, things }: LivePlan): string[] {
  const drawn = (thing: (key: string) => boolean): number =>
    shapes
      .filter(shape => thing(shape.thing) && !/\/\d+$/.test(shape.key))
      .reduce((sum, shape) => sum + (shape.kind === 'rows' ? shape.runs.reduce((all, run) => all + run[5], 0) : 1), 0);
  return things
    .filter(({ kind }) => kind === 'Units')
    .map(({ key }) => {
      const cuts = `${key.replace('/unit/', '/cut/')}/`;
      return `${key}: ${drawn(thing => thing === key)} whole, ${drawn(thing => thing.startsWith(cuts))} cut`;
    })
    .sort();
}
