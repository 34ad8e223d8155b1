// What is offered where: the cursor is drawn as ‸.
import { describe, expect, test } from 'vitest';
import { completionsAt, hasToGoOnAt, type Completion } from '../../language/editing/completion/completion.ts';
import { layOut } from '../../language/format/layout.ts';
import { SHIPPED_BONDS } from '../../language/library/shipped.ts';
import { drain, Paving, type Look } from '../../language/paving.ts';
import { withCursor } from '../cursor.ts';
import { inMemory } from './in-memory.ts';

const paving = new Paving(inMemory({}));

/** A text and the offset of the cursor that is drawn in it. */
function look(drawn: string): Look & { readonly offset: number } {
  const { text, start: offset } = withCursor(drawn);
  paving.setText('job.paving', text);
  return { ...paving.look('job.paving')!, offset };
}

function completionsIn(drawn: string, paths: readonly string[] = []): readonly Completion[] {
  const { text, project, offset } = look(drawn);
  return completionsAt(text, project, offset, paths);
}

const offered = (drawn: string, paths: readonly string[] = []): string[] =>
  completionsIn(drawn, paths).map(({ label }) => label);

const offer = (drawn: string, label: string): Completion => {
  const found = completionsIn(drawn).find(each => each.label === label);
  if (found === undefined) throw new Error(`not offered: ${label}; but ${offered(drawn).join(', ')}`);
  return found;
};

const IMPERIAL = `job "Patio" { rules north-america }
site { soil clay, benchmark door-sill, ground 3 in below door-sill }
unit slab-16 { size 15 7/8 x 15 7/8 x 2 in }
material pit-stone { role base, compacted 138 lb per cu ft, loose 111 lb per cu ft }
material garden-strip { role edging, width 3/4 in }
let deep = 4 in
let share = 3 %
point A at (0, 0)
point B at (12 ft, 0)
point C at (12 ft, 16 ft)
point D at (0, 16 ft)
existing old-walk
area drive {
  outline A to B to C to D
  base    pit-stone 8 in
}
`;
const METRIC = IMPERIAL.replace('north-america', 'britain');

const BONDS = ['running-bond', ...SHIPPED_BONDS.filter(name => name !== 'running-bond')];

const inArea = (lines: string, job = IMPERIAL): string => `${job}area patio {\n  ${lines}\n}\n`;
const inEdges = (outline: string, lines: string): string => inArea(`outline ${outline}\n  edges {\n    ${lines}\n  }`);

