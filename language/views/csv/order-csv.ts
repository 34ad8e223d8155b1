import { stringify } from 'csv-stringify/browser/esm/sync';
import type { JobQuantities } from '../../quantities/contract.ts';
import { orderRows } from '../order-rows.ts';
import { textCell } from './cell.ts';

/** The order of all jobs under its heads; with a mark of its encoding, so that a spreadsheet reads it right. */
export function orderCsv(jobs: readonly JobQuantities[]): string {
  const { heads, rows } = orderRows(jobs);
  const cells = rows.map(row => row.map(cell => (typeof cell === 'string' ? textCell(cell) : cell)));
  return stringify([[...heads], ...cells], { bom: true });
}
