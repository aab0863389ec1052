/**
 * Deleting a sheet ends what can be undone.
 *
 * With a screen the spreadsheet often keeps no entry for it: something of its own fails on the way, unsaid, and the next press of
 * Undo takes back something earlier, or brings back another sheet. And a sheet that our own taking back removed is to stay away.
 */
import { ICommandService, type Injector } from '@univerjs/core';
import { RemoveSheetCommand } from '@univerjs/sheets';

/** As much of the spreadsheet as is asked here: all of it knows this file. */
interface Deletes {
  readonly injector: Injector;
  readonly workbook: { getSheetBySheetId(id: string): unknown };
  forgetUndo(): void;
}

/** Empties the undo list after each sheet that is deleted, by a person or by us; one that undoing itself removes can come back. */
export function endUndoWithSheets(spreadsheet: Deletes): void {
  spreadsheet.injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    if (id !== RemoveSheetCommand.id) return;
    const { subUnitId } = (params ?? {}) as { readonly subUnitId?: string };
    // It refuses to delete the last one.
    if (subUnitId !== undefined && spreadsheet.workbook.getSheetBySheetId(subUnitId)) return;
    spreadsheet.forgetUndo();
  });
}
