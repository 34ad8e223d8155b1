import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import type { QuantitiesJson } from '../../language/views/json/quantities-json.ts';
import { QUANTITIES_SCHEMA } from '../../language/views/json/schema.ts';
import { FAULTY, folder, GOOD, LIBRARY, paving, root } from './run.ts';

const CAUTIONS = [
  'Before digging have all public and private lines located: gas, power, water, drains, cables, irrigation.',
  'Cut wet, with lungs, eyes and ears protected.',
  'Local codes and licensed practice stand over everything here.'
].join('\n');

describe('for a reader', () => {
  test('tables in the measures of the job, and the cautions once, at the end', () => {
    const cwd = folder({
      'a.paving': GOOD,
      'b.paving': GOOD.replace('rules north-america', 'rules north-america, show metric')
    });
    const { code, out, err } = paving(['quantities', '.'], { cwd });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(
      'Back terrace · a.paving · rules north-america\n\nArea terrace · traffic foot · finish level with sill\n\n  Gross area  192.00 sq ft\n'
    );
    expect(out).toMatch(/^ {2}Gross area +17\.84 m2$/m);
    expect(out).toMatch(/^ {2}Side +Meets +Edging +Length +Base past the units$/m);
    expect(out).toMatch(/^ {2}near +house-wall +12 ft +0 in$/m);
    expect(out).toMatch(/^ {2}base +crushed-stone +6 in +\S+ sq ft +\S+ cu yd +\S+ cu yd +\S+ short tons$/m);
    expect(out.split(CAUTIONS)).toHaveLength(2);
    expect(out.endsWith(`\n\n${CAUTIONS}\n`)).toBe(true);
  });

  test('what was assumed, with why', () => {
    const { out } = paving(['quantities', '-'], { input: GOOD.replace('soil sand, ', '') });
    expect(out).toContain('\nAssumed\n');
    expect(out).toMatch(/swell of the soil 25 %, .*: the job names no soil; common earth as shipped is taken/);
  });

  test('a curved side is marked', () => {
    const { out } = paving(['quantities', 'samples/path.paving']);
    expect(out.match(/^ +leg (9|10)( \(curve\))? /gm)).toEqual(['  leg 9 ', '  leg 10 (curve) ']);
  });

  test('how each number came about, only when asked', () => {
    const { out } = paving(['quantities', '--workings', '-'], { input: GOOD });
    expect(out).toMatch(/terrace, base: Compacted volume\n {4}= layer area × base thickness\n/);
    expect(out).toMatch(/base thickness +6 in {2}standard input:9:22\n/);
    // Rounded as in the table.
    expect(out).toMatch(/terrace: Joint length\n +\d+ ft, measured on terrace\n/);
    expect(out).toMatch(/layer area +\S+ sq ft {2}see terrace, base: Layer area\n/);
    expect(out).toMatch(/loose density +112\.0 lb per cu ft {2}assumed: as shipped for crushed-stone\n/);
    expect(paving(['quantities', '-'], { input: GOOD }).out).not.toContain('Workings');
  });

  test('an error: exit code 1, the sound areas in full, and what is missing by name', () => {
    const { code, out, err } = paving(['quantities', '-'], { input: FAULTY });
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).toContain('Area terrace');
    expect(out).not.toContain('Area path');
    expect(out).toMatch(/\nNo numbers\n {2}path: .* has an error\n/);
    expect(out).toContain('Findings: 1 error\n  standard input:18:8: error: No material is called `gravle`.');
  });
});

/** Two strips of 1 x 0.4 m: two slabs of 400 mm and 5 mm joints leave 1000 - 2 x 405 = 190 mm, so a slab is cut in each. */
const STRIPS = `job "Two strips" { rules britain, breakage 10 %, keep 2 slab }
site { soil sand, winters mild, benchmark sill, ground level with sill }
unit slab { size 400 x 400 x 40 mm }
area front {
  outline rectangle 1 x 0.4 m
  traffic foot
  finish level with sill
  paving slab in stack-bond, joints 5 mm
  base type-1 100 mm
  edges { all round meets lawn, edging spiked-strip }
}
`;
const BACK = STRIPS.slice(STRIPS.indexOf('area')).replace('front', 'back').replace('0.4 m', '0.4 m, corner (5 m, 0 m)');

