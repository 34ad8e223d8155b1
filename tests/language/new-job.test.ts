// A spec written from a few answers: right as it stands, whatever was answered.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../language/findings/finding.ts';
import { formatText } from '../../language/format/format.ts';
import { SHIPPED_SIDES } from '../../language/library/shipped.ts';
import { QUESTION_IDS, type Answers } from '../../language/new-job/answers.ts';
import { checkAnswer, createTrial, readAnswers } from '../../language/new-job/check-answer.ts';
import { CHOICES } from '../../language/new-job/choices.ts';
import { questionsFor, STEPS } from '../../language/new-job/questions.ts';
import { writeNewJob } from '../../language/new-job/write-new-job.ts';
import { drain, Paving } from '../../language/paving.ts';
import { createParse } from '../../language/syntax/parse.ts';
import { programmersWords } from '../faulty/plain-words.ts';
import { evaluated, inMemory } from './in-memory.ts';

const parse = createParse();
const trial = createTrial();
const written = (answers: Answers): string => writeNewJob(answers, trial).text;

const paving = new Paving(inMemory({}));
function findingsIn(text: string): readonly Finding[] {
  paving.setText('new.paving', text);
  return drain(paving.evaluate('new.paving', 'findings'))!.findings;
}

const idsOf = (id: keyof typeof CHOICES): string[] => CHOICES[id]!.map(choice => choice.id);

/** Trucks no spec can settle, nor where water goes that has no way off over any side. */
function findingsFor(answers: Answers): string[] {
  const trucks = answers['traffic'] === 'trucks' ? ['note trucks-need-an-engineer'] : [];
  return [...waterOf(answers), ...trucks];
}

const HOLDS_WATER: readonly string[] = ['boundary', 'neighbour', 'house-wall', 'garden-wall', 'steps'];

function waterOf({ near, far = 'lawn', left = 'lawn', right = 'lawn' }: Answers): string[] {
  if (near === 'open' || [far, left, right].some(side => !HOLDS_WATER.includes(side))) return [];
  if (far === 'boundary' || far === 'neighbour') return ['warning water-over-boundary'];
  return ['warning low-place-without-drain', ...(far === 'house-wall' ? ['warning water-runs-to-house'] : [])];
}

const told = (text: string): string[] =>
  findingsIn(text)
    .flatMap(({ severity, id }) => (CUTS.includes(id) || SIZE.includes(id) ? [] : `${severity} ${id}`))
    .sort((one, other) => ORDER.indexOf(one) - ORDER.indexOf(other));

const ORDER: readonly string[] = [
  'warning low-place-without-drain',
  'warning water-runs-to-house',
  'warning water-over-boundary',
  'note trucks-need-an-engineer'
];

/**
 * How far the finish falls hangs on the size: on large places ground told at one height lies too high or too low somewhere.
 * Leave to build over more than 5 m2 of a front garden is the authority's.
 */
const SIZE: readonly string[] = ['finish-off-ground', 'base-on-topsoil', 'planning-not-said'];

/** What is left to cut hangs on the size that was asked for: it is told, and mended by another start or a border. */
const CUTS: readonly string[] = ['slivers', 'slivers-too-narrow-to-cut', 'piece-too-small-under-wheels'];

/** Every answer to the questions named, each with each. */
function eachWithEach(ids: readonly (keyof typeof CHOICES)[]): Answers[] {
  return ids.reduce<Answers[]>(
    (all, id) => all.flatMap(answers => idsOf(id).map(answer => ({ ...answers, [id]: answer }))),
    [{}]
  );
}

