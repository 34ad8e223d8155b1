import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatText } from '../../language/format/format.ts';
import { layOut } from '../../language/format/layout.ts';
import { CANONICAL, UNTIDY } from './drawn.ts';
import { inkOf, parse, specsUnder, wordsOf } from './reading.ts';

const samples = [{ name: 'untidy', text: UNTIDY }, { name: 'canonical', text: CANONICAL }, ...specsUnder('samples')];

/** A text as its words and comments, and what stands before each of them and at the end. */
function pieces(text: string): { words: string[]; gaps: string[]; types: string[] } {
  const { tokens, comments } = parse(text);
  const all = [...tokens, ...comments].sort((left, right) => left.startOffset - right.startOffset);
  const gaps = all.map(({ startOffset }, at) => text.slice(at === 0 ? 0 : all[at - 1]!.endOffset! + 1, startOffset));
  gaps.push(text.slice(all.at(-1)!.endOffset! + 1));
  return { words: all.map(({ image }) => image), gaps, types: [...all.map(({ tokenType }) => tokenType.name), 'END'] };
}

const together = (words: readonly string[], gaps: readonly string[]) =>
  gaps.map((gap, at) => gap + (words[at] ?? '')).join('');

describe('White space alone', () => {
  const BLANKS = [' ', '  ', '\t', ' \t  ', '     ', '\u00a0'];
  /** One blank line or several: the same line structure. */
  const BLANK_LINES = ['\n\n', '\n \t\n', '\n\n\n\t\n'];

  /** Other white space with the same line structure; none only where the words stay apart without it. */
  function otherBlanks(gap: string, before: string, after: string, choice: number): string {
    const isFree =
      ['{', '}', '(', '='].includes(before) ||
      ['{', '}', ')', ',', '=', 'COMMENT'].includes(after) ||
      (before === 'NUMBER' && after === 'MEASURE');
    // With other white space two numbers could be read as one.
    if (before === 'NUMBER' && after === 'NUMBER') return gap;
    if (gap === '' && !isFree) return gap;
    const blanks = before === 'BY' ? BLANKS.filter(blank => blank !== '\u00a0') : BLANKS;
    const parts = gap.split(/((?:\n[^\S\n]*)*\n|,)/);
    return parts
      .map((part, at) => {
        if (part === ',' || part === '\n') return part;
        if (part.includes('\n')) return BLANK_LINES[choice % BLANK_LINES.length]!;
        return (isFree || parts.length > 1) && choice % 3 === 0 ? '' : blanks[(choice + at) % blanks.length]!;
      })
      .join('');
  }

  test.each(samples)('$name comes out the same', ({ text }) => {
    const { words, gaps, types } = pieces(text);
    const expected = formatText(text, parse);
    fc.assert(
      fc.property(fc.array(fc.nat(1000), { minLength: 40, maxLength: 40 }), choices => {
        const mangled = together(
          words,
          gaps.map((gap, at) =>
            at === 0 ? gap : otherBlanks(gap, types[at - 1]!, types[at]!, choices[(at * 7) % choices.length]! + at)
          )
        );
        expect(wordsOf(mangled)).toEqual(wordsOf(text));
        expect(formatText(mangled, parse)).toBe(expected);
      }),
      { seed: 11, numRuns: 12 }
    );
  });
});

describe('Line ends and comments', () => {
  const CHANGES = ['\n', '\n\n\n', ' // so\n', '\n  // so\n\n// so\n', ' ', ', ', ' ,\n'];
  const counts = { taken: 0, refused: 0 };

  test.each(samples)('$name reads the same wherever they may stand, in one step', ({ text }) => {
    const change = fc.record({ at: fc.nat(), to: fc.constantFrom(...CHANGES) });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 8 }), changes => {
        let mangled = text;
        for (const { at, to } of changes) {
          const { words, gaps } = pieces(mangled);
          const place = at % gaps.length;
          const tried = together(
            words,
            gaps.map((gap, other) => (other === place ? to : gap))
          );
          // A change that gives a word another role is no longer the same spec.
          const isSame =
            wordsOf(tried)
              .filter(word => word !== '// so')
              .join('\n') ===
            wordsOf(mangled)
              .filter(word => word !== '// so')
              .join('\n');
          counts[isSame ? 'taken' : 'refused']++;
          if (isSame) mangled = tried;
        }
        const formatted = formatText(mangled, parse);
        expect(formatted).toBe(layOut(parse(mangled)));
        expect(wordsOf(formatted)).toEqual(wordsOf(mangled));
        expect(inkOf(formatted)).toBe(inkOf(mangled));
        expect(formatText(formatted, parse)).toBe(formatted);
      }),
      { seed: 12, numRuns: 24 }
    );
  });

  test('enough of them were tried', () => {
    expect(counts.taken).toBeGreaterThan(500);
    expect(counts.refused).toBeGreaterThan(100);
  });
});
