import { describe, expect, test } from 'vitest';
import { formatText } from '../../language/format/format.ts';
import { CANONICAL, UNTIDY } from './drawn.ts';
import { inkOf, parse, wordsOf } from './reading.ts';

const format = (text: string) => formatText(text, parse);

describe('The canonical form', () => {
  test('as drawn, with everything the language has', () => {
    expect(parse(UNTIDY).faults).toEqual([]);
    expect(format(UNTIDY)).toBe(CANONICAL);
    expect(format(CANONICAL)).toBe(CANONICAL);
    expect(wordsOf(CANONICAL)).toEqual(wordsOf(UNTIDY));
    expect(inkOf(CANONICAL)).toBe(inkOf(UNTIDY));
  });

  test('of a thing whose first line is broken off reads the same', () => {
    expect(format('pit tree\nin yard { circle 1 m across }\n')).toBe('pit tree\n    in yard { circle 1 m across }\n');
  });

  test('of a drawn bond has its squares above each other', () => {
    expect(format('bond b {\ncourse big big a\ncourse big  big b\n  course c dd dd\nturned 45 degrees\n}\n')).toBe(
      'bond b {\n  course big big a\n  course big big b\n  course c   dd  dd\n  turned 45 degrees\n}\n'
    );
  });

  test.each([
    // Quantities are kept as written; only the white space around them changes.
    ['let a=12\'   6 1/2"', 'let a = 12\' 6 1/2"\n'],
    ['let a = 12ft 7  7/8in', 'let a = 12 ft 7  7/8 in\n'],
    ['let a = 2-3/8 in', 'let a = 2-3/8 in\n'],
    ['let a = 11½ft', 'let a = 11½ ft\n'],
    ['let a = .5in', 'let a = .5 in\n'],
    ['let a = 2%', 'let a = 2 %\n'],
    ['let a = 45 °', 'let a = 45°\n'],
    ['let a = 6 ”', 'let a = 6”\n'],
    ['let a = 1:60', 'let a = 1:60\n'],
    ['let a = 140lb  per  cu ft', 'let a = 140 lb per cu ft\n'],
    ['let a = 2.2t/m3', 'let a = 2.2 t/m3\n'],
    ['let a = 3 sq  ft', 'let a = 3 sq  ft\n'],
    // With other white space between them these two numbers would be one.
    ['let a = 6  ½ in', 'let a = 6  ½ in\n'],
    ['let a = 6\u00a01/2 in', 'let a = 6\u00a01/2 in\n'],
    // Signs.
    ['let a = −3ft', 'let a = -3 ft\n'],
    ['let a = b−3ft', 'let a = b - 3 ft\n'],
    ['let a = - 3 ft', 'let a = -3 ft\n'],
    ['let a = 2*-( b+3 m )', 'let a = 2 * -(b + 3 m)\n'],
    ['let a = 7/b', 'let a = 7 / b\n'],
    ['let a = 7/8', 'let a = 7/8\n'],
    ['let a = (1+2)ft', 'let a = (1 + 2) ft\n'],
    ['let a = ( 1 + 2 ) "', 'let a = (1 + 2)"\n'],
    ['site { benchmark sill − 3in }', 'site { benchmark sill -3 in }\n'],
    ['unit a { size 20x14X 6 ×2 in }', 'unit a { size 20 x 14 X 6 × 2 in }\n'],
    // A " after a number is inches and opens no text.
    ['material a { width 6 ", according-to "6 " }', 'material a { width 6", according-to "6 " }\n']
  ])('%s', (text, formatted) => {
    expect(parse(text).faults).toEqual([]);
    expect(format(text)).toBe(formatted);
    expect(format(formatted)).toBe(formatted);
    expect(wordsOf(formatted)).toEqual(wordsOf(text));
    expect(inkOf(formatted)).toBe(inkOf(text));
  });
});

describe('Blocks', () => {
  test('one written on one line stays there up to 100 columns', () => {
    const spec = (name: string) => `material ${name} { role base, sub-base, compacted 2 t/m3 }\n`;
    const widest = 'x'.repeat(1 + 101 - spec('x').length);
    expect(spec(widest)).toHaveLength('\n'.length + 100);
    expect(format(spec(widest))).toBe(spec(widest));
    expect(format(spec(`${widest}x`))).toBe(
      `material ${widest}x {\n  role      base, sub-base\n  compacted 2 t/m3\n}\n`
    );
  });

  test('one that holds a comment, or was written on several lines, has a line for each statement', () => {
    const lines = 'unit a {\n  size   1 x 2 m\n  colour red\n}\n';
    expect(format('unit a { size 1 x 2 m,\ncolour red }')).toBe(lines);
    expect(format('unit a\n{\nsize 1 x 2 m\n,\n\tcolour red }')).toBe(lines);
    expect(format('unit a { size 1 x 2 m, colour red // so\n}')).toBe(
      'unit a {\n  size   1 x 2 m\n  colour red                          // so\n}\n'
    );
  });

  test('statements that no comma may part are never joined', () => {
    expect(format('area a { edges { the rest meets lawn } traffic foot }')).toBe(
      'area a {\n  edges   { the rest  meets lawn }\n  traffic foot\n}\n'
    );
    expect(format('area a { edges { A to B meets lawn,flush B to C meets lawn } }')).toBe(
      'area a {\n  edges {\n    A to B  meets lawn, flush\n    B to C  meets lawn\n  }\n}\n'
    );
  });

  test('an empty one is closed at once', () => {
    expect(format('existing a {\n\n}\nexisting bb\n{ }')).toBe('existing a  { }\nexisting bb { }\n');
    expect(format('existing a {\n\n// stays\n\n}')).toBe('existing a {\n  // stays\n}\n');
  });

  test('a comment before the brace keeps it on its own line', () => {
    const text = 'unit a                                // so\n{\n  size 1 x 2 m\n}\n';
    expect(format('unit a // so\n{size 1 x 2 m\n}')).toBe(text);
    expect(format(text)).toBe(text);
  });

  test('those of several lines stand apart, with the comments above them', () => {
    const text = 'let a = 1\n// of b\nunit b {\nsize 1 x 2 m\n}\nlet c = 1\nbond d { offset 0 }\nbond ee { offset 0 }';
    expect(format(text)).toBe(
      'let a = 1\n\n// of b\nunit b {\n  size 1 x 2 m\n}\n\nlet c = 1\nbond d  { offset 0 }\nbond ee { offset 0 }\n'
    );
  });
});