describe('a patio of 12 by 16 ft against the house', () => {
  const answers = { country: 'north-america', traffic: 'foot', near: 'house-door', size: '12 by 16 ft' };

  test('reads like the note of a careful installer', () => {
    expect(written(answers)).toBe(`// New patio, written from a few answers.
// What is marked \`measure\` is a usual value: measure, and write your own.
// Before you dig, have public and private lines located: gas, power, water, drains, cables.
// Local codes and licensed practice stand over everything here.

job "New patio" {
  rules north-america
  show  feet-and-inches
}

site {
  soil      common-earth, well-drained
  topsoil   5 in                      // measure: dig to where the dark soil ends
  winters   freeze
  benchmark door-sill                 // the top of the sill: heights hang from it
  ground    6 1/4 in below door-sill  // measure: the ground in the middle of the place
}

unit slab-16 {
  size 15 7/8 x 15 7/8 x 2 in         // measure: lay ten tight, divide by ten
}

area patio {
  outline rectangle 12 by 16 ft       // along the house wall x out from it
  traffic foot
  finish  2 1/2 in below door-sill along near, falling 1/4 in per ft away from near  // water runs off over the far side
  paving  slab-16 in running-bond, joints 1/8 in
  bed     washed-sand 1 in            // thickness with the units down
  base    crushed-stone 6 in          // as compacted: what the rules ask for here
  joints  filled with joint-sand
  // Left and right are as seen with your back to the near side.
  edges {
    near   meets house-wall
    left   meets lawn, edging spiked-strip
    far    meets lawn, edging spiked-strip
    right  meets lawn, edging spiked-strip
  }
}
`);
  });

  test('has 192 sq ft, 44 ft of edging, and 9 3/8 in to dig at most', async () => {
    const { numbers, findings } = await evaluated(written(answers));
    const [patio] = numbers!.quantities.areas;
    expect(findings).toEqual([]);
    expect(patio!.netArea / 0.3048 ** 2).toBeCloseTo(192, 9);
    expect(patio!.dig.deepest! / 0.0254).toBeCloseTo(9.375, 9);
    expect(patio!.edging[0]!.length / 0.3048).toBeCloseTo(44, 9);
  });

  test('what is measured first is the topsoil', () => {
    const { text, firstToMeasure, fileName } = writeNewJob(answers, trial);
    const { line, column, endLine, endColumn } = firstToMeasure;
    expect(endLine).toBe(line);
    expect(text.split('\n')[line - 1]!.slice(column - 1, endColumn - 1)).toBe('5 in');
    expect(fileName).toBe('patio.paving');
  });
});

