import type { Matrix } from '../../src/workbook/records';
import type { Simulated } from './simulated';

/** Puts a matrix under the headings of a table, past the port, as if it had always stood there. */
export function lay({ book }: Simulated, name: string, matrix: Matrix): void {
  const table = book.tables.find((each) => each.name === name);
  if (!table) throw new Error(`no table ${name}`);
  matrix.slice(1).forEach((row, down) => {
    row.forEach((value, across) => {
      if (value === null || typeof value === 'object') return;
      table.sheet.cells.set(table.at.row + 1 + down, table.at.column + across, {
        value: value as string | number | boolean,
      });
    });
  });
  Object.assign(table, { at: { ...table.at, rows: Math.max(table.at.rows, matrix.length) } });
}
