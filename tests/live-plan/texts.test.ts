import { describe, expect, it } from 'vitest';
import { drain } from '../../language/paving.ts';
import type { LivePlan, LiveShape } from '../../language/views/live-plan/live-plan.ts';
import { evaluated, newPaving } from '../samples/samples.ts';

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
