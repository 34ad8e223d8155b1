// What a drag on the plan makes of the text: the smallest edit, with its measure and style kept, or why there is none.
import { expect, test } from 'vitest';
import { applyChanges } from '../../language/editing/apply-changes.ts';
import { whyNotDragged } from '../../language/editing/dragging/why-not-dragged.ts';
import type { Point } from '../../language/geometry/index.ts';
import { Paving } from '../../language/paving.ts';
import { FILES, JOBS, textOf } from '../samples/samples.ts';
import { DraggedJob } from './dragging.ts';
import { inMemory } from './in-memory.ts';
import { seeded } from './seeded.ts';

interface Lines {
  readonly system?: 'metric' | 'feet-and-inches';
  /** Beside A (0, 0), B (6 m, 0), C (6 m, 4 m), D (0, 4 m). */
  readonly points?: string;
  readonly outline?: string;
  readonly start?: string;
  readonly things?: string;
  readonly bond?: string;
}

function job({ system = 'metric', points = '', outline = 'A to B to C to D', start = '', things = '', bond }: Lines) {
  return `job "Patio" {
  rules britain
  show  ${system}
}
site { soil common-earth, benchmark step, ground level with step }
unit slab { size 300 x 200 x 50 mm }
let wide = 2 m
let deep = 1 m

point A at (0, 0)
point B at (6, 0) m
point C at (6, 4) m
point D at (0, 4) m
${points}
area patio {
  outline ${outline}
  traffic foot
  finish  level with step
  paving  slab in ${bond ?? 'running-bond'}, joints 3 mm
  ${start}
  bed     sharp-sand 30 mm
  base    type-1 150 mm
  edges   { all round meets house-wall }
}
${things}
`;
}

/** What does not change from row to row is worked out once. */
const paving = new Paving(inMemory({}));
const made = async (lines: Lines) => DraggedJob.of({ 'job.paving': job(lines) }, 'job.paving', paving);

/** The line that changed, as it reads then; why none did. */
async function lineAfter(lines: Lines, thing: string, by: Point): Promise<string> {
  const one = await made(lines);
  const at = one.at(thing);
  const after = one.dragged(thing, at === undefined ? by : { x: at.x + by.x, y: at.y + by.y });
  if ('why' in after) return after.why;
  const [was, is] = [job(lines), after.text].map(text => text.split('\n'));
  const changed = is!.filter((line, index) => line !== was![index]);
  expect(changed.length, 'lines changed').toBeLessThanOrEqual(1);
  return changed[0]?.trim() ?? '';
}

const INCH = 0.0254;
const inches = (x: number, y: number): Point => ({ x: x * INCH, y: y * INCH });

