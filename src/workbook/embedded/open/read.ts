/**
 * A workbook file read: bytes in, plain data out. The library that knows the format comes in with this file, and it takes a while: run it in
 * a worker.
 */
import { readXlsx } from 'hucre/xlsx';
import type { Sheet, Workbook } from 'hucre/xlsx';
import { columnOf } from '../../shared/address';
import { columnsShown } from '../measures';
import { MOST_COLUMNS } from '../../shared/limits';
import { othersProperties, stateFrom } from '../keptState';
import type { SheetBeyond, WorkbookBeyond } from './beyond';
import { beyondSheets, beyondWorkbook, localDays } from './beyond';
import type { CellStyle, ConditionalRule, OpenedBook, OpenedName, OpenedSheet, OpenedTable, SheetBeside } from './book';
import { withPlainColours } from './colours';
import type { NamedTable } from './fileFormula';
import { MOST_CELLS, readableParts, Refusal } from './refusal';
import { readSheetCells, Shared } from './sheetCells';
import { counted, summed, unkeptByParts, type Unkept } from './unkept';

/** Reads a file. Throws a Refusal where it cannot be opened. */
export async function readBook(file: Uint8Array): Promise<OpenedBook> {
  const parts = readableParts(file);
  let workbook: Workbook;
  let beyond: Map<string, SheetBeyond>;
  let whole: WorkbookBeyond;
  let days: number;
  try {
    workbook = await readXlsx(file, { readStyles: true });
    beyond = await beyondSheets(file, parts);
    whole = await beyondWorkbook(file, parts);
    days = await localDays(file, parts);
  } catch (error) {
    throw refusalFrom(error);
  }
  const theme = workbook.themeColors ?? [];
  const shared = new Shared((style) => withPlainColours(style, theme), workbook.dateSystem === '1904');
  const tables = workbook.sheets.flatMap((sheet) => namedTables(sheet, beyond.get(sheet.name)));
  let cells = 0;
  const sheets = workbook.sheets.map((sheet): OpenedSheet => {
    const made = openedSheet(sheet, beyond.get(sheet.name), tables, shared, theme);
    cells += made.cells.rows.length;
    if (cells > MOST_CELLS) throw new Refusal('tooManyCells');
    return made;
  });
  const { name = 'Calibri', size = 11 } = workbook.defaultFont ?? {};
  const { custom = {}, ...properties } = workbook.properties ?? {};
  return {
    sheets,
    texts: shared.texts,
    styles: shared.styles,
    names: namesOf(workbook),
    shownSheet: workbook.activeSheet ?? 0,
    font: { name, size },
    properties: { ...properties, custom: othersProperties(custom) },
    locked: workbook.workbookProtection ?? null,
    from1904: workbook.dateSystem === '1904',
    unkept: summed([
      ...unkeptByParts(parts),
      ...unkeptOfSheets(workbook, sheets, beyond),
      ...unkeptOfWorkbook(whole),
      ...counted('localDays', days > 0 ? 1 : 0),
    ]),
    comments: shared.comments,
    runs: shared.runs,
    state: stateFrom(custom),
  };
}

function refusalFrom(error: unknown): Refusal {
  const said = error instanceof Error ? error.message : String(error);
  if (error instanceof Error && error.name === 'EncryptedFileError') return new Refusal('locked', said);
  if (/zip bomb|larger than it says|exceeds limit/i.test(said)) return new Refusal('unpacksTooLarge', said);
  if (/over the \d+ limit/.test(said)) return new Refusal('tooManyCells', said);
  return new Refusal('broken', said);
}

function unkeptOfWorkbook({ calculation, hiddenNames, readOnly, namedLooks, remarks }: WorkbookBeyond): Unkept[] {
  return [
    ...counted('calculation', calculation ? 1 : 0),
    ...counted('hiddenNames', hiddenNames),
    ...counted('readOnly', readOnly ? 1 : 0),
    ...counted('namedLooks', namedLooks),
    ...counted('remarks', remarks),
  ];
}

