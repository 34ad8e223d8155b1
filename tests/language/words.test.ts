// Help on every word of the language, and how it is written.
import { describe, expect, test } from 'vitest';
import { measureHelp, thingHelp, wordHelp, type WordHelp, type WordPlace } from '../../language/editing/word-help.ts';
import { SHIPPED_NAMES, SHIPPED_RULEBOOKS, SHIPPED_RULES } from '../../language/library/shipped.ts';
import { namesOf } from '../../language/lowering/names.ts';
import { AMBIGUOUS_MEASURES, MEASURES, measureText } from '../../language/measures/measures.ts';
import { Paving } from '../../language/paving.ts';
import { createParse } from '../../language/syntax/parse.ts';
import { BLOCKS, type BlockName } from '../../language/syntax/words.ts';
import { programmersWords } from '../faulty/plain-words.ts';
import { evaluated, inMemory } from './in-memory.ts';

type Asked = readonly [word: string, place: WordPlace];

/** Every word that is one of the language's own in some place, by the table that the scanner goes by. */
const KEYWORDS: readonly Asked[] = (Object.keys(BLOCKS) as BlockName[]).flatMap(block => {
  const { statements, lines } = BLOCKS[block];
  return [
    ...(lines?.clauses ?? []).map((word): Asked => [word, { block }]),
    ...Object.entries(statements).flatMap(([statement, { clauses }]): Asked[] => [
      [statement, { block }],
      ...clauses.map((word): Asked => [word, { block, statement }])
    ])
  ];
});

const area = (statement: string): string => `area a { outline rectangle 4 x 3 m\n ${statement} }`;

const laid = (statement: string): string =>
  `unit u { size 200 x 100 x 60 mm }\n${area(`paving u in stack-bond\n ${statement}`)}`;

const rule = (statement: string): string => `rule r {\n concerns area\n ${statement}\n}`;

/** A place where a word out of a list stands, and a text with a word there that is in no list. */
const CHOICES: readonly (readonly [WordPlace, string])[] = [
  [{ block: 'job', statement: 'show' }, 'job "T" { show other }'],
  [{ block: 'site', statement: 'soil' }, 'site { soil clay, other }'],
  [{ block: 'site', statement: 'winters' }, 'site { winters other }'],
  [{ block: 'unit', statement: 'made' }, 'unit u { size 200 x 100 x 60 mm, made of other }'],
  [{ block: 'unit', statement: 'shape' }, 'unit u { size 200 x 100 x 60 mm, shape other }'],
  [{ block: 'material', statement: 'role' }, 'material m { role other }'],
  [{ block: 'material', statement: 'grading' }, 'material m { role base, grading other }'],
  [{ block: 'soil-kind', statement: 'drains' }, 'soil-kind s { swell 1 %, density 1 t/m3, drains other }'],
  [{ block: 'soil-kind', statement: 'frost-heave' }, 'soil-kind s { swell 1 %, density 1 t/m3, frost-heave other }'],
  [{ block: 'side-kind', statement: 'ground' }, 'side-kind s { ground other, holds paving }'],
  [{ block: 'side-kind', statement: 'holds' }, 'side-kind s { ground open, holds other }'],
  [{ block: 'area', statement: 'traffic' }, area('traffic other')],
  [{ block: 'area', statement: 'outline' }, 'area a { outline walk from (0, 0), other 3 m, back }'],
  ...(['start along', 'border u in sailor-course along', 'band u in sailor-course across'] as const).map(
    (words): readonly [WordPlace, string] => [
      { block: 'area', statement: words.split(' ')[0]! },
      laid(`${words} other${words.startsWith('band') ? ' at 1 m' : ''}`)
    ]
  ),
  [{ block: 'area', statement: 'border' }, laid('border u in other all round')],
  [{ block: 'area', statement: 'band' }, laid('band u in other across near at 1 m')],
  [{ block: 'edges' }, area('edges { other meets lawn }')],
  [{ block: 'source', statement: 'kind' }, 'source s { kind other }\n' + rule('cites s')],
  [{ block: 'rule', statement: 'severity' }, rule('severity other')],
  [{ block: 'rule', statement: 'concerns' }, rule('concerns other')],
  [{ block: 'rule', statement: 'cites' }, rule('cites common-practice, "a place", other')],
  [{ block: 'job', statement: 'crew' }, 'job "T" { rules britain, crew 2, other }'],
  [{ block: 'job', statement: 'task' }, 'job "T" { rules britain, task "A" 1 h, after other }'],
  [{ block: 'job', statement: 'hire' }, 'job "T" { rules britain, hire "A" 1 GBP a day, for other }'],
  [{ block: 'job', statement: 'hire' }, 'job "T" { rules britain, hire "A" 1 GBP a other }'],
  [{ block: 'job', statement: 'contingency' }, 'job "T" { rules britain, contingency 1 % of other }'],
  [{ block: 'job', statement: 'extra' }, 'job "T" { rules britain, extra "A" 1 % of other }'],
  [{ block: 'rate', statement: 'of' }, 'rate r { of other, takes 1 h per m2 }'],
  [{ block: 'rate', statement: 'includes' }, 'rate r { of bed, takes 1 h per m2, includes other }'],
  [{ block: 'job', statement: 'treat' }, 'job "T" { rules britain, treat base-too-thin as other }'],
  [{ block: 'rulebook', statement: 'treat' }, 'rulebook b { includes britain, treat base-too-thin as other }']
];

