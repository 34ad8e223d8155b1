import type { System } from '../../job/job.ts';
import { printHeight } from '../../measures/print.ts';
import { shownQuantitiesOf, type Owner } from '../../quantities/catalogue.ts';
import type { AreaQuantities } from '../../quantities/contract.ts';
import { rowsOf } from '../rows.ts';
import type { Colours } from './colours.ts';
import { table } from './table.ts';

/** What names a line of a table, before its numbers. */
interface Leading<T> {
  readonly head: string;
  readonly cell: (item: T, index: number) => string;
}

/** All numbers of one area: what it is, then a block of lines for each part that it has. */
export function areaText(area: AreaQuantities, system: System, colours: Colours): string {
  const rows = (owner: Owner, numbers: object | undefined): string[] => numberRows([[owner, numbers]], system, colours);
  const list = <T extends object>(owner: Owner, items: readonly T[], leading: readonly Leading<T>[]): string[] =>
    numberTable({ owner, items, leading, system, colours });
  const blocks = [
    rows('area', area),
    list('kept-out', area.keptOut, [{ head: 'Kept out', cell: ({ id }) => id.replace(':', ' ') }]),
    list('edge', area.edges, [
      { head: 'Side', cell: ({ name }, index) => (area.outline[index]?.turn === undefined ? name : `${name} (curve)`) },
      { head: 'Meets', cell: ({ meets }) => meets ?? 'not said' },
      { head: 'Edging', cell: ({ edging }) => edging ?? '' }
    ]),
    rows('dig', area.dig),
    list('layer', area.layers, [
      { head: 'Layer', cell: ({ role }) => role },
      { head: 'Material', cell: ({ material }) => material }
    ]),
    list('laying', area.laying ?? [], [
      { head: 'Unit', cell: ({ unit }) => unit },
      { head: 'Bond', cell: ({ bond }) => bond }
    ]),
    list('running-size', area.runningSizes ?? [], [{ head: 'Running sizes', cell: () => '' }]),
    rows('joints', area.joints),
    list('edging', area.edging, [{ head: 'Edging', cell: ({ material }) => material }]),
    list('geotextile', area.geotextile === undefined ? [] : [area.geotextile], [
      { head: 'Material', cell: ({ material }) => material }
    ])
  ];
  const shown = blocks.filter(block => block.length > 0).map(block => block.map(line => `  ${line}`).join('\n'));
  return [heading(area, system, colours), ...shown].join('\n\n');
}

function heading({ name, traffic, finish }: AreaQuantities, system: System, colours: Colours): string {
  const facts = [
    ...(traffic.length === 0 ? [] : [`traffic ${traffic.join(', ')}`]),
    ...(finish === undefined ? [] : [`finish ${printHeight(finish.height, finish.at, system)}`])
  ];
  return [colours.strong(`Area ${name}`), ...facts].join(' · ');
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

interface NumberTable<T> {
  readonly owner: Owner;
  readonly items: readonly T[];
  readonly leading: readonly Leading<T>[];
  readonly system: System;
  readonly colours: Colours;
}

/** A table with a row for each item: what it is, then its numbers. */
export function numberTable<T extends object>({ owner, items, leading, system, colours }: NumberTable<T>): string[] {
  if (items.length === 0) return [];
  const quantities = shownQuantitiesOf(owner);
  const columns = [
    ...leading.map(({ head }) => ({ head })),
    ...quantities.map(({ words }) => ({ head: words, right: true }))
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
