/** Waiting for a calculation to its very end, however long it takes, and without holding the page up. */
import { ICommandService } from '@univerjs/core';
import {
  FormulaExecutedStateType,
  IActiveDirtyManagerService,
  IFormulaDependencyGenerator,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  SetFormulaCalculationStopMutation,
  type ISetFormulaCalculationNotificationMutation,
} from '@univerjs/engine-formula';
import { TriggerCalculationController } from '@univerjs/sheets-formula';
import type { Progress } from '../../core/index';
import { nextTurn, SLICE_MS } from '../pace';
import type { Spreadsheet } from './spreadsheet';

/** A calculation begins a tenth of a second after it was asked for; where none has by now, nothing was to be calculated. */
const BEGINS_MS = 2_000;
/** It says how far it is much more often; where it is quiet for so long, it is not waited for. */
const QUIET_MS = 60_000;
/** Of the whole time what goes into finding which formula hangs on which, by what was measured with 40,000. */
const FINDING = 0.4;

/** What the spreadsheet means to calculate a tenth of a second from now. */
interface Meaning {
  _setTimeoutKey?: ReturnType<typeof setTimeout>;
  _waitingCommandQueue?: unknown[];
}

/**
 * Keeps a spreadsheet that was just made from calculating by itself. It finds what hangs on what as soon as a workbook comes in, while the
 * first picture is drawn, and for nothing: for tens of thousands of formulas that is one piece of seconds.
 */
export function holdCalculation({ injector }: Spreadsheet): void {
  // Nothing that happens is a reason to calculate.
  injector.get(IActiveDirtyManagerService).get = () => undefined;
  const meaning = injector.get(TriggerCalculationController) as unknown as Meaning;
  clearTimeout(meaning._setTimeoutKey);
  meaning._waitingCommandQueue = [];
}

/** Ends that. What happened meanwhile is not known any more: everything has to be calculated once. */
export function releaseCalculation({ injector }: Spreadsheet): void {
  const manager: Partial<IActiveDirtyManagerService> = injector.get(IActiveDirtyManagerService);
  // What stands there now is the object's own; below it is its class's.
  delete manager.get;
}

/** What may be heard of a calculation, and whether it still should go on. */
export interface Calculating {
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
}

/**
 * Does something that makes the spreadsheet calculate, and waits until the results are in the cells. Nothing else may make it calculate
 * meanwhile. Where it is stopped, it is waited for until it has stopped.
 *
 * The spreadsheet's own word for this takes a calculation that was stopped in favour of another for one that has ended.
 *
 * @param formulas how many there are, to tell how far it is
 */
export async function calculated(
  spreadsheet: Spreadsheet,
  begin: () => void,
  formulas: number,
  { signal, onProgress }: Calculating = {},
): Promise<void> {
  if (signal?.aborted) return;
  const tell = (share: number): void => onProgress?.({ done: Math.min(1, share), of: 1 });
  const undo = findingInSlices(
    spreadsheet,
    (found) => tell(FINDING * Math.min(1, found / Math.max(1, formulas))),
    signal,
  );
  await ended(spreadsheet, begin, (share) => tell(FINDING + (1 - FINDING) * share), signal).finally(undo);
  // What is told with the end is put into the cells by then.
  await nextTurn();
}

function ended(
  spreadsheet: Spreadsheet,
  begin: () => void,
  tell: (share: number) => void,
  signal: AbortSignal | undefined,
): Promise<void> {
  const commands = spreadsheet.injector.get(ICommandService);
  const stop = (): void => void commands.syncExecuteCommand(SetFormulaCalculationStopMutation.id, {});
  return new Promise((end) => {
    let timer: ReturnType<typeof setTimeout> | undefined;
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
        if (of > 0) tell((stageInfo.completedFormulasCount + stageInfo.completedArrayFormulasCount) / of);
        // It forgets when it begins that it was to stop.
        if (signal?.aborted) stop();
      }
      const done = state === FormulaExecutedStateType.SUCCESS || state === FormulaExecutedStateType.NOT_EXECUTED;
      if (done || (signal?.aborted && state === FormulaExecutedStateType.STOP_EXECUTION)) finish();
      else endBy(QUIET_MS);
    });
    const finish = (): void => {
      clearTimeout(timer);
      listening.dispose();
      signal?.removeEventListener('abort', stop);
      end();
    };
    signal?.addEventListener('abort', stop);
    endBy(BEGINS_MS);
    begin();
  });
}

/** What hangs on what, as the spreadsheet finds it: formula by formula what it names, and then where each is named. */
interface Finding {
  _generateTreeList?: (...data: unknown[]) => Promise<unknown>;
  _getRangeListByNode?: (formula: object) => Promise<unknown>;
  _calculateListByFunctionRefNode?: (formulas: readonly Found[]) => Promise<void>;
  _dependencyManagerService?: { openKdTree?: () => void };
}

interface Found {
  readonly addressFunctionNodes?: readonly unknown[];
}

/**
 * Lets the spreadsheet rest while it finds which formula hangs on which: with tens of thousands it is at that for seconds. Not for good, as
 * it does not expect to be asked for another calculation meanwhile.
 *
 * @returns how to have it as it was
 */
function findingInSlices(
  spreadsheet: Spreadsheet,
  tell: (found: number) => void,
  signal: AbortSignal | undefined,
): () => void {
  const finding = spreadsheet.injector.get(IFormulaDependencyGenerator) as unknown as Finding;
  const naming = finding._getRangeListByNode?.bind(finding);
  const all = finding._generateTreeList?.bind(finding);
  const byAddress = finding._calculateListByFunctionRefNode?.bind(finding);
  if (!naming || !all || !byAddress) return () => undefined;
  let [found, start] = [0, performance.now()];
  finding._getRangeListByNode = async (formula) => {
    found += 1;
    if (performance.now() - start >= SLICE_MS) {
      tell(found);
      await nextTurn();
      start = performance.now();
    }
    return signal?.aborted ? [] : naming(formula);
  };
  finding._calculateListByFunctionRefNode = async (formulas) => {
    await nextTurn();
    // It puts every formula into a tree first, which only those are looked for in that make addresses, as OFFSET does.
    if (formulas.some(({ addressFunctionNodes = [] }) => addressFunctionNodes.length > 0)) await byAddress(formulas);
  };
  finding._generateTreeList = async (...data) => {
    await nextTurn();
    const formulas = await all(...data);
    await nextTurn();
    if (!signal?.aborted) sortEarly(finding._dependencyManagerService);
    await nextTurn();
    return formulas;
  };
  // What stands there now is the object's own; below it is its class's.
  return () => {
    delete finding._getRangeListByNode;
    delete finding._calculateListByFunctionRefNode;
    delete finding._generateTreeList;
    delete finding._dependencyManagerService?.openKdTree;
  };
}

/** Sorts the cells that are named, which is asked for in one piece with what comes after; that one time it is done by then. */
function sortEarly(manager: Finding['_dependencyManagerService']): void {
  if (!manager?.openKdTree) return;
  manager.openKdTree();
  manager.openKdTree = () => void delete manager.openKdTree;
}
