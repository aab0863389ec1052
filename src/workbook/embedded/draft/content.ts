/** A workbook that was nothing but data, as the embedded spreadsheet loads it. */
import type { ICellData, IStyleData, IWorkbookData, IWorksheetData } from '@univerjs/core';
import { ICommandService } from '@univerjs/core';
import { AddDataValidationMutation } from '@univerjs/data-validation';
import { TableManager } from '@univerjs/sheets-table';
import { fixed, sameName } from '../../shared/address';
import { choicesRule, styleOf } from '../dress';
import { usualColumns, usualRows } from '../measures';
import { cellData, everyCellsStyle } from '../snapshot';
import type { OpenedContent, Spreadsheet } from '../spreadsheet';
import { rangeOfBlock } from '../tables';
import type { DraftBook, DraftSheet } from './book';

export function draftContent(book: DraftBook): OpenedContent {
  return {
    data: workbookOf(book),
    complete: async (spreadsheet) => complete(spreadsheet, book),
    calculatesLater: true,
  };
}

const idOf = (index: number): string => `sheet${index + 1}`;

function workbookOf({ sheets, settings }: DraftBook): Partial<IWorkbookData> {
  const looks = new Looks();
  const entries = sheets.map((sheet, index) => [idOf(index), sheetData(sheet, idOf(index), looks)] as const);
  return {
    name: 'Workbook',
    sheetOrder: entries.map(([id]) => id),
    sheets: Object.fromEntries(entries),
    styles: looks.styles(),
    custom: Object.fromEntries(settings),
  };
}

function sheetData(sheet: DraftSheet, id: string, looks: Looks): Partial<IWorksheetData> {
  const { name, widths, heights, frozenRows, frozenColumns } = sheet;
  return {
    id,
    name,
    rowCount: usualRows,
    columnCount: usualColumns,
    defaultStyle: everyCellsStyle,
    cellData: cellsOf(sheet, looks),
    columnData: Object.fromEntries([...widths].map(([column, w]) => [column, { w }])),
    rowData: Object.fromEntries([...heights].map(([row, h]) => [row, { h }])),
    freeze: {
      xSplit: frozenColumns,
      ySplit: frozenRows,
      startRow: frozenRows || -1,
      startColumn: frozenColumns || -1,
    },
  };
}

type Matrix = Record<number, Record<number, ICellData>>;

function cellsOf({ cells, formats }: DraftSheet, looks: Looks): Matrix {
  const matrix: Matrix = {};
  cells.forEach((line, row) => {
    const made: Record<number, ICellData> = (matrix[row] = {});
    line.forEach((cell, column) => {
      const data = cellData(cell ?? null);
      if (data) made[column] = data;
    });
  });
  for (const { at, format } of formats) {
    const style = styleOf(format);
    for (let row = at.row; row < at.row + at.rows; row += 1) {
      const line = (matrix[row] ??= {});
      for (let column = at.column; column < at.column + at.columns; column += 1) {
        const cell = (line[column] ??= {});
        cell.s = looks.over(typeof cell.s === 'string' ? cell.s : null, style);
      }
    }
  }
  return matrix;
}

/** Looks by their ids, each kept once, however many cells have it. */
class Looks {
  private readonly byId = new Map<string, IStyleData>();
  private readonly idByText = new Map<string, string>();
  private readonly combined = new Map<IStyleData, Map<string | null, string>>();

  /** The id of a look that lies over another. */
  over(below: string | null, style: IStyleData): string {
    const known = this.combined.get(style) ?? new Map<string | null, string>();
    this.combined.set(style, known);
    const id = known.get(below) ?? this.idOf({ ...(below === null ? {} : this.byId.get(below)), ...style });
    known.set(below, id);
    return id;
  }

  styles(): Record<string, IStyleData> {
    return Object.fromEntries(this.byId);
  }

  private idOf(style: IStyleData): string {
    const text = JSON.stringify(style);
    const id = this.idByText.get(text) ?? `look${this.byId.size + 1}`;
    this.idByText.set(text, id);
    this.byId.set(id, style);
    return id;
  }
}

function complete(spreadsheet: Spreadsheet, { sheets, tables, choices, shown }: DraftBook): void {
  const manager = spreadsheet.injector.get(TableManager);
  const commands = spreadsheet.injector.get(ICommandService);
  const idNamed = (name: string): string => idOf(sheets.findIndex((sheet) => sameName(sheet.name, name)));
  // Shown first, so that nothing is done for a sheet that nobody will see first.
  const sheet = spreadsheet.workbook.getSheetByName(shown.sheet);
  if (sheet) spreadsheet.workbook.setActiveSheet(sheet);
  sheet?.setActiveRange(sheet.getRange(shown.row, shown.column, shown.rows, shown.columns));
  for (const { name, at } of tables) manager.addTable(spreadsheet.id, idNamed(at.sheet), name, rangeOfBlock(at));
  for (const { at, from, hint } of choices) {
    const source = 'sheet' in from ? { reference: fixed(from) } : from;
    const params = { unitId: spreadsheet.id, subUnitId: idNamed(at.sheet), rule: choicesRule(at, source, hint) };
    commands.syncExecuteCommand(AddDataValidationMutation.id, params);
  }
  spreadsheet.forgetUndo();
}