function unkeptOfSheets(
  { sheets }: Workbook,
  sizes: readonly Pick<OpenedSheet, 'rowCount' | 'columnCount'>[],
  beyond: ReadonlyMap<string, SheetBeyond>,
): Unkept[] {
  return sheets.flatMap((sheet, at) => {
    const more = beyond.get(sheet.name);
    const { rowCount = 0, columnCount = 0 } = sizes[at] ?? {};
    if (!more) return [];
    const tables = [...more.tables.values()];
    const shapes = sheet.textBoxes?.length ?? 0;
    return [
      ...counted('highlights', more.highlights - (sheet.conditionalRules ?? []).filter(isWhole).length),
      ...counted('checks', more.checks - (sheet.dataValidations?.length ?? 0)),
      ...counted('whatIf', more.whatIf),
      ...counted('passwords', more.password ? 1 : 0),
      ...counted('shapes', shapes),
      ...counted('headlessTables', tables.filter(({ headless }) => headless).length),
      ...counted('tableFilters', tables.filter(({ headless, filtered }) => filtered && !headless).length),
      ...counted('protectedRanges', more.protectedRanges),
      ...counted('scenarios', more.scenarios),
      ...counted('shownOtherwise', more.shownOtherwise ? 1 : 0),
      ...counted('lineLooks', more.lineLooks ? 1 : 0),
      ...counted('rowHeights', more.rowHeight ? 1 : 0),
      ...counted('printing', more.printing ? 1 : 0),
      ...counted('hiddenArrows', more.hiddenArrows),
      ...counted('asides', more.asides > 0 ? 1 : 0),
      ...counted('tableLooks', tables.filter(({ headless, looks }) => looks && !headless).length),
      ...counted('farColumns', more.lastColumn > columnsShown(columnCount) ? 1 : 0),
      ...counted('lowRows', more.lastRow > rowCount ? 1 : 0),
      ...counted('noteLooks', more.noteLooks),
      ...counted('sorts', more.sorts + tables.filter(({ sorted }) => sorted).length),
      ...counted('remarks', tables.filter(({ remark }) => remark).length),
      ...counted('columnFormulas', tables.filter(({ columnFormulas }) => columnFormulas).length),
    ];
  });
}

function openedSheet(
  sheet: Sheet,
  beyond: SheetBeyond | undefined,
  named: readonly NamedTable[],
  shared: Shared,
  theme: readonly string[],
): OpenedSheet {
  const found = readSheetCells(sheet, shared, named, beyond?.numbers ?? (() => new Map()));
  const tables = openedTables(sheet, beyond);
  const rowDefs = [...(sheet.rowDefs ?? [])];
  // A width for all of the columns a sheet could have is no reason to show them all.
  const columnDefs = (sheet.columns ?? []).slice(0, MOST_COLUMNS).map((def, column) => [column, def] as const);
  const heights = new Map<number, { points: number; fitted: boolean }>();
  for (const [row, points] of beyond?.fitted ?? []) heights.set(row, { points, fitted: true });
  for (const [row, { height }] of rowDefs)
    if (height !== undefined) heights.set(row, { points: height, fitted: false });
  const { tabColor } = sheet.view ?? {};
  return {
    name: sheet.name,
    hidden: Boolean(sheet.hidden ?? sheet.veryHidden),
    veryHidden: Boolean(sheet.veryHidden),
    ...found,
    widths: new Map(columnDefs.flatMap(([column, { width }]) => (width === undefined ? [] : [[column, width]]))),
    hiddenColumns: columnDefs.flatMap(([column, { hidden }]) => (hidden ? [column] : [])),
    marked: beyond?.marked ?? new Set(),
    usualWidth: beyond?.usualWidth ?? null,
    heights,
    hiddenRows: rowDefs.flatMap(([row, { hidden }]) => (hidden ? [row] : [])),
    outline: {
      rows: new Map(rowDefs.flatMap(([row, { outlineLevel }]) => (outlineLevel ? [[row, outlineLevel]] : []))),
      columns: new Map(columnDefs.flatMap(([at, { outlineLevel }]) => (outlineLevel ? [[at, outlineLevel]] : []))),
    },
    merges: sheet.merges ?? [],
    frozen: { rows: sheet.freezePane?.rows ?? 0, columns: sheet.freezePane?.columns ?? 0 },
    tables,
    checks: sheet.dataValidations ?? [],
    highlights: (sheet.conditionalRules ?? [])
      .filter(isWhole)
      .map((rule) => (rule.style ? { ...rule, style: filled(withPlainColours(rule.style, theme)) } : rule)),
    view: {
      gridlines: sheet.view?.showGridLines !== false,
      zoom: sheet.view?.zoomScale ?? 100,
      rightToLeft: sheet.view?.rightToLeft === true,
      tabColour: (tabColor && withPlainColours({ font: { color: tabColor } }, theme).font?.color?.rgb) ?? null,
    },
    asItWas: asItWas(sheet, beyond),
  };
}

