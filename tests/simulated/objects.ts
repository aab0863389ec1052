import { blockOf, fixed, overlap, sheetInFormula, addressOf } from '../../src/workbook/shared/address';
import { same } from './book';
import type { Area, Book, HighlightRule, SheetData, TableData } from './book';
import { HostError } from './wire';
import type { Modelled } from './wire';

/**
 * The objects of the simulated workbook as the client library sees them. Each names its class and the members it models;
 * a test compares both with the library's own classes, so that an invented member is caught.
 */

export interface Settings {
  /** What `formulas` answers for a cell that a formula elsewhere fills; which of the two Excel does is not known to us. */
  readonly spilledFormulas: 'value' | 'formula';
  /** An answer longer than this is refused. */
  readonly answerLimit: number;
  /** Called when someone begins or stops to listen for changed cells. */
  readonly listening: (to: 'changed' | 'deleted', on: boolean) => void;
}

const notFound = (): HostError => new HostError('ItemNotFound', 'The requested resource does not exist.');

/** An object with plain properties, kept by `read` and `write`. */
function properties(
  className: string,
  names: readonly string[],
  read: (name: string) => unknown,
  write: (name: string, value: unknown) => void,
  more: Record<string, unknown> = {},
): Modelled {
  const members = [...names, ...Object.keys(more)];
  const object = { className, members, scalars: names };
  for (const name of names) {
    Object.defineProperty(object, name, {
      enumerable: true,
      get: () => read(name),
      set: (value) => write(name, value),
    });
  }
  return Object.assign(object, more);
}

function list(className: string, itemClass: string, names: () => readonly string[]): Modelled {
  const item = (name: string): Modelled =>
    properties(
      itemClass,
      ['name'],
      () => name,
      () => undefined,
    );
  return { className, members: [], listed: () => names().map(item) };
}

export class RangeObject implements Modelled {
  readonly className = 'Range';
  readonly kept = true;
  readonly scalars = [
    'address',
    'values',
    'formulas',
    'valueTypes',
    'numberFormat',
    'rowIndex',
    'columnIndex',
    'hasSpill',
  ];
  readonly members = [
    ...this.scalars,
    ...[
      'rowCount',
      'columnCount',
      'format',
      'dataValidation',
      'conditionalFormats',
      'worksheet',
      'getCell',
      'getTables',
    ],
    ...['getIntersection', 'getMergedAreasOrNullObject', 'getSpillingToRangeOrNullObject', 'clear', 'select'],
    // Called by the library itself, which sends a long array in parts.
    ...['_ValidateArraySize', 'getRow', 'getBoundingRect', 'getResizedRange'],
  ];

  constructor(
    private readonly book: Book,
    readonly sheet: SheetData,
    public at: Area,
    private readonly settings: Settings,
  ) {
    const fits = at.row >= 0 && at.column >= 0 && at.rows > 0 && at.columns > 0;
    if (!fits || at.row + at.rows > 1_048_576 || at.column + at.columns > 16_384)
      throw new HostError('InvalidArgument');
  }

  get address(): string {
    return `${sheetInFormula(this.sheet.name)}!${addressOf(this.at)}`;
  }
  get rowIndex(): number {
    return this.at.row;
  }
  get columnIndex(): number {
    return this.at.column;
  }
  get rowCount(): number {
    return this.at.rows;
  }
  get columnCount(): number {
    return this.at.columns;
  }
  get worksheet(): Modelled {
    return worksheet(this.book, this.sheet, this.settings);
  }

