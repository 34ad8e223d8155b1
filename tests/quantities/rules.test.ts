import { describe, expect, it } from 'vitest';
import type { Area, Edge, Job } from '../../language/job/job.ts';
import {
  area,
  given,
  HOUSE_WALL,
  INCH,
  job,
  layer,
  LEVEL,
  LEVEL_SITE as SITE,
  material,
  numbersOf,
  paving,
  rectangle,
  unit
} from './jobs.ts';
import { rulesOf } from '../shipped-rules.ts';

const CLOSED: readonly Partial<Edge>[] = Array.from({ length: 4 }, () => ({ meets: HOUSE_WALL }));

/** What the rules say of a closed rectangle, by id, in inches unless said. */
function judged(more: Partial<Area>, of: Partial<Job> = {}, sides = CLOSED): Map<string, string> {
  const found = numbersOf(
    job([area(rectangle(6, 6), { finish: LEVEL, site: SITE, ...more }, sides)], {
      system: 'imperial',
      rules: rulesOf(['north-america']),
      ...of
    })
  );
  return new Map(found.findings.map(finding => [finding.id, finding.message]));
}

const block = (length: number, width: number, thickness: number, madeOf: 'concrete' | 'clay' = 'concrete') =>
  paving(unit(length * INCH, width * INCH, thickness * INCH, madeOf), INCH / 8);

describe('units under cars (ASTM C936, 5.1)', () => {
  const layers = [layer('base', 6 * INCH)];
  it.each([
    ['O-13', 8, 4, undefined],
    ['O-14', 12, 12, 'its face has 144 sq in, a block at most 101 sq in'],
    ['O-15', 16, 4, 'it is 16 in long and 2 3/8 in thick, and may be at most 4 times as long as thick']
  ])('%s: %d x %d x 2 3/8 in', (_, length, width, why) => {
    const found = judged({ traffic: ['cars'], layers, paving: block(length, width, 2.375) });
    expect(found.get('slab-where-block-needed')?.includes(why ?? '')).toBe(why === undefined ? undefined : true);
    expect(found.get('unit-too-thin')).toBeUndefined();
  });

  it('a block of 60 mm passes, one of 50 mm does not (the same section); under trucks 80 mm (PAV-TEC-002-22)', () => {
    const metric = (thickness: number, traffic: Area['traffic']) =>
      judged({ traffic, layers, paving: paving(unit(0.2, 0.1, thickness), 0.003) }, { system: 'metric' }).get(
        'unit-too-thin'
      );
    expect(metric(0.06, ['cars'])).toBeUndefined();
    expect(metric(0.05, ['cars'])).toBe('The unit block, 50 mm thick, is 10 mm too thin under cars: 60 mm at least.');
    expect(metric(0.08, ['trucks'])).toBeUndefined();
    expect(metric(0.06, ['trucks'])).toBe(
      'The unit block, 60 mm thick, is 20 mm too thin under trucks: 80 mm at least.'
    );
  });
});

describe('bed and joints of clay units (BIA Technical Note 14A, 2017)', () => {
  const clay = (bed: number, joint: number) =>
    judged({
      layers: [layer('bed', bed * INCH), layer('base', 4 * INCH)],
      paving: paving(unit(8 * INCH, 4 * INCH, 2.25 * INCH, 'clay'), joint * INCH)
    });

  it('O-18: a bed of 7/8 in passes, one of 1 1/4 in fails; the limits themselves pass', () => {
    expect(clay(0.875, 0.125).size).toBe(0);
    expect(clay(1.25, 0.125).get('bed-outside-limits')).toBe(
      'The bed of a, 1 1/4 in, is 1/4 in too thick: 3/4 in to 1 in.'
    );
    expect(clay(0.75, 0.125).size + clay(1, 0.125).size).toBe(0);
  });

  it('O-19: a joint of 1/8 in passes, one of 1/4 in fails; the limits themselves pass', () => {
    expect(clay(1, 0.25).get('joint-outside-limits')).toBe(
      'The joints of a, 1/4 in, are 1/16 in too wide: 1/16 in to 3/16 in.'
    );
    expect(clay(1, 1 / 16).size + clay(1, 3 / 16).size).toBe(0);
  });

  it('beds and joints of grit are outside these limits (permeable paving, common practice)', () => {
    const grit = (role: 'bed' | 'joint-filler') =>
      material('grit', role, { openGraded: true, compacted: given(1600), loose: given(1500) });
    const layers = [layer('bed', 0.05, { material: grit('bed') }), layer('base', 4 * INCH)];
    expect(
      judged({ layers, paving: paving(unit(0.2, 0.1, 0.08), 0.008), jointFiller: grit('joint-filler') }).size
    ).toBe(0);
  });
});

