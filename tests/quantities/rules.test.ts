import { describe, expect, it } from 'vitest';
import type { Area, Edge, Job } from '../../language/job/job.ts';
import {
  area,
  type AreaWords,
  given,
  HOUSE_WALL,
  INCH,
  job,
  layer,
  LEVEL as LEVEL_WITH_SILL,
  LEVEL_SITE,
  material,
  numbersOf,
  paving,
  rectangle,
  unit
} from './jobs.ts';
import type { JobNumbers } from '../../language/quantities/contract.ts';
import { rulesOf } from '../shipped-rules.ts';

/** Hung from a nail: no door is near. */
const LEVEL = { ...LEVEL_WITH_SILL, benchmark: 'nail' };
const SITE = { ...LEVEL_SITE, ground: LEVEL };

const CLOSED: readonly Partial<Edge>[] = Array.from({ length: 4 }, () => ({ meets: HOUSE_WALL }));

type More = readonly [more: AreaWords, of?: Partial<Job>, sides?: readonly Partial<Edge>[]];

/** What is found in a closed rectangle, in inches unless said. */
function found(...[more, of = {}, sides = CLOSED]: More): JobNumbers['findings'] {
  const shaped = area(rectangle(6, 6), { finish: LEVEL, site: SITE, ...more }, sides);
  return numbersOf(job([shaped], { system: 'imperial', rules: rulesOf(['north-america']), ...of })).findings;
}

/** What hangs on how this rectangle happens to be cut; these rules have jobs of their own in `tests/faulty`. */
const OF_CUTS = ['slivers', 'piece-too-small-under-wheels'];

/** What the rules say of it, by id, its cuts aside. */
function judged(...more: More): Map<string, string> {
  const told = found(...more).filter(({ id }) => !OF_CUTS.includes(id));
  return new Map(told.map(finding => [finding.id, finding.message]));
}

/** The same, where it is not about the pieces that units are cut into: these come of the shape that is tried. */
function judgedWhole(...more: More): Map<string, string> {
  return new Map([...judged(...more)].filter(([id]) => !ABOUT_PIECES.includes(id)));
}

const ABOUT_PIECES = ['slivers', 'slivers-too-narrow-to-cut', 'piece-too-small-under-wheels'];

/** What a rule says it rests on. */
function sourceOf(id: string, ...more: More): string | undefined {
  return found(...more).find(finding => finding.id === id)?.source;
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
    const laid = { traffic: ['cars'], layers, paving: block(length, width, 2.375) } as const;
    const told = judged(laid);
    expect(told.get('slab-where-block-needed')?.includes(why ?? '')).toBe(why === undefined ? undefined : true);
    expect(told.get('unit-too-thin')).toBeUndefined();
    expect(sourceOf('slab-where-block-needed', laid)).toBe(
      why === undefined
        ? undefined
        : 'Standard: ASTM C936, section 5.1, what a block is. Association guidance: Concrete Masonry & Hardscapes Association, PAV-TEC-024, 2022, introduction: slabs interlock little, cars and trucks only with structural design.'
    );
  });

  it('a block of 60 mm passes, one of 50 mm does not (the same section); under trucks 80 mm (PAV-TEC-002-22)', () => {
    const metric = (thickness: number, traffic: Area['traffic']) =>
      judged({ traffic, layers, paving: paving(unit(0.2, 0.1, thickness), 0.003) }, { system: 'metric' }).get(
        'unit-too-thin'
      );
    expect(metric(0.06, ['cars'])).toBeUndefined();
    expect(metric(0.05, ['cars'])).toBe('The unit block, 50 mm thick, is 10 mm too thin for a block: 60 mm at least.');
    const thin = (thickness: number, traffic: Area['traffic']) =>
      sourceOf('unit-too-thin', { traffic, layers, paving: paving(unit(0.2, 0.1, thickness), 0.003) });
    expect(thin(0.05, ['cars'])).toBe('Standard: ASTM C936, section 5.1.');
    expect(thin(0.06, ['trucks'])).toMatch(/^Association guidance: .*PAV-TEC-002, 2022, purpose\.$/);
    expect(metric(0.08, ['trucks'])).toBeUndefined();
    expect(metric(0.06, ['trucks'])).toBe(
      'The unit block, 60 mm thick, is 20 mm too thin under trucks: 80 mm at least.'
    );
  });
});