test.each<[written: string, by: Point, after: string]>([
  // Metric: as many decimals as were written, or as many as a millimetre takes.
  ['(4.80, 1.00) m', { x: 0.03, y: 0.5 }, '(4.83, 1.50) m'],
  ['(4.80, 1.00) m', { x: 0.0304, y: 0 }, '(4.83, 1.00) m'],
  ['(4.80, 1.00) m', { x: 0.0306, y: -1 }, '(4.831, 0) m'],
  ['(4.80, 1.00) m', { x: -4.9, y: 0 }, '(-0.10, 1.00) m'],
  ['(-0.80, -0.6) m', { x: 0.01, y: 0.7 }, '(-0.79, 0.1) m'],
  ['(5, 2) m', { x: 1, y: 0.25 }, '(6, 2.25) m'],
  ['(4800, 1000) mm', { x: 0.0304, y: 0.5 }, '(4830, 1500) mm'],
  ['(480, 100) cm', { x: 0.0304, y: 0.051 }, '(483, 105.1) cm'],
  ['(4.8005 m, 540 cm)', { x: 0.0303, y: 0.003 }, '(4.8308 m, 540.3 cm)'],
  ['(5 m 40 cm, 1 m)', { x: 0.125, y: 0 }, '(5 m 52.5 cm, 1 m)'],
  ['(0, 5.40) m', { x: 0.5, y: 0 }, '(0.50, 5.40) m'],
  ['(0, 5.4 m)', { x: 0.35, y: 0.2 }, '(0.35, 5.6 m)'],
  ['(-4.20 m, 0)', { x: 0, y: 0.35 }, '(-4.20 m, 0.35 m)'],
  ['(4, 2.5 m)', { x: 0, y: -2.5 }, '(4 m, 0)'],
  ['(0, 0)', { x: 1.25, y: -0.4 }, '(1.25, -0.40) m'],
  ['(1/2, 1) m', { x: 0.25, y: 0 }, '(0.75, 1) m'],
  // A tape's: sixteenths, and the spelling that was written.
  ['(18 ft 6 in, 0)', inches(1.5, 0), '(18 ft 7 1/2 in, 0)'],
  ['(18 ft 6 in, 0)', inches(-6, 4), '(18 ft, 4 in)'],
  ['(18 ft 6 in, 0)', inches(6.03, 27), '(19 ft, 2 ft 3 in)'],
  ['(18 ft, 2 ft)', inches(0.5, -30), '(18 ft 1/2 in, -6 in)'],
  [`(5'6", 3'0")`, inches(1, 0), `(5'7", 3'0")`],
  [`(5' 6 1/2", 3')`, inches(-0.25, 3.5), `(5' 6 1/4", 3' 3 1/2")`],
  ['(7 ft 2-3/8 in, 3 ft .5 in)', inches(0.25, 0.25), '(7 ft 2-5/8 in, 3 ft .75 in)'],
  ['(7 ft 2-3/8 in, 2½ ft)', inches(1, 3), '(7 ft 3-3/8 in, 2¾ ft)'],
  ['(20 ft, 11½ ft)', inches(0, 1.25), '(20 ft, 11 ft 7¼ in)'],
  ['(31 1/4 in, 12 in)', inches(20, 0.0625), '(51 1/4 in, 12 1/16 in)'],
  ['(31 1/32 in, 12 in)', inches(1 / 32, 0), '(31 1/16 in, 12 in)'],
  ['(18.5 ft, 6.25 ft)', inches(6, 0), '(19.0 ft, 6.25 ft)'],
  ['(9, 5) ft', inches(24, -12), '(11, 4) ft'],
  ['(9, 5) ft', inches(3, 0), '(9 ft 3 in, 5 ft)'],
  ['(9, 0) ft', inches(3, 0), '(9 ft 3 in, 0)'],
  ['(9, 5 ft)', inches(0, 3), '(9 ft, 5 ft 3 in)'],
  ['(18 feet 6 inches, 2 feet)', inches(1, 3), '(18 feet 7 inches, 2 feet 3 inches)'],
  ['(2 yd, 3 ft)', inches(36, 0), '(3 yd, 3 ft)'],
  ['(2 yd, 3 ft)', inches(6, 0), '(6 ft 6 in, 3 ft)']
])('a point at %s', async (written, by, after) => {
  expect(await lineAfter({ points: `point N at ${written}  // a nail` }, 'point:N', by)).toBe(
    by.x === 0 && by.y === 0 ? '' : `point N at ${after}  // a nail`
  );
});

test('a nought that had no measure takes that of the job', async () => {
  const lines: Lines = { system: 'feet-and-inches', points: 'point N at (0, 0)' };
  expect(await lineAfter(lines, 'point:N', inches(15, -0.5))).toBe('point N at (1 ft 3 in, -1/2 in)');
});

test.each<[written: string, by: Point, after: string]>([
  ['1.50 m along A to B, 400 mm out', { x: 0.2, y: 0.05 }, '1.70 m along A to B, 450 mm out'],
  ['1.50 m along A to B, 400 mm out', { x: 0, y: -0.5 }, '1.50 m along A to B, -100 mm out'],
  ['1.50 m along B to A, 400 mm right', { x: 0.2, y: -0.6 }, '1.30 m along B to A, 200 mm left'],
  ['1.50 m along A to C, 400 mm left', { x: 0.6, y: 0.4 }, '2.221 m along A to C, 400 mm left'],
  ['5 ft along A to D', inches(0, 6), '5 ft 6 in along A to D'],
  ['5 ft along A to D', inches(3, 6), '5 ft 6 in along A to D, 3 in right'],
  ['5 ft along A to D', inches(-3, 0), '5 ft along A to D, 3 in out'],
  ['2 m from B at 90 degrees', { x: 0, y: 0.5 }, '2.5 m from B at 90 degrees'],
  ['2 m from B at 90 degrees from B to A', { x: 0.1, y: 0.1 }, '1.903 m from B at 93.01 degrees from B to A'],
  ['2 m from B at -170°', { x: 0, y: 1 }, '2.075 m from B at -198.33°']
])('a point %s', async (written, by, after) => {
  expect(await lineAfter({ points: `point N at ${written}` }, 'point:N', by)).toBe(`point N at ${after}`);
});