/** The library takes a number of pages for the wish to fit a sheet to them; a file says that wish elsewhere. */
function asItWas(sheet: Sheet, beyond: SheetBeyond | undefined): SheetBeside {
  const {
    pageSetup,
    headerFooter,
    protection,
    autoFilter,
    rowBreaks,
    colBreaks,
    outlineProperties,
    sparklines,
    splitPane,
  } = sheet;
  return {
    ...(pageSetup && { pageSetup: { ...pageSetup, ...(beyond && { fitToPage: beyond.fitsPages }) } }),
    ...(headerFooter && { headerFooter }),
    ...(protection && { protection }),
    ...(autoFilter && { autoFilter }),
    ...(rowBreaks && { rowBreaks }),
    ...(colBreaks && { colBreaks }),
    ...(outlineProperties && { outlineProperties }),
    ...(sparklines && { sparklines }),
    ...(splitPane && { splitPane }),
  };
}

/** Whether the library has the whole of a highlight: of ranks and averages it has the kind alone, and no colours of a theme. */
function isWhole({ type, colorScale, dataBar }: ConditionalRule): boolean {
  if (type === 'top10' || type === 'aboveAverage') return false;
  const colours = [...(colorScale?.colors ?? []), ...(dataBar ? [dataBar.color] : [])];
  return colours.every((colour) => colour !== '');
}

/**
 * A highlight's fill that leaves its pattern unsaid, as the usual program writes it, is a solid one; the library takes it for none.
 * Where none is meant, no colour is said with it.
 */
function filled(look: CellStyle): CellStyle {
  const { fill } = look;
  if (fill?.type !== 'pattern' || fill.pattern !== 'none' || !(fill.bgColor ?? fill.fgColor)) return look;
  return { ...look, fill: { ...fill, pattern: 'solid' } };
}

interface Place {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

function placeOf(range: string | undefined): Place | null {
  const corners = /^\$?([A-Z]+)\$?(\d+)(?::\$?([A-Z]+)\$?(\d+))?$/i.exec(range ?? '');
  if (!corners) return null;
  const [, left = '', top = '', right = left, bottom = top] = corners;
  const [row, column] = [Number(top) - 1, columnOf(left)];
  return { row, column, rows: Number(bottom) - row, columns: columnOf(right) - column + 1 };
}

function namedTables(sheet: Sheet, beyond: SheetBeyond | undefined): NamedTable[] {
  return openedTables(sheet, beyond).map(({ name, row, column, rows, totals }) => {
    const columns = sheet.tables?.find((table) => nameOf(table) === name)?.columns.map((each) => each.name) ?? [];
    return { name, sheet: sheet.name, row, column, rows: rows - 1, totals, columns };
  });
}

/** Formulas and programs know a table by the name that is shown. */
function nameOf({ name, displayName }: NonNullable<Sheet['tables']>[number]): string {
  return displayName ?? name;
}

function openedTables(sheet: Sheet, beyond: SheetBeyond | undefined): OpenedTable[] {
  return (sheet.tables ?? []).flatMap((table): OpenedTable[] => {
    const place = placeOf(table.range);
    const more = beyond?.tables.get(table.name);
    if (!place || more?.headless) return [];
    const totals = table.showTotalRow === true && place.rows > 2;
    return [
      {
        name: nameOf(table),
        ...place,
        rows: place.rows - (totals ? 1 : 0),
        totals,
        filtered: more?.filtered === true,
        style: table.style ?? null,
        stripes: table.showRowStripes !== false,
        totalsOf: table.columns.map(({ totalFunction, totalFormula, totalLabel }) => ({
          ...(totalFunction !== undefined && { function: totalFunction }),
          ...(totalFormula !== undefined && { formula: totalFormula }),
          ...(totalLabel !== undefined && { label: totalLabel }),
        })),
      },
    ];
  });
}

function namesOf({ namedRanges = [] }: Workbook): OpenedName[] {
  return namedRanges.map(({ name, range, scope }) => ({ name, refersTo: range, sheet: scope ?? null }));
}
