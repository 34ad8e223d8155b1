import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Drawing } from '../../language/drawing/drawing.ts';
import { INKS } from '../../language/drawing/inks.ts';
import { svgOf } from '../../language/drawing/svg/svg.ts';
import { areaOf, cornerLoop, overlapArea, rectangleLoop, selfCrossing } from '../../language/geometry/index.ts';
import { overlayDrawing, type OverlayWords } from '../../language/views/plan/overlay/overlay-drawing.ts';
import { overlayText } from '../../language/views/plan/overlay/overlay-text.ts';
import { planChanges } from '../../language/views/plan/overlay/plan-changes.ts';
import { fromTo } from '../../language/views/plan/overlay/point-changes.ts';
import type { PlanInput } from '../../language/views/plan/plan-input.ts';
import type { Colours } from '../../language/views/text/colours.ts';
import { labelsOf, textsOverOthers } from '../drawing/labels.ts';
import { lattice, terrace, yard } from '../drawing/plans.ts';
import { movedLoop, randomOutline, seededNumbers } from '../geometry/random-outlines.ts';
import { EDITED, planOfSample } from './overlay-plans.ts';

/*
 * Plans over each other as they are drawn and told: `UPDATE=1 npx vitest run --config .config/vitest.config.ts
 * tests/comparing/overlay.test.ts` writes them anew; look at them in a browser before they are kept.
 */
const UPDATE = process.env.UPDATE === '1';
const GOLDEN = path.join(import.meta.dirname, 'golden');

const as = (text: string): string => text;
const PLAIN: Colours = { strong: as, faint: as, error: as, warning: as, note: as };

function asKept(name: string, text: string): string {
  const file = path.join(GOLDEN, name.replaceAll(' ', '-'));
  if (UPDATE) writeFileSync(file, text);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}

const wordsFor = ({ title, system }: PlanInput): OverlayWords => ({
  title,
  system,
  between: 'quote-1 to the working copy'
});

function textsIn(drawing: Drawing, layer: string): string[] {
  const shapes = drawing.layers.find(({ key }) => key === layer)?.shapes ?? [];
  return shapes.flatMap(shape => (shape.kind === 'label' ? [shape.text] : []));
}

/** One area with an outline, and nothing else. */
function planWith(areas: Readonly<Record<string, PlanInput['areas'][number]['outline']>>): PlanInput {
  const { site, ...plan } = { site: undefined, ...terrace() };
  expect(site).toBeUndefined();
  return {
    ...plan,
    areas: Object.entries(areas).map(([name, outline]) => ({
      key: `area:${name}`,
      name,
      outline,
      sides: outline.map((_, index) => ({
        key: `area:${name}/side-${index + 1}`,
        name: `${index + 1}`,
        length: 1,
        flush: false
      })),
      keptOut: [],
      parts: []
    }))
  };
}

