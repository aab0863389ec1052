/** How a sheet is to be printed: the spreadsheet itself knows of no paper, so we keep it with the workbook. */
import type { IRange } from '@univerjs/core';
import { ICommandService } from '@univerjs/core';
import { InsertRowMutation, RemoveRowMutation } from '@univerjs/sheets';
import type { PageSetup } from '../port';
import { MOST_ROWS } from '../shared/limits';
import { worksheetNamed } from './cells';
import type { Spreadsheet } from './spreadsheet';

/** Kept under the sheet's id, since a sheet may get another name. */
const pageStem = 'Setwright_Page_';
export const pageKey = (sheetId: string): string => pageStem + sheetId;

/** Keeps how a sheet is printed, in place of what was kept. */
export function keepPage(spreadsheet: Spreadsheet, sheet: string, setup: PageSetup): void {
  const worksheet = worksheetNamed(spreadsheet, sheet);
  if (worksheet) keep(spreadsheet, worksheet.getSheetId(), setup);
}

/** How a sheet is printed; null where nobody said. */
export function keptPage(spreadsheet: Spreadsheet, sheetId: string): PageSetup | null {
  const kept: unknown = spreadsheet.workbook.getCustomMetadata()?.[pageKey(sheetId)];
  return typeof kept === 'string' ? (JSON.parse(kept) as PageSetup) : null;
}

/** Every key of the workbook's settings that is a page's. */
export function isPageKey(key: string): boolean {
  return key.startsWith(pageStem);
}

/** Pages of sheets that are gone go as well: each fill that is taken back would leave one behind. */
function keep({ workbook }: Spreadsheet, sheetId: string, setup: PageSetup): void {
  const sheets = new Set(workbook.getSheets().map((sheet) => pageKey(sheet.getSheetId())));
  const kept = Object.entries(workbook.getCustomMetadata() ?? {}).filter(
    ([key]) => !key.startsWith(pageStem) || sheets.has(key),
  );
  workbook.setCustomMetadata({ ...Object.fromEntries(kept), [pageKey(sheetId)]: JSON.stringify(setup) });
}

interface RowsChanged {
  readonly unitId?: string;
  readonly subUnitId?: string;
  readonly range?: IRange;
}

/** Lets what is printed follow rows that are inserted or taken out, by hand or by undoing. */
export function followRows(spreadsheet: Spreadsheet): void {
  const directions: Readonly<Record<string, 1 | -1>> = { [InsertRowMutation.id]: 1, [RemoveRowMutation.id]: -1 };
  spreadsheet.injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    const direction = directions[id];
    const { unitId, subUnitId, range } = (params ?? {}) as RowsChanged;
    if (direction === undefined || unitId !== spreadsheet.id || subUnitId === undefined || !range) return;
    const setup = keptPage(spreadsheet, subUnitId);
    if (!setup) return;
    const rows = range.endRow - range.startRow + 1;
    keep(spreadsheet, subUnitId, movedPage(setup, range.startRow, rows * direction));
  });
}

/** A page after `by` rows came in at a row, or went from there on. */
export function movedPage(setup: PageSetup, at: number, by: number): PageSetup {
  const place = (row: number): number => (row < at ? row : Math.max(at, row + by));
  const { area, titleRows, breaks, ...rest } = setup;
  const wholeColumns = area.row === 0 && area.rows >= MOST_ROWS;
  // What is put in at the top of a sheet that is printed from there is printed too.
  const from = area.row === 0 ? 0 : place(area.row);
  const moved = wholeColumns ? area : { ...area, row: from, rows: Math.max(1, place(area.row + area.rows) - from) };
  return {
    ...rest,
    area: moved,
    ...(titleRows && { titleRows: { ...titleRows, row: place(titleRows.row) } }),
    ...(breaks && { breaks: breaks.map(place) }),
  };
}