describe('Statements', () => {
  test('an empty text begins with a whole job, in either system', () => {
    expect(offered('‸').slice(0, 4)).toEqual(['a whole job, feet and inches', 'a whole job, metric', 'job', 'site']);
    expect(offered('‸\n// to be written\n')[0]).toBe('a whole job, feet and inches');
    expect(offered('jo‸')[0]).toBe('a whole job, feet and inches');
    expect(offered('site { }\n‸')[0]).toBe('job');
  });

  test.each(['a whole job, feet and inches', 'a whole job, metric'])('%s checks clean as it is', label => {
    paving.setText('job.paving', offer('‸', label).text);
    const { findings, numbers } = drain(paving.evaluate('job.paving'))!;
    expect(findings).toEqual([]);
    expect(numbers!.quantities.areas).toHaveLength(1);
    // Nothing is left to line up.
    const { text } = paving.look('job.paving')!;
    expect(layOut(text.parsed)).toBe(text.parsed.text);
  });

  test('an area offers what is not said yet, in the usual order of writing', () => {
    expect(offered(inArea('‸'))).toEqual([
      ...[
        'outline',
        'traffic',
        'finish',
        'paving',
        'start',
        'inboard-cuts',
        'border',
        'band',
        'bed',
        'base',
        'sub-base',
        'geotextile',
        'joints',
        'edges'
      ]
    ]);
    expect(offered(inArea('outline circle 3 m across\n  tr‸\n  bed 1 in\n  joints as drive'))).toEqual([
      ...['traffic', 'finish', 'paving', 'start', 'inboard-cuts', 'border', 'base', 'sub-base', 'geotextile', 'edges']
    ]);
  });

  test('the site, the job and a shape are said once; boxes need an area', () => {
    expect(offered('job "A" { }\n‸\nsite { }\n')).not.toContain('site');
    expect(offered('job "A" { }\n‸\n')).not.toContain('box');
    expect(offered(`${IMPERIAL}‸`)).toContain('box');
    expect(offered(`${IMPERIAL}box valves in drive {\n  ‸\n}`)).toEqual([
      ...['rectangle', 'circle', 'outline', 'lid', 'in', 'out']
    ]);
    expect(offered(`${IMPERIAL}box valves in drive {\n  circle 1 ft across\n  ‸\n}`)).toEqual(['lid', 'in', 'out']);
    expect(offered(`${IMPERIAL}box valves in drive {\n  out of use\n  ‸\n}`)).not.toContain('in');
    expect(offered(`${IMPERIAL}pit tree in drive {\n  circle 1 ft across\n  ‸\n}`)).toEqual(['no-dig']);
  });

  test('a material offers what suits its role', () => {
    expect(offered('material m {\n  role geotextile\n  ‸\n}')).toEqual(['roll', 'lap', 'loss', 'according-to']);
    expect(offered('material m {\n  role edging\n  width 2 in\n  ‸\n}')).not.toContain('compacted');
  });

  test('a comma parts statements of a material, and words of a role', () => {
    const all = offered('material m { role bed, ‸ }');
    expect(all).toContain('joint-filler');
    expect(all).toContain('compacted');
    expect(all).not.toContain('bed');
  });

  test("a statement comes whole, in the job's own measures and with what ships for the country", () => {
    expect(offer(inArea('ba‸'), 'base').snippet).toBe(
      'base ${1|pit-stone,crushed-stone,type-1,clause-804,stone-0-32,open-graded-stone|} ${2:6 in}'
    );
    expect(offer(inArea('be‸', METRIC), 'bed').snippet).toBe('bed ${1|sharp-sand,washed-sand,grit-2-6|} ${2:30 mm}');
    expect(offer(`${METRIC}site {\n  ‸\n}\n`, 'topsoil').text).toBe('topsoil 100 mm');
    expect(offer(inArea('‸'), 'paving').text).toBe('paving slab-16 in running-bond, joints 1/8 in');
  });

  test('where the line goes on already only the word is put in', () => {
    expect(offer(inArea('be‸ crushed-stone 6 in'), 'base')).toMatchObject({ text: 'base' });
    expect(offer(inArea('be‸ // to be said'), 'base').text).toBe('base pit-stone 6 in');
  });

  test('a new thing gets a name that is free', () => {
    expect(offer(`${IMPERIAL}‸`, 'point').text).toBe('point E at (0, 0)');
    expect(offer(`${IMPERIAL}‸`, 'unit').text).toContain('unit slab-16-2 {');
    expect(offer(`${METRIC}‸`, 'unit').text).toBe('unit block { size 200 x 100 x 60 mm }');
  });

  test('half-typed and broken texts are completed all the same', () => {
    expect(offered('area patio {\n  outline rectangle 12 x 16 ft\n  ‸')).toContain('traffic');
    expect(offered('area patio {\n  outline rectangle 12 x 16 ft\n  ‸\narea other {\n  traffic foot\n}\n')).toContain(
      'traffic'
    );
    expect(offered(inArea('bse crushed\n  ‸'))).toContain('base');
    expect(offered('site {\n  soil clay, ‸')).toEqual(
      expect.arrayContaining(['poorly-drained', 'bearing', 'topsoil', 'winters'])
    );
  });

  test('nothing stands in comments, titles, numbers, and behind what is finished or makes no sense', () => {
    for (const drawn of [
      '// si‸te',
      'site { } // ‸',
      'job "Pat‸io" { }',
      inArea('bed washed-sand 1‸2 in'),
      inArea('bse crushed ‸'),
      'site { } ‸',
      'nothing of ours {\n  ‸\n}'
    ])
      expect(offered(drawn), drawn).toEqual([]);
  });
});

