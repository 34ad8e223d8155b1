// Rules, sources and rulebooks by name: what a name leads to and what is told of it, and what is no name of a file.
import { describe, expect, test } from 'vitest';
import { highlightsAt } from '../../language/editing/highlights.ts';
import { hoverAt } from '../../language/editing/hover.ts';
import { nameAt, placeOfDeclaration } from '../../language/editing/names-at.ts';
import { placesInAll, placesInExample } from '../../language/editing/references.ts';
import { renameableAt, renamed } from '../../language/editing/rename.ts';
import { contentsOf } from '../../language/editing/contents.ts';
import { occurrencesIn } from '../../language/lowering/occurrences.ts';
import { drain, Paving } from '../../language/paving.ts';
import { drawn, marked } from './editing/marked.ts';
import { inMemory } from './in-memory.ts';

const TOWN = `source leaflet { kind handbook, title "Town leaflet", edition "2024" }
rulebook our-town { title "Our town", includes britain, treat base-too-thin as warning }
rule base-on-clay {
  title    "Base too thin on clay"
  about    "Clay softens when it is wet."
  severity note
  concerns area
  when     soil is clay
  needs    base at least least-base when traffic is foot
  says     "The base of " area " is " missing " too thin."
  fix      base to needed
  cites    leaflet, "page 2", as-quoted
  wrong {
    unit brick { size 200 x 100 x 60 mm }
    area sample { paving brick in running-bond }
    area other { paving brick in stack-bond, joints gap }
  }
}
let least-base = 125 mm
`;
const JOB = `use "town.paving"
job "Patio" { rules our-town, treat base-on-clay as warning }
unit brick { size 210 x 100 x 60 mm }
area terrace { outline rectangle 4 x 3 m }
accept base-on-clay on terrace because "Rock." until 2027-06-30
accept base-too-thin on brick because "Rock." for good, agreed with "the owner"
`;
const files = (name: string, words: string): Record<string, string> => {
  const all: Record<string, string> = { 'town.paving': TOWN, 'job.paving': JOB };
  const plain = words.replace('‸', '');
  expect(all[name]).toContain(plain);
  return { ...all, [name]: all[name]!.replace(plain, () => words) };
};

async function leadsTo(name: string, words: string): Promise<string | undefined> {
  const { look, offset } = await marked(files(name, words));
  const found = nameAt(look, offset)?.declared;
  if (found === undefined) return undefined;
  const { line } = placeOfDeclaration(found);
  return `${found.text.file}: ${found.text.parsed.text.split('\n')[line - 1]!.trim()}`;
}

async function places(name: string, words: string): Promise<string[]> {
  const { look, looks, offset } = await marked(files(name, words));
  const { declared } = nameAt(look, offset)!;
  const found = placesInExample(look, offset, declared!) ?? placesInAll(looks, declared!);
  return drawn(
    looks,
    found.map(({ place }) => place)
  ).sort();
}

async function rename(name: string, words: string, to: string): Promise<string[] | string> {
  const { looks, look, offset, paving } = await marked(files(name, words));
  const result = drain(renamed(looks, look, offset, to, paving.parse));
  if ('refused' in result) return result.refused;
  return drawn(
    looks,
    result.changes.map(({ place }) => place)
  ).sort();
}

async function told(name: string, words: string): Promise<string> {
  const { look, offset } = await marked(files(name, words));
  return hoverAt(look, offset)?.markdown ?? '';
}

describe('A name leads', () => {
  test.each([
    ['job.paving', 'treat ‸base-on-clay', 'town.paving: rule base-on-clay {'],
    ['job.paving', 'accept ‸base-on-clay', 'town.paving: rule base-on-clay {'],
    ['job.paving', 'on ‸terrace', 'job.paving: area terrace { outline rectangle 4 x 3 m }'],
    ['job.paving', 'on ‸brick', 'job.paving: unit brick { size 210 x 100 x 60 mm }'],
    ['job.paving', 'rules ‸our-town', `town.paving: ${TOWN.split('\n')[1]!}`],
    ['town.paving', 'includes ‸britain', 'as shipped, britain: rulebook britain {'],
    ['town.paving', 'cites    ‸leaflet', `town.paving: ${TOWN.split('\n')[0]!}`],
    ['town.paving', 'at least ‸least-base', 'town.paving: let least-base = 125 mm']
  ])('%s, %s', async (name, words, wanted) => {
    expect(await leadsTo(name, words)).toBe(wanted);
  });

  test('of several rules called alike to the one that the job is checked by', async () => {
    const lineOf = async (rules: string): Promise<string> => {
      const text = `job "A" { rules ${rules}, treat ‸base-too-thin as note }`;
      const { look, offset } = await marked({ 'job.paving': text });
      const { text: shipped, node } = nameAt(look, offset)!.declared!;
      const above = shipped.parsed.text.slice(0, node.$cstNode!.offset);
      return above.slice(above.lastIndexOf('\nrulebook ') + '\nrulebook '.length).split(' ')[0]!;
    };
    expect(await lineOf('britain')).toBe('britain');
    expect(await lineOf('north-america')).toBe('north-america');
    expect(await leadsTo('town.paving', 'treat ‸base-too-thin')).toContain('as shipped');
  });

  test('from every place back, and takes them along to a new name', async () => {
    const wanted = [
      'job.paving: accept «base-on-clay» on terrace because "Rock." until 2027-06-30',
      'job.paving: job "Patio" { rules our-town, treat «base-on-clay» as warning }',
      'town.paving: rule «base-on-clay» {'
    ];
    expect(await places('job.paving', 'treat ‸base-on-clay')).toEqual(wanted);
    expect(await rename('town.paving', 'rule ‸base-on-clay', 'clay-base')).toEqual(wanted);
    expect(await rename('town.paving', 'rulebook ‸our-town', 'my-town')).toHaveLength(2);
    expect(await rename('town.paving', 'cites    ‸leaflet', 'sheet')).toHaveLength(2);
    expect(await rename('town.paving', 'let ‸least-base', 'thin')).toHaveLength(2);
  });

  test('to nothing that a new name could be mistaken for', async () => {
    expect(await rename('town.paving', 'rule ‸base-on-clay', 'base-too-thin')).toContain('that ships');
    expect(await rename('job.paving', 'accept ‸base-too-thin', 'other')).toContain('that ships');
    // It would be a quantity of the rule, and no value any more.
    expect(await rename('town.paving', 'let ‸least-base', 'topsoil')).toContain("can't be a name");
  });
});

