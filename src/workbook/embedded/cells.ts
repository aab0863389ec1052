/** Reading the cells of the embedded spreadsheet: as kept, not as shown. */
import type { ICellData, Nullable, Worksheet } from '@univerjs/core';
import { CellValueType } from '@univerjs/core';
import type { ErrorType } from '@univerjs/engine-formula';
import { ERROR_TYPE_SET, FormulaDataModel } from '@univerjs/engine-formula';
import { drained } from '../../core/index';
import type { Block, Seen } from '../port';
import type { Spreadsheet } from './spreadsheet';

/** Values and formulas of a block; a cell past the sheet's edge is blank. */
export interface Cells {
  readonly values: Seen[][];
  readonly formulas: (string | null)[][];
}

type Matrix = Record<number, Record<number, Nullable<ICellData>> | undefined>;

/** A worksheet by its name; names are told apart as Excel does, without regard to case. */
export function worksheetNamed(spreadsheet: Spreadsheet, name: string): Worksheet | null {
  const wanted = name.toLowerCase();
  const sheets = spreadsheet.workbook.getWorkbook().getSheets();
  return sheets.find((sheet) => sheet.getName().toLowerCase() === wanted) ?? null;
}

/** Reads a block without waiting for anything. */
export function readCells(spreadsheet: Spreadsheet, worksheet: Worksheet, block: Block): Cells {
  return drained(cellSteps(spreadsheet, worksheet, block));
}

/** Rows that are read at a stretch. */
const ROWS_A_STEP = 100;

/** {@link readCells} in steps, each of which says how many rows are read. */
export function* cellSteps(spreadsheet: Spreadsheet, worksheet: Worksheet, block: Block): Generator<number, Cells> {
  const matrix = worksheet.getCellMatrix();
  const model = spreadsheet.injector.get(FormulaDataModel);
  const sheetId = worksheet.getSheetId();
  // What a formula spilled is kept apart from what was entered.
  const spilled = (model.getArrayFormulaCellData()?.[spreadsheet.id]?.[sheetId] ?? {}) as Matrix;
  const values: Seen[][] = [];
  const formulas: (string | null)[][] = [];
  for (let row = block.row; row < block.row + block.rows; row++) {
    const lineOfValues: Seen[] = [];
    const lineOfFormulas: (string | null)[] = [];
    for (let column = block.column; column < block.column + block.columns; column++) {
      const entered = matrix.getValue(row, column);
      const holdsFormula = Boolean(entered?.f ?? entered?.si);
      lineOfFormulas.push(
        holdsFormula ? (model.getFormulaStringByCell(row, column, sheetId, spreadsheet.id) ?? null) : null,
      );
      lineOfValues.push(seen(holdsFormula || hasContent(entered) ? entered : spilled[row]?.[column]));
    }
    values.push(lineOfValues);
    formulas.push(lineOfFormulas);
    if (values.length % ROWS_A_STEP === 0) yield values.length;
  }
  return { values, formulas };
}

function hasContent(cell: Nullable<ICellData>): cell is ICellData {
  return Boolean(cell && ((cell.v !== null && cell.v !== undefined && cell.v !== '') || cell.p));
}

function seen(cell: Nullable<ICellData>): Seen {
  if (!cell) return null;
  if (cell.p) return richText(cell);
  const { v: value } = cell;
  // A computed empty text shows nothing, and to Excel's own reading it is as good as a blank.
  if (value === null || value === undefined || value === '') return null;
  if (typeof value === 'string' && cell.t !== CellValueType.FORCE_STRING && ERROR_TYPE_SET.has(value as ErrorType)) {
    return { error: value };
  }
  if (cell.t === CellValueType.BOOLEAN) return Boolean(Number(value));
  return value;
}

/** Text of several lines is kept as a document; its paragraphs end in `\r`, the document in `\r\n`. */
function richText(cell: ICellData): Seen {
  const text = cell.p?.body?.dataStream.replace(/\r?\n$/, '').replaceAll('\r', '\n') ?? '';
  return text === '' ? null : text;
}
