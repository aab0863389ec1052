/** Sentences about lists of the shop's own that stand for tables of ours, and no longer can. */
import type { BrokenMatch } from '../workbook/connect/resolve';
import type { TableSchema } from '../workbook/columns';
import { sayBroken } from './connect';

const HOW = 'Nothing was read or written. The tab Lists connects it again.';

export function sayListGone(table: string, list: string): string {
  return `“${list}”, which stands for ${table}, is not in this workbook any more. ${HOW}`;
}

export function sayBrokenConnection(schema: TableSchema, list: string, broken: readonly BrokenMatch[]): string {
  const what = broken.map((each) => sayBroken(schema, each)).join(' ');
  return `“${list}”, which stands for ${schema.name}, is not as it was. ${what} ${HOW}`;
}