describe('Within a statement', () => {
  test.each<[string, string[]]>([
    ['traffic ‸', ['foot', 'cars', 'trucks', 'turning']],
    ['traffic foot, ‸', ['cars', 'trucks', 'turning']],
    ['bed ‸', ['washed-sand', 'sharp-sand', 'grit-2-6', '1 in']],
    ['bed washed-sand ‸', ['1 in', 'deep', ', settles']],
    ['base ‸', ['pit-stone', 'crushed-stone', 'type-1', 'clause-804', 'stone-0-32', 'open-graded-stone', '6 in', 'as']],
    [
      'base cr‸ 6 in',
      ['pit-stone', 'crushed-stone', 'type-1', 'clause-804', 'stone-0-32', 'open-graded-stone', '6 in', 'as']
    ],
    ['base pit-stone 6‸', ['in', 'ft', 'yd', 'mm', 'm', 'cm', ', 6 in past the edging']],
    ['base pit-stone 6 in ‸', [', 6 in past the edging']],
    ['base pit-stone 6 in, ‸', ['6 in past the edging', 'deep']],
    ['base pit-stone 6 in, 6 in ‸', ['past the edging']],
    ['base as ‸', ['drive']],
    ['geotextile ‸', ['separation-cloth']],
    ['joints ‸', ['filled with']],
    ['joints filled with ‸', ['joint-sand', 'grit-2-6', 'kiln-dried-sand']],
    ['paving ‸', ['slab-16']],
    ['paving slab-16 ‸', ['in']],
    ['paving slab-16 in ‸', BONDS],
    ['paving slab-16 in running-bond, joints 1/8 in ‸', ['from']],
    ['border slab-16 ‸', ['in']],
    ['border slab-16 in ‸', ['soldier-course', 'sailor-course']],
    ['paving slab-16 in running-bond ‸', [', joints']],
    ['paving slab-16 in running-bond, jo‸', ['joints']],
    ['finish ‸', ['2 1/2 in', 'deep', 'level with', 'A', 'B', 'C', 'D']],
    ['finish 2 in ‸', ['below', 'above', 'along', 'at', ', falling', ', rising']],
    ['finish 2 in below ‸', ['door-sill']],
    ['finish level ‸', ['with']],
    ['outline ‸', ['A', 'B', 'C', 'D', 'rectangle', 'circle', 'walk from']],
    ['outline B ‸', ['to']],
    ['outline B to ‸', ['C', 'D', 'A']],
    ['outline A to B to C to ‸', ['D', 'A']],
    ['outline A to B to C, rounded 1 ft at ‸', ['A', 'B', 'C']],
    ['outline rectangle 12 x ‸', ['16 ft']],
    ['outline rectangle 12 ft x ‸', ['16 ft', 'deep']],
    ['outline rectangle 12 ‸', ['x', 'ft', 'in', 'yd', 'mm', 'm', 'cm']],
    ['outline rectangle 12 x 16 ft ‸', [', corner', ', centre', ', turned']],
    ['outline rectangle 12 x 16 ft, corner (0, 0), ‸', ['turned']],
    ['outline circle 3 ft across, ‸', ['centre']],
    ['outline rectangle 12 ft 6 ‸', ['x', 'in']],
    ['outline walk from (0, 0), ‸', ['right', 'up', 'left', 'down', 'back']]
  ])('%s', (line, labels) => {
    expect(offered(inArea(line))).toEqual(labels);
  });

  test.each<[string, string[]]>([
    ['soil-kind s {\n  drains ‸\n}', ['well', 'poorly']],
    ['soil-kind s {\n  frost-heave ‸\n}', ['likely', 'unlikely']],
    ['side-kind s {\n  holds ‸\n}', ['nothing', 'paving']],
    ['site {\n  soil ‸\n}', ['common-earth', 'clay', 'silt', 'sand', 'gravel']],
    ['site {\n  winters ‸\n}', ['freeze', 'mild']],
    ['job "A" {\n  rules britain\n  show ‸\n}', ['metric', 'feet-and-inches']],
    ['job "A" {\n  rules britain\n  currency ‸\n}', ['GBP', 'USD', 'CAD', 'EUR', 'AUD', 'NZD']],
    ['material m {\n  role base\n  compacted 140 ‸\n}', ['lb per cu ft', 't/m3', 'kg/m3']],
    ['material m {\n  role base\n  loose 1.7 ‸\n  lap 30 mm\n}', ['t/m3', 'kg/m3', 'lb per cu ft']],
    ['material m {\n  role base\n  compacted 140 lb ‸\n}', ['per']],
    ['unit u {\n  made ‸\n}', ['of']],
    ['unit u {\n  made of ‸\n}', ['concrete', 'clay']],
    ['area ‸', []],
    ['area patio ‸', ['{ … }']],
    ['let deep ‸', ['= 6 in']]
  ])('%s', (drawn, labels) => {
    expect(offered(drawn)).toEqual(labels);
  });

  test.each([
    'job "A" {\n  show ‸\n}',
    'job "A" { }\nsite {\n  winters ‸\n}',
    'job "A" { }\nsite {\n  soil clay, ‸\n}',
    'unit u {\n  size 1 x 1 x 1 m\n  made of ‸\n}',
    'material m {\n  role ‸\n}',
    'material m {\n  role base\n  grading ‸\n}',
    'soil-kind s {\n  swell 1 %\n  density 1 t/m3\n  drains ‸\n}',
    'soil-kind s {\n  swell 1 %\n  density 1 t/m3\n  frost-heave ‸\n}',
    'side-kind s {\n  ground ‸\n  holds paving\n}',
    'side-kind s {\n  ground open\n  holds ‸\n}',
    'job "A" { }\narea a {\n  outline circle 1 m across\n  traffic ‸\n}',
    'job "A" { }\narea a {\n  outline walk from (0, 0), ‸ 1 m, back\n}'
  ])('all the words that are known there, and no other: %s', drawn => {
    paving.setText('job.paving', drawn.replace('‸', 'nothing-known'));
    const { message } = drain(paving.evaluate('job.paving'))!.findings.find(({ id }) => id === 'unknown-word')!;
    const known = /Write one of: (.*)\.$/.exec(message)![1]!.split(', ');
    const choices = completionsIn(drawn).filter(({ kind }) => kind === 'choice');
    expect(choices.map(({ label }) => label).sort()).toEqual(known.sort());
  });

  test("values of one's own stand where their kind is wanted", () => {
    expect(offered(`${IMPERIAL}let more = ‸`)).toEqual(['6 in', 'deep', 'share']);
    expect(offered('let share = 3 %\nlet deep = 1 in\nsite {\n  soil clay, bearing ‸\n}')).toEqual(['3 %', 'share']);
  });

  test('a clause brings what usually goes with it', () => {
    expect(offer(inArea('paving slab-16 in running-bond ‸'), ', joints').snippet).toBe(', joints ${1:1/8 in}');
    expect(offer(inArea('outline ‸', METRIC), 'circle').snippet).toBe('circle ${1:3 m} across');
    expect(offer(inArea('outline A ‸'), 'to').snippet).toBe('to ${1|B,C,D|}');
    expect(offer(inArea('outline ‸'), 'walk from').text).toBe(
      'walk from (0, 0), right 12 ft, up 12 ft, left 12 ft, back'
    );
  });

  test('what is replaced is the word at the cursor; a comma stands close behind the word before', () => {
    const word = offer('area patio {\n  traffic fo‸ot\n}', 'cars').place;
    expect([word.line, word.column, word.endLine, word.endColumn]).toEqual([2, 11, 2, 15]);
    const comma = offer('area patio {\n  base crushed-stone 6 in  ‸\n}', ', 6 in past the edging').place;
    expect([comma.line, comma.column, comma.endColumn]).toEqual([2, 26, 28]);
    expect(offer(inArea('bed washed-sand 1‸'), 'in').text).toBe(' in');
  });

  test('whether something has to follow', () => {
    const wanted = (line: string): boolean => {
      const { text, project, offset } = look(inArea(line));
      return hasToGoOnAt(text, project, offset);
    };
    for (const line of ['traffic ‸', 'bed ‸', 'bed washed-sand ‸', 'bed washed-sand 1 ‸', 'finish 2 in ‸'])
      expect(wanted(line), line).toBe(true);
    for (const line of ['traffic foot ‸', 'bed washed-sand 1 in ‸', 'outline A to B ‸', '‸'])
      expect(wanted(line), line).toBe(false);
  });

  const RECTANGLE = 'outline rectangle 12 x 16 ft\n  ';
  const POINTS = 'outline A to B to C to D\n  ';
  const WALK = 'outline walk from (0, 0), right 12 ft, up 9 ft, left 12 ft, back\n  ';

  test.each([
    [
      RECTANGLE,
      'start ‸',
      ['whole units along', 'along', 'equal cuts', 'from', 'shifted', 'turned', 'carried on from']
    ],
    [RECTANGLE, 'start whole units along ‸', ['near', 'right', 'far', 'left']],
    [RECTANGLE, 'start whole units along near and ‸', ['right', 'far', 'left']],
    [RECTANGLE, 'start along near, from ‸', ['left', 'right']],
    [POINTS, 'start along B to C, from ‸', ['B', 'C']],
    [POINTS, 'start along ‸', ['A to B', 'B to C', 'C to D', 'D to A']],
    [POINTS, 'start along A to ‸', ['B', 'D']],
    [WALK, 'start along leg 1, from ‸', ['leg 4', 'leg 2', 'leg', 'legs']],
    [RECTANGLE, 'start carried on from ‸', ['old-walk', 'drive']],
    [RECTANGLE, 'border slab-16 in soldier-course ‸', ['along', 'all round']],
    [RECTANGLE, 'border slab-16 in soldier-course all round except ‸', ['near', 'right', 'far', 'left']],
    [POINTS, 'border slab-16 in soldier-course along A to B ‸', ['to', 'and', ', mitred', ', butted', ', joints']],
    [RECTANGLE, 'border slab-16 in soldier-course all round, mitred, ‸', ['joints']],
    [POINTS, 'band slab-16 in sailor-course across A to B ‸', ['at']],
    ['outline circle 3 m across\n  ', 'border slab-16 in soldier-course ‸', ['all round']]
  ])('%s%s', (outline, line, labels) => {
    expect(offered(inArea(outline + line))).toEqual(labels);
  });

  test('a border goes round what lies in its own area', () => {
    const text = `${inArea('border slab-16 in sailor-course round ‸')}box tap in patio { rectangle 1 x 1 ft }\nbox lid in drive { rectangle 1 x 1 ft }\n`;
    expect(offered(text)).toEqual(['tap']);
  });

  test('a statement of laying is written with a whole side', () => {
    expect(offer(inArea('paving slab-16 in running-bond, joints 1/8 in ‸'), 'from').text).toBe(
      'from 1/16 in to 3/16 in'
    );
    expect(offer(inArea('border slab-16 ‸'), 'in').text).toBe('in soldier-course all round');
    expect(offer(inArea(`${POINTS}‸`), 'start').text).toBe('start whole units along A to B');
    expect(offer(inArea(`${RECTANGLE}‸`), 'band').text).toBe('band slab-16 in soldier-course across near at 3 ft');
    expect(offer(inArea('outline circle 3 m across\n  ‸'), 'start').text).toBe('start turned 45 degrees');
    expect(offer(`${IMPERIAL}‸`, 'inset').text).toBe(
      'inset compass in drive {\n  circle 6 ft across, centre (6 ft, 3 ft)\n  paving slab-16 in running-bond, joints 1/8 in\n}'
    );
  });

  test.each([
    ['job "J" { keep ‸ }', ['4']],
    ['job "J" { keep 4 ‸ }', ['slab-16']],
    ['bond b { random-courses, ‸ }', ['turned', 'seed', 'joints-apart']],
    ['bond b { rings, ‸ }', ['turned']],
    ['bond b { as ‸ }', ['b', ...BONDS]],
    ['unit u { shape ‸ }', ['hexagon', 'rectangle']],
    ['existing e { joint-line at ‸ }', ['A', 'B', 'C', 'D']],
    ['inset i in ‸', ['drive']]
  ])('%s', (text, labels) => {
    const around = text.startsWith('job') ? IMPERIAL.replace(/^job.*\n/, '') : IMPERIAL;
    expect(offered(`${around}${text}\n`)).toEqual(labels);
  });
});

