/**
 * A workbook in memory behind the port, for testing the jobs done through it: cells, tables, names, settings and dressing. It
 * calculates nothing itself; what a call of ours fills is given by `calculate`. Any step of a change can be made to fail.
 */
import { PortError } from '../../src/workbook/port';
import type {
  Answers,
  Block,
  BlockSeen,
  Call,
  Capabilities,
  Change,
  Put,
  Query,
  Receipt,
  Reverted,
  Seen,
  Selection,
  SheetContents,
  TableSeen,
  WorkbookPort,
} from '../../src/workbook/port';
import { callText } from '../../src/workbook/shared/call';
import { contains, fixed, named, overlap, sameBlock, sameName } from '../../src/workbook/shared/address';
import { nothingThere } from '../../src/workbook/shared/looked';
import { buildReceipt } from '../../src/workbook/shared/receipt';
import { packReceipt } from '../../src/workbook/shared/packed';
import { refuseUnsafe, tableBlock } from '../../src/workbook/shared/refuse';
import { planRevert, refuseProtectedRevert, revertedBy, type Now } from '../../src/workbook/shared/revert';
import { refuseChanged } from '../../src/workbook/shared/unchanged';

type Held = { value: Seen } | { formula: string };
interface Sheet {
  name: string;
  protected: boolean;
  hidden?: boolean;
  rightToLeft?: boolean;
  merged: Block[];
  /** Rows and columns that a person hid, as `row 3`. */
  hiddenLines?: string[];
  cells: Record<string, Held>;
}
interface State {
  sheets: Sheet[];
  tables: { name: string; at: Block; filtered: boolean; totals?: true }[];
  names: Record<string, Block>;
  settings: Record<string, string>;
  /** What was done to the looks of cells, one entry a block. */
  dressed: { at: Block; how: string }[];
}

export type Calculate = (call: Call, port: MemoryPort) => readonly (readonly Seen[])[] | { readonly error: string };

const key = (row: number, column: number): string => `${row},${column}`;
export const widthKey = (sheet: string, column: number): string => `${sheet} ${column}`;
const isFilled = (held: Held | undefined): boolean =>
  held !== undefined && ('formula' in held || (held.value !== null && held.value !== ''));

/** All that a table takes up. */
const withTotals = ({ at, totals }: State['tables'][number]): Block => (totals ? { ...at, rows: at.rows + 1 } : at);

export class MemoryPort implements WorkbookPort {
  capabilities: Capabilities = { host: 'excel', spill: true, pageSetup: true, undoGroup: false };
  calculate: Calculate | null = null;
  /** Steps that fail, counted from 1 over all that `apply` does; the step after a failure puts back. */
  failing = new Set<number>();
  reads = 0;
  applies = 0;
  /** Every change that was asked for. */
  asked: Change[] = [];
  selected: Block = { sheet: 'Sheet1', row: 0, column: 0, rows: 1, columns: 1 };
  private state: State = { sheets: [], tables: [], names: {}, settings: {}, dressed: [] };
  private readonly calls = new Map<string, Call>();
  /** Widths of columns that were given one, in characters; Undo does not bring back what they were. */
  readonly widths = new Map<string, number>();
  /** Steps of changes done so far, failed ones included. */
  stepsDone = 0;

  constructor(sheets: readonly string[] = ['Sheet1']) {
    for (const name of sheets) this.addSheet(name);
  }

  /** Another workbook with the same content. */
  copy(): MemoryPort {
    const twin = new MemoryPort([]);
    twin.capabilities = this.capabilities;
    twin.calculate = this.calculate;
    twin.selected = this.selected;
    twin.state = structuredClone(this.state);
    for (const [formula, call] of this.calls) twin.calls.set(formula, call);
    for (const [column, width] of this.widths) twin.widths.set(column, width);
    return twin;
  }

  /* ---------------------------------------------------------------- what a person does */

  addSheet(name: string): void {
    if (!this.sheet(name)) this.state.sheets.push({ name, protected: false, merged: [], cells: {} });
  }

  type(sheet: string, row: number, column: number, value: Seen | { formula: string }): void {
    const found = this.sheet(sheet);
    if (!found) throw new Error(`no sheet ${sheet}`);
    put(found, row, column, typeof value === 'object' && value !== null && 'formula' in value ? value : { value });
  }

