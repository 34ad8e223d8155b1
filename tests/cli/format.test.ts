import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { FAULTY, folder, GOOD, paving } from './run.ts';

const UNTIDY = GOOD.replace(/^ {2}/gm, '');
const BROKEN = `${UNTIDY}area {`;
const kept = (cwd: string, file: string): string => readFileSync(path.join(cwd, file), 'utf8');

test('prints the canonical text and leaves the file', () => {
  const cwd = folder({ 'a.paving': UNTIDY });
  const { code, out, err } = paving(['format', 'a.paving'], { cwd });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain('\n  traffic foot\n');
  expect(kept(cwd, 'a.paving')).toBe(UNTIDY);
  expect(paving(['format', '-'], { input: UNTIDY }).out).toBe(out);
  expect(paving(['format', '-'], { input: out }).out).toBe(out);
});

test('writes it with -w, and only where something changes', () => {
  const cwd = folder({ 'a.paving': UNTIDY, 'deep/b.paving': FAULTY });
  const printed = paving(['format', 'a.paving'], { cwd }).out;
  expect(paving(['format', '-w', '.'], { cwd })).toEqual({ code: 0, out: '2 of 2 files written.\n', err: '' });
  expect(kept(cwd, 'a.paving')).toBe(printed);
  expect(paving(['format', '-w', '.'], { cwd })).toEqual({ code: 0, out: '0 of 2 files written.\n', err: '' });
});

test('leaves broken text as it is, says so, and goes on with the others', () => {
  const cwd = folder({ 'a.paving': BROKEN, 'b.paving': UNTIDY });
  const { code, out, err } = paving(['format', '-w', '.'], { cwd });
  expect({ code, out }).toEqual({ code: 1, out: '1 of 2 files written.\n' });
  expect(err).toBe('paving: a.paving has a fault in its writing and is left as it is. See: paving check a.paving\n');
  expect(kept(cwd, 'a.paving')).toBe(BROKEN);
  expect(paving(['format', 'a.paving'], { cwd })).toEqual({ code: 1, out: BROKEN, err });
});

test.each([
  [['format'], 'name a job spec. To write all in this folder: paving format -w .'],
  [['format', '.'], 'these are 2 files. Name one to print it, or write them all with -w.'],
  [['format', '-w', '-'], 'standard input can’t be written to. Leave out -w.'],
  [['format', 'nowhere.paving'], 'there is no file or folder nowhere.paving.']
])('%j could not run', (given, said) => {
  const { code, out, err } = paving(given, { cwd: folder({ 'a.paving': GOOD, 'b.paving': GOOD }) });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err.startsWith(`paving: ${said}`)).toBe(true);
});
