// Rules as text: which of them a job is checked by, what they find, and what is told of a rule that is written wrong.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rule } from '../../language/job/rule.ts';
import { drain, Paving } from '../../language/paving.ts';
import { computeJob } from '../../language/quantities/compute-job.ts';
import { Session } from '../../language/session/session.ts';
import { evaluated, inMemory } from './in-memory.ts';

/** A closed terrace on a base of 4 in: the shipped rules find nothing. */
const TERRACE = `
site { soil sand, winters mild, benchmark sill, ground 3 in below sill }
area terrace {
  outline rectangle 12 x 16 ft
  traffic foot
  finish  2 1/2 in below sill
  base    crushed-stone 4 in
  edges { all round meets house-wall }
}
`;

const LEAFLET = 'source leaflet { kind code, title "Town leaflet on paving", edition "2025" }';

/** A rule that wants a base of so much. */
const wants = (name: string, least: string, more = ''): string => `
rule ${name} {
  concerns area
  needs    base at least ${least}
  says     "${name}: " area " has " base ", " missing " less than " needed "."
  cites    leaflet, "page 3"
  ${more}
}
`;

async function told(text: string, others: Readonly<Record<string, string>> = {}): Promise<string[]> {
  const { findings } = await evaluated(text, others);
  return findings.map(({ severity, id, message }) => `${severity} ${id}: ${message}`);
}

const job = (rules = 'north-america', more = ''): string => `job "Terrace" { rules ${rules}\n${more} }\n`;

describe('a rule of one’s own', () => {
  test('stands in the job’s file, and is told with its source at what misses it', async () => {
    const text = job() + LEAFLET + wants('base-here', '5 in') + TERRACE;
    const [finding, ...others] = (await evaluated(text)).findings;
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      id: 'base-here',
      family: 'rule',
      severity: 'warning',
      message: 'Base-here: terrace has 4 in, 1 in less than 5 in.',
      source: 'Code: Town leaflet on paving, 2025, page 3.',
      target: 'area:terrace'
    });
    expect(text.split('\n')[finding!.line - 1]).toBe('  base    crushed-stone 4 in');
    expect(text.split('\n')[finding!.rule!.line - 1]).toBe('rule base-here {');
  });

  test('in a rulebook counts where the job names it, or a rulebook that includes it', async () => {
    const town = `rulebook town { title "Town" }\n${LEAFLET}${wants('base-here', '5 in')}`;
    const county = 'use "town.paving"\nrulebook county { includes town, britain }';
    const files = { 'town.paving': town, 'county.paving': county };
    const found = ['warning base-here: Base-here: terrace has 4 in, 1 in less than 5 in.'];
    expect(await told(`${job()}use "town.paving"\n${TERRACE}`, files)).toEqual([
      expect.stringMatching(/^warning rulebook-not-named: /)
    ]);
    expect(await told(`${job('north-america, town')}use "town.paving"\n${TERRACE}`, files)).toEqual(found);
    // Named alone the county shows metric, as the first rulebook does that it leads to.
    expect(await told(`${job('county')}use "county.paving"\n${TERRACE}`, files)).toEqual([
      'warning base-here: Base-here: terrace has 101.6 mm, 25.4 mm less than 127 mm.'
    ]);
  });

  test('stands over one of the same name', async () => {
    const thin = TERRACE.replace('stone 4 in', 'stone 3 in');
    expect((await told(job() + thin))[0]).toMatch(/^error base-too-thin: .* 4 in at least/);
    expect(await told(job() + LEAFLET + wants('base-too-thin', '2 in') + thin)).toEqual([]);
    const town = `rulebook town { includes north-america }\n${LEAFLET}${wants('base-too-thin', '3 1/2 in')}`;
    expect(await told(`${job('town')}use "town.paving"\n${thin}`, { 'town.paving': town })).toEqual([
      'warning base-too-thin: Base-too-thin: terrace has 3 in, 1/2 in less than 3 1/2 in.'
    ]);
  });

  test('prints its limit in the job’s measures, and a limit met exactly passes in both', async () => {
    const rules = LEAFLET + wants('base-here', '5 in (125 mm)');
    const base = (of: string): string => TERRACE.replace('stone 4 in', `stone ${of}`);
    expect(await told(`${job('north-america', 'show metric')}${rules}${base('4 in')}`)).toEqual([
      'warning base-here: Base-here: terrace has 101.6 mm, 23.4 mm less than 125 mm.'
    ]);
    expect(await told(job() + rules + base('125 mm'))).toEqual([]);
    expect(await told(job('north-america', 'show metric') + rules + base('5 in'))).toEqual([]);
    expect(await told(job() + rules + base('124.9 mm'))).toHaveLength(1);
  });
});

