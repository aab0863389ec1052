/**
 * Changes made to the embedded spreadsheet one after another, so that they can be taken back exactly.
 *
 * The spreadsheet's own commands keep an undo entry each, and its way of joining entries replays them in the order they
 * were made, which fails as soon as one made the sheet another wrote to. So we run the steps below the commands and keep
 * one undo entry ourselves, in reverse: one press of Ctrl+Z takes back one change of ours.
 */
import type { IMutationInfo } from '@univerjs/core';
import { ICommandService, IUndoRedoService } from '@univerjs/core';
import type { Spreadsheet } from './spreadsheet';

/** A step of the spreadsheet's own: its name and what it needs. */
export type Step = IMutationInfo<object>;

/** Steps that belong together, and those that take them back. `back` has to be made before the steps run. */
export interface Deed {
  readonly steps: readonly Step[];
  readonly back: readonly Step[];
}

export class Journal {
  private readonly deeds: Deed[] = [];
  private unfinished: Deed | null = null;

  constructor(private readonly spreadsheet: Spreadsheet) {}

  /** Runs the steps of a deed; throws when the spreadsheet refuses one. */
  run(deed: Deed): void {
    this.unfinished = deed;
    for (const step of deed.steps) this.execute(step);
    this.deeds.push(deed);
    this.unfinished = null;
  }

  /** Whether any step makes the spreadsheet calculate. */
  get calculates(): boolean {
    return this.deeds.some(({ steps }) =>
      steps.some(({ id }) => /set-range-values|-table|-sheet|defined-name/.test(id)),
    );
  }

  /** Takes every deed back, the last one first; throws when the spreadsheet refuses. */
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
    for (let deed = this.deeds.pop(); deed; deed = this.deeds.pop()) {
      for (const step of deed.back) this.execute(step);
    }
  }

  /** Makes everything done one entry of the person's undo list. */
  close(): void {
    if (this.deeds.length === 0) return;
    this.spreadsheet.injector.get(IUndoRedoService).pushUndoRedo({
      unitID: this.spreadsheet.id,
      undoMutations: [...this.deeds].reverse().flatMap(({ back }) => [...back]),
      redoMutations: this.deeds.flatMap(({ steps }) => [...steps]),
    });
  }

  private execute(step: Step): void {
    const done: unknown = this.spreadsheet.injector.get(ICommandService).syncExecuteCommand(step.id, step.params);
    if (done === false) throw new Error(`the spreadsheet refused ${step.id}`);
  }
}