  typeRows(sheet: string, row: number, column: number, rows: readonly (readonly Seen[])[]): void {
    rows.forEach((line, down) => line.forEach((value, across) => this.type(sheet, row + down, column + across, value)));
  }

  addTable(name: string, at: Block): void {
    this.state.tables.push({ name, at, filtered: false });
  }

  /** A table that a person makes, with the cells it holds. */
  typeTable(name: string, sheet: string, rows: readonly (readonly Seen[])[]): void {
    this.addSheet(sheet);
    this.typeRows(sheet, 0, 0, rows);
    this.addTable(name, { sheet, row: 0, column: 0, rows: rows.length, columns: rows[0]?.length ?? 1 });
  }

  /** Fills the body of a table, making it as long as it needs to be. */
  fillTable(name: string, rows: readonly Readonly<Record<string, Seen>>[]): void {
    const table = this.table(name);
    if (!table) throw new Error(`no table ${name}`);
    table.at = { ...table.at, rows: Math.max(table.at.rows, rows.length + 1) };
    const { headers } = this.tableSeen(name) as TableSeen;
    rows.forEach((row, down) => {
      for (const [header, value] of Object.entries(row)) {
        const across = headers.indexOf(header);
        if (across < 0) throw new Error(`no column ${header}`);
        this.type(table.at.sheet, table.at.row + 1 + down, table.at.column + across, value);
      }
    });
  }

  private widen(name: string, headers: readonly string[]): void {
    const table = this.table(name);
    if (!table) return;
    const { sheet, row, column, columns } = table.at;
    this.typeRows(sheet, row, column + columns, [headers]);
    table.at = { ...table.at, columns: columns + headers.length };
  }

  /** Turns a table into plain cells. */
  removeTable(name: string): void {
    this.state.tables = this.state.tables.filter((table) => !sameName(table.name, name));
  }

  private lengthen(name: string, rows: number): void {
    const table = this.table(name);
    if (table?.totals) throw new Error(`${name} has totals`);
    if (table) table.at = { ...table.at, rows: table.at.rows + rows };
  }

  /** A person widens a table, over cells they typed. */
  widenTable(name: string, columns: number): void {
    const table = this.table(name);
    if (table) table.at = { ...table.at, columns: table.at.columns + columns };
  }

  /** A person turns a table back into cells. */
  dropTable(name: string): void {
    this.state.tables = this.state.tables.filter((table) => !sameName(table.name, name));
  }

  /** A person hides a sheet. */
  hide(sheet: string): void {
    const found = this.sheet(sheet);
    if (found) found.hidden = true;
  }

  /** A person lets the columns of a sheet run from right to left: its addresses stay what they are. */
  turn(sheet: string): void {
    const found = this.sheet(sheet);
    if (found) found.rightToLeft = true;
  }

  protect(sheet: string): void {
    const found = this.sheet(sheet);
    if (found) found.protected = true;
  }

  hideLine(sheet: string, what: 'row' | 'column', which: number): void {
    const found = this.sheet(sheet);
    if (found) found.hiddenLines = [...new Set([...(found.hiddenLines ?? []), `${what} ${which}`])];
  }

  /** Shows a row of totals right below a table, which is no part of what a read answers of it. */
  showTotals(name: string): void {
    const table = this.table(name);
    if (!table) return;
    table.totals = true;
    const { sheet, row, column, rows } = table.at;
    this.type(sheet, row + rows, column, 'Total');
  }

  renameTable(name: string, to: string): void {
    const table = this.table(name);
    if (table) table.name = to;
  }

  /** A name that a person gives to some cells. */
  addName(name: string, at: Block): void {
    this.state.names[name] = at;
  }

  merge(at: Block): void {
    this.sheet(at.sheet)?.merged.push(at);
  }

  filter(name: string): void {
    const table = this.table(name);
    if (table) table.filtered = true;
  }

  rename(sheet: string, to: string): void {
    const found = this.sheet(sheet);
    if (!found) throw new Error(`no sheet ${sheet}`);
    const moved = (at: Block): Block => (sameName(at.sheet, sheet) ? { ...at, sheet: to } : at);
    for (const table of this.state.tables) table.at = moved(table.at);
    for (const [name, at] of Object.entries(this.state.names)) this.state.names[name] = moved(at);
    found.name = to;
  }

