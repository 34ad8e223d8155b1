// What is offered in rules, sources and rulebooks, and where a job speaks of rules: the cursor is drawn as ‸.
import { SHIPPED_BONDS } from '../../language/library/shipped.ts';
import { describe, expect, test } from 'vitest';
import { completionsAt, type Completion } from '../../language/editing/completion/completion.ts';
import { layOut } from '../../language/format/layout.ts';
import { membersOf } from '../../language/findings/members/members.ts';
import { SHIPPED_RULEBOOKS } from '../../language/library/shipped.ts';
import { drain, Paving } from '../../language/paving.ts';
import { withCursor } from '../cursor.ts';
import { inMemory } from './in-memory.ts';

const paving = new Paving(inMemory({}));

function completionsIn(drawn: string): readonly Completion[] {
  const { text, start } = withCursor(drawn);
  paving.setText('job.paving', text);
  const look = paving.look('job.paving')!;
  return completionsAt(look.text, look.project, start);
}

const offered = (drawn: string): string[] => completionsIn(drawn).map(({ label }) => label);
const offer = (drawn: string, label: string): Completion => {
  const found = completionsIn(drawn).find(each => each.label === label);
  if (found === undefined) throw new Error(`not offered: ${label}; but ${offered(drawn).join(', ')}`);
  return found;
};

const inRule = (lines: string, concerns = 'area'): string => `rule r {\n  concerns ${concerns}\n  ${lines}\n}\n`;

const OWN = `job "Patio" { rules our-town }
source leaflet { kind handbook, title "Leaflet" }
rulebook our-town { title "Our town", includes north-america }
rule base-on-clay {
  concerns area
  needs    base at least 5 in
  says     "Too thin."
  cites    leaflet
}
area terrace { outline rectangle 12 x 16 ft }
box valves in terrace { rectangle 20 x 14 in, centre (6 ft 2 in, 3 ft 1 in) }
`;

describe('In a rule', () => {
  test.each(['area', 'layer', 'side', 'unit', 'material', 'site'] as const)(
    'about %s: everything that it can look at, and nothing else',
    concern => {
      const all = membersOf(concern).map(({ name }) => name);
      expect(offered(inRule('when ‸', concern))).toEqual(all);
      expect(offered(inRule('needs ‸', concern))).toEqual(all);
    }
  );

  test('nothing to look at is offered before it says what it concerns', () => {
    expect(offered('rule r {\n  when ‸\n}')).toEqual([]);
    expect(offered('rule r {\n  ‸\n}')).not.toContain('needs');
    expect(offered(inRule('‸'))).toEqual(expect.arrayContaining(['when', 'needs', 'says', 'fix', 'cites', 'concerns']));
  });

  test('the nearest `concerns` above counts', () => {
    const text = inRule('needs base is said\n  says "…"\n  concerns unit\n  when ‸\n  concerns layer');
    expect(offered(text)).toEqual(membersOf('unit').map(({ name }) => name));
  });

  test.each([
    ['when traffic is ‸', ['foot', 'cars', 'trucks', 'turning', 'not', 'said']],
    ['when traffic is foot, ‸', ['cars', 'trucks', 'turning']],
    ['needs winters is not ‸', ['freeze', 'mild', 'said']],
    ['when soil is ‸', ['common-earth', 'clay', 'silt', 'sand', 'gravel', 'not', 'said']],
    ['when bond is ‸', [...SHIPPED_BONDS, 'not', 'said']],
    ['needs base ‸', ['is', 'at least', 'at most', 'more than', 'less than']],
    ['needs base at ‸', ['least', 'most']],
    ['fix ‸', ['base', 'joint', 'bond', 'finish', 'winters', 'geotextile', 'finish-below-benchmark']],
    ['severity ‸', ['warning', 'error', 'note']],
    ['cites common-practice, "here", ‸', ['from-memory', 'as-quoted']]
  ])('%s', (drawn, labels) => {
    expect(offered(inRule(drawn)).toSorted()).toEqual(labels.toSorted());
  });

  test('a limit is of the kind of what it is compared with, round in both systems', () => {
    const all = offered(inRule('needs base at least ‸'));
    expect(all[0]).toBe('base');
    expect(all).toContain('topsoil');
    expect(all).not.toContain('gross-area');
    expect(all).not.toContain('soil');
    expect(offer(inRule('needs base at least ‸'), '4 in (100 mm)').snippet).toBe('${1:4 in (100 mm)}');
    expect(offered(inRule('needs base at least 4 ‸')).slice(0, 6)).toEqual(['in', 'ft', 'yd', 'mm', 'm', 'cm']);
  });

  test('what a comparison comes to is offered in the message and the fix', () => {
    expect(offered(inRule('needs base at least 4 in\n  says "…" ‸')).slice(0, 2)).toEqual(['needed', 'missing']);
    expect(offered(inRule('needs base at least 4 in\n  says "…"\n  fix base to ‸')).slice(0, 2)).toEqual([
      'needed',
      'missing'
    ]);
    expect(offered(inRule('needs order-of-sizes is thickness-last\n  fix order-of-sizes to ‸', 'unit'))).toEqual([
      'thickness-last',
      'other'
    ]);
    expect(offered(inRule('fix edging to ‸', 'side'))).toEqual(
      expect.arrayContaining(['spiked-strip', 'usual-edging'])
    );
  });

  test("a quantity is told with what it is, its measure and its words, a value of one's own as a value", () => {
    expect(offer(inRule('when ‸'), 'heaviest-traffic').detail).toBe(
      'The heaviest traffic: `cars` also where wheels turn'
    );
    expect(offer(`let least = 4 in\n${inRule('needs base at least ‸')}`, 'least').kind).toBe('name');
  });

  test('an example holds what a job spec holds, and sees itself and what ships alone', () => {
    const text = (line: string): string =>
      `${OWN}unit slab { size 12 x 12 x 2 in }\nrule r {\n  wrong {\n    unit brick { size 8 x 4 x 2 in }\n    area a {\n      ${line}\n    }\n  }\n}`;
    expect(offered(text('paving ‸'))).toEqual(['brick']);
    expect(offered(text('base ‸'))).toContain('crushed-stone');
    expect(offered('rule r {\n  right {\n    ‸\n  }\n}')).toEqual(
      expect.arrayContaining(['site', 'unit', 'area', 'let'])
    );
    expect(offered('rule r {\n  right {\n    ‸\n  }\n}')).not.toContain('rule');
  });
});