describe('base', () => {
  const base = (inches: number, more: Partial<Area> = {}) =>
    judged({ layers: [layer('base', inches * INCH)], ...more });

  it('P-01 (common practice) and O-22 (ICPI frequently asked questions, 2015): 4 in under foot traffic, 6 in under cars', () => {
    expect(base(4).size).toBe(0);
    expect(base(3).get('base-too-thin')).toBe(
      'The base of a, 3 in, is 1 in too thin: 4 in at least under foot traffic.'
    );
    expect(base(6, { traffic: ['cars'] }).size).toBe(0);
    expect(base(5, { traffic: ['cars'] }).get('base-too-thin')).toBe(
      'The base of a, 5 in, is 1 in too thin: 6 in at least under cars.'
    );
  });

  it('O-22: where it freezes 6 in and 10 in are usual', () => {
    const site = { ...SITE, winters: 'freeze' as const };
    expect(base(6, { site }).size + base(10, { site, traffic: ['cars'] }).size).toBe(0);
    expect([...base(4, { site }).keys()]).toEqual(['base-thinner-than-usual']);
    expect(base(3, { site }).get('base-too-thin')).toBe(
      'The base of a, 3 in, is 1 in too thin: 4 in at least under foot traffic; 6 in is usual under foot traffic where winters freeze.'
    );
    expect(base(6, { site, traffic: ['cars'] }).get('base-thinner-than-usual')).toBe(
      'The base of a, 6 in, is 4 in thinner than usual: 10 in is usual under cars where winters freeze.'
    );
  });

  it('2 in more on soil that drains poorly (ICPI Tech Spec 2 as quoted in public texts)', () => {
    const site = { ...SITE, drains: 'poorly' as const };
    expect(base(6, { site }).size).toBe(0);
    expect(base(4, { site }).get('base-thinner-than-usual')).toContain(
      '6 in is usual under foot traffic on loam that drains poorly'
    );
  });

  it('Britain: 100 and 150 mm, on clay 200 mm under cars (common practice); by bearing ratio from memory', () => {
    const british = (thickness: number, more: Partial<Area>) =>
      judged({ layers: [layer('base', thickness)], ...more }, { system: 'metric', rules: rulesOf(['britain']) });
    const clay = { ...SITE, soil: { ...SITE.soil, name: 'clay' } };
    expect(british(0.1, {}).size + british(0.2, { site: clay, traffic: ['cars'] }).size).toBe(0);
    expect(british(0.15, { site: clay, traffic: ['cars'] }).get('base-too-thin')).toBe(
      'The base of a, 150 mm, is 50 mm too thin: 200 mm at least under cars on clay.'
    );
    expect(
      british(0.2, { site: { ...clay, bearing: given(0.03) }, traffic: ['cars'] }).get('base-thinner-than-usual')
    ).toBe(
      'The base of a, 200 mm, is 25 mm thinner than usual: 225 mm is usual under cars on soil with a bearing ratio of 3 %.'
    );
  });

  it('O-20: past the edging as far as it is thick (ICPI Tech Spec 3, edge restraints)', () => {
    const sides = (past: number) => {
      const strip = material('strip', 'edging', { width: given(0), basePast: given(past * INCH) });
      return [{ edging: strip }, ...CLOSED.slice(1)];
    };
    expect(judged({ layers: [layer('base', 6 * INCH)] }, {}, sides(6)).size).toBe(0);
    expect(judged({ layers: [layer('base', 6 * INCH)] }, {}, sides(4)).get('base-not-past-edging')).toBe(
      'At side side 1 of a the base runs 4 in past the edging: as far as it is thick, 6 in, is advised.'
    );
  });

  it('never on topsoil (common practice)', () => {
    const site = { ...SITE, topsoil: given(5 * INCH) };
    expect(base(5, { site }).size).toBe(0);
    expect(base(4, { site }).get('base-on-topsoil')).toContain('leaves 1 in of the topsoil, which is 5 in thick');
  });
});

it('an open side wants edging (ICPI Tech Spec 3), trucks an engineer (common practice)', () => {
  const layers = [layer('base', 8 * INCH)];
  expect(judged({ layers }, {}, [{}, ...CLOSED.slice(1)]).get('open-edge-without-edging')).toBe(
    'Side side 1 of a meets lawn and has no edging: nothing holds the units there.'
  );
  expect([...judged({ layers, traffic: ['trucks'] }).keys()]).toEqual(['trucks-need-an-engineer']);
});

it('no rules without a country; a value of practice or from memory is never an error, but for a danger to people', () => {
  expect(judged({ layers: [layer('base', INCH)] }, { rules: [] }).size).toBe(0);
  const errors = rulesOf(['north-america', 'britain']).filter(rule => rule.severity === 'error');
  const ungrounded = errors.filter(({ cases }) =>
    cases.every(({ source }) => !/(?:Standard|Code|guidance|Handbook): /.test(source))
  );
  expect(ungrounded.map(({ key, cases }) => [key, cases[0]!.source])).toEqual([
    ['rule:everywhere/dig-deep', expect.stringMatching(/^Safety\. /)]
  ]);
});

it('where the site does not say whether winters freeze, a note says how bases are judged', () => {
  const { winters: _, ...silent } = SITE;
  expect(judged({ layers: [layer('base', 4 * INCH)], site: silent }).get('winters-not-said')).toBe(
    'The site does not say whether winters freeze: bases are judged as where they are mild.'
  );
});

