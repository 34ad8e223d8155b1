import { expect, it } from 'vitest';
import { drain, type Paving } from '../../language/paving.ts';
import type { LivePlan, PlanPatch } from '../../language/views/live-plan/live-plan.ts';
import { patchBetween } from '../../language/views/live-plan/plan-patch.ts';
import { applyPatch } from '../../extension/panel/plan/apply-patch.ts';
import { seeded } from '../language/seeded.ts';
import { again, evaluated, newPaving, pathOf, textOf } from '../samples/samples.ts';

function drawn(paving: Paving, job: string): LivePlan {
  return drain(paving.livePlan(again(paving, job)))!;
}

const bytes = (value: LivePlan | PlanPatch): number => Buffer.byteLength(JSON.stringify(value));

it('a patch between any two plans makes the one out of the other: random edits, by a fixed seed', async () => {
  const below = seeded(41);
  let patches = 0;
  let changed = 0;
  for (const job of ['first-job.paving', 'terrace.paving', 'sunny-court.paving', 'mill-yard.paving']) {
    const paving = newPaving();
    await evaluated(job, paving);
    let before = drawn(paving, job);
    for (let edit = 0; edit < 25; edit++) {
      paving.setText(pathOf(job), edited(textOf(job), below));
      const evaluation = again(paving, job);
      const after = drain(paving.livePlan(evaluation));
      if (after === undefined) continue;
      const patch = JSON.parse(JSON.stringify(patchBetween(before, after))) as PlanPatch;
      expect(applyPatch(before, patch)).toEqual(after);
      expect(patchBetween(after, after)).toEqual({});
      patches++;
      if (Object.keys(patch).length > 0) changed++;
      before = after;
    }
  }
  expect(patches).toBeGreaterThan(90);
  expect(changed).toBeGreaterThan(60);
});

/** A number that is another, a line that is gone, two that have changed places, a word cut short. */
function edited(text: string, below: (count: number) => number): string {
  const lines = text.split('\n');
  const at = 3 + below(lines.length - 4);
  switch (below(4)) {
    case 0: {
      const numbers = [...text.matchAll(/(?<=[ (])\d+(?:\.\d+)?(?= |,|\))/g)];
      const { 0: number, index } = numbers[below(numbers.length)]!;
      return text.slice(0, index) + String(Number(number) + 1 + below(9)) + text.slice(index + number.length);
    }
    case 1:
      return lines.toSpliced(at, 1).join('\n');
    case 2:
      return lines
        .with(at, lines[at - 1]!)
        .with(at - 1, lines[at]!)
        .join('\n');
    default:
      return lines.with(at, lines[at]!.slice(0, below(lines[at]!.length + 1))).join('\n');
  }
}

it('what changes places among others goes and comes, and no more than that', async () => {
  const paving = newPaving();
  const plan = drain(paving.livePlan(await evaluated('first-job.paving', paving)))!;
  const [first, ...rest] = plan.shapes;
  const moved = { ...plan, shapes: [...rest, first!] };
  const patch = patchBetween(plan, moved);
  expect(patch).toEqual({ shapes: { gone: [first!.key], put: [{ item: first }] } });
  expect(applyPatch(plan, patch)).toEqual(moved);
});

/*
 * Courses begin at M1 and run towards M2: the far side is M2 to M3 with the slant on to M4. Units are 300 mm long, joints 4 mm.
 * Moved by the step from unit to unit every cut is as it was, one unit further on; moved by less each cut of the slant is
 * another, and is told anew.
 */
const FAR_SIDE = [
  ['point M2 at (front, 0)', 'point M2 at (front + FAR, 0)'],
  ['point M3 at (front, depth - 5 m)', 'point M3 at (front + FAR, depth - 5 m)'],
  ['point M4 at (front - 6 m, depth)', 'point M4 at (front - 6 m + FAR, depth)']
] as const;

it.each([
  ['a unit and its joint', '304 mm', 0.1],
  ['a unit without its joint', '300 mm', 0.2]
])('moving the far side of the market by %s, %s, sends little of the drawing', async (_, far, most) => {
  const job = 'square/square.paving';
  const paving = newPaving();
  await evaluated(job, paving);
  const before = drawn(paving, job);
  const site = 'square/site.paving';
  const moved = FAR_SIDE.reduce((text, [old, now]) => text.replace(old, now.replace('FAR', far)), textOf(site));
  expect(moved.split('FAR').length + moved.split(far).length).toBe(5);
  paving.setText(pathOf(site), moved);
  const after = drawn(paving, job);
  const patch = patchBetween(before, after);
  const share = bytes(patch) / bytes(after);
  console.log(
    `The far side of the market by ${far}: a patch of ${bytes(patch)} bytes for a drawing of ${bytes(after)}, ${(share * 100).toFixed(1)} %.`
  );
  expect(patch.shapes!.put.length).toBeGreaterThan(20);
  expect(patch.shapes!.set!.length).toBeGreaterThan(10);
  expect(share).toBeLessThan(most);
  expect(applyPatch(before, patch)).toEqual(after);
});
