/** What hovering over an error shows: the sentence of our own function, in place of “Error in value”. */
import { CellAlertManagerService } from '@univerjs/preset-sheets-core';
import { errorAt } from '../errorSentence';
import type { Spreadsheet } from '../spreadsheet';

/** What the spreadsheet calls the window that it opens over a formula's error. */
const OVER_ERROR = 'SHEET_FORMULA_ALERT';

/** Has the window over an error say why; whoever selects the cell is told the same below the sheet. */
export function sayReasons(spreadsheet: Spreadsheet): void {
  const alerts = spreadsheet.injector.get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    const { row, col, subUnitId } = alert.location;
    const worksheet = alert.key === OVER_ERROR ? spreadsheet.workbook.getWorkbook().getSheetBySheetId(subUnitId) : null;
    const error = worksheet ? errorAt(spreadsheet, worksheet, row, col) : null;
    show(error?.says ? { ...alert, title: error.error, message: error.says } : alert);
  };
}