  deleteSheet(sheet: string): void {
    this.state.sheets = this.state.sheets.filter(({ name }) => !sameName(name, sheet));
    this.state.tables = this.state.tables.filter(({ at }) => !sameName(at.sheet, sheet));
    this.state.names = Object.fromEntries(
      Object.entries(this.state.names).filter(([, at]) => !sameName(at.sheet, sheet)),
    );
  }

  insertRows(sheet: string, before: number, count: number): void {
    const found = this.sheet(sheet);
    if (!found) throw new Error(`no sheet ${sheet}`);
    const moved = (at: Block): Block => {
      if (!sameName(at.sheet, sheet) || at.row + at.rows <= before) return at;
      return at.row >= before ? { ...at, row: at.row + count } : { ...at, rows: at.rows + count };
    };
    found.cells = Object.fromEntries(
      Object.entries(found.cells).map(([at, held]) => {
        const [row = 0, column = 0] = at.split(',').map(Number);
        return [key(row >= before ? row + count : row, column), held];
      }),
    );
    for (const table of this.state.tables) table.at = moved(table.at);
    for (const [name, at] of Object.entries(this.state.names)) this.state.names[name] = moved(at);
    found.merged = found.merged.map(moved);
    found.hiddenLines = found.hiddenLines?.map((hidden) => {
      const [what, which = 0] = [hidden.split(' ')[0], Number(hidden.split(' ')[1])];
      return what === 'row' && which >= before ? `row ${which + count}` : hidden;
    });
  }

  /** What of a sheet or a table is protected, merged, hidden, filtered or has totals, in words. */
  marks(): string[] {
    const sheets = this.state.sheets.flatMap(
      ({ name, protected: locked, merged, hiddenLines, hidden, rightToLeft }) => [
        ...(locked ? [`${name} is protected`] : []),
        ...(hidden ? [`${name} is hidden`] : []),
        ...(rightToLeft ? [`${name} runs from right to left`] : []),
        ...merged.map((at) => `${named(at)} is merged`),
        ...(hiddenLines ?? []).map((what) => `${name} hides ${what}`),
      ],
    );
    const tables = this.state.tables.flatMap(({ name, filtered, totals }) => [
      ...(filtered ? [`${name} is filtered`] : []),
      ...(totals ? [`${name} has totals`] : []),
    ]);
    return [...sheets, ...tables].sort();
  }

  /* ---------------------------------------------------------------- looking, for a test */

  /** What a cell shows. */
  shows(sheet: string, row: number, column: number): Seen {
    return this.blockSeen({ sheet, row, column, rows: 1, columns: 1 }).values[0]?.[0] ?? null;
  }

  formula(sheet: string, row: number, column: number): string | null {
    return this.blockSeen({ sheet, row, column, rows: 1, columns: 1 }).formulas[0]?.[0] ?? null;
  }

  /** Everything that a person could see in the cells, sheets, tables and names. */
  content(): unknown {
    const { sheets, tables, names } = this.state;
    const filled = sheets.map(({ name, cells }) => [
      name,
      Object.entries(cells)
        .filter(([, held]) => isFilled(held))
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    ]);
    return structuredClone({ filled, tables, names });
  }

  /** As `content`, with settings and dressing. */
  everything(): unknown {
    return structuredClone({ content: this.content(), settings: this.state.settings, dressed: this.state.dressed });
  }

  sheetNames(): string[] {
    return this.state.sheets.map(({ name }) => name);
  }

  name(name: string): Block | null {
    return this.state.names[name] ?? null;
  }

  dressing(): readonly { at: Block; how: string }[] {
    return this.state.dressed;
  }

  setting(name: string): string | null {
    return this.state.settings[name] ?? null;
  }

  /* ---------------------------------------------------------------- the port */

  async read<const Qs extends readonly Query[]>(queries: Qs): Promise<Answers<Qs>> {
    this.reads += 1;
    return queries.map((query) => this.answer(query)) as unknown as Answers<Qs>;
  }

