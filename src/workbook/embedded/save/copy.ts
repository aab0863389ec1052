/** The whole workbook for a file, and what a file cannot keep of it. */
import { IDefinedNamesService } from '@univerjs/engine-formula';
import { SCOPE_WORKBOOK_VALUE_DEFINED_NAME } from '@univerjs/sheets';
import type { WriteOptions } from 'hucre/xlsx';
import { drained, type Progress } from '../../../core/index';
import { blockOf, fixed } from '../../shared/address';
import { stateProperties } from '../keptState';
import type { SheetBeside } from '../open/book';
import type { Unkept } from '../open/unkept';
import { openedFile, standsAsFiled } from '../opened';
import type { Spreadsheet } from '../spreadsheet';
import { allTables } from '../tables';
import { USUAL_FONT } from './look';
import type { FileName } from './paper';
import type { Namable } from './plainFormula';
import { plainFormula } from './plainFormula';
import { fileSheet, type FileSheet } from './sheet';
import { stateOf } from './state';

/** What a copy does not hold as the workbook does. */
export interface Losses {
  /** Sheets with functions of ours, whose values stand in the copy. */
  readonly valuesInstead: readonly string[];
  /** How many other formulas gave their values. */
  readonly otherFormulas: number;
  /** How many highlights and checks of entries are of kinds that are left out. */
  readonly rulesLeftOut: number;
  /** Sheets with a filter on: their rows all show. */
  readonly filtered: readonly string[];
  /** Sheets whose names no file may hold: nothing can be saved until they have others. */
  readonly oddNames: readonly string[];
  /** What the opened file held that no copy made here can hold. */
  readonly unkept: readonly Unkept[];
  /** How many formulas of an opened file are kept though they are not calculated here. */
  readonly keptFormulas: number;
  /** Sheets of an opened file of which page breaks and the like no longer fit, since cells were moved. */
  readonly moved: readonly string[];
}

export interface Copy {
  readonly workbook: WriteOptions;
  readonly losses: Losses;
}

/** Describes the workbook as it stands, once everything in it is calculated. */
export async function describeCopy(spreadsheet: Spreadsheet): Promise<Copy> {
  await spreadsheet.settled();
  return drained(copySteps(spreadsheet));
}

/** Describes the workbook in steps; it must not be changed in between. */
export function* copySteps(spreadsheet: Spreadsheet): Generator<Progress, Copy> {
  const worksheets = spreadsheet.workbook.getWorkbook().getSheets();
  const defined = Object.values(spreadsheet.injector.get(IDefinedNamesService).getDefinedNameMap(spreadsheet.id) ?? {});
  const known: Namable = { sheets: worksheets.map((sheet) => sheet.getName()), names: defined.map(({ name }) => name) };
  const tableNames: string[] = [];
  const made: (FileSheet & { readonly name: string })[] = [];
  for (const sheet of worksheets) {
    const described = yield* amongSheets(
      fileSheet(spreadsheet, sheet, known, tableNames),
      made.length,
      worksheets.length,
    );
    made.push({ ...described, name: sheet.getName() });
  }
  const file = openedFile(spreadsheet);
  const names = defined.flatMap(({ id, name, formulaOrRefString, localSheetId }): FileName[] => {
    const filed = file?.names.get(id);
    const range = filed?.entered === formulaOrRefString ? filed.file : rangeOf(formulaOrRefString, known);
    const own = worksheets.find((sheet) => sheet.getSheetId() === localSheetId)?.getName();
    const scoped = localSheetId !== undefined && localSheetId !== SCOPE_WORKBOOK_VALUE_DEFINED_NAME;
    return range === null || (scoped && own === undefined) ? [] : [{ name, range, ...(own && { scope: own }) }];
  });
  return {
    workbook: {
      sheets: made.map(({ sheet }) => sheet),
      namedRanges: [...names, ...made.flatMap((sheet) => sheet.names)],
      activeSheet: Math.max(0, known.sheets.indexOf(spreadsheet.workbook.getActiveSheet().getSheetName())),
      defaultFont: file?.book.font ?? USUAL_FONT,
      properties: propertiesOf(spreadsheet),
      ...(file?.book.locked && { workbookProtection: file.book.locked }),
    },
    losses: {
      valuesInstead: made.filter(({ ourFormulas }) => ourFormulas > 0).map(({ name }) => name),
      otherFormulas: sum(made.map(({ otherFormulas }) => otherFormulas)),
      rulesLeftOut: sum(made.map(({ rulesLeftOut }) => rulesLeftOut)),
      filtered: [...new Set(allTables(spreadsheet).flatMap(({ filtered, at }) => (filtered ? [at.sheet] : [])))],
      oddNames: known.sheets.filter(isOdd),
      unkept: file?.book.unkept ?? [],
      keptFormulas: sum(made.map(({ keptFormulas }) => keptFormulas)),
      moved: worksheets.filter((sheet) => isWithout(spreadsheet, sheet.getSheetId())).map((sheet) => sheet.getName()),
    },
  };
}

/** Steps of one sheet among all of them. */
function* amongSheets<T>(steps: Generator<Progress, T>, before: number, of: number): Generator<Progress, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { done: before + step.value.done / step.value.of, of };
  }
}

/** What the file said of itself, and what we keep in it. */
function propertiesOf(spreadsheet: Spreadsheet): NonNullable<WriteOptions['properties']> {
  const filed = openedFile(spreadsheet)?.book.properties ?? { creator: 'Setwright' };
  const state = stateOf(spreadsheet);
  const custom = { ...filed.custom, ...(state && stateProperties(state)) };
  return { ...filed, ...(Object.keys(custom).length > 0 && { custom }) };
}

/** Whether a sheet of the file had something that a copy leaves out because of what was moved. */
function isWithout(spreadsheet: Spreadsheet, sheetId: string): boolean {
  const file = openedFile(spreadsheet);
  const filed = file?.sheets.get(sheetId);
  if (!file || !filed) return false;
  const charts = filed.asItWas.sparklines !== undefined && !standsAsFiled(spreadsheet, file);
  return charts || (file.moved.has(sheetId) && hangsOnPlaces(filed.asItWas));
}

function hangsOnPlaces({ autoFilter, rowBreaks, colBreaks, pageSetup }: SheetBeside): boolean {
  const printed = pageSetup?.printArea ?? pageSetup?.printTitlesRow ?? pageSetup?.printTitlesColumn;
  return [autoFilter, rowBreaks, colBreaks, printed].some((each) => each !== undefined);
}

/** Cells by their address as it stands in a formula, or a formula other programs know. */
function rangeOf(text: string, known: Namable): string | null {
  const block = blockOf(text);
  if (block && known.sheets.includes(block.sheet)) return fixed(block);
  return plainFormula(text.startsWith('=') ? text : `=${text}`, known);
}

/** A file allows a sheet's name 31 characters and none of seven (Microsoft's published rules for names of sheets). */
function isOdd(name: string): boolean {
  return name.length > 31 || /[\\/?*[\]:]/.test(name) || /^'|'$/.test(name) || name.trim() === '';
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
