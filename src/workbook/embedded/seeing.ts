/** Answers to the port's queries. */
import type { IRange, Worksheet } from '@univerjs/core';
import { FormulaDataModel, IDefinedNamesService } from '@univerjs/engine-formula';
import { RangeProtectionRuleModel, WorksheetProtectionRuleModel } from '@univerjs/sheets';
import { drained } from '../../core/index';
import type { Block, BlockSeen, NameSeen, SheetContents, SheetSeen, TableSeen } from '../port';
import { blockOf, overlap, sameName } from '../shared/address';
import { nothingThere } from '../shared/looked';
import { type Cells, cellSteps, worksheetNamed } from './cells';
import { isOurs } from './errorSentence';
import { widthInCharacters } from './measures';
import type { Spreadsheet } from './spreadsheet';
import type { Table } from './tables';
import { allTables, blockOfRange, tableNamed } from './tables';

export function seeSheets(spreadsheet: Spreadsheet): SheetSeen[] {
  const sheets = spreadsheet.workbook.getWorkbook().getSheets();
  return sheets.map((sheet) => ({ name: sheet.getName(), protected: isProtected(spreadsheet, sheet) }));
}

export function seeContents(spreadsheet: Spreadsheet): SheetContents[] {
  const shown = spreadsheet.workbook.getWorkbook().getUnhiddenWorksheets();
  const sheets = spreadsheet.workbook.getWorkbook().getSheets();
  const tables = allTables(spreadsheet);
  return sheets.flatMap((sheet) => {
    if (!shown.includes(sheet.getSheetId())) return [];
    const name = sheet.getName();
    const own = tables
      .filter(({ at }) => sameName(at.sheet, name))
      .map((table) => ({ name: table.name, at: table.at }));
    return [{ name, used: usedBlock(spreadsheet, sheet), tables: own }];
  });
}

/** Whether a sheet is protected, or a part of it that touches the block. */
export function isProtected(spreadsheet: Spreadsheet, worksheet: Worksheet, at?: Block): boolean {
  const sheetId = worksheet.getSheetId();
  const { injector } = spreadsheet;
  if (injector.get(WorksheetProtectionRuleModel).getRule(spreadsheet.id, sheetId)) return true;
  if (!at) return false;
  const rules = injector.get(RangeProtectionRuleModel).getSubunitRuleList(spreadsheet.id, sheetId);
  return rules.some(({ ranges }) => ranges.some((range) => overlap(blockOfRange(at.sheet, range), at)));
}

/** A table, in steps: it may have tens of thousands of rows. */
export function* tableSteps(spreadsheet: Spreadsheet, name: string): Generator<unknown, TableSeen | null> {
  const table = tableNamed(spreadsheet, name);
  return table && (yield* tableSeen(spreadsheet, table));
}

function* tableSeen(spreadsheet: Spreadsheet, table: Table): Generator<unknown, TableSeen> {
  const { values, formulas } = yield* cellSteps(spreadsheet, table.worksheet, table.at);
  const [headers = [], ...rows] = values;
  const bodyFormulas = formulas.slice(1);
  return {
    name: table.name,
    at: table.at,
    headers: headers.map((header) => (header === null || typeof header === 'object' ? '' : String(header))),
    rows: rows.length > 0 ? rows : [headers.map(() => null)],
    ...(bodyFormulas.some((line) => line.some((formula) => formula !== null)) && { formulas: bodyFormulas }),
    protected: isProtected(spreadsheet, table.worksheet, table.at),
    filtered: table.filtered,
  };
}

export function seeBlock(spreadsheet: Spreadsheet, at: Block): BlockSeen {
  return drained(blockSteps(spreadsheet, at));
}

