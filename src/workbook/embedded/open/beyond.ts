/** What the reading library passes over in a file's own parts: usual sizes, fitted rows, and how many rules there are in truth. */
import type { Part } from './zip';
import { textOf } from './zip';

export interface TableBeyond {
  /** Whether it has no row of headings. */
  readonly headless: boolean;
  readonly filtered: boolean;
  readonly columnFormulas: boolean;
}

export interface SheetBeyond {
  readonly usualWidth: number | null;
  /** Heights, in points, of rows that the program fitted to their text. */
  readonly fitted: ReadonlyMap<number, number>;
  readonly highlights: number;
  readonly checks: number;
  readonly whatIf: number;
  readonly password: boolean;
  /** Whether it is fitted to pages when printed; how many pages that would be may be said without it. */
  readonly fitsPages: boolean;
  /** By name. */
  readonly tables: ReadonlyMap<string, TableBeyond>;
  /** Numbers as the file has them, by `A1`: the library makes days of some, which holds no more than milliseconds. */
  readonly numbers: () => ReadonlyMap<string, number>;
}

const NOTHING: SheetBeyond = {
  usualWidth: null,
  fitted: new Map(),
  highlights: 0,
  checks: 0,
  whatIf: 0,
  password: false,
  fitsPages: false,
  tables: new Map(),
  numbers: () => new Map(),
};

/** For each sheet, by its name. */
export async function beyondSheets(file: Uint8Array, parts: readonly Part[]): Promise<Map<string, SheetBeyond>> {
  const byName = new Map(parts.map((part) => [part.name, part]));
  const read = async (name: string): Promise<string> => {
    const part = byName.get(name);
    return part ? textOf(file, part) : '';
  };
  const workbook = parts.find(({ name }) => /(^|\/)workbook\d*\.xml$/i.test(name))?.name ?? '';
  const related = relations(await read(relationsOf(workbook)), workbook);
  const found = new Map<string, SheetBeyond>();
  for (const sheet of tags(await read(workbook), 'sheet')) {
    const path = related.get(sheet['r:id'] ?? sheet[Object.keys(sheet).find((key) => key.endsWith(':id')) ?? ''] ?? '');
    if (path === undefined || sheet.name === undefined) continue;
    const tablePaths = [...relations(await read(relationsOf(path)), path).values()].filter((each) =>
      /tables?\/[^/]*\.xml$/i.test(each),
    );
    const tables = new Map<string, TableBeyond>();
    for (const tablePath of tablePaths) {
      const xml = await read(tablePath);
      const [table] = tags(xml, 'table');
      if (table?.name !== undefined) tables.set(table.name, tableBeyond(table, xml));
    }
    found.set(sheet.name, { ...sheetBeyond(await read(path)), tables });
  }
  return found;
}

/** How many looks show a day in the order that the computer has, rather than in one that the file says. */
export async function localDays(file: Uint8Array, parts: readonly Part[]): Promise<number> {
  const part = parts.find(({ name }) => /(^|\/)styles\.xml$/i.test(name));
  const xml = part ? await textOf(file, part) : '';
  const looks = tags(/<(?:\w+:)?cellXfs\b[\s\S]*?cellXfs>/.exec(xml)?.[0] ?? '', 'xf');
  // Formats 14 and 22 of ECMA-376 Part 1, 18.8.30.
  return looks.filter(({ numFmtId }) => numFmtId === '14' || numFmtId === '22').length;
}

function tableBeyond(table: Attributes, xml: string): TableBeyond {
  return {
    headless: table.headerRowCount === '0',
    filtered: /<(?:\w+:)?filterColumn\b/.test(xml),
    columnFormulas: /<(?:\w+:)?calculatedColumnFormula\b/.test(xml),
  };
}

function sheetBeyond(xml: string): SheetBeyond {
  const head = xml.slice(0, Math.max(0, xml.search(/<(?:\w+:)?sheetData\b/)));
  const [format] = tags(head, 'sheetFormatPr');
  const [page] = tags(head, 'pageSetUpPr');
  const [protection] = tags(xml.slice(xml.lastIndexOf('sheetData>')), 'sheetProtection');
  const fitted = new Map<number, number>();
  for (const row of tags(xml, 'row')) {
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
    numbers: () => numbersIn(xml),
  };
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