describe('a job changes what it is checked by', () => {
  const thin = TERRACE.replace('stone 4 in', 'stone 3 in');

  test('it raises and lowers rules; practice and memory are never raised to errors', async () => {
    expect(await told(job('north-america', 'treat base-too-thin as note') + thin)).toEqual([
      expect.stringMatching(/^note base-too-thin: /)
    ]);
    const topsoil = thin.replace('winters mild', 'winters mild, topsoil 8 in');
    expect(await told(job('north-america', 'treat base-on-topsoil as error') + topsoil)).toEqual([
      expect.stringMatching(
        /^warning error-without-source: The rule base-on-topsoil rests on practice or memory alone/
      ),
      expect.stringMatching(/^warning base-on-topsoil: /),
      expect.stringMatching(/^error base-too-thin: /)
    ]);
    expect(await told(job('britain', 'treat winters-not-said as note') + TERRACE)).toEqual([
      expect.stringMatching(/^warning rule-not-here: The rule `winters-not-said` is in none of the rulebooks here/)
    ]);
  });

  test('of two that collide one yields wherever the other applies', async () => {
    const rules = LEAFLET + wants('mild', '5 in') + wants('strict', '6 in', 'when soil is sand');
    expect(await told(job() + rules + TERRACE)).toHaveLength(2);
    const strict = ['warning strict: Strict: terrace has 4 in, 2 in less than 6 in.'];
    expect(await told(job('north-america', 'prefer strict over mild') + rules + TERRACE)).toEqual(strict);
    const onClay = TERRACE.replace('soil sand', 'soil gravel');
    expect(await told(job('north-america', 'prefer strict over mild') + rules + onClay)).toEqual([
      'warning mild: Mild: terrace has 4 in, 1 in less than 5 in.'
    ]);
  });
});

describe('a rule that is written wrong is told in its own text, and judges nothing', () => {
  const rule = (...lines: readonly string[]): string =>
    `${job()}${LEAFLET}\nrule r {\n${lines.map(line => `  ${line}\n`).join('')}}\n${TERRACE}`;
  const sound = ['concerns area', 'needs base at least 5 in', 'says "thin"', 'cites leaflet'];
  const without = (word: string, ...more: string[]): string[] => [
    ...sound.filter(line => !line.startsWith(word)),
    ...more
  ];

  test.each<[string, string, readonly string[]]>([
    ['no kind of thing', 'The rule r does not say what it is about.', without('concerns')],
    ['nothing asked', 'The rule r asks nothing.', ['concerns area', 'when soil is clay', 'cites leaflet']],
    ['nothing told', 'Nothing says what is told where this is not met.', without('says')],
    ['no source', 'The rule r names no source.', without('cites')],
    [
      'an unknown source',
      'No source is called `leaflets`. Did you mean `leaflet`?',
      without('cites', 'cites leaflets')
    ],
    [
      'an unknown quantity',
      'A rule about an area finds nothing called `bas`.',
      without('needs', 'needs bas at least 5 in', 'says "x"')
    ],
    [
      'a quantity of another thing',
      'A rule about an area finds nothing called `thickness`.',
      without('needs', 'needs thickness at least 5 in', 'says "x"')
    ],
    [
      'another kind of quantity',
      '`5 lb` is a mass; it is compared with a length.',
      without('needs', 'needs base at least 5 lb', 'says "x"')
    ],
    [
      'no measure',
      '`5` has no measure; it is compared with a length.',
      without('needs', 'needs base at least 5', 'says "x"')
    ],
    [
      'a word compared',
      "`soil` is a name or word, and can't be compared. Write `soil is …` or `soil is said`.",
      [...sound, 'when soil at least 5 in']
    ],
    ['a number called a word', '`base` is a number: compare it', [...sound, 'when base is clay']],
    [
      'an unknown word',
      '`feet` is not known here. Write one of: foot, cars, trucks, turning.',
      [...sound, 'when traffic is feet']
    ],
    [
      'limits too far apart',
      '`4 in` and `100 cm` are too far apart',
      without('needs', 'needs base at least 4 in (100 cm)', 'says "x"')
    ],
    [
      'both limits in one system',
      'In brackets stands the same limit, round in the other measures',
      without('needs', 'needs base at least 4 in (1 ft)', 'says "x"')
    ],
    [
      'a fix that can’t be written',
      "`perimeter` can't be written by a fix. Write one of: ",
      [...sound, 'fix perimeter to 3 m']
    ],
    [
      'a limit where nothing is compared',
      '`needed` stands for what a comparison comes to',
      ['concerns area', 'when soil is sand', 'says "x" needed', 'cites leaflet']
    ]
  ])('%s', async (_, message, lines) => {
    const text = rule(...lines);
    const found = (await evaluated(text)).findings.filter(({ id }) => id !== 'never-used');
    expect(found.map(finding => finding.message)).toEqual([expect.stringContaining(message)]);
    const [first, last] = [
      text.split('\n').indexOf('rule r {') + 1,
      text.split('\n').indexOf('site { soil sand, winters mild, benchmark sill, ground 3 in below sill }')
    ];
    expect(found.every(({ line }) => line >= first && line <= last)).toBe(true);
  });

  test('the area keeps its numbers', async () => {
    const { numbers } = await evaluated(rule(...without('cites')));
    expect(numbers!.quantities.complete).toBe(true);
  });
});