  async apply(
    changes: readonly Change[],
    looked: readonly (BlockSeen | TableSeen)[],
    options: { readonly label: string; readonly receiptKey?: string },
  ): Promise<Receipt> {
    refuseUnsafe(changes, looked);
    refuseChanged(changes, looked, (at) => this.blockSeen(at));
    this.applies += 1;
    this.asked.push(...changes);
    const before = structuredClone(this.state);
    const receipt = buildReceipt(changes, looked, options.label, {
      sheets: this.sheetNames(),
      tables: this.state.tables.map(({ name }) => name),
      names: Object.keys(this.state.names),
      placeOf: (name) => this.state.names[name] ?? null,
    });
    const widthsBefore = [...this.widths];
    try {
      this.step(() => {
        if (options.receiptKey) this.state.settings[options.receiptKey] = packReceipt(receipt);
      });
      for (const change of changes) this.step(() => this.change(change));
    } catch (error) {
      this.widths.clear();
      for (const [column, width] of widthsBefore) this.widths.set(column, width);
      this.putBack(before, receipt, error instanceof Error ? error.message : String(error));
    }
    return receipt;
  }

  private step(act: () => void): void {
    this.stepsDone += 1;
    if (this.failing.has(this.stepsDone)) throw new Error(`step ${this.stepsDone} failed`);
    act();
  }

  private putBack(before: State, receipt: Receipt, hostSaid: string): never {
    this.stepsDone += 1;
    if (this.failing.has(this.stepsDone)) {
      throw new PortError(
        'halfWritten',
        receipt.written.map(({ at }) => named(at)),
        hostSaid,
      );
    }
    this.state = before;
    throw new PortError('putBack', [], hostSaid);
  }

  async revert(receipt: Receipt): Promise<Reverted> {
    try {
      this.step(() => undefined);
    } catch (error) {
      throw new PortError('putBack', [], error instanceof Error ? error.message : String(error));
    }
    const now: Now = {
      blocks: receipt.written.map(({ at, rows }) => {
        if (!rows) return this.blockSeen(at);
        const list = rows.headingRows === undefined ? this.table(rows.table)?.at : this.state.names[rows.table];
        return list ? this.blockSeen(list) : nothingThere(at);
      }),
      widened: (receipt.widened ?? []).map(({ table, headers }) => {
        const at = this.table(table)?.at;
        return at ? { at, seen: this.blockSeen({ ...at, columns: at.columns + headers.length }) } : null;
      }),
      allSheets: this.sheetNames(),
      tables: receipt.madeTables.flatMap((name) => {
        const at = this.table(name)?.at;
        return at ? [{ name, seen: this.blockSeen(at) }] : [];
      }),
      sheets: receipt.madeSheets.flatMap((name) => {
        const sheet = this.sheet(name);
        return sheet ? [{ name, used: this.used(sheet), tables: this.tablesOn(name), keep: false }] : [];
      }),
      names: receipt.madeNames.filter((name) => name in this.state.names),
      placeOf: (name) => this.state.names[name] ?? null,
    };
    const plan = planRevert(receipt, now);
    refuseProtectedRevert(plan, now, (name) => this.sheet(name)?.protected === true);
    this.state.tables = this.state.tables.filter(({ name }) => !plan.removeTables.includes(name));
    for (const name of plan.removeNames) delete this.state.names[name];
    for (const { name, at } of plan.moveNames) this.state.names[name] = at;
    for (const { name, at, blank } of plan.narrow) {
      const table = this.table(name);
      if (table) table.at = at;
      this.typeRows(blank.sheet, blank.row, blank.column, [Array<null>(blank.columns).fill(null)]);
    }
    for (const { at, cells } of plan.puts) {
      const sheet = this.sheet(at.sheet);
      cells.forEach((line, down) =>
        line.forEach((cell, across) => {
          if (!sheet || cell === undefined) return;
          const held = typeof cell === 'object' && cell !== null ? cell : { value: cell };
          put(sheet, at.row + down, at.column + across, held);
        }),
      );
    }
    this.state.dressed = this.state.dressed.filter(({ at }) => !plan.undress.some((block) => sameBlock(block.at, at)));
    for (const name of plan.deleteSheets) this.deleteSheet(name);
    this.state.dressed = this.state.dressed.filter(({ at }) => this.sheet(at.sheet) !== null);
    return revertedBy(receipt, plan);
  }

