// What is offered at a place, and what the text reads then. ‸ is the cursor, or stands around what is selected.
import { describe, expect, test } from 'vitest';
import { hoverAt } from '../../language/editing/hover.ts';
import { rewritesAt } from '../../language/editing/rewrites/rewrites-at.ts';
import { Paving } from '../../language/paving.ts';
import { withCursor } from '../cursor.ts';
import { inMemory } from './in-memory.ts';
import { offered } from './rewriting.ts';

const HEAD = `job "Yard" { rules north-america }
site { soil sand, winters freeze, benchmark step, ground level with step }
`;

/** A job with an area of which some lines are given. */
const yard = (outline: string, edges = 'the rest  meets house-wall', more = ''): string => `${HEAD}${more}
area yard {
  outline ${outline}
  traffic foot
  finish  level with step
  base    crushed-stone 8 in
  edges {
    ${edges}
  }
}
`;

const titles = async (drawn: string): Promise<string[]> => (await offered(drawn)).map(({ title }) => title);

/** The lines that are new, with the cursor where a name was chosen. */
async function rewritten(drawn: string, title: string): Promise<string[]> {
  const all = await offered(drawn);
  const found = all.find(each => each.title === title);
  if (found === undefined) throw new Error(`not offered; but: ${all.map(each => each.title).join('; ')}`);
  const lines = found.text.split('\n');
  if (found.cursor !== undefined) {
    const { line, column } = found.cursor;
    lines[line - 1] = `${lines[line - 1]!.slice(0, column - 1)}‸${lines[line - 1]!.slice(column - 1)}`;
  }
  const before = withCursor(drawn).text.split('\n');
  return lines.filter(line => !before.includes(line) && line !== '');
}