describe('whatever is answered', () => {
  const ground = eachWithEach(['country', 'traffic', 'near', 'soil', 'water', 'winters']);
  const threeSides = eachWithEach(['left', 'far', 'right']);

  test('nothing is found but about pieces, and the text is in its canonical form', { timeout: 300_000 }, () => {
    for (const [index, answers] of ground.entries()) {
      const all = { ...answers, ...threeSides[(index * 1009) % threeSides.length] };
      const text = written(all);
      expect([all, told(text)]).toEqual([all, findingsFor(all)]);
      expect(formatText(text, parse)).toBe(text);
    }
  });

  test('nor with any two things side by side', () => {
    for (const [index, sides] of eachWithEach(['left', 'far']).entries()) {
      const all = { ...ground[(index * 7) % ground.length], ...sides, right: idsOf('right')[index % 13]! };
      expect([all, told(written(all))]).toEqual([all, findingsFor(all)]);
    }
  });

  test('nor of any size that was taken', { timeout: 300_000 }, () => {
    const length = fc.oneof(
      fc.integer({ min: 1, max: 40 }).map(feet => `${feet} ft`),
      fc
        .tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 0, max: 11 }))
        .map(([feet, inches]) => `${feet}' ${inches}½"`),
      fc.integer({ min: 300, max: 20_000 }).map(millimetres => `${millimetres} mm`),
      fc.integer({ min: 30, max: 2_000 }).map(centimetres => `${centimetres / 100} m`)
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...ground),
        fc.constantFrom(...threeSides),
        length,
        length,
        (answers, sides, along, out) => {
          const all = { ...answers, ...sides, size: `${along} x ${out}` };
          expect(readAnswers(all, trial)).toEqual({ answers: all });
          expect([all, told(written(all))]).toEqual([all, findingsFor(all)]);
        }
      ),
      { seed: 12, numRuns: 100 }
    );
  });

  test('the base is as thick as the rules ask for, and no thicker', { timeout: 300_000 }, () => {
    for (const answers of eachWithEach(['country', 'traffic', 'soil', 'water', 'winters'])) {
      const thinner = written(answers).replace(
        /(base +[\w-]+ )(\d+) (in|mm)/,
        (_, before: string, thickness: string, measure: string) =>
          `${before}${+thickness - (measure === 'in' ? 1 : 10)} ${measure}`
      );
      expect([answers, told(thinner).filter(id => / base-/.test(id))]).toEqual([
        answers,
        [expect.stringMatching(/base-(too-thin|thinner-than-usual)$/)]
      ]);
    }
  });

  test.each(['north-america', 'britain', 'ireland', 'continental-europe'])(
    'bed and joints in %s are what is taken where a spec does not say',
    async country => {
      const text = written({ country });
      const unsaid = text.replace(/, joints .*/, '').replace(/^ +bed .*\n/m, '');
      const [area] = (await evaluated(text)).job!.areas;
      const [assumed] = (await evaluated(unsaid)).job!.areas;
      const bedOf = (layers: typeof area): unknown[] =>
        layers!.layers
          .filter(({ role }) => role === 'bed')
          .map(({ material, thickness }) => [material.name, thickness.value]);
      expect(bedOf(area)).toEqual(bedOf(assumed));
      expect(area!.paving!.joint.width.value).toBe(assumed!.paving!.joint.width.value);
      expect(assumed!.paving!.joint.width.assumed).toBeDefined();
    }
  );

  test('people on foot walk on slabs in running bond', () => {
    expect(written({ traffic: 'foot' })).toContain('slab-16 in running-bond');
  });

  test('in doubt take clay: no other soil gets a thicker base', () => {
    const baseOf = (answers: Answers): number => Number(/base +[\w-]+ (\d+)/.exec(written(answers))![1]);
    for (const answers of eachWithEach(['country', 'traffic', 'soil', 'water', 'winters']))
      expect([answers, baseOf(answers) <= baseOf({ ...answers, soil: 'clay' })]).toEqual([answers, true]);
  });

  test('people walk on slabs in running bond, and nobody drives on them', () => {
    for (const traffic of idsOf('traffic'))
      expect([traffic, written({ traffic }).includes('slab-16 in running-bond')]).toEqual([
        traffic,
        traffic === 'foot'
      ]);
  });

  test('a size is taken though pieces come out small, and the spec tells of them', () => {
    const answers = { country: 'britain', traffic: 'cars', size: '12 x 16 ft' };
    expect(readAnswers(answers, trial)).toEqual({ answers });
    expect(findingsIn(written(answers)).map(({ id }) => id)).toEqual(['piece-too-small-under-wheels']);
  });

  test('edging stands where the ground is open, and nowhere else', () => {
    for (const { name, holdsPaving } of SHIPPED_SIDES)
      expect(written({ far: name })).toMatch(
        new RegExp(`far +meets ${name}${holdsPaving ? '' : ', edging spiked-strip'}$`, 'm')
      );
    const held = { near: 'garage', left: 'road', far: 'road', right: 'road' };
    for (const country of ['britain', 'ireland', 'continental-europe'])
      expect(written({ country })).toContain('material kerb-50');
    expect(written({ ...held, country: 'britain' })).not.toContain('kerb-50');
  });

  test.each([
    [{ traffic: 'trucks' }, 'licensed engineer sets the layers'],
    [{ traffic: 'trucks' }, 'block in herringbone-90'],
    [{ traffic: 'turning' }, 'block in herringbone-90'],
    [{ country: 'britain', winters: 'freeze' }, 'the rules for Britain say nothing of frost'],
    [{ country: 'ireland', winters: 'freeze' }, 'the rules for Ireland say nothing of frost'],
    [{ country: 'ireland' }, 'base    clause-804 100 mm'],
    [{ country: 'continental-europe', soil: 'clay', traffic: 'cars' }, 'base       stone-0-32 400 mm'],
    [{ soil: 'clay' }, 'geotextile separation-cloth'],
    [{ soil: 'sand', water: 'stays' }, 'geotextile separation-cloth']
  ])('%j: the spec says "%s"', (answers, words) => {
    expect(written(answers)).toContain(words);
    expect(written({})).not.toContain(words);
  });
});