  get values(): unknown[][] {
    return this.#each((row, column) => this.sheet.shown(row, column).value);
  }
  set values(values: unknown) {
    this.#put(values, (row, column, value) => this.sheet.put(row, column, value));
  }
  get formulas(): unknown[][] {
    return this.#each((row, column) => this.#formula(row, column));
  }
  set formulas(values: unknown) {
    this.#put(values, (row, column, value) => this.sheet.put(row, column, value));
  }
  get valueTypes(): string[][] {
    return this.#each((row, column) => {
      const { value, error } = this.sheet.shown(row, column);
      if (error) return 'Error';
      if (value === '') return 'Empty';
      return typeof value === 'number' ? 'Double' : typeof value === 'boolean' ? 'Boolean' : 'String';
    });
  }
  /** Whether all cells are filled by a formula that fills more than its own, null where some are. */
  get hasSpill(): boolean | null {
    const { row, column, rows, columns } = this.at;
    let filled = 0;
    if (this.sheet.spills.length === 0) return false;
    for (let down = row; down < row + rows; down += 1) {
      for (let across = column; across < column + columns; across += 1) {
        if (this.sheet.spillAt(down, across)) filled += 1;
      }
    }
    return filled === 0 ? false : filled === rows * columns ? true : null;
  }
  get numberFormat(): unknown[][] {
    return this.#each((row, column) => this.sheet.dressAt('numberFormat', row, column) ?? 'General');
  }
  set numberFormat(value: unknown) {
    this.book.guard(this.sheet);
    if (Array.isArray(value)) throw new Error('simulated: numberFormat takes one format for the whole range');
    this.sheet.dress(this.at, 'numberFormat', value);
  }

  #formula(row: number, column: number): unknown {
    const own = this.sheet.own(row, column);
    if (own.formula) return own.formula;
    const spill = this.settings.spilledFormulas === 'formula' ? this.sheet.spillAt(row, column) : null;
    return spill ? this.sheet.own(spill.at.row, spill.at.column).formula : this.sheet.shown(row, column).value;
  }

  #each<T>(cell: (row: number, column: number) => T): T[][] {
    const { row, column, rows, columns } = this.at;
    if (rows * columns * 3 > this.settings.answerLimit) throw new HostError('ResponsePayloadSizeLimitExceeded');
    return Array.from({ length: rows }, (_, i) =>
      Array.from({ length: columns }, (_cell, j) => cell(row + i, column + j)),
    );
  }

  #put(values: unknown, put: (row: number, column: number, value: unknown) => void): void {
    this.book.guard(this.sheet);
    const { row, column, rows, columns } = this.at;
    const shaped = Array.isArray(values) && values.length === rows && values.every((line) => line.length === columns);
    if (!shaped) throw new HostError('InvalidArgument', 'The array does not match the size of the range.');
    (values as unknown[][]).forEach((line, i) => {
      line.forEach((value, j) => {
        // null leaves a cell alone
        if (value !== null) put(row + i, column + j, value);
      });
    });
    this.book.tell(this.sheet);
  }

  get format(): Modelled {
    return rangeFormat(this.book, this.sheet, this.at);
  }

  get dataValidation(): Modelled {
    const names = ['rule', 'errorAlert', 'prompt', 'ignoreBlanks'];
    const read = (name: string): unknown => this.sheet.dressAt(`validation.${name}`, this.at.row, this.at.column);
    const write = (name: string, value: unknown): void => this.sheet.dress(this.at, `validation.${name}`, value);
    const clear = (): void => this.sheet.undress(this.at, (name) => name.startsWith('validation.'));
    return properties('DataValidation', names, read, guarded(this.book, this.sheet, write), { clear });
  }

  get conditionalFormats(): Modelled {
    const clearAll = (): void => {
      this.book.guard(this.sheet);
      this.sheet.clearHighlights(this.at);
    };
    const add = (type: string): Modelled => {
      this.book.guard(this.sheet);
      if (type !== 'Custom') throw new Error(`simulated: conditional format ${type} is not modelled`);
      const rule: HighlightRule = { areas: [this.at], parts: {} };
      // A new rule goes before the others.
      this.sheet.highlights.unshift(rule);
      return conditionalFormat(rule);
    };
    const listed = (): Modelled[] =>
      this.sheet.highlights
        .filter(({ areas }) => areas.some((at) => touch(at, this.at)))
        .map((rule) => conditionalFormat(rule));
    return { className: 'ConditionalFormatCollection', members: ['add', 'clearAll'], ...{ add, clearAll, listed } };
  }

  getCell(row: number, column: number): RangeObject {
    const at = { row: this.at.row + row, column: this.at.column + column, rows: 1, columns: 1 };
    return new RangeObject(this.book, this.sheet, at, this.settings);
  }

  getRow(row: number): RangeObject {
    return new RangeObject(this.book, this.sheet, { ...this.at, row: this.at.row + row, rows: 1 }, this.settings);
  }

  /** Only cells of the same sheet can be in both. */
  getIntersection(other: RangeObject): RangeObject {
    const shared = this.sheet === other.sheet ? overlap(this.sheet.area(this.at), other.sheet.area(other.at)) : null;
    if (!shared) throw notFound();
    const { sheet: _, ...at } = shared;
    return new RangeObject(this.book, this.sheet, at, this.settings);
  }

  getResizedRange(rows: number, columns: number): RangeObject {
    const at = { ...this.at, rows: this.at.rows + rows, columns: this.at.columns + columns };
    return new RangeObject(this.book, this.sheet, at, this.settings);
  }

  getBoundingRect(other: RangeObject): RangeObject {
    const rows = other.at.row + other.at.rows - this.at.row;
    if (rows < 1 || other.at.column !== this.at.column || other.at.columns !== this.at.columns) {
      throw new Error('simulated: getBoundingRect is modelled for a row and one below it');
    }
    return new RangeObject(this.book, this.sheet, { ...this.at, rows }, this.settings);
  }

  _ValidateArraySize(rows: number, columns: number): void {
    if (rows !== this.at.rows || columns !== this.at.columns) throw new HostError('InvalidArgument');
  }

  getTables(fully = false): Modelled {
    if (fully) throw new Error('simulated: getTables(true) is not modelled');
    const tables = (): TableData[] => this.book.tablesTouching(this.sheet, this.at);
    return {
      className: 'TableScopedCollection',
      members: [],
      listed: () => tables().map((data) => table(this.book, data, this.settings)),
    };
  }

  getMergedAreasOrNullObject(): Modelled | null {
    const merged = this.sheet.merged.filter((area) => touch(area, this.at));
    if (merged.length === 0) return null;
    const address = merged.map((area) => `${sheetInFormula(this.sheet.name)}!${addressOf(area)}`).join(',');
    return properties(
      'RangeAreas',
      ['address'],
      () => address,
      () => undefined,
    );
  }

  getSpillingToRangeOrNullObject(): RangeObject | null {
    const spill = this.sheet.spillAt(this.at.row, this.at.column);
    if (!spill || spill.at.row !== this.at.row || spill.at.column !== this.at.column) return null;
    return new RangeObject(this.book, this.sheet, spill.at, this.settings);
  }

  clear(what = 'All'): void {
    this.book.guard(this.sheet);
    if (what !== 'Formats') throw new Error(`simulated: clear(${what}) is not modelled`);
    this.sheet.undress(this.at, (name) => !name.startsWith('validation.'));
  }

  select(): void {
    if (this.book.active !== this.sheet) throw new HostError('InvalidOperation', 'The sheet is not the active one.');
    this.book.selection = this.at;
  }
}

