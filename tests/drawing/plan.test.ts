import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../language/drawing/drawing.ts';
import { svgOf } from '../../language/drawing/svg/svg.ts';
import { planDrawing } from '../../language/views/plan/plan-drawing.ts';
import type { PlanInput } from '../../language/views/plan/plan-input.ts';
import { planText } from '../../language/views/plan/plan-text.ts';
import type { Colours } from '../../language/views/text/colours.ts';
import { contrast, luminance } from './contrast.ts';
import { JOBS, planned } from './jobs.ts';
import { labelsOf, textsOverOthers } from './labels.ts';
import { SITE_JOBS } from './site-jobs.ts';
import { circle, drive, lattice, terrace, yard } from './plans.ts';

/*
 * Plans as they are drawn and told: `UPDATE=1 npx vitest run --config .config/vitest.config.ts tests/drawing` writes them
 * anew; look at them in a browser before they are kept.
 */
const UPDATE = process.env.UPDATE === '1';
const GOLDEN = path.join(import.meta.dirname, 'golden');

const as = (text: string): string => text;
const PLAIN: Colours = { strong: as, faint: as, error: as, warning: as, note: as };

/** Drawn in one file each; the large drive is too long to be kept. */
const WRITTEN_JOBS = { ...JOBS, ...SITE_JOBS };
const KEPT = ['terrace', 'yard', 'circle', 'drive', ...Object.keys(WRITTEN_JOBS)];

const WRITTEN = await Promise.all(
  Object.entries(WRITTEN_JOBS).map(async ([name, text]) => {
    const plan = await planned(text);
    return [name, () => plan] as const;
  })
);

const PLANS: readonly (readonly [string, () => PlanInput])[] = [
  ...WRITTEN,
  ['terrace', terrace],
  ['yard', yard],
  ['circle', circle],
  ['drive', drive],
  ['large drive', () => drive(5.2, 11.4, 4.2)]
];

function asKept(name: string, text: string): string {
  const file = path.join(GOLDEN, name.replaceAll(' ', '-'));
  if (UPDATE) writeFileSync(file, text);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}

describe('a path along a line', () => {
  it('lists its corners, and its curves by centre, radius and where they begin and end', async () => {
    const text = planText(await planned(SITE_JOBS['raised path']!), PLAIN);
    // The first leg runs along x: the curves of both sides are about one centre, 2 m to the left of it.
    expect(text).toMatch(/corner 2 +4\.868 m +-0\.600 m/);
    expect(text).toMatch(/corner 11 +4\.868 m +0\.600 m/);
    expect(text).toMatch(/right +corner 2 to corner 3 +\(4\.868 m, 2\.000 m\) +2\.600 m/);
    expect(text).toMatch(/left +corner 10 to corner 11 +\(4\.868 m, 2\.000 m\) +1\.400 m/);
  });

  it('has a tick across the outline where each curve begins and ends', async () => {
    const { layers } = planDrawing(await planned(SITE_JOBS['raised path']!));
    expect(layers.find(({ key }) => key === 'ticks')?.shapes).toHaveLength(8);
  });
});