describe('A job written from what is offered', () => {
  /** Takes an offer at the cursor; the cursor then stands behind it. */
  const take = (drawn: string, label: string): string => {
    const { place, text } = offer(drawn, label);
    const lines = drawn.replace('‸', '').split('\n');
    const line = lines[place.line - 1]!;
    lines[place.line - 1] = `${line.slice(0, place.column - 1)}${text}‸${line.slice(place.endColumn - 1)}`;
    return lines.join('\n');
  };
  const typed = (drawn: string, keys: string): string => drawn.replace('‸', `${keys}‸`);
  const findings = (drawn: string) => {
    paving.setText('job.paving', drawn.replace('‸', ''));
    return drain(paving.evaluate('job.paving'))!;
  };

  test('statement by statement', () => {
    let spec = '‸';
    for (const word of ['job', 'site', 'unit', 'area']) spec = typed(take(spec, word), '\n\n');
    const { findings: found, numbers } = findings(spec);
    expect(found).toEqual([]);
    // 12 x 16 ft = 192 sq ft; 1 ft = 0.3048 m.
    expect(numbers!.quantities.areas[0]!.netArea).toBeCloseTo(192 * 0.3048 ** 2, 9);
  });

  test('word by word, with spaces, line breaks and braces typed', () => {
    const steps: readonly (readonly [string, string])[] = [
      ['job', '\n'],
      ['site', '\n'],
      ['unit', '\narea patio {\n  '],
      ['outline', '\n  traffic '],
      ['foot', '\n  finish '],
      ['2 1/2 in', ' '],
      ['below', '\n  paving '],
      ['slab-16', ' '],
      ['in', ' '],
      [', joints', '\n  bed '],
      ['washed-sand', ' '],
      ['1 in', '\n  base '],
      ['crushed-stone', ' 6 '],
      ['in', ', '],
      ['6 in past the edging', '\n  joints '],
      ['filled with', '\n  edges {\n    '],
      ['near', '\n    right, '],
      ['far', ', '],
      ['left', ' '],
      ['meets', ', '],
      ['edging', '\n  }\n}\n']
    ];
    const spec = steps.reduce((drawn, [label, keys]) => typed(take(drawn, label), keys), '‸');
    expect(spec).toContain('right, far, left meets house-wall, edging spiked-strip');
    expect(findings(spec.replace('left meets house-wall', 'left meets lawn')).findings).toEqual([]);
  });
});

