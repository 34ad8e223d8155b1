import { describe, expect, it } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import type { LivePlan, LiveShape } from '../../language/views/live-plan/live-plan.ts';
import { inMemory } from '../language/in-memory.ts';
import { evaluated, newPaving } from '../samples/samples.ts';

const NEIGHBOURS = `job "Neighbours" {
  rules britain
}
site { soil common-earth }
unit block { size 200 x 100 x 60 mm }
area one {
  outline rectangle 3 x 4 m
  traffic foot
  paving  block in running-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   {
    left meets house-wall
    near meets house-wall
    right meets house-wall
    far meets house-wall
  }
}
area two {
  outline rectangle 2 x 4 m, corner (3, 0) m
  traffic foot
  paving  block in running-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   {
    left meets house-wall
    near meets house-wall
    right meets house-wall
    far meets house-wall
  }
}
`;

async function drawn(job: string): Promise<LivePlan> {
  const paving = newPaving();
  return drain(paving.livePlan(await evaluated(job, paving)))!;
}

type Text = Extract<LiveShape, { kind: 'text' }>;

const textsOf = ({ shapes }: LivePlan, content: string): Text[] =>
  shapes.filter((shape): shape is Text => shape.kind === 'text' && shape.content === content);

describe('heights', () => {
  it('stand behind a level mark, which the legend explains, and the description tells what they count from', async () => {
    const plan = await drawn('drive.paving');
    const heights = textsOf(plan, 'heights');
    expect(heights.length).toBeGreaterThan(5);
    expect(heights.filter(({ text }) => !/^▼ .*20\.\d{3} m/.test(text) && !/^▼ .*19\.\d{3} m/.test(text))).toEqual([]);
    const counted =
      'Heights at points and corners are of the finish. Heights count from nought; garage-floor lies at 20.000 m.';
    expect(plan.legend.filter(({ content }) => content === 'heights').map(({ text }) => text)).toEqual([
      `▼ ${counted}`
    ]);
    expect(plan.description).toContain(counted);
  });

  it('of an area that is level are told once, at its name, and in the facts of its points', async () => {
    const plan = await drawn('square/square.paving');
    const level = plan.shapes.find(({ key }) => key === 'area:market/level') as Text;
    const name = plan.shapes.find(({ key }) => key === 'area:market/name') as Text;
    expect(level.text).toBe('level at 112.340 m, no fall');
    expect([level.x, level.y, level.content]).toEqual([name.x, name.y, 'heights']);
    const market = plan.things.find(({ key }) => key === 'area:market')!;
    expect(market.facts).toContainEqual(['Finish', 'level at 112.340 m, no fall']);
    expect(textsOf(plan, 'heights').filter(({ thing }) => thing.startsWith('point:M'))).toEqual([]);
    const corner = plan.things.find(({ key }) => key === 'point:M4')!;
    expect(corner.facts).toContainEqual(['Finish', '112.340 m']);
  });

  it('of an area that falls stay at its corners', async () => {
    const plan = await drawn('terrace.paving');
    expect(plan.shapes.some(({ key }) => key === 'area:terrace/level')).toBe(false);
    expect(textsOf(plan, 'heights').map(({ thing }) => thing)).toEqual(
      expect.arrayContaining(['point:A', 'point:B', 'point:C', 'point:D', 'point:E'])
    );
  });
});

describe.each(['courtyard.paving', 'drive.paving', 'path.paving', 'terrace.paving'])('falls of %s', job => {
  it('have their text where the arrow stands, and arrows of an area stand apart', async () => {
    const plan = await drawn(job);
    const marks = plan.shapes.filter(shape => shape.kind === 'mark' && shape.sign === 'fall') as Text[];
    expect(marks.length).toBeGreaterThan(0);
    const areaOf = new Map(plan.things.map(({ key, area }) => [key, area]));
    for (const mark of marks) {
      const text = plan.shapes.find(({ key }) => key === `${mark.key}/text`) as Text;
      expect([text.x, text.y, text.content]).toEqual([mark.x, mark.y, 'falls']);
      const others = marks.filter(other => other !== mark && areaOf.get(other.thing) === areaOf.get(mark.thing));
      const apart = others.map(other => Math.hypot(other.x - mark.x, other.y - mark.y));
      expect(Math.min(...apart)).toBeGreaterThanOrEqual(1499);
    }
  });
});

