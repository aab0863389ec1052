/** What the reading library passes over in a file's own parts: usual sizes, fitted rows, and how many rules there are in truth. */
import type { Part } from './zip';
import { textOf } from './zip';

export interface TableBeyond {
  /** Whether it has no row of headings. */
  readonly headless: boolean;
  readonly filtered: boolean;
  readonly columnFormulas: boolean;
  /** Whether its first or last column, or its columns in turn, stand out, or it has a style that the workbook made up. */
  readonly looks: boolean;
  readonly sorted: boolean;
  readonly remark: boolean;
}

export interface SheetBeyond {
  readonly usualWidth: number | null;
  /** Cells, as `A1`, whose look marks them as text (ECMA-376 Part 1, 18.8.45). */
  readonly marked: ReadonlySet<string>;
  /** Heights, in points, of rows that the program fitted to their text. */
  readonly fitted: ReadonlyMap<number, number>;
  readonly highlights: number;
  readonly checks: number;
  readonly whatIf: number;
  readonly password: boolean;
  /** Whether it is fitted to pages when printed; how many pages that would be may be said without it. */
  readonly fitsPages: boolean;
  readonly protectedRanges: number;
  readonly scenarios: number;
  /** Whether formulas show in place of results, no zeros, no headings of rows and columns, or pages. */
  readonly shownOtherwise: boolean;
  /** Whether whole rows or columns have a look, also where they are empty. */
  readonly lineLooks: boolean;
  /** Whether rows that say no height have one of the sheet's own. */
  readonly rowHeight: boolean;
  /** Whether it is printed in black and white, in another order of pages, from another number on, and the like. */
  readonly printing: boolean;
  /** Drop-downs that show no arrow. */
  readonly hiddenArrows: number;
  /** Places where marks of possible errors were put aside. */
  readonly asides: number;
  /** How often it says by what a list of plain cells was sorted. */
  readonly sorts: number;
  readonly noteLooks: number;
  /** The last column that has a width of its own, is hidden or grouped, counted from 1; a run to the end of the sheet counts by its first. */
  readonly lastColumn: number;
  /** The last row that has a height that was set, is hidden or grouped, counted from 1. */
  readonly lastRow: number;
  /** By name. */
  readonly tables: ReadonlyMap<string, TableBeyond>;
  /** Numbers as the file has them, by `A1`: the library makes days of some, which holds no more than milliseconds. */
  readonly numbers: () => ReadonlyMap<string, number>;
}

const NOTHING: SheetBeyond = {
  usualWidth: null,
  marked: new Set(),
  fitted: new Map(),
  highlights: 0,
  checks: 0,
  whatIf: 0,
  password: false,
  fitsPages: false,
  protectedRanges: 0,
  scenarios: 0,
  shownOtherwise: false,
  lineLooks: false,
  rowHeight: false,
  printing: false,
  hiddenArrows: 0,
  asides: 0,
  sorts: 0,
  noteLooks: 0,
  lastColumn: 0,
  lastRow: 0,
  tables: new Map(),
  numbers: () => new Map(),
};

const WORKBOOK = /(^|\/)workbook\d*\.xml$/i;

/** For each sheet, by its name. */
export async function beyondSheets(file: Uint8Array, parts: readonly Part[]): Promise<Map<string, SheetBeyond>> {
  const byName = new Map(parts.map((part) => [part.name, part]));
  const read = async (name: string): Promise<string> => {
    const part = byName.get(name);
    return part ? textOf(file, part) : '';
  };
  const workbook = parts.find(({ name }) => WORKBOOK.test(name))?.name ?? '';
  const related = relations(await read(relationsOf(workbook)), workbook);
  const marking = markingLooks(await read(parts.find(({ name }) => /(^|\/)styles\.xml$/i.test(name))?.name ?? ''));
  const found = new Map<string, SheetBeyond>();
  for (const sheet of tags(await read(workbook), 'sheet')) {
    const path = related.get(sheet['r:id'] ?? sheet[Object.keys(sheet).find((key) => key.endsWith(':id')) ?? ''] ?? '');
    if (path === undefined || sheet.name === undefined) continue;
    const beside = [...relations(await read(relationsOf(path)), path).values()];
    const tablePaths = beside.filter((each) => /tables?\/[^/]*\.xml$/i.test(each));
    const notes = beside.find((each) => /(^|\/)comments[^/]*\.xml$/i.test(each));
    const tables = new Map<string, TableBeyond>();
    for (const tablePath of tablePaths) {
      const xml = await read(tablePath);
      const [table] = tags(xml, 'table');
      if (table?.name !== undefined) tables.set(table.name, tableBeyond(table, xml));
    }
    const noteLooks = notes === undefined ? 0 : dressedNotes(await read(notes));
    const xml = await read(path);
    found.set(sheet.name, { ...sheetBeyond(xml), marked: markedCells(xml, marking), tables, noteLooks });
  }
  return found;
}