describe('bed and joints of clay units (BIA Technical Note 14A, 2017)', () => {
  const laid = (bed: number, joint: number, more: AreaWords = {}): AreaWords => ({
    layers: [layer('bed', bed * INCH), layer('base', 6 * INCH)],
    paving: paving(unit(8 * INCH, 4 * INCH, 2.25 * INCH, 'clay'), joint * INCH),
    ...more
  });
  const clay = (bed: number, joint: number) => judgedWhole(laid(bed, joint));
  const NOTE = 'Association guidance: Brick Industry Association, Technical Note 14A, 2017, ';

  it('O-18: a bed of 7/8 in passes, one of 1 1/4 in fails; the limits themselves pass', () => {
    expect(clay(0.875, 0.125).size).toBe(0);
    expect(clay(1.25, 0.125).get('bed-outside-limits')).toBe(
      'The bed of a, 1 1/4 in, is 1/4 in too thick under clay units: 1 in at most, after compaction.'
    );
    expect(sourceOf('bed-outside-limits', laid(1.25, 0.125))).toBe(`${NOTE}sand setting bed.`);
    expect(clay(0.75, 0.125).size + clay(1, 0.125).size).toBe(0);
  });

  it('O-19: a joint of 1/8 in passes, one of 1/4 in fails; the limits themselves pass', () => {
    expect(clay(1, 0.25).get('joint-outside-limits')).toBe(
      'The joints of a, 1/4 in, are 1/16 in too wide: 3/16 in at most between clay units.'
    );
    expect(sourceOf('joint-outside-limits', laid(1, 0.25))).toBe(`${NOTE}joint width.`);
    expect(clay(1, 1 / 16).size + clay(1, 3 / 16).size).toBe(0);
  });

  it('under wheels 1/16 to 1/8 in is best: where both rules of joints miss, the narrower limit alone is heard', () => {
    const driven = (joint: number) => laid(1, joint, { traffic: ['cars'] });
    expect(judgedWhole(driven(1 / 16)).size + judgedWhole(driven(1 / 8)).size).toBe(0);
    expect([...judgedWhole(driven(3 / 16)).keys()]).toEqual(['clay-joint-under-wheels']);
    expect([...judgedWhole(driven(1 / 4)).keys(), ...judgedWhole(driven(1 / 32)).keys()]).toEqual([
      'clay-joint-under-wheels',
      'clay-joint-under-wheels'
    ]);
    expect(sourceOf('clay-joint-under-wheels', driven(1 / 4))).toBe(`${NOTE}best joint width under vehicles.`);
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
  const QUESTIONS =
    'Association guidance: Interlocking Concrete Pavement Institute, frequently asked questions, 6th edition, 2015.';
  const base = (inches: number, more: AreaWords = {}) => judged({ layers: [layer('base', inches * INCH)], ...more });

  it('P-01 (common practice) and O-22 (ICPI frequently asked questions, 2015): 4 in under foot traffic, 6 in under cars', () => {
    expect(base(4).size).toBe(0);
    expect(base(3).get('base-too-thin')).toBe(
      'The base of a, 3 in, is 1 in too thin: 4 in at least under foot traffic.'
    );
    expect(base(6, { traffic: ['cars'] }).size).toBe(0);
    expect(base(5, { traffic: ['cars'] }).get('base-too-thin')).toBe(
      'The base of a, 5 in, is 1 in too thin: 6 in at least under cars.'
    );
    for (const thin of [{ layers: [layer('base', 3 * INCH)] }, { layers: [], traffic: ['cars'] }] as const)
      expect(sourceOf('base-too-thin', thin)).toBe(QUESTIONS);
    expect(judged({ layers: [] }).get('base-too-thin')).toBe(
      'The area a has no base: 4 in at least under foot traffic.'
    );
  });

  it('O-22: where it freezes 6 in and 10 in are usual', () => {
    const site = { ...SITE, winters: 'freeze' as const };
    expect(base(6, { site }).size + base(10, { site, traffic: ['cars'] }).size).toBe(0);
    expect([...base(4, { site }).keys()]).toEqual(['base-thinner-than-usual']);
    expect(base(3, { site }).get('base-too-thin')).toBe(
      'The base of a, 3 in, is 1 in too thin: 4 in at least under foot traffic; base-thinner-than-usual asks 6 in.'
    );
    expect(sourceOf('base-thinner-than-usual', { site, layers: [layer('base', 4 * INCH)] })).toMatch(
      /frequently asked questions, 6th edition, 2015, where it freezes\.$/
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
    expect(sourceOf('base-thinner-than-usual', { site, layers: [layer('base', 4 * INCH)] })).toBe(
      'Association guidance: Interlocking Concrete Pavement Institute, Tech Spec 2, 2 in more on poor soil, as quoted in other texts.'
    );
  });

  it('under trucks 6 in at least is common practice: the answers to questions are about drives', () => {
    for (const layers of [[layer('base', 4 * INCH)], []])
      expect(sourceOf('base-too-thin', { layers, traffic: ['trucks'] })).toBe(
        'Common practice, no source (no less under trucks than under cars).'
      );
    expect(sourceOf('base-thinner-than-usual', { layers: [layer('base', 7 * INCH)], traffic: ['trucks'] })).toBe(
      'From memory, not read again: Interlocking Concrete Pavement Institute, Tech Spec 2, 8 in under trucks.'
    );
  });

  it('Britain: 100 and 150 mm, on clay 200 mm under cars (common practice); by bearing ratio from memory', () => {
    const british = (thickness: number, more: AreaWords) =>
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
    expect(sourceOf('base-not-past-edging', { layers: [layer('base', 6 * INCH)] }, {}, sides(4))).toBe(
      'Association guidance: Interlocking Concrete Pavement Institute, Tech Spec 3, edge restraints.'
    );
  });

  it('never on topsoil (common practice)', () => {
    const site = { ...SITE, topsoil: given(5 * INCH) };
    expect(base(5, { site }).size).toBe(0);
    expect(base(4, { site }).get('base-on-topsoil')).toBe(
      'The layers of a end 1 in above the underside of the topsoil, which is 5 in thick: the dig goes down to it, and 1.20 cu yd is made up with stone in layers, never with soil.'
    );
  });
});

it('an open side wants edging (ICPI Tech Spec 3), trucks an engineer (common practice)', () => {
  const layers = [layer('base', 8 * INCH)];
  expect(judged({ layers }, {}, [{}, ...CLOSED.slice(1)]).get('open-edge-without-edging')).toBe(
    'At side side 1 of a, towards lawn, nothing holds the units: no edging is named.'
  );
  expect([...judged({ layers, traffic: ['trucks'] }).keys()]).toEqual(['trucks-need-an-engineer']);
});

it('no rules without a country; a value of practice or from memory is never an error, but for a danger to people', () => {
  expect(judged({ layers: [layer('base', INCH)] }, { rules: [] }).size).toBe(0);
  const errors = rulesOf(['north-america', 'britain', 'ireland', 'continental-europe']).filter(
    rule => rule.severity === 'error'
  );
  const ungrounded = errors.filter(({ cases }) =>
    cases.every(({ source }) => !/(?:Standard|Code|guidance|Handbook): /.test(source))
  );
  expect(ungrounded.map(({ key, cases }) => [key, cases[0]!.source])).toEqual([
    ['rule:everywhere/dig-deep', expect.stringMatching(/^Safety\. /)],
    ['rule:everywhere/footing-undermined', expect.stringMatching(/^Safety\. /)],
    ['rule:everywhere/box-in-use-buried', expect.stringMatching(/^Safety\. /)],
    ['rule:everywhere/gas-or-power-near-dig', expect.stringMatching(/^Safety\. /)]
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
      'The dig of a is 1250 mm deep, more than 1200 mm. Stop: the sides of a deep dig can fall in on people. It needs shoring or sloping by those who know how, as local rules ask.'
    );
    expect(deep(49 * INCH, 'imperial', ['north-america'])).toContain('is 49 in deep, more than 48 in.');
  });
});

describe('quantities that are seldom meant (common practice)', () => {
  const told = (more: AreaWords, size: readonly [number, number] = [6, 6], system: Job['system'] = 'metric') =>
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
      'The unit block was read as 4000 mm long, 2000 mm wide and 500 mm thick; longer than 2000 mm is rare. Check the number and its measure.'
    ]);
    expect(told(laid(2, 2, 0.5))).toEqual([
      'The unit block was read as 2000 mm long, 2000 mm wide and 500 mm thick; thicker than 300 mm is rare. Check the number and its measure.'
    ]);
  });

  it('densities, in place', () => {
    expect([...told(heavy(1000)), ...told(heavy(3000))]).toEqual([]);
    expect(told(heavy(22_000))).toEqual([
      'The material rock was read as 22000 kg/m3 compacted; more than 3000 kg/m3 is rare for stone and sand. Check the number and its measure.'
    ]);
    expect(told(heavy(220), [6, 6], 'imperial')[0]).toContain(
      '13.7 lb per cu ft compacted; less than 62 lb per cu ft is rare'
    );
  });

  it('areas', () => {
    expect(told({}, [200, 100])).toEqual([]);
    expect(told({}, [201, 100])).toEqual([
      'The area a was read as 20100.00 m2; more than 20,000 m2 is rare. Check the numbers of its outline and their measures.'
    ]);
  });
});

