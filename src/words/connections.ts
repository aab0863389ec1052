/** Sentences about lists of the shop's own that stand for tables of ours, and no longer can. */
import type { BrokenMatch } from '../workbook/connect/resolve';
import type { TableSchema } from '../workbook/columns';
import { sayBroken } from './connect';

const HOW = 'Nothing was read or written. The tab Lists connects it again.';

/** Where a list stands: its sheet, and the row of its headings, from 1. */
export interface ListPlace {
  /** Null for plain cells. */
  readonly table: string | null;
  readonly sheet: string;
  readonly row: number;
}

export function sayListGone(table: string, list: string): string {
  return `“${list}”, which stands for ${table}, is not in this workbook any more. ${HOW}`;
}

export function sayBrokenConnection(schema: TableSchema, at: ListPlace, broken: readonly BrokenMatch[]): string {
  const what = broken.map((each) => sayBroken(schema, each)).join(' ');
  const list = at.table === null ? `The list on the sheet “${at.sheet}”` : `“${at.table}” on the sheet “${at.sheet}”`;
  return `${list}, which stands for ${schema.name}, is not as it was in row ${at.row}, its headings. ${what} ${HOW}`;
}