describe('units to buy', () => {
  test('what is used, for breakage, put by, and to buy; a table of its own for the cutting', () => {
    const { out } = paving(['quantities', '-'], { input: STRIPS });
    expect(out).toContain(`
  Unit  Bond        Whole  Cut  Used  Breakage  To buy     Area
  slab  stack-bond      2    1     3         1       4  0.40 m2
  slab: 3 used, as few as can be.

  Cutting  Cut  Straight cuts  Saw length  Smallest piece  Of a unit  Narrowest piece
  slab       1              1     0.400 m       760.0 cm2     47.5 %           190 mm
`);
    // Of one area alone, for what is put by belongs to the whole job: 3 and 1 and 2.
    expect(out).toContain(`
  Unit  Whole  Cut  Used  Breakage  Put by  To buy  Saw length
  slab      2    1     3         1       2       6     0.400 m
`);
    const plain = paving(['quantities', '-'], { input: STRIPS.replace(', breakage 10 %, keep 2 slab', '') }).out;
    expect(plain.match(/^ {2}Unit .*/gm)).toEqual(['  Unit  Bond        Whole  Cut  Used     Area']);
  });

  test('two pieces of 190 mm and a cut of 3 mm come out of one slab, unless offcuts stay within each area', () => {
    const together = paving(['quantities', '--cuts', '-'], { input: STRIPS + BACK }).out;
    expect(together).toContain(`
  slab      4    2     5         1       2       8     0.800 m
  slab: 5 used, as few as can be; 6 if no offcut leaves its area.
`);
    expect(together).toContain(`
Cutting plan of all areas together
  slab: 1 unit for 2 pieces, as few as can be, by the area of the pieces.
    out of 1 unit: 1 of no. 1 in back; 1 of no. 1 in front
`);
    expect(together).not.toContain('Cutting plan of front');
    const apart = paving(['quantities', '--cuts', '-'], {
      input: (STRIPS + BACK).replace('keep 2 slab', 'keep 2 slab, offcuts within each area')
    }).out;
    expect(apart).toContain('\n  slab      4    2     6         1       2       9     0.800 m\n');
    expect(apart).toContain(`
Cutting plan of back
  slab: 1 unit for 1 piece, as few as can be, by the area of the pieces.
    out of 1 unit: 1 of no. 1
`);
    // 190 and 190 mm and 20 mm between them are all that a slab has; 21 mm are too much.
    const wide = (saw: string): string =>
      paving(['quantities', '--cuts', '-'], { input: (STRIPS + BACK).replace('keep', `saw-cut ${saw}, keep`) }).out;
    expect(wide('20 mm')).toContain('slab: 1 unit for 2 pieces');
    expect(wide('21 mm')).toContain('slab: 2 units for 2 pieces');
  });

  test('tables of units, cuts and running sizes fit 100 columns, in every sample', () => {
    const { out } = paving(['quantities', '--cuts', 'samples']);
    const blocks = out
      .split('\n\n')
      .filter(block => /^ *(Unit|Border|Cutting|Cuts of|Cutting plan|Running sizes)\b/.test(block));
    expect(blocks.length).toBeGreaterThan(40);
    expect(blocks.flatMap(block => block.split('\n')).filter(line => line.length > 100)).toEqual([]);
    expect(out).toMatch(
      /\n {2}Running sizes, from the face of the first unit \(lay ten tight and measure: units differ\)\n {2}Courses or units /
    );
  });
});

