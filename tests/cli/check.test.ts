import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { CHECK_SCHEMA } from '../../language/views/json/schema.ts';
import { FAULTY, folder, GOOD, LIBRARY, paving, root } from './run.ts';

interface CheckJson {
  readonly counts: { readonly errors: number; readonly warnings: number; readonly notes: number };
  readonly findings: readonly {
    readonly id: string;
    readonly file: string;
    readonly line: number;
    readonly column: number;
  }[];
}

const json = (out: string): CheckJson => JSON.parse(out) as CheckJson;

describe('exit codes', () => {
  test('0 for a job without errors, and nothing on standard error', () => {
    const { code, out, err } = paving(['check', 'good.paving'], { cwd: folder({ 'good.paving': GOOD }) });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toBe(
      'No findings in 1 file.\nPasses the checks these rules know; not checked: the ground itself, lines in the ground, what drains can take, local codes.\n'
    );
  });

  test('1 for an error; the finding shows its place, its line and a fix', () => {
    const { code, out, err } = paving(['check', 'faulty.paving'], { cwd: folder({ 'faulty.paving': FAULTY }) });
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).toContain('faulty.paving:18:8  error  unknown-name\n  No material is called `gravle`.');
    expect(out).toContain('    base gravle 4 in\n         ^^^^^^\n');
    expect(out).toMatch(/\n1 error in 1 file\.\n$/);
  });

  test('1 from the asked severity on', () => {
    const cwd = folder({ 'a.paving': GOOD.replace('rules north-america', 'show feet-and-inches') });
    expect(paving(['check', 'a.paving'], { cwd }).code).toBe(0);
    expect(paving(['check', '--severity', 'warning', 'a.paving'], { cwd }).code).toBe(1);
    const noted = folder({ 'a.paving': GOOD.replace(', winters mild', '') });
    expect(paving(['check', '--severity', 'warning', 'a.paving'], { cwd: noted }).code).toBe(0);
    expect(paving(['check', '--severity', 'note', 'a.paving'], { cwd: noted }).code).toBe(1);
  });

  test.each([
    [['check'], 'name a job spec or a folder. For this folder write: paving check .'],
    [['check', 'nowhere.paving'], 'there is no file or folder nowhere.paving.'],
    [['check', 'empty'], 'no job spec lies in the folder empty.'],
    [['check', '--format', 'xml', 'good.paving'], "--format can't be xml. Write human, json, sarif or line."],
    [['check', '--severity', 'bad', 'good.paving'], "--severity can't be bad. Write error, warning or note."],
    [['check', '--formt', 'json'], 'there is no option --formt here. Did you mean --format?'],
    [['check', '-o', 'nowhere/out.txt', 'good.paving'], "nowhere/out.txt can't be written."],
    [['check', '-o'], 'the option -o, --output <file> wants something behind it.'],
    [['chek', 'good.paving'], 'there is no verb chek. Did you mean check?'],
    [['good.paving'], 'there is no verb good.paving. To check a file write: paving check good.paving']
  ])('2 when it could not run: %j', (given, said) => {
    const cwd = folder({ 'good.paving': GOOD, 'empty/notes.txt': '' });
    const { code, out, err } = paving(given, { cwd });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err.startsWith(`paving: ${said}`)).toBe(true);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });
});

describe('formats', () => {
  test('one line a finding', () => {
    const { out } = paving(['check', '--format', 'line', 'jobs'], { cwd: folder({ 'jobs/faulty.paving': FAULTY }) });
    expect(out).toMatch(/^jobs\/faulty\.paving:18:8: error: No material is called `gravle`\..* \[unknown-name\]\n$/);
  });

  test('JSON by its schema, in the same bytes every time', () => {
    const cwd = folder({ 'jobs/faulty.paving': FAULTY, 'jobs/good.paving': GOOD });
    const { out, code } = paving(['check', '--format', 'json', 'jobs'], { cwd });
    expect(code).toBe(1);
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true, strictTuples: false }).compile(CHECK_SCHEMA);
    expect(validate(JSON.parse(out)) ? [] : validate.errors).toEqual([]);
    expect(json(out).counts).toEqual({ errors: 1, warnings: 0, notes: 0, accepted: 0 });
    expect(json(out).findings[0]).toMatchObject({
      id: 'unknown-name',
      file: 'jobs/faulty.paving',
      line: 18,
      column: 8
    });
    expect(paving(['check', '--format', 'json', 'jobs'], { cwd }).out).toBe(out);
  });

  test('a report goes to a file with -o, without colours', () => {
    const cwd = folder({ 'faulty.paving': FAULTY });
    const printed = paving(['check', 'faulty.paving'], { cwd });
    expect(paving(['check', '-o', 'report.txt', 'faulty.paving'], { cwd })).toEqual({ code: 1, out: '', err: '' });
    expect(readFileSync(path.join(cwd, 'report.txt'), 'utf8')).toBe(printed.out);
  });

  test('what a spec holds never reaches a terminal as a command to it', () => {
    const text = `job "Back \u001b[31mterrace" { rules north-america }\narea x { \u001b]0;title\u0007 }\n`;
    const { out } = paving(['check', '-'], { input: text });
    expect(out).toContain('standard input:');
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
  });
});