describe('the questions', () => {
  test('are ten in five steps; each usual answer can be taken', () => {
    for (const country of idsOf('country')) {
      const questions = questionsFor({ country });
      expect(questions.map(({ id }) => id)).toEqual(QUESTION_IDS);
      expect([...new Set(questions.map(({ step }) => step))]).toEqual([1, 2, 3, 4, STEPS]);
      const usual: Answers = Object.fromEntries(questions.map(question => [question.id, question.usual]));
      expect(readAnswers({ ...usual, country }, trial)).toEqual({ answers: { ...usual, country } });
      expect(written({ country })).toBe(written({ ...usual, country }));
    }
  });

  test('offer every kind of side that ships, in words of their own', () => {
    expect(idsOf('left').sort()).toEqual(SHIPPED_SIDES.map(({ name }) => name).sort());
    for (const { detail } of CHOICES.left!) expect(detail).not.toBe('');
  });

  test('ask in plain words', () => {
    const texts = questionsFor({}).flatMap(({ title, hint, choices = [] }) => [
      title,
      hint,
      ...choices.flatMap(({ label, detail }) => [label, detail])
    ]);
    // A longer line is cut off in the editor's lists.
    const inLists = texts.filter(text => text !== questionsFor({}).find(({ id }) => id === 'size')!.hint);
    expect(inLists.filter(text => text.length > 90)).toEqual([]);
    expect(texts.flatMap(programmersWords)).toEqual([]);
    for (const { title, hint } of questionsFor({}))
      expect([title, hint]).toEqual([expect.stringMatching(/\?$/), expect.stringMatching(/\.$/)]);
  });

  test('the usual answers follow what was answered before', () => {
    const usual = (answers: Answers, id: string): string | undefined =>
      questionsFor(answers).find(question => question.id === id)?.usual;
    expect(usual({ country: 'north-america' }, 'size')).toBe('12 x 16 ft');
    expect(usual({ country: 'britain' }, 'size')).toBe('4 x 5 m');
    expect(usual({ soil: 'clay' }, 'water')).toBe('stays');
    expect(usual({ soil: 'sand' }, 'water')).toBe('drains');
  });
});

