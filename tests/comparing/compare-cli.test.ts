import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import type { ComparisonJson } from '../../language/views/json/comparison-json.ts';
import { COMPARISON_SCHEMA } from '../../language/views/json/comparison-schema.ts';
import { folder, LIBRARY, paving, type Ran } from '../cli/run.ts';
import { BROKEN, LONGER, OTHER, PATIO, REFORMATTED } from './jobs.ts';

const DAY = ['--as-of', '2026-04-18'];

const THIN = PATIO.replace('base    crushed-stone 6', 'base    crushed-stone 2');

const ASIDE = `${THIN}
accept base-too-thin on terrace because "rock below" until 2026-12-31
`;

/** Two files in a folder without git, on a machine without git. */
function compared(older: string, newer: string, ...more: string[]): Ran {
  const cwd = folder({ 'old.paving': older, 'new.paving': newer, 'units.paving': LIBRARY });
  return paving(['compare', ...DAY, ...more, 'old.paving', 'new.paving'], { cwd, env: { ...process.env, PATH: cwd } });
}

describe('two files, without git', () => {
  test('the edit first, then what follows from it, each with the edit behind it', () => {
    const { code, out, err } = compared(PATIO, LONGER);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Back terrace · old\.paving to new\.paving\n\nEdited\n/);
    expect(out).toMatch(
      /^ {2}1 {2}area terrace, outline +outline rectangle 12 x 16 ft +outline rectangle 12 x 17 ft +\+1 ft/m
    );
    expect(out).toMatch(/^ {2}Gross area +192\.00 sq ft +204\.00 sq ft +\+12\.00 sq ft +1$/m);
    expect(out).not.toMatch(/^path/m);
    expect(out).toMatch(/^ {2}To pay +[\d,.]+ USD +[\d,.]+ USD +\+[\d,.]+ USD/m);
  });

  test('what is written otherwise and means the same is no difference', () => {
    expect(compared(PATIO, REFORMATTED, '--exit-code')).toEqual({
      code: 0,
      out: 'Back terrace · old.paving to new.paving\nNothing differs in meaning.\n',
      err: ''
    });
  });

  test.each([
    ['the same', PATIO, PATIO, 0],
    ['what is called otherwise', PATIO, PATIO.replaceAll('slab-16', 'big-slab'), 0],
    ['another', PATIO, LONGER, 1],
    ['the same errors', BROKEN, BROKEN, 0]
  ])('--exit-code: %s', (_, older, newer, code) => {
    expect(compared(older, newer, '--exit-code').code).toBe(code);
  });

  test('errors of the newer text: exit code 1, what is sound is compared, and where to look', () => {
    const { code, out, err } = compared(PATIO, BROKEN.replace('12 x 16 ft', '12 x 17 ft'));
    expect({ code, err }).toEqual({
      code: 1,
      err: 'paving: new.paving has errors; what is sound is compared. See: paving check new.paving\n'
    });
    expect(out).toMatch(/^ {2}Gross area +192\.00 sq ft +204\.00 sq ft/m);
  });

  test('errors of the older text alone are told, and are nobody’s fault now', () => {
    const { code, err } = compared(BROKEN, PATIO);
    expect({ code, err }).toEqual({
      code: 0,
      err: 'paving: old.paving has errors; what is sound is compared. See: paving check old.paving\n'
    });
  });

  test.each([
    [
      ['old.paving', 'units.paving'],
      'units.paving has no job, so there is nothing to compare. Name the files that use it.'
    ],
    [['old.paving', 'none.paving'], 'there is no file none.paving. Check the name; it counts from where you are.'],
    [['.', 'new.paving'], '. is a folder. Name two files, or one folder to compare it with an earlier revision.'],
    [
      ['--from', 'HEAD', 'old.paving', 'new.paving'],
      '--from and --to go with one file or folder. Two files are compared as they stand.'
    ],
    [['old.paving', 'new.paving', 'old.paving'], 'more was given than two files. A folder stands for all jobs in it.'],
    [[], 'name two job specs, or one file or folder: paving compare OLD NEW, paving compare terrace.paving'],
    [['old.paving'], 'git is not installed here, or not on the path. Compare two files instead.'],
    [
      ['--format', 'pdf', 'old.paving', 'new.paving'],
      "--format can't be pdf. Write human, json, markdown, html or svg."
    ]
  ])('%j: said what to do instead', (given, complaint) => {
    const cwd = folder({ 'old.paving': PATIO, 'new.paving': LONGER, 'units.paving': LIBRARY });
    const ran = paving(['compare', ...given], { cwd, env: { ...process.env, PATH: cwd } });
    expect(ran).toEqual({ code: 2, out: '', err: `paving: ${complaint}\n` });
  });

  test('a file that holds no text is told, and nothing is compared', () => {
    const cwd = folder({ 'old.paving': new Uint8Array([1, 0, 2]), 'new.paving': PATIO });
    const { code, out, err } = paving(['compare', 'old.paving', 'new.paving'], { cwd });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('paving: old.paving holds no text.');
  });

  test('the price is that of the order', () => {
    const cwd = folder({ 'new.paving': LONGER });
    const { out } = paving(['order', '--format', 'json', ...DAY, 'new.paving'], { cwd });
    const [job] = (JSON.parse(out) as { jobs: { costs: { total: string } }[] }).jobs;
    expect(changes(PATIO, LONGER).find(({ id }) => id === 'to-pay')).toMatchObject({ after: job!.costs.total });
  });
});

