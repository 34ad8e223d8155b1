import type { Label, Shape } from '../../drawing/drawing.ts';
import { textWidth } from '../../drawing/lettering.ts';
import type { Side } from '../../geometry/index.ts';
import { printLength } from '../../measures/print.ts';
import { ground, MARGIN, onGround } from '../plan/page.ts';
import type { SectionInput, SectionStation } from './section-input.ts';
import { ROW_HEADS, type SectionPage } from './section-page.ts';

/** mm on paper: letters, free room over and under them, and from column to column. */
const SIZE = 2.1;
const CLEAR = 1.2;
const COLUMNS = 3.3;

interface Row {
  readonly key: string;
  readonly head: string;
  readonly of: (station: SectionStation) => string | undefined;
}

/** Rows that hold something. */
function rowsOf({ stations, system }: SectionInput): Row[] {
  const rows: Row[] = [
    { key: 'point', head: 'Point', of: ({ name }) => name },
    { key: 'finish', head: 'Finish', of: ({ finish }) => finish },
    { key: 'ground', head: 'Ground today', of: one => one.ground },
    { key: 'dig', head: 'Bottom of dig', of: ({ digBottom }) => digBottom },
    { key: 'along', head: 'Along the line', of: ({ at }) => printLength(at, system) }
  ];
  return rows.filter(({ of }) => stations.some(station => of(station) !== undefined));
}

/** Height of a row in which texts stand upright, mm on paper. */
function rowHeight({ of }: Row, { stations }: SectionInput): number {
  return Math.max(0, ...stations.map(station => textWidth(of(station) ?? ''))) * SIZE + 2 * CLEAR;
}

export function rowsHeight(input: SectionInput): number {
  return rowsOf(input).reduce((sum, row) => sum + rowHeight(row, input), 0);
}

/** Under the cut a column of heights for each place that matters, as many as have room. */
export function stationRows(input: SectionInput, page: SectionPage): Shape[] {
  const { sheet, rowsTop } = page;
  const shown = roomyStations(input, page);
  let top = rowsTop;
  const shapes: Shape[] = [rule('rows/top', top, page)];
  for (const row of rowsOf(input)) {
    const height = rowHeight(row, input);
    const y = onGround(sheet, 0, top - height / 2).y;
    const at = { x: onGround(sheet, MARGIN, 0).x, y };
    const size = ground(sheet, SIZE);
    shapes.push({
      kind: 'label',
      key: `rows/${row.key}`,
      ink: 'strong',
      at,
      text: row.head,
      size,
      turn: 0,
      anchor: 'start'
    });
    shown.forEach((station, index) => {
      const text = row.of(station);
      if (text === undefined) return;
      const key = `rows/${row.key}/${index + 1}`;
      shapes.push(upright(key, text, { x: page.place(station).x, y }, size));
    });
    top -= height;
    shapes.push(rule(`rows/${row.key}/rule`, top, page));
  }
  return [...dropLines(shown, page), ...shapes];
}

function upright(key: string, text: string, at: Label['at'], size: number): Label {
  return { kind: 'label', key, ink: 'text', at, text, size, turn: Math.PI / 2, anchor: 'middle' };
}

function rule(key: string, y: number, page: SectionPage): Shape {
  const { sheet, legend } = page;
  const side: Side = { from: onGround(sheet, MARGIN, y), to: onGround(sheet, legend.left - 4, y) };
  return { kind: 'line', key, ink: 'drop', sides: [side] };
}

/** From the cut down to its column. */
function dropLines(shown: readonly SectionStation[], page: SectionPage): Shape[] {
  const { sheet, rowsTop } = page;
  return shown.map((station, index): Shape => {
    const from = page.place(station);
    const to = { x: from.x, y: onGround(sheet, 0, rowsTop).y };
    return { kind: 'line', key: `rows/drop-${index + 1}`, ink: 'drop', sides: [{ from, to }] };
  });
}

/** The places that matter most first, none nearer to another than text needs. */
function roomyStations({ stations }: SectionInput, page: SectionPage): SectionStation[] {
  const apart = ground(page.sheet, COLUMNS);
  const first = page.place({ at: 0, z: 0 }).x - ground(page.sheet, ROW_HEADS);
  const kept: SectionStation[] = [];
  for (const station of [...stations].sort((a, b) => a.rank - b.rank || a.at - b.at)) {
    const { x } = page.place(station);
    if (x < first || kept.some(other => Math.abs(page.place(other).x - x) < apart)) continue;
    kept.push(station);
  }
  return kept.sort((a, b) => a.at - b.at);
}
