/** What is put into a spreadsheet once the cells of an opened file are there: tables, names, rules, protection. */
import { generateRandomId, ICommandService } from '@univerjs/core';
import { AddDataValidationMutation } from '@univerjs/data-validation';
import { SetDefinedNameMutation } from '@univerjs/engine-formula';
import { SCOPE_WORKBOOK_VALUE_DEFINED_NAME } from '@univerjs/sheets';
import { AddConditionalRuleMutation } from '@univerjs/sheets-conditional-formatting';
import { TableManager } from '@univerjs/sheets-table';
import { blockOf } from '../../shared/address';
import { holdCalculation } from '../calculation';
import type { OpenedFile } from '../opened';
import { keepFile } from '../opened';
import type { OpenedContent, Spreadsheet } from '../spreadsheet';
import { rangeOfBlock } from '../tables';
import type { OpenedBook, OpenedSheet } from './book';
import { contentOf, sheetIdOf, type Breathe } from './content';
import { withoutPlace } from './withoutPlace';
import { checkRule, highlightRule, rangesOf } from './rules';

/** Everything an opened file puts into a spreadsheet. */
export async function openedContent(book: OpenedBook, breathe?: Breathe): Promise<OpenedContent> {
  const data = await contentOf(book, breathe);
  return { data, complete: (spreadsheet) => complete(spreadsheet, book), calculatesLater: true };
}

/** Everything but the results: nothing is calculated until the formulas are reviewed. */
async function complete(spreadsheet: Spreadsheet, book: OpenedBook): Promise<void> {
  holdCalculation(spreadsheet);
  const file: OpenedFile = {
    book,
    sheets: new Map(book.sheets.map((sheet, index) => [sheetIdOf(index), sheet])),
    checks: new Map(),
    highlights: new Map(),
    names: new Map(),
    unshown: new Map(),
    keptValues: [],
    otherwise: [],
    moved: new Set(),
  };
  for (const [sheetId, sheet] of file.sheets) {
    layTables(spreadsheet, sheetId, sheet);
    addChecks(spreadsheet, file, sheetId, sheet);
    addHighlights(spreadsheet, file, sheetId, sheet);
  }
  addNames(spreadsheet, file);
  for (const { name, asItWas } of book.sheets) {
    if (asItWas.protection) await spreadsheet.workbook.getSheetByName(name)?.getWorksheetPermission().protect();
  }
  const shown = spreadsheet.workbook.getSheets()[book.shownSheet];
  if (shown && !shown.isSheetHidden()) spreadsheet.workbook.setActiveSheet(shown);
  spreadsheet.forgetUndo();
  keepFile(spreadsheet, file);
}

function run(spreadsheet: Spreadsheet, id: string, params: object): void {
  spreadsheet.injector.get(ICommandService).syncExecuteCommand(id, params);
}

function layTables(spreadsheet: Spreadsheet, sheetId: string, { tables }: OpenedSheet): void {
  const manager = spreadsheet.injector.get(TableManager);
  for (const { name, row, column, rows, columns } of tables) {
    manager.addTable(spreadsheet.id, sheetId, name, rangeOfBlock({ sheet: '', row, column, rows, columns }));
  }
}

function addChecks(spreadsheet: Spreadsheet, file: OpenedFile, sheetId: string, sheet: OpenedSheet): void {
  for (const check of sheet.checks) {
    const rule = checkRule(check, rangesOf(check.range, ...sizeOf(spreadsheet, sheetId)));
    if (rule.ranges.length === 0) continue;
    run(spreadsheet, AddDataValidationMutation.id, { unitId: spreadsheet.id, subUnitId: sheetId, rule });
    file.checks.set(rule.uid, { entered: withoutPlace(rule), file: check });
  }
}

function addHighlights(spreadsheet: Spreadsheet, file: OpenedFile, sheetId: string, sheet: OpenedSheet): void {
  const inOrder = [...sheet.highlights].sort((one, other) => other.priority - one.priority);
  for (const highlight of inOrder) {
    const rule = highlightRule(highlight, rangesOf(highlight.range, ...sizeOf(spreadsheet, sheetId)));
    if (!rule) {
      file.unshown.set(sheetId, [...(file.unshown.get(sheetId) ?? []), highlight]);
      continue;
    }
    // The one that is added last comes first.
    run(spreadsheet, AddConditionalRuleMutation.id, { unitId: spreadsheet.id, subUnitId: sheetId, rule });
    file.highlights.set(rule.cfId, { entered: withoutPlace(rule), file: highlight });
  }
}

function sizeOf(spreadsheet: Spreadsheet, sheetId: string): [number, number] {
  const worksheet = spreadsheet.workbook.getWorkbook().getSheetBySheetId(sheetId);
  return [worksheet?.getRowCount() ?? 0, worksheet?.getColumnCount() ?? 0];
}

function addNames(spreadsheet: Spreadsheet, file: OpenedFile): void {
  for (const { name, refersTo, sheet } of file.book.names) {
    // Names of the program's own; those of printing come with the page.
    if (name.startsWith('_xlnm.')) continue;
    const index = file.book.sheets.findIndex((each) => each.name === sheet);
    const id = generateRandomId();
    const entered = blockOf(refersTo) ? refersTo : `=${refersTo}`;
    run(spreadsheet, SetDefinedNameMutation.id, {
      unitId: spreadsheet.id,
      id,
      name,
      formulaOrRefString: entered,
      localSheetId: index < 0 ? SCOPE_WORKBOOK_VALUE_DEFINED_NAME : sheetIdOf(index),
    });
    file.names.set(id, { entered, file: refersTo });
  }
}
