/** Rows made high enough for text that wraps; the spreadsheet itself measures only the sheet on the screen. */
import type { Worksheet } from '@univerjs/core';
import { ICommandService, WrapStrategy } from '@univerjs/core';
import { SetWorksheetRowHeightMutation } from '@univerjs/sheets';
import type { Block, Change } from '../port';
import { readCells, worksheetNamed } from './cells';
import { heightInPixels, linesIn, rowOfSize, rowPixels } from './measures';
import type { Spreadsheet } from './spreadsheet';
import { allTables } from './tables';

/** Fits rows after a change, and gives them their old height back when it is taken back. */
export class RowHeights {
  /** What each row was given, by sheet and row. */
  private readonly given = new Map<string, number>();

  constructor(private readonly spreadsheet: Spreadsheet) {}

  /** Gives the rows of newly wrapped blocks, and those of larger letters, the height their text needs; rows only ever get higher. */
  fit(changes: readonly Change[]): void {
    for (const change of changes) {
      if (change.do !== 'format') continue;
      if (change.format.wrap === true) this.fitBlock(change.at);
      if (change.format.height !== undefined) this.raise(change.at, heightInPixels(change.format.height));
      if (change.format.size !== undefined) this.raise(change.at, rowOfSize(change.format.size));
    }
  }

  /** Forgets the rows of a sheet that is gone. */
  forget(sheetId: string): void {
    for (const key of this.given.keys()) if (key.startsWith(`${sheetId}!`)) this.given.delete(key);
  }

  /** Puts rows back to the usual height, unless a person has given them another since. */
  unfit(at: Block): void {
    const worksheet = worksheetNamed(this.spreadsheet, at.sheet);
    for (let row = at.row; worksheet && row < at.row + at.rows; row++) {
      const key = `${worksheet.getSheetId()}!${row}`;
      const given = this.given.get(key);
      if (given !== undefined && worksheet.getRowHeight(row) === given) {
        this.setHeight(worksheet, row, worksheet.getConfig().defaultRowHeight);
      }
      this.given.delete(key);
    }
  }

  private fitBlock(at: Block): void {
    const worksheet = worksheetNamed(this.spreadsheet, at.sheet);
    if (!worksheet) return;
    const tables = allTables(this.spreadsheet).filter((table) => table.worksheet === worksheet);
    const headers = new Set(tables.map((table) => table.at.row));
    readCells(this.spreadsheet, worksheet, at).values.forEach((line, down) => {
      const row = at.row + down;
      const filterButton = headers.has(row);
      const lines = line.map((value, across) =>
        typeof value === 'string'
          ? linesOf(this.spreadsheet, worksheet, value, row, at.column + across, filterButton)
          : 1,
      );
      this.raiseRow(worksheet, row, rowPixels(Math.max(1, ...lines)));
    });
  }

  private raise(at: Block, height: number): void {
    const worksheet = worksheetNamed(this.spreadsheet, at.sheet);
    for (let row = at.row; worksheet && row < at.row + at.rows; row++) this.raiseRow(worksheet, row, height);
  }

  private raiseRow(worksheet: Worksheet, row: number, height: number): void {
    if (height <= worksheet.getRowHeight(row)) return;
    this.setHeight(worksheet, row, height);
    this.given.set(`${worksheet.getSheetId()}!${row}`, height);
  }

  private setHeight(worksheet: Worksheet, row: number, rowHeight: number): void {
    const ranges = [{ startRow: row, endRow: row, startColumn: 0, endColumn: worksheet.getColumnCount() - 1 }];
    const params = { unitId: this.spreadsheet.id, subUnitId: worksheet.getSheetId(), ranges, rowHeight };
    this.spreadsheet.injector.get(ICommandService).syncExecuteCommand(SetWorksheetRowHeightMutation.id, params);
  }
}

function linesOf(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  text: string,
  row: number,
  column: number,
  filterButton: boolean,
): number {
  const style = spreadsheet.workbook.getWorkbook().getStyles().getStyleByCell(worksheet.getCellRaw(row, column));
  if (style?.tb !== WrapStrategy.WRAP) return 1;
  return linesIn(text, { columnPixels: worksheet.getColumnWidth(column), bold: Boolean(style.bl), filterButton });
}
