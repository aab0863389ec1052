/** The values that a file had, in the place of formulas that do not come out here. */
import type { ICellData, IObjectMatrixPrimitiveType, Worksheet } from '@univerjs/core';
import { CellValueType, ICommandService } from '@univerjs/core';
import { SetRangeValuesMutation } from '@univerjs/sheets';
import type { Block } from '../../port';
import { named } from '../../shared/address';
import type { CellFormula, OpenedFile } from '../opened';
import { cellData } from '../snapshot';
import type { Spreadsheet } from '../spreadsheet';
import type { CellColumns, FileFormula, OpenedSheet } from './book';
import { BLANK, ERROR, FILLED, NUMBER, TRUTH } from './book';

/** A formula of the file in its place. */
export interface Placed {
  readonly at: Block;
  readonly formula: FileFormula;
  readonly kept: CellFormula;
  readonly wanted: Block;
  readonly worksheet: Worksheet;
  readonly sheet: OpenedSheet;
}

/** Formulas that are replaced at a stretch: the spreadsheet hears of them together. */
const AT_A_STRETCH = 2000;

/**
 * Puts the file's values in the place of formulas, in steps.
 *
 * @param calculates whether what hangs on them is calculated again by itself; for thousands of formulas that takes minutes
 */
export function* givingBack(
  spreadsheet: Spreadsheet,
  file: OpenedFile,
  all: readonly Placed[],
  calculates: boolean,
): Generator<void, void> {
  const commands = spreadsheet.injector.get(ICommandService);
  for (const worksheet of new Set(all.map((each) => each.worksheet))) {
    const own = all.filter((each) => each.worksheet === worksheet);
    for (let from = 0; from < own.length; from += AT_A_STRETCH) {
      yield;
      const cellValue: IObjectMatrixPrimitiveType<ICellData> = {};
      for (const each of own.slice(from, from + AT_A_STRETCH)) {
        file.keptValues.push(named(each.at));
        putValues(cellValue, file, each);
      }
      const params = { unitId: spreadsheet.id, subUnitId: worksheet.getSheetId(), cellValue };
      commands.syncExecuteCommand(SetRangeValuesMutation.id, params, { onlyLocal: !calculates });
    }
  }
}

/** The file's values for all cells that a formula was to fill; its own cell remembers that it is not calculated. */
function putValues(
  back: IObjectMatrixPrimitiveType<ICellData>,
  file: OpenedFile,
  { sheet, kept, wanted, worksheet }: Placed,
): void {
  const blank = { f: null, si: null, p: null };
  const line = (row: number): Record<number, ICellData> => (back[row] ??= {}) as Record<number, ICellData>;
  if (wanted.rows > 1 || wanted.columns > 1) {
    for (const { row, column, data } of filledCells(file, sheet, wanted)) line(row)[column] = { ...blank, ...data };
  }
  const custom = worksheet.getCellMatrix().getValue(kept.row, kept.column)?.custom;
  const own = kept.value === null ? { v: null, t: null } : (errorData(kept.value) ?? cellData(kept.value) ?? {});
  line(kept.row)[kept.column] = { ...blank, ...own, custom: { ...custom, formula: { ...kept, entered: null } } };
}

/** Where cells that other cells' formulas fill stand among the sheet's cells, by row and column. */
const filled = new WeakMap<CellColumns, ReadonlyMap<number, ReadonlyMap<number, number>>>();

function filledPlaces(cells: CellColumns): ReadonlyMap<number, ReadonlyMap<number, number>> {
  const known = filled.get(cells);
  if (known) return known;
  const places = new Map<number, Map<number, number>>();
  for (const [i, row] of cells.rows.entries()) {
    if ((cells.kinds[i] ?? BLANK) < FILLED) continue;
    const line = places.get(row) ?? new Map<number, number>();
    places.set(row, line.set(cells.columns[i] ?? 0, i));
  }
  filled.set(cells, places);
  return places;
}

function filledCells(
  { book }: OpenedFile,
  { cells }: OpenedSheet,
  { row: top, column: left, rows, columns }: Block,
): { row: number; column: number; data: ICellData }[] {
  const found: { row: number; column: number; data: ICellData }[] = [];
  const places = filledPlaces(cells);
  const lines = rows < places.size ? Array.from({ length: rows }, (_, down) => top + down) : places.keys();
  for (const row of lines) {
    if (row < top || row >= top + rows) continue;
    for (const [column, i] of places.get(row) ?? []) {
      if (column < left || column >= left + columns) continue;
      found.push({ row, column, data: dataOf((cells.kinds[i] ?? BLANK) - FILLED, cells.values[i] ?? 0, book.texts) });
    }
  }
  return found;
}

function dataOf(kind: number, value: number, texts: readonly string[]): ICellData {
  if (kind === BLANK) return { v: null, t: null };
  if (kind === NUMBER) return { v: value, t: CellValueType.NUMBER };
  if (kind === TRUTH) return { v: value, t: CellValueType.BOOLEAN };
  const text = texts[value] ?? '';
  return kind === ERROR ? { v: text, t: null } : (cellData(text) ?? {});
}

function errorData(value: CellFormula['value']): ICellData | null {
  return errorText(value) ? { v: value, t: null } : null;
}

/** Whether a text is what a cell with an error shows. */
export function errorText(value: CellFormula['value']): value is string {
  return typeof value === 'string' && /^#[A-Z0-9/_]+[!?]?$/.test(value);
}
