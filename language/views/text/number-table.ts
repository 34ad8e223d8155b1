import type { System } from '../../job/job.ts';
import { shownQuantitiesOf, type KeyOf, type Owner } from '../../quantities/catalogue.ts';
import { rowsOf } from '../rows.ts';
import type { Colours } from './colours.ts';
import { table } from './table.ts';

/** What names a line of a table, before its numbers. */
export interface Leading<T> {
  readonly head: string;
  readonly cell: (item: T, index: number) => string;
}

interface NumberTable<O extends Owner, T> {
  readonly owner: O;
  readonly items: readonly T[];
  readonly leading: readonly Leading<T>[];
  /** These numbers, in this order; else all that tables show. */
  readonly only?: readonly KeyOf<O>[];
  readonly system: System;
  readonly colours: Colours;
}

/** One number a line, behind its words. */
export function numberRows(
  owners: readonly (readonly [Owner, object | undefined])[],
  system: System,
  colours: Colours
): string[] {
  const rows = owners
    .flatMap(([owner, numbers]) => rowsOf(owner, numbers ?? {}, system))
    .map(({ words, value }) => [words, value]);
  return table([{ head: '' }, { head: '', right: true }], rows, colours);
}

/** A table with a row for each item: what it is, then its numbers. */
export function numberTable<O extends Owner, T extends object>({
  owner,
  items,
  leading,
  only,
  system,
  colours
}: NumberTable<O, T>): string[] {
  if (items.length === 0) return [];
  const all = shownQuantitiesOf(owner);
  const quantities = only === undefined ? all : only.map(key => all.find(quantity => quantity.key === key)!);
  const columns = [
    ...leading.map(({ head }) => ({ head })),
    ...quantities.map(({ head, words }) => ({ head: head ?? words, right: true }))
  ];
  const rows = items.map((item, index) => {
    const values = new Map(rowsOf(owner, item, system, isBed(item)).map(({ key, value }) => [key, value]));
    return [...leading.map(({ cell }) => cell(item, index)), ...quantities.map(({ key }) => values.get(key) ?? '')];
  });
  return table(columns, rows, colours);
}

function isBed(item: object): boolean {
  return 'role' in item && item.role === 'bed';
}
