import { describe, expect, it } from 'vitest';
import {
  divide,
  given as givenLeaf,
  leaf,
  multiply,
  plainNumber,
  subtract,
  sum
} from '../../language/quantities/arithmetic.ts';
import { workingOf } from '../../language/quantities/formula-text.ts';
import { Book } from '../../language/quantities/page.ts';
import { evaluateFormula } from './evaluate-formula.ts';
import { area, box, given, HOUSE_WALL, job, layer, LAWN, material, numbersOf, rectangle, SITE } from './jobs.ts';
import { rulesOf } from '../shipped-rules.ts';
import { terrace } from './terrace.ts';
import { wrongWorkings } from './workings.ts';

const a = leaf('a', 2, 'm', { key: 'a' });
const b = leaf('b', 3, 'm', { key: 'b' });
const c = leaf('c', 5, 'm', { key: 'c' });

describe('formulas', () => {
  it.each([
    ['a - b - c', subtract(subtract(a, b), c)],
    ['a - (b - c)', subtract(a, subtract(b, c))],
    ['a + b - c', sum(a, subtract(b, c))],
    ['a × b / c', multiply(a, divide(b, c))],
    ['a / (b × c)', divide(a, multiply(b, c))],
    ['a / (b / c)', divide(a, divide(b, c))],
    ['a × (b + c)', multiply(a, sum(b, c))],
    ['(a + b) / (a - b)', divide(sum(a, b), subtract(a, b))]
  ])('%s has no more brackets than it needs', (formula, expression) => {
    const working = workingOf(expression);
    expect(working.formula).toBe(formula);
    expect(evaluateFormula(working)).toBeCloseTo(expression.value, 12);
  });

  it('two values of one name are told apart, one value keeps one name', () => {
    const other = leaf('a', 7, 'm', { key: 'other' });
    expect(workingOf(sum(a, other, a)).formula).toBe('a + a 2 + a');
  });

  it('names of the text cannot break a formula', () => {
    const odd = workingOf(sum(leaf('length of A (to) B, C × D', 1, 'm', { key: '' }), a));
    expect(evaluateFormula(odd)).toBe(3);
  });

  it('measures that do not agree and names alone are refused', () => {
    expect(() => sum(a, multiply(a, b))).toThrow('Measures');
    expect(() => sum(a, plainNumber(1))).toThrow('Measures');
    expect(() => new Book().page('area', '').put('grossArea', a)).toThrow('not m2');
    const copied = givenLeaf('somebody else’s area', given(4), 'm2');
    expect(() => new Book().page('area', '').put('grossArea', copied)).toThrow('a name alone');
  });
});

describe('every number is worked out again from its formula', () => {
  const cloth = material('cloth', 'geotextile', { roll: { width: given(4), length: given(50) }, lap: given(0.5) });
  const kerb = material('kerb', 'edging', {
    width: given(0.1),
    spikesEvery: given(0.3),
    concrete: { width: given(0.3), depth: given(0.1), under: given(0.05) },
    haunch: { width: given(0.1), height: given(0.075) }
  });
  const finish = { benchmark: 'sill', above: given(-0.1), fromNought: false };
  const ground = { benchmark: 'peg', above: given(-0.05), fromNought: false, base: given(0.02) };
  const jobs = {
    terrace: job([terrace()], { system: 'imperial', rules: rulesOf(['north-america']) }),
    'nothing in it': job([]),
    'nothing under it': job([area(rectangle(3, 2))]),
    'two digs that meet, kerbs, laps, two benchmarks': job([
      terrace({ geotextile: cloth }),
      area(
        rectangle(4, 9, 5.6, 0),
        {
          name: 'side-path',
          keptOut: [box('one', rectangle(0.4, 0.4, 7, 1)), box('two', rectangle(0.4, 0.4, 7, 2))],
          layers: [layer('bed', 0.03), layer('base', 0.15), layer('base', 0.1)],
          finish,
          site: { ...SITE, ground }
        },
        [{ edging: kerb }, { edging: kerb }, { meets: HOUSE_WALL }, { meets: LAWN }]
      )
    ]),
    'a finish above the ground': job([
      area(rectangle(3, 2), {
        layers: [layer('base', 0.1)],
        finish: { ...finish, above: given(0.5) },
        site: { ...SITE, ground: { ...finish, above: given(0) } }
      })
    ])
  };
  it.each(Object.entries(jobs))('%s', (_, of) => {
    const { quantities, workings } = numbersOf(of);
    expect(wrongWorkings(quantities, workings)).toEqual([]);
    expect(Object.keys(workings).length).toBeGreaterThan(4);
  });

  it('assumptions and choices stand in the working', () => {
    const { workings } = numbersOf(jobs.terrace);
    expect(workings['/areas/0/netArea']!.formula).toBe('gross area - kept-out area');
    expect(workings['/areas/0/edges/1/overhang']!.formula).toBe('edging width + base past the edging');
    expect(workings['/areas/0/edges/0/overhang']!.formula).toBe('share on open ground × base thickness');
    expect(workings['/areas/0/dig/deepest']).toMatchObject({
      formula: 'ground above the finish + unit thickness + bed thickness + base thickness',
      values: [{ from: { assumed: 'no height of the ground is given: taken level with the finish' } }, {}, {}, {}]
    });
  });

  it('a dig that comes to nothing says so', () => {
    const { quantities, findings } = numbersOf(jobs['a finish above the ground']);
    expect(quantities.dig.bankVolume).toBe(0);
    expect(findings.map(({ id, message }) => [id, message])).toEqual([
      [
        'nothing-to-dig',
        'The layers of a lie on or above the ground, by 400 mm: no soil is dug there but topsoil, and the room under them is made up with stone.'
      ]
    ]);
  });
});