describe('a rule that fails inside', () => {
  test('is one finding at the rule, whatever it was judged on; all others go on', async () => {
    const divides = wants('odd', '5 in * (5 in / (topsoil - 5 in))');
    const two =
      TERRACE.replace('mild', 'mild, topsoil 5 in') +
      TERRACE.replace(/site .*\n/, '')
        .replace(/terrace/g, 'seat')
        .replace('16 ft', '16 ft, corner (40 ft, 0)');
    const text = job() + LEAFLET + divides + wants('base-here', '6 in') + two;
    const found = (await evaluated(text)).findings.filter(({ id }) => id !== 'base-on-topsoil');
    expect(found.map(({ id, severity }) => `${severity} ${id}`)).toEqual([
      'warning rule-failed',
      'warning base-here',
      'warning base-here'
    ]);
    expect(text.split('\n')[found[0]!.line - 1]).toBe('rule odd {');
  });

  test('so is one that this program can’t work out', async () => {
    const { job: sound } = await evaluated(job() + LEAFLET + wants('base-here', '5 in') + TERRACE);
    const broken = { ...sound!.rules[0]!, key: 'rule:broken', name: 'broken' } as Rule;
    const spoilt: Rule = {
      ...broken,
      cases: broken.cases.map(ruleCase => ({
        ...ruleCase,
        when: [[[{ is: 'compared', left: { is: 'unheard-of' } } as never]]]
      }))
    };
    const { findings } = drain(computeJob({ ...sound!, rules: [spoilt, ...sound!.rules] }, new Session()));
    expect(findings.map(({ id, target }) => `${id} ${target}`)).toEqual([
      'base-here area:terrace',
      'rule-failed rule:broken'
    ]);
  });
});

describe('a rule is judged again only where something that it reads has changed', () => {
  const rules = ['base', 'joint', 'perimeter'].map(
    name => `rule wants-${name} {\n concerns area\n needs ${name} at least 1 mm\n says "x"\n cites common-practice\n}`
  );
  const area = (name: string, base: string, width = '4 m', more = ''): string => `
area ${name} {
  outline rectangle ${width} x 3 m, corner (${name === 'a' ? 0 : 50}, 0) m
  traffic foot
  paving  block in running-bond, joints 3 mm
  base    type-1 ${base}
  edges { all round meets house-wall }
  ${more}
}`;
  const text = (...areas: readonly string[]): string =>
    ['job "Two" { }', 'unit block { size 200 x 100 x 60 mm }', ...rules, ...areas].join('\n');

  test('counted, edit by edit', () => {
    const paving = new Paving(inMemory({}));
    let before = 0;
    const judgedBy = (edited: string): number => {
      paving.setText('job.paving', edited);
      drain(paving.evaluate('job.paving'));
      const all = paving.session.computations.judgements;
      const count = all - before;
      before = all;
      return count;
    };
    const start = text(area('a', '100 mm'), area('b', '100 mm'));
    expect(judgedBy(start)).toBe(6);
    expect(judgedBy(`// Moved down by a line.\n${start}`)).toBe(0);
    expect(judgedBy(text(area('a', '120 mm'), area('b', '100 mm')))).toBe(1);
    expect(judgedBy(text(area('a', '120 mm', '5 m'), area('b', '100 mm')))).toBe(1);
    expect(judgedBy(text(area('a', '120 mm', '5 m'), area('b', '100 mm', '4 m', 'geotextile separation-cloth')))).toBe(
      0
    );
    const moreRules = text(area('a', '120 mm', '5 m'), area('b', '100 mm')).replace(
      'joint at least 1 mm',
      'joint at least 2 mm'
    );
    expect(judgedBy(moreRules)).toBe(2);
  });
});

