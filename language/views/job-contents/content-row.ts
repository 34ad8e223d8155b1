import type { Place } from '../../findings/finding.ts';
import type { Job, Key } from '../../job/job.ts';
import type { Evaluation } from '../../paving.ts';
import type { Owner } from '../../quantities/catalogue.ts';
import { rowsOf } from '../rows.ts';

/** What a row is about; rows of the kind `number` are the numbers of the row that they stand in. */
export type RowKind =
  | 'job'
  | 'group'
  | 'number'
  | 'area'
  | 'dig'
  | 'layer'
  | 'unit'
  | 'joints'
  | 'geotextile'
  | 'edge'
  | 'edging'
  | 'level'
  | 'box'
  | 'gate'
  | 'drain'
  | 'order'
  | 'delivery'
  | 'error'
  | 'warning'
  | 'note'
  | 'day'
  | 'task'
  | 'caution';

/** What a job holds, as rows one within the other; numbers stand in the job's measures. */
export interface ContentRow {
  /** Stays while the thing stays; no two rows have the same. */
  readonly id: string;
  readonly kind: RowKind;
  readonly label: string;
  readonly value?: string;
  readonly place?: Place;
  /** It is told as it was: `before the error in line 12`. */
  readonly before?: string;
  /** It is of what is sound alone, while other parts of the job have no numbers. */
  readonly isPartial?: true;
  readonly inside: readonly ContentRow[];
}

/** What all rows of a job are made from. */
export interface Contents {
  readonly evaluation: Evaluation;
  readonly job: Job;
  /** The job's own file, as shown: the lines of others are told with their names. */
  readonly file: string;
}

/** The place of a thing, or of what it is a part of; nothing of what stands in no text. */
export function placeOf({ evaluation: { places } }: Contents, key: Key): { readonly place?: Place } {
  for (let part = key; part !== ''; part = part.slice(0, Math.max(0, part.lastIndexOf('/')))) {
    const place = places.get(part);
    if (place !== undefined) return { place };
  }
  return {};
}

/** The numbers of a thing in the words of the catalogue: each leads to where it is written, else to its thing. */
export function numbersOf(
  contents: Contents,
  {
    id,
    key,
    owner,
    numbers
  }: { readonly id: string; readonly key: Key; readonly owner: Owner; readonly numbers: object }
): ContentRow[] {
  const { system, datum } = contents.job;
  const isBed = 'role' in numbers && numbers.role === 'bed';
  return rowsOf(owner, numbers, system, isBed, datum).map(row =>
    numberRow(`${id}#${row.key}`, row.words, row.value, placeOf(contents, `${key}/${row.key}`))
  );
}

export function numberRow(id: string, label: string, value: string, place: Pick<ContentRow, 'place'> = {}): ContentRow {
  return { id, kind: 'number', label, value, ...place, inside: [] };
}

/** Rows under a heading, with how many there are; no heading stands over nothing. */
export function group(id: string, label: string, inside: readonly ContentRow[], value?: string): ContentRow[] {
  if (inside.length === 0) return [];
  return [{ id, kind: 'group', label, value: value ?? String(inside.length), inside: withOwnIds(inside) }];
}

/** What a reader sees behind the label. */
export function shownValue({ value, before }: ContentRow): string {
  const shown = value ?? '';
  return before === undefined ? shown : shown === '' ? before : `${before}: ${shown}`;
}

/** The row and all in it, marked as told from before an error. */
export function asBefore(row: ContentRow, before: string): ContentRow {
  return { ...row, before, inside: row.inside.map(each => asBefore(each, before)) };
}

/** The row of that id, in a row or the row itself. */
export function rowWith(row: ContentRow, id: string): ContentRow | undefined {
  if (row.id === id) return row;
  for (const each of row.inside) {
    const found = rowWith(each, id);
    if (found !== undefined) return found;
  }
  return undefined;
}

export const NOT_COMPLETE = 'not complete';

/** The row, said to be of a part of the job; all in it is marked so. */
export function asPartial(row: ContentRow): ContentRow {
  return { ...markedPartial(row), value: `${row.value ?? ''} · ${NOT_COMPLETE}` };
}

function markedPartial(row: ContentRow): ContentRow {
  return { ...row, isPartial: true, inside: row.inside.map(markedPartial) };
}

/** Sides may share a name, and findings a thing: the second is called so. */
function withOwnIds(rows: readonly ContentRow[]): ContentRow[] {
  const seen = new Map<string, number>();
  return rows.map(row => {
    const count = (seen.get(row.id) ?? 0) + 1;
    seen.set(row.id, count);
    return count === 1 ? row : renamed(row, `${row.id} (${count})`);
  });
}

function renamed(row: ContentRow, id: string): ContentRow {
  const inside = row.inside.map(each => renamed(each, id + each.id.slice(row.id.length)));
  return { ...row, id, inside };
}