describe('Columns', () => {
  test('a very long name does not move the others', () => {
    const long = 'a-name-as-long-as-nobody-would-write-it';
    expect(format(`let ${long}=1\nlet b=2\nlet ccc=3`)).toBe(`let ${long} = 1\nlet b   = 2\nlet ccc = 3\n`);
  });

  test('a point called like a top-level word is still one, however far `meets` stands from it', () => {
    const far = 'a-point-of-thirty-letters-just';
    expect(far).toHaveLength(30);
    expect(format(`area a {\nedges {\nbox meets lawn\n${far} meets lawn\n}\n}`)).toBe(
      `area a {\n  edges {\n    ${'box'.padEnd(30)}  meets lawn\n    ${far}  meets lawn\n  }\n}\n`
    );
  });

  test('a blank line, another word or a block of several lines begins new columns', () => {
    expect(format('let a = 1\n\nlet bbb = 2\npoint c at (0, 0)\nlet dd = 1')).toBe(
      'let a = 1\n\nlet bbb = 2\npoint c at (0, 0)\nlet dd = 1\n'
    );
  });

  test('comments begin in one column, beyond it together, behind a very long line by themselves', () => {
    const wide = '"a text that is about as long as it may be for its comment.paving"';
    expect(
      format(
        `use "a"//1\nuse "b"  //  2\n\nuse "a text that is a bit longer.paving" // 3\nuse "c" // 4\nuse ${wide} // 5`
      )
    ).toBe(
      [
        'use "a"                               //1',
        'use "b"                               //  2',
        '',
        'use "a text that is a bit longer.paving"  // 3',
        'use "c"                                   // 4',
        `use ${wide}  // 5`,
        ''
      ].join('\n')
    );
  });
});

describe('Whole texts', () => {
  test('nothing in it', () => {
    expect(format('')).toBe('');
    expect(format(' \n\t\r\n')).toBe('');
  });

  test('comments alone', () => {
    expect(format('\n\n  // one  \n\t// two\n\n\n\n// three')).toBe('// one\n// two\n\n// three\n');
  });

  test('one line end at the end', () => {
    expect(format('use "a"')).toBe('use "a"\n');
    expect(format('use "a"\n\n\n')).toBe('use "a"\n');
  });

  test('the line ends of the file are kept, those of its first line if they differ', () => {
    expect(format(UNTIDY.replace(/\n/g, '\r\n'))).toBe(CANONICAL.replace(/\n/g, '\r\n'));
    expect(format('use "a"\r\nuse "b"\n')).toBe('use "a"\r\nuse "b"\r\n');
    expect(format('use "a"\nuse "b"\r\n')).toBe('use "a"\nuse "b"\n');
  });

  test('tabs, other white space and a byte order mark', () => {
    expect(format('\ufeffunit\ta\u00a0{\n\t\tsize\t1 x\t2 m\n\t}')).toBe('unit a {\n  size 1 x 2 m\n}\n');
  });

  test('5,000 lines, read no more than twice', () => {
    const copies = Math.ceil(5000 / UNTIDY.split('\n').length);
    const text = UNTIDY.repeat(copies);
    let read = 0;
    const counting: typeof parse = given => {
      read++;
      return parse(given);
    };
    const formatted = formatText(text, counting);
    expect(read).toBe(2);
    expect(formatted.split('\n').length).toBeGreaterThan(5000);
    expect(formatText(formatted, counting)).toBe(formatted);
    expect(read).toBe(3);
    expect(wordsOf(formatted)).toEqual(wordsOf(text));
    expect(inkOf(formatted)).toBe(inkOf(text));
  });
});

describe('Left untouched', () => {
  test.each([
    'use  "a',
    'unit a  { size 1 x 2 m',
    'unit a  { size 1 x }',
    'let  a = 3 inn',
    'let  a = 1,5 m',
    'lett  a = 3',
    'unit a  { } }',
    'let  a = 3 $'
  ])('a text with a fault: %s', text => {
    expect(parse(text).faults).not.toEqual([]);
    expect(format(text)).toBe(text);
  });

  test.each([
    // Read as a name for its place in the line, `finish` would begin a statement on a line of its own.
    ['a lone carriage return', 'area  a {\ntraffic foot, // so\rfinish\n}'],
    ['a comma too far from the word of a statement', `material  a { role base,${' '.repeat(90)}compacted }`],
    ['a name like a top-level word, far from what shows it', 'area  a { edges { unit // so\nmeets lawn } }']
  ])('a text whose words would change their roles: %s', (_, text) => {
    expect(format(text)).toBe(text);
  });
});