describe.each(Object.entries(EDITED))('%s', (name, { sample, edits }) => {
  let plans: readonly [PlanInput, PlanInput];
  let drawing: Drawing;
  let text: string;

  beforeAll(async () => {
    plans = [await planOfSample(sample), await planOfSample(sample, edits)];
    drawing = overlayDrawing(...plans, wordsFor(plans[1]));
    text = `${overlayText(...plans, wordsFor(plans[1]), PLAIN)}\n`;
  });

  it('is drawn as before', () => {
    const svg = svgOf(drawing);
    expect(svg).toBe(asKept(`${name}.svg`, svg));
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('is told as before', () => {
    expect(text).toBe(asKept(`${name}.txt`, text));
  });

  it('has a key of its own for every shape, and no text over another', () => {
    const keys = drawing.layers.flatMap(({ shapes }) => shapes.map(({ key }) => key));
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
    expect(textsOverOthers(drawing)).toEqual([]);
  });

  it('tells every sign that is drawn in its legend', () => {
    const legend = drawing.layers.find(({ key }) => key === 'legend')!.shapes;
    const told = new Set<string>(legend.map(({ ink }) => ink));
    const drawn = drawing.layers
      .filter(({ key }) => !['sheet', 'legend', 'title', 'scale-bar', 'names'].includes(key))
      .flatMap(({ shapes }) => shapes.map(({ ink }) => ink));
    expect([...new Set(drawn)].filter(ink => !told.has(ink))).toEqual(['kept-ground']);
    expect(legend.some(shape => shape.kind === 'label' && shape.text.startsWith('…'))).toBe(false);
  });

  it('is the other way round from newer to older: what came goes, what moved moves back', () => {
    const there = planChanges(...plans);
    const back = planChanges(plans[1], plans[0]);
    const turned = { comes: 'goes', goes: 'comes' } as Readonly<Record<string, string>>;
    const fates = (all: readonly { key: string; fate: string }[], isTurned: boolean): string[] =>
      all.map(({ fate }) => (isTurned ? (turned[fate] ?? fate) : fate)).sort();
    for (const of of ['areas', 'marks', 'points'] as const)
      expect(fates(back[of], true)).toEqual(fates(there[of], false));
    const sizes = (all: readonly { size: number }[]): number[] => all.map(({ size }) => Number(size.toFixed(6)));
    expect(sizes(back.ground.given)).toEqual(sizes(there.ground.added));
    expect(sizes(back.ground.added)).toEqual(sizes(there.ground.given));
  });

  it('differs in nothing from itself', () => {
    const [plan] = plans;
    expect(planChanges(plan, plan).differs).toBe(false);
    expect(overlayText(plan, plan, wordsFor(plan), PLAIN)).toBe(
      `Plan of ${plan.title} · quote-1 to the working copy\n\nNothing on the plan differs.`
    );
    const same = overlayDrawing(plan, plan, wordsFor(plan));
    expect(textsIn(same, 'legend')[0]).toBe('Nothing on the plan differs.');
    expect(same.layers.flatMap(({ shapes }) => shapes.map(({ ink }) => ink))).not.toContain('goes');
  });
});

describe('ground given up and added', () => {
  it('agrees with what two outlines have in common, arcs and all (an independent library on chords)', () => {
    const next = seededNumbers(23);
    for (let round = 0; round < 60; round++) {
      const old = randomOutline(next, true);
      const move = { x: 2 * next(), y: 2 * next() };
      const now = movedLoop(randomOutline(next, true), { mirrored: false, turn: next(), move });
      if (selfCrossing(old) || selfCrossing(now)) continue;
      const { ground } = planChanges(planWith({ court: old }), planWith({ court: now }));
      const common = overlapArea(old, now);
      const sum = (all: typeof ground.given): number => all.reduce((size, one) => size + one.size, 0);
      expect(sum(ground.given)).toBeCloseTo(areaOf(old) - common, 4);
      expect(sum(ground.added)).toBeCloseTo(areaOf(now) - common, 4);
    }
  });

  it('that goes from one area to another is neither: it is told by itself', () => {
    const at = (left: number, width: number) => rectangleLoop(width, 3, { x: left, y: 0 }, 0);
    const before = planWith({ drive: at(0, 4), path: at(4, 2) });
    const after = planWith({ drive: at(0, 3), path: at(3, 3) });
    const { ground } = planChanges(before, after);
    expect([ground.given, ground.added]).toEqual([[], []]);
    expect(ground.passed.map(({ name, to, size }) => [name, to, size])).toEqual([['drive', 'path', 3]]);
    expect(overlayText(before, after, wordsFor(after), PLAIN)).toContain('3.00 m2 of drive to path');
  });

  it('is not told of an outline that crosses itself', () => {
    const bow = cornerLoop([
      { x: 0, y: 0 },
      { x: 2, y: 2 },
      { x: 2, y: 0 },
      { x: 0, y: 2 }
    ]);
    const { ground } = planChanges(
      planWith({ court: rectangleLoop(2, 2, { x: 0, y: 0 }, 0) }),
      planWith({ court: bow })
    );
    expect(ground.added).toEqual([]);
  });
});

describe('what is laid', () => {
  it.each([
    ['in another bond', ['block-red in herringbone-90', 'block-red in herringbone-45'], 'turning: units lie otherwise'],
    ['from another start', ['shifted (0, 70) mm', 'shifted (0, 60) mm'], 'turning: units lie otherwise'],
    [
      'with a border',
      ['bed        as drive', 'border     block-red in sailor-course along T2 to T3\n  bed        as drive'],
      'turning: border of block-red, red comes'
    ]
  ] as const)('%s is told, in the drawing too', async (_, edit, told) => {
    const plans = [await planOfSample('drive.paving'), await planOfSample('drive.paving', [edit])] as const;
    expect(overlayText(...plans, wordsFor(plans[1]), PLAIN)).toContain(`Laid otherwise\n  ${told}`);
    expect(textsIn(overlayDrawing(...plans, wordsFor(plans[1])), 'names')).toContain('laid otherwise');
  });
});

describe('an area whose units could not be worked out', () => {
  it('keeps its ground, and says why it has no numbers', () => {
    const plan = terrace();
    const after = { ...plan, areas: [{ ...plan.areas[0]!, parts: [], noNumbers: 'slab-61 has an error' }] };
    expect(textsIn(overlayDrawing(plan, after, wordsFor(plan)), 'names')).toContain('no numbers after');
    expect(overlayText(plan, after, wordsFor(plan), PLAIN)).toContain(
      'terrace: no numbers after: slab-61 has an error'
    );
    expect(planChanges(plan, after).ground.given).toEqual([]);
  });
});

describe('what becomes of things', () => {
  it('of a job that is new all comes, of one that is gone all goes', () => {
    const plan = yard();
    const fates = (changes: ReturnType<typeof planChanges>): string[] => [
      ...new Set([...changes.areas, ...changes.marks, ...changes.points].map(({ fate }) => fate))
    ];
    expect(fates(planChanges(undefined, plan))).toEqual(['comes']);
    expect(fates(planChanges(plan, undefined))).toEqual(['goes']);
    for (const [before, after] of [[undefined, plan], [plan, undefined], []]) {
      expect(svgOf(overlayDrawing(before, after, wordsFor(plan)))).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it('is not known where the other text has an error in it: nothing is said to be gone', async () => {
    const plan = await planOfSample('terrace.paving');
    const broken = {
      ...plan,
      areas: [],
      missing: ['terrace: its own text has an error'],
      site: { ...plan.site!, points: [] }
    };
    const { areas, marks, points } = planChanges(plan, broken);
    expect([...areas, ...marks, ...points].filter(({ fate }) => fate === 'goes')).toEqual([]);
    const text = overlayText(plan, broken, wordsFor(plan), PLAIN);
    expect(text).toContain('Not drawn as it is after: terrace: its own text has an error.');
    expect(text).not.toMatch(/\bgone\b/);
  });

  it('is not told of a pipe that ends at the rim of the plan, where only the plan reaches further', async () => {
    const far = [/point V {2}at \(5.60, 14.60\) m/, 'point V at (5.60, 60) m'] as const;
    const narrow = await planOfSample('drive.paving', [far]);
    const wide = await planOfSample('drive.paving', [
      far,
      ['let turn-wide    = 5 * 1.10 m', 'let turn-wide    = 9 * 1.10 m']
    ]);
    const pipe = planChanges(narrow, wide).marks.find(({ key }) => key.startsWith('pipe:'));
    expect(pipe?.fate).toBe('stays');
  });

  it('is told once for words that both heights share', () => {
    expect(fromTo('179 mm below', '195 mm below')).toBe('179 → 195 mm below');
    expect(fromTo('2 1/2 in below', '3 in below')).toBe('2 1/2 → 3 in below');
    expect(fromTo('level', '16 mm below')).toBe('level → 16 mm below');
    expect(fromTo('23.78 m2', '28.73 m2')).toBe('23.78 → 28.73 m2');
    expect(fromTo('10 ft 2 in', '10 ft')).toBe('10 ft 2 in → 10 ft');
  });
});

describe('the drawing', () => {
  it('stays small whatever the number of units', () => {
    const [before, after] = [lattice(250, 200), lattice(250, 201)];
    expect(svgOf(overlayDrawing(before, after, wordsFor(after))).length).toBeLessThan(40_000);
  });

  it('tells nothing by colour alone: all signs differ in line or hatch', () => {
    const looks = (['stays', 'comes', 'goes', 'edging-stays', 'edging', 'edging-goes'] as const).map(ink => {
      const { pen, dash }: { pen: number; dash?: unknown } = INKS[ink];
      return JSON.stringify([pen, dash]);
    });
    expect(new Set(looks).size).toBe(looks.length);
    expect(INKS['given-ground'].hatch).not.toBe(INKS['added-ground'].hatch);
  });

  it("reads nothing of a user's words as markup, nor moves a line by them", () => {
    const nasty = `<script>alert("x")</script> & \u202E\n\u001b[31m`;
    const plan = yard();
    const [area] = plan.areas;
    const sides = area!.sides.map(side => ({ ...side, edging: nasty }));
    const moved = area!.keptOut.map(one => ({ ...one, name: nasty }));
    const before = { ...plan, areas: [{ ...area!, keptOut: [] }] };
    const after = { ...plan, areas: [{ ...area!, name: nasty, sides, keptOut: moved }], missing: [nasty] };
    const words = { ...wordsFor(plan), title: nasty, between: nasty };
    const svg = svgOf(overlayDrawing(before, after, words));
    expect(svg).not.toMatch(/<script|\u202E|\u001b/u);
    expect(svg).toContain('&lt;script&gt;');
    expect(overlayText(before, after, words, PLAIN)).not.toMatch(/\u202E|\u001b/u);
    expect(labelsOf(overlayDrawing(before, after, words)).length).toBeGreaterThan(10);
  });
});