describe('geotextile', () => {
  const soil = (name: string) => ({ ...SITE.soil, name });
  const layers = [layer('base', 8 * INCH)];
  const cloth = (lap: number) => material('cloth', 'geotextile', { lap: given(lap * INCH) });
  const SHORT = 'geotextile-lap-short';

  it('over clay and silt, where the ground is wet or wheels run (ICPI Installation basics; PAV-TEC-002 from memory)', () => {
    const over = (name: string, drains: 'well' | 'poorly', more: AreaWords = {}) =>
      [...judged({ layers, site: { ...SITE, soil: soil(name), drains }, ...more }).keys()].join();
    expect(over('clay', 'poorly')).toBe('geotextile-over-fine-soil');
    expect(over('silt', 'well', { layers: [layer('base', 10 * INCH)], traffic: ['cars'] })).toBe(
      'geotextile-over-fine-soil'
    );
    expect(over('clay', 'well') + over('sand', 'poorly') + over('clay', 'poorly', { geotextile: cloth(12) })).toBe('');
  });

  it('settles nothing on ground of 3 % and less (course text on pavement design), lapped 24 in below 3 % (from memory)', () => {
    const poor = (bearing: number, geotextile?: Area['geotextile']) => {
      const site = { ...SITE, soil: soil('clay'), drains: 'poorly' as const, bearing: given(bearing) };
      return [...judged({ layers, site, ...(geotextile === undefined ? {} : { geotextile }) }).keys()];
    };
    expect(poor(0.03)).toEqual(['very-poor-ground']);
    expect(poor(0.031)).toEqual(['geotextile-over-fine-soil']);
    expect(poor(0.03, cloth(12))).toEqual(['very-poor-ground']);
    expect(poor(0.029, cloth(12))).toEqual(['very-poor-ground', SHORT]);
    expect(poor(0.029, cloth(24))).toEqual(['very-poor-ground']);
    expect(judged({ layers, geotextile: cloth(6) }).get(SHORT)).toBe(
      'The geotextile of a is lapped 6 in, 6 in too little: 12 in at least.'
    );
  });
});