describe('a base that is too thin is mended once', () => {
  const fixes = (rulebooks: string[], site: Area['site'], traffic: Area['traffic']) => {
    const found = numbersOf(
      job([area(rectangle(6, 6), { finish: LEVEL, site, traffic, layers: [layer('base', 0.075)] }, CLOSED)], {
        rules: rulesOf(rulebooks)
      })
    ).findings;
    return found.flatMap(({ id, fixes = [] }) =>
      fixes.flatMap(({ edits }) => edits.flatMap(edit => ('over' in edit ? [[id, edit.text]] : [])))
    );
  };
  const freezing = { ...SITE, winters: 'freeze' as const };

  it('by what is usual here, not by the least', () => {
    expect(fixes(['north-america'], SITE, ['foot'])).toEqual([['base-too-thin', '100 mm']]);
    expect(fixes(['north-america'], freezing, ['foot'])).toEqual([['base-too-thin', '150 mm']]);
    expect(fixes(['britain'], { ...SITE, bearing: given(0.02) }, ['cars'])).toEqual([['base-too-thin', '300 mm']]);
  });

  it('by the greatest thickness of all countries named', () => {
    expect(fixes(['britain', 'north-america'], freezing, ['cars'])).toEqual([
      ['base-too-thin', '250 mm'],
      ['base-too-thin', '250 mm']
    ]);
  });
});

describe('a dig deeper than 4 ft, 1.2 m (safety; common practice)', () => {
  const deep = (base: number, system: Job['system'], rules: string[] = ['britain']) =>
    judged({ layers: [layer('base', base)] }, { system, rules: rulesOf(rules) }).get('dig-deep');

  it('is told; one of just so much is not', () => {
    expect(deep(1.2, 'metric')).toBeUndefined();
    expect(deep(48 * INCH, 'imperial')).toBeUndefined();
    expect(deep(1.25, 'metric')).toBe(
      'The dig of a is 1.250 m deep, more than 1.200 m. Stop: the sides of a deep dig can fall in on people. It needs shoring or sloping by those who know how, as local rules ask.'
    );
    expect(deep(49 * INCH, 'imperial', ['north-america'])).toContain('is 4 ft 1 in deep, more than 4 ft.');
  });
});

describe('quantities that are seldom meant (common practice)', () => {
  const told = (more: Partial<Area>, size: readonly [number, number] = [6, 6], system: Job['system'] = 'metric') =>
    numbersOf(
      job([area(rectangle(...size), { finish: LEVEL, site: SITE, ...more }, CLOSED)], {
        system,
        rules: rulesOf(['britain'])
      })
    )
      .findings.filter(({ id }) => id === 'unlikely-quantity')
      .map(({ message }) => message);
  const base = (thickness: number) => ({ layers: [layer('base', thickness)] });
  const laid = (length: number, width: number, thickness: number) => ({
    ...base(0.1),
    paving: paving(unit(length, width, thickness), 0.003)
  });
  const heavy = (compacted: number) => ({
    layers: [layer('base', 0.1, { material: material('rock', 'base', { compacted: given(compacted) }) })]
  });

  it('layers of stone', () => {
    expect([...told(base(0.025)), ...told(base(1)), ...told(base(36 * INCH), [6, 6], 'imperial')]).toEqual([]);
    expect(told({ layers: [layer('bed', 0.02), layer('base', 0.1)] })).toEqual([]);
    expect(told(base(0.015))).toEqual([
      'The base was read as 15 mm thick; thinner than 25 mm is rare. Check the number and its measure.'
    ]);
    expect(told(base(72 * INCH), [6, 6], 'imperial')).toEqual([
      'The base was read as 72 in thick; thicker than 36 in is rare. Check the number and its measure.'
    ]);
  });

  it('units', () => {
    expect([...told(laid(0.1, 0.1, 0.1)), ...told(laid(2, 0.5, 0.3))]).toEqual([]);
    expect(told(laid(0.06, 0.1, 0.2))).toEqual([
      'The unit block was read as 60 mm long, 100 mm wide and 200 mm thick: thicker than long. The thickness stands last. Check the numbers and their order.'
    ]);
    expect(told(laid(4, 2, 0.5))).toEqual([
      'The unit block was read as 4000 mm long, 2000 mm wide and 500 mm thick; thicker than 300 mm or longer than 2000 mm is rare. Check the number and its measure.'
    ]);
  });

  it('densities, in place', () => {
    expect([...told(heavy(1000)), ...told(heavy(3000))]).toEqual([]);
    expect(told(heavy(22_000))).toEqual([
      'The material rock was read as 22000 kg/m3 compacted; stone and sand have 1,000 to 3,000 kg/m3. Check the number and its measure.'
    ]);
    expect(told(heavy(220), [6, 6], 'imperial')[0]).toContain('13.7 lb per cu ft compacted; stone and sand have 62 to');
  });

  it('areas', () => {
    expect(told({}, [200, 100])).toEqual([]);
    expect(told({}, [201, 100])).toEqual([
      'The area a was read as 20100.00 m2; more than 20,000 m2 (215,000 sq ft) is rare. Check the numbers of its outline and their measures.'
    ]);
  });
});