const known = new Map<string, ComparisonJson>();

/** Each pair of texts is compared once. */
function json(older: string, newer: string): ComparisonJson {
  const pair = JSON.stringify([older, newer]);
  const found = known.get(pair) ?? (JSON.parse(compared(older, newer, '--format', 'json').out) as ComparisonJson);
  known.set(pair, found);
  return found;
}

function changes(older: string, newer: string): ComparisonJson['changes'] {
  return json(older, newer).changes;
}

describe('as data', () => {
  const validate = new Ajv2020({ allErrors: true, strict: true, strictTypes: false }).compile(COMPARISON_SCHEMA);

  test.each([
    ['an edit', PATIO, LONGER],
    ['errors and findings', PATIO, BROKEN],
    ['another job altogether', PATIO, OTHER.replace('area path', 'area walk')],
    ['a finding set aside', THIN, ASIDE],
    ['nothing', PATIO, PATIO]
  ])('%s: matches its schema, which knows no other keys', (_, older, newer) => {
    const found = json(older, newer);
    expect(validate(found) ? [] : validate.errors).toEqual([]);
    expect(validate({ ...found, more: 1 })).toBe(false);
    const ids = found.changes.map(({ job, id }) => `${job} ${id}`);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('numbers in SI and full, the edit behind each, and where both stand', () => {
    const found = json(PATIO, LONGER);
    expect(found).toMatchObject({
      schema: 1,
      asOf: '2026-04-18',
      from: 'old.paving',
      to: 'new.paving',
      jobs: [{ id: 'new.paving', title: 'Back terrace', before: 'old.paving', after: 'new.paving' }]
    });
    const [edit] = found.changes;
    expect(edit).toEqual({
      id: 'edit-1',
      job: 'new.paving',
      kind: 'edit',
      label: 'area terrace, outline',
      before: 16 * 0.3048,
      after: 17 * 0.3048,
      change: 17 * 0.3048 - 16 * 0.3048,
      measure: 'm',
      edited: true,
      written: { before: 'outline rectangle 12 x 16 ft', after: 'outline rectangle 12 x 17 ft' },
      places: {
        before: { file: 'old.paving', line: 22, column: 3, endLine: 22, endColumn: 31 },
        after: { file: 'new.paving', line: 22, column: 3, endLine: 22, endColumn: 31 }
      }
    });
    const area = found.changes.find(({ id }) => id === 'areas/area:terrace/netArea')!;
    expect(area).toMatchObject({ kind: 'number', measure: 'm2', edited: false, causes: ['edit-1'] });
    expect(area.before).toBeCloseTo(192 * 0.3048 ** 2, 12);
    expect(area.change).toBeCloseTo(12 * 0.3048 ** 2, 12);
    expect(found.changes.find(({ id }) => id === 'to-pay')).toMatchObject({
      kind: 'money',
      measure: 'USD',
      change: expect.stringMatching(/^\d+\.\d\d$/) as unknown
    });
  });

  test('a finding that is set aside tells why, and what was', () => {
    const found = changes(THIN, ASIDE).filter(({ kind }) => kind === 'finding');
    expect(found).toEqual(
      expect.arrayContaining([
        expect.objectContaining({
          label: 'set aside',
          finding: expect.objectContaining({
            id: 'base-too-thin',
            accepted: expect.objectContaining({ reason: 'rock below' }) as unknown
          }) as unknown
        })
      ])
    );
  });

  test('how many errors either text has', () => {
    expect(json(PATIO, BROKEN).jobs[0]!.errors).toEqual({ after: 1 });
    expect(json(PATIO, PATIO).jobs[0]).not.toHaveProperty('errors');
  });
});