describe.each(PLANS)('the plan of the %s', (name, input) => {
  const drawing = planDrawing(input());
  const svg = svgOf(drawing);

  it.runIf(KEPT.includes(name))('is drawn as before', () => {
    expect(svg).toBe(asKept(`${name}.svg`, svg));
  });

  it.runIf(KEPT.includes(name))('is told as before', () => {
    const text = `${planText(input(), PLAIN)}\n`;
    expect(text).toBe(asKept(`${name}.txt`, text));
  });

  it('has a key of its own for every shape', () => {
    const keys = drawing.layers.flatMap(({ shapes }) => shapes.map(({ key }) => key));
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });

  it('has no text over another', () => {
    expect(textsOverOthers(drawing)).toEqual([]);
  });

  it('keeps to the sheet, and to its scale', () => {
    const { bounds, scale, width, height } = drawing.sheet;
    expect((bounds.right - bounds.left) / width).toBeCloseTo(scale, 6);
    expect((bounds.top - bounds.bottom) / height).toBeCloseTo(scale, 6);
    for (const { at } of labelsOf(drawing)) {
      expect(at.x > bounds.left && at.x < bounds.right && at.y > bounds.bottom && at.y < bounds.top).toBe(true);
    }
  });

  it('draws every cut as a shape of its own, numbered or owned up to', () => {
    const cuts = input().areas.flatMap(({ parts }) => parts.flatMap(({ laid }) => laid.cuts));
    const drawn = drawing.layers.find(({ key }) => key === 'cuts')?.shapes ?? [];
    expect(drawn).toHaveLength(cuts.length);
    const pieces = cuts.reduce((sum, cut) => sum + cut.pieces.length, 0);
    const numbered = labelsOf(drawing).filter(({ key }) => key.includes('/number')).length;
    const notes = labelsOf(drawing)
      .map(({ text }) => text)
      .join(' ');
    const isOwnedUpTo = notes.includes('too small here') || notes.includes('A small piece without a number');
    expect(numbered === pieces || isOwnedUpTo).toBe(true);
  });
});

describe('the plan of a site', () => {
  const of = async (name: string): Promise<Drawing> => planDrawing(await planned(SITE_JOBS[name]!));
  const textsIn = (drawing: Drawing, layer: string): string[] =>
    drawing.layers
      .filter(({ key }) => key === layer)
      .flatMap(({ shapes }) => shapes.flatMap(shape => (shape.kind === 'label' ? [shape.text] : [])));

  it('tells the finish at points against the benchmark, and falls by the foot', async () => {
    const drawing = await of('falling terrace');
    expect(textsIn(drawing, 'points')).toEqual(
      expect.arrayContaining(['A', '2 1/2 in below', 'C', '5 11/16 in below', 'M', '4 1/16 in below'])
    );
    expect(textsIn(drawing, 'falls')).toEqual(['1/4 in per ft']);
  });

  it('tells heights from nought, two arrows where the fall twists, and a rounded corner at its point', async () => {
    const drawing = await of('twisted drive');
    expect(textsIn(drawing, 'points')).toEqual(expect.arrayContaining(['R1', '10.312 m', 'T2', '10.179 m']));
    expect(textsIn(drawing, 'falls').sort()).toEqual(['1:29', '1:35', '1:36']);
  });

  it('has an arrow on each side of a fold', async () => {
    expect(textsIn(await of('crowded yard'), 'falls').sort()).toEqual(['1:39', '1:49', '1:67']);
  });

  it('names gates, drains and pipes, and what is done to boxes', async () => {
    const [terrace, drive] = [await of('falling terrace'), await of('twisted drive')];
    expect(textsIn(terrace, 'names')).toEqual(expect.arrayContaining(['raise 1 in']));
    const names = [...textsIn(terrace, 'thing-names'), ...textsIn(drive, 'thing-names')];
    expect(names).toEqual(
      expect.arrayContaining([
        'gate side-gate',
        // Its rim lies in the soft spot, whose bottom is 4 in lower than that of the dig.
        'box old-sprinkler, cut down at least 12 5/8 in',
        'channel garage-channel',
        'outlet to soakaway, class B125'
      ])
    );
    expect(textsIn(terrace, 'legend').join(' ')).toContain('about 10 in deep, depth not proven');
    expect(names.filter(name => name === 'across')).toHaveLength(2);
  });

  it('draws the swing of a leaf as an arc of its turn about the hinge', async () => {
    const things = (await of('falling terrace')).layers.find(({ key }) => key === 'things')!.shapes;
    const swing = things.find(({ ink }) => ink === 'swing')!;
    expect(swing.kind === 'line' && swing.sides[0]!.arc!.turn).toBeCloseTo((95 * Math.PI) / 180, 9);
  });

  it('tells a side measured by offsets once, whole', async () => {
    const sides = textsIn(await of('falling terrace'), 'sides').filter(text => text.startsWith('D to A'));
    expect(sides).toEqual(['D to A, 12 ft 8 5/8 in']);
  });
});

