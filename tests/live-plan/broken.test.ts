import { describe, expect, it } from 'vitest';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import type { LivePlan } from '../../language/views/live-plan/live-plan.ts';
import { inMemory } from '../language/in-memory.ts';
import { seeded } from '../language/seeded.ts';
import { again, evaluated, JOBS, newPaving, pathOf, textOf } from '../samples/samples.ts';

const TWO = `job "Two patios" {
  rules britain
}
site { soil common-earth, benchmark step, ground level with step }
unit block { size 200 x 100 x 60 mm }
area one {
  outline rectangle 3 x 4 m
  traffic foot
  finish  level with step
  paving  block in running-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
area two {
  outline rectangle 2 x 2 m, corner (10, 0) m
  traffic foot
  finish  level with step
  paving  as one
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
box lid in two { rectangle 300 x 300 mm, centre (11, 1) m }
`;

async function twoPatios(): Promise<(text: string) => LivePlan | undefined> {
  const paving = new Paving(inMemory({ 'job.paving': TWO }));
  await paving.load('job.paving');
  return text => {
    paving.setText('job.paving', text);
    return drain(paving.livePlan(drain(paving.evaluate('job.paving'))!));
  };
}

const areasOf = ({ things }: LivePlan, stale: boolean): string[] =>
  things.filter(thing => thing.kind === 'Areas' && (thing.stale ?? false) === stale).map(({ key }) => key);

/** All that is drawn but findings, whether it is old or new. */
const without = ({ shapes }: LivePlan): object[] =>
  shapes.filter(({ content }) => content !== 'findings').map(({ stale: _, ...shape }) => shape);

/** Shapes of an area with what belongs to it, by the things that they stand for. */
function ofArea(plan: LivePlan, area: string): LivePlan['shapes'] {
  const own = new Set(plan.things.filter(thing => thing.area === area).map(({ key }) => key));
  return plan.shapes.filter(({ thing }) => own.has(thing));
}

describe('while a line is broken', () => {
  it('its area stays as it was and says so, the other goes on; mended, all is as before', async () => {
    const draw = await twoPatios();
    const whole = draw(TWO)!;
    const broken = draw(TWO.replace('rectangle 2 x 2 m', 'rectangle 2 x'))!;
    expect(areasOf(broken, false)).toEqual(['area:one']);
    expect(areasOf(broken, true)).toEqual(['area:two']);
    expect(broken.notes).toEqual(['area two as it was before the error in line 16']);
    expect(ofArea(broken, 'area:one').some(({ stale }) => stale)).toBe(false);
    expect(
      ofArea(broken, 'area:two').every(({ stale, content }) => stale === (content === 'findings' ? undefined : true))
    ).toBe(true);
    expect(without(broken)).toEqual(without(whole));
    const box = broken.things.find(({ key }) => key === 'box:lid')!;
    expect(box.stale).toBe(true);
    expect(box.handle!.why).toBe('It is shown as it was before the error in line 16. Mend that first.');
    expect(broken.shapes.filter(({ content }) => content === 'findings').map(({ thing }) => thing)).toContain(
      'finding:area:two'
    );
    // What is sound changes meanwhile.
    const wider = draw(
      TWO.replace('rectangle 2 x 2 m', 'rectangle 2 x').replace('rectangle 3 x 4 m', 'rectangle 3.20 x 4 m')
    )!;
    expect(areasOf(wider, true)).toEqual(['area:two']);
    expect(ofArea(wider, 'area:two')).toEqual(ofArea(broken, 'area:two'));
    expect(ofArea(wider, 'area:one')).not.toEqual(ofArea(broken, 'area:one'));
    expect(draw(TWO)).toEqual(whole);
  });

  it('an area that was never sound is not shown, and is named', async () => {
    const draw = await twoPatios();
    const plan = draw(TWO.replace('rectangle 2 x 2 m', 'rectangle 2 x'))!;
    expect(areasOf(plan, true)).toEqual([]);
    expect(areasOf(plan, false)).toEqual(['area:one']);
    expect(plan.notes).toEqual(['not shown: two: its own text has an error']);
  });

  it.each([
    ['without a name', 'area {'],
    ['whose word is cut short', 'are two {'],
    ['whose word is gone', 'two {'],
    ['without its brace', 'area two']
  ])('an area %s stays as it was', async (_, header) => {
    const draw = await twoPatios();
    draw(TWO);
    const plan = draw(TWO.replace('area two {', header))!;
    expect(areasOf(plan, true)).toEqual(['area:two']);
    expect(areasOf(plan, false)).toEqual(['area:one']);
    expect(plan.notes.join()).toContain('area two as it was before the error in line 15');
    expect(areasOf(draw(TWO)!, true)).toEqual([]);
  });

  it('an area that is deleted is gone, also while another is broken', async () => {
    const draw = await twoPatios();
    draw(TWO);
    const first = TWO.slice(0, TWO.indexOf('area two'));
    expect(areasOf(draw(first)!, true)).toEqual([]);
    draw(TWO);
    const plan = draw(first.replace('rectangle 3 x 4 m', 'rectangle 3 x'))!;
    expect(areasOf(plan, true)).toEqual(['area:one']);
    expect(areasOf(plan, false)).toEqual([]);
    // And does not come back with the next error.
    expect(areasOf(draw(first.replace('area one {', 'area {'))!, true)).toEqual(['area:one']);
  });

  it('without a job there is no plan, and what was sound is known still', async () => {
    const draw = await twoPatios();
    draw(TWO);
    expect(draw(TWO.replace('job "Two patios" {\n  rules britain\n}\n', ''))).toBeUndefined();
    expect(areasOf(draw(TWO.replace('rectangle 2 x 2 m', 'rectangle 2 x'))!, true)).toEqual(['area:two']);
  });
});

