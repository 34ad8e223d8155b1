import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
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
