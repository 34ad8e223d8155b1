// What an editor asks of the formatter: changes, of a text that may be broken, of a selection, and while typing.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatText } from '../../language/format/format.ts';
import { indentEdits } from '../../language/format/indent.ts';
import { formatEdits, formatEditsIn } from '../../language/format/parts.ts';
import { applied } from '../../language/syntax/text-edit.ts';
import { withCursor } from '../cursor.ts';
import { UNTIDY } from './drawn.ts';
import { inkOf, parse, specsUnder, wordsOf } from './reading.ts';

const format = (text: string): string => applied(text, formatEdits(parse(text), parse));

const texts = [{ name: 'untidy', text: UNTIDY }, ...specsUnder('samples'), ...specsUnder('language/library')];

describe('Changes instead of a new text', () => {
  test.each(texts)('make the canonical form of $name, and none of it any more', ({ text }) => {
    expect(format(text)).toBe(formatText(text, parse));
    expect(formatEdits(parse(format(text)), parse)).toEqual([]);
  });

  test('touch white space alone', () => {
    const edits = formatEdits(parse(UNTIDY), parse);
    expect(edits.length).toBeGreaterThan(50);
    const touched = edits.map(({ start, end }) => UNTIDY.slice(start, end)).join('');
    // A comma that parted two statements, and the typographic minus, are all that goes.
    expect(touched.replace(/[\s,−]/g, '')).toBe('');
  });

  test('keep the line ends of a text', () => {
    const text = 'unit   a { size 1 x 2 m,\r\ncolour red }\r\n';
    expect(format(text)).toBe('unit a {\r\n  size   1 x 2 m\r\n  colour red\r\n}\r\n');
  });
});

describe('A text that is broken in one part', () => {
  test('is put in order in the others, with its broken part as it stands', () => {
    expect(
      format(`point  A at (0,  0)
// the yard

area   yard {
   outline  rectangle 3 x
  traffic   foot
}

// the path
area path { outline   rectangle 1 x 2 m
traffic foot }
`)
    ).toBe(`point A at (0, 0)
// the yard

area   yard {
   outline  rectangle 3 x
  traffic   foot
}

// the path
area path {
  outline rectangle 1 x 2 m
  traffic foot
}
`);
  });

  test('keeps the column that others share with a line that is being typed', () => {
    const text = 'point A       at (0, 0)\npoint corner-x at (3 m,\npoint B       at (0, 3 m)\n\nlet  a=1\n';
    expect(format(text)).toBe(text.replace('let  a=1', 'let a = 1'));
  });

  test.each(texts)('$name, whatever is taken out of it', ({ text }) => {
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.integer({ min: 1, max: 12 }), (at, length) => {
        const cut = text.slice(0, at) + text.slice(at + length);
        const done = format(cut);
        expect(inkOf(done)).toBe(inkOf(cut));
        expect(format(done)).toBe(done);
      }),
      { seed: 7, numRuns: 12 }
    );
  });
});