describe('An example of a rule', () => {
  test('has names of its own, which are none of the file', async () => {
    const { look } = await marked(files('town.paving', 'rule ‸base-on-clay'));
    const names = occurrencesIn(look.text, look.project).map(({ name }) => name);
    expect(names).not.toContain('brick');
    expect(names).not.toContain('running-bond');
    expect(names).not.toContain('gap');
    expect(await leadsTo('town.paving', 'paving ‸brick in running')).toBe(
      'town.paving: unit brick { size 200 x 100 x 60 mm }'
    );
    expect(await leadsTo('town.paving', 'in ‸running-bond')).toContain('as shipped: bond running-bond');
    expect(await leadsTo('town.paving', 'joints ‸gap')).toBeUndefined();
    expect(await places('town.paving', 'paving ‸brick in running')).toHaveLength(3);
    expect(await places('job.paving', 'on ‸brick')).toHaveLength(2);
  });

  test('lights up its own names, and they are changed by hand', async () => {
    const { look, looks, offset } = await marked(files('town.paving', 'paving ‸brick in running'));
    expect(highlightsAt(look, offset)).toHaveLength(3);
    expect(renameableAt(looks, look, offset)).toMatchObject({ refused: expect.stringContaining('example') as string });
  });
});

describe('What a rule looks at', () => {
  test('is no name of the file: nothing leads nowhere', async () => {
    const { look } = await marked(files('town.paving', 'rule ‸base-on-clay'));
    const names = occurrencesIn(look.text, look.project);
    expect(names.filter(({ declared }) => declared === undefined)).toEqual([]);
    expect(names.map(({ name }) => name)).not.toContain('missing');
  });

  test('every name in what ships leads somewhere', async () => {
    const paving = new Paving(inMemory({ 'job.paving': 'job "T" { rules britain }' }));
    await paving.load('job.paving');
    const { project } = paving.look('job.paving')!;
    const names = [project.shipped, ...project.rulebooks].flatMap(text => occurrencesIn(text, project));
    expect(names.filter(({ declared }) => declared === undefined).map(({ name }) => name)).toEqual([]);
    expect(names.length).toBeGreaterThan(100);
  });

  test('is told with its measure and its words', async () => {
    const base = await told('town.paving', 'needs    ‸base');
    expect(base).toContain('**base**: a length');
    expect(base).toContain('Thickness of all stone under the bed');
    expect(await told('town.paving', 'when ‸traffic')).toContain('one of `foot`, `cars`, `trucks`, `turning`');
    expect(await told('town.paving', 'traffic is ‸foot')).toContain('People on foot');
    expect(await told('town.paving', 'soil is ‸clay')).toContain('clay');
    expect(await told('town.paving', '" ‸missing "')).toContain('By how much the limit is missed');
    expect(await told('town.paving', 'severity ‸note')).toContain('Good to know');
    expect(await told('town.paving', '"page 2", ‸as-quoted')).toContain('as other texts quote it');
    expect(await told('town.paving', 'least ‸least-base')).toContain('125 mm');
  });
});

describe('Told of', () => {
  test('a rule: its title, what it asks, its weight, its rulebook and its source', async () => {
    const rule = await told('job.paving', 'accept ‸base-on-clay');
    expect(rule).toContain('**base-on-clay**, rule, town.paving, line 3');
    expect(rule).toContain('Base too thin on clay');
    expect(rule).toContain('concerns area\nwhen soil is clay\nneeds base at least least-base when traffic is foot');
    expect(rule).toContain('Note; rulebook Our town.');
    expect(rule).toContain('_Source: Town leaflet, page 2, as quoted_');
    expect(await told('job.paving', 'accept ‸base-too-thin')).toContain('as shipped');
  });

  test('a source and a rulebook: what they are', async () => {
    expect(await told('town.paving', 'cites    ‸leaflet')).toContain('kind handbook, title "Town leaflet"');
    expect(await told('town.paving', 'includes ‸britain')).toContain('Rules as in British practice');
  });

  test('the contents: rules by their titles', async () => {
    const { look } = await marked(files('town.paving', 'rule ‸base-on-clay'));
    const contents = contentsOf(look.text).map(({ word, name, detail }) => `${word} ${name} ${detail}`);
    expect(contents).toEqual([
      'source leaflet "Town leaflet"',
      'rulebook our-town "Our town"',
      'rule base-on-clay "Base too thin on clay"',
      'let least-base = 125 mm'
    ]);
  });
});