/** What a file says of the workbook as a whole, and no copy says again. */
export interface WorkbookBeyond {
  /** Whether it calculates when told to, goes round in circles, or counts with what is shown. */
  readonly calculation: boolean;
  readonly hiddenNames: number;
  readonly readOnly: boolean;
  /** Looks that have names, but for the usual one. */
  readonly namedLooks: number;
  /** Names with a comment of their own. */
  readonly remarks: number;
}

/** Styles that programs name in every file, used or not: the usual one, and those of numbers (ECMA-376 Part 1, 18.8.7). */
const USUAL_STYLES: ReadonlySet<string> = new Set(['0', '3', '4', '5', '6', '7']);

/** What it says of the workbook. */
export async function beyondWorkbook(file: Uint8Array, parts: readonly Part[]): Promise<WorkbookBeyond> {
  const read = async (name: RegExp): Promise<string> => {
    const part = parts.find((each) => name.test(each.name));
    return part ? textOf(file, part) : '';
  };
  const workbook = await read(WORKBOOK);
  const [calculates] = tags(workbook, 'calcPr');
  return {
    calculation:
      (calculates?.calcMode ?? 'auto') !== 'auto' ||
      isTrue(calculates?.iterate) ||
      (calculates?.fullPrecision !== undefined && !isTrue(calculates.fullPrecision)),
    hiddenNames: tags(workbook, 'definedName').filter(
      ({ name = '', hidden }) => isTrue(hidden) && !name.startsWith('_xlnm.'),
    ).length,
    remarks: tags(workbook, 'definedName').filter(({ comment = '' }) => comment !== '').length,
    readOnly: tags(workbook, 'fileSharing').some(({ readOnlyRecommended }) => isTrue(readOnlyRecommended)),
    namedLooks: tags(await read(/(^|\/)styles\.xml$/i), 'cellStyle').filter(
      ({ builtinId }) => builtinId === undefined || !USUAL_STYLES.has(builtinId),
    ).length,
  };
}

/** How many looks show a day in the order that the computer has, rather than in one that the file says. */
export async function localDays(file: Uint8Array, parts: readonly Part[]): Promise<number> {
  const part = parts.find(({ name }) => /(^|\/)styles\.xml$/i.test(name));
  const xml = part ? await textOf(file, part) : '';
  const looks = looksOfCells(xml);
  // Formats 14 and 22 of ECMA-376 Part 1, 18.8.30.
  return looks.filter(({ numFmtId }) => numFmtId === '14' || numFmtId === '22').length;
}

function looksOfCells(styles: string): Attributes[] {
  return tags(/<(?:\w+:)?cellXfs\b[\s\S]*?cellXfs>/.exec(styles)?.[0] ?? '', 'xf');
}

/** Looks that mark their cells as text, by their numbers. */
function markingLooks(styles: string): ReadonlySet<string> {
  return new Set(looksOfCells(styles).flatMap(({ quotePrefix }, at) => (isTrue(quotePrefix) ? [String(at)] : [])));
}

function markedCells(xml: string, looks: ReadonlySet<string>): ReadonlySet<string> {
  if (looks.size === 0) return new Set();
  return new Set(tags(xml, 'c').flatMap(({ r, s = '0' }) => (r !== undefined && looks.has(s) ? [r] : [])));
}

