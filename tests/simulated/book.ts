import { addressOf, blockOf, contains, fixed, overlap, sheetInFormula } from '../../src/workbook/shared/address';
import type { Block } from '../../src/workbook/port';
import { enter } from './entry';
import type { CellState } from './entry';
import { HostError } from './wire';

/** A rectangle of a sheet; the sheet is known from where it is kept. */
export type Area = Omit<Block, 'sheet'>;

const blank: CellState = { value: '' };

/** Something an area was dressed with; later ones win, `clear` takes all away. */
interface Dressing {
  readonly at: Area;
  readonly name: string;
  readonly value: unknown;
}

export interface HighlightRule {
  /** More than one once a part of it was cleared. */
  readonly areas: readonly Area[];
  readonly parts: Record<string, unknown>;
}

/** The cells of a sheet that hold something, by row and column: numbers as keys, so that long tables leave little to sweep up. */
class SheetCells {
  readonly #rows = new Map<number, Map<number, CellState>>();

  get(row: number, column: number): CellState | undefined {
    return this.#rows.get(row)?.get(column);
  }

  set(row: number, column: number, state: CellState): void {
    const line = this.#rows.get(row) ?? new Map<number, CellState>();
    if (line.size === 0) this.#rows.set(row, line);
    line.set(column, state);
  }

  delete(row: number, column: number): void {
    const line = this.#rows.get(row);
    line?.delete(column);
    if (line?.size === 0) this.#rows.delete(row);
  }

  clear(): void {
    this.#rows.clear();
  }

