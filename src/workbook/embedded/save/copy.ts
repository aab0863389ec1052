/** The whole workbook for a file, and what a file cannot keep of it. */
import { IDefinedNamesService } from '@univerjs/engine-formula';
import { SCOPE_WORKBOOK_VALUE_DEFINED_NAME } from '@univerjs/sheets';
import type { WriteOptions } from 'hucre/xlsx';
import { blockOf, fixed } from '../../shared/address';
import { workbookId } from '../snapshot';
import type { Spreadsheet } from '../spreadsheet';
import { allTables } from '../tables';
import { USUAL_FONT } from './look';
import type { FileName } from './paper';
import type { Namable } from './plainFormula';
import { plainFormula } from './plainFormula';
import { fileSheet } from './sheet';

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
}

export interface Copy {
  readonly workbook: WriteOptions;
  readonly losses: Losses;
}

/** Describes the workbook as it stands, once everything in it is calculated. */
export async function describeCopy(spreadsheet: Spreadsheet): Promise<Copy> {
  await spreadsheet.settled();
  const worksheets = spreadsheet.workbook.getWorkbook().getSheets();
  const defined = Object.values(spreadsheet.injector.get(IDefinedNamesService).getDefinedNameMap(workbookId) ?? {});
  const known: Namable = { sheets: worksheets.map((sheet) => sheet.getName()), names: defined.map(({ name }) => name) };
  const tableNames: string[] = [];
  const made = worksheets.map((sheet) => ({
    ...fileSheet(spreadsheet, sheet, known, tableNames),
    name: sheet.getName(),
  }));
  const names = defined.flatMap(({ name, formulaOrRefString, localSheetId }): FileName[] => {
    const range = rangeOf(formulaOrRefString, known);
    const own = worksheets.find((sheet) => sheet.getSheetId() === localSheetId)?.getName();
    const scoped = localSheetId !== undefined && localSheetId !== SCOPE_WORKBOOK_VALUE_DEFINED_NAME;
    return range === null || (scoped && own === undefined) ? [] : [{ name, range, ...(own && { scope: own }) }];
  });
  return {
    workbook: {
      sheets: made.map(({ sheet }) => sheet),
      namedRanges: [...names, ...made.flatMap((sheet) => sheet.names)],
      activeSheet: Math.max(0, known.sheets.indexOf(spreadsheet.workbook.getActiveSheet().getSheetName())),
      defaultFont: USUAL_FONT,
      properties: { creator: 'Setwright' },
    },
    losses: {
      valuesInstead: made.filter(({ ourFormulas }) => ourFormulas > 0).map(({ name }) => name),
      otherFormulas: sum(made.map(({ otherFormulas }) => otherFormulas)),
      rulesLeftOut: sum(made.map(({ rulesLeftOut }) => rulesLeftOut)),
      filtered: [...new Set(allTables(spreadsheet).flatMap(({ filtered, at }) => (filtered ? [at.sheet] : [])))],
      oddNames: known.sheets.filter(isOdd),
    },
  };
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
