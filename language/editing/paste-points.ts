import type { Place } from '../findings/finding.ts';
import type { System } from '../job/job.ts';
import { LARGEST_LENGTH } from '../lowering/context.ts';
import { namesOf } from '../lowering/names.ts';
import { Placer } from '../lowering/placer.ts';
import { measureNamed } from '../measures/measures.ts';
import type { Look } from '../paving.ts';
import { spanOf } from '../syntax/statement-tree.ts';
import { lineBreakOf, type Span } from '../syntax/text-edit.ts';
import { isWord } from './rewrites/names.ts';
import { linesBefore, topStatementAt } from './rewrites/places.ts';
import type { Edit } from './rewrites/rewrite.ts';
import { isMeasured, metresOf, writtenCell, type Cell } from './tables/cells.ts';
import { readTable, type Row, type Table } from './tables/table.ts';

/** One way to write a table as points. */
export interface PastedPoints {
  readonly title: string;
  /** Whole lines, as the formatter leaves them. */
  readonly text: string;
  /** Where they go: at the cursor, or before the block that it stands in. */
  readonly place: Place;
}

export interface PointsFromTable {
  /** The likeliest first. */
  readonly choices: readonly PastedPoints[];
  /**
   * A name and two numbers on each of several lines and nothing else, and one choice: hardly anything but a table of
   * points, and nothing to guess.
   */
  readonly isPlain: boolean;
}

/** Where a job lies on a map and not in a plan of its own, m. */
const FAR = 1_000;

/**
 * Writes coordinates out of a table (lines of `name x y` or `x y`) as points. Where the table does not say its measure
 * there is a choice for each that it may be; coordinates of a map can also be moved to the first point. What cannot be
 * read is said in `problem`. The measures of the `system` that the job is shown in are likelier; undefined where no job is known.
 */
export function pointsFromTable(
  clipboard: string,
  { text, project }: Look,
  at: Span,
  system: System | undefined
): PointsFromTable | { readonly problem: string } {
  const table = readTable(clipboard);
  if ('problem' in table) return table;
  const cells = table.rows.flatMap(({ x, y }) => [x, y]).filter(cell => !isNought(cell));
  const measured = cells.filter(isMeasured).length;
  if (measured > 0 && measured < cells.length)
    return { problem: 'Some numbers of the table have a measure and some have none.' };
  const measures = measured > 0 ? [undefined] : measuresFor(table, cells, system);
  const names = pointNames(table.rows, { text, project });
  const said = measured > 0 || table.measure !== undefined;
  const choices = measures.flatMap(measure => choicesIn(table, names, measure, said));
  if (choices.length === 0) return { problem: 'These points lie further apart than any job is wide.' };
  const placer = Placer.of(text);
  return {
    choices: choices.map(({ title, lines }) => {
      const edit = written({ text, project }, at, lines);
      return { title, text: edit.text, place: placer.place(edit.start, edit.end) };
    }),
    isPlain: choices.length === 1 && isPlain(table)
  };
}

function isPlain({ rows, leftOut }: Table): boolean {
  return rows.length > 1 && leftOut === 0 && rows.every(({ name }) => /\p{L}/u.test(name ?? ''));
}

// ---- measures ----

function measuresFor({ measure }: Table, cells: readonly Cell[], system: System | undefined): string[] {
  if (measure !== undefined) return [measure];
  const metric = ['m', 'mm'];
  const imperial = ['ft', 'in'];
  const likely = system === undefined ? [...metric, ...imperial] : system === 'metric' ? metric : imperial;
  const areSmall = cells.every(({ parts }) => /^\d+$/.test(parts[0]!.number)) && cells.some(isAHundred);
  return areSmall ? likely.reverse() : likely;
}

function isAHundred(cell: Cell): boolean {
  return metresOf(cell, 'm').abs().compare(100) >= 0;
}

function isNought({ parts }: Cell): boolean {
  return parts.every(({ number }) => Number(number) === 0);
}

// ---- lines ----

interface Choice {
  readonly title: string;
  readonly lines: readonly string[];
}

