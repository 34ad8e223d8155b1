import { beforeAll, describe, expect, it } from 'vitest';
import { svgOf } from '../../language/drawing/svg/svg.ts';
import type { Evaluation } from '../../language/paving.ts';
import { planDrawing } from '../../language/views/plan/plan-drawing.ts';
import { evaluated } from '../language/in-memory.ts';
import { evaluated as sample, JOBS as SAMPLES } from '../samples/samples.ts';
import { JOBS, planOf } from './jobs.ts';

const CASES: readonly (readonly [string, () => Promise<Evaluation>])[] = [
  ...Object.entries(JOBS).map(([name, text]) => [name, () => evaluated(text)] as const),
  ...SAMPLES.map(file => [file, () => sample(file)] as const)
];

/** How often each thing comes in a list. */
function tally(things: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const thing of things) counts[thing] = (counts[thing] ?? 0) + 1;
  return counts;
}

describe.each(CASES)('the plan of %s', (_, evaluate) => {
  let evaluation: Evaluation;
  let svg: string;
  beforeAll(async () => {
    evaluation = await evaluate();
    svg = svgOf(planDrawing(planOf(evaluation)));
  });

  it('draws each cut as often as the cut list counts it, under its number', () => {
    const drawn = [...svg.matchAll(/data-key="([^"]+?)\/(?:[^"/]+)\/cut\/\d+" d="[^"]+"><title>Cut (\d+): ([^<]*)</g)];
    const listed = evaluation.numbers!.quantities.areas.flatMap(({ id, cuts = [] }) =>
      cuts.map(({ number, unit, count }): [string, number] => [`${id} ${number} ${unit}`, count])
    );
    expect(tally(drawn.map(([, area, number, unit]) => `${area} ${number} ${unit}`))).toEqual(
      Object.fromEntries(listed)
    );
  });

  it('draws as many whole units as are counted', () => {
    const drawn: Record<string, number> = {};
    for (const [, area, unit, path] of svg.matchAll(/data-key="([^"/]+)\/[^"]+\/whole\/([^"/]+)" d="([^"]+)"/g)) {
      const key = `${area} ${unit}`;
      drawn[key] = (drawn[key] ?? 0) + path!.split('z').length - 1;
    }
    const counted = evaluation.numbers!.quantities.areas.flatMap(({ id, laying = [] }) =>
      laying.flatMap(({ unit, whole }): [string, number][] => (whole === 0 ? [] : [[`${id} ${unit}`, whole]]))
    );
    expect(drawn).toEqual(Object.fromEntries(counted));
  });
});

it('every small job but the broken one is drawn whole', async () => {
  const plans = await Promise.all(
    Object.entries(JOBS).map(async ([name, text]) => [name, planOf(await evaluated(text))] as const)
  );
  const without = plans.filter(
    ([, { areas, missing }]) => missing.length > 0 || areas.some(({ noNumbers }) => noNumbers !== undefined)
  );
  expect(without.map(([name]) => name)).toEqual(['broken']);
});