function touch(one: Area, other: Area): boolean {
  const down = one.row < other.row + other.rows && other.row < one.row + one.rows;
  return down && one.column < other.column + other.columns && other.column < one.column + one.columns;
}

type Write = (name: string, value: unknown) => void;
function guarded(book: Book, sheet: SheetData, write: Write): Write {
  return (name, value) => {
    book.guard(sheet);
    write(name, value);
  };
}

function rangeFormat(book: Book, sheet: SheetData, at: Area): Modelled {
  const dressed = (className: string, prefix: string, names: string[], more: Record<string, unknown> = {}): Modelled =>
    properties(
      className,
      names,
      (name) => sheet.dressAt(`${prefix}${name}`, at.row, at.column),
      guarded(book, sheet, (name, value) => {
        sheet.dress(at, `${prefix}${name}`, value);
        // What is given a width or a height is shown again (*from memory*).
        for (let i = 0; name === 'columnWidth' && i < at.columns; i += 1) sheet.hiddenColumns.delete(at.column + i);
        for (let i = 0; name === 'rowHeight' && i < at.rows; i += 1) sheet.hiddenRows.delete(at.row + i);
      }),
      more,
    );
  const getItem = (edge: string): Modelled => dressed('RangeBorder', `border.${edge}.`, ['style', 'weight', 'color']);
  const own = ['wrapText', 'horizontalAlignment', 'verticalAlignment', 'columnWidth', 'rowHeight'];
  return dressed('RangeFormat', 'format.', own, {
    fill: dressed('RangeFill', 'fill.', ['color'], {
      clear: () => {
        book.guard(sheet);
        sheet.dress(at, 'fill.color', null);
      },
    }),
    font: dressed('RangeFont', 'font.', ['bold', 'italic', 'color', 'size']),
    borders: { className: 'RangeBorderCollection', members: ['getItem'], getItem },
  });
}