describe('in the other system', () => {
  test.each([
    ['rectangle 12‸ x 16 ft', 'Write 3.658 x 4.877 m, rounded by up to 0.4 mm', 'rectangle 3.658 x 4.877 m'],
    [
      'rectangle 4.8‸0 x 5 m',
      'Write 15 ft 9 in x 16 ft 4 7/8 in, rounded by up to 0.7 mm',
      'rectangle 15 ft 9 in x 16 ft 4 7/8 in'
    ],
    ['rectangle 914.4 x 609.6 ‸mm', 'Write 36 x 24 in', 'rectangle 36 x 24 in'],
    ['rectangle 3.048 x 6.096 m‸', 'Write 10 x 20 ft', 'rectangle 10 x 20 ft'],
    [
      'rectangle 12 ft 6 1/2 in x ‸16 ft',
      'Write 3.823 x 4.877 m, rounded by up to 0.3 mm',
      'rectangle 3.823 x 4.877 m'
    ],
    [
      'rectangle 4 x 3 m, corner (0, ‸2.5) m',
      'Write (0, 8 ft 2 7/16 in), rounded by 0.3 mm',
      'rectangle 4 x 3 m, corner (0, 8 ft 2 7/16 in)'
    ],
    [
      'rectangle 4 x 3 m, corner (-2‸ ft, 3 ft)',
      'Write (-610, 914) mm, rounded by up to 0.4 mm',
      'rectangle 4 x 3 m, corner (-610, 914) mm'
    ],
    [
      'rectangle (2 * 2.20 + 0.10)‸ m x 3 m',
      'Write 14 ft 9 3/16 in x 9 ft 10 1/8 in, rounded by up to 0.6 mm',
      'rectangle 14 ft 9 3/16 in x 9 ft 10 1/8 in'
    ],
    [
      'walk from (0, 0), right 2 m + 1.2‸5 m, up 3 m, left 3.25 m, down 3 m',
      'Write 4 ft 1 3/16 in, rounded by 0.6 mm',
      undefined
    ]
  ])('outline %s', async (outline, title, after) => {
    const drawn = yard(outline);
    if (after === undefined) expect(await titles(drawn)).not.toContain(title);
    else expect(await rewritten(drawn, title)).toEqual([`  outline ${after}`]);
  });

  test.each([
    ['2 mm', '5/64 in'],
    ['1/8 in', '3.2 mm'],
    ['3/8 in', '9.5 mm'],
    ['1/2 in', '13 mm'],
    ['150 mm', '5 7/8 in'],
    ['3 ft', '914 mm'],
    ['3 ft 6 in', '1.067 m'],
    ['990 mm', '39 in'],
    ['1.1 m', '3 ft 7 5/16 in']
  ])('%s is written as what pointing at it tells: %s', (written, other) => {
    const text = `let a = ${written}\n`;
    const paving = new Paving(inMemory({}));
    paving.setText('job.paving', text);
    const look = paving.look('job.paving')!;
    const at = text.indexOf(written);
    expect(hoverAt(look, at)?.markdown).toContain(` is about ${other}.`);
    expect(rewritesAt(look, undefined, at, at).map(({ title }) => title.replace(/, .*/, ''))).toContain(
      `Write ${other}`
    );
  });

  test('rates, densities and shares stay', async () => {
    const stone = (compacted: string): string =>
      yard('rectangle 4 x 3 m', undefined, `material crushed-stone { role base, compacted ${compacted} }\n`);
    expect(await titles(stone('140 l‸b per cu ft'))).toEqual(['Name 140 lb per cu ft with let']);
    expect(await titles(stone('2.2 t‸/m3'))).toEqual(['Name 2.2 t/m3 with let']);
  });

  test('a name in a sum keeps its place, and in brackets with a measure nothing is offered', async () => {
    const lets = 'let wide = 3 m\nlet twice = 2\n';
    expect(
      await rewritten(
        yard('rectangle wide + 1.5‸ m x 3 m', undefined, lets.slice(0, 15)),
        'Write wide + 4 ft 11 1/16 in x 9 ft 10 1/8 in, rounded by up to 0.4 mm'
      )
    ).toEqual(['  outline rectangle wide + 4 ft 11 1/16 in x 9 ft 10 1/8 in']);
    const bracketed = await titles(yard('rectangle (twice * 2)‸ m x 3 m', undefined, 'let twice = 2\n'));
    expect(bracketed.filter(title => /^Write \d/.test(title))).toEqual([]);
  });

  test('what is selected, whole lists only', async () => {
    const drawn = yard('rectangle 12 x 16 ft').replace(
      'base    crushed-stone 8 in',
      'base    crushed-stone ‸8 in, 6 in past‸ the edging'
    );
    expect(await rewritten(drawn, 'Write what is selected in metres and millimetres, rounded by up to 0.4 mm')).toEqual(
      ['  base    crushed-stone 203 mm, 152 mm past the edging']
    );
  });

  test('the whole file, from the title or from show, where nothing new is wrong then', async () => {
    const title = 'Write the whole file in metres and millimetres, rounded by up to 0.4 mm';
    const all = [
      'job "Yard" { rules north-america, show metric }',
      '  outline rectangle 3.658 x 4.877 m',
      '  base    crushed-stone 203 mm'
    ];
    expect(await rewritten(yard('rectangle 12 x 16 ft').replace('"Yard"', '"Ya‸rd"'), title)).toEqual(all);
    const shown = yard('rectangle 12 x 16 ft').replace(
      'rules north-america',
      'rules north-america, show feet-and‸-inches'
    );
    expect(await rewritten(shown, title)).toEqual(all);
    // Six inches are usual, or 150 mm: of a base of 150 mm the nearest sixteenth would be told as thinner.
    expect(await titles(shown.replace('feet-and‸-inches', 'met‸ric').replace('8 in', '150 mm'))).toEqual([]);
  });
});

