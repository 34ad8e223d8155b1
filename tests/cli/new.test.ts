// A new job asked for in a terminal; here the answers come through a pipe.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { programmersWords } from '../faulty/plain-words.ts';
import { folder, paving, root } from './run.ts';

/** Enter at each of the ten questions. */
const ALL_USUAL = '\n'.repeat(10);
const typed = (...lines: string[]): string => lines.map(line => `${line}\n`).join('');

test('a patio of 12 by 16 ft against the house: 192 sq ft, and no finding', () => {
  const cwd = folder({});
  const answers = typed(
    '1',
    'people',
    'House wall with a',
    '12 by 16 ft',
    'lawn',
    '1',
    '',
    'Common',
    'drains',
    'freeze'
  );
  const made = paving(['new', 'patio.paving'], { cwd, input: answers });
  expect(made).toMatchObject({ code: 0, out: '' });
  expect(made.err).toContain('patio.paving is written.');
  expect(paving(['check', '--severity', 'note', 'patio.paving'], { cwd })).toMatchObject({ code: 0, err: '' });
  expect(paving(['quantities', 'patio.paving'], { cwd }).out).toContain('192.00 sq ft');
});

test('without a file the spec goes to standard output, and the questions do not', () => {
  const cwd = folder({});
  const { code, out, err } = paving(['new'], { cwd, input: ALL_USUAL });
  expect(code).toBe(0);
  expect(out).toMatch(/^\/\/ New patio, written from a few answers/);
  expect(err).toMatch(/1 of 5: Where is the job\?\n.*\n +1 {2}North America, in feet and inches\n/);
  expect(err).toContain('Size [12 x 16 ft]: ');
  expect(programmersWords(err)).toEqual([]);
  expect(paving(['format', '-'], { cwd, input: out }).out).toBe(out);
  expect(paving(['new', '-'], { cwd, input: ALL_USUAL }).out).toBe(out);
});

test('a wrong answer and ? explain, and the question is asked again', () => {
  const { code, out, err } = paving(['new'], {
    input: typed('', '', '', '12 x 16', '?', '12 x 16 ft', '', '', '', 'mud', '9', '?', '2', '', '')
  });
  expect(code).toBe(0);
  expect(err).toContain('Size [12 x 16 ft]: Say the measure too: `12 x 16 ft`, or `12 x 16 m`.\nAlong what it stands');
  expect(err).toContain('`mud` is none of the answers. Write a number from 1 to 5.');
  expect(err).toContain('`9` is none of the answers.');
  expect(err.match(/^Number \[3\]: .*\n? +1 {2}Clay\n +Sticky/gm)).toHaveLength(3);
  expect(out).toContain('soil      silt, poorly-drained');
});

test('the usual answers follow the country and the soil', () => {
  const { out, err } = paving(['new'], { input: typed('britain', '', '', '', '', '', '', 'clay', '', '') });
  expect(err).toContain('Size [4 x 5 m]: ');
  expect(out).toContain('rules britain');
  expect(out).toContain('rectangle 4 x 5 m');
  expect(out).toMatch(/soil +clay, poorly-drained\n/);
  expect(out).toMatch(/winters +mild\n/);
});

test.each([[''], [typed('1', '2', '3')], ['1']])('answers that end early (%j) write nothing', input => {
  const cwd = folder({});
  const { code, out, err } = paving(['new', 'a.paving'], { cwd, input });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toMatch(/\npaving: not every question was answered\. Nothing is written\.\n$/);
  expect(existsSync(path.join(cwd, 'a.paving'))).toBe(false);
});

test('Ctrl+C ends it: exit code 2, nothing written', async () => {
  const cwd = folder({});
  const asked = spawn(process.execPath, [path.join(root, 'dist/paving.cjs'), 'new', 'a.paving'], { cwd });
  asked.stdin.write('1\n');
  let said = '';
  const code = await new Promise(resolve => {
    asked.stderr.on('data', (text: Buffer) => {
      const asksSecond = /2 of 5/.test((said += String(text))) && !asked.killed;
      if (asksSecond) asked.kill('SIGINT');
    });
    asked.on('exit', resolve);
  });
  expect(code).toBe(2);
  expect(said).toContain('Nothing is written.');
  expect(existsSync(path.join(cwd, 'a.paving'))).toBe(false);
});

test('a file that is there stays, until one is told to write over it', () => {
  const cwd = folder({ 'a.paving': '// mine\n' });
  const kept = (): string => readFileSync(path.join(cwd, 'a.paving'), 'utf8');
  expect(paving(['new', 'a.paving'], { cwd, input: ALL_USUAL })).toEqual({
    code: 2,
    out: '',
    err: 'paving: a.paving is there already and stays as it is. Name another file, or add --overwrite.\n'
  });
  expect(kept()).toBe('// mine\n');
  expect(paving(['new', '--overwrite', 'a.paving'], { cwd, input: '\n' }).code).toBe(2);
  expect(kept()).toBe('// mine\n');
  expect(paving(['new', '--overwrite', 'a.paving'], { cwd, input: ALL_USUAL }).code).toBe(0);
  expect(kept()).toMatch(/^\/\/ New patio, written from a few answers/);
});

test.each([
  ['patio', 'job specs are files that end in .paving. Write: paving new patio.paving'],
  ['none/patio.paving', 'there is no folder none. Make it first, or name another.']
])('the name %s is refused before anything is asked', (name, why) => {
  const cwd = folder({});
  expect(paving(['new', name], { cwd, input: ALL_USUAL })).toEqual({ code: 2, out: '', err: `paving: ${why}\n` });
});
