import type { ComparisonSheet, SheetSection } from '../../language/views/comparison/sheet.ts';

/** What a person could write as a title or a name, or copy into one without knowing. */
export const NASTY = [
  '<script>alert("x")</script>',
  'a|b',
  '`code` **strong** ~~struck~~',
  '@someone, #12, !3, GH-4, $5, :tada:, someone@example.org',
  '1. list',
  '- item',
  '===',
  '\u202Eturned round\u202C',
  '[words](https://example.org) www.example.org',
  'C:\\|x\\',
  '&lt;b&gt; &#64;someone',
  'one\nline'
];

export function section(id: SheetSection['id'], heading: string, rows: readonly (readonly string[])[]): SheetSection {
  return {
    id,
    heading,
    notes: [],
    columns: [
      { head: '' },
      { head: 'Before', right: true },
      { head: 'After', right: true },
      { head: 'Difference', right: true }
    ],
    rows: rows.map(cells => ({ cells, places: {}, by: [] }))
  };
}

const edits: SheetSection = {
  ...section('edits', 'Edited', []),
  columns: [{ head: '' }, { head: '' }, { head: 'Before' }, { head: 'After' }, { head: 'Difference', right: true }],
  rows: [
    { cells: ['1', 'area drive, base', '225 mm', '250 mm', '+25 mm'], places: {}, by: [] },
    { cells: ['2', 'box cover', 'new', '', ''], places: {}, by: [] }
  ]
};

const numbers: SheetSection = {
  ...section('numbers', 'drive', []),
  rows: [
    { cells: ['Base, mass', '33.21 t', '36.90 t', '+3.69 t'], places: {}, by: [1, 2] },
    { cells: ['Cuts', '440', '438', '−2'], places: {}, by: [] }
  ]
};

export const SHEET: ComparisonSheet = {
  title: 'Hill lane drive',
  between: 'quote-1 to the working copy',
  notes: [],
  sections: [
    edits,
    numbers,
    {
      ...section('price', 'Price', [['To pay', '100.00 GBP', '161.20 GBP', '+61.20 GBP']]),
      notes: ['5. of it is tax.']
    }
  ]
};

export const SAME: ComparisonSheet = { title: 'Yard', between: 'quote-1 to the working copy', notes: [], sections: [] };

/** Every place of a sheet that words can stand in holds the same ones. */
export function sheetOf(words: string): ComparisonSheet {
  const cells = [words, words, words, words];
  const nasty = { ...section('numbers', words, [cells]), notes: [words] };
  const columns = nasty.columns.map(column => ({ ...column, head: words }));
  return {
    title: words,
    between: words,
    notes: [words],
    sections: [
      { ...nasty, columns },
      { ...nasty, id: 'findings' }
    ]
  };
}

export function rowsOf(count: number): string[][] {
  return Array.from({ length: count }, (_, index) => [`Number ${index + 1}`, '1', '2', '+1']);
}
