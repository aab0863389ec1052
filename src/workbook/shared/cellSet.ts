/** Cells by their sheets, so that one of many thousands is found without going through all of them. */
import { groupedBy } from '../../core/index';
import type { Block, Receipt } from '../port';
import { isSkip } from './cellNow';
import type { Place } from './cellNow';

export interface CellSet {
  has(sheet: string, row: number, column: number): boolean;
  /** Whether any of them lies in a block. */
  anyIn(at: Block): boolean;
  anyOn(sheet: string): boolean;
}

/** More columns than any sheet has. */
const COLUMNS = 16_384;

export function cellSet(places: readonly Place[]): CellSet {
  const onSheet = groupedBy(places, ({ sheet }) => sheet.toLowerCase());
  const keys = new Map<string, ReadonlySet<number>>();
  const keysOf = (sheet: string): ReadonlySet<number> => {
    const known = keys.get(sheet);
    if (known) return known;
    const made = new Set((onSheet.get(sheet) ?? []).map(({ row, column }) => row * COLUMNS + column));
    keys.set(sheet, made);
    return made;
  };
  return {
    has: (sheet, row, column) => places.length > 0 && keysOf(sheet.toLowerCase()).has(row * COLUMNS + column),
    anyIn: (at) =>
      (onSheet.get(at.sheet.toLowerCase()) ?? []).some(
        ({ row, column }) =>
          row >= at.row && row < at.row + at.rows && column >= at.column && column < at.column + at.columns,
      ),
    anyOn: (sheet) => onSheet.has(sheet.toLowerCase()),
  };
}

/** Whether something was put into a cell, to be asked of one sheet and then of its cells. */
export function cellsPut({ written }: Receipt): (sheet: string) => (row: number, column: number) => boolean {
  const onSheet = groupedBy(written, ({ at }) => at.sheet.toLowerCase());
  return (sheet) => {
    const blocks = onSheet.get(sheet.toLowerCase()) ?? [];
    return (row, column) => blocks.some(({ at, put }) => !isSkip(put[row - at.row]?.[column - at.column]));
  };
}