function conditionalFormat({ parts }: HighlightRule): Modelled {
  const part = (className: string, prefix: string, names: string[]): Modelled =>
    properties(
      className,
      names,
      (name) => parts[`${prefix}${name}`],
      (name, value) => {
        parts[`${prefix}${name}`] = value;
      },
    );
  const fill = part('ConditionalRangeFill', 'fill.', ['color']);
  const font = part('ConditionalRangeFont', 'font.', ['color', 'bold']);
  const format = { className: 'ConditionalRangeFormat', members: ['fill', 'font'], fill, font };
  const rule = part('ConditionalFormatRule', '', ['formula']);
  const custom = { className: 'CustomConditionalFormat', members: ['rule', 'format'], rule, format };
  return { className: 'ConditionalFormat', members: ['custom', 'type'], ...{ custom, type: 'Custom' } };
}

export function worksheet(book: Book, sheet: SheetData, settings: Settings): Modelled {
  const range = (at: Area): RangeObject => new RangeObject(book, sheet, at, settings);
  const write = (name: string): void => {
    throw new Error(`simulated: setting Worksheet.${name} is not modelled`);
  };
  const freeze = (rows: number, columns: number): void => {
    sheet.frozenRows = rows;
    sheet.frozenColumns = columns;
  };
  const freezePanes = {
    className: 'WorksheetFreezePanes',
    members: ['freezeRows', 'freezeColumns', 'freezeAt', 'unfreeze'],
    // Each takes the place of what was frozen before.
    freezeRows: (rows: number) => freeze(rows, 0),
    freezeColumns: (columns: number) => freeze(0, columns),
    freezeAt: ({ at }: RangeObject) => freeze(at.rows, at.columns),
    unfreeze: () => freeze(0, 0),
  };
  const more = {
    protection: properties('WorksheetProtection', ['protected'], () => sheet.protected, write),
    tables: tableCollection(book, sheet, settings),
    charts: list('ChartCollection', 'Chart', () => sheet.charts),
    shapes: list('ShapeCollection', 'Shape', () => []),
    pivotTables: list('PivotTableCollection', 'PivotTable', () => []),
    freezePanes,
    pageLayout: pageLayout(sheet),
    horizontalPageBreaks: pageBreaks(sheet),
    getRangeByIndexes: (row: number, column: number, rows: number, columns: number) =>
      range({ row, column, rows, columns }),
    getUsedRangeOrNullObject: () => {
      const used = sheet.used();
      return used && range(used);
    },
    activate: () => {
      // That a hidden sheet cannot be shown is *from memory*.
      if (sheet.visibility !== 'Visible') throw new HostError('InvalidOperation', 'The sheet is hidden.');
      book.active = sheet;
    },
    delete: () => book.deleteSheet(sheet),
  };
  const read = (name: string): unknown => sheet[name as 'id' | 'name' | 'visibility'];
  return properties('Worksheet', ['id', 'name', 'visibility'], read, write, more);
}

function pageBreaks(sheet: SheetData): Modelled {
  const breaks = {
    className: 'PageBreakCollection',
    members: ['add', 'removePageBreaks'],
    removePageBreaks: () => {
      sheet.page.breaks = [];
    },
    add: (at: string) => {
      sheet.page.breaks = [...((sheet.page.breaks ?? []) as string[]), at];
      return { className: 'PageBreak', members: [] };
    },
  };
  return breaks;
}

function pageLayout(sheet: SheetData): Modelled {
  const kept = (className: string, names: string[], more: Record<string, unknown> = {}): Modelled =>
    properties(
      className,
      names,
      (name) => sheet.page[name],
      (name, value) => {
        sheet.page[name] = value;
      },
      more,
    );
  const footer = kept('HeaderFooter', ['centerFooter', 'rightFooter']);
  const headersFooters = {
    className: 'HeaderFooterGroup',
    members: ['defaultForAllPages'],
    defaultForAllPages: footer,
  };
  return kept('PageLayout', ['orientation', 'zoom'], {
    headersFooters,
    setPrintArea: (area: RangeObject) => {
      sheet.page.printArea = area.address;
    },
    setPrintTitleRows: (rows: string) => {
      sheet.page.printTitleRows = rows;
    },
  });
}

