/** Formulas of an opened file after the first calculation: what does not come out here keeps the value that the file had. */
import type { ICellData, IObjectMatrixPrimitiveType, Worksheet } from '@univerjs/core';
import { CellValueType, ICommandService } from '@univerjs/core';
import { SetRangeValuesMutation } from '@univerjs/sheets';
import { atEase } from '../../pace';
import type { Block, Seen } from '../../port';
import { blockOf, named, overlap, sameBlock } from '../../shared/address';
import { readCells } from '../cells';
import type { CellFormula, KeptInCell, OpenedFile } from '../opened';
import { openedFile } from '../opened';
import { spillsOn } from '../seeing';
import { cellData, workbookId } from '../snapshot';
import type { Spreadsheet } from '../spreadsheet';
import type { FileFormula, OpenedSheet } from './book';
import { BLANK, ERROR, FILLED, NUMBER, TRUTH } from './book';

/** Numbers that differ by less come out the same: programs add in another order. */
const CLOSE = 1e-9;
/** Functions whose results are never the same twice. */
const EVER_NEW = /\b(NOW|TODAY|RAND|RANDBETWEEN|RANDARRAY|CELL|INFO)\s*\(/i;

/** How often cells that failed are taken for the cause of others that failed. */
const MOST_ROUNDS = 6;

/** A formula of the file in its place. */
interface Placed {
  readonly at: Block;
  readonly formula: FileFormula;
  readonly kept: CellFormula;
  readonly wanted: Block;
  readonly worksheet: Worksheet;
  readonly sheet: OpenedSheet;
}

/** Looks through the formulas once, when they have been calculated. */
export async function reviewFormulas(spreadsheet: Spreadsheet): Promise<void> {
  const file = openedFile(spreadsheet);
  if (!file) return;
  // On a page nothing is calculated before the first picture: a file without results would show none.
  spreadsheet.recalculate();
  await spreadsheet.settled();
  let left = await atEase(placedFormulas(spreadsheet, file));
  for (let round = 1; round <= MOST_ROUNDS && left.length > 0; round++) {
    const spills = spillsBySheet(spreadsheet, left);
    const failed = await atEase(picked(left, (each) => !comesOut(spreadsheet, each, spills)));
    if (failed.length === 0) break;
    // What only fails because of another is calculated again once that one has its value.
    const causes =
      round < MOST_ROUNDS ? failed.filter((each) => !failed.some((other) => pointsAt(each, other))) : failed;
    const back = causes.length > 0 ? causes : failed;
    giveBack(spreadsheet, file, back);
    const given = new Set(back);
    left = left.filter((each) => !given.has(each));
    await spreadsheet.settled();
  }
  const otherwise = picked(left, (each) => {
    const now = valueNow(spreadsheet, each);
    return !isError(now) && !alike(now, each.kept.value) && !EVER_NEW.test(each.formula.file);
  });
  for (const { at } of await atEase(otherwise)) file.otherwise.push(named(at));
  spreadsheet.forgetUndo();
}

/** Formulas that are looked at at a stretch. */
const AT_A_STRETCH = 100;

/** Those that `pick` takes, in steps. */
function* picked(all: readonly Placed[], pick: (each: Placed) => boolean): Generator<void, Placed[]> {
  const found: Placed[] = [];
  for (const [at, each] of all.entries()) {
    if (pick(each)) found.push(each);
    if (at % AT_A_STRETCH === 0) yield;
  }
  return found;
}

function* placedFormulas(spreadsheet: Spreadsheet, file: OpenedFile): Generator<void, Placed[]> {
  const placed: Placed[] = [];
  for (const [sheetId, sheet] of file.sheets) {
    const worksheet = spreadsheet.workbook.getWorkbook().getSheetBySheetId(sheetId);
    if (!worksheet) continue;
    for (const [key, { formula }] of sheet.beside) {
      if (!formula) continue;
      const [row = 0, column = 0] = key.split(',').map(Number);
      const at: Block = { sheet: worksheet.getName(), row, column, rows: 1, columns: 1 };
      const kept = (worksheet.getCellMatrix().getValue(row, column)?.custom as KeptInCell | undefined)?.formula;
      if (formula.entered === null) file.keptValues.push(named(at));
      else if (kept) {
        const wanted = (formula.fills === undefined ? null : blockOf(formula.fills, at.sheet)) ?? at;
        placed.push({ at, formula, kept, wanted, worksheet, sheet });
      }
      if (placed.length % AT_A_STRETCH === 0) yield;
    }
  }
  return placed;
}

function valueNow(spreadsheet: Spreadsheet, { worksheet, at }: Placed): Seen {
  return readCells(spreadsheet, worksheet, at).values[0]?.[0] ?? null;
}

type Spills = ReadonlyMap<Worksheet, ReadonlyMap<string, Block>>;

function spillsBySheet(spreadsheet: Spreadsheet, all: readonly Placed[]): Spills {
  const sheets = [...new Set(all.map(({ worksheet }) => worksheet))];
  return new Map(
    sheets.map((sheet) => [
      sheet,
      new Map(spillsOn(spreadsheet, sheet).map((block) => [`${block.row},${block.column}`, block])),
    ]),
  );
}

/** Whether a formula has a result, of the size that it had, or the very error that the file had. */
function comesOut(spreadsheet: Spreadsheet, each: Placed, spills: Spills): boolean {
  const { at, kept, wanted, worksheet } = each;
  const spill = spills.get(worksheet)?.get(`${at.row},${at.column}`) ?? at;
  if (!sameBlock(spill, wanted)) return false;
  const now = valueNow(spreadsheet, each);
  return !isError(now) || now.error === kept.value;
}

/** Whether a formula names the cell of another; in doubt it does not. */
function pointsAt({ formula, at }: Placed, other: Placed): boolean {
  const references = (formula.entered ?? '').matchAll(
    /(?:(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|\$?[A-Z]{1,3}:\$?[A-Z]{1,3})/giu,
  );
  return [...references].some(([, quoted, bare, cells = '']) => {
    const block = blockOf(cells, quoted?.replaceAll("''", "'") ?? bare ?? at.sheet);
    return block !== null && !sameBlock(at, other.at) && overlap(block, other.wanted) !== null;
  });
}

/** Puts the file's values in the place of formulas. */
function giveBack(spreadsheet: Spreadsheet, file: OpenedFile, all: readonly Placed[]): void {
  for (const worksheet of new Set(all.map((each) => each.worksheet))) {
    const cellValue: IObjectMatrixPrimitiveType<ICellData> = {};
    for (const each of all) {
      if (each.worksheet !== worksheet) continue;
      file.keptValues.push(named(each.at));
      putValues(cellValue, file, each.sheet, each.kept, each.wanted, worksheet);
    }
    const params = { unitId: workbookId, subUnitId: worksheet.getSheetId(), cellValue };
    spreadsheet.injector.get(ICommandService).syncExecuteCommand(SetRangeValuesMutation.id, params);
  }
}

/** The file's values for all cells that a formula was to fill; its own cell remembers that it is not calculated. */
function putValues(
  back: IObjectMatrixPrimitiveType<ICellData>,
  file: OpenedFile,
  sheet: OpenedSheet,
  kept: CellFormula,
  wanted: Block,
  worksheet: Worksheet,
): void {
  const blank = { f: null, si: null, p: null };
  const line = (row: number): Record<number, ICellData> => (back[row] ??= {}) as Record<number, ICellData>;
  if (wanted.rows > 1 || wanted.columns > 1) {
    for (const { row, column, data } of filledCells(file, sheet, wanted)) line(row)[column] = { ...blank, ...data };
  }
  const custom = worksheet.getCellMatrix().getValue(kept.row, kept.column)?.custom;
  const own = kept.value === null ? { v: null, t: null } : (errorData(kept.value) ?? cellData(kept.value) ?? {});
  line(kept.row)[kept.column] = { ...blank, ...own, custom: { ...custom, formula: { ...kept, entered: null } } };
}

function filledCells(
  { book }: OpenedFile,
  { cells }: OpenedSheet,
  { row: top, column: left, rows, columns }: Block,
): { row: number; column: number; data: ICellData }[] {
  const found: { row: number; column: number; data: ICellData }[] = [];
  for (let i = 0; i < cells.rows.length; i++) {
    const [row, column, kind] = [cells.rows[i] ?? 0, cells.columns[i] ?? 0, cells.kinds[i] ?? BLANK];
    if (kind < FILLED || row < top || row >= top + rows || column < left || column >= left + columns) continue;
    found.push({ row, column, data: dataOf(kind - FILLED, cells.values[i] ?? 0, book.texts) });
  }
  return found;
}

function dataOf(kind: number, value: number, texts: readonly string[]): ICellData {
  if (kind === BLANK) return { v: null, t: null };
  if (kind === NUMBER) return { v: value, t: CellValueType.NUMBER };
  if (kind === TRUTH) return { v: value, t: CellValueType.BOOLEAN };
  const text = texts[value] ?? '';
  return kind === ERROR ? { v: text, t: null } : (cellData(text) ?? {});
}

function errorData(value: CellFormula['value']): ICellData | null {
  return typeof value === 'string' && /^#[A-Z0-9/_]+[!?]?$/.test(value) ? { v: value, t: null } : null;
}

function isError(value: Seen): value is { readonly error: string } {
  return typeof value === 'object' && value !== null;
}

function alike(now: Seen, before: CellFormula['value']): boolean {
  if (typeof now === 'number' && typeof before === 'number') {
    return Math.abs(now - before) <= CLOSE * Math.max(1, Math.abs(now), Math.abs(before));
  }
  // A blank result is an empty text to some, and a file that was never calculated has none.
  return now === before || before === null || (now === null && before === '');
}
