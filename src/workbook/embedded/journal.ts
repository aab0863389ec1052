/**
 * Changes made to the embedded spreadsheet one after another, so that they can be taken back exactly.
 *
 * The spreadsheet's own commands keep an undo entry each, and its way of joining entries replays them in the order they
 * were made, which fails as soon as one made the sheet another wrote to. So we run the steps below the commands and keep
 * one undo entry ourselves, in reverse: one press of Ctrl+Z takes back one change of ours.
 */
import type { Injector } from '@univerjs/core';
import { ICommandService, IUndoRedoService } from '@univerjs/core';
import { workbookId } from './snapshot';

/** One step of the spreadsheet's own: its name and what it needs. */
export interface Step {
  readonly id: string;
  readonly params: object;
}

/** A step and the steps that take it back. */
interface Entry {
  readonly step: Step;
  readonly back: readonly Step[];
}

export class Journal {
  private readonly entries: Entry[] = [];
  private unfinished: Entry | null = null;

  constructor(private readonly injector: Injector) {}

  /** Runs a step; throws when the spreadsheet refuses it. `back` must be made before the step runs. */
  run(step: Step, back: readonly Step[]): void {
    this.unfinished = { step, back };
    this.execute(step);
    this.entries.push(this.unfinished);
    this.unfinished = null;
  }

  /** Whether any step asked for formulas to be calculated anew. */
  get touchedCells(): boolean {
    return this.entries.some(({ step }) => /range-values|table|sheet|defined-name/.test(step.id));
  }

  /** Takes every step back, the last one first; throws when the spreadsheet refuses. */
  takeBack(): void {
    if (this.unfinished) {
      // It may have happened in part or not at all, so its way back may well be refused.
      try {
        for (const step of this.unfinished.back) this.execute(step);
      } catch {
        // Whether anything is left of it is found by looking at the cells.
      }
      this.unfinished = null;
    }
    for (let entry = this.entries.pop(); entry; entry = this.entries.pop()) {
      for (const step of entry.back) this.execute(step);
    }
  }

  /** Makes all steps one entry of the person's undo list. */
  close(): void {
    if (this.entries.length === 0) return;
    this.injector.get(IUndoRedoService).pushUndoRedo({
      unitID: workbookId,
      undoMutations: [...this.entries].reverse().flatMap(({ back }) => back.map(mutation)),
      redoMutations: this.entries.map(({ step }) => mutation(step)),
    });
  }

  private execute(step: Step): void {
    const done: unknown = this.injector.get(ICommandService).syncExecuteCommand(step.id, step.params);
    if (done === false) throw new Error(`the spreadsheet refused ${step.id}`);
  }
}

function mutation(step: Step): { id: string; params: object } {
  return { id: step.id, params: step.params };
}