test.each<[written: string, thing: string, after: string]>([
  ['box lid in patio { rectangle 400 x 300 mm, centre (2, 1) m }', 'box:lid', 'centre (2.25, 1.4) m }'],
  ['pit tree in patio { circle 1.20 m across, centre (2, 1) m }', 'pit:tree', 'centre (2.25, 1.4) m }'],
  [
    'box lid in patio { rectangle 400 x 300 mm, corner (2, 1) m, turned 30 degrees }',
    'box:lid',
    'corner (2.25, 1.4) m, turned 30 degrees }'
  ],
  [
    'box lid in patio { rectangle 400 x 300 mm, centre 1 m along C to B, 2 m out }',
    'box:lid',
    'centre 0.6 m along C to B, 1.75 m out }'
  ],
  [
    'box lid in patio { outline walk from (2, 1) m, right 400 mm, up 400 mm, left 400 mm, back }',
    'box:lid',
    'walk from (2.25, 1.4) m, right'
  ],
  [
    'drain well in patio { \n  gully circle 200 mm across, centre (2, 1) m\n  grate level with step\n}',
    'drain:well',
    'centre (2.25, 1.4) m'
  ],
  [
    'inset rose in patio { \n  circle 1 m across, centre (2, 1) m\n  paving slab in stack-bond, joints 3 mm\n}',
    'inset:rose',
    'centre (2.25, 1.4) m'
  ]
])('%s', async (things, thing, after) => {
  expect(await lineAfter({ things }, thing, { x: 0.25, y: 0.4 })).toContain(after);
});

test.each<[lines: Lines, thing: string, by: Point, after: string]>([
  [{ start: 'start shifted (70, 0) mm' }, 'start', { x: 0.01, y: 0.02 }, 'start shifted (80, 20) mm'],
  [
    { start: 'start along D to A, shifted (70, 10) mm' },
    'start',
    { x: 0.01, y: 0.02 },
    'start along D to A, shifted (50, 20) mm'
  ],
  [
    { outline: 'rectangle 5 x 4 m, corner (1, 2) m' },
    'corner-1',
    { x: 0.5, y: 0.25 },
    'outline rectangle 5 x 4 m, corner (1.5, 2.25) m'
  ],
  [
    { outline: 'rectangle 5 x 4 m, corner 1 m along B to C, 1 m out' },
    'corner-1',
    { x: 0.5, y: 0.25 },
    'outline rectangle 5 x 4 m, corner 1.25 m along B to C, 0.5 m out'
  ],
  [
    { outline: 'walk from (1, 2) m, right 3 m, up 2 m, left 3 m, back' },
    'corner-1',
    { x: 0.5, y: 0 },
    'outline walk from (1.5, 2) m, right 3 m, up 2 m, left 3 m, back'
  ],
  [
    { outline: 'A to B to C to D bowed 250 mm out' },
    'side-3/arc',
    { x: 0.2, y: 0.05 },
    'outline A to B to C to D bowed 300 mm out'
  ],
  [
    { outline: 'A to B to C to D bowed 250 mm' },
    'side-3/arc',
    { x: 0, y: -0.5 },
    'outline A to B to C to D bowed 250 mm in'
  ],
  [
    { outline: 'A to B to C to D bowed 0.25 m in' },
    'side-3/arc',
    { x: 0, y: 0.55 },
    'outline A to B to C to D bowed 0.30 m out'
  ],
  [{ outline: 'A to B to C to D radius 5 m' }, 'side-3/arc', { x: 0, y: 1 }, 'outline A to B to C to D radius 3.25 m'],
  [
    { outline: 'A to B to C to D, rounded 500 mm at C and D' },
    'side-3/arc',
    { x: -0.1, y: -0.1 },
    'outline A to B to C to D, rounded 841 mm at C and D'
  ],
  [
    { outline: 'circle 3 m across, centre (3, 2) m' },
    'side-1/arc',
    { x: -0.25, y: 0 },
    'outline circle 3.5 m across, centre (3, 2) m'
  ],
  [
    { outline: 'circle radius 1.50 m, centre (3, 2) m' },
    'side-1/arc',
    { x: 0.25, y: 0 },
    'outline circle radius 1.25 m, centre (3, 2) m'
  ],
  [
    { outline: 'walk from (1, 2) m, right 3 m, up 2 m bowed 300 mm out, left 3 m, back' },
    'side-2/arc',
    { x: 0.1, y: 0 },
    'outline walk from (1, 2) m, right 3 m, up 2 m bowed 400 mm out, left 3 m, back'
  ]
])('of an area %j: %s', async (lines, part, by, after) => {
  expect(await lineAfter(lines, `area:patio/${part}`, by)).toBe(after);
});

