/** Tables of a sheet, in the terms of a workbook file, which is strict about them. */
import type { TableDefinition } from 'hucre/xlsx';
import { addressOf } from '../../shared/address';
import type { Seen } from '../../port';
import type { OpenedTable } from '../open/book';
import type { Table } from '../tables';
import { fileText } from './fileText';

/** A table for the file. */
export interface FileTable {
  readonly definition: TableDefinition;
  /** Its headings as they must stand in the cells: texts, each of them once. */
  readonly headings: readonly string[];
}

/** A table as the file wants it: at least one row below its headings, each heading a text of its own. */
export function fileTable(
  { name, at }: Table,
  header: readonly Seen[],
  taken: readonly string[],
  filed: FiledTable = { table: null, totals: false },
): FileTable {
  const headings = ownHeadings(header);
  const { table, totals } = filed;
  const range = addressOf({ ...at, rows: Math.max(2, at.rows) + (totals ? 1 : 0) });
  const named = ownName(name.replace(/^[^\p{L}_]|[^\p{L}\p{N}_.]/gu, '_'), taken);
  return {
    headings,
    definition: {
      name: named,
      range,
      // A line's end within a heading is written so in a table's definition.
      columns: headings.map((heading, across) => ({
        name: fileText(heading).replaceAll('\n', '_x000a_'),
        ...(totals && table?.totalsOf.length === headings.length && totalOf(table.totalsOf[across])),
      })),
      style: table?.style ?? 'TableStyleLight1',
      ...(table && { showRowStripes: table.stripes }),
      ...(totals && { showTotalRow: true }),
    },
  };
}

/** A table of an opened file as the file has it, and whether its row of totals still stands below it. */
export interface FiledTable {
  readonly table: OpenedTable | null;
  readonly totals: boolean;
}

function totalOf(total: OpenedTable['totalsOf'][number] | undefined): Partial<TableDefinition['columns'][number]> {
  const { function: totalFunction, formula: totalFormula, label: totalLabel } = total ?? {};
  return {
    ...(totalFunction !== undefined && { totalFunction }),
    ...(totalFormula !== undefined && { totalFormula }),
    ...(totalLabel !== undefined && { totalLabel }),
  };
}

function ownHeadings(header: readonly Seen[]): string[] {
  const found: string[] = [];
  header.forEach((cell, across) => {
    const text = cell === null || typeof cell === 'object' || cell === '' ? `Column ${across + 1}` : String(cell);
    found.push(ownName(text, found));
  });
  return found;
}

/** The name itself, or with a number behind it where it is taken; case makes no difference. */
function ownName(name: string, taken: readonly string[]): string {
  const isTaken = (wanted: string): boolean => taken.some((other) => other.toLowerCase() === wanted.toLowerCase());
  let own = name;
  for (let next = 2; isTaken(own); next++) own = `${name}${next}`;
  return own;
}