/** The words that the finding says can stand there. */
async function choicesAt(text: string): Promise<string[]> {
  const whole = text.startsWith('job') ? text : `job "T" { rules britain }\n${text}`;
  const { findings } = await evaluated(whole);
  const list = findings.flatMap(({ message }) => /(?:Write one of|Its sides are): (.*)\.$/.exec(message)?.[1] ?? []);
  expect(list, text).toHaveLength(1);
  return list[0]!.split(', ');
}

const currencies = [...MEASURES].flatMap(([, { dimensions }]) => {
  const code = measureText(dimensions);
  return /^[A-Z]{3}$/.test(code) ? [code] : [];
});

async function shippedThings(): Promise<Map<string, WordHelp>> {
  const paving = new Paving(inMemory({ 'job.paving': 'job "T" { rules north-america, ireland, continental-europe }' }));
  await paving.load('job.paving');
  const { project } = paving.look('job.paving')!;
  const all = [project.shipped, ...project.rulebooks].flatMap(text => namesOf(text).all);
  const things = all.filter(({ kind }) => kind !== 'let');
  const named = things.filter(({ kind }) => kind !== 'source').map(({ name }) => name);
  expect(new Set(named)).toEqual(new Set([...SHIPPED_NAMES, ...SHIPPED_RULES, ...SHIPPED_RULEBOOKS]));
  return new Map(things.map(thing => [`${thing.kind} ${thing.name}, ${thing.text.file}`, thingHelp(thing, project)!]));
}

async function everyHelp(): Promise<Map<string, WordHelp | undefined>> {
  const asked: Asked[] = [
    ...KEYWORDS,
    ...currencies.map((code): Asked => [code, { block: 'job', statement: 'currency' }])
  ];
  for (const [place, text] of CHOICES) for (const word of await choicesAt(text)) asked.push([word, place]);
  const named = ([word, { block, statement }]: Asked): string => [block, statement, word].join(' ');
  return new Map([
    ...asked.map((one): [string, WordHelp | undefined] => [named(one), wordHelp(...one)]),
    ...[...MEASURES.keys(), ...AMBIGUOUS_MEASURES, 'kg/m3', 'lb/ft3', 'in/ft'].map(
      (spelling): [string, WordHelp | undefined] => [`measure ${spelling}`, measureHelp(spelling)]
    ),
    ...(await shippedThings())
  ]);
}

const helps = await everyHelp();

