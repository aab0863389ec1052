/**
 * Tables that grow as Excel's do when a person types right below them.
 *
 * The stretch is no entry of the undo list: undoing the typing must be one press of Ctrl+Z. When it leaves the last row
 * blank again, the table goes back to the size it had.
 */
import { ICommandService } from '@univerjs/core';
import { readCells } from './cells';
import type { Spreadsheet } from './spreadsheet';
import type { Table } from './tables';
import { allTables, grownBlock, resizeTable } from './tables';

export class TableGrowth {
  /** How many rows each table had before a person typed below it. */
  private readonly rowsBefore = new Map<string, number>();

  constructor(private readonly spreadsheet: Spreadsheet) {}

  /** Fits every table, or those of one sheet, to what now stands below them. */
  fit(sheetId?: string): void {
    for (const table of allTables(this.spreadsheet)) {
      if (sheetId === undefined || table.worksheet.getSheetId() === sheetId) this.fitOne(table);
    }
  }

  private fitOne(table: Table): void {
    const { rows } = grownBlock(this.spreadsheet, table);
    if (rows > table.at.rows) {
      this.rowsBefore.set(table.id, this.rowsBefore.get(table.id) ?? table.at.rows);
      this.resize(table, rows);
      return;
    }
    const before = this.rowsBefore.get(table.id);
    if (before === undefined) return;
    let wanted = table.at.rows;
    while (wanted > before && this.isBlank(table, wanted - 1)) wanted--;
    if (wanted < table.at.rows) this.resize(table, wanted);
    if (wanted === before) this.rowsBefore.delete(table.id);
  }

  private isBlank(table: Table, down: number): boolean {
    const line = { ...table.at, row: table.at.row + down, rows: 1 };
    const { values, formulas } = readCells(this.spreadsheet, table.worksheet, line);
    return values[0]?.every((value, column) => value === null && formulas[0]?.[column] === null) ?? true;
  }

  private resize(table: Table, rows: number): void {
    const commands = this.spreadsheet.injector.get(ICommandService);
    for (const { id, params } of resizeTable(table, { ...table.at, rows }).steps)
      commands.syncExecuteCommand(id, params);
  }
}

/** Whether the workbook a step belongs to is ours; the spreadsheet's own editors are workbooks, too. */
export function isOurWorkbook(spreadsheet: Spreadsheet, params: { readonly unitId?: string } | undefined): boolean {
  return params?.unitId === spreadsheet.id;
}
