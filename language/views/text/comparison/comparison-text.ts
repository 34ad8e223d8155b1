import { type ComparisonSheet, NOTHING_DIFFERS, type SheetSection } from '../../comparison/sheet.ts';
import type { Colours } from '../colours.ts';
import { SIGNED } from '../quote/signed.ts';
import { table } from '../table.ts';
import { wrapped } from '../wrapped.ts';

/** A line stays readable in a terminal and in a mail. */
const PROSE_WIDTH = 76;

/** A comparison as aligned text; `By` names the edits behind a line by their numbers. */
export function comparisonText({ title, between, notes, sections }: ComparisonSheet, colours: Colours): string {
  const words = notes.flatMap(note => wrapped(note, PROSE_WIDTH + 16)).map(line => colours.warning(line));
  const head = [`${colours.strong(title)}${colours.faint(` · ${between}`)}`, ...words].join('\n');
  if (sections.length === 0) return [head, NOTHING_DIFFERS].join('\n');
  return [head, ...sections.map(section => sectionText(section, colours))].join('\n\n');
}

function sectionText(section: SheetSection, colours: Colours): string {
  const { heading, notes, columns, rows } = section;
  const said = notes.flatMap(note => wrapped(note, PROSE_WIDTH + 16));
  if (section.id === 'sign') return [colours.strong(heading), ...said.map(line => `  ${line}`), '', SIGNED].join('\n');
  const lines = table(
    [...columns, { head: 'By' }],
    rows.map(({ cells, by }) => [
      ...cells.map((cell, index) => (columns[index]?.prose === true ? wrapped(cell, PROSE_WIDTH).join('\n') : cell)),
      by.join(', ')
    ]),
    colours
  );
  return [colours.strong(heading), ...[...said, ...lines].map(line => `  ${line}`)].join('\n');
}