  async selection(): Promise<Selection> {
    const table = this.state.tables.find(({ at }) => contains(at, this.selected));
    return { at: this.selected, table: table?.name ?? null };
  }

  async recall(name: string): Promise<string | null> {
    return this.state.settings[name] ?? null;
  }

  async remember(name: string, value: string | null): Promise<void> {
    if (value === null) delete this.state.settings[name];
    else this.state.settings[name] = value;
  }

  watch(_changed: (sheet: string) => void): () => void {
    return () => undefined;
  }

  /* ---------------------------------------------------------------- inside */

  private sheet(name: string): Sheet | null {
    return this.state.sheets.find((sheet) => sameName(sheet.name, name)) ?? null;
  }

  private table(name: string): State['tables'][number] | null {
    return this.state.tables.find((table) => sameName(table.name, name)) ?? null;
  }

  private tablesOn(sheet: string): string[] {
    return this.state.tables.filter(({ at }) => sameName(at.sheet, sheet)).map(({ name }) => name);
  }

  private used(sheet: Sheet): BlockSeen | null {
    const filled = Object.entries(sheet.cells).filter(([, held]) => isFilled(held));
    if (filled.length === 0) return null;
    const places = filled.map(([at]) => at.split(',').map(Number));
    const rows = Math.max(...places.map(([row = 0]) => row)) + 1;
    const columns = Math.max(...places.map(([, column = 0]) => column)) + 1;
    return this.blockSeen({ sheet: sheet.name, row: 0, column: 0, rows, columns });
  }

  private contentsOf({ name, cells }: Sheet): SheetContents {
    const filled = Object.entries(cells).flatMap(([at, held]) => (isFilled(held) ? [at.split(',').map(Number)] : []));
    const rows = filled.reduce((most, [row = 0]) => Math.max(most, row + 1), 0);
    const columns = filled.reduce((most, [, column = 0]) => Math.max(most, column + 1), 0);
    const tables = this.state.tables.filter(({ at }) => sameName(at.sheet, name));
    return {
      name,
      used: rows > 0 ? { sheet: name, row: 0, column: 0, rows, columns } : null,
      tables: tables.map((table) => ({ name: table.name, at: table.at })),
    };
  }

  private answer(query: Query): unknown {
    switch (query.read) {
      case 'sheets':
        return this.state.sheets.map(({ name, protected: locked }) => ({ name, protected: locked }));
      case 'contents':
        return this.state.sheets.filter(({ hidden }) => !hidden).map((sheet) => this.contentsOf(sheet));
      case 'table':
        return this.tableSeen(query.table);
      case 'block':
        return { ...this.blockSeen(query.at), ...(query.widths && { widths: this.widthsOf(query.at) }) };
      case 'name':
        return { name: query.name, at: this.state.names[query.name] ?? null };
    }
  }

  /** Columns that nobody gave a width are as wide as Excel makes them. */
  private widthsOf({ sheet, column, columns }: Block): number[] {
    return Array.from({ length: columns }, (_, across) => this.widths.get(widthKey(sheet, column + across)) ?? 8.43);
  }

  tableSeen(name: string): TableSeen | null {
    const table = this.table(name);
    if (!table) return null;
    const { values, formulas } = this.blockSeen(table.at);
    const body = formulas.slice(1);
    return {
      name: table.name,
      at: table.at,
      headers: (values[0] ?? []).map((cell) => (typeof cell === 'object' ? '' : String(cell))),
      rows: values.slice(1),
      ...(body.some((row) => row.some(Boolean)) ? { formulas: body } : {}),
      protected: this.sheet(table.at.sheet)?.protected ?? false,
      filtered: table.filtered,
    };
  }