describe('a value with a name', () => {
  test.each([
    [
      'rectangle 1‸2 x 16 ft',
      'Name 12 ft with let',
      ['let ‸side-length = 12 ft', '  outline rectangle side-length x 16 ft']
    ],
    [
      'rectangle 12 x 16 f‸t',
      'Name 16 ft with let',
      ['let ‸side-depth = 16 ft', '  outline rectangle 12 ft x side-depth']
    ],
    [
      'rectangle ‸2 ft + 3 ft‸ x 16 ft',
      'Name 2 ft + 3 ft with let',
      ['let ‸side-length = 2 ft + 3 ft', '  outline rectangle side-length x 16 ft']
    ],
    ['rectangle (2 * ‸2.2‸0) m x 16 ft', 'Name 2.20 with let', undefined],
    [
      'rectangle (2 * ‸2.20‸) m x 16 ft',
      'Name 2.20 with let',
      ['let ‸value = 2.20', '  outline rectangle (2 * value) m x 16 ft']
    ],
    [
      'rectangle ‸2 * 2‸ x 3 m',
      'Name (2 * 2) m with let',
      ['let ‸side-length = (2 * 2) m', '  outline rectangle side-length x 3 m']
    ],
    [
      'rectangle 4 x 4 m, corner (2, ‸3 m)',
      'Name 3 m with let',
      ['let ‸up-by = 3 m', '  outline rectangle 4 x 4 m, corner (2 m, up-by)']
    ],
    [
      'rectangle 4 x 4 m, corner (‸2, 3) m',
      'Name 2 m with let',
      ['let ‸right-by = 2 m', '  outline rectangle 4 x 4 m, corner (right-by, 3) m']
    ],
    [
      'rectangle ‸16 ft x 16 ft',
      'Name 16 ft with let, here and in one other place that says the same',
      ['let ‸side-length = 16 ft', '  outline rectangle side-length x side-length']
    ]
  ])('outline %s', async (outline, title, after) => {
    const drawn = yard(outline);
    if (after === undefined) expect(await titles(drawn)).not.toContain(title);
    else expect(await rewritten(drawn, title)).toEqual(after);
  });

  test('stands before the comment of its block, under a name that is free', async () => {
    const drawn = yard('rectangle ‸12 ft x side-length', undefined, 'let side-length = 9 ft\n').replace(
      '\narea',
      '\n// Where we sit.\narea'
    );
    const [found] = (await offered(drawn)).filter(({ kind }) => kind === 'extract');
    expect(found!.text).toContain(
      'let side-length = 9 ft\n\nlet side-length-2 = 12 ft\n\n// Where we sit.\narea yard {'
    );
  });

  test.each([
    [
      'rectangle de‸ep x 16 ft',
      'let deep = 12 ft - 2 ft\n',
      'Write 12 ft - 2 ft in the one place that says deep, and take the let out',
      '(12 ft - 2 ft) x 16 ft'
    ],
    [
      'rectangle 2 * de‸ep x 16 ft',
      'let deep = 4 ft + 1 ft\n',
      'Write 4 ft + 1 ft in the one place that says deep, and take the let out',
      '2 * (4 ft + 1 ft) x 16 ft'
    ],
    [
      'rectangle deep x 16 ft',
      'let de‸ep = 4 ft\n',
      'Write 4 ft in the one place that says deep, and take the let out',
      '4 ft x 16 ft'
    ],
    [
      'rectangle (n‸ * 2.2) m x 16 ft',
      'let n = 1 + 1\n',
      'Write 1 + 1 in the one place that says n, and take the let out',
      '((1 + 1) * 2.2) m x 16 ft'
    ]
  ])('goes again: %s', async (outline, lets, title, after) => {
    expect(await rewritten(yard(outline, undefined, lets), title)).toEqual([`  outline rectangle ${after}`]);
  });

  test('is written in one place, and the comment of a let stays when it goes', async () => {
    const lets = 'let deep = 4 m                        // as the neighbour wished\n';
    const drawn = yard('rectangle d‸eep x deep', undefined, lets);
    expect(await rewritten(drawn, 'Write 4 m here')).toEqual(['  outline rectangle 4 m x deep']);
    expect(await rewritten(drawn, 'Write 4 m in both places that say deep, and take the let out')).toEqual([
      '// as the neighbour wished',
      '  outline rectangle 4 m x 4 m'
    ]);
  });

  test('leaves no hole behind', async () => {
    const drawn = yard('rectangle deep x 3 m', undefined, '\nlet d‸eep = 4 m\n');
    const [found] = (await offered(drawn)).filter(({ kind }) => kind === 'inline');
    expect(found!.text).toBe(yard('rectangle 4 m x 3 m'));
  });
});

