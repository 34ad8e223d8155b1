import { describe, expect, test } from 'vitest';
import { formatText } from '../../language/format/format.ts';
import { layOut } from '../../language/format/layout.ts';
import { inkOf, parse, specsUnder, wordsOf } from './reading.ts';

const library = specsUnder('language/library');
const all = [...library, ...specsUnder('samples'), ...specsUnder('tests/faulty')];

test.each(library)('$name is canonical as it ships', ({ text }) => {
  expect(library).not.toHaveLength(0);
  expect(formatText(text, parse)).toBe(text);
});

describe('Every spec of the project', () => {
  test.each(all)('$name', ({ text }) => {
    const read = parse(text);
    const formatted = formatText(text, parse);
    if (read.faults.length > 0) return expect(formatted).toBe(text);
    // The last check of the formatter had nothing to hold back.
    expect(formatted).toBe(layOut(read));
    expect(wordsOf(formatted)).toEqual(wordsOf(text));
    expect(inkOf(formatted)).toBe(inkOf(text));
    expect(formatText(formatted, parse)).toBe(formatted);
    expect(formatted).toMatch(/[^\n]\n$/);
    expect(formatted).not.toMatch(/[ \t]\n|\n\n\n|\{\n\n|\n\n *\}/);
  });
});

const MOST_LINES = 100;

test('each line cut short anywhere: broken text is untouched, other text still reads the same', () => {
  const counts = { broken: 0, whole: 0 };
  let random = 5;
  for (const { name, text } of [...library, ...specsUnder('samples')]) {
    const lines = text.split('\n');
    // The rulebooks are long, and much alike from rule to rule.
    const step = Math.ceil(lines.length / MOST_LINES);
    lines.forEach((line, at) => {
      if (at % step > 0) return;
      random = (random * 48271) % 2147483647;
      const cut = [...lines.slice(0, at), line.slice(0, random % (line.length + 1)), ...lines.slice(at + 1)].join('\n');
      const formatted = formatText(cut, parse);
      const where = `${name}, line ${at + 1}`;
      if (parse(cut).faults.length > 0) {
        counts.broken++;
        expect(formatted, where).toBe(cut);
      } else {
        counts.whole++;
        expect(wordsOf(formatted), where).toEqual(wordsOf(cut));
        expect(formatText(formatted, parse), where).toBe(formatted);
      }
    });
  }
  expect(counts.broken).toBeGreaterThan(20);
  expect(counts.whole).toBeGreaterThan(20);
});