describe('A selection', () => {
  test('moves nothing outside its lines', () => {
    const text = 'unit  a { size 1 x 2 m }\nlet  b=1\nlet   cc=2\n';
    const start = text.indexOf('let  b');
    const end = text.indexOf('\nlet   cc');
    expect(applied(text, formatEditsIn(parse(text), start, end, parse))).toBe(
      'unit  a { size 1 x 2 m }\nlet b  = 1\nlet   cc=2\n'
    );
  });

  test.each(texts)('of any lines of $name keeps every word', ({ text }) => {
    const lines = text.split('\n');
    const offsets = lines.map((_, at) => lines.slice(0, at).join('\n').length + (at > 0 ? 1 : 0));
    fc.assert(
      fc.property(fc.nat(lines.length - 1), fc.nat(lines.length - 1), (one, other) => {
        const [first, last] = [Math.min(one, other), Math.max(one, other)];
        const [start, end] = [offsets[first]!, offsets[last]! + lines[last]!.length];
        const done = applied(text, formatEditsIn(parse(text), start, end, parse));
        expect(wordsOf(done)).toEqual(wordsOf(text));
        expect(done.slice(0, start)).toBe(text.slice(0, start));
        expect(done.slice(done.length - (text.length - end))).toBe(text.slice(end));
      }),
      { seed: 11, numRuns: 12 }
    );
  });

  test.each(texts)('of any lines of $name, even broken, is laid out as in the whole text', ({ text }) => {
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.nat(9), fc.nat(text.length - 1), fc.nat(300), (at, cut, from, length) => {
        const broken = parse(text.slice(0, at) + text.slice(at + cut));
        const start = broken.text.slice(0, from).lastIndexOf('\n') + 1;
        const lineEnd = broken.text.indexOf('\n', start + length);
        const end = lineEnd < 0 ? broken.text.length : lineEnd;
        const whole = formatEdits(broken, parse).filter(edit => edit.start >= start && edit.end <= end);
        expect(formatEditsIn(broken, start, end, parse)).toEqual(whole);
      }),
      { seed: 13, numRuns: 20 }
    );
  });

  test('of one line reads no more than a small part of a long text', () => {
    const area = (at: number): string => `area a${at} {\n  outline   rectangle 3 x 4 m\n}\n\n`;
    const text = Array.from({ length: 400 }, (_, at) => area(at)).join('');
    const start = text.indexOf('  outline', text.length / 2);
    let read = 0;
    const counting: typeof parse = part => {
      read += part.length;
      return parse(part);
    };
    const edits = formatEditsIn(parse(text), start, text.indexOf('\n', start), counting);
    expect(edits).toHaveLength(1);
    expect(read).toBeLessThan(text.length / 10);
  });
});

describe('The indent of a new line', () => {
  test.each([
    ['in a block that is not closed yet', 'area a {\n‸', 'area a {\n  ‸'],
    ['and in one within it', 'area a {\n  edges {\n‸', 'area a {\n  edges {\n    ‸'],
    [
      'before the next area',
      'area a {\n  traffic foot\n      ‸\narea b { }\n',
      'area a {\n  traffic foot\n  ‸\narea b { }\n'
    ],
    ['behind a block', 'unit a {\n  size 1 x 2 m\n}\n  ‸', 'unit a {\n  size 1 x 2 m\n}\n‸'],
    ['behind a line that goes on', 'area a {\n  outline A to B,\n  ‸', 'area a {\n  outline A to B,\n      ‸'],
    ['behind a comma that parts statements', 'site {\n  soil clay,\n‸', 'site {\n  soil clay,\n  ‸'],
    ['after a blank line', 'let a = 1 +\n\n    ‸', 'let a = 1 +\n\n‸'],
    ['that holds a brace', 'area a {\n  traffic foot\n  ‸}', 'area a {\n  traffic foot\n‸}'],
    [
      'of a brace under its block',
      'area a {\n  edges {\n    near meets lawn\n}‸',
      'area a {\n  edges {\n    near meets lawn\n  }‸'
    ],
    ['of words that stand there', 'area a {\ntraff‸ic', 'area a {\n  traff‸ic'],
    ['with tabs before it', 'area a {\n\t‸traffic', 'area a {\n  ‸traffic'],
    ['in a block of which nothing is known', 'aera a {\n  outline\n ‸', 'aera a {\n  outline\n ‸'],
    ['of a brace that closes nothing', '  }‸', '  }‸']
  ])('%s', (_, before, after) => {
    const { text, start: at } = withCursor(before);
    const edits = indentEdits(parse(text), at);
    const cursor = edits.reduce(
      (moved, { start, end, text: indent }) => moved + indent.length - (Math.min(end, at) - start),
      at
    );
    const done = applied(text, edits);
    expect(`${done.slice(0, cursor)}‸${done.slice(cursor)}`).toBe(after);
  });
});
