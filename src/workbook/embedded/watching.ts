/** What a person does to the cells, told apart from what we and the calculation do. */
import type { ICommandInfo } from '@univerjs/core';
import { ICommandService } from '@univerjs/core';
import {
  InsertColMutation,
  InsertRowMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  ReorderRangeMutation,
  SetRangeValuesMutation,
  SetStyleCommand,
  SetWorksheetNameMutation,
} from '@univerjs/sheets';
import { isOurWorkbook } from './grow';
import type { Spreadsheet } from './spreadsheet';

const cellChanges: ReadonlySet<string> = new Set(
  [
    SetRangeValuesMutation,
    MoveRangeMutation,
    ReorderRangeMutation,
    InsertRowMutation,
    RemoveRowMutation,
    MoveRowsMutation,
    InsertColMutation,
    RemoveColMutation,
    MoveColsMutation,
    RemoveSheetMutation,
    SetWorksheetNameMutation,
  ].map(({ id }) => id),
);

interface CellChange {
  readonly unitId?: string;
  readonly subUnitId?: string;
  readonly trigger?: string;
  readonly from?: { readonly subUnitId?: string };
  readonly to?: { readonly subUnitId?: string };
}

/** Calls back with the id of each sheet that a person changes cells of, by hand or by undoing; returns how to stop. */
export function onPersonsChange(
  spreadsheet: Spreadsheet,
  isOurs: () => boolean,
  changed: (sheetId: string) => void,
): () => void {
  const heard = (info: Readonly<ICommandInfo>, local: boolean): void => {
    const params = info.params as CellChange | undefined;
    // The calculation's results come in as local changes.
    if (local || isOurs() || !cellChanges.has(info.id) || !isOurWorkbook(spreadsheet, params)) return;
    if (params?.trigger === SetStyleCommand.id) return;
    for (const sheetId of new Set([params?.subUnitId, params?.from?.subUnitId, params?.to?.subUnitId])) {
      if (sheetId) changed(sheetId);
    }
  };
  const commands = spreadsheet.injector.get(ICommandService);
  const listening = commands.onCommandExecuted((info, options) => heard(info, options?.onlyLocal === true));
  return () => listening.dispose();
}
