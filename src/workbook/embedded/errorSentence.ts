/** Why the selected cell shows an error, for hosts whose cells cannot say it. */
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
  const moved = spreadsheet.injector.get(SheetsSelectionsService).selectionMoveEnd$.subscribe(now);
  const calculated = spreadsheet.injector.get(FormulaCalculationSessionService).resultApplied$.subscribe(now);
  return () => {
    moved.unsubscribe();
    calculated.unsubscribe();
  };
}

function selectedError(spreadsheet: Spreadsheet): CellError | null {
  const range = spreadsheet.workbook.getActiveCell()?.getRange();
  const sheet = spreadsheet.workbook.getActiveSheet().getSheetName();
  const worksheet = worksheetNamed(spreadsheet, sheet);
  if (!range || !worksheet) return null;
  const at = { sheet, row: range.startRow, column: range.startColumn, rows: 1, columns: 1 };
  const { values, formulas } = readCells(spreadsheet, worksheet, at);
  const [value, formula] = [values[0]?.[0] ?? null, formulas[0]?.[0] ?? null];
  // What a function said about a cell that has since been moved or mended is of no use any more.
  if (typeof value !== 'object' || value === null || !formula?.toUpperCase().includes(`${functionNamespace}.`))
    return null;
  const cell = { sheetId: worksheet.getSheetId(), row: at.row, column: at.column };
  return { cell: addressOf(at), error: value.error, says: spreadsheet.errors.at(cell) };
}
