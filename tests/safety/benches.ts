/**
 * The three workbooks that run in Node, each with what the trials need of it: a port, a look at everything that a person would miss, hands
 * that go past the port, and steps inside a request that can be made to fail.
 */
import { BooleanNumber, ICommandService } from '@univerjs/core';
import { SetDefinedNameMutation } from '@univerjs/engine-formula';
import { SCOPE_WORKBOOK_VALUE_DEFINED_NAME } from '@univerjs/sheets';
import { SetSheetTableMutation, TableColumnFilterTypeEnum } from '@univerjs/sheets-table';
import { FUNCTIONS } from '../../src/functions/implementations';
import { functions as metadata } from '../../src/functions/functions.json';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { worksheetNamed } from '../../src/workbook/embedded/cells';
import { isProtected } from '../../src/workbook/embedded/seeing';
import { cellData } from '../../src/workbook/embedded/snapshot';
import { createHeadless, type Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { allTables, blockOfRange, layTable, liftTable, tableNamed } from '../../src/workbook/embedded/tables';
import { createExcelPort } from '../../src/workbook/excel/port';
import type { Block, Cell, WorkbookPort } from '../../src/workbook/port';
import { addressOf, fixed, named } from '../../src/workbook/shared/address';
import type { Book } from '../simulated/book';
import { simulate, type SimulatedOptions } from '../simulated/simulated';
import { MemoryPort } from '../workbook/memoryPort';
import { spillPlan } from '../workbook/workshop';

/** Everything that a person would miss, as text. */
export interface Snapshot {
  /** `sheet!row,column` → what was entered there. */
  readonly cells: ReadonlyMap<string, string>;
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
  readonly names: readonly string[];
  /** What is protected, merged, hidden, filtered, or has totals. */
  readonly marks: readonly string[];
  readonly settings: ReadonlyMap<string, string>;
}

/** What a person enters; an error stands in the cell as it is. */
export type Typed = Cell | { readonly formula: string } | { readonly error: string };

export interface Hands {
  type(sheet: string, row: number, column: number, value: Typed): Promise<void>;
  deleteSheet(sheet: string): Promise<void>;
  renameSheet(sheet: string, to: string): Promise<void>;
  /** Turns a table into plain cells. */
  removeTable(table: string): Promise<void>;
  renameTable(table: string, to: string): Promise<void>;
  insertRows(sheet: string, before: number, count: number): Promise<void>;
  hide(sheet: string, what: 'row' | 'column', which: number): Promise<void>;
  /** Shows a row of totals right below a table, where nothing stands. */
  totals(table: string): Promise<void>;
  addSheet(sheet: string): Promise<void>;
  /** Hides a sheet, unless it is the last that is shown. */
  hideSheet(sheet: string): Promise<void>;
  /** Lets the columns of a sheet run from right to left. */
  turn(sheet: string): Promise<void>;
  /** Lays a table over cells, the first row its headings. */
  addTable(table: string, at: Block): Promise<void>;
  merge(at: Block): Promise<void>;
  protect(sheet: string): Promise<void>;
  /** Hides rows of a table by a filter. */
  filter(table: string): Promise<void>;
  addName(name: string, at: Block): Promise<void>;
}

export interface SafetyBench {
  readonly host: 'memory' | 'simulated' | 'embedded';
  readonly calculates: boolean;
  /** The port of a pane that is opened now. */
  port(): WorkbookPort;
  snapshot(): Snapshot;
  readonly hands: Hands;
  /** Steps done inside requests so far. */
  steps(): number;
  /** Makes the workbook fail at some of the next steps, counted from 1. Answers how many of them it came to, and stops failing. */
  stumble(...at: readonly number[]): () => number;
  dispose(): void;
}

const texts = new WeakMap<Snapshot, string>();

export function snapshotText(seen: Snapshot): string {
  const { cells, sheets, tables, names, marks, settings } = seen;
  const known = texts.get(seen);
  if (known !== undefined) return known;
  // By code unit: it is only compared, and a locale's order takes its time.
  const sorted = [...cells].sort(([a], [b]) => (a < b ? -1 : 1));
  const text = JSON.stringify([sorted, sheets, tables, names, marks, [...settings].sort()], null, 1);
  texts.set(seen, text);
  return text;
}

/** As `snapshotText`, but for what is kept in the workbook's settings. */
export const contentText = (seen: Snapshot): string => snapshotText({ ...seen, settings: new Map() });

const entered = (value: unknown, formula?: string | null): string => (formula ? formula : JSON.stringify(value));
const tableText = (name: string, at: Block): string => `${name} at ${at.sheet}!${addressOf(at)}`;

/* ---------------------------------------------------------------- memory */

export function memoryBench(from?: MemoryPort): SafetyBench {
  const port = from ?? new MemoryPort();
  port.calculate = spillPlan;
  return {
    host: 'memory',
    calculates: true,
    port: () => port,
    snapshot: () => {
      const { content, settings } = port.everything() as MemoryContent;
      const cells = content.filled.flatMap(([sheet, filled]) =>
        filled.map(([at, held]) => [`${sheet}!${at}`, entered(held.value, held.formula)] as const),
      );
      return {
        cells: new Map(cells),
        sheets: content.filled.map(([sheet]) => sheet),
        tables: content.tables.map(({ name, at }) => tableText(name, at)).sort(),
        names: Object.entries(content.names)
          .map(([name, at]) => tableText(name, at))
          .sort(),
        marks: port.marks(),
        settings: new Map(Object.entries(settings)),
      };
    },
    hands: {
      type: async (sheet, row, column, value) => port.type(sheet, row, column, value),
      deleteSheet: async (sheet) => port.deleteSheet(sheet),
      renameSheet: async (sheet, to) => port.rename(sheet, to),
      removeTable: async (table) => port.removeTable(table),
      renameTable: async (table, to) => port.renameTable(table, to),
      insertRows: async (sheet, before, count) => port.insertRows(sheet, before, count),
      hide: async (sheet, what, which) => port.hideLine(sheet, what, which),
      totals: async (table) => port.showTotals(table),
      addSheet: async (sheet) => port.addSheet(sheet),
      hideSheet: async (sheet) => port.hide(sheet),
      turn: async (sheet) => port.turn(sheet),
      addTable: async (table, at) => port.addTable(table, at),
      merge: async (at) => port.merge(at),
      protect: async (sheet) => port.protect(sheet),
      filter: async (table) => port.filter(table),
      addName: async (name, at) => port.addName(name, at),
    },
    steps: () => port.stepsDone,
    stumble: (...at) => {
      const failing = at.map((step) => port.stepsDone + step);
      port.failing = new Set(failing);
      return () => {
        port.failing = new Set();
        return failing.filter((step) => step <= port.stepsDone).length;
      };
    },
    dispose: () => undefined,
  };
}

interface MemoryContent {
  readonly content: {
    readonly filled: readonly [string, readonly [string, { readonly value?: unknown; readonly formula?: string }][]][];
    readonly tables: readonly { readonly name: string; readonly at: Block }[];
    readonly names: Readonly<Record<string, Block>>;
  };
  readonly settings: Readonly<Record<string, string>>;
}

/* ---------------------------------------------------------------- simulated Excel */

export type SimulatedBench = SafetyBench & { readonly simulated: ReturnType<typeof simulate> };

export function simulatedBench(options: SimulatedOptions = {}): SimulatedBench {
  const simulated = simulate(options);
  const { book, host } = simulated;
  const sheetOf = (name: string) => {
    const sheet = book.sheet(name);
    if (!sheet) throw new Error(`there is no sheet ${name}`);
    return sheet;
  };
  return {
    host: 'simulated',
    calculates: false,
    simulated,
    port: () => createExcelPort(host),
    snapshot: () => bookSnapshot(book),
    hands: {
      type: async (sheet, row, column, value) => {
        if (typeof value === 'object' && value !== null)
          sheetOf(sheet).put(row, column, 'error' in value ? value.error : value.formula);
        else sheetOf(sheet).put(row, column, typeof value === 'string' ? `'${value}` : (value ?? ''));
      },
      deleteSheet: async (sheet) => book.deleteSheet(sheetOf(sheet)),
      renameSheet: async (sheet, to) => book.renameSheet(sheetOf(sheet), to),
      removeTable: async (name) => {
        const at = book.tables.findIndex((table) => table.name === name);
        if (at >= 0) book.tables.splice(at, 1);
      },
      renameTable: async (name, to) => {
        const table = book.tables.find((each) => each.name === name);
        if (table) book.renameTable(table, to);
      },
      insertRows: async (sheet, before, count) => book.insertRows(sheetOf(sheet), before, count),
      hide: async (sheet, what, which) => {
        const { hiddenRows, hiddenColumns } = sheetOf(sheet);
        (what === 'row' ? hiddenRows : hiddenColumns).add(which);
      },
      totals: async (name) => {
        const table = book.tables.find((each) => each.name === name);
        if (table) book.showTotals(table);
      },
      addSheet: async (sheet) => void (book.sheet(sheet) ?? book.addSheet(sheet)),
      hideSheet: async (sheet) => {
        const shown = book.sheets.filter(({ name, visibility }) => name !== sheet && visibility === 'Visible');
        if (shown[0] === undefined) return;
        sheetOf(sheet).visibility = 'Hidden';
        if (book.active.name === sheet) book.active = shown[0];
      },
      turn: async (sheet) => {
        sheetOf(sheet).rightToLeft = true;
      },
      addTable: async (name, { sheet, ...at }) => book.renameTable(book.addTable(sheetOf(sheet), at), name),
      merge: async ({ sheet, ...at }) => void sheetOf(sheet).merged.push(at),
      protect: async (sheet) => {
        sheetOf(sheet).protected = true;
      },
      filter: async (name) => {
        const table = book.tables.find((each) => each.name === name);
        if (table) table.filtered = true;
      },
      addName: async (name, at) => void book.names.set(name, `=${fixed(at)}`),
    },
    steps: () => simulated.requests.reduce((sum, { actions }) => sum + actions, 0),
    stumble: (...at) => {
      let past = 0;
      let fired = 0;
      simulated.trouble = (_, actions) => {
        const within = at.map((step) => step - 1 - past).find((step) => step >= 0 && step < actions);
        past += actions;
        if (within === undefined) return null;
        fired += 1;
        return { code: 'GeneralException', at: within };
      };
      return () => {
        simulated.trouble = null;
        return fired;
      };
    },
    dispose: () => undefined,
  };
}

function bookSnapshot(book: Book): Snapshot {
  const cells = book.sheets.flatMap((sheet) =>
    [...sheet.cells].map(({ row, column, state: { value, error, formula } }) => {
      return [`${sheet.name}!${row},${column}`, entered(error ? { error: value } : value, formula)] as const;
    }),
  );
  return {
    cells: new Map(cells),
    sheets: book.sheets.map(({ name }) => name),
    tables: book.tables.map(({ name, sheet, at }) => tableText(name, sheet.area(at))).sort(),
    names: [...book.names].map((pair) => pair.join(' ')).sort(),
    marks: [
      ...book.sheets.flatMap((sheet) => [
        ...(sheet.protected ? [`${sheet.name} is protected`] : []),
        ...(sheet.visibility === 'Visible' ? [] : [`${sheet.name} is hidden`]),
        ...(sheet.rightToLeft ? [`${sheet.name} runs from right to left`] : []),
        ...sheet.merged.map((at) => `${named(sheet.area(at))} is merged`),
        ...[...sheet.hiddenRows].map((row) => `${sheet.name} hides row ${row}`),
        ...[...sheet.hiddenColumns].map((column) => `${sheet.name} hides column ${column}`),
      ]),
      ...book.tables.flatMap(({ name, filtered, totalsShown }) => [
        ...(filtered ? [`${name} is filtered`] : []),
        ...(totalsShown ? [`${name} has totals`] : []),
      ]),
    ].sort(),
    settings: new Map([...book.settings].map(([key, value]) => [key, String(value)])),
  };
}

/* ---------------------------------------------------------------- embedded spreadsheet */

export type EmbeddedBench = SafetyBench & { readonly spreadsheet: Spreadsheet };

export async function embeddedBench(): Promise<EmbeddedBench> {
  const spreadsheet = await createHeadless({
    sheets: [{ name: 'Sheet1', cells: [] }],
    functions: { metadata, implementations: FUNCTIONS },
  });
  const { workbook, injector } = spreadsheet;
  const sheetOf = (name: string) => {
    const sheet = workbook.getSheetByName(name);
    if (!sheet) throw new Error(`there is no sheet ${name}`);
    return sheet;
  };
  let steps = 0;
  let failing: readonly number[] = [];
  const watching = injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    if (!STEPS.test(id) || !isOfPort()) return;
    steps += 1;
    if (failing.includes(steps)) throw new Error('the machine stumbled');
  });
  const settled = async (act: () => unknown): Promise<void> => {
    await act();
    await spreadsheet.settled();
  };
  return {
    host: 'embedded',
    calculates: true,
    spreadsheet,
    port: () => createEmbeddedPort(spreadsheet),
    snapshot: () => embeddedSnapshot(spreadsheet),
    hands: {
      type: (sheet, row, column, value) =>
        settled(() =>
          sheetOf(sheet)
            .getRange(row, column)
            .setValue(
              typeof value === 'object' && value !== null && 'error' in value
                ? { v: value.error }
                : (cellData(value) ?? { v: null, f: null }),
            ),
        ),
      deleteSheet: (sheet) => settled(() => workbook.deleteSheet(sheetOf(sheet))),
      renameSheet: (sheet, to) => settled(() => sheetOf(sheet).setName(to)),
      removeTable: (name) =>
        settled(() => {
          const table = tableNamed(spreadsheet, name);
          for (const { id, params } of table ? liftTable(table).steps : []) {
            injector.get(ICommandService).syncExecuteCommand(id, params);
          }
        }),
      renameTable: (name, to) =>
        settled(() => {
          const table = tableNamed(spreadsheet, name);
          if (!table) return;
          const params = { unitId: spreadsheet.id, subUnitId: table.worksheet.getSheetId(), tableId: table.id };
          injector
            .get(ICommandService)
            .syncExecuteCommand(SetSheetTableMutation.id, { ...params, config: { name: to } });
        }),
      insertRows: (sheet, before, count) => settled(() => sheetOf(sheet).insertRowsBefore(before, count)),
      hide: (sheet, what, which) =>
        settled(() => (what === 'row' ? sheetOf(sheet).hideRows(which) : sheetOf(sheet).hideColumns(which))),
      // As opening a file with such a row leaves it.
      totals: (name) =>
        settled(() => {
          const table = tableNamed(spreadsheet, name);
          if (!table) return;
          const { sheet, row, column, rows } = table.at;
          sheetOf(sheet)
            .getRange(row + rows, column)
            .setValue({ v: 'Total', custom: { totals: name } });
        }),
      addSheet: (sheet) =>
        settled(() => workbook.getSheetByName(sheet) ?? workbook.insertSheet(sheet).setColumnCount(80)),
      hideSheet: (sheet) =>
        settled(() => {
          const shown = workbook.getSheets().filter((each) => !each.isSheetHidden() && each.getSheetName() !== sheet);
          if (shown[0] === undefined) return;
          workbook.setActiveSheet(shown[0]);
          sheetOf(sheet).hideSheet();
        }),
      // As opening a file with such a sheet leaves it.
      turn: (sheet) =>
        settled(() => {
          sheetOf(sheet).getSheet().getConfig().rightToLeft = BooleanNumber.TRUE;
        }),
      addTable: (name, at) =>
        settled(() => {
          const { steps } = layTable(spreadsheet, sheetOf(at.sheet).getSheet(), name, at);
          for (const { id, params } of steps) injector.get(ICommandService).syncExecuteCommand(id, params);
        }),
      merge: (at) =>
        settled(() => sheetOf(at.sheet).getRange(at.row, at.column, at.rows, at.columns).merge({ isForceMerge: true })),
      protect: (sheet) => settled(() => sheetOf(sheet).getWorksheetPermission().protect()),
      filter: (name) =>
        settled(() => {
          const table = tableNamed(spreadsheet, name);
          const filter = { filterType: TableColumnFilterTypeEnum.manual, values: ['none of them'] } as const;
          if (table) workbook.setTableFilter(table.id, 0, { ...filter, values: [...filter.values] });
        }),
      addName: (name, at) =>
        settled(() => {
          const params = { unitId: spreadsheet.id, id: name, name, formulaOrRefString: fixed(at) };
          const scope = { localSheetId: SCOPE_WORKBOOK_VALUE_DEFINED_NAME };
          injector.get(ICommandService).syncExecuteCommand(SetDefinedNameMutation.id, { ...params, ...scope });
        }),
    },
    steps: () => steps,
    stumble: (...at) => {
      const asked = at.map((step) => steps + step);
      failing = asked;
      return () => {
        failing = [];
        return asked.filter((step) => step <= steps).length;
      };
    },
    dispose: () => {
      watching.dispose();
      spreadsheet.dispose();
    },
  };
}