const BUILT_IN_STYLE = /^TableStyle(Light|Medium|Dark)\d+$/;

function tableBeyond(table: Attributes, xml: string): TableBeyond {
  return {
    headless: table.headerRowCount === '0',
    filtered: /<(?:\w+:)?filterColumn\b/.test(xml),
    columnFormulas: /<(?:\w+:)?calculatedColumnFormula\b/.test(xml),
    looks: tags(xml, 'tableStyleInfo').some(
      ({ name = '', showFirstColumn, showLastColumn, showColumnStripes }) =>
        [showFirstColumn, showLastColumn, showColumnStripes].some(isTrue) ||
        (name !== '' && !BUILT_IN_STYLE.test(name)),
    ),
    sorted: tags(xml, 'sortState').length > 0,
    remark: (table.comment ?? '') !== '',
  };
}

/** Notes of which some letters have a look: most programs set the name of who wrote it in bold. */
function dressedNotes(xml: string): number {
  return (xml.match(/<(?:\w+:)?comment(?=[\s>])[\s\S]*?<\/(?:\w+:)?comment>/g) ?? []).filter((note) =>
    /<(?:\w+:)?rPr(?=[\s>])[^>]*[^/]?>/.test(note),
  ).length;
}

/** No sheet has more; a run of columns that ends here goes on to the end. */
const MOST_FILE_COLUMNS = 16384;

function lastColumnOf(head: string): number {
  const own = tags(head, 'col').filter(
    ({ width, customWidth, hidden, outlineLevel = '0' }) =>
      (width !== undefined && customWidth !== undefined && isTrue(customWidth)) ||
      isTrue(hidden) ||
      outlineLevel !== '0',
  );
  return own.reduce((last, { min, max }) => {
    const to = Number(max) >= MOST_FILE_COLUMNS ? Number(min) : Number(max);
    return Math.max(last, to);
  }, 0);
}

function sheetBeyond(xml: string): SheetBeyond {
  const head = xml.slice(0, Math.max(0, xml.search(/<(?:\w+:)?sheetData\b/)));
  const [format] = tags(head, 'sheetFormatPr');
  const [page] = tags(head, 'pageSetUpPr');
  const tail = xml.slice(Math.max(0, xml.lastIndexOf('sheetData>')));
  const [protection] = tags(tail, 'sheetProtection');
  const fitted = new Map<number, number>();
  let lineLooks = tags(head, 'col').some(({ style }) => hasLook(style));
  let lastRow = 0;
  for (const row of tags(xml, 'row')) {
    lineLooks ||= isTrue(row.customFormat) && hasLook(row.s);
    const isOwn = (row.ht !== undefined && isTrue(row.customHeight)) || isTrue(row.hidden);
    if (isOwn || (row.outlineLevel ?? '0') !== '0') lastRow = Math.max(lastRow, Number(row.r));
    if (row.ht !== undefined && row.r !== undefined && !isTrue(row.customHeight))
      fitted.set(Number(row.r) - 1, Number(row.ht));
  }
  return {
    ...NOTHING,
    usualWidth: format?.defaultColWidth === undefined ? null : Number(format.defaultColWidth),
    fitted,
    // A data bar stands twice in a newer file: as a rule, and as more about that rule.
    highlights: tags(xml, 'cfRule').filter(({ id, type }) => !(id !== undefined && type === 'dataBar')).length,
    checks: tags(xml, 'dataValidation').filter(({ type }) => type !== undefined && type !== 'none').length,
    whatIf: tags(xml, 'f').filter(({ t }) => t === 'dataTable').length,
    password: protection?.password !== undefined || protection?.hashValue !== undefined,
    fitsPages: isTrue(page?.fitToPage),
    protectedRanges: tags(xml, 'protectedRange').length,
    scenarios: tags(xml, 'scenario').length,
    shownOtherwise: tags(head, 'sheetView').some(isShownOtherwise),
    lineLooks,
    rowHeight: isTrue(format?.customHeight) && Math.abs(Number(format?.defaultRowHeight) - USUAL_HEIGHT) > 1,
    printing: tags(tail, 'pageSetup').some(isPrintedOtherwise),
    hiddenArrows: tags(tail, 'dataValidation').filter(({ showDropDown }) => isTrue(showDropDown)).length,
    asides: tags(tail, 'ignoredError').length,
    sorts: tags(tail, 'sortState').length,
    lastColumn: lastColumnOf(head),
    lastRow,
    numbers: () => numbersIn(xml),
  };
}

