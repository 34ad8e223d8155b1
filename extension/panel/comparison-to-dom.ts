import type { ShownColumn, ShownComparison, ShownRow, ShownSection } from '../../server/protocol.ts';
import { drawingToDom } from './drawing-to-dom.ts';
import { element } from './element.ts';
import type { PanelWords, Side } from './messages.ts';

export interface Opening {
  readonly section: number;
  readonly row: number;
  readonly side: Side;
}

interface Building {
  readonly words: PanelWords;
  readonly open: (opening: Opening) => void;
}

/** The whole comparison as elements: headings, tables, and buttons that lead to the texts. */
export function comparisonToDom(comparison: ShownComparison, building: Building): Node[] {
  const { title, between, notes, sections, drawing } = comparison;
  const figure = drawing && figureOf(drawing);
  const tables = sections.map((section, index) => sectionOf(section, index, building));
  const edits = sections.findIndex(({ id }) => id !== 'edits' && id !== 'renamed');
  const at = edits < 0 ? tables.length : edits;
  return [
    element('h1', {}, title),
    element('p', { class: 'between' }, between),
    ...notes.map(note => element('p', { class: 'note', role: 'status' }, note)),
    ...(sections.length === 0 ? [element('p', {}, building.words.nothingDiffers)] : []),
    ...tables.slice(0, at),
    ...(figure === undefined ? [] : [figure]),
    ...tables.slice(at)
  ];
}

function figureOf(drawing: NonNullable<ShownComparison['drawing']>): Element | undefined {
  const built = drawingToDom(drawing, document);
  return built && element('figure', { class: 'drawing' }, built);
}

function sectionOf(section: ShownSection, index: number, building: Building): Element {
  const { heading, notes, columns, rows } = section;
  const id = `section-${index}`;
  const hasEdits = rows.some(({ by }) => by.length > 0);
  const heads = columns.map(column => headOf(column));
  const body = rows.map((row, number) => rowOf({ section, index, row, number, hasEdits }, building));
  return element(
    'section',
    { 'aria-labelledby': id },
    element('h2', { id }, heading),
    ...notes.map(note => element('p', {}, note)),
    element(
      'table',
      { 'aria-labelledby': id },
      element('thead', {}, element('tr', {}, ...heads, ...(hasEdits ? [headOf({ head: building.words.by })] : []))),
      element('tbody', {}, ...body)
    )
  );
}

function headOf({ head, right }: ShownColumn): Element {
  return head === '' ? element('td', {}) : element('th', { scope: 'col', class: right ? 'right' : '' }, head);
}

interface RowAt {
  readonly section: ShownSection;
  readonly index: number;
  readonly row: ShownRow;
  readonly number: number;
  /** The table has a column for them. */
  readonly hasEdits: boolean;
}

function rowOf(at: RowAt, building: Building): Element {
  const { section, row, hasEdits } = at;
  const label = labelColumn(section.columns);
  const cells = section.columns.map((column, index) => {
    const words = row.cells[index] ?? '';
    const shown = index === label ? labelOf(words, at, building) : olderOf(words, column, at, building);
    const name = column.right ? 'right' : column.prose ? 'prose' : '';
    return index === label
      ? element('th', { scope: 'row', class: name }, shown)
      : element('td', { class: name }, shown);
  });
  const by = row.by.flatMap((edit, index) => [...(index === 0 ? [] : [', ']), toEdit(edit, at, building)]);
  return element('tr', {}, ...cells, ...(hasEdits ? [element('td', {}, ...by)] : []));
}

/** What a row is about stands in the last of the columns at its beginning that have no head. */
function labelColumn(columns: readonly ShownColumn[]): number {
  const headed = columns.findIndex(({ head }) => head !== '');
  return headed < 0 ? columns.length - 1 : Math.max(0, headed - 1);
}

/** Leads to the newer text, or to the older one where it stands in that alone. */
function labelOf(words: string, at: RowAt, building: Building): Node | string {
  const { section, index, row, number } = at;
  const side = row.places.after ? 'after' : row.places.before ? 'before' : undefined;
  if (side === undefined || words === '') return words;
  const id = section.id === 'edits' ? { id: `edit-${row.cells[0] ?? ''}` } : {};
  const title = side === 'after' ? building.words.toText : building.words.toOlderText;
  const attributes = { ...id, title, 'data-key': keyOf(at, side) };
  return button(words, attributes, () => building.open({ section: index, row: number, side }));
}

/** What was before leads to the older text. */
function olderOf(words: string, { head }: ShownColumn, at: RowAt, building: Building): Node | string {
  const { index, row, number } = at;
  if (head !== BEFORE || words === '' || row.places.before === undefined || row.places.after === undefined)
    return words;
  const attributes = { title: building.words.toOlderText, 'data-key': keyOf(at, 'before') };
  return button(words, attributes, () => building.open({ section: index, row: number, side: 'before' }));
}

/** As sheets of comparisons head it. */
const BEFORE = 'Before';

function toEdit(edit: number, at: RowAt, { words }: Building): Element {
  const attributes = { 'aria-label': `${words.edit} ${edit}`, 'data-key': keyOf(at, `by ${edit}`) };
  return button(String(edit), attributes, () => document.getElementById(`edit-${edit}`)?.focus());
}

/** The same thing after the next keystroke, wherever it then stands: it keeps the focus. */
function keyOf({ section, row }: RowAt, what: string): string {
  return [section.id, section.heading, row.cells[labelColumn(section.columns)] ?? '', what].join('\n');
}

function button(words: string, attributes: Readonly<Record<string, string>>, press: () => void): Element {
  const built = element('button', { type: 'button', ...attributes }, words);
  built.addEventListener('click', press);
  return built;
}
