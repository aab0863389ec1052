/** Tables of a sheet, in the terms of a workbook file, which is strict about them. */
import type { TableDefinition } from 'hucre/xlsx';
import { addressOf } from '../../shared/address';
import type { Seen } from '../../port';
import type { Table } from '../tables';
import { fileText } from './fileText';

/** A table for the file. */
export interface FileTable {
  readonly definition: TableDefinition;
  /** Its headings as they must stand in the cells: texts, each of them once. */
  readonly headings: readonly string[];
}

/** A table as the file wants it: at least one row below its headings, each heading a text of its own. */
export function fileTable({ name, at }: Table, header: readonly Seen[], taken: readonly string[]): FileTable {
  const headings = ownHeadings(header);
  const range = addressOf({ ...at, rows: Math.max(2, at.rows) });
  const named = ownName(name.replace(/^[^\p{L}_]|[^\p{L}\p{N}_.]/gu, '_'), taken);
  return {
    headings,
    definition: {
      name: named,
      range,
      // A line's end within a heading is written so in a table's definition.
      columns: headings.map((heading) => ({ name: fileText(heading).replaceAll('\n', '_x000a_') })),
      style: 'TableStyleLight1',
    },
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
