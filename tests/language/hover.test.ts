// What is told of the place marked ‸.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hoverAt } from '../../language/editing/hover.ts';
import { drain, Paving } from '../../language/paving.ts';
import type { Hover } from '../../language/views/hover.ts';
import { inMemory } from './in-memory.ts';

const MARK = '‸';

const texts: Record<string, string> = {};
const paving = new Paving(inMemory(texts));

async function hoverIn(text: string, offset: number): Promise<Hover | undefined> {
  paving.setText('job.paving', text);
  await paving.load('job.paving');
  const evaluation = drain(paving.evaluate('job.paving'))!;
  return hoverAt(paving.look('job.paving')!, offset, { evaluation, file: 'job.paving' });
}

function hovered(marked: string, others: Readonly<Record<string, string>> = {}): Promise<Hover | undefined> {
  const offset = marked.indexOf(MARK);
  expect(offset, 'a mark').toBeGreaterThanOrEqual(0);
  Object.assign(texts, others);
  return hoverIn(marked.replace(MARK, ''), offset);
}

async function told(marked: string, others: Readonly<Record<string, string>> = {}): Promise<string> {
  return (await hovered(marked, others))?.markdown ?? '';
}

const PATIO = `job "Patio" { rules britain }
site { soil clay, benchmark sill, ground level with sill }
let gap = 3 mm
unit flag { size 495 x 495 x 50 mm }
area patio {
  outline rectangle 4 x 3 m
  traffic foot
  finish  level with sill
  paving  flag in stack-bond, joints 5 mm
  bed     sharp-sand 40 mm
  base    type-1 100 mm
  edges   { all round meets house-wall }
}
`;
const at = (before: string, marked: string): string => PATIO.replace(before, marked);

describe('Numbers under the pointer', () => {
  test('come first, in both systems, parted by a rule from help on the very word', async () => {
    const hover = (await hovered(at('base    type-1', 'ba‸se    type-1')))!;
    // 4 x 3 m by 100 mm is 1.2 m3: 42.378 cu ft, 1.57 cu yd.
    expect(hover.markdown).toMatch(/^\*\*base of patio: type-1\*\*/);
    expect(hover.markdown).toContain('| Compacted volume | 1.20 m3 | &emsp;1.57 cu yd |');
    expect(hover.markdown).toContain('| Thickness | 100 mm | &emsp;3 15/16 in |');
    expect(hover.markdown).toMatch(/\n\n---\n\nThe compacted stone under the bed/);
    expect(hover.place).toEqual({ file: 'job.paving', line: 11, column: 3, endLine: 11, endColumn: 7 });
  });

  test('counts have nothing in the other system', async () => {
    expect(await told(at('paving  flag', 'paving  fl‸ag'))).toContain('| Whole units | 48 |  |');
  });

  test('a broken area has none; its words still have help', async () => {
    const broken = PATIO.replace('4 x 3 m', '4 x');
    for (const [before, marked, help] of [
      ['base  ', '‸base  ', /^The compacted stone/],
      ['type-1', 'type‸-1', /^\*\*type-1\*\*, material, as shipped\n\nCrushed stone/],
      ['foot', 'foot‸', /^People on foot/],
      ['rectangle', '‸rectangle', /^A rectangle/],
      ['40 mm', '‸40 mm', /^\*\*40 mm\*\* is about 1 9\/16 in\.$/],
      ['meets', 'm‸eets', /^What stands at this side/],
      ['house-wall', '‸house-wall', /^\*\*house-wall\*\*, kind of side/]
    ] as const)
      expect(await told(broken.replace(before, marked))).toMatch(help);
  });

  test('nothing is told of nothing', async () => {
    expect(await hovered('job "T" { rules britain }\n‸\n')).toBeUndefined();
    expect(await hovered('‸')).toBeUndefined();
  });
});

describe('A word under the pointer', () => {
  test.each([
    ['unit u { made ‸of clay }', 'What the units are made of'],
    ['unit u { made of cl‸ay }', 'Fired clay bricks'],
    ['site { ‸soil clay }', 'The soil below the topsoil'],
    ['site { soil clay, poorly‸-drained }', 'Water stands in it'],
    ['area a { outline A to B bowed 3 in ‸in to C }', 'The arc bends into'],
    ['area a { outline A to B bowed 3 ‸in in to C }', '1 in is 25.4 mm'],
    ['area a { paving u ‸in b }', 'The bond that'],
    ['box b ‸in a { circle 1 m across }', 'The area that the box'],
    ['box b in a { ‸circle 1 m across }', 'A circle, with its place'],
    ['area a { edges { ‸left, right meets lawn } }', 'to the left'],
    ['area a { edges { left, r‸ight meets lawn } }', 'to the right'],
    ['area a { outline walk from (0, 0), ‸right 2 m }', 'To the right by so much'],
    ['area a { edges { leg ‸1 meets lawn } }', ''],
    ['material m { role ba‸se, bed }', 'right under the bed'],
    ['material m { concrete 3 x 1 in below, 1 in of it un‸der the paving }', 'lies under the paving']
  ])('%s: %s', async (marked, help) => {
    const markdown = await told(marked);
    if (help === '') expect(markdown).toBe('');
    else expect(markdown).toContain(help);
  });

  test('is the name of a point before it is the name of a side', async () => {
    const marked = 'point left at (2, 3) m\npoint right at (0, 0)\narea a { edges { le‸ft to right meets lawn } }';
    expect(await told(marked)).toMatch(/^\*\*left\*\*, point, job\.paving, line 1/);
  });
});

