/** What is said of a table and of each of its columns. */

export type ColumnKind = 'text' | 'number' | 'count' | 'reading' | 'money' | 'date' | 'choice' | 'yesNo';

export interface Column {
  /** Our name for it; never changes. */
  readonly key: string;
  /** What stands in the header row, with its unit. */
  readonly header: string;
  readonly unit?: string;
  readonly kind: ColumnKind;
  /** The words of a choice, as written in the sheet. */
  readonly choices?: readonly string[];
  /** A drop-down fed by another table's column. */
  readonly from?: { readonly table: string; readonly key: string };
  /** What input checks accept, in the column's unit. */
  readonly low?: number;
  readonly high?: number;
  readonly needed?: boolean;
  /** Not in the first workbooks: that a table lacks it says nothing about whose table it is. */
  readonly later?: true;
  /** Width in characters. */
  readonly width: number;
  /** Excel number format. */
  readonly format?: string;
  /** Other headings that mean the same, lower case. */
  readonly synonyms: readonly string[];
}

export interface TableSchema {
  /** The table's name in the workbook, and its sheet's. */
  readonly name: string;
  /** One sentence for the first run and the help. */
  readonly purpose: string;
  readonly columns: readonly Column[];
  /** Columns at its left by which a row is known: they stay in sight. */
  readonly inSight?: number;
  /** Blank rows that a new table has at least: rows are written into it, and only a person can make it longer. */
  readonly room?: number;
  /** No plan needs it: where a workbook has none, the screen that does asks for it. */
  readonly later?: true;
}
