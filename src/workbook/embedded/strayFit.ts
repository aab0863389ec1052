/**
 * Rows that grow on a sheet that nobody touched. When drop-downs are made anywhere, the library fits the rows they reach, but of whatever
 * sheet is shown a moment later: a list of the shop's that is on the screen while tables are made elsewhere got rows of the usual height for
 * its own, for good. Everybody else who has rows fitted names the sheet.
 */
import type { Injector } from '@univerjs/core';
import { AutoHeightController } from '@univerjs/preset-sheets-core';

/** Has rows fitted only on a sheet that is named. */
export function fitNamedSheetsOnly(injector: Injector): void {
  const controller = injector.get(AutoHeightController);
  const fit = controller.getUndoRedoParamsOfAutoHeight.bind(controller);
  controller.getUndoRedoParamsOfAutoHeight = (ranges, sheetId, heights) =>
    sheetId === undefined ? { redos: [], undos: [] } : fit(ranges, sheetId, heights);
}