describe('Help', () => {
  test('is there for every word, choice, measure and shipped thing', () => {
    const without = [...helps].filter(([, help]) => help === undefined).map(([asked]) => asked);
    expect(without).toEqual([]);
    expect(helps.size).toBeGreaterThan(300);
  });

  test('is there for no other word', () => {
    expect(wordHelp('frobnicate', { block: 'area' })).toBeUndefined();
    expect(wordHelp('constructor', { block: 'area', statement: 'traffic' })).toBeUndefined();
    expect(wordHelp('foot', { block: 'area', statement: 'toString' })).toBeUndefined();
    expect(wordHelp('foot', { block: 'area' })).toBeUndefined();
    expect(measureHelp('furlong')).toBeUndefined();
  });

  test('begins with one short line, a sentence without its stop', () => {
    const odd = [...helps].filter(([, help]) => !/^[A-Z][^\n]{2,69}[^.\s]$/.test(help!.line) || help!.line.length > 70);
    expect(odd.map(([asked, help]) => `${asked}: ${help!.line}`)).toEqual([]);
  });

  test("is in the trade's words, and promises nothing", () => {
    const promises = /\b(?:compl(?:y|ies)|strong enough|safe to|frost-?proof|guarantee\w*|no permit)\b/i;
    const said = [...helps].flatMap(([asked, help]) => [
      ...programmersWords(help!.text).map(word => `${asked}: ${word}`),
      ...(promises.test(help!.text) ? [`${asked}: promises`] : [])
    ]);
    expect(said).toEqual([]);
  });

  test('of a shipped thing says more than its declaration, and by whose word', async () => {
    const things = await shippedThings();
    const bare = [...things]
      .filter(([, { line }]) => /^(?:Material|Bond|Kind of (?:soil|side)): /.test(line))
      .map(([name]) => name);
    expect(bare).toEqual([]);
    const withoutSource = [...things].filter(
      ([name, { text }]) => /^(?:material|soil-kind) /.test(name) && !text.includes('_Source: ')
    );
    expect(withoutSource.map(([name]) => name)).toEqual([]);
  });

  test("of a thing of one's own begins with what it is, in one short line", async () => {
    const text = `let deep = 6 in
unit slab { size 15 7/8 x 15 7/8 x 2 in, weight 42 lb }
point P at (1 ft, 2 ft)
area a { outline rectangle 12345678 x 12345678 ft, corner (12345678, 12345678) ft, turned 1 degrees }
unit u {`;
    const paving = new Paving(inMemory({ 'job.paving': text }));
    await paving.load('job.paving');
    const look = paving.look('job.paving')!;
    expect(namesOf(look.text).all.map(thing => thingHelp(thing, look.project)!.line)).toEqual([
      'Value: 6 in',
      'Unit: size 15 7/8 x 15 7/8 x 2 in',
      'Point: at (1 ft, 2 ft)',
      'Area: outline rectangle 12345678 x 12345678 ft, corner (12345678, 123…',
      'Unit'
    ]);
  });

  test('gives examples that can be read', () => {
    const parse = createParse();
    const insides: Readonly<Partial<Record<BlockName, (statement: string) => string>>> = {
      spec: statement => statement,
      job: statement => `job "T" { ${statement} }`,
      edges: statement => `area a {\n edges {\n ${statement} } }`,
      heights: statement => `heights {\n ${statement} }`,
      'level-sheet': statement => `level-sheet { ${statement} }`,
      log: statement => `log {\n ${statement} }`,
      'kept-out': statement => `box b in a { ${statement} }`,
      inset: statement => `inset b in a { ${statement} }`,
      example: statement => `rule r { wrong { ${statement} } }`
    };
    const LINES: Readonly<Partial<Record<BlockName, RegExp>>> = {
      edges: / meets /,
      heights: /^ground /,
      log: /^[0-9-]{10} /
    };
    const faults: string[] = [];
    let read = 0;
    for (const [word, place] of KEYWORDS) {
      const { block } = place;
      const inside =
        insides[block] ?? ((statement: string) => `${block}${block === 'site' ? '' : ' n'} { ${statement} }`);
      for (const [, example] of wordHelp(word, place)!.text.matchAll(/`([^`]+)`/g)) {
        // An example of the statement itself; others are parts of one, or of another.
        const isWhole = LINES[block]?.test(example!) ?? example!.startsWith(`${word} `);
        if (!isWhole || place.statement !== undefined) continue;
        read++;
        faults.push(...parse(inside(example!)).faults.map(({ message }) => `${example!}: ${message}`));
      }
    }
    expect(faults).toEqual([]);
    expect(read).toBeGreaterThan(60);
  });
});

describe('Help on a measure', () => {
  test.each([
    ['in', '1 in is 25.4 mm.'],
    ['feet', '1 ft is 0.3048 m.'],
    ['short ton', '1 short ton is about 907.2 kg.'],
    ['tonnes', '1 tonne is about 2205 lb.'],
    ['sq ft', '1 sq ft is about 0.0929 m2.'],
    ['cu yd', '1 cu yd is about 0.7646 m3.'],
    ['kg/m3', '1 kg/m3 is about 0.06243 lb per cu ft.'],
    ['lb/ft3', '1 lb/cu ft is about 16.02 kg per m3.']
  ])('%s: %s', (spelling, factor) => {
    expect(measureHelp(spelling)!.text).toContain(factor);
  });
});