describe('what a rule was judged by can’t go stale', () => {
  const words = ['feet-and-inches', 'metric'] as const;
  const text = (base: number, system: string, soil: string, edging: boolean, other: string): string =>
    job(other, `show ${system}`) +
    LEAFLET +
    wants('base-here', '5 in (125 mm)', 'fix base to base + missing') +
    TERRACE.replace('4 in', `${base} mm`)
      .replace('soil sand', `soil ${soil}`)
      .replace(
        'all round meets house-wall',
        `near meets house-wall, the rest meets lawn${edging ? ', edging spiked-strip' : ''}`
      )
      .replace('{ near meets house-wall, the rest', '{\n near meets house-wall\n the rest');

  test('after any edits, all is as worked out afresh', () => {
    const warm = new Paving(inMemory({}));
    const findingsOf = (paving: Paving, edited: string): unknown => {
      paving.setText('job.paving', edited);
      return drain(paving.evaluate('job.paving'))!.findings;
    };
    fc.assert(
      fc.property(
        fc.constantFrom(50, 100, 150),
        fc.constantFrom(...words),
        fc.constantFrom('sand', 'clay'),
        fc.boolean(),
        fc.constantFrom('north-america', 'britain', 'britain, north-america', 'continental-europe'),
        (...edit) => {
          const edited = text(...edit);
          expect(findingsOf(warm, edited)).toEqual(findingsOf(new Paving(inMemory({})), edited));
        }
      ),
      { seed: 20261125, numRuns: 60 }
    );
  }, 300_000);

  test('of two rulebooks that find the same the heavier counts, in whatever order they are named', async () => {
    const thin = TERRACE.replace('stone 4 in', 'stone 3 in');
    for (const rules of ['north-america, britain', 'britain, north-america'])
      expect((await told(job(rules, 'show feet-and-inches') + thin))[0]).toMatch(/^error base-too-thin: /);
  });
});

describe('what a person can write does not hold up', () => {
  test('rulebooks that include each other many times over, in a long chain, or in a circle', async () => {
    const layers = Array.from({ length: 40 }, (_, at) =>
      ['a', 'b'].map(side => `rulebook ${side}-${at} { ${at === 0 ? '' : `includes a-${at - 1}, b-${at - 1}`} }`)
    ).flat();
    const chain = Array.from({ length: 3000 }, (_, at) => `rulebook c-${at} { includes c-${at + 1} }`);
    const round = ['rulebook one { includes two }', 'rulebook two { includes one }'];
    const text = [job('a-39, c-0, one'), ...layers, ...chain, 'rulebook c-3000 { }', ...round, TERRACE].join('\n');
    expect((await told(text)).filter(line => !line.includes('never-used'))).toEqual([
      'error includes-in-circle: The rulebook `one` includes itself, if only by way of others. Take one `includes` out.'
    ]);
  });

  test('five hundred broken rules are all told, and each is mended for all', async () => {
    const rules = Array.from({ length: 500 }, (_, at) => wants(`rule-${at}`, `${200 + at} mm`, 'fix base to needed'));
    const { findings } = await evaluated(job() + LEAFLET + rules.join('') + TERRACE);
    expect(findings).toHaveLength(500);
    expect(new Set(findings.map(({ fixes }) => fixes[0]!.title))).toEqual(new Set(['Write `27 33/64 in`']));
  }, 20_000);
});

