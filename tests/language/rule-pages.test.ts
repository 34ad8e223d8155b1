// Pages of rules: what is asked as a person would say it, each need once, and few examples.
import { expect, test } from 'vitest';
import { pageOfRule } from '../../language/pages.ts';
import { Paving } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';

async function page(text: string, name = 'r'): Promise<string> {
  const paving = new Paving(inMemory({ 'job.paving': `job "Yard" { rules britain }\n${text}` }));
  await paving.load('job.paving');
  return pageOfRule(paving.lookAtExamples('job.paving')!.project, name)!;
}

const rule = (...lines: readonly string[]): string =>
  ['rule r {', '  cites common-practice', ...lines, '}'].map(line => `${line}\n`).join('');

/** What stands between the severity and the source. */
async function asked(...lines: readonly string[]): Promise<string[]> {
  const [, part] = /: a warning\. ([^]*?)\n\nWhere from/.exec(await page(rule(...lines)))!;
  return part!.split('\n').filter(line => line !== '');
}

const SAYS = 'says "x"';

test.each([
  ['area', [], 'Of each area:'],
  ['area', ['heaviest-traffic is foot'], 'Of each area under foot traffic:'],
  [
    'area',
    ['heaviest-traffic is cars, trucks and soil is clay', 'winters is freeze'],
    'Of each area under cars or trucks on clay, where winters freeze:'
  ],
  [
    'area',
    ['base at least 4 in (100 mm)', 'base at least 6 in (150 mm) or heaviest-traffic is foot'],
    'Of each area, where the base is at least 4 in (100 mm), and either where the base is at least 6 in (150 mm) or under foot traffic:'
  ],
  [
    'area',
    ['bearing more than 2 % and bearing at most 3 %'],
    'Of each area, where the bearing ratio of the ground is more than 2 % and at most 3 %:'
  ],
  [
    'area',
    ['soil is not clay, silt', 'joint-grading is dense or joint-grading is not said'],
    'Of each area on soil other than clay or silt, where the grading of what fills the joints is dense or not said:'
  ],
  [
    'area',
    ['finish-below-benchmark at least -8 in (-200 mm)'],
    'Of each area, where the finish is at most 8 in (200 mm) above the benchmark:'
  ],
  ['side', ['heaviest-traffic is foot and runs is straight'], 'Of each side that runs straight under foot traffic:'],
  ['side', ['meets is lawn and edging is not said'], 'Of each side that meets lawn, where there is no edging:'],
  [
    'unit',
    ['made-of is concrete and length at most 4 * thickness'],
    'Of each unit of concrete, where the length is at most 4 times the thickness:'
  ],
  ['layer', ['role is base, sub-base'], 'Of each layer that is a base or sub-base:']
] as [string, string[], string][])('a rule about one %s, when %j', async (concerns, when, wanted) => {
  const need = concerns === 'side' ? 'edging is said' : 'traffic is said';
  const [first] = await asked(`concerns ${concerns}`, ...when.map(each => `when ${each}`), `needs ${need}`, SAYS);
  expect(first).toBe(wanted);
});

test.each([
  [
    'base at least 12 in when heaviest-traffic is cars and winters is freeze',
    'the base is at least 12 in under cars, where winters freeze'
  ],
  [
    'base at least 24 in when bearing less than 3 %',
    'the base is at least 24 in where the bearing ratio of the ground is less than 3 %'
  ],
  ['base at least 600 mm - above-base', 'the base is at least 600 mm less the bed and the units above it'],
  ['gross-area at most 20000 m2', 'the gross area is at most 20,000 m2'],
  ['geotextile is said', 'there is a geotextile'],
  ['bond is not stack-bond', 'the bond is not stack-bond']
])('needs %s', async (need, wanted) => {
  expect(await asked('concerns area', `needs ${need}`, SAYS)).toEqual(['Of each area:', `- ${wanted}`]);
});

test('what is needed with a base and without one is told once', async () => {
  const needs = (more = ''): string[] => ['needs base at least 4 in when traffic is foot', more, SAYS];
  const clay = 'needs base at least 8 in when soil is clay';
  const both = ['concerns area', 'when base more than 0 in', ...needs(clay), 'concerns area', 'when base at most 0 in'];
  expect(await asked(...both, ...needs())).toEqual([
    'Of each area:',
    '- the base is at least 4 in under foot traffic',
    '- the base is at least 8 in on clay, where there is a base'
  ]);
  expect(await asked('concerns area', 'when base more than 0 in', ...needs())).toEqual([
    'Of each area, where there is a base:',
    '- the base is at least 4 in under foot traffic'
  ]);
});

test('of examples that look alike those of one rulebook are shown, and no more than two of each', async () => {
  const example = (what: string, base: string, more = ''): string =>
    `  ${what} { area a {\n    outline rectangle 12 x 16 ft\n    traffic foot\n${more}    base ${base}\n  } }`;
  const of = (name: string, ...examples: string[]): string =>
    `rulebook ${name} { title "The town ${name}" }\n${rule('concerns area', 'needs base at least 4 in', SAYS, ...examples)}`;
  const alike = [example('wrong', 'crushed-stone 3 in'), example('right', 'crushed-stone 4 in')];
  const metric = [example('wrong', 'type-1 75 mm'), example('right', 'type-1 100 mm')];
  const heads = async (...books: string[]): Promise<string[]> =>
    (await page(books.join(''))).split('\n').filter(line => /^(?:Wrong|Right)/.test(line));
  expect(await heads(of('one', ...alike, ...alike, ...alike))).toEqual(['Wrong:', 'Right:', 'Wrong:', 'Right:']);
  expect(await heads(of('one', ...alike), of('two', ...metric))).toEqual([
    'Wrong, The town one:',
    'Right, The town one:'
  ]);
  const unlike = metric.map(text => text.replace('traffic foot', 'traffic cars'));
  expect(await heads(of('one', ...alike), of('two', ...unlike))).toEqual([
    ...['Wrong, The town one:', 'Right, The town one:'],
    ...['Wrong, The town two:', 'Right, The town two:']
  ]);
});