/** Points, of a row in the usual font; programs differ by fractions. */
const USUAL_HEIGHT = 15;

/** The first look is that of every cell that says none. */
function hasLook(look: string | undefined): boolean {
  return look !== undefined && look !== '0';
}

function isShownOtherwise({ showFormulas, showZeros, showRowColHeaders, view = 'normal' }: Attributes): boolean {
  const hides = [showZeros, showRowColHeaders].some((each) => each !== undefined && !isTrue(each));
  return isTrue(showFormulas) || hides || view !== 'normal';
}

function isPrintedOtherwise(page: Attributes): boolean {
  const { cellComments = 'none', errors = 'displayed', pageOrder = 'downThenOver' } = page;
  return (
    [page.blackAndWhite, page.draft].some(isTrue) ||
    (isTrue(page.useFirstPageNumber) && page.firstPageNumber !== '1') ||
    cellComments !== 'none' ||
    errors !== 'displayed' ||
    pageOrder !== 'downThenOver'
  );
}

function numbersIn(xml: string): Map<string, number> {
  const numbers = new Map<string, number>();
  const cells = /<(?:\w+:)?c\s([^>]*[^>/])>([\s\S]*?)<\/(?:\w+:)?c>/g;
  for (const [, inside = '', content = ''] of xml.matchAll(cells)) {
    const at = /(?:^|\s)r="([A-Z]+\d+)"/.exec(inside)?.[1];
    const value = /<(?:\w+:)?v(?:\s[^>]*)?>([^<]+)</.exec(content)?.[1];
    if (at !== undefined && value !== undefined && !/(?:^|\s)t="(?!n")/.test(inside)) numbers.set(at, Number(value));
  }
  return numbers;
}

type Attributes = Readonly<Record<string, string>>;

function isTrue(value: string | undefined): boolean {
  return value === '1' || value === 'true';
}

/** The attributes of each element of that name, whatever prefix stands before it. */
function tags(xml: string, name: string): Attributes[] {
  return [...xml.matchAll(new RegExp(`<(?:\\w+:)?${name}(?=[\\s/>])([^>]*)>`, 'g'))].map(([, inside = '']) =>
    Object.fromEntries(
      [...inside.matchAll(/([\w:.]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)].map(([, key = '', one, other]) => [
        key,
        plain(one ?? other ?? ''),
      ]),
    ),
  );
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function plain(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (whole, hex?: string, number?: string, name?: string) => {
    if (hex !== undefined) return String.fromCodePoint(parseInt(hex, 16));
    if (number !== undefined) return String.fromCodePoint(Number(number));
    return ENTITIES[name ?? ''] ?? whole;
  });
}

/** `xl/worksheets/sheet1.xml` → `xl/worksheets/_rels/sheet1.xml.rels` */
function relationsOf(path: string): string {
  const slash = path.lastIndexOf('/') + 1;
  return `${path.slice(0, slash)}_rels/${path.slice(slash)}.rels`;
}

/** The parts that a part points at, by the name it has for them. */
function relations(xml: string, from: string): Map<string, string> {
  const base = from.slice(0, from.lastIndexOf('/') + 1);
  return new Map(tags(xml, 'Relationship').map(({ Id = '', Target = '' }) => [Id, resolved(base, Target)]));
}

function resolved(base: string, target: string): string {
  if (target.startsWith('/')) return target.slice(1);
  const steps: string[] = [];
  for (const step of `${base}${target}`.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.' && step !== '') steps.push(step);
  }
  return steps.join('/');
}
