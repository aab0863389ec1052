/** Waiting for a calculation to its very end, however long it takes. */
import { ICommandService } from '@univerjs/core';
import {
  FormulaExecutedStateType,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  SetFormulaCalculationStopMutation,
  type ISetFormulaCalculationNotificationMutation,
} from '@univerjs/engine-formula';
import type { Progress } from '../../core/index';
import { nextTurn } from '../pace';
import type { Spreadsheet } from './spreadsheet';

/** A calculation begins a tenth of a second after it was asked for; where none has by now, nothing was to be calculated. */
const BEGINS_MS = 2_000;
/** It says how far it is much more often; where it is quiet for so long, it is not waited for. */
const QUIET_MS = 60_000;

/** What may be heard of a calculation, and whether it still should go on. */
export interface Calculating {
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
}

/**
 * Does something that makes the spreadsheet calculate, and waits until the results are in the cells.
 *
 * The spreadsheet's own word for this takes a calculation that was stopped in favour of another for one that has ended.
 */
export async function calculated(
  spreadsheet: Spreadsheet,
  begin: () => void,
  { signal, onProgress }: Calculating = {},
): Promise<void> {
  const commands = spreadsheet.injector.get(ICommandService);
  let timer: ReturnType<typeof setTimeout> | undefined;
  await new Promise<void>((end) => {
    const endBy = (ms: number): void => {
      clearTimeout(timer);
      timer = setTimeout(finish, ms);
    };
    let begun = false;
    const listening = commands.onCommandExecuted(({ id, params }) => {
      if (id === SetFormulaCalculationStartMutation.id) begun = true;
      if (id !== SetFormulaCalculationNotificationMutation.id || !begun) return;
      const { stageInfo, functionsExecutedState: state } = params as ISetFormulaCalculationNotificationMutation;
      if (stageInfo) {
        const of = stageInfo.totalFormulasToCalculate + stageInfo.totalArrayFormulasToCalculate;
        const done = stageInfo.completedFormulasCount + stageInfo.completedArrayFormulasCount;
        if (of > 0) onProgress?.({ done: Math.min(done, of), of });
      }
      if (state === FormulaExecutedStateType.SUCCESS || state === FormulaExecutedStateType.NOT_EXECUTED) finish();
      else endBy(QUIET_MS);
    });
    const finish = (): void => {
      clearTimeout(timer);
      listening.dispose();
      signal?.removeEventListener('abort', stop);
      end();
    };
    const stop = (): void => {
      commands.syncExecuteCommand(SetFormulaCalculationStopMutation.id, {});
      finish();
    };
    if (signal?.aborted) return finish();
    signal?.addEventListener('abort', stop);
    endBy(BEGINS_MS);
    begin();
  });
  // What is told with the end is put into the cells by then.
  await nextTurn();
}
