// Examples of rules are tried out: a wrong one breaks its rule, a right one keeps it.
import { expect, test } from 'vitest';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { evaluated, inMemory } from './in-memory.ts';

const example = (what: string, inside: string): string => `  ${what} {\n${inside}\n  }\n`;
const area = (base: string): string => `    area terrace {
      outline rectangle 12 x 16 ft
      traffic foot
      base    ${base}
    }`;

const rule = (examples: string, needs = 'base at least 5 in'): string => `rule base-on-clay {
  title    "Base on clay"
  concerns area
  when     soil is clay
  needs    ${needs}
  says     "The base of " area ", " base ", is too thin: " needed "."
  cites    common-practice
${examples}}
`;

const JOB = 'job "Patio" { rules north-america }\n';
const CLAY = '    site { soil clay }\n';

function told({ findings }: Evaluation): string[] {
  return findings.filter(({ id }) => id === 'example-does-not-show').map(({ message }) => message);
}

test('nothing is told of examples that show their rule', async () => {
  const examples =
    example('wrong', CLAY + area('crushed-stone 4 in')) + example('right', CLAY + area('crushed-stone 5 in'));
  const { findings } = await evaluated(JOB + rule(examples));
  expect(findings).toEqual([]);
});

test('a wrong example that its rule does not apply to, and one that keeps it', async () => {
  const examples = example('wrong', area('crushed-stone 4 in')) + example('wrong', CLAY + area('crushed-stone 5 in'));
  expect(told(await evaluated(JOB + rule(examples)))).toEqual([
    'This wrong example does not break the rule: the rule applies to nothing in it.',
    'This wrong example does not break the rule: what it shows keeps the rule.'
  ]);
});

test('a right example that breaks its rule says what is told of it', async () => {
  expect(told(await evaluated(JOB + rule(example('right', CLAY + area('crushed-stone 4 in')))))).toEqual([
    'This right example breaks the rule: The base of terrace, 4 in, is too thin: 5 in.'
  ]);
});

test('the rule alone judges: what others find in an example is not told', async () => {
  const examples = example('right', CLAY + area('crushed-stone 1/2 in'));
  expect(told(await evaluated(JOB + rule(examples, 'base at most 5 in')))).toEqual([]);
});

test('an error in an example is told, with its place', async () => {
  const text = JOB + rule(example('wrong', CLAY + area('gravle 4 in')));
  const { findings } = await evaluated(text);
  const [finding, ...others] = findings;
  expect(others).toEqual([]);
  expect(finding!.message).toMatch(/^This wrong example has an error of its own: No material is called `gravle`\./);
  const lines = text.split('\n');
  const [place] = finding!.related;
  expect(lines[place!.line - 1]!.slice(place!.column - 1, place!.endColumn - 1)).toBe('gravle');
  expect(lines[finding!.line - 1]!.slice(finding!.column - 1, finding!.endColumn - 1)).toBe('wrong');
});

test('also where the example stands on the line of its brace', async () => {
  const { findings } = await evaluated(`${JOB}${rule('  wrong { site { soil clai } }\n')}`);
  const [place] = findings[0]!.related;
  expect(findings[0]!.line).toBe(place!.line);
  expect([place!.column, place!.endColumn]).toEqual([23, 27]);
});

test('an example sees what its file declares and uses, but no area and no site of the job', async () => {
  const examples = example('wrong', CLAY + area('stone 4 in')) + example('right', CLAY + area('stone thick'));
  const files = {
    'rules.paving': `use "stone.paving"\nlet thick = 5 in\n${rule(examples)}`,
    'stone.paving': 'material stone { role base, compacted 140 lb per cu ft }\n'
  };
  const job = `use "rules.paving"\n${JOB}site { soil clay }\n${area('crushed-stone 8 in')}`;
  expect(told(await evaluated(job, files))).toEqual([]);
  const seesNothing = JOB + rule(example('wrong', '    let wide = 3 ft')) + area('crushed-stone 4 in');
  expect(told(await evaluated(`site { soil clay }\n${seesNothing}`))).toEqual([
    'This wrong example does not break the rule: the rule applies to nothing in it.'
  ]);
});

test('an error in what an example sees is told there alone', async () => {
  const examples = example('wrong', CLAY + area('stone 4 in'));
  const { findings } = await evaluated(`${JOB}material stone { role base, compacted 140 lb }\n${rule(examples)}`);
  expect(findings.filter(({ severity }) => severity === 'error')).toHaveLength(1);
  expect(findings.map(({ id }) => id)).not.toContain('example-does-not-show');
});

test('the areas of the job are no part of an example', async () => {
  const [wrong, ...others] = told(
    await evaluated(
      JOB + rule(example('wrong', CLAY + area('as patio'))) + area('crushed-stone 4 in').replace('terrace', 'patio')
    )
  );
  expect(wrong).toMatch(/^This wrong example has an error of its own: No area is called `patio`\./);
  expect(others).toEqual([]);
});

test('an example is a job of the rulebook that its rule stands in', async () => {
  const read = (book: string): Promise<Evaluation> =>
    evaluated(
      `rulebook mine { title "Mine", includes ${book} }\n` +
        rule(example('right', CLAY + area('crushed-stone 4 in'))).replaceAll('crushed-stone ', '')
    );
  expect(told(await read('britain'))).toEqual([
    'This right example breaks the rule: The base of terrace, 101.6 mm, is too thin: 127 mm.'
  ]);
  expect(told(await read('north-america'))).toEqual([
    'This right example breaks the rule: The base of terrace, 4 in, is too thin: 5 in.'
  ]);
});

test('an example is tried out again only when it, its rule or what it sees has changed', () => {
  const paving = new Paving(inMemory({}));
  const counted = (text: string): number => {
    const before = paving.session.computations.examples;
    paving.setText('job.paving', text);
    drain(paving.evaluate('job.paving'));
    return paving.session.computations.examples - before;
  };
  const examples =
    example('wrong', CLAY + area('crushed-stone 4 in')) + example('right', CLAY + area('crushed-stone 5 in'));
  const text = `${JOB}let deep = 5 in\n${rule(examples)}${area('crushed-stone deep').replaceAll('    ', '')}`;
  expect(counted(text)).toBe(2);
  expect(counted(text)).toBe(0);
  expect(counted(`// Moved down.\n${text}`)).toBe(0);
  expect(counted(text.replace('12 x 16 ft\ntraffic', '10 x 16 ft\ntraffic'))).toBe(0);
  expect(counted(text.replace('crushed-stone 4 in', 'crushed-stone 3 in'))).toBe(1);
  expect(counted(text)).toBe(1);
  expect(counted(text.replace('at least 5 in', 'at least 4 1/2 in'))).toBe(2);
  expect(counted(text.replace('deep = 5 in', 'deep = 6 in'))).toBe(2);
  expect(counted(JOB)).toBe(0);
});

test('what is no longer there is not held', () => {
  const paving = new Paving(inMemory({}));
  const sizeWith = (text: string): number => {
    paving.setText('job.paving', text);
    drain(paving.evaluate('job.paving'));
    return paving.session.size;
  };
  const before = sizeWith(JOB);
  expect(sizeWith(JOB + rule(example('right', CLAY + area('crushed-stone 5 in'))))).toBeGreaterThan(before);
  expect(sizeWith(JOB)).toBe(before);
  paving.forget('job.paving');
  expect(paving.session.size).toBe(0);
});