/** What changes the workbook; a person would not miss which sheet is shown. */
const STEPS = /mutation|command\.remove-sheet/;

/** Whether it is the port that asks, not what the spreadsheet sets off by itself at that. */
function isOfPort(): boolean {
  const frames = (new Error().stack ?? '').split('\n');
  const asking = frames.findLastIndex((frame) => frame.includes('CommandService.'));
  return frames.slice(asking + 1, asking + 3).some((frame) => frame.includes('/src/workbook/embedded/'));
}

function embeddedSnapshot(spreadsheet: Spreadsheet): Snapshot {
  const { workbook } = spreadsheet;
  const saved = workbook.save();
  // Sheets have another id each time.
  const bySheet = (key: string): string =>
    key.replace(/^(Setwright_Page_)(.*)$/, (_, stem: string, id: string) => stem + (saved.sheets[id]?.name ?? 'gone'));
  const cells: [string, string][] = [];
  const marks: string[] = [];
  for (const id of saved.sheetOrder) {
    const { name = '', cellData: rows = {}, mergeData = [], rowData = {}, columnData = {} } = saved.sheets[id] ?? {};
    const { hidden, rightToLeft } = saved.sheets[id] ?? {};
    if (hidden === BooleanNumber.TRUE) marks.push(`${name} is hidden`);
    if (rightToLeft === BooleanNumber.TRUE) marks.push(`${name} runs from right to left`);
    const worksheet = worksheetNamed(spreadsheet, name);
    if (worksheet && isProtected(spreadsheet, worksheet)) marks.push(`${name} is protected`);
    marks.push(...mergeData.map((range) => `${named(blockOfRange(name, range))} is merged`));
    for (const [what, lines] of [
      ['row', rowData],
      ['column', columnData],
    ] as const)
      for (const [which, line] of Object.entries(lines)) {
        if ((line as { hd?: number } | undefined)?.hd === 1) marks.push(`${name} hides ${what} ${which}`);
      }
    for (const [row, line] of Object.entries(rows)) {
      for (const [column, cell] of Object.entries(line ?? {})) {
        const { v, f, si, p } = (cell ?? {}) as { v?: unknown; f?: string; si?: string; p?: unknown };
        const isBlank = (v === null || v === undefined || v === '') && !f && !si && !p;
        if (!isBlank) cells.push([`${name}!${row},${column}`, entered(p ?? v, f ?? si)]);
      }
    }
  }
  return {
    cells: new Map(cells),
    sheets: saved.sheetOrder.map((id) => saved.sheets[id]?.name ?? ''),
    tables: allTables(spreadsheet)
      .map(({ name, at }) => tableText(name, at))
      .sort(),
    names: workbook
      .getDefinedNames()
      .map((name) => `${name.getName()} ${name.getFormulaOrRefString()}`)
      .sort(),
    marks: [
      ...marks,
      ...allTables(spreadsheet).flatMap(({ name, filtered }) => (filtered ? [`${name} is filtered`] : [])),
    ].sort(),
    settings: new Map(
      Object.entries(workbook.getCustomMetadata() ?? {}).map(([key, value]) => [bySheet(key), JSON.stringify(value)]),
    ),
  };
}