describe('Sides', () => {
  test.each<[string, string, string[]]>([
    ['rectangle 12 x 16 ft', '‸', ['near', 'right', 'far', 'left', 'the rest', 'all round']],
    ['rectangle 12 x 16 ft', 'near, left meets lawn\n    ‸', ['right', 'far', 'the rest']],
    ['rectangle 12 x 16 ft', 'the rest meets lawn\n    near meets lawn\n    ‸', ['right', 'far', 'left']],
    ['rectangle 12 x 16 ft', 'ne‸ meets lawn', ['near', 'right', 'far', 'left', 'the rest', 'all round']],
    ['rectangle 12 x 16 ft', 'near, ‸', ['right', 'far', 'left']],
    ['rectangle 12 x 16 ft', 'near ‸', ['meets']],
    ['circle 3 m across', '‸', ['all round']],
    ['walk from (0, 0), right 6 ft, up 3 ft, back', 'leg 2 meets lawn\n    ‸', ['leg 1', 'leg 3', 'the rest']],
    [
      'walk from (0, 0), right 6 ft, up 3 ft, back',
      'leg 1 meets lawn\n    ‸',
      ['leg 2', 'leg 3', 'legs 2 to 3', 'the rest']
    ],
    ['walk from (0, 0), right 6 ft, up 3 ft, back', 'legs 1 to ‸', ['2', '3']],
    ['A to B to C to D', '‸', ['A to B', 'B to C', 'C to D', 'D to A', 'the rest', 'all round']],
    ['A to B to C to D', 'C to B to A meets lawn\n    ‸', ['C to D', 'D to A', 'the rest']],
    ['A to B to C to D', 'A ‸', ['to']],
    ['A to B to C to D', 'B to ‸', ['C', 'A']],
    ['A to B to C to D', 'B to C to ‸', ['D']],
    ['A to B to C to D', 'B to C ‸', ['to', 'meets']]
  ])('of %s: %s', (outline, lines, labels) => {
    expect(offered(inEdges(outline, lines))).toEqual(labels);
  });

  test('a side meets what is there, other areas, and kinds of sides; never its own area', () => {
    const all = offered(inEdges('rectangle 12 x 16 ft', 'near meets ‸'));
    expect(all.slice(0, 4)).toEqual(['old-walk', 'drive', 'house-wall', 'lawn']);
    expect(all).not.toContain('patio');
  });

  test('behind what it meets: flush, edging of its role, and when it is set', () => {
    expect(offered(inEdges('rectangle 12 x 16 ft', 'near meets lawn ‸'))).toEqual([
      ...[', flush', ', edging', ', concrete behind the last course']
    ]);
    expect(offered(inEdges('rectangle 12 x 16 ft', 'near meets lawn, edging ‸'))).toEqual([
      ...['garden-strip', 'spiked-strip']
    ]);
    expect(offered(inEdges('rectangle 12 x 16 ft', 'near meets lawn, edging garden-strip ‸'))).toEqual([
      ...['set before laying', 'set after laying', ', flush', ', standing']
    ]);
  });
});