describe('A quantity under the pointer', () => {
  test.each([
    ['let a = ‸6 1/2 in', '6 1/2 in** is about 165 mm'],
    ['let a = 12\' ‸6 1/2"', `12 ' 6 1/2 "** is about 3.823 m`],
    ['let a = 1 ‸ft', '1 ft** is about 305 mm'],
    ['let a = ‸2.54 m', '2.54 m** is 8 ft 4 in'],
    ['let a = ‸150 mm', '150 mm** is about 5 7/8 in'],
    ['let a = ‸2 mm', '2 mm** is about 5/64 in'],
    ['let a = ‸140 lb per cu ft', '140 lb per cu ft** is about 2243 kg/m3'],
    ['let a = ‸2.2 t/m3', '2.2 t/m3** is about 137.3 lb per cu ft'],
    ['let a = ‸2 short ton', '2 short ton** is about 1.81 t'],
    ['let a = ‸20 sq ft', '20 sq ft** is about 1.86 m2'],
    ['let a = ‸2 cu yd', '2 cu yd** is about 1.529 m3'],
    ['let a = ‸42 lb', '42 lb** is about 19.1 kg'],
    ['unit u { size ‸200 x 100 x 60 mm }', '200 mm** is about 7 7/8 in'],
    ['unit u { size 15 7/8 x ‸15 7/8 x 2 in }', '15 7/8 in** is about 403 mm'],
    ['point A at (‸2, 3) m', '2 m** is about 6 ft 6 3/4 in'],
    ['point A at (2, ‸3) m', '3 m** is about 9 ft 10 1/8 in'],
    ['point A at (-‸2, 3 m)', '2 m** is about 6 ft 6 3/4 in'],
    ['point A at (18 ft 6 in, ‸0)', ''],
    ['let a = ‸43 %', ''],
    ['let a = ‸12 degrees', ''],
    ['let a = ‸6 m 3 in', ''],
    ['let a = ‸1,5 m', '']
  ])('%s', async (marked, value) => {
    const markdown = await told(marked);
    if (value === '') expect(markdown).not.toContain('** is');
    else expect(markdown).toContain(`**${value}`);
  });

  test('a name for a value tells its declaration and its value in both systems', async () => {
    const marked = 'let one = 2 in\nlet two = one + 4 in\nlet three = t‸wo';
    expect(await told(marked)).toBe(
      '**two**, value, job.paving, line 2\n\n```paving\nlet two = one + 4 in\n```\n\n6 in, about 152 mm.'
    );
    expect(await told('let o‸ne = 30 mm')).toBe('30 mm, about 1 3/16 in.');
    expect(await told('let a = b\nlet b = a\nlet c = a‸')).toBe(
      '**a**, value, job.paving, line 1\n\n```paving\nlet a = b\n```'
    );
  });
});

describe('A thing under the pointer', () => {
  test("of one's own: its declaration as written with its notes, where it stands, and the other system", async () => {
    const prices = `unit other { size 1 x 1 x 1 ft }

// Measured: ten in a row
// are 158 3/4 in.
unit slab {
    size   15 7/8 x 15 7/8 x 2 in   // sold as 16
    weight 42 lb
  }
`;
    const marked = 'use "prices.paving"\narea a { paving sl‸ab in stack-bond }';
    expect(await told(marked, { 'prices.paving': prices })).toBe(
      `**slab**, unit, prices.paving, line 5

Measured: ten in a row are 158 3/4 in.

\`\`\`paving
unit slab {
    size   15 7/8 x 15 7/8 x 2 in   // sold as 16
    weight 42 lb
  }
\`\`\`

In the other system, rounded: size 403 mm x 403 mm x 51 mm; weight 19.1 kg.`
    );
  });

  test('shipped: what the trade knows, its figures, and by whose word', async () => {
    const clay = await told(at('soil clay', 'soil cl‸ay'));
    expect(clay).toMatch(/^\*\*clay\*\*, kind of soil, as shipped\n\nSticky when wet/);
    expect(clay).toContain('rolls into a thin worm');
    expect(clay).toContain('fill it again');
    expect(clay).toContain('In the other system, rounded: density 1602 kg/m3.');
    expect(clay).toMatch(/_Source: Swell: US Army FM 5-434/);
    expect(clay).not.toContain('according-to');
  });

  test('a long one is cut off; a benchmark of the site stands by itself', async () => {
    const long = `area b {\n  outline rectangle 1 x 1 m\n${'  traffic foot\n'.repeat(20)}}\n`;
    const cut = await told(`${long}area a { edges { all round meets ‸b } }`);
    expect(cut.split('\n').filter(line => line === '  traffic foot')).toHaveLength(8);
    expect(cut).toContain('…');
    expect(await told(at('level with sill\n  paving', 'level with si‸ll\n  paving'))).toContain(
      '```paving\nbenchmark sill\n```'
    );
  });

  test('nothing that a user wrote is read as markup, or ends its block', async () => {
    const hostile =
      '// <img src=x> *c* [d](e) ```\nunit u { // ````\n  size 1 x 1 x 1 ft\n}\narea a { paving ‸u in stack-bond }';
    const markdown = await told(hostile, {});
    expect(markdown).toContain('\\[d\\]\\(e\\) \\`\\`\\`');
    expect(markdown).toContain('&lt;img src=x');
    expect(markdown).toContain('`````paving\nunit u { // ````\n  size 1 x 1 x 1 ft\n}\n`````');
  });
});

