import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv } from 'ajv';
import { default as addFormats } from 'ajv-formats';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';
import { FAULTY, folder, GOOD, paving } from './run.ts';

/** The published schema is of draft 04, of which it uses nothing that draft 07 reads otherwise but the word `id`. */
function publishedSchema(): object {
  const file = path.join(import.meta.dirname, 'vendor/sarif-2.1.0.schema.json');
  const { $schema, id, ...schema } = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
  expect($schema).toBe('http://json-schema.org/draft-04/schema#');
  expect(id).toContain('sarif-2.1.0');
  return schema;
}

const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats.default(ajv);
const validate = ajv.compile(publishedSchema());

function sarif(out: string): Log {
  const log = JSON.parse(out) as Log;
  expect(validate(log) ? [] : validate.errors).toEqual([]);
  return log;
}

const check = (cwd: string, ...given: string[]): Log =>
  sarif(paving(['check', '--format', 'sarif', ...given], { cwd }).out);

describe('SARIF', () => {
  test('the schema itself refuses what is wrong', () => {
    expect(validate({ version: '2.1.0', runs: [{ tool: {} }] })).toBe(false);
  });

  test('a job without findings', () => {
    const [run] = check(folder({ 'good.paving': GOOD }), 'good.paving').runs;
    expect(run!.results).toEqual([]);
    expect(run!.invocations).toEqual([{ executionSuccessful: true }]);
  });

  test('a finding with its rule, place and fix', () => {
    const cwd = folder({ 'my jobs/côté.paving': FAULTY });
    const [run] = check(cwd, '.').runs;
    expect(run!.columnKind).toBe('utf16CodeUnits');
    const [result] = run!.results!;
    const artifactLocation = { uri: 'my%20jobs/c%C3%B4t%C3%A9.paving' };
    const region = { startLine: 18, startColumn: 8, endLine: 18, endColumn: 14 };
    expect(result).toMatchObject({
      ruleId: 'unknown-name',
      level: 'error',
      locations: [{ physicalLocation: { artifactLocation, region } }]
    });
    const rule = run!.tool.driver.rules![result!.ruleIndex!]!;
    expect(rule).toMatchObject({ id: 'unknown-name', shortDescription: { text: 'A name that nothing has' } });
    expect(rule.help!.markdown).toContain('```paving wrong');
  });

  test('the fix of a misspelt name puts the right one in its place', () => {
    const cwd = folder({ 'a.paving': FAULTY.replace('gravle', 'crushed-stoen') });
    const [result] = check(cwd, 'a.paving').runs[0]!.results!;
    expect(result!.fixes).toEqual([
      {
        description: { text: 'Write `crushed-stone`' },
        artifactChanges: [
          {
            artifactLocation: { uri: 'a.paving' },
            replacements: [
              {
                deletedRegion: { startLine: 18, startColumn: 8, endLine: 18, endColumn: 21 },
                insertedContent: { text: 'crushed-stone' }
              }
            ]
          }
        ]
      }
    ]);
  });

  test('columns count as editors count them', () => {
    const cwd = folder({ 'a.paving': GOOD.replace('"Back terrace" {', '"Back 𝄞 terrace" { currency 𝄞') });
    const [result] = check(cwd, 'a.paving').runs[0]!.results!;
    expect(result!.locations![0]!.physicalLocation!.region!.startColumn).toBe(
      'job "Back 𝄞 terrace" { currency 𝄞'.indexOf('𝄞', 12) + 1
    );
  });

  test('related places, and the findings of the faulty specs of each kind', () => {
    const cwd = folder({ 'a.paving': `${GOOD}unit slab-16 { size 18 x 18 x 2 in }\n` });
    const [result] = check(cwd, 'a.paving').runs[0]!.results!;
    expect(result!.relatedLocations![0]).toMatchObject({
      message: { text: 'Declared first here.' },
      physicalLocation: { region: { startLine: 3 } }
    });
    const faulty = check(path.join(import.meta.dirname, '../faulty'), '.');
    expect(faulty.runs[0]!.results!.length).toBeGreaterThan(50);
  });

  test('a file that could not be read makes the run incomplete', () => {
    const [run] = check(folder({ 'good.paving': GOOD, 'photo.paving': Uint8Array.of(1, 0, 2) }), '.').runs;
    expect(run!.invocations).toEqual([{ executionSuccessful: false }]);
    expect(run!.results).toMatchObject([
      { ruleId: 'text-unreadable', locations: [{ physicalLocation: { artifactLocation: { uri: 'photo.paving' } } }] }
    ]);
  });
});