describe('Files to use', () => {
  const paths = ['prices.paving', '../yard/stone.paving'];
  test.each(['use ‸', 'use "‸"', 'use "pr‸ices.paving"', 'use "../‸'])('%s', drawn => {
    expect(offered(drawn, paths)).toEqual(paths);
  });

  test('the quotes that are missing are written', () => {
    const written = (drawn: string): string => completionsIn(drawn, paths)[0]!.text;
    expect([written('use ‸'), written('use "‸"'), written('use "pr‸')]).toEqual([
      ...['"prices.paving"', 'prices.paving', 'prices.paving"']
    ]);
  });

  test('a file that is used already is not offered again', () => {
    expect(offered('use "prices.paving"\nuse "‸"', paths)).toEqual(['../yard/stone.paving']);
  });

  test('in other quotes no file is offered', () => {
    expect(offered('job "‸" { }', paths)).toEqual([]);
  });
});

describe('Prices, work and variants', () => {
  const PRICED = `${METRIC}material cloth { role geotextile }\ndrain channel { channel along A to B, 130 mm wide }\n`;
  const BESIDES = ['prices', 'tax', 'according-to'];

  test.each([
    ['slab-16', ['loose', 'piece', 'pack', 'pack-layer', 'pallet', 'box-of']],
    ['pit-stone', ['loose', 'pallet', 'bag', 'bulk-bag']],
    ['garden-strip', ['loose', 'piece', 'pack', 'pallet', 'roll', 'length', 'box-of']],
    ['cloth', ['loose', 'roll']],
    ['spikes', ['piece', 'pack', 'box-of']]
  ])('a price of %s offers the ways in which that is sold', (thing, ways) => {
    expect(offered(`${PRICED}price ${thing} {\n  ‸\n}`)).toEqual([...ways, ...BESIDES]);
  });

  test('a list for jobs that it does not know offers every way', () => {
    expect(offered('price cobble-mix {\n  ‸\n}')).toEqual(
      expect.arrayContaining(['loose', 'pack-layer', 'roll', 'mixed-pack', ...BESIDES])
    );
  });

  const inPrice = (thing: string, line: string): string[] => offered(`${PRICED}price ${thing} {\n  ${line}\n}`);

  test.each([
    ['slab-16', 'pack of 10 ‸', ['m2', 'sq ft', 'for']],
    ['slab-16', 'box-of 10 ‸', ['for']],
    ['slab-16', 'loose for 36 GBP per ‸', ['m2']],
    ['pit-stone', 'bulk-bag of 850 ‸', ['t', 'm3', 'kg', 'short ton', 'cu yd', 'lb', 'cu ft', 'for']],
    ['pit-stone', 'bulk-bag of 850 kg ‸', ['for']],
    ['pit-stone', 'loose for 52 GBP per m3, at least 1 ‸', ['m3', 'cu yd', 'cu ft', ', in steps of', ', from']],
    ['pit-stone', 'loose for 52 GBP per m3, from 8 m3 for 48 GBP per ‸', ['m3']],
    ['garden-strip', 'roll of 15 ‸', ['m', 'mm', 'ft', 'for']],
    ['cloth', 'roll of 4.5 ‸', ['x', 'm2', 'm', 'mm', 'sq ft', 'ft', 'for']],
    ['cloth', 'roll of 4.5 x 100 ‸', ['m', 'mm', 'ft', 'for']],
    ['cloth', 'roll of 450 m2 ‸', ['for']]
  ])('of %s it offers the measures and sides that fit: %s', (thing, line, wanted) => {
    expect(inPrice(thing, line)).toEqual(wanted);
  });

  test('of a way to sell it offers what can be said of that, once', () => {
    expect(inPrice('pit-stone', 'loose for 38 GBP per tonne ‸')).toEqual([', in steps of', ', at least', ', from']);
    expect(inPrice('slab-16', 'piece for 3 GBP ‸')).toEqual([', at least', ', from', ', weight']);
    expect(inPrice('slab-16', 'pallet of 90 for 300 GBP, deposit 15 GBP, from 4 for 280 GBP ‸')).toEqual([
      ...[', at least', ', from', ', weight']
    ]);
  });

  test('a mixed pack offers each unit once, and is offered where none is known yet', () => {
    expect(inPrice('our-mix', 'mixed-pack of 10 slab-16 and 5 ‸')).not.toContain('slab-16');
    expect(offered('price our-mix {\n  mixed-pack ‸\n}')).toEqual(['of']);
  });

  test.each(['slab-16', 'pit-stone', 'garden-strip', 'cloth', 'concrete', 'spikes'])(
    'each way to sell %s is offered whole, and so that it reads without a fault',
    thing => {
      const drawn = `${METRIC}material cloth { role geotextile }\nprice ${thing} {\n  ‸\n}`;
      const ways = completionsIn(drawn).filter(({ label }) => !BESIDES.includes(label));
      expect(ways.length).toBeGreaterThan(1);
      for (const { text } of ways) {
        paving.setText('job.paving', drawn.replace('‸', text));
        const { findings } = drain(paving.evaluate('job.paving'))!;
        expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
      }
    }
  );

  test('a supplier offers when its prices were told, tax and delivery', () => {
    expect(offered('supplier yard {\n  ‸\n}')).toEqual(['prices', 'tax', 'delivery']);
    expect(offered('supplier yard {\n  delivery 65 USD a load, ‸\n}').slice(0, 3)).toEqual([
      ...['load', 'least order', 'free from']
    ]);
  });

  const inJob = (line: string): string[] =>
    offered(PRICED.replace(' rules britain ', `\n  rules britain\n  ${line}\n`));

  test('words that begin statements too are offered behind those that they belong to', () => {
    expect(inJob('task "Soakaway" 6 h, after ‸').slice(0, 3)).toEqual(['dig', 'base', 'laying']);
    expect(inJob('task "Soakaway" 6 h, after ‸\n  task "Fence" 4 h')).toContain('"Fence"');
    expect(inJob('task "Soakaway" 6 h, after ‸')).not.toContain('"Soakaway"');
    expect(inJob('hire "Digger" 95 GBP a day, for ‸')).toContain('dig');
    expect(inJob('hire "Digger" 95 GBP a day, for base and ‸')).toContain('dig');
    expect(inJob('contingency 8 % of ‸')).toEqual(['materials', 'labour', 'costs']);
    expect(inJob('disposal container of 6 m3 ‸')).toContain(', 8 t for 290 GBP');
  });

  test('a variant offers what can be otherwise, and the things that there are', () => {
    expect(offered(`${PRICED}variant other {\n  ‸\n}`)).toEqual(['area', 'drain', 'price']);
    expect(offered(`${PRICED}variant other {\n  area ‸\n}`)).toEqual(['drive']);
    expect(offered(`${PRICED}variant other {\n  drain ‸\n}`)).toEqual(['channel']);
    expect(offered(`${PRICED}variant other {\n  drain channel ‸\n}`)).toEqual(['none', '{ … }']);
  });
});