describe('a plan in SVG', () => {
  it('holds a hundred thousand units of a kind in one path', () => {
    const svg = svgOf(planDrawing(lattice(250, 400)));
    const path = /data-key="area:terrace\/field\/whole\/slab-400" d="([^"]+)"/.exec(svg)?.[1] ?? '';
    expect(path.split('z')).toHaveLength(100_001);
    expect(path).toMatch(/^M[\d.]+ [\d.]+h4000?v-4000?h-4000?zm4040? 0h/);
    expect(svg.length).toBeLessThan(2_500_000);
    expect(svg.match(/<path /g)!.length).toBeLessThan(40);
  });

  it('keeps arcs as arcs', () => {
    expect(svgOf(planDrawing(circle()))).toMatch(/data-key="area:seat\/outline" d="M[\d. ]+A1600 1600 0 0 0 [^"]+z"/);
  });

  it("reads nothing of a user's words as markup", () => {
    const plan = yard();
    const area = plan.areas[0]!;
    const nasty = `<script>alert("x")</script> & '\u0000\u001b]\uD800 \u202E`;
    const sides = area.sides.map(side => ({ ...side, name: nasty, meets: nasty, edging: nasty }));
    const keptOut = area.keptOut.map(one => ({ ...one, name: nasty, key: nasty }));
    const svg = svgOf(planDrawing({ ...plan, title: nasty, areas: [{ ...area, name: nasty, sides, keptOut }] }));
    expect(svg).toContain('&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; &#39;');
    expect(svg).not.toMatch(/<script|\p{Cs}|\u202E|[\u0000-\u0009\u000b-\u001f]/u);
    // Every tag is one of ours, with its attributes in quotes.
    const tags = /<\/?(?:svg|title|desc|style|defs|pattern|rect|circle|path|g|text)(?: [a-zA-Z-]+="[^"<>]*")*\/?>/g;
    expect(svg.replace(tags, '')).not.toMatch(/[<>]/);
  });

  it('has ink that stands out from all it lies on, in light and dark', () => {
    const [light, dark] = [...svgOf(planDrawing(terrace())).matchAll(/\.plan\{(--plan-paper:#[^}]+)\}/g)];
    for (const style of [light, dark]) {
      const colours = new Map([...style![1]!.matchAll(/--plan-(\w+):(#\w+)/g)].map(found => [found[1]!, found[2]!]));
      const ink = luminance(colours.get('ink')!);
      const low = [...colours].filter(([name, colour]) => name !== 'ink' && contrast(ink, luminance(colour)) < 7);
      expect(colours.size).toBeGreaterThan(10);
      expect(low).toEqual([]);
    }
  });

  it('draws a job without areas, sides, units or a start as an empty sheet', () => {
    const plan = terrace();
    const bare = { ...plan.areas[0]!, outline: [], sides: [], parts: [] };
    for (const areas of [[], [bare]])
      expect(svgOf(planDrawing({ ...plan, areas }))).not.toMatch(/NaN|Infinity|undefined/);
    expect(planText({ ...plan, areas: [bare] }, PLAIN)).toContain('Area terrace');
  });

  it('tells in the legend where its room ends', () => {
    const plan = terrace();
    const units = Array.from({ length: 400 }, (_, index) => ({
      ...plan.units[0]!,
      key: `unit:${index}`,
      name: `slab-${index}`
    }));
    const area = plan.areas[0]!;
    const run = area.parts[0]!.laid.wholes[0]!;
    const laid = { ...area.parts[0]!.laid, wholes: units.map(({ key }) => ({ ...run, unit: key })), cuts: [] };
    const drawing = planDrawing({
      ...plan,
      units,
      areas: [{ ...area, parts: [{ ...area.parts[0]!, laid, numbers: [] }] }]
    });
    expect(labelsOf(drawing).at(-1)!.text).toBe('… and more in the plan as text.');
  });
});