export function table(book: Book, data: TableData, settings: Settings): Modelled {
  const range = (at: Area): RangeObject => new RangeObject(book, data.sheet, at, settings);
  const body = (): Area => {
    const { row, rows } = data.at;
    const top = Number(data.headersShown);
    return { ...data.at, row: row + top, rows: rows - top - Number(data.totalsShown) };
  };
  const filterOf = (i: number): Modelled =>
    properties(
      'Filter',
      ['criteria'],
      () => data.filters[i] ?? null,
      () => undefined,
      {
        apply: (criteria: Readonly<Record<string, unknown>>) => {
          // Without its buttons a table has no filter.
          if (!data.buttons) throw new HostError('InvalidOperation');
          data.filters = Array.from({ length: data.at.columns }, (_, at) => data.filters[at] ?? null);
          data.filters[i] = criteria;
          data.filtered = true;
        },
      },
    );
  const column = (i: number): Modelled =>
    properties(
      'TableColumn',
      ['name'],
      () => String(data.sheet.own(data.at.row, data.at.column + i).value),
      () => undefined,
      { filter: filterOf(i) },
    );
  const columns = {
    className: 'TableColumnCollection',
    members: ['getItemAt'],
    listed: () => Array.from({ length: data.at.columns }, (_, i) => column(i)),
    getItemAt: column,
  };
  const fields: Record<string, keyof TableData> = {
    name: 'name',
    style: 'style',
    showBandedRows: 'banded',
    showBandedColumns: 'bandedColumns',
    highlightFirstColumn: 'firstColumn',
    highlightLastColumn: 'lastColumn',
    showFilterButton: 'buttons',
    showHeaders: 'headersShown',
  };
  const write = (name: string, value: unknown): void => {
    book.guard(data.sheet);
    if (name === 'name') book.renameTable(data, String(value));
    else Object.assign(data, { [fields[name] ?? '']: value });
  };
  return Object.assign(
    properties('Table', Object.keys(fields), (name) => data[fields[name] ?? 'name'], write, {
      worksheet: worksheet(book, data.sheet, settings),
      columns,
      autoFilter: properties(
        'AutoFilter',
        ['isDataFiltered'],
        () => data.filtered,
        () => undefined,
      ),
      resize: (to: RangeObject) => book.resizeTable(data, to.sheet, to.at),
      getRange: () => range(data.at),
      getDataBodyRange: () => range(body()),
      convertToRange: () => {
        book.guard(data.sheet);
        book.tables.splice(book.tables.indexOf(data), 1);
        return range(data.at);
      },
    }),
    { id: data.id },
  );
}

export function tableCollection(book: Book, sheet: SheetData | null, settings: Settings): Modelled {
  const all = (): TableData[] => book.tables.filter((data) => sheet === null || data.sheet === sheet);
  const find = (name: string): TableData | undefined => all().find((data) => data.id === name || same(data.name, name));
  const getItemOrNullObject = (name: string): Modelled | null => {
    const data = find(name);
    return data ? table(book, data, settings) : null;
  };
  return {
    className: 'TableCollection',
    members: ['add', 'getItem', 'getItemOrNullObject'],
    listed: () => all().map((data) => table(book, data, settings)),
    ...{
      add: (range: RangeObject, hasHeaders: boolean) => {
        if (!hasHeaders) throw new Error('simulated: a table without headers is not modelled');
        return table(book, book.addTable(range.sheet, range.at), settings);
      },
      getItem: (name: string) => getItemOrNullObject(name) ?? missing(),
      getItemOrNullObject,
    },
  };
}

function missing(): never {
  throw notFound();
}

