/** The cells of a sheet of a file, in columns of numbers, with what few of them have beside. */
import type { Cell as FileCell, CellStyle, CellValue, Sheet } from 'hucre/xlsx';
import { columnLetters, columnOf } from '../../shared/address';
import type { BesideCell, CellColumns, FileFormula } from './book';
import { BLANK, ERROR, FILLED, NUMBER, TEXT, TRUTH } from './book';
import { enteredFormula, sharedFormula, type NamedTable } from './fileFormula';

/** What all sheets of a file share. */
export class Shared {
  readonly texts: string[] = [];
  readonly styles: CellStyle[] = [];
  comments = 0;
  runs = 0;
  private readonly textAt = new Map<string, number>();
  private readonly styleAt = new Map<string, number>();
  private readonly seenStyles = new WeakMap<object, string>();

  constructor(
    readonly plain: (style: CellStyle) => CellStyle,
    readonly from1904: boolean,
  ) {}

  text(text: string): number {
    const known = this.textAt.get(text);
    if (known !== undefined) return known;
    this.textAt.set(text, this.texts.length);
    return this.texts.push(text) - 1;
  }

  /** One more than its place; 0 for none. */
  style(style: CellStyle | undefined): number {
    if (!style) return 0;
    const key = [
      style.numFmt ?? '',
      ...[style.font, style.fill, style.border, style.alignment, style.protection].map((part) => this.keyOf(part)),
    ].join('\u0000');
    const known = this.styleAt.get(key);
    if (known !== undefined) return known;
    const place = this.styles.push(this.plain(style));
    this.styleAt.set(key, place);
    return place;
  }

  /** Parts of styles are the same objects again and again. */
  private keyOf(part: object | undefined): string {
    if (!part) return '';
    const known = this.seenStyles.get(part);
    if (known !== undefined) return known;
    const key = JSON.stringify(part);
    this.seenStyles.set(part, key);
    return key;
  }
}

interface Found {
  readonly cells: CellColumns;
  readonly beside: ReadonlyMap<string, BesideCell>;
  readonly rowCount: number;
  readonly columnCount: number;
}

/** Every cell that holds something or looks like something. */
export function readSheetCells(
  sheet: Sheet,
  shared: Shared,
  tables: readonly NamedTable[],
  numbers: () => ReadonlyMap<string, number>,
): Found {
  let asFiled: ReadonlyMap<string, number> | null = null;
  const details = sheet.cells ?? new Map<string, FileCell>();
  const masters = sharedMasters(details);
  const beside = new Map<string, BesideCell>();
  const list = {
    rows: [] as number[],
    columns: [] as number[],
    kinds: [] as number[],
    values: [] as number[],
    styles: [] as number[],
  };
  const spilled = new Set<string>();
  let [rowCount, columnCount] = [0, 0];
  const add = (row: number, column: number, value: CellValue, cell: FileCell | undefined): void => {
    const key = `${row},${column}`;
    const formula = cell?.formula === undefined ? null : formulaOf(cell, row, column, masters, sheet.name, tables);
    if (formula?.fills && formula.entered !== null)
      for (const each of cellsIn(formula.fills)) if (each !== key) spilled.add(each);
    const style = shared.style(cell?.style);
    if (value instanceof Date) asFiled ??= numbers();
    const filed = asFiled?.get(`${columnLetters(column)}${row + 1}`);
    const [kind, number] = held(value, cell, shared, filed);
    const more = besideOf(cell, formula, shared);
    if (more) beside.set(key, more);
    if (kind === BLANK && style === 0 && !more) return;
    list.rows.push(row);
    list.columns.push(column);
    list.kinds.push(kind);
    list.values.push(number);
    list.styles.push(style);
    rowCount = Math.max(rowCount, row + 1);
    columnCount = Math.max(columnCount, column + 1);
  };
  const done = new Set<string>();
  sheet.rows.forEach((line, row) =>
    line.forEach((value, column) => {
      const key = `${row},${column}`;
      const cell = details.get(key);
      if (value === null && !cell) return;
      done.add(key);
      add(row, column, value, cell);
    }),
  );
  // A note or a link may hang on a cell past all values.
  for (const [key, cell] of details) {
    if (done.has(key)) continue;
    const [row = 0, column = 0] = key.split(',').map(Number);
    add(row, column, cell.value, cell);
  }
  return {
    cells: {
      rows: Uint32Array.from(list.rows),
      columns: Uint16Array.from(list.columns),
      kinds: Uint8Array.from(list.kinds, (kind, i) =>
        spilled.size > 0 && spilled.has(`${list.rows[i]},${list.columns[i]}`) ? kind + FILLED : kind,
      ),
      values: Float64Array.from(list.values),
      styles: Uint32Array.from(list.styles),
    },
    beside,
    rowCount,
    columnCount,
  };
}