describe('names, preferences and parts', () => {
  test('a name of several words is what its last ones say; a fixed word is only itself', async () => {
    const kind = (name: string): string =>
      `soil-kind ${name} { swell 30 %, density 100 lb per cu ft, drains well, frost-heave likely }\n`;
    const clay = (name: string): Promise<string[]> =>
      told(
        job() +
          LEAFLET +
          kind(name) +
          wants('on-clay', '5 in', 'when soil is clay') +
          TERRACE.replace('soil sand', `soil ${name}`)
      );
    expect(await clay('stiff-clay')).toContain('warning on-clay: On-clay: terrace has 4 in, 1 in less than 5 in.');
    expect(await clay('clay-free-sand')).toEqual([]);
  });

  test.each([
    ['the other way round', 'prefer mild over strict', 'already heard instead of'],
    ['itself', 'prefer strict over strict', 'can’t be heard instead of itself'],
    ['what is about safety', 'prefer strict over dig-deep', 'about the safety of people'],
    ['another kind of thing', 'prefer strict over bed-outside-limits', 'they never meet']
  ])('a preference in vain is told: %s', async (_, prefer, message) => {
    const rules = LEAFLET + wants('mild', '4 in') + wants('strict', '4 in');
    expect(await told(job('north-america', `prefer strict over mild\n${prefer}`) + rules + TERRACE)).toEqual([
      expect.stringContaining(message)
    ]);
  });

  test('a rule that compares nothing silences no other', async () => {
    const rules = LEAFLET + wants('mild', '5 in') + wants('deep', '6 in').replace('needs    base', 'needs    topsoil');
    const found = await told(job('north-america', 'prefer deep over mild') + rules + TERRACE);
    expect(found).toEqual(['warning mild: Mild: terrace has 4 in, 1 in less than 5 in.']);
  });

  test('a part that rests on practice is no error in a rule that is one', async () => {
    const mixed = `${LEAFLET}
rule mixed {
  severity error
  concerns area
  needs    base at least 3 in
  says     "Read."
  cites    leaflet
  concerns area
  needs    base at least 5 in
  says     "Practice."
  cites    common-practice
}
`;
    expect(await told(job() + mixed + TERRACE)).toEqual(['warning mixed: Practice.']);
    expect(await told(job() + mixed + TERRACE.replace('stone 4 in', 'stone 2 in'))).toContain(
      'warning mixed: Practice.'
    );
  });

  test('a rule of one’s own with a slip still stands over the other; of one declared twice the first counts', async () => {
    const thin = TERRACE.replace('stone 4 in', 'stone 3 in');
    const slip = wants('base-too-thin', '2 in').replace('needs    base', 'needs    bas');
    expect(await told(job() + LEAFLET + slip + thin)).toEqual([expect.stringMatching(/^error unknown-name: /)]);
    const files = {
      'a.paving': `${LEAFLET}${wants('same', '5 in')}`,
      'b.paving': wants('same', '9 in').replace('cites    leaflet, "page 3"', 'cites common-practice')
    };
    expect(await told(`${job()}use "a.paving"\nuse "b.paving"\n${TERRACE}`, files)).toEqual([
      'warning same: Same: terrace has 4 in, 1 in less than 5 in.',
      expect.stringMatching(/^error said-twice: /)
    ]);
  });

  test('names that nothing has are told, and what a used file asks in vain', async () => {
    const rule = wants('odd', '5 in', 'when soil is cley\n  when bond is runing-bond\n  when meets is turf-grass');
    expect(await told(job() + LEAFLET + rule + TERRACE)).toEqual([
      'warning rule-about-nothing: No kind of soil is called `cley`, so this is about nothing. Did you mean `clay`?',
      'warning rule-about-nothing: No bond is called `runing-bond`, so this is about nothing. Did you mean `running-bond`?',
      expect.stringContaining('is called `turf-grass`, so this is about nothing.')
    ]);
    const town = `rulebook town { title "Town" }\n${LEAFLET}${wants('base-here', '5 in')}`;
    expect(await told(`${job()}use "town.paving"\n${TERRACE}`, { 'town.paving': town })).toEqual([
      'warning rulebook-not-named: The rulebook `town` of town.paving is not named here, so none of its rules count. Write it behind `rules`.'
    ]);
  });
});