describe('A bond under the pointer', () => {
  test('is drawn from its offset, the first course at the bottom', async () => {
    const third = await told('bond third { offset 1/3 }\narea a { paving u in ‸third }');
    expect(third).toContain(`\`\`\`
┌───────────┬───────────┬───────────┐
│           │           │           │
├───────┬───┴───────┬───┴───────┬───┤
│       │           │           │   │
├───┬───┴───────┬───┴───────┬───┴───┤
│   │           │           │       │
├───┴───────┬───┴───────┬───┴───────┤
│           │           │           │
└───────────┴───────────┴───────────┘
\`\`\``);
    const stack = await told('area a { paving u in stack-bond‸ }');
    expect(stack).toContain('├───────────┼───────────┼───────────┤');
    // A shift of a hundredth is still seen.
    expect(await told('bond hair { offset 0.01 }\narea a { paving u in ‸hair }')).toContain('├─┬');
    expect(await told('bond none { }\narea a { paving u in ‸none }')).not.toContain('┌');
  });

  test('is drawn from its courses, with what reaches over the edges of the drawing', async () => {
    expect(await told('area a { paving u in herringbone-90‸ }')).toContain(`\`\`\`
┌───┬───────┬───┬───┬───────┬───┬───┬───┐
│   │       │   │   │       │   │   │   │
├───┴───┬───┤   ├───┴───┬───┤   ├───┴───┤
│       │   │   │       │   │   │       │
├───┬───┤   ├───┴───┬───┤   ├───┴───┬───┤
│   │   │   │       │   │   │       │   │
├───┤   ├───┴───┬───┤   ├───┴───┬───┤   │
│   │   │       │   │   │       │   │   │
│   ├───┴───┬───┤   ├───┴───┬───┤   ├───┤
│   │       │   │   │       │   │   │   │
├───┴───┬───┤   ├───┴───┬───┤   ├───┴───┤
│       │   │   │       │   │   │       │
└───────┴───┴───┴───────┴───┴───┴───────┘
\`\`\``);
    const slant = await told('bond slant { as herringbone-45, turned 10 degrees }\narea a { paving u in ‸slant }');
    expect(slant).toContain('┌───┬───────┬───┬───┬');
    expect(slant).toContain('Turned by 45 degrees + 10 degrees; drawn without that.');
  });

  test.each([
    ['hexagons', 'Hexagons, each next course shifted by half a unit.'],
    ['rings', 'Rings round the middle, each with as many units as go round it.'],
    ['random-courses', 'Courses of units in an order that was drawn once, and stays.']
  ])('that no drawing can say is told in words: %s', async (bond, words) => {
    const markdown = await told(`area a { paving u in ${bond}‸ }`);
    expect(markdown).toContain(words);
    expect(markdown).not.toContain('┌');
  });
});

test('whatever is typed, at whatever place, an answer comes', async () => {
  const pieces = [
    ...PATIO.split(/(?<=\s)|(?=\s)/),
    '{',
    '}',
    ',',
    '(',
    ')',
    '"',
    '1/0',
    '-',
    'x',
    'per',
    'point A at (2,',
    '½'
  ];
  const texts = fc.array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 60 }).map(all => all.join(' '));
  await fc.assert(
    fc.asyncProperty(texts, fc.nat(400), async (text, offset) => {
      const hover = await hoverIn(text, Math.min(offset, text.length));
      if (hover !== undefined) expect(hover.markdown.trim()).not.toBe('');
    }),
    { seed: 20_260_425, numRuns: 400 }
  );
});