interface Master {
  readonly text: string;
  readonly row: number;
  readonly column: number;
}

function sharedMasters(details: ReadonlyMap<string, FileCell>): Map<number, Master> {
  const masters = new Map<number, Master>();
  for (const [key, cell] of details) {
    if (cell.formulaType !== 'shared' || cell.formulaSharedIndex === undefined || !cell.formula) continue;
    const [row = 0, column = 0] = key.split(',').map(Number);
    // One number may be given out again further down; the formula's own reach tells which is meant.
    if (!masters.has(cell.formulaSharedIndex) || cell.formulaRef)
      masters.set(cell.formulaSharedIndex, { text: cell.formula, row, column });
  }
  return masters;
}

function formulaOf(
  cell: FileCell,
  row: number,
  column: number,
  masters: ReadonlyMap<number, Master>,
  sheet: string,
  tables: readonly NamedTable[],
): FileFormula | null {
  let file: string | null = cell.formula ?? '';
  if (file === '') {
    const master = masters.get(cell.formulaSharedIndex ?? -1);
    file = master ? sharedFormula(master.text, row - master.row, column - master.column) : null;
  }
  if (file === null || file === '') return null;
  const fills = cell.formulaType === 'array' ? cell.formulaRef : undefined;
  return {
    file,
    entered: enteredFormula(file, { sheet, row, column, tables }),
    ...(fills !== undefined && { fills }),
    ...(cell.formulaDynamic && { dynamic: true }),
  };
}

function besideOf(cell: FileCell | undefined, formula: FileFormula | null, shared: Shared): BesideCell | null {
  if (!cell || (!formula && !cell.comment && !cell.hyperlink && !cell.richText)) return null;
  if (cell.comment) shared.comments += 1;
  const runs = cell.richText?.map((run) =>
    run.font ? { ...run, font: shared.plain({ font: run.font }).font ?? {} } : run,
  );
  if (runs) shared.runs += 1;
  return {
    ...(formula && { formula }),
    ...(cell.comment && { comment: cell.comment }),
    ...(cell.hyperlink && { link: cell.hyperlink }),
    ...(runs && { runs }),
  };
}

function held(
  value: CellValue,
  cell: FileCell | undefined,
  shared: Shared,
  filed: number | undefined,
): readonly [number, number] {
  if (value === null) return [BLANK, 0];
  if (value instanceof Date) {
    const format = cell?.style?.numFmt ?? '';
    if (filed !== undefined) return [NUMBER, filed + (shared.from1904 && showsDay(format) ? BETWEEN_SYSTEMS : 0)];
    return [NUMBER, serialOf(value, format, shared.from1904)];
  }
  if (typeof value === 'number') return [NUMBER, value];
  if (typeof value === 'boolean') return [TRUTH, value ? 1 : 0];
  const isError =
    cell?.type === 'error' || (cell?.formula !== undefined && ERRORS.test(value) && cell.type !== 'richText');
  return [isError ? ERROR : TEXT, shared.text(value)];
}

const ERRORS = /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA)$/;

const DAY_MS = 86_400_000;
const FIRST_DAY_MS = Date.UTC(1899, 11, 31);
const FIRST_DAY_1904_MS = Date.UTC(1904, 0, 1);
/** Days are counted with a 29 February 1900 that never was. */
const NO_SUCH_DAY = 60;

/** Days between the two that are counted from (Microsoft's published note on date systems). */
const BETWEEN_SYSTEMS = 1462;

function showsDay(format: string): boolean {
  return /[yd]/i.test(format.replace(/"[^"]*"|\\.|\[[^\]]*\]/g, ''));
}

/** A day as a workbook counts it from 1900; a length of time stays what it is, whatever the days are counted from. */
export function serialOf(date: Date, format: string, from1904: boolean): number {
  if (from1904 && !showsDay(format)) return (date.getTime() - FIRST_DAY_1904_MS) / DAY_MS;
  const days = (date.getTime() - FIRST_DAY_MS) / DAY_MS;
  return days >= NO_SUCH_DAY ? days + 1 : days;
}

/** Cells of `A2:B3` as `row,column`, of a reach that is not absurd. */
function cellsIn(range: string): string[] {
  const corners = /^\$?([A-Z]+)\$?(\d+):\$?([A-Z]+)\$?(\d+)$/i.exec(range);
  if (!corners) return [];
  const [, left = '', top = '', right = '', bottom = ''] = corners;
  const [from, to] = [columnOf(left), columnOf(right)];
  const [first, last] = [Number(top) - 1, Number(bottom) - 1];
  if ((to - from + 1) * (last - first + 1) > 1_000_000) return [];
  const cells: string[] = [];
  for (let row = first; row <= last; row++)
    for (let column = from; column <= to; column++) cells.push(`${row},${column}`);
  return cells;
}