function choicesIn(table: Table, names: readonly string[], measure: string | undefined, said: boolean): Choice[] {
  const { rows, leftOut } = table;
  const metres = rows.flatMap(({ x, y }) => [x, y].map(cell => Math.abs(metresOf(cell, measure).valueOf())));
  const furthest = Math.max(...metres);
  const count = rows.length === 1 ? 'one point' : `${rows.length} points`;
  const without = leftOut === 0 ? '' : `, ${leftOut === 1 ? 'one column' : `${leftOut} columns`} left out`;
  const title = `Paste as ${count}${said ? '' : ` in ${measure!}`}${without}`;
  const choices: Choice[] = [];
  const asTheyAre = rows.map(({ x, y }) => placeText(writtenPoint(x), writtenPoint(y), measure));
  if (furthest <= LARGEST_LENGTH) choices.push({ title, lines: lined(names, asTheyAre) });
  const moved = furthest > FAR && measure !== undefined ? movedToFirst(rows, measure) : undefined;
  if (moved === undefined) return choices;
  const origin = asTheyAre[0]!;
  const note = `// Moved: what is (0, 0) here is ${origin} in the table.`;
  const movedTitle = `${title}, moved so that ${names[0]!} is at (0, 0)`;
  return [...choices, { title: movedTitle, lines: [note, ...lined(names, moved)] }];
}

function lined(names: readonly string[], places: readonly string[]): string[] {
  const width = Math.max(...names.map(({ length }) => length));
  return places.map((place, index) => `point ${names[index]!.padEnd(width)} at ${place}`);
}

function placeText(x: string, y: string, measure: string | undefined): string {
  const isOrigin = x === '0' && y === '0';
  return `(${x}, ${y})${measure === undefined || isOrigin ? '' : ` ${measure}`}`;
}

function writtenPoint(cell: Cell): string {
  return isNought(cell) ? '0' : writtenCell(cell);
}

function movedToFirst(rows: readonly Row[], measure: string): string[] | undefined {
  const { factor } = measureNamed(measure)!;
  const origin = rows[0]!;
  const places = rows.map(row =>
    ([row.x, row.y] as const).map((cell, index) =>
      metresOf(cell, measure).sub(metresOf(index === 0 ? origin.x : origin.y, measure))
    )
  );
  if (places.flat().some(length => Math.abs(length.valueOf()) > LARGEST_LENGTH)) return undefined;
  return places.map(([x, y]) => placeText(x!.div(factor).toString(), y!.div(factor).toString(), measure));
}

// ---- names ----

/** Names of the language that no point has yet. */
function pointNames(rows: readonly Row[], { project }: Look): string[] {
  const declared = project.texts.flatMap(text => namesOf(text).all);
  const taken = new Set(declared.filter(({ kind }) => kind === 'point').map(({ name }) => name));
  let next = 1;
  return rows.map(({ name }) => {
    let free = name === undefined ? undefined : nameFrom(name);
    for (let number = 2; free !== undefined && taken.has(free); number++) free = `${nameFrom(name!)!}-${number}`;
    while (free === undefined || taken.has(free)) free = `P${next++}`;
    taken.add(free);
    return free;
  });
}

/** `P 1` is P-1, `7` is P7; undefined where nothing is left of it. */
function nameFrom(written: string): string | undefined {
  const plain = written.replace(/[^\p{L}\p{M}\p{N}_]+/gu, '-').replace(/^-+|-+$/g, '');
  if (plain === '') return undefined;
  const name = /^[\p{L}_]/u.test(plain) ? plain : `P${plain}`;
  return isWord(name) ? `${name}-1` : name;
}

// ---- where they go ----

function written({ text }: Look, at: Span, lines: readonly string[]): Edit {
  const { parsed } = text;
  const around = topStatementAt(parsed, at.start);
  const span = around && spanOf(parsed, around.first, around.end);
  if (around && span && span.start < at.start && at.start < span.end) return linesBefore(text, around, lines);
  const lineEnd = lineBreakOf(parsed.text);
  const comment = parsed.comments.find(
    ({ startOffset, endOffset }) => startOffset < at.start && at.start <= endOffset! + 1
  );
  const start = comment === undefined ? at.start : comment.endOffset! + 1;
  const end = Math.max(start, at.end);
  const before = parsed.text.slice(parsed.text.lastIndexOf('\n', start - 1) + 1, start);
  const after = /^[^\n]*/.exec(parsed.text.slice(end))![0];
  const block = lines.join(lineEnd);
  return {
    start,
    end,
    text: `${before.trim() === '' ? '' : lineEnd}${block}${after.trim() === '' ? '' : lineEnd}`
  };
}
