// What is set aside, and what mends itself, on the command line.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';
import type { CheckJson } from '../../language/views/json/check-json.ts';
import type { QuantitiesJson } from '../../language/views/json/quantities-json.ts';
import { CHECK_SCHEMA, QUANTITIES_SCHEMA } from '../../language/views/json/schema.ts';
import { folder, GOOD, paving } from './run.ts';

const THIN = GOOD.replace('base crushed-stone 6 in', 'base crushed-stone 3 in');
const UNTIL = 'accept base-too-thin on terrace because "rock lies 3 in down" until 2026-06-30\n';
const FOR_GOOD = UNTIL.replace('until 2026-06-30', 'for good, agreed with "the client"');

describe('what is set aside', () => {
  test('counts for no exit code, and is counted in the report', () => {
    const cwd = folder({ 'a.paving': THIN + UNTIL });
    const { code, out, err } = paving(['check', '--severity', 'note', '--as-of', '2026-06-30', 'a.paving'], { cwd });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(
      /^No findings in 1 file\. 1 finding set aside\.\nPasses .*, but for what is set aside; not checked:/
    );
    const quantities = paving(['quantities', '--as-of', '2026-06-30', 'a.paving'], { cwd });
    expect(quantities.code).toBe(0);
    expect(quantities.out).toContain('Findings: none\n  1 finding set aside.\n');
  });

  test('past its day it counts again', () => {
    const cwd = folder({ 'a.paving': THIN + UNTIL });
    for (const verb of ['check', 'quantities']) {
      const { code, out } = paving([verb, '--as-of', '2026-07-01', 'a.paving'], { cwd });
      expect(code).toBe(1);
      expect(out).toContain('(set aside until 2026-06-30, which has passed).');
      expect(out).not.toContain('1 finding set aside');
    }
  });

  test('without a day it is asked of today', () => {
    const passed = UNTIL.replace('2026', '2001');
    const coming = UNTIL.replace('2026', '9999');
    expect(paving(['check', '-'], { input: THIN + passed }).code).toBe(1);
    expect(paving(['check', '-'], { input: THIN + coming }).code).toBe(0);
  });

  test('is listed when asked: rule, thing, how long, where and why, each once', () => {
    const cwd = folder({
      'a.paving': THIN + FOR_GOOD,
      'b.paving': `use "c.paving"\n${THIN}`,
      'c.paving': UNTIL,
      'd.paving': GOOD
    });
    const list = ['check', '--accepted', '--as-of', '2026-06-30'];
    const { code, out } = paving([...list, 'a.paving', 'b.paving', 'c.paving'], { cwd });
    expect(code).toBe(0);
    expect(out.split('\n').slice(0, 6)).toEqual([
      'Set aside',
      '  Rule           On       How long                          Where          Why',
      '  base-too-thin  terrace  for good, agreed with the client  a.paving:14:1  rock lies 3 in down',
      '  base-too-thin  terrace  until 2026-06-30                  c.paving:1:1   rock lies 3 in down',
      '',
      'No findings in 3 files. 2 findings set aside.'
    ]);
    expect(paving([...list, 'd.paving'], { cwd }).out).toMatch(/^Nothing is set aside\.\n\nNo findings in 1 file\.\n/);
  });

  test('stands in the JSON, counted apart, by the schema', () => {
    const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, strictTuples: false });
    for (const [accept, how] of [
      [UNTIL, { until: '2026-06-30' }],
      [FOR_GOOD, { agreedWith: 'the client' }]
    ] as const) {
      const asked = ['--format', 'json', '--as-of', '2026-06-30', '-'];
      const check = JSON.parse(paving(['check', ...asked], { input: THIN + accept }).out) as CheckJson;
      expect(ajv.validate(CHECK_SCHEMA, check) ? [] : ajv.errors).toEqual([]);
      expect(check.counts).toEqual({ errors: 0, warnings: 0, notes: 0, accepted: 1 });
      const accepted = { thing: 'terrace', reason: 'rock lies 3 in down', ...how, line: 14, column: 1 };
      expect(check.findings).toMatchObject([{ id: 'base-too-thin', severity: 'error', accepted }]);
      const quantities = JSON.parse(paving(['quantities', ...asked], { input: THIN + accept }).out) as QuantitiesJson;
      expect(ajv.validate(QUANTITIES_SCHEMA, quantities) ? [] : ajv.errors).toEqual([]);
      expect(quantities.jobs[0]!.findings).toMatchObject([{ id: 'base-too-thin', accepted }]);
    }
  });

  test('is suppressed in SARIF, with why and where', () => {
    const asked = ['check', '--format', 'sarif', '--as-of', '2026-06-30', '-'];
    const log = JSON.parse(paving(asked, { input: THIN + UNTIL }).out) as Log;
    expect(log.runs[0]!.results).toMatchObject([
      {
        ruleId: 'base-too-thin',
        suppressions: [
          {
            kind: 'inSource',
            status: 'accepted',
            justification: 'rock lies 3 in down (until 2026-06-30)',
            location: { physicalLocation: { region: { startLine: 14, startColumn: 1 } } }
          }
        ]
      }
    ]);
  });

  test('is no line of its own where each finding is one', () => {
    expect(paving(['check', '--format', 'line', '-'], { input: THIN + FOR_GOOD })).toEqual({
      code: 0,
      out: '',
      err: ''
    });
  });
});

