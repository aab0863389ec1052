/** What is known of the file that a workbook was opened from: what nothing here shows, and what a copy gets back. */
import { ICommandService } from '@univerjs/core';
import {
  InsertColMutation,
  InsertRowMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  ReorderRangeMutation,
} from '@univerjs/sheets';
import type { ConditionalRule, DataValidation, OpenedBook, OpenedSheet } from './open/book';
import type { Spreadsheet } from './spreadsheet';

/** A rule, name or the like that came from the file, and how it was entered here. */
export interface AsFiled<T> {
  /** What was entered here, as text; another one now means that a person has changed it. */
  readonly entered: string;
  readonly file: T;
}

/** A value as a person reads it; numbers as their cell shows them. */
export interface Shown {
  readonly kind: 'number' | 'text' | 'truth' | 'error' | 'blank';
  readonly text: string;
}

/** A cell that comes out otherwise here than the file says. */
export interface Otherwise {
  readonly at: string;
  readonly file: Shown;
  readonly here: Shown;
}

/** A file that stands on the page. */
export interface OpenedFile {
  readonly book: OpenedBook;
  /** The file's sheets by the ids they have here. */
  readonly sheets: ReadonlyMap<string, OpenedSheet>;
  readonly checks: Map<string, AsFiled<DataValidation>>;
  readonly highlights: Map<string, AsFiled<ConditionalRule>>;
  readonly names: Map<string, AsFiled<string>>;
  /** Highlights that nothing here shows, by sheet. */
  readonly unshown: Map<string, ConditionalRule[]>;
  /** Cells whose formulas are not calculated here; known once all others are. */
  readonly keptValues: string[];
  /** Cells that come out otherwise here than the file says. */
  readonly otherwise: Otherwise[];
  /** Its sheets, by id, of which cells no longer stand where they stood: what was kept by its place is wrong there. */
  readonly moved: Set<string>;
}

const files = new WeakMap<Spreadsheet, OpenedFile>();

/** The file that the workbook was opened from; null for one that was made here. */
export function openedFile(spreadsheet: Spreadsheet): OpenedFile | null {
  return files.get(spreadsheet) ?? null;
}

const MOVING: ReadonlySet<string> = new Set(
  [
    InsertColMutation,
    InsertRowMutation,
    MoveColsMutation,
    MoveRangeMutation,
    MoveRowsMutation,
    RemoveColMutation,
    RemoveRowMutation,
    ReorderRangeMutation,
  ].map(({ id }) => id),
);

/** Remembers the file with the workbook, and watches whether cells are moved from now on. */
export function keepFile(spreadsheet: Spreadsheet, file: OpenedFile): void {
  files.set(spreadsheet, file);
  spreadsheet.injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    const where = params as Where | undefined;
    if (!MOVING.has(id) || where?.unitId !== spreadsheet.id) return;
    for (const sheetId of [where.subUnitId, where.from?.subUnitId, where.to?.subUnitId])
      if (sheetId !== undefined && file.sheets.has(sheetId)) file.moved.add(sheetId);
  });
}

/** What tells of a change which sheets it concerns: one, or the one that cells are taken from and the one they are put on. */
interface Where {
  readonly unitId?: string;
  readonly subUnitId?: string;
  readonly from?: { readonly subUnitId?: string };
  readonly to?: { readonly subUnitId?: string };
}

/**
 * Whether all that a formula of the file can name is where the file has it: no cells of its sheets were moved, and each is there under its
 * name. Sheets that the file never had may come and go.
 */
export function standsAsFiled(spreadsheet: Spreadsheet, { sheets, moved }: OpenedFile): boolean {
  if (moved.size > 0) return false;
  const names = new Map(
    spreadsheet.workbook.getSheets().map((sheet) => [sheet.getSheetId(), sheet.getSheetName()] as const),
  );
  return [...sheets].every(([sheetId, { name }]) => names.get(sheetId) === name);
}

/** What a cell keeps beside its value; it moves with the cell. */
export interface KeptInCell {
  readonly formula?: CellFormula;
  readonly comment?: { readonly author?: string; readonly text: string };
  readonly link?: {
    readonly target: string;
    readonly tooltip?: string;
    readonly display?: string;
    readonly location?: string;
  };
  /** Text in several looks, and the text that it is. */
  readonly runs?: readonly { readonly text: string; readonly font?: object }[];
  readonly protection?: { readonly locked?: boolean; readonly hidden?: boolean };
  /** A text that the file marks as text though it needs no mark here, or leaves without one; another text is no longer the file's. */
  readonly filedText?: { readonly text: string; readonly marked: boolean };
  /** The table whose row of totals it stands in. */
  readonly totals?: string;
}

/** A formula of the file that is not said here as the file says it. */
export interface CellFormula {
  readonly file: string;
  /** null where the cell keeps the value that the file had. */
  readonly entered: string | null;
  readonly fills?: string;
  readonly dynamic?: boolean;
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
  /** The value that the file had. */
  readonly value: string | number | boolean | null;
}
