/** Rows made high enough for text that wraps; the spreadsheet itself measures only the sheet on the screen. */
import type { Worksheet } from '@univerjs/core';
import { WrapStrategy } from '@univerjs/core';
import { SetWorksheetRowHeightMutation } from '@univerjs/sheets';
import type { Block, Change } from '../port';
import { readCells, worksheetNamed } from './cells';
import type { Step } from './journal';
import { pixelsPerCharacter, workbookId } from './snapshot';
import type { Spreadsheet } from './spreadsheet';
import { allTables } from './tables';

/* Measured on the screen at the default size of 11 points: line height, what a row adds to its lines, a filter button. */
const linePixels = 19;
const aroundPixels = 5;
const buttonPixels = 22;
/** Bold letters are wider. */
const boldFactor = 1.08;

/** Steps that give the rows of newly wrapped blocks the height their text needs; rows only ever get higher. */
export function fitRows(spreadsheet: Spreadsheet, changes: readonly Change[]): Step[] {
  const wrapped = changes.filter((change) => change.do === 'format' && change.format.wrap === true);
  return wrapped.flatMap((change) => ('at' in change ? fitBlock(spreadsheet, change.at) : []));
}

function fitBlock(spreadsheet: Spreadsheet, at: Block): Step[] {
  const worksheet = worksheetNamed(spreadsheet, at.sheet);
  if (!worksheet) return [];
  const headers = new Set(allTables(spreadsheet).flatMap((table) => (table.worksheet === worksheet ? [table.at.row] : [])));
  return readCells(spreadsheet, worksheet, at).values.flatMap((line, down) => {
    const row = at.row + down;
    const lines = line.map((value, across) => {
      if (typeof value !== 'string') return 1;
      return linesOf(spreadsheet, worksheet, value, row, at.column + across, headers.has(row) ? buttonPixels : 0);
    });
    const height = Math.max(1, ...lines) * linePixels + aroundPixels;
    return height > worksheet.getRowHeight(row) ? [heightStep(worksheet, row, height)] : [];
  });
}

function linesOf(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  text: string,
  row: number,
  column: number,
  takenPixels: number,
): number {
  const style = spreadsheet.workbook.getWorkbook().getStyles().getStyleByCell(worksheet.getCellRaw(row, column));
  if (style?.tb !== WrapStrategy.WRAP) return 1;
  const perCharacter = pixelsPerCharacter * (style.bl ? boldFactor : 1);
  const room = Math.max(1, Math.floor((worksheet.getColumnWidth(column) - takenPixels) / perCharacter));
  return text.split('\n').reduce((lines, paragraph) => lines + wrappedLines(paragraph, room), 0);
}

/** Lines a paragraph takes when it breaks between words, a word longer than the room breaking within itself. */
export function wrappedLines(paragraph: string, roomCharacters: number): number {
  let lines = 1;
  let used = 0;
  for (const word of paragraph.split(' ')) {
    const length = [...word].length;
    if (used > 0 && used + 1 + length > roomCharacters) {
      lines += 1;
      used = 0;
    } else if (used > 0) {
      used += 1;
    }
    lines += Math.max(0, Math.ceil((used + length) / roomCharacters) - 1);
    used = used + length > roomCharacters ? (used + length) % roomCharacters : used + length;
  }
  return lines;
}

function heightStep(worksheet: Worksheet, row: number, height: number): Step {
  const ranges = [{ startRow: row, endRow: row, startColumn: 0, endColumn: worksheet.getColumnCount() - 1 }];
  return {
    id: SetWorksheetRowHeightMutation.id,
    params: { unitId: workbookId, subUnitId: worksheet.getSheetId(), ranges, rowHeight: height },
  };
}