  /** Takes over the cells of another sheet. A cell's state is never changed but replaced, so both may hold it. */
  takeFrom(other: SheetCells): void {
    for (const [row, line] of other.#rows) this.#rows.set(row, new Map(line));
  }

  /** Every cell with where it stands. */
  *[Symbol.iterator](): Generator<{ readonly row: number; readonly column: number; readonly state: CellState }> {
    for (const [row, line] of this.#rows) for (const [column, state] of line) yield { row, column, state };
  }
}

export class SheetData {
  readonly id: string;
  name: string;
  visibility = 'Visible';
  protected = false;
  /** Nothing that the client library tells of; a person would miss it. */
  rightToLeft = false;
  /** Hidden by a person. */
  readonly hiddenRows = new Set<number>();
  readonly hiddenColumns = new Set<number>();
  frozenRows = 0;
  frozenColumns = 0;
  readonly cells = new SheetCells();
  readonly merged: Area[] = [];
  readonly spills: { readonly at: Area; readonly values: readonly (readonly (string | number)[])[] }[] = [];
  readonly charts: string[] = [];
  readonly page: Record<string, unknown> = {};
  highlights: HighlightRule[] = [];
  dressings: Dressing[] = [];

  constructor(id: string, name: string) {
    this.id = id;
    this.name = name;
  }

  /** A sheet of its own with all that stands on this one. */
  copy(): SheetData {
    const twin = new SheetData(this.id, this.name);
    const { visibility, frozenRows, rightToLeft } = this;
    Object.assign(twin, { visibility, frozenRows, rightToLeft, protected: this.protected });
    twin.highlights = structuredClone(this.highlights);
    // Dressings are replaced by others, never changed themselves.
    twin.dressings = [...this.dressings];
    twin.cells.takeFrom(this.cells);
    for (const row of this.hiddenRows) twin.hiddenRows.add(row);
    for (const column of this.hiddenColumns) twin.hiddenColumns.add(column);
    twin.merged.push(...this.merged);
    twin.spills.push(...this.spills);
    twin.charts.push(...this.charts);
    Object.assign(twin.page, structuredClone(this.page));
    return twin;
  }

  area(at: Area): Block {
    return { sheet: this.name, ...at };
  }

  own(row: number, column: number): CellState {
    return this.cells.get(row, column) ?? blank;
  }

  /** The spill that shows in a cell, if no value stands in its way. */
  spillAt(row: number, column: number): { at: Area; value: string | number } | null {
    for (const { at, values } of this.spills) {
      const inside = contains(this.area(at), this.area({ row, column, rows: 1, columns: 1 }));
      if (inside && this.#unfolds(at)) return { at, value: values[row - at.row]?.[column - at.column] ?? '' };
    }
    return null;
  }

  #unfolds(at: Area): boolean {
    if (!this.own(at.row, at.column).formula) return false;
    for (let row = at.row; row < at.row + at.rows; row += 1) {
      for (let column = at.column; column < at.column + at.columns; column += 1) {
        const anchor = row === at.row && column === at.column;
        if (!anchor && this.own(row, column).value !== '') return false;
      }
    }
    return true;
  }

  /** What a cell shows. */
  shown(row: number, column: number): CellState {
    const own = this.own(row, column);
    if (this.spills.length === 0) return own;
    const spill = this.spillAt(row, column);
    return spill ? { ...own, value: spill.value } : own;
  }

  put(row: number, column: number, typed: unknown): void {
    const state = enter(typed, String(this.dressAt('numberFormat', row, column) ?? 'General'));
    if (state.value === '') this.cells.delete(row, column);
    else this.cells.set(row, column, state);
  }

  dress(at: Area, name: string, value: unknown): void {
    // What is dressed anew in every cell of it is forgotten: a page that is filled a thousand times keeps one set of looks.
    const covered = (other: Dressing): boolean => other.name === name && contains(this.area(at), this.area(other.at));
    if (this.dressings.some(covered)) this.dressings = this.dressings.filter((other) => !covered(other));
    this.dressings.push({ at, name, value });
  }

  undress(at: Area, names: (name: string) => boolean): void {
    for (const name of new Set(this.dressings.map((dressing) => dressing.name).filter(names))) {
      this.dress(at, name, null);
    }
  }

  /** A rule that reaches further stays on the cells around (*from memory*). */
  clearHighlights(at: Area): void {
    this.highlights = this.highlights.flatMap((rule) => {
      if (!rule.areas.some((area) => overlap(this.area(area), this.area(at)))) return [rule];
      const areas = rule.areas.flatMap((area) => without(area, at));
      return areas.length > 0 ? [{ ...rule, areas }] : [];
    });
  }

  /** The value of one kind of dressing in a cell, `null` if it has none. */
  dressAt(name: string, row: number, column: number): unknown {
    const holds = ({ at }: Dressing): boolean =>
      row >= at.row && row < at.row + at.rows && column >= at.column && column < at.column + at.columns;
    return this.dressings.findLast((dressing) => dressing.name === name && holds(dressing))?.value ?? null;
  }

  used(): Area | null {
    const areas: Area[] = [...this.cells].map(({ row, column }) => ({ row, column, rows: 1, columns: 1 }));
    areas.push(...this.spills.map(({ at }) => at).filter((at) => this.#unfolds(at)));
    if (areas.length === 0) return null;
    const row = least(areas.map((area) => area.row));
    const column = least(areas.map((area) => area.column));
    const bottom = most(areas.map((area) => area.row + area.rows));
    const right = most(areas.map((area) => area.column + area.columns));
    return { row, column, rows: bottom - row, columns: right - column };
  }
}

/** An area without the cells of another: what is above and below it, and left and right between these. */
function without(area: Area, other: Area): Area[] {
  const top = Math.max(area.row, other.row);
  const left = Math.max(area.column, other.column);
  const bottom = Math.min(area.row + area.rows, other.row + other.rows);
  const right = Math.min(area.column + area.columns, other.column + other.columns);
  if (bottom <= top || right <= left) return [area];
  const between = { row: top, rows: bottom - top };
  const rest: Area[] = [
    { ...area, rows: top - area.row },
    { ...area, ...between, columns: left - area.column },
    { ...between, column: right, columns: area.column + area.columns - right },
    { ...area, row: bottom, rows: area.row + area.rows - bottom },
  ];
  return rest.filter(({ rows, columns }) => rows > 0 && columns > 0);
}

const least = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.min(a, b));
const most = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.max(a, b));

export interface TableData {
  readonly id: string;
  readonly sheet: SheetData;
  at: Area;
  name: string;
  style: string;
  banded: boolean;
  bandedColumns: boolean;
  firstColumn: boolean;
  lastColumn: boolean;
  /** Buttons to filter by. */
  buttons: boolean;
  filtered: boolean;
  /** What each column is filtered by. */
  filters: (Readonly<Record<string, unknown>> | null)[];
  headersShown: boolean;
  totalsShown: boolean;
}

/** The simulated workbook: what a file holds. It calculates nothing. */
export class Book {
  readonly sheets: SheetData[] = [];
  readonly tables: TableData[] = [];
  /** Name → formula. */
  readonly names = new Map<string, string>();
  readonly settings = new Map<string, unknown>();
  active: SheetData;
  selection: Area = { row: 0, column: 0, rows: 1, columns: 1 };
  eventsOn = true;
  /** Told of each changed sheet as long as someone listens. */
  heard: ((sheet: SheetData) => void) | null = null;
  /** Told of each sheet that was deleted. */
  heardGone: ((sheet: SheetData) => void) | null = null;
  /** Ranges that a client keeps hold of: they go with the cells (its reference on tracked objects). */
  held: () => Iterable<{ readonly sheet: SheetData; at: Area }> = () => [];
  #nextId = 1;

  constructor() {
    this.active = this.addSheet('Sheet1');
  }

  /** A workbook of its own with all that is in this one; nobody is connected to it. */
  copy(): Book {
    const twin = new Book();
    const sheets = new Map(this.sheets.map((sheet) => [sheet, sheet.copy()] as const));
    const twinOf = (sheet: SheetData): SheetData => sheets.get(sheet) ?? sheet.copy();
    twin.sheets.splice(0, Infinity, ...sheets.values());
    twin.tables.push(...this.tables.map((table) => ({ ...table, sheet: twinOf(table.sheet) })));
    for (const [name, formula] of this.names) twin.names.set(name, formula);
    for (const [key, value] of this.settings) twin.settings.set(key, structuredClone(value));
    twin.active = twinOf(this.active);
    twin.selection = this.selection;
    twin.eventsOn = this.eventsOn;
    twin.#nextId = this.#nextId;
    return twin;
  }

  id(prefix: string): string {
    this.#nextId += 1;
    return `{${prefix}${this.#nextId}}`;
  }

  sheet(name: string): SheetData | null {
    return this.sheets.find((sheet) => sheet.id === name || same(sheet.name, name)) ?? null;
  }

  addSheet(name: string): SheetData {
    if (!name || name.length > 31 || /[\\/?*[\]:]/.test(name) || /^'|'$/.test(name))
      throw new HostError('InvalidArgument');
    if (this.sheet(name)) throw new HostError('ItemAlreadyExists');
    const sheet = new SheetData(this.id('S'), name);
    this.sheets.push(sheet);
    return sheet;
  }

  deleteSheet(sheet: SheetData): void {
    const visible = this.sheets.filter((other) => other.visibility === 'Visible' && other !== sheet);
    if (visible.length === 0) throw new HostError('InvalidOperation', 'A workbook must contain a visible sheet.');
    this.sheets.splice(this.sheets.indexOf(sheet), 1);
    if (this.eventsOn) this.heardGone?.(sheet);
    for (const table of this.tables.filter((other) => other.sheet === sheet))
      this.tables.splice(this.tables.indexOf(table), 1);
    for (const [name, formula] of this.names) {
      if (formula.startsWith(`=${sheetInFormula(sheet.name)}!`)) this.names.set(name, '=#REF!');
    }
    if (this.active === sheet) this.active = this.sheets[0] ?? sheet;
  }

  /** Names go with the sheet they point at. */
  renameSheet(sheet: SheetData, to: string): void {
    const [from, into] = [sheet.name, to].map((name) => `=${sheetInFormula(name)}!`) as [string, string];
    sheet.name = to;
    for (const [name, formula] of this.names) {
      if (formula.startsWith(from)) this.names.set(name, into + formula.slice(from.length));
    }
  }

  /** Tells of changed cells, as Excel does after each write. */
  tell(sheet: SheetData): void {
    if (this.eventsOn) this.heard?.(sheet);
  }

  /** Throws when a sheet may not be changed. */
  guard(sheet: SheetData): void {
    if (sheet.protected) throw new HostError('AccessDenied', 'The sheet is protected.');
  }

  tablesTouching(sheet: SheetData, at: Area): TableData[] {
    return this.tables.filter((table) => table.sheet === sheet && overlap(sheet.area(table.at), sheet.area(at)));
  }

  addTable(sheet: SheetData, at: Area): TableData {
    this.guard(sheet);
    const area = { ...at, rows: Math.max(2, at.rows) };
    if (this.tablesTouching(sheet, area).length > 0)
      throw new HostError('InvalidArgument', 'A table cannot overlap another table.');
    for (let i = 0; i < area.columns; i += 1) {
      const header = sheet.own(area.row, area.column + i).value;
      sheet.cells.set(area.row, area.column + i, { value: header === '' ? `Column${i + 1}` : String(header) });
    }
    const id = this.id('T');
    const name = `Table${this.tables.length + 1}`;
    const looks = {
      style: 'TableStyleMedium2',
      banded: true,
      bandedColumns: false,
      firstColumn: false,
      lastColumn: false,
    };
    const shown = { buttons: true, filtered: false, filters: [], headersShown: true, totalsShown: false };
    const table: TableData = { id, sheet, at: area, name, ...looks, ...shown };
    this.tables.push(table);
    return table;
  }

  /** Its top left corner stays, and no other table may be in the way; what stands in its new rows and columns becomes part of it. */
  resizeTable(table: TableData, sheet: SheetData, at: Area): void {
    this.guard(table.sheet);
    const sameCorner = sheet === table.sheet && at.row === table.at.row && at.column === table.at.column;
    const others = this.tablesTouching(sheet, at).filter((other) => other !== table);
    if (!sameCorner || at.rows < 2 || others.length > 0) throw new HostError('InvalidArgument');
    // Whether Excel does this with a row of totals is not known to us: it is taken to refuse.
    if (table.totalsShown) throw new HostError('InvalidArgument');
    for (let i = table.at.columns; i < at.columns; i += 1) {
      // Excel would name it Column1; whoever widens a table of ours writes the heading first.
      if (sheet.own(at.row, at.column + i).value === '')
        throw new Error('simulated: columns with headings are modelled');
    }
    this.#fillCalculated(table, at);
    table.at = at;
  }

  /** A column of a table that holds one formula throughout fills the rows that the table gets (*from memory*). */
  #fillCalculated(table: TableData, { row, column, rows }: Area): void {
    const { sheet, at } = table;
    for (let across = column; across < column + at.columns; across += 1) {
      const formulas = Array.from({ length: at.rows - 1 }, (_, i) => sheet.own(at.row + 1 + i, across).formula);
      const [formula] = formulas;
      if (formula === undefined || formulas.some((other) => other !== formula)) continue;
      for (let down = at.row + at.rows; down < row + rows; down += 1) sheet.put(down, across, formula);
    }
  }

  /** A row of totals comes right below a table (*from memory*); where something stands there, Excel would move it down. */
  showTotals(table: TableData): void {
    const { row, column, rows, columns } = table.at;
    const below = { ...table.at, row: row + rows, rows: 1 };
    const cells = Array.from({ length: columns }, (_, i) => table.sheet.own(row + rows, column + i).value);
    if (cells.some((value) => value !== '') || this.tablesTouching(table.sheet, below).length > 0)
      throw new Error('simulated: totals over blank cells are modelled');
    table.at = { ...table.at, rows: rows + 1 };
    table.totalsShown = true;
    table.sheet.put(row + rows, column, "'Total");
    table.sheet.put(row + rows, column + columns - 1, `=SUBTOTAL(103,${table.name}[Item])`);
  }

  /** Whole rows are put in; everything below moves down, and what reaches over that place grows (*from memory*). */
  insertRows(sheet: SheetData, before: number, count: number): void {
    const moved = <T extends Area>(at: T): T => {
      if (at.row + at.rows <= before) return at;
      return at.row >= before ? { ...at, row: at.row + count } : { ...at, rows: at.rows + count };
    };
    const cells = [...sheet.cells];
    sheet.cells.clear();
    for (const { row, column, state } of cells) sheet.cells.set(row >= before ? row + count : row, column, state);
    sheet.merged.splice(0, Infinity, ...sheet.merged.map(moved));
    sheet.highlights = sheet.highlights.map((rule) => ({ ...rule, areas: rule.areas.map(moved) }));
    sheet.dressings = sheet.dressings.map((dressing) => ({ ...dressing, at: moved(dressing.at) }));
    for (const table of this.tables) if (table.sheet === sheet) table.at = moved(table.at);
    for (const range of this.held()) if (range.sheet === sheet) range.at = moved(range.at);
    for (const [name, formula] of this.names) {
      const at = blockOf(formula);
      if (at && same(at.sheet, sheet.name)) this.names.set(name, `=${fixed(moved(at))}`);
    }
    const hidden = [...sheet.hiddenRows].map((row) => (row >= before ? row + count : row));
    sheet.hiddenRows.clear();
    for (const row of hidden) sheet.hiddenRows.add(row);
  }

  renameTable(table: TableData, name: string): void {
    if (!/^[A-Za-z_\\][\w.\\]*$/.test(name)) throw new HostError('InvalidArgument');
    if (this.tables.some((other) => other !== table && same(other.name, name)))
      throw new HostError('ItemAlreadyExists');
    table.name = name;
  }

  /** Everything a person would miss, as text: two equal texts are two equal workbooks. Formats are not in it. */
  snapshot(): string {
    const sheets = this.sheets.map((sheet) => ({
      name: sheet.name,
      protected: sheet.protected,
      cells: [...sheet.cells]
        .map(({ row, column, state }) => [`${row},${column}`, state] as const)
        .sort(([a], [b]) => (a < b ? -1 : 1)),
      tables: this.tables
        .filter((table) => table.sheet === sheet)
        .map((table) => `${table.name} ${addressOf(table.at)}`)
        .sort(),
    }));
    return JSON.stringify({ sheets, names: [...this.names].sort(), settings: [...this.settings].sort() }, null, 1);
  }
}

export function same(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}