test.each([
  'start shifted (70, 10) mm',
  'start along D to A, shifted (70, 10) mm',
  'start along A to B, from B, shifted (70, 10) mm',
  'start along A to B, shifted (70, 10) mm, turned 30 degrees'
])('%s: laying begins where its start was dragged', async start => {
  const one = await made({ start });
  const { x, y } = one.at('area:patio/start')!;
  const to = { x: x + 0.04 * Math.sign(3 - x), y: y + 0.06 * Math.sign(2 - y) };
  const after = one.dragged('area:patio/start', to) as { text: string };
  const at = (await DraggedJob.of({ 'job.paving': after.text }, 'job.paving', paving)).at('area:patio/start')!;
  expect(Math.hypot(at.x - to.x, at.y - to.y)).toBeLessThan(0.0008);
});

// ---- what can't be dragged ----

const why = async (lines: Lines, thing: string): Promise<string | undefined> => {
  const { look, evaluation } = await made(lines);
  return whyNotDragged(look, evaluation.job)(thing);
};

test.each<[lines: Lines, thing: string, why: string]>([
  [{ points: 'point N at (wide, 0)' }, 'point:N', 'x of N is worked out from wide: change that in line 7.'],
  [
    { points: 'point N at (1 m, deep + wide / 2)' },
    'point:N',
    'y of N is worked out from deep and wide: change these in lines 7 and 8.'
  ],
  [
    { points: 'point N at (9.20 / 2, 1) m' },
    'point:N',
    'x of N is worked out, `9.20 / 2`: write what it comes to in line 14, and it can be dragged.'
  ],
  [
    { points: 'point N at 1 m along A to B, deep out' },
    'point:N',
    'How far N lies off A to B is worked out from deep: change that in line 8.'
  ],
  [
    { points: 'point N at deep from A at 10 degrees' },
    'point:N',
    'How far N lies from A is worked out from deep: change that in line 8.'
  ],
  [
    { points: 'point N at 1 m from A towards C' },
    'point:N',
    'N lies from A towards C: drag these, or change how far, in line 14.'
  ],
  [{ points: 'point N halfway A to C' }, 'point:N', 'N lies halfway between A and C: drag these.'],
  [
    { points: 'point N taped 2 m from A, 5 m from B, left of A to B' },
    'point:N',
    'N is found by its tapes: change what they read in line 14.'
  ],
  [{ points: 'point N at (1 m, 2 m' }, 'point:N', 'Mend the error in line 14 first.'],
  [
    { points: 'point N at (1 m, 2 ft\n 6 in)' },
    'point:N',
    'y of N is written over several lines: write it in one, and it can be dragged.'
  ],
  [{ things: 'box lid in patio { outline A to B to C }' }, 'box:lid', 'The corners of lid are points: drag these.'],
  [
    { things: 'box lid in patio { rectangle 400 x 300 mm }' },
    'box:lid',
    'The place of lid is not said: write `, centre` and a place behind its size in line 25.'
  ],
  [{ things: 'box lid in patio { lid level with step }' }, 'box:lid', 'lid has no shape: write one in line 25.'],
  [
    { things: 'drain rill in patio { channel along A to B, 100 mm wide }' },
    'drain:rill',
    'rill lies along A to B: drag these points.'
  ],
  [
    {},
    'area:patio/start',
    'Where laying begins in patio is not said: write `start shifted (0, 0)`, and it can be dragged.'
  ],
  [
    { start: 'start whole units along A to B' },
    'area:patio/start',
    'Where laying begins in patio follows from `whole units along A to B`: write `, shifted (0, 0)` behind it in line 20, and it can be dragged.'
  ],
  [
    { start: 'start shifted (deep, 0)' },
    'area:patio/start',
    'x of the start of patio is worked out from deep: change that in line 8.'
  ],
  [
    { outline: 'rectangle 5 x 4 m' },
    'area:patio/corner-1',
    'This corner of patio follows from its size in line 16: change that, or write the rectangle as four points.'
  ],
  [
    { outline: 'rectangle 5 x 4 m, centre (3, 2) m' },
    'area:patio/corner-1',
    'This corner of patio follows from its size and place in line 16: change that, or write the rectangle as four points.'
  ],
  [
    { outline: 'walk from (1, 2) m, right 3 m, up 2 m, left 3 m, back' },
    'area:patio/corner-2',
    'This corner of patio follows from the lengths of its legs: change these in line 16.'
  ],
  [
    { points: 'point N at (3, 5) m', outline: 'A to B to C to D through N' },
    'area:patio/side-3/arc',
    'C to D runs through N: drag that point.'
  ],
  [
    { outline: 'A to B to C to D bowed deep / 2' },
    'area:patio/side-3/arc',
    'The bow of C to D is worked out from deep: change that in line 8.'
  ],
  [
    { outline: 'circle 3 m across' },
    'area:patio/side-1/arc',
    'patio has no centre: write `, centre` and a place behind its size in line 16.'
  ],
  [{}, 'point:Z', 'The text has no such thing any more.'],
  [{}, 'area:patio', 'The text has no such thing any more.']
])('%j: %s', async (lines, thing, sentence) => {
  expect(await why(lines, thing)).toBe(sentence);
  expect((await made(lines)).drag(thing, { x: 1, y: 1 })).toEqual({ why: sentence });
});

