import writeXlsxFile from 'write-excel-file/node';
import type { JobQuantities } from '../../language/quantities/contract.ts';
import { MONEY_HEADS, orderRows } from '../../language/views/order-rows.ts';

/** The order as a spreadsheet file. What a user wrote stands as text, never as a formula. */
export async function orderSpreadsheet(jobs: readonly JobQuantities[]): Promise<Buffer> {
  const { heads, rows } = orderRows(jobs);
  const cellOf = (value: string | number | undefined, column: number) => {
    if (value === undefined) return null;
    if (typeof value === 'number') return { type: Number, value };
    return MONEY_HEADS.has(heads[column]!)
      ? { type: Number, value: Number(value), format: '#,##0.00' }
      : { type: String, value };
  };
  const data = [
    heads.map(head => ({ type: String, value: head, fontWeight: 'bold' as const })),
    ...rows.map(row => row.map(cellOf))
  ];
  return writeXlsxFile(data, { columns: heads.map(head => ({ width: Math.max(12, head.length + 2) })) }).toBuffer();
}