describe('Rules by name', () => {
  test('a job names rulebooks, each once, those that others include last', () => {
    const all = offered('job "A" {\n  rules ‸\n}');
    expect(all[0]).toBe('north-america');
    expect(all.toSorted()).toEqual(SHIPPED_RULEBOOKS.toSorted());
    expect(all.indexOf('everywhere')).toBeGreaterThan(all.indexOf('britain'));
    expect(offered('job "A" {\n  rules britain, ‸\n}')).not.toContain('britain');
  });

  test('a rulebook includes others, not itself', () => {
    const all = offered(OWN.replace('includes north-america', 'includes ‸'));
    expect(all).toContain('britain');
    expect(all).not.toContain('our-town');
  });

  test('a job speaks of the rules that it is checked by, each once', () => {
    const all = offered(OWN.replace('rules our-town', 'rules our-town, treat ‸'));
    expect(all[0]).toBe('base-on-clay');
    expect(all).toContain('base-too-thin');
    expect(all).toContain('dig-deep');
    expect(new Set(all).size).toBe(all.length);
    expect(offered('job "A" { rules everywhere, treat ‸ }')).not.toContain('base-too-thin');
    expect(offered('job "A" { rules everywhere, treat dig-deep as ‸ }')).toEqual(['note', 'warning', 'error']);
    expect(offered('job "A" { rules everywhere, prefer dig-deep over ‸ }')).not.toContain('dig-deep');
  });

  test('a rule is set aside for a thing of the job', () => {
    expect(offered(`${OWN}accept ‸`)[0]).toBe('base-on-clay');
    expect(offered(`${OWN}accept base-on-clay on ‸`).slice(0, 2)).toEqual(['terrace', 'valves']);
    expect(offered(`${OWN}accept base-on-clay on ‸`)).toContain('site');
    expect(offer(`${OWN}accept base-on-clay on terrace ‸`, 'because').snippet).toBe('because ${1:"the reason"}');
    expect(offered('‸\narea a { outline rectangle 3 x 4 m }')).not.toContain('accept');
    expect(offer(`${OWN}‸`, 'accept').text).toBe(
      'accept base-on-clay on terrace because "the reason" until 2027-06-30'
    );
  });

  test("one's own source goes first, and a new one is told by its kind", () => {
    expect(offered(OWN.replace('cites    leaflet', 'cites ‸')).slice(0, 2)).toEqual(['leaflet', 'common-practice']);
    expect(offer(OWN.replace('cites    leaflet', 'cites ‸'), 'leaflet').detail).toBe('Handbook: Leaflet');
    expect(offered('source s {\n  kind ‸\n}')).toContain('association-guidance');
  });
});

describe('A new rule', () => {
  test.each([
    ['job "A" { rules north-america }\n', 'in'],
    ['job "A" { rules britain }\n', 'mm']
  ])('unfolds to a whole one without a fault, laid out as it ships: %s', (job, measure) => {
    const { text } = offer(`${job}‸`, 'rule');
    expect(text).toContain(` ${measure} (`);
    paving.setText('job.paving', `${job}\n${text}\n`);
    expect(drain(paving.evaluate('job.paving'))!.findings).toEqual([]);
    const { parsed } = paving.look('job.paving')!.text;
    expect(layOut(parsed)).toBe(parsed.text);
  });

  test.each([
    ['source', 'job "A" { rules britain }\n'],
    ['rulebook', 'job "A" { rules britain }\n']
  ])('%s', (word, job) => {
    const { text } = offer(`${job}‸`, word);
    paving.setText('job.paving', `${job}\n${text}\n`);
    expect(drain(paving.evaluate('job.paving'))!.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(layOut(paving.look('job.paving')!.text.parsed)).toContain(`\n${text}\n`);
  });
});