describe('finish at the house', () => {
  const at = (benchmark: string, below: number, rulebook: string, winters: 'freeze' | 'mild' = 'freeze') => {
    const level = { benchmark, above: given(-below), fromNought: false };
    const site = { ...SITE, ground: level, winters };
    const rules = rulesOf([rulebook]);
    return found({ finish: level, site, layers: [layer('base', 8 * INCH)] }, { rules, system: 'metric' });
  };
  const told = (...of: Parameters<typeof at>) => at(...of).map(({ id }) => id);

  it('2 in below siding (International Residential Code, R317.1, from memory)', () => {
    expect(told('siding-edge', 0.0508, 'north-america')).toEqual([]);
    expect([...told('siding-edge', 0.049, 'north-america'), ...told('siding', 0.049, 'north-america')]).toEqual([
      'finish-too-high',
      'finish-too-high'
    ]);
  });

  it('2 in below a sill where it snows (common practice)', () => {
    expect(told('door-sill', 0.05, 'north-america')).toEqual([]);
    expect(told('door-sill', 0.049, 'north-america')).toEqual(['finish-too-high']);
    expect(told('door-sill', 0.02, 'north-america', 'mild')).toEqual([]);
    expect(told('nail', 0.02, 'north-america')).toEqual([]);
  });

  it('150 mm below a damp course (Approved Document C, 5.5, as quoted in public texts; in Ireland as in Britain)', () => {
    expect([...told('damp-course', 0.15, 'britain'), ...told('damp-course', 0.15, 'ireland')]).toEqual([]);
    const [british] = at('damp-course', 0.14, 'britain');
    expect([british?.id, british?.source]).toEqual([
      'finish-too-high',
      'Code: Approved Document C, 5.5, as quoted in other texts.'
    ]);
    expect(told('house-dpc', 0.14, 'britain')).toEqual(['finish-too-high']);
    expect(at('damp-course', 0.14, 'ireland').map(({ source }) => source)).toEqual([
      'Common practice, no source (as in Britain).'
    ]);
  });
});