describe('a rectangle as points', () => {
  test.each([
    ['rect‸angle 4 x 3 m', ['(0, 0)', '(4, 0) m', '(4, 3) m', '(0, 3) m']],
    [
      'rect‸angle 12 ft 6 in x 10 ft, corner (-2 ft, 1 ft 3 in)',
      ['(-2 ft, 1 ft 3 in)', '(10 ft 6 in, 1 ft 3 in)', '(10 ft 6 in, 11 ft 3 in)', '(-2 ft, 11 ft 3 in)']
    ],
    ['rect‸angle 4 x 3 m, centre (2, 2) m', ['(0, 0.5) m', '(4, 0.5) m', '(4, 3.5) m', '(0, 3.5) m']],
    ['rect‸angle 4 x 3 m, turned 90 degrees', ['(3.5, -0.5) m', '(3.5, 3.5) m', '(0.5, 3.5) m', '(0.5, -0.5) m']]
  ])('%s', async (outline, places) => {
    const title = `Write the rectangle as four points${outline.includes('turned') ? ', to 0.01 mm' : ''}`;
    expect(await rewritten(yard(outline), title)).toEqual([
      ...places.map((place, index) => `point P${index + 1} at ${place}`),
      '  outline P1 to P2 to P3 to P4'
    ]);
  });

  test('keeps the names of its size', async () => {
    const lets = 'let wide = 4 m\nlet deep = 3 m\n';
    expect(
      await rewritten(
        yard('rect‸angle wide x deep, centre (wide, 1 m)', undefined, lets),
        'Write the rectangle as four points'
      )
    ).toEqual([
      'point P1 at (wide - wide / 2, 1 m - deep / 2)',
      'point P2 at (wide + wide / 2, 1 m - deep / 2)',
      'point P3 at (wide + wide / 2, 1 m + deep / 2)',
      'point P4 at (wide - wide / 2, 1 m + deep / 2)',
      '  outline P1 to P2 to P3 to P4'
    ]);
    const turned = await titles(yard('rect‸angle wide x deep, turned 5 degrees', undefined, lets));
    expect(turned.filter(title => title.includes('points'))).toEqual([]);
  });

  test('its sides are said by their points', async () => {
    const edges =
      'left, near  meets house-wall\n    right       meets road\n    the rest    meets lawn, edging spiked-strip';
    expect((await rewritten(yard('rect‸angle 4 x 3 m', edges), 'Write the rectangle as four points')).slice(4)).toEqual(
      [
        '  outline P1 to P2 to P3 to P4',
        '    P4 to P1 to P2  meets house-wall',
        '    P2 to P3        meets road',
        '    the rest        meets lawn, edging spiked-strip'
      ]
    );
    const apart = 'left, right  meets house-wall\n    near, far    meets road';
    expect((await rewritten(yard('rect‸angle 4 x 3 m', apart), 'Write the rectangle as four points')).slice(5)).toEqual(
      [
        '    P2 to P3  meets house-wall',
        '    P4 to P1  meets house-wall',
        '    P1 to P2  meets road',
        '    P3 to P4  meets road'
      ]
    );
  });
});

describe('a material that ships, or is nowhere declared', () => {
  const copy = (name: string): string[] => [
    "// Figures of crushed-stone as it ships: put your supplier's in their place.",
    `material ${name} {`,
    '  role         base, sub-base',
    '  compacted    140 lb per cu ft',
    '  loose        112 lb per cu ft',
    '  according-to "Dense-graded base, 135 to 145 lb per cu ft compacted and 109 to 118 loose: a state highway manual, read second-hand."'
  ];

  test('is declared before its area', async () => {
    const drawn = yard('rectangle 4 x 3 m').replace('crushed', 'cru‸shed');
    expect(await rewritten(drawn, "Declare crushed-stone here, to put in your supplier's figures")).toEqual(
      copy('crushed-stone')
    );
  });

  test('is declared after the others, for what it is wanted', async () => {
    const drawn = `${yard('rectangle 4 x 3 m').replace('crushed-stone', 'pit-‸stone')}\nmaterial oak { role edging, width 25 mm } // last\n`;
    const title = 'Declare pit-stone here, with the figures of crushed-stone to begin with';
    expect(await rewritten(drawn, title)).toEqual(copy('pit-stone'));
    const found = (await offered(drawn)).find(each => each.title === title)!;
    expect(found.text).toContain('// last\n\n// Figures of');
    const edging = yard('rectangle 4 x 3 m', 'the rest meets lawn, edging str‸ips');
    expect(await titles(edging)).toEqual(['Declare strips here, with the figures of spiked-strip to begin with']);
  });

  test('one of its own is left alone', async () => {
    const own = 'material crushed-stone { role base }\n';
    expect(await titles(yard('rectangle 4 x 3 m', undefined, own).replace('e    crushed', 'e    cru‸shed'))).toEqual(
      []
    );
  });
});

describe('nothing is offered', () => {
  test.each([
    ['in a comment', yard('rectangle 4 x 3 m // 12 ‸ft')],
    ['in a broken block', yard('rectangle 4 x 3‸ m').replace('traffic foot', 'trafic foot')],
    ['in an empty text', '‸']
  ])('%s', async (_, drawn) => {
    expect(await titles(drawn)).toEqual([]);
  });
});