describe('the cut list', () => {
  test('each cut by its number, how it is marked out, and what the pieces come out of', () => {
    const { out } = paving(['quantities', '--cuts', '-'], { input: STRIPS.replace('1 x 0.4 m', '1 x 0.805 m') });
    expect(out).toContain(`
Cutting
  The unit lies face up in front of you, its length from left to right. Along is from the left,
  across is from the near side. Mark everything before the first cut.
`);
    expect(out).toMatch(
      /\nCutting\n(?: {2}.*\n)* {2}Cut wet, with lungs, eyes and ears protected\.\n\nCuts of front\n/
    );
    expect(out).toContain(`
Cuts of front
  No.  Units  Unit  Kind      Saw length  Narrowest  How each is marked out
    1      2  slab  straight     0.800 m     190 mm  cut to 190 mm long

Cutting plan of front
  slab: 1 unit for 2 pieces, as few as can be, by the area of the pieces.
    out of 1 unit: 2 of no. 1
`);
  });

  test('is there only when asked for, and says where nothing is cut', () => {
    expect(paving(['quantities', '-'], { input: STRIPS }).out).not.toContain('Cuts of');
    const { out } = paving(['quantities', '--cuts', '-'], { input: STRIPS.replace('1 x 0.4 m', '0.805 x 0.4 m') });
    expect(out).toContain('\nCuts of front\n  Nothing is cut.\n');
    expect(out).not.toContain('Cutting plan');
  });

  test.each(['samples/terrace.paving', 'samples/drive.paving', 'samples/sunny-court.paving'])(
    '%s: numbers from 1, and units, straight cuts, metres and pieces add up to what the tables tell',
    file => {
      const { out } = paving(['quantities', '--cuts', file]);
      const json = paving(['quantities', '--format', 'json', file]).out;
      const [job] = (JSON.parse(json) as QuantitiesJson).jobs;
      for (const area of job!.areas) {
        const list = new RegExp(`\nCuts of ${area.name}\n.*\n((?: .*\n)+)`).exec(out)![1]!;
        const rows = [...list.matchAll(/^ +(\d+) +(\d+) {2}\S+ {2}(?:(\d+) )?(straight)?/gm)];
        expect(rows.map(([, number]) => Number(number))).toEqual(area.cuts!.map(({ number }) => number));
        const [laying] = area.laying!;
        const sum = (of: (row: RegExpExecArray) => number): number => rows.reduce((total, row) => total + of(row), 0);
        expect(sum(row => Number(row[2]))).toBe(laying!.cut);
        expect(sum(row => (row[4] === undefined ? 0 : Number(row[2]) * Number(row[3] ?? 1)))).toBe(
          laying!.straightCuts
        );
        const sawn = area.cuts!.reduce((total, cut) => total + cut.count * cut.sawLength, 0);
        expect(sawn).toBeCloseTo(laying!.sawLength!, 9);
      }
      // Every piece comes out of some unit, and no more units than are used.
      let plans = 0;
      for (const [, units, pieces, plan] of out.matchAll(/: (\d+) units? for (\d+) pieces?[^]*?\n((?: {4}.*\n)+)/g)) {
        const counted = [...plan!.matchAll(/out of (?:1 unit|each of (\d+) units): ((?:.*\n {6})*.*)/g)].map(
          ([, each = '1', from]) => ({
            units: Number(each),
            pieces: [...from!.matchAll(/(\d+) of\s+no\. /g)].reduce((sum, [, count]) => sum + Number(count), 0)
          })
        );
        plans++;
        expect(counted.reduce((sum, one) => sum + one.units, 0)).toBe(Number(units));
        expect(counted.reduce((sum, one) => sum + one.units * one.pieces, 0)).toBe(Number(pieces));
      }
      expect(plans).toBe(job!.units.length);
    }
  );
});

describe('for another program', () => {
  test('JSON by its schema, with the hash of each file, in the same bytes every time', () => {
    const job = `use "units.paving"\n${GOOD.replace(/^unit .*\n/m, '')}`;
    const cwd = folder({ 'jobs/a.paving': job, 'jobs/units.paving': `\ufeff${LIBRARY}` });
    const given = ['quantities', '--format', 'json', '--as-of', '2026-04-18', 'jobs'];
    const { code, out, err } = paving(given, { cwd });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true, strictTuples: false }).compile(
      QUANTITIES_SCHEMA
    );
    const json = JSON.parse(out) as Record<string, unknown>;
    expect(validate(json) ? [] : validate.errors).toEqual([]);
    expect(json).toMatchObject({ asOf: '2026-04-18', tool: 'paving 0.1.0' });
    const hash = (name: string): string =>
      createHash('sha256')
        .update(readFileSync(path.join(cwd, name)))
        .digest('hex');
    expect(json.files).toEqual(['jobs/a.paving', 'jobs/units.paving'].map(file => ({ file, sha256: hash(file) })));
    expect(paving(given, { cwd }).out).toBe(out);
  });

  test('today stands in it, unless a day is given', () => {
    const { out } = paving(['quantities', '--format', 'json', '-'], { input: GOOD });
    expect((JSON.parse(out) as { asOf: string }).asOf).toMatch(/^20\d\d-\d\d-\d\d$/);
  });

  test.each(['2026-02-30', 'today', '18/04/2026', '2026-4-8'])('%s is refused as a day', day => {
    const { code, err } = paving(['quantities', '--as-of', day, '-'], { input: GOOD });
    expect({ code, err }).toEqual({
      code: 2,
      err: `paving: ${day} is no day. Write year, month and day: 2026-04-18.\n`
    });
  });
});

describe('files without a job', () => {
  const files = { 'a.paving': `use "units.paving"\n${GOOD.replace(/^unit .*\n/m, '')}`, 'units.paving': LIBRARY };

  test('are passed over in a folder, and named when asked for by name', () => {
    const cwd = folder(files);
    expect(paving(['quantities', '.'], { cwd }).out).not.toContain('units.paving has no job');
    const named = paving(['quantities', 'a.paving', 'units.paving'], { cwd });
    expect(named).toMatchObject({ code: 0, err: '' });
    expect(named.out).toContain('\nunits.paving has no job of its own: it counts where a job uses it.\n');
  });

  test('alone give nothing to work out', () => {
    const { code, out, err } = paving(['quantities', 'units.paving'], { cwd: folder(files) });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('no file here has a job, so there is nothing to work out.');
  });
});

test('every sample is worked out', () => {
  const { code, out, err } = paving(['quantities', 'samples'], { cwd: root });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).not.toContain('No numbers');
});
