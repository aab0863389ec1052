/** Why the selected cell shows an error, for hosts whose cells cannot say it. */
import type { Worksheet } from '@univerjs/core';
import { FormulaCalculationSessionService } from '@univerjs/sheets-formula';
import { SheetsSelectionsService } from '@univerjs/sheets';
import { addressOf } from '../shared/address';
import { functionNamespace } from '../shared/call';
import { readCells, worksheetNamed } from './cells';
import type { Spreadsheet } from './spreadsheet';

/** An error value of a function of ours in the selected cell, and its sentence where the function gave one. */
export interface CellError {
  readonly cell: string;
  readonly error: string;
  readonly says: string | null;
}

/** Tells at every change of selection or values what the selected cell's error means, null when there is none of ours. */
export function onErrorSentence(spreadsheet: Spreadsheet, tell: (error: CellError | null) => void): () => void {
  const now = (): void => tell(selectedError(spreadsheet));
  const moved = spreadsheet.injector.get(SheetsSelectionsService).selectionChanged$.subscribe(now);
  const calculated = spreadsheet.injector.get(FormulaCalculationSessionService).resultApplied$.subscribe(now);
  return () => {
    moved.unsubscribe();
    calculated.unsubscribe();
  };
}

/** Whether a formula calls a function of ours. */
export function isOurs(formula: string | null | undefined): boolean {
  return formula?.toUpperCase().includes(`${functionNamespace}.`) ?? false;
}

function selectedError(spreadsheet: Spreadsheet): CellError | null {
  const range = spreadsheet.workbook.getActiveCell()?.getRange();
  const worksheet = worksheetNamed(spreadsheet, spreadsheet.workbook.getActiveSheet().getSheetName());
  return range && worksheet ? errorAt(spreadsheet, worksheet, range.startRow, range.startColumn) : null;
}

/** The error that a function of ours shows in a cell; null where it shows none. */
export function errorAt(spreadsheet: Spreadsheet, worksheet: Worksheet, row: number, column: number): CellError | null {
  const at = { sheet: worksheet.getName(), row, column, rows: 1, columns: 1 };
  const { values, formulas } = readCells(spreadsheet, worksheet, at);
  const [value, formula] = [values[0]?.[0] ?? null, formulas[0]?.[0] ?? null];
  // What a function said about a cell that has since been moved or mended is of no use any more.
  if (typeof value !== 'object' || value === null || !isOurs(formula)) return null;
  const says = spreadsheet.errors.at({ sheetId: worksheet.getSheetId(), row, column });
  return { cell: addressOf(at), error: value.error, says };
}