describe('an answer', () => {
  test.each([
    ["12' x 16'"],
    ['12 ft 6 1/2 in x 16 ft'],
    ['12-1/2 × 16 ft'],
    ['12x16 ft'],
    ['12 by 16 feet'],
    ['3.6 x 4.8 m'],
    ['3600 x 4800 mm']
  ])('%s is a size', size => expect(checkAnswer('size', size, {}, trial)).toBeUndefined());

  const twoLengths = 'Write two lengths with x between them, such as `12 x 16 ft`.';
  test.each([
    ['', twoLengths],
    ['big', twoLengths],
    ['12 ft', twoLengths],
    ['12 * 16 ft', twoLengths],
    ['12 x 16 x 3 ft', twoLengths],
    ['12 x 16 ft, turned 30 degrees', twoLengths],
    ['12 x 16 ft }', twoLengths],
    ['12 x 16 ft // large', twoLengths],
    ['12 x 16 ft\ntraffic cars', twoLengths],
    ['12 x 16', 'Say the measure too: `12 x 16 ft`, or `12 x 16 m`.'],
    ['12 x 16 fet', '`fet` is no measure. Did you mean `ft`?'],
    [
      '3,6 x 4,8 m',
      '`3,6` could be one number or several. Write `3.6` for one; for several put a space after each comma.'
    ],
    ['12 lb x 16 ft', '`12 lb` is a mass; here stands a length such as `6 in` or `150 mm`.'],
    ['-3 x 4 m', "`-3` can't be meant: more than nought is wanted."],
    ['10 x 12 mm', 'The outline of patio encloses next to nothing.']
  ])('%j is none: %s', (size, why) => {
    expect(checkAnswer('size', size, {}, trial)).toBe(why);
    expect(programmersWords(why)).toEqual([]);
  });

  test('helps in the measures of the country', () => {
    expect(checkAnswer('size', '4 x 5', { country: 'britain' }, trial)).toBe(
      'Say the measure too: `4 x 5 m`, or `4 x 5 ft`.'
    );
    expect(checkAnswer('size', '', { country: 'britain' }, trial)).toContain('`4 x 5 m`');
  });

  test('too many units under the traffic said: a large yard is told at once', () => {
    const size = '100 x 100 m';
    expect(checkAnswer('size', size, { traffic: 'foot' }, trial)).toBeUndefined();
    // Slivers are no reason to refuse a size.
    expect(checkAnswer('size', '3.62 x 4.81 m', { country: 'britain', traffic: 'cars' }, trial)).toBeUndefined();
    expect(checkAnswer('size', size, { traffic: 'cars' }, trial)).toContain('units: more than 300,000');
  });

  test('that is none of those offered is refused, with the one that was meant', () => {
    expect(checkAnswer('soil', 'cley', {}, trial)).toBe('`cley` is none of the answers. Did you mean clay?');
    expect(checkAnswer('winters', 'no idea', {}, trial)).toBe(
      '`no idea` is none of the answers. Write one of: freeze, mild.'
    );
  });

  test.each([
    [
      { country: 'britain', size: '3 m', soil: 'mud' },
      'How large is it? Write two lengths with x between them, such as `4 x 5 m`.'
    ],
    [{ trafic: 'cars' }, 'There is no question `trafic`. Did you mean traffic?'],
    [{ soil: 3 }, 'What soil is under the topsoil? Write it as text.'],
    [
      { country: 'france', size: '3 x 4 m' },
      'Where is the job? `france` is none of the answers. Write one of: north-america, north-america-metric, britain, ireland, continental-europe.'
    ]
  ])('from outside is read with care: %j', (given, problem) => expect(readAnswers(given, trial)).toEqual({ problem }));

  test('nothing but a size slips into the spec, whatever is typed', { timeout: 300_000 }, () => {
    const pieces = [
      '1',
      '12',
      '.5',
      '½',
      '1/2',
      ' ',
      ' x ',
      'x',
      ' by ',
      '×',
      'ft',
      ' ft',
      ' m',
      '"',
      "'",
      ',',
      '-',
      '+',
      '(',
      ')',
      '{',
      '}',
      '//',
      '\n',
      ' area b ',
      'per',
      '%',
      ';',
      'let'
    ];
    const inserted = fc.tuple(fc.nat({ max: 10 }), fc.constantFrom(...pieces));
    let taken = 0;
    fc.assert(
      fc.property(fc.array(inserted, { minLength: 1, maxLength: 3 }), changes => {
        const size = changes.reduce((text, [at, piece]) => text.slice(0, at) + piece + text.slice(at), '12 x 16 ft');
        if (checkAnswer('size', size, {}, trial) !== undefined) return;
        taken++;
        const text = written({ size });
        // Over 1,216 ft even a slight fall comes to more than a person is deep.
        expect([size, told(text).filter(found => found !== 'error dig-deep')]).toEqual([size, []]);
        expect(parse(text).chunks).toHaveLength(parse(written({})).chunks.length);
      }),
      { seed: 7, numRuns: 600 }
    );
    expect(taken).toBeGreaterThan(20);
  });
});