describe('lengths of sides', () => {
  it('matter most where laying starts, then the longest first, and before heights', async () => {
    const lengths = textsOf(await drawn('terrace.paving'), 'dimensions');
    const start = lengths.filter(({ rank }) => rank === 3);
    expect(start.map(({ thing }) => thing)).toEqual(['area:terrace/edges/A to B']);
    const others = textsOf(await drawn('drive.paving'), 'dimensions').filter(({ rank }) => rank !== 3);
    others.sort((one, other) => one.rank - other.rank);
    expect(others.length).toBeGreaterThan(3);
    expect(others.every(({ rank }) => rank > 3 && rank < 4)).toBe(true);
    const metres = others.map(({ text }) => Number.parseFloat(text));
    expect(metres).toEqual([...metres].sort((one, other) => other - one));
  });

  it('are told once of a side that two areas share', async () => {
    const paving = new Paving(inMemory({ 'job.paving': NEIGHBOURS }));
    await paving.load('job.paving');
    const plan = drain(paving.livePlan(drain(paving.evaluate('job.paving'))!))!;
    const all = textsOf(plan, 'dimensions').map(({ x, y, text }) => `${text} at ${x}, ${y}`);
    expect(all.filter(text => text === '4.000 m at 3000, 2000')).toHaveLength(1);
    expect(all).toHaveLength(7);
  });
});

describe('what stands or lies there', () => {
  it('has its name on the plan, and how it is cut down in its facts', async () => {
    const plan = await drawn('terrace.paving');
    const text = (key: string): Text => plan.shapes.find(shape => shape.key === key) as Text;
    expect(text('box:old-sprinkler/buried/text')).toMatchObject({ text: 'box old-sprinkler', content: 'names' });
    expect(plan.things.find(({ key }) => key === 'box:old-sprinkler')!.facts).toContainEqual([
      'Its lid',
      'cut the lid down at least 10 11/16 in, from the lid as it is'
    ]);
    expect(text('box:shut-off/name')).toMatchObject({ text: 'box shut-off', content: 'names', room: 431.8 });
    const pipe = text('pipe:garden-water/line/text');
    expect(pipe.text).toBe('garden-water, about 14 in deep, not proven');
    const others = textsOf(plan, 'things').filter(({ key }) => key !== pipe.key);
    expect(others.length).toBeGreaterThan(2);
    expect(others.every(({ rank }) => rank > pipe.rank)).toBe(true);
    const drive = await drawn('drive.paving');
    expect(textsOf(drive, 'names').map(one => one.text)).toContain('channel garage-channel');
    expect(textsOf(drive, 'things').map(one => one.text)).toContain('foul-drain (sewer), 1100 mm deep');
  });

  it('has ticks across the line at both ends of a door or a gate', async () => {
    const { shapes } = await drawn('terrace.paving');
    for (const gate of ['gate:garden-door', 'gate:side-gate']) {
      const jambs = shapes.find(({ key }) => key === `${gate}/jambs`) as Extract<LiveShape, { kind: 'path' }>;
      expect([jambs.ink, jambs.thing, jambs.loops.length]).toEqual(['tick', gate, 2]);
      const leaf = shapes.filter(({ thing, ink }) => thing === gate && ink === 'leaf') as (typeof jambs)[];
      const [x1, y1, , x2, y2] = leaf[0]!.loops[0]!;
      const middles = jambs.loops.map(([ax, ay, , bx, by]) => [(ax! + bx!) / 2, (ay! + by!) / 2]);
      expect(middles.flat().map(Math.round)).toEqual([x1, y1, x2, y2].map(value => Math.round(value!)));
      for (const [ax, ay, , bx, by] of jambs.loops)
        expect((bx! - ax!) * (x2! - x1!) + (by! - ay!) * (y2! - y1!)).toBeCloseTo(0, -3);
    }
  });
});