describe('files', () => {
  test('several files and folders, each file once, below one another', () => {
    const cwd = folder({
      'b/two.paving': FAULTY,
      'b/deep/one.paving': FAULTY,
      'b/node_modules/x/no.paving': FAULTY,
      'b/.hidden/no.paving': FAULTY,
      'a.paving': FAULTY
    });
    const { out } = paving(['check', '--format', 'json', 'b', 'a.paving', 'b/two.paving'], { cwd });
    expect(json(out).findings.map(({ file }) => file)).toEqual(['a.paving', 'b/deep/one.paving', 'b/two.paving']);
  });

  test('a missing file does not stop the others', () => {
    const { code, out, err } = paving(['check', '--format', 'line', 'nowhere.paving', 'faulty.paving'], {
      cwd: folder({ 'faulty.paving': FAULTY })
    });
    expect(code).toBe(2);
    expect(out).toContain('[unknown-name]');
    expect(err).toContain('there is no file or folder nowhere.paving');
  });

  test('standard input uses files of the working directory', () => {
    const input = `use "units.paving"\n${GOOD.replace(/^unit .*\n/m, '')}`;
    const cwd = folder({ 'units.paving': LIBRARY });
    expect(paving(['check', '-'], { cwd, input })).toMatchObject({ code: 0, err: '' });
    const { out, code } = paving(['check', '--format', 'line', '-'], { cwd: folder({}), input });
    expect(code).toBe(1);
    expect(out).toContain('standard input:1:5: error: There is no file units.paving.');
  });

  test('a part is told within the job that uses it, not by itself', () => {
    const part =
      'area path {\n  outline rectangle 3 x 10 ft, corner (20 ft, 0)\n  traffic foot\n  base crushed-stone 4 in\n  edges { all round meets house-wall }\n}\n';
    const cwd = folder({ 'job.paving': `use "path.paving"\n${GOOD}`, 'path.paving': part });
    const together = json(paving(['check', '--format', 'json', '.'], { cwd }).out).findings;
    expect(together.map(({ file, id }) => [file, id])).toEqual([['path.paving', 'finish-not-said']]);
    const alone = json(paving(['check', '--format', 'json', 'path.paving'], { cwd }).out).findings;
    expect(alone.map(({ id }) => id)).toEqual(['job-missing']);
  });

  test('a part may use what lies above it, inside the folder of its job', () => {
    const cwd = folder({
      'job.paving': `use "parts/units.paving"\n${GOOD.replace(/^unit .*\n/m, '')}`,
      'parts/units.paving': 'use "../sizes.paving"\nunit slab-16 { size side x side x 2 in }\n',
      'sizes.paving': 'let side = 16 in\n'
    });
    expect(paving(['check', '.'], { cwd })).toMatchObject({ code: 0, err: '' });
  });

  test('the folder that holds .git is the one that files are used from', () => {
    const job = `use "../units.paving"\n${GOOD.replace(/^unit .*\n/m, '')}`;
    const alone = folder({ 'jobs/a.paving': job, 'units.paving': LIBRARY });
    expect(paving(['check', '--format', 'line', 'jobs'], { cwd: alone }).out).toContain('[use-outside]');
    const kept = folder({ 'jobs/a.paving': job, 'units.paving': LIBRARY, '.git/HEAD': '' });
    expect(paving(['check', 'jobs'], { cwd: kept }).code).toBe(0);
  });

  test('files are shown from the working directory, also those above it', () => {
    const cwd = folder({ 'a.paving': FAULTY, 'here/b.paving': FAULTY });
    const { out } = paving(['check', '--format', 'json', '..'], { cwd: path.join(cwd, 'here') });
    expect(json(out).findings.map(({ file }) => file)).toEqual(['../a.paving', 'b.paving']);
  });
});

test('a reader that stops early is no failure', () => {
  const cwd = folder({ 'a.paving': Array.from({ length: 3000 }, (_, line) => `let a${line} = 1 tonn\n`).join('') });
  const { stdout, stderr } = spawnSync(
    'sh',
    ['-c', `"${process.execPath}" "${root}/dist/paving.cjs" check a.paving | head -n 1`],
    {
      cwd,
      encoding: 'utf8'
    }
  );
  expect(stderr).toBe('');
  expect(stdout).toContain('a.paving:1:');
});

test('every sample is free of errors and warnings', () => {
  expect(paving(['check', '--severity', 'warning', 'samples'])).toMatchObject({ code: 0, err: '' });
});

test('the command runs by itself', () => {
  expect(execFileSync(path.join(root, 'dist/paving.cjs'), ['--version'], { encoding: 'utf8' })).toMatch(/^paving \d/);
});

test('what is no terminal gets no colours, whatever the surroundings ask for', () => {
  const cwd = folder({ 'good.paving': GOOD });
  for (const more of [{ CI: 'true' }, { FORCE_COLOR: '1' }, { COLORTERM: 'truecolor' }]) {
    const { out } = paving(['check', 'good.paving'], { cwd, env: { ...process.env, ...more } });
    expect(out).toContain('No findings');
    expect(out).not.toContain('\u001b');
  }
});