test('what the sentences tell to write can be dragged, and brings nothing up', async () => {
  const before = await made({ start: 'start whole units along A to B' });
  const after = await made({ start: 'start whole units along A to B, shifted (0, 0)' });
  expect(whyNotDragged(after.look, after.evaluation.job)('area:patio/start')).toBeUndefined();
  expect(after.evaluation.findings.map(({ id }) => id)).toEqual(before.evaluation.findings.map(({ id }) => id));
});

test.each<[lines: Lines, thing: string, to: Point, why: RegExp]>([
  [{}, 'point:B', { x: NaN, y: 0 }, /^No job reaches as far as that\.$/],
  [{}, 'point:B', { x: 0, y: -Infinity }, /^No job reaches as far as that\.$/],
  [{}, 'point:B', { x: 10_001, y: 0 }, /^No job reaches as far as that\.$/],
  [{ points: 'point N at 1 m from A at 20 degrees' }, 'point:N', { x: 0, y: 0 }, /no nearer to the point/],
  [
    { points: 'point N at 1 m from A at 20 degrees' },
    'point:N',
    { x: 9_999, y: 9_999 },
    /^It can't lie there\. .*far too large/
  ],
  [{ outline: 'A to B to C to D bowed 250 mm' }, 'area:patio/side-3/arc', { x: 3, y: 4 }, /as good as straight/],
  [
    { outline: 'A to B to C to D radius 5 m' },
    'area:patio/side-3/arc',
    { x: 3, y: 8 },
    /^A radius makes half a circle at most/
  ],
  [
    { outline: 'A to B to C to D, rounded 500 mm at C' },
    'area:patio/side-3/arc',
    { x: 0, y: 0 },
    /^It can't lie there\. /
  ]
])('refused there: %j, %s to %j', async (lines, thing, to, sentence) => {
  const drag = (await made(lines)).drag(thing, to);
  expect('why' in drag && drag.why).toMatch(sentence);
});