const TWICE = GOOD.replace('rules north-america', 'rules north-america, rules north-america');

describe('--fix', () => {
  test('makes what keeps the meaning, keeps line breaks, and says what is left', () => {
    const text = TWICE.replace('crushed-stone 6 in', 'crushed-stone 3 in').replaceAll('\n', '\r\n');
    const cwd = folder({ 'a.paving': text, 'b.paving': GOOD });
    const { code, out, err } = paving(['check', '--fix', '.'], { cwd });
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).toMatch(/^Mended 1 finding in a\.paving\.\n\na\.paving:9:\d+ {2}error {2}base-too-thin\n/);
    expect(out).toMatch(/\n1 error in 2 files\.\n$/);
    expect(read(cwd, 'a.paving')).toBe(text.replace(', rules north-america', ''));
    expect(read(cwd, 'b.paving')).toBe(GOOD);
    expect(paving(['check', '--fix', '.'], { cwd }).out).toMatch(/^a\.paving:9/);
  });

  test('sets nothing aside, and mends nothing that is', () => {
    const cwd = folder({ 'a.paving': THIN + FOR_GOOD, 'b.paving': THIN });
    paving(['check', '--fix', '.'], { cwd });
    expect([read(cwd, 'a.paving'), read(cwd, 'b.paving')]).toEqual([THIN + FOR_GOOD, THIN]);
  });

  test('a used file is mended where it was asked for, in the job that uses it, else left', () => {
    const units = 'unit slab-20 { size 20 x 20 x 2 in, size 20 x 20 x 2 in }\n';
    const job = `use "units.paving"\n${GOOD}`;
    const cwd = folder({ 'job.paving': job, 'units.paving': units });
    paving(['check', '--fix', 'job.paving'], { cwd });
    expect(read(cwd, 'units.paving')).toBe(units);
    const { out } = paving(['check', '--fix', '.'], { cwd });
    expect(out).toMatch(/^Mended 1 finding in units\.paving\.\n/);
    expect(read(cwd, 'units.paving')).toBe('unit slab-20 { size 20 x 20 x 2 in }\n');
  });

  test('standard input goes to standard output, mended or not; what is told goes beside', () => {
    const { code, out, err } = paving(['check', '--fix', '-'], { input: TWICE });
    expect({ code, out }).toEqual({ code: 0, out: GOOD });
    expect(err).toMatch(/^Mended 1 finding in standard input\.\n\nNo findings in 1 file\.\n/);
    expect(paving(['check', '--fix', '-'], { input: GOOD }).out).toBe(GOOD);
    const unreadable = paving(['check', '--fix', '-'], { input: Uint8Array.of(1, 0, 2) });
    expect({ code: unreadable.code, err: unreadable.err }).toEqual({
      code: 2,
      err: 'paving: standard input holds no text. Name a job spec, or save it as plain text.\n'
    });
  });

  test('data for a program stays unmixed', () => {
    const cwd = folder({ 'a.paving': TWICE });
    const { code, out, err } = paving(['check', '--fix', '--format', 'json', 'a.paving'], { cwd });
    expect({ code, err }).toEqual({ code: 0, err: 'Mended 1 finding in a.paving.\n' });
    expect((JSON.parse(out) as CheckJson).counts.errors).toBe(0);
    expect(paving(['check', '--fix', '--format', 'json', '-'], { input: TWICE })).toEqual({
      code: 2,
      out: '',
      err: 'paving: --fix writes the mended text to standard output. Say with -o where the json report goes.\n'
    });
    expect(paving(['check', '--accepted', '--format', 'sarif', 'a.paving'], { cwd }).code).toBe(2);
    expect(paving(['check', '--as-of', '2026-02-30', 'a.paving'], { cwd }).err).toContain('2026-02-30 is no day.');
  });
});

function read(cwd: string, name: string): string {
  return readFileSync(path.join(cwd, name), 'utf8');
}