describe('continental Europe (German guidance, from memory)', () => {
  const continental = (more: AreaWords) => judged(more, { system: 'metric', rules: rulesOf(['continental-europe']) });
  const heaving = (name: string): Area['site'] => ({
    ...SITE,
    winters: 'freeze',
    soil: { ...SITE.soil, name, heavesInFrost: true }
  });
  const built = (base: number, traffic: Area['traffic'], name = 'loam', joint = 0.004, thickness = 0.06) => ({
    site: heaving(name),
    traffic,
    paving: paving(unit(0.2, 0.16, thickness), joint),
    layers: [layer('bed', 0.04), layer('base', base)]
  });

  it('RStO table 6: 30 cm in all under people, 40 and 50 cm under cars by soil, 50 and 60 cm under trucks', () => {
    for (const [least, traffic, soil] of [
      [0.2, 'foot', 'loam'],
      [0.2, 'foot', 'clay'],
      [0.3, 'cars', 'loam'],
      [0.4, 'cars', 'silt']
    ] as const) {
      expect([...continental(built(least, [traffic], soil)).keys()]).toEqual([]);
      expect([...continental(built(least - 0.01, [traffic], soil)).keys()]).toEqual(['base-thinner-than-usual']);
    }
    const trucks = (base: number, soil: string) =>
      continental(built(base, ['trucks'], soil, 0.004, 0.08)).get('base-thinner-than-usual');
    expect(trucks(0.38, 'loam') ?? trucks(0.48, 'clay')).toBeUndefined();
    expect(trucks(0.37, 'loam')).toContain('with units and bed 500 mm is usual');
    expect(trucks(0.47, 'clay')).toContain('with units and bed 600 mm is usual');
    expect(continental({ ...built(0.15, ['cars'], 'silt'), site: { ...heaving('silt'), winters: 'mild' } }).size).toBe(
      0
    );
  });

  it('ZTV Pflaster-StB: joints of 3 to 5 mm between units up to 120 mm thick, 5 to 8 mm between thicker ones', () => {
    const joints = (joint: number, thickness: number) =>
      continental(built(0.4, ['foot'], 'loam', joint, thickness)).has('joint-outside-limits');
    expect([0.002, 0.003, 0.005, 0.006].map(joint => joints(joint, 0.12))).toEqual([true, false, false, true]);
    expect([0.004, 0.005, 0.008, 0.009].map(joint => joints(joint, 0.14))).toEqual([true, false, false, true]);
  });

  it('a bed of 30 to 50 mm', () => {
    const bed = (thickness: number) =>
      continental({ ...built(0.4, ['foot']), layers: [layer('bed', thickness), layer('base', 0.4)] }).size;
    expect([0.029, 0.03, 0.05, 0.051].map(bed)).toEqual([1, 0, 0, 1]);
  });
});

describe('common practice everywhere', () => {
  const open = (name: string, role: 'bed' | 'base' | 'joint-filler') =>
    material(name, role, { openGraded: true, compacted: given(1700), loose: given(1600) });
  const laid = paving(unit(0.2, 0.1, 0.08), 0.003);
  const base = layer('base', 8 * INCH);

  it('stack bond is for people', () => {
    const stacked = (traffic: Area['traffic']) =>
      [...judgedWhole({ traffic, layers: [base], paving: paving(unit(0.2, 0.1, 0.08), 0.003, 0) }).keys()].join();
    expect([stacked(['foot']), stacked(['cars'])]).toEqual(['', 'stack-bond-under-wheels']);
  });

  it('over open stone the bed is grit, and over grit the joints are', () => {
    const stone = layer('base', 8 * INCH, { material: open('rail', 'base') });
    const told = (bed: Area['layers'][number], jointFiller: Area['jointFiller']) =>
      judged({ paving: laid, layers: [bed, stone], ...(jointFiller === undefined ? {} : { jointFiller }) }).get(
        'sand-over-open-stone'
      );
    const grit = layer('bed', 0.05, { material: open('grit', 'bed') });
    expect(told(layer('bed', 0.025), undefined)).toContain('The bed of a is sand, and its base is open stone');
    expect(told(grit, material('fine', 'joint-filler'))).toContain('The joints of a are filled with sand');
    expect(told(grit, open('grit', 'joint-filler'))).toBeUndefined();
    const assumed = material('fine', 'joint-filler', { assumed: { because: 'the job names none' } });
    expect(told(grit, assumed)).toBeUndefined();
  });

  it('spikes stand 12 in apart along drives, 24 in along straight sides for people', () => {
    const spiked = (spacing: number, traffic: Area['traffic']) => {
      const strip = material('strip', 'edging', { width: given(0), spikesEvery: given(spacing * INCH) });
      return judged({ traffic, layers: [base] }, {}, [{ edging: strip }, ...CLOSED.slice(1)]).has('spikes-far-apart');
    };
    expect([spiked(12, ['cars']), spiked(13, ['cars'])]).toEqual([false, true]);
    expect([spiked(24, ['foot']), spiked(25, ['foot'])]).toEqual([false, true]);
  });
});