  blockSeen(at: Block): BlockSeen {
    const sheet = this.sheet(at.sheet);
    const held = (down: number, across: number): Held | undefined =>
      sheet?.cells[key(at.row + down, at.column + across)];
    const grid = <T>(pick: (down: number, across: number) => T): T[][] =>
      Array.from({ length: at.rows }, (_, down) =>
        Array.from({ length: at.columns }, (_, across) => pick(down, across)),
      );
    const values = grid((down, across): Seen => {
      const cell = held(down, across);
      return cell && 'value' in cell ? cell.value : null;
    });
    const spills = sheet ? this.spillInto(sheet, at, values) : [];
    return {
      at,
      values,
      formulas: grid((down, across) => {
        const cell = held(down, across);
        return cell && 'formula' in cell ? cell.formula : null;
      }),
      ...(spills.length > 0 ? { spills } : {}),
      sheetExists: sheet !== null,
      protected: sheet?.protected ?? false,
      merged: (sheet?.merged ?? []).filter((area) => overlap(area, at)),
      tables: this.state.tables.filter((table) => overlap(withTotals(table), at)).map(({ name }) => name),
    };
  }

  /** Lays over a block what formulas fill. */
  private spillInto(sheet: Sheet, at: Block, values: Seen[][]): Block[] {
    const spills: Block[] = [];
    const lay = (row: number, column: number, value: Seen): void => {
      const line = values[row - at.row];
      if (line && column >= at.column && column < at.column + at.columns) line[column - at.column] = value;
    };
    for (const [place, held] of Object.entries(sheet.cells)) {
      if (!('formula' in held)) continue;
      const [row = 0, column = 0] = place.split(',').map(Number);
      const call = this.calls.get(held.formula);
      const result = call && this.calculate ? this.calculate(call, this) : { error: '#NAME?' };
      if ('error' in result) {
        lay(row, column, result);
        continue;
      }
      const area = { sheet: sheet.name, row, column, rows: result.length, columns: result[0]?.length ?? 0 };
      const blocked = Object.entries(sheet.cells).some(([other, cell]) => {
        const [down = 0, across = 0] = other.split(',').map(Number);
        const spot = { sheet: sheet.name, row: down, column: across, rows: 1, columns: 1 };
        return other !== place && isFilled(cell) && overlap(area, spot) !== null;
      });
      if (blocked) {
        lay(row, column, { error: '#SPILL!' });
        continue;
      }
      result.forEach((line, down) => line.forEach((value, across) => lay(row + down, column + across, value)));
      if (overlap(area, at)) spills.push(area);
    }
    return spills;
  }

  private change(change: Change): void {
    switch (change.do) {
      case 'sheet':
        return this.addSheet(change.name);
      case 'write':
        return this.write(change.at, change.cells);
      case 'table':
        return void (this.table(change.name) ?? this.addTable(change.name, tableBlock(change.at)));
      case 'lengthen':
        return this.lengthen(change.table, change.rows);
      case 'widen':
        return this.widen(change.table, change.headers);
      case 'format':
      case 'choices':
      case 'highlight':
        this.state.dressed.push({ at: change.at, how: JSON.stringify(change) });
        return;
      case 'widths':
        change.widths.forEach((width, i) => this.widths.set(widthKey(change.sheet, change.column + i), width));
        return;
      case 'name':
        this.state.names[change.name] = change.at;
        return;
      case 'show':
        this.selected = change.at;
        return;
      case 'remember':
        this.state.settings[change.key] = change.value;
        return;
      default:
        return;
    }
  }

  private write(at: Block, cells: readonly (readonly Put[])[]): void {
    const sheet = this.sheet(at.sheet);
    if (!sheet) throw new Error(`no sheet ${at.sheet}`);
    cells.forEach((line, down) =>
      line.forEach((cell, across) => {
        if (cell === undefined) return;
        put(sheet, at.row + down, at.column + across, this.toHeld(cell));
      }),
    );
  }

  private toHeld(cell: Exclude<Put, undefined>): Held {
    if (typeof cell !== 'object' || cell === null) return { value: cell };
    const formula = callText(cell, (argument) => {
      if ('block' in argument) return fixed(argument.block);
      return 'table' in argument ? `${argument.table}[#All]` : argument.name;
    });
    this.calls.set(formula, cell);
    return { formula };
  }
}

function put(sheet: Sheet, row: number, column: number, held: Held): void {
  if ('value' in held && (held.value === null || held.value === '')) delete sheet.cells[key(row, column)];
  // An error constant is entered as one would type it.
  else if ('formula' in held && held.formula.startsWith('#'))
    sheet.cells[key(row, column)] = { value: { error: held.formula } };
  else sheet.cells[key(row, column)] = held;
}
