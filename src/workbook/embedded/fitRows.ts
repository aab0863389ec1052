/** Rows made high enough for text that wraps; the spreadsheet itself measures only the sheet on the screen. */
import type { Worksheet } from '@univerjs/core';
import { BooleanNumber, ICommandService, WrapStrategy } from '@univerjs/core';
import { SetWorksheetRowAutoHeightMutation, SetWorksheetRowHeightMutation } from '@univerjs/sheets';
import type { Block, Change } from '../port';
import { readCells, worksheetNamed } from './cells';
import { heightInPixels, linesIn, rowOfSize, rowPixels } from './measures';
import type { Spreadsheet } from './spreadsheet';
import { allTables } from './tables';

/** Fits rows after a change, and gives them their old height back when it is taken back. */
export class RowHeights {
  /** What each row was given and had before, by sheet and row. */
  private readonly given = new Map<string, { readonly height: number; readonly before: number }>();

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

  /** Puts rows back to the height that they had, unless a person has given them another since. */
  unfit(at: Block): void {
    const worksheet = worksheetNamed(this.spreadsheet, at.sheet);
    for (let row = at.row; worksheet && row < at.row + at.rows; row++) {
      const key = `${worksheet.getSheetId()}!${row}`;
      const given = this.given.get(key);
      if (given !== undefined && worksheet.getRowHeight(row) === given.height) {
        this.setHeight(worksheet, row, given.before);
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
      // One line finds room in whatever height a row has.
      const most = Math.max(1, ...lines);
      if (most > 1) this.raiseRow(worksheet, row, rowPixels(most));
    });
  }

  private raise(at: Block, height: number): void {
    const worksheet = worksheetNamed(this.spreadsheet, at.sheet);
    for (let row = at.row; worksheet && row < at.row + at.rows; row++) this.raiseRow(worksheet, row, height);
  }

  private raiseRow(worksheet: Worksheet, row: number, height: number): void {
    const now = worksheet.getRowHeight(row);
    if (height <= now) return;
    this.setHeight(worksheet, row, height);
    const key = `${worksheet.getSheetId()}!${row}`;
    this.given.set(key, { height, before: this.given.get(key)?.before ?? now });
  }

  private setHeight(worksheet: Worksheet, row: number, rowHeight: number): void {
    const place = { unitId: this.spreadsheet.id, subUnitId: worksheet.getSheetId() };
    const commands = this.spreadsheet.injector.get(ICommandService);
    const known = worksheet.getRowManager().getRow(row);
    // A row that is fitted to its text goes on being fitted: of its two heights the spreadsheet goes by that one.
    if (known?.ah !== undefined && known.ia !== BooleanNumber.FALSE) {
      const rowsAutoHeightInfo = [{ row, autoHeight: rowHeight }];
      commands.syncExecuteCommand(SetWorksheetRowAutoHeightMutation.id, { ...place, rowsAutoHeightInfo });
      return;
    }
    const ranges = [{ startRow: row, endRow: row, startColumn: 0, endColumn: worksheet.getColumnCount() - 1 }];
    commands.syncExecuteCommand(SetWorksheetRowHeightMutation.id, { ...place, ranges, rowHeight });
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
