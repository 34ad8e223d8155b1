import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { programmersWords } from '../faulty/plain-words.ts';
import { paving, root } from './run.ts';

const VERBS = ['new', 'check', 'quantities', 'format', 'explain'];

describe('help', () => {
  test.each([[], ['--help'], ...VERBS.map(verb => [verb, '--help'])].map(given => [given]))(
    '%j teaches with examples',
    given => {
      const { code, out, err } = paving(given);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(out).toMatch(/^Usage: paving/);
      expect(out).toMatch(/^Examples:\n {2}paving /m);
      expect(programmersWords(out.replaceAll(/\bJSON\b|\bID\b/g, ''))).toEqual([]);
    }
  );

  test('the job it shows is a good one', () => {
    const { out } = paving([]);
    const shown = out.slice(out.indexOf('  job "'), out.indexOf('Examples:')).replace(/^ {2}/gm, '');
    expect(paving(['check', '--severity', 'warning', '-'], { input: shown })).toMatchObject({ code: 0, err: '' });
  });

  test('names every verb', () => {
    for (const verb of VERBS) expect(paving([]).out).toMatch(new RegExp(`^ {2}${verb} +[a-z]`, 'm'));
  });
});

test('the version is that of the package', () => {
  const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string };
  expect(paving(['--version'])).toEqual({ code: 0, out: `paving ${version}\n`, err: '' });
});

describe('explain', () => {
  test('prints the page of a finding', () => {
    const page = readFileSync(path.join(root, 'language/pages/base-too-thin.md'), 'utf8');
    expect(paving(['explain', 'base-too-thin'])).toEqual({ code: 0, out: page, err: '' });
  });

  test('lists all findings with their titles', () => {
    const { code, out } = paving(['explain']);
    expect(code).toBe(0);
    expect(out).toMatch(/^unknown-name +A name that nothing has$/m);
    expect(out).toMatch(/^open-edge-without-edging +Open edge without edging$/m);
  });

  test('offers the nearest name, and those with the word in them', () => {
    expect(paving(['explain', 'base-to-thin'])).toEqual({
      code: 2,
      out: '',
      err: 'paving: no finding is called base-to-thin. Did you mean base-too-thin?\n'
    });
    expect(paving(['explain', 'thin']).err).toBe(
      'paving: no finding is called thin. Did you mean base-thinner-than-usual, base-too-thin, thing-incomplete or unit-too-thin?\n'
    );
    expect(paving(['explain', 'Winters']).err).toContain('Did you mean winters-not-said?');
    expect(paving(['explain', 'a']).err).toContain('For a list write: paving explain');
    expect(paving(['explain', 'zzz']).err).toBe('paving: no finding is called zzz. For a list write: paving explain\n');
  });
});