/** {@link seeBlock} in steps. */
export function* blockSteps(spreadsheet: Spreadsheet, at: Block): Generator<unknown, BlockSeen> {
  const worksheet = worksheetNamed(spreadsheet, at.sheet);
  if (!worksheet) return nothingThere(at);
  const touching = (other: Block): boolean => overlap(other, at) !== null;
  const spills = spillsOn(spreadsheet, worksheet).filter(touching);
  const merges = worksheet.getMergeData().map((range) => blockOfRange(worksheet.getName(), range));
  const cells = yield* cellSteps(spreadsheet, worksheet, at);
  const reasons = reasonsIn(spreadsheet, worksheet, at, cells);
  return {
    at,
    ...cells,
    ...(reasons.length > 0 && { reasons }),
    ...(spills.length > 0 && { spills }),
    sheetExists: true,
    protected: isProtected(spreadsheet, worksheet, at),
    merged: merges.filter(touching),
    tables: allTables(spreadsheet).flatMap((table) => (touching(table.at) ? [table.name] : [])),
  };
}

function reasonsIn(
  spreadsheet: Spreadsheet,
  worksheet: Worksheet,
  at: Block,
  { values, formulas }: Cells,
): NonNullable<BlockSeen['reasons']> {
  return values.flatMap((line, down) =>
    line.flatMap((value, across) => {
      if (typeof value !== 'object' || value === null || !isOurs(formulas[down]?.[across])) return [];
      const cell = { row: at.row + down, column: at.column + across };
      const says = spreadsheet.errors.at({ sheetId: worksheet.getSheetId(), ...cell });
      return says === null ? [] : [{ ...cell, says }];
    }),
  );
}

/** A block with the widths of its columns, where they are asked for. */
export function withWidths(
  { widths }: { readonly widths?: true },
  seen: BlockSeen,
  spreadsheet: Spreadsheet,
): BlockSeen {
  const worksheet = widths && worksheetNamed(spreadsheet, seen.at.sheet);
  if (!worksheet) return seen;
  const { column, columns } = seen.at;
  const pixels = Array.from({ length: columns }, (_, across) => worksheet.getColumnWidth(column + across));
  return { ...seen, widths: pixels.map(widthInCharacters) };
}

/** Areas of more than one cell that one formula fills. */
export function spillsOn(spreadsheet: Spreadsheet, worksheet: Worksheet): Block[] {
  const ranges = spreadsheet.injector.get(FormulaDataModel).getArrayFormulaRange()?.[spreadsheet.id]?.[
    worksheet.getSheetId()
  ];
  const blocks = Object.values(ranges ?? {}).flatMap((line) =>
    Object.values(line as Record<number, IRange>).map((range) => blockOfRange(worksheet.getName(), range)),
  );
  // A formula that finds no room keeps the area it would have filled, and fills none of it.
  const blocked = ({ row, column }: Block): boolean => worksheet.getCellMatrix().getValue(row, column)?.v === '#SPILL!';
  return blocks.filter((block) => (block.rows > 1 || block.columns > 1) && !blocked(block));
}

/** Everything in use on a sheet, null when nothing is. */
export function seeUsed(spreadsheet: Spreadsheet, worksheet: Worksheet): BlockSeen | null {
  const at = usedBlock(spreadsheet, worksheet);
  return at && seeBlock(spreadsheet, at);
}

function usedBlock(spreadsheet: Spreadsheet, worksheet: Worksheet): Block | null {
  let rows = 0;
  let columns = 0;
  worksheet.getCellMatrix().forValue((row, column, cell) => {
    if (!cell || (!cell.f && !cell.si && !cell.p && (cell.v === null || cell.v === undefined))) return;
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  });
  for (const spill of spillsOn(spreadsheet, worksheet)) {
    rows = Math.max(rows, spill.row + spill.rows);
    columns = Math.max(columns, spill.column + spill.columns);
  }
  return rows === 0 ? null : { sheet: worksheet.getName(), row: 0, column: 0, rows, columns };
}

export function seeName(spreadsheet: Spreadsheet, name: string): NameSeen {
  const all = Object.values(spreadsheet.injector.get(IDefinedNamesService).getDefinedNameMap(spreadsheet.id) ?? {});
  const found = all.find((other) => sameName(other.name, name));
  const at = found ? blockOf(found.formulaOrRefString) : null;
  const exists = at !== null && worksheetNamed(spreadsheet, at.sheet) !== null;
  return { name: found?.name ?? name, at: exists ? at : null };
}
