import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { programmersWords } from '../faulty/plain-words.ts';
import { shippedPages } from '../../language/pages.ts';
import { folder, paving, root, type Ran } from './run.ts';

const VERBS = ['new', 'check', 'quantities', 'draw', 'order', 'schedule', 'compare', 'git-diff', 'format', 'explain'];

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
    const page = readFileSync(path.join(root, 'language/pages/never-used.md'), 'utf8');
    expect(paving(['explain', 'never-used'])).toEqual({ code: 0, out: page, err: '' });
  });

  test('prints the page of a rule, and the guide to rules', () => {
    for (const name of ['base-too-thin', 'rules'])
      expect(paving(['explain', name])).toEqual({ code: 0, out: shippedPages().get(name), err: '' });
  });

  test('lists all findings and rules with their titles', () => {
    const { code, out } = paving(['explain']);
    expect(code).toBe(0);
    expect(out).toMatch(/^unknown-name +A name that nothing has$/m);
    expect(out).toMatch(/^open-edge-without-edging +Open edge without edging$/m);
  });

  test('offers the nearest name, and those with the word in them', () => {
    expect(paving(['explain', 'base-to-thin'])).toEqual({
      code: 2,
      out: '',
      err: 'paving: no finding or rule is called base-to-thin. Did you mean base-too-thin? For a rule of your own name its file too: paving explain base-to-thin FILE\n'
    });
    expect(paving(['explain', 'overlap']).err).toContain('Did you mean areas-overlap?');
    expect(paving(['explain', 'thin']).err).toMatch(
      /Did you mean .*base-too-thin, thing-incomplete or unit-too-thin\?/
    );
    expect(paving(['explain', 'Winters']).err).toContain('Did you mean winters-not-said?');
    expect(paving(['explain', 'a']).err).toContain('For a list write: paving explain.');
    expect(paving(['explain', 'zzz']).err).toContain(
      'no finding or rule is called zzz. For a list write: paving explain.'
    );
  });

  test('prints a rule as it stands in a file', () => {
    const at = folder({ 'patio.paving': PATIO });
    const shown = (name: string): Ran => paving(['explain', name, 'patio.paving'], { cwd: at });
    expect(shown('base-on-clay').out).toContain(
      'patio.paving: a warning. Of each area on clay:\n\n- the base is at least 5 in\n'
    );
    expect(shown('base-too-thin').out).toContain('The job in patio.paving treats it as a warning.');
    expect(shown('base-too-thin').out).not.toContain('`treat ');
    expect(shown('base-too-thin').out).toContain('The job sets it aside on `patio` until 2027-06-30: “rock below”');
    expect(shown('base-on-clay').out).toContain('`treat base-on-clay as note` in the `job`');
    expect(shown('bad-example').out).toContain('It has an error, so the job in patio.paving is not checked by it yet.');
    expect(shown('base-thinner-than-usual').out).toContain('It is not told of things that `base-on-clay` applies to.');
    expect(shown('dig-deep').out).toContain('Rules for everywhere: an error, for the safety of people.');
    expect(shown('bed-outside-limits').out).not.toContain('North America');
    expect(shown('bed-outside-limits').out).toContain('It stands over the rule of this name that ships.');
    expect(shown('base-on-clai').err).toBe(
      'paving: no rule is called base-on-clai in patio.paving. Did you mean base-on-clay?\n'
    );
    expect(shown('half-rule').err).toContain('the rule half-rule has an error');
    expect(paving(['explain', 'base-on-clay', 'none.paving'], { cwd: at })).toMatchObject({
      code: 2,
      err: 'paving: none.paving is not there.\n'
    });
  });
});

const PATIO = `job "Patio" {
  rules  north-america
  treat  base-too-thin as warning
  prefer base-on-clay over base-thinner-than-usual
}
rule base-on-clay {
  title    "Base on clay"
  concerns area
  when     soil is clay
  needs    base at least 5 in
  says     "The base of " area " is too thin on clay."
  cites    common-practice
}
rule bed-outside-limits {
  title    "Bed as we lay it"
  concerns layer
  when     role is bed
  needs    thickness at most 1 1/4 in
  says     "The bed is too thick: " thickness "."
  cites    common-practice
}
rule half-rule { title "Half a rule" }
rule bad-example {
  title    "Base on clay"
  concerns area
  needs    base at least 5 in
  says     "Thin."
  cites    common-practice
  wrong    { area a { traffic foot, base crushed-stone 4 in } }
}
area patio {
  outline rectangle 10 x 12 ft
}
accept base-too-thin on patio because "rock below" until 2027-06-30
`;
