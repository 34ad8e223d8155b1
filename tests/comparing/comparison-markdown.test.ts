import { describe, expect, it } from 'vitest';
import { comparisonMarkdown } from '../../language/views/markdown-page/comparison-markdown.ts';
import { NASTY, rowsOf, SAME, section, SHEET, sheetOf } from './sheets.ts';

describe('comparisons as Markdown', () => {
  it('have a heading each, and a table for each section; columns in which nothing stands are left out', () => {
    expect(comparisonMarkdown([SHEET, SAME])).toBe(
      [
        '## Hill lane drive',
        '',
        'quote-1 to the working copy',
        '',
        '### Edited',
        '',
        '|  |  | Before | After | Difference |',
        '|:--|:--|:--|:--|--:|',
        '| 1 | area drive, base | 225 mm | 250 mm | \\+25 mm |',
        '| 2 | box cover | new |  |  |',
        '',
        '### drive',
        '',
        '|  | Before | After | Difference | By |',
        '|:--|--:|--:|--:|:--|',
        '| Base, mass | 33.21 t | 36.90 t | \\+3.69 t | 1, 2 |',
        '| Cuts | 440 | 438 | −2 |  |',
        '',
        '### Price',
        '',
        '5\\. of it is tax.',
        '',
        '|  | Before | After | Difference |',
        '|:--|--:|--:|--:|',
        '| To pay | 100.00 GBP | 161.20 GBP | \\+61.20 GBP |',
        '',
        '**Yard** · quote-1 to the working copy: Nothing differs in meaning.',
        ''
      ].join('\n')
    );
    expect(comparisonMarkdown([])).toBe('Nothing differs in meaning.\n');
  });

  it('have long tables of numbers folded up where there are many rows, edits and price never', () => {
    const many = (count: number): string =>
      comparisonMarkdown([
        {
          ...SHEET,
          sections: [
            section('edits', 'Edited', rowsOf(12)),
            section('numbers', 'drive', rowsOf(count)),
            section('numbers', 'path', rowsOf(3)),
            section('price', 'Price', rowsOf(8))
          ]
        }
      ]);
    expect(many(17)).not.toContain('<details>');
    const folded = many(18);
    expect(folded.match(/<details>/g)).toHaveLength(1);
    // An empty line on both sides: what is folded up is still read as Markdown.
    expect(folded).toContain('\n\n<details><summary>drive: 18 rows</summary>\n\n|');
    expect(folded).toContain('|\n\n</details>\n\n### path\n\n');
    expect(folded).toContain('### Edited\n\n|');
    expect(folded).toContain('### Price\n\n|');
  });

  it.each([
    ['<script>alert("x")</script>', '&lt;script\\>alert\\("x"\\)&lt;/script\\>'],
    ['a|b', 'a\\|b'],
    ['`code` **strong**', '\\`code\\` \\*\\*strong\\*\\*'],
    ['@someone #12 !3', '@<span></span>someone \\#<span></span>12 \\!<span></span>3'],
    ['GH-4 $5 :tada:', 'GH-<span></span>4 $<span></span>5 :<span></span>tada:'],
    ['5 % of 3 @ 12', '5 % of 3 @ 12'],
    ['[words](https://example.org)', '\\[words\\]\\(https&#58;//example.org\\)'],
    ['C:\\|x\\', 'C:\\\\\\|x\\\\'],
    ['one\nline\u202E', 'one line']
  ])('show %j as it is written', (words, written) => {
    const [line] = comparisonMarkdown([{ ...SHEET, title: words }]).split('\n');
    expect(line).toBe(`## ${written}`);
    const { sections } = SHEET;
    const table = comparisonMarkdown([
      { ...SHEET, sections: [section('price', 'Price', [[words, '1', '2', '']]), ...sections] }
    ]);
    expect(table).toContain(`\n| ${written} | 1 | 2 |\n`);
  });

  it('begin no list, rule or underline of what stands before', () => {
    const notes = ['1. first', '2) second', '- item', '===', '---', '# head'];
    const sections = [{ ...section('price', 'Price', rowsOf(1)), notes }];
    const lines = comparisonMarkdown([{ ...SHEET, sections }]).split('\n');
    expect(lines.slice(6, 17).filter(line => line !== '')).toEqual([
      '1\\. first',
      '2\\) second',
      '\\- item',
      '\\===',
      '\\---',
      '\\# head'
    ]);
  });

  it.each(NASTY)('keep every table whole with %j in each of its places, open or folded up', words => {
    const sheet = sheetOf(words);
    const long = {
      ...sheet,
      sections: [
        ...sheet.sections,
        { ...sheet.sections[0]!, rows: Array.from({ length: 41 }, () => sheet.sections[0]!.rows[0]!) }
      ]
    };
    const lines = comparisonMarkdown([long]).split('\n');
    for (const line of lines.filter(one => one.startsWith('|'))) {
      expect(line.replace(/\\[^]/g, '').match(/\|/g)).toHaveLength(5);
    }
    const text = lines.join('\n');
    expect(text).not.toMatch(/\p{Cf}/u);
    // Nothing in angle brackets but what folds up and what keeps a sign apart.
    expect(text.replace(/\\./g, '').replace(/<\/?(?:details|summary|span)>/g, '')).not.toContain('<');
    expect(text.replace(/\\(?=[#!])/g, '')).not.toMatch(/[@#!](?:someone|12|3)|:tada:/);
  });
});