export function namedItems(book: Book, settings: Settings): Modelled {
  const item = (key: string): Modelled =>
    properties(
      'NamedItem',
      ['name', 'formula'],
      (name) => (name === 'name' ? key : book.names.get(key)),
      (_, value) => {
        book.names.set(key, String(value));
      },
      {
        delete: () => book.names.delete(key),
        getRangeOrNullObject: () => {
          const at = blockOf(book.names.get(key) ?? '');
          const sheet = at && book.sheet(at.sheet);
          return sheet && at ? new RangeObject(book, sheet, at, settings) : null;
        },
      },
    );
  const find = (name: string): string | undefined => [...book.names.keys()].find((key) => same(key, name));
  const getItemOrNullObject = (name: string): Modelled | null => {
    const key = find(name);
    return key === undefined ? null : item(key);
  };
  return {
    className: 'NamedItemCollection',
    members: ['add', 'getItem', 'getItemOrNullObject'],
    listed: () => [...book.names.keys()].map(item),
    ...{
      add: (name: string, reference: RangeObject | string) => {
        const isName = /^[A-Za-z_\\][\w.\\]*$/.test(name) && !/^[A-Z]{1,3}\d+$/i.test(name);
        if (!isName) throw new HostError('InvalidArgument', 'This is no valid name.');
        if (find(name) !== undefined) throw new HostError('ItemAlreadyExists');
        const to = typeof reference === 'string' ? reference : `=${fixed(reference.sheet.area(reference.at))}`;
        book.names.set(name, to);
        return item(name);
      },
      getItem: (name: string) => getItemOrNullObject(name) ?? missing(),
      getItemOrNullObject,
    },
  };
}

export function settingItems(book: Book): Modelled {
  const item = (key: string): Modelled =>
    properties(
      'Setting',
      ['key', 'value'],
      (name) => (name === 'key' ? key : book.settings.get(key)),
      (_, value) => {
        book.settings.set(key, value);
      },
      { delete: () => book.settings.delete(key) },
    );
  const getItemOrNullObject = (key: string): Modelled | null => (book.settings.has(key) ? item(key) : null);
  return {
    className: 'SettingCollection',
    members: ['add', 'getItem', 'getItemOrNullObject'],
    ...{
      add: (key: string, value: unknown) => {
        book.settings.set(key, value);
        return item(key);
      },
      getItem: (key: string) => getItemOrNullObject(key) ?? missing(),
      getItemOrNullObject,
    },
  };
}

export function workbookObject(book: Book, settings: Settings): Modelled {
  const sheetObject = (sheet: SheetData): Modelled => worksheet(book, sheet, settings);
  const getItemOrNullObject = (name: string): Modelled | null => {
    const sheet = book.sheet(name);
    return sheet && sheetObject(sheet);
  };
  const worksheets = {
    className: 'WorksheetCollection',
    members: [
      ...['add', 'getItem', 'getItemOrNullObject'],
      ...['_RegisterDataChangedEvent', '_UnregisterDataChangedEvent'],
      ...['_RegisterDeletedEvent', '_UnregisterDeletedEvent'],
    ],
    listed: () => book.sheets.map(sheetObject),
    _RegisterDataChangedEvent: () => settings.listening('changed', true),
    _UnregisterDataChangedEvent: () => settings.listening('changed', false),
    _RegisterDeletedEvent: () => settings.listening('deleted', true),
    _UnregisterDeletedEvent: () => settings.listening('deleted', false),
    add: (name: string) => sheetObject(book.addSheet(name)),
    getItem: (name: string) => getItemOrNullObject(name) ?? missing(),
    getItemOrNullObject,
  };
  const application = {
    className: 'Application',
    members: ['suspendApiCalculationUntilNextSync', 'suspendScreenUpdatingUntilNextSync'],
    suspendApiCalculationUntilNextSync: () => undefined,
    suspendScreenUpdatingUntilNextSync: () => undefined,
  };
  const runtime = properties(
    'Runtime',
    ['enableEvents'],
    () => book.eventsOn,
    (_, value) => {
      book.eventsOn = value === true;
    },
  );
  const names = namedItems(book, settings);
  const tables = tableCollection(book, null, settings);
  const getSelectedRange = (): RangeObject => new RangeObject(book, book.active, book.selection, settings);
  return {
    className: 'Workbook',
    members: ['worksheets', 'tables', 'names', 'settings', 'application', '_Runtime', 'getSelectedRange'],
    ...{ worksheets, tables, names, settings: settingItems(book), application, _Runtime: runtime, getSelectedRange },
  };
}