/** Samples of so few characters are cut at each of them; of longer ones each line's end, and so many places by a fixed seed. */
const SHORT = 1100;
const PLACES = 40;

function cutsOf(text: string): number[] {
  if (text.length <= SHORT) return Array.from({ length: text.length }, (_, at) => at);
  const below = seeded(text.length);
  const ends = [...text.matchAll(/\n/g)].map(({ index }) => index);
  return [...ends, ...Array.from({ length: PLACES }, () => below(text.length))];
}

describe.each(JOBS)('%s, cut off', job => {
  it('nothing throws, nothing old is shown as new and nothing new as old', { timeout: 600_000 }, async () => {
    const paving = newPaving();
    await evaluated(job, paving);
    drain(paving.livePlan(again(paving, job)));
    let wrong: string[] = [];
    let stale = 0;
    const text = textOf(job);
    // From the end, as one deletes: what is cut was whole just before.
    for (const at of cutsOf(text).sort((a, b) => b - a)) {
      paving.setText(pathOf(job), text.slice(0, at));
      const evaluation = again(paving, job);
      const plan = drain(paving.livePlan(evaluation));
      wrong = [...wrong, ...wrongIn(evaluation, plan).map(told => `cut at ${at}: ${told}`)];
      stale += plan?.things.filter(thing => thing.stale && thing.kind === 'Areas').length ?? 0;
    }
    expect(wrong).toEqual([]);
    expect(stale).toBeGreaterThan(0);
  });
});

function wrongIn({ job, numbers, findings }: Evaluation, plan: LivePlan | undefined): string[] {
  if (job === undefined || numbers === undefined) return plan === undefined ? [] : ['a plan without a job'];
  if (plan === undefined) return ['no plan'];
  const missing = new Set(numbers.quantities.missing);
  const complete = new Set(job.areas.map(({ key }) => key).filter(key => !missing.has(key)));
  const wrong: string[] = [];
  const keys = new Set(plan.things.map(({ key }) => key));
  const told = new Map(plan.things.map(thing => [thing.key, thing]));
  if (keys.size < plan.things.length || new Set(plan.shapes.map(({ key }) => key)).size < plan.shapes.length)
    wrong.push('a key twice');
  for (const shape of plan.shapes) {
    const thing = told.get(shape.thing);
    if (thing === undefined) wrong.push(`${shape.key} stands for nothing`);
    if (shape.content === 'findings' || thing?.area === undefined) continue;
    if (missing.has(thing.area) && shape.stale === undefined && isOfNumbers(shape))
      wrong.push(`${shape.key} is shown as new`);
    if (told.get(thing.area)?.stale && shape.stale === undefined) wrong.push(`${shape.key} is new in an old area`);
    if (complete.has(thing.area) && shape.stale) wrong.push(`${shape.key} is shown as old`);
    if (!complete.has(thing.area) && !missing.has(thing.area) && shape.stale === undefined)
      wrong.push(`${shape.key} is of no area`);
  }
  const isOld = plan.things.some(({ stale }) => stale);
  if (isOld && !plan.notes.some(note => note.includes('before the error'))) wrong.push('what is old is not told');
  if (isOld && !findings.some(({ severity }) => severity === 'error')) wrong.push('something is old without an error');
  return wrong;
}

/** Where an area never was sound its outline alone may be shown, in the ink that says so. */
function isOfNumbers({ content, ink }: LivePlan['shapes'][number]): boolean {
  return content === 'units' || content === 'cuts' || ink === 'outline';
}
