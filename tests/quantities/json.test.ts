import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFile } from 'node:fs/promises';
import { format, type Options } from 'prettier';
import { describe, expect, it } from 'vitest';
import type { Finding, Place } from '../../language/findings/finding.ts';
import { checkJson } from '../../language/views/json/check-json.ts';
import { quantitiesJson } from '../../language/views/json/quantities-json.ts';
import { CHECK_SCHEMA, QUANTITIES_SCHEMA, type Schema } from '../../language/views/json/schema.ts';
import { job, numbersOf } from './jobs.ts';
import { terrace } from './terrace.ts';

const place: Place = { file: 'terrace.paving', line: 3, column: 5, endLine: 3, endColumn: 9 };
const finding: Finding = {
  ...place,
  id: 'base-too-thin',
  family: 'rule',
  severity: 'error',
  message: 'The base of terrace, 3 in, is 1 in too thin: 4 in at least under foot traffic.',
  target: 'area:terrace/base',
  values: [{ name: 'base', value: 0.0762, measure: 'm' }],
  source: 'Common practice, no source.',
  related: [{ ...place, message: 'The area terrace' }],
  fixes: [{ title: 'Make the base 4 in', safe: false, edits: [{ place, text: '4 in' }] }]
};

const json = quantitiesJson({
  tool: 'paving 0.1.0',
  asOf: '2026-04-18',
  files: [{ file: 'terrace.paving', sha256: 'a'.repeat(64) }],
  jobs: [
    { numbers: numbersOf(job([terrace()], { currency: 'USD' })), findings: [finding], placeOf: () => place },
    { numbers: numbersOf(job([])), findings: [], placeOf: () => place }
  ]
});

function errorsIn(schema: Schema, value: unknown): unknown {
  const validate = new Ajv2020({ allErrors: true, strict: true, strictTypes: false }).compile(schema);
  // As it is written to a file: what cannot be written down would show.
  return validate(JSON.parse(JSON.stringify(value))) ? [] : validate.errors;
}

describe('the JSON contract', () => {
  it('quantities and findings match their schemas, which know no other keys', () => {
    expect(errorsIn(QUANTITIES_SCHEMA, json)).toEqual([]);
    expect(errorsIn(CHECK_SCHEMA, checkJson([finding]))).toEqual([]);
    expect(errorsIn(QUANTITIES_SCHEMA, { ...json, more: 1 })).not.toEqual([]);
  });

  it('keys stand in the order of the contract', () => {
    const [first] = json.jobs;
    expect(Object.keys(first!)).toEqual([
      'id',
      'title',
      'currency',
      'rulebooks',
      'complete',
      'missing',
      'points',
      'areas',
      'dig',
      'totals',
      'materials',
      'units',
      'edging',
      'needs',
      'workings',
      'findings'
    ]);
    expect(Object.keys(first!.areas[0]!)).toEqual([
      'id',
      'name',
      'traffic',
      'outline',
      'keptOut',
      'grossArea',
      'netArea',
      'perimeter',
      'edges',
      'dig',
      'layers',
      'geotextile',
      'laying',
      'cuts',
      'runningSizes',
      'joints',
      'edging'
    ]);
    expect(Object.keys(first!.areas[0]!.layers[1]!)).toEqual([
      'role',
      'material',
      'thickness',
      'area',
      'compactedVolume',
      'looseVolume',
      'mass'
    ]);
    expect(Object.keys(first!.areas[0]!.dig)).toEqual([
      'area',
      'bankVolume',
      'looseVolume',
      'mass',
      'deepest',
      'shallowest',
      'layersShallowest',
      'topsoilVolume'
    ]);
  });

  it('values from the text carry their place, counts their severity', () => {
    const { values } = json.jobs[0]!.workings['/areas/0/layers/1/compactedVolume']!;
    expect(values.map(value => value.from)).toEqual([
      { pointer: '/areas/0/layers/1/area' },
      { file: 'terrace.paving', line: 3, column: 5 }
    ]);
    expect(checkJson([finding]).counts).toEqual({ errors: 1, warnings: 0, notes: 0, accepted: 0 });
    expect(JSON.stringify(json)).not.toContain('"key":');
  });

  it('the shipped schema files are those of the catalogue', async () => {
    const style = JSON.parse(await readFile('.config/prettier.json', 'utf8')) as Options;
    const shipped = (schema: Schema) => format(JSON.stringify(schema, undefined, 2), { ...style, parser: 'json' });
    await expect(await shipped(QUANTITIES_SCHEMA)).toMatchFileSnapshot(
      '../../language/views/json/quantities.schema.json'
    );
    await expect(await shipped(CHECK_SCHEMA)).toMatchFileSnapshot('../../language/views/json/check.schema.json');
  });

  it('every number of the schema says its measure', () => {
    const numbers: Schema[] = [];
    JSON.stringify(QUANTITIES_SCHEMA, (_, value: unknown) => {
      if (typeof value === 'object' && value !== null && (value as Schema)['type'] === 'number')
        numbers.push(value as Schema);
      return value;
    });
    expect(numbers.length).toBeGreaterThan(30);
    for (const { description } of numbers)
      expect(description).toMatch(/, (m|m2|m3|kg|degrees|a share of 1|measure as named)$/);
  });
});