test('a point that stands in a file that is used is moved there', async () => {
  const texts = {
    'job.paving': `use "site.paving"\n${job({ outline: 'A to B to C to N' })}`,
    'site.paving': 'point N at (0, 5) m\n'
  };
  const one = await DraggedJob.of(texts);
  expect(one.dragged('point:N', { x: 0.5, y: 5 })).toEqual({ file: 'site.paving', text: 'point N at (0.5, 5) m\n' });
});

test('a number that stays is not touched, and no edit takes in more than numbers', async () => {
  const one = await made({ points: 'point N at (18 ft 6 in, 0)  // a nail' });
  const drag = one.drag('point:N', { x: 18.5 * 12 * INCH, y: 3 * INCH });
  expect('edits' in drag && drag.edits).toEqual([
    { place: { file: 'job.paving', line: 14, column: 25, endLine: 14, endColumn: 26 }, text: '3 in' }
  ]);
});

// ---- the samples ----

const SAMPLES = Object.fromEntries(FILES.map(file => [file, textOf(file)]));

/** How numbers are written: as many decimals, the same measures and signs. */
const formOf = (text: string): string =>
  text.replace(/\d+(?:\.\d+)?/g, number => `#${number.split('.')[1]?.length ?? 0}`);

/** What a drag may write or take out: digits and what stands between them, measures, and the side of a line. */
const NUMBERS = /^(?:[-\d\s./½¼¾⅛⅜⅝⅞'"]|\b(?:m|mm|cm|ft|in|out|left|right)\b)*$/;

/** Where an arc can't go: its radius would be none, or not fit. */
const NOT_FOR_ARCS =
  /^(?:It can't lie there|A radius makes half a circle at most|There it would be as good as straight)/;

test('every handle of every sample, dragged at random, and back', async () => {
  const below = seeded(20_271);
  const [dragged, restored] = [[] as string[], [] as string[]];
  for (const file of JOBS) {
    const job = await DraggedJob.of(SAMPLES, file);
    const why = whyNotDragged(job.look, job.job);
    const step = job.job.system === 'metric' ? 0.01 : INCH;
    const off = (): number => (below(61) - 30) * step;
    for (const thing of job.things) {
      const from = job.at(thing);
      if (from === undefined) continue;
      const to = { x: from.x + off(), y: from.y + off() };
      const drag = job.drag(thing, to);
      const isArc = thing.endsWith('/arc');
      if ('why' in drag) {
        expect(isArc && NOT_FOR_ARCS.test(drag.why) ? undefined : drag.why, thing).toBe(why(thing));
        continue;
      }
      expect(why(thing), thing).toBeUndefined();
      const original = job.textOf(drag.file);
      for (const { place, text } of drag.edits) {
        const line = original.split('\n')[place.line - 1]!;
        expect(place.endLine, thing).toBe(place.line);
        expect(`${line.slice(place.column - 1, place.endColumn - 1)} ${text}`, thing).toMatch(NUMBERS);
      }
      dragged.push(thing);
      if (isArc || thing.endsWith('/start')) continue;
      const text = applyChanges(original, drag.edits);
      const moved = job.with(drag.file, text);
      const at = moved.at(thing)!;
      expect(Math.hypot(at.x - to.x, at.y - to.y), thing).toBeLessThan(FINEST[job.job.system]);
      if (formOf(original) === formOf(text)) {
        expect(moved.dragged(thing, from), thing).toEqual({ file: drag.file, text: original });
        restored.push(thing);
      }
      job.with(drag.file, original);
    }
  }
  // Most numbers keep their form: two decimals stay two.
  expect(dragged.length).toBeGreaterThan(60);
  expect(restored.length).toBeGreaterThan(30);
}, 120_000);

/** Half a millimetre or a thirty-second of an inch each way, m. */
const FINEST = {
  metric: Math.hypot(0.0005, 0.0005) + 1e-6,
  imperial: Math.hypot(INCH / 32, INCH / 32) + 1e-6
} as const;
