/** Every word about opening a workbook file. */
import { listed, shortened } from '../../words/listed';
import { countOf } from '../../words/readings';
import type { RefusalCode } from '../../workbook/embedded/open/refusal';
import type { Otherwise, Shown } from '../../workbook/embedded/opened';

export const OPEN = {
  title: 'Open a workbook',
  opened: 'Opened',
  done: 'Opened.',
  reading: 'Reading the file. A large one takes a few seconds.',
  placing: 'Putting it into the sheet.',
  mayWait:
    'With a large file it can take a moment before Cancel is heard. Until it is finished nothing on the page has changed.',
  open: 'Open',
  cancel: 'Cancel',
  close: 'Close',
  drop: 'Drop an Excel workbook here to open it.',
  original:
    'The file itself is never changed: Save as .xlsx makes a copy under another name. Nothing is sent anywhere.',
  leaving: 'What stands on the page now goes. If you need it, cancel and save a copy first.',
  unkeptTitle: 'A copy that is saved here will be without:',
  several: 'Drop one file at a time.',
  stays: 'What stood on the page is as it was.',
} as const;

/** Why a file is not opened: what reading it found, or that there was nothing to read it with. */
export type WhyNotOpened = RefusalCode | 'notLoaded';

const RESAVE = 'Open it in your spreadsheet program, save it as an Excel workbook (.xlsx), then open that.';

const REFUSALS: Readonly<Record<WhyNotOpened, (file: string) => string>> = {
  empty: (file) => `${file} is empty: it holds no bytes at all. Copy it again from where it came from.`,
  tooLarge: (file) =>
    `${file} is larger than 25 MB, which is the most this page opens. Take pictures or old years out of a copy of it, then open that.`,
  unpacksTooLarge: (file) =>
    `${file} would unpack to more than a page can hold, or to more than it says. If you trust where it came from, save it anew in your spreadsheet program, then open that.`,
  tooManyCells: (file) =>
    `${file} has more than two million cells, which is more than a page can hold. Delete what is not needed from a copy of it, empty rows with formats too, then open that.`,
  locked: (file) =>
    `${file} is locked with a password. Open it in your spreadsheet program, save a copy without a password, then open that.`,
  oldFormat: (file) => `${file} is in an old format (.xls). ${RESAVE}`,
  binaryCells: (file) => `${file} is a binary workbook (.xlsb). ${RESAVE}`,
  text: (file) => `${file} is no workbook: it may be text with separators, such as .csv. ${RESAVE}`,
  otherFile: (file) => `${file} is no Excel workbook, whatever its name says. ${RESAVE}`,
  broken: (file) =>
    `${file} is damaged or was cut off. Copy it again from where it came from; if your spreadsheet program can repair it, save that as .xlsx.`,
  notLoaded: (file) => `What reads ${file} could not be loaded. Check the connection, then open it again.`,
};

/** Why a file is not opened, and what to do. */
export function sayRefusal(code: WhyNotOpened, file: string): string {
  return `${REFUSALS[code](file)} ${OPEN.stays}`;
}

/** What goes missing in a copy; the same shape as what reading a file finds. */
export interface Unkept {
  readonly kind: keyof typeof UNKEPT;
  readonly count: number;
}

const UNKEPT = {
  macros: () => 'macros',
  charts: (count: number) => countOf(count, 'chart'),
  chartSheets: (count: number) => countOf(count, 'sheet that is a chart', 'sheets that are charts'),
  pictures: (count: number) => countOf(count, 'picture'),
  shapes: (count: number) => countOf(count, 'text box', 'text boxes'),
  pivots: (count: number) => `${countOf(count, 'pivot table')}: ${count === 1 ? 'its' : 'their'} cells stay, as values`,
  slicers: (count: number) => countOf(count, 'slicer'),
  externalLinks: (count: number) => `links to ${countOf(count, 'other workbook')}`,
  connections: (count: number) => `${countOf(count, 'connection')} to data elsewhere`,
  threads: (count: number) => `${countOf(count, 'conversation')} in comments; their text stays as notes`,
  embedded: (count: number) => countOf(count, 'embedded file'),
  controls: (count: number) => `${countOf(count, 'button or other control', 'buttons or other controls')}`,
  signature: () => 'the signature',
  highlights: (count: number) => `${countOf(count, 'highlight')} of kinds that are not known here`,
  checks: (count: number) => `${countOf(count, 'check')} of entries of kinds that are not known here`,
  tableFilters: (count: number) => `what ${countOf(count, 'table')} was filtered by; hidden rows stay hidden`,
  headlessTables: (count: number) => `${countOf(count, 'table')} without a row of headings; the cells stay`,
  columnFormulas: (count: number) => `formulas that ${countOf(count, 'table')} would give to new rows`,
  whatIf: (count: number) => `${countOf(count, 'table')} of results for several inputs; the values stay`,
  localDays: () => 'days in your computer’s own order of day and month; a copy shows them as month/day/year',
  protectedRanges: (count: number) =>
    `${countOf(count, 'range')} that may be changed though the sheet is protected; ${count === 1 ? 'it is' : 'they are'} protected in a copy`,
  scenarios: (count: number) => countOf(count, 'scenario'),
  shownOtherwise: (count: number) =>
    `how ${countOf(count, 'sheet')} ${count === 1 ? 'shows' : 'show'} formulas, zeros, row and column headings or pages`,
  lineLooks: (count: number) =>
    `formats of whole rows or columns on ${countOf(count, 'sheet')}, where their cells are empty`,
  rowHeights: (count: number) => `the usual height of rows on ${countOf(count, 'sheet')}`,
  printing: (count: number) =>
    `for ${countOf(count, 'sheet')}, how notes and errors are printed, the order and first number of pages, or black and white`,
  hiddenArrows: (count: number) =>
    `the wish that ${countOf(count, 'drop-down')} ${count === 1 ? 'shows' : 'show'} no arrow`,
  asides: (count: number) =>
    `on ${countOf(count, 'sheet')}, which signs of possible errors were put aside; they show again`,
  tableLooks: (count: number) =>
    `how ${countOf(count, 'table')} ${count === 1 ? 'sets' : 'set'} off columns, or ${count === 1 ? 'a style' : 'styles'} of the workbook’s own`,
  calculation: () => 'how it calculates: by hand, in circles, or with numbers as they are shown',
  hiddenNames: (count: number) => `the hiding of ${countOf(count, 'name')}; the names stay`,
  readOnly: () => 'the advice to open it for reading only',
  namedLooks: (count: number) => `the names of ${countOf(count, 'cell style')}; the cells look the same`,
  farColumns: (count: number) =>
    `widths and groups of columns far to the right of the cells in use, on ${countOf(count, 'sheet')}`,
  lowRows: (count: number) => `heights and groups of rows below the last cell in use, on ${countOf(count, 'sheet')}`,
  noteLooks: (count: number) => `bold and other looks of letters in ${countOf(count, 'note')}; the text stays`,
  sorts: (count: number) =>
    `by what ${countOf(count, 'list')} ${count === 1 ? 'was' : 'were'} sorted; the rows stay as they are`,
  remarks: (count: number) =>
    `what ${countOf(count, 'name or table', 'names or tables')} ${count === 1 ? 'has' : 'have'} for a comment`,
  passwords: (count: number) => `the password of ${countOf(count, 'protected sheet')}; the protection stays`,
} as const;

export function sayUnkept(all: readonly Unkept[]): string[] {
  return all.map(({ kind, count }) => UNKEPT[kind](count));
}

/** What a file that was read holds; the same shape as what reading it finds. */
export interface Found {
  readonly sheets: readonly {
    readonly hidden: boolean;
    readonly rowCount: number;
    readonly tables: readonly unknown[];
  }[];
  readonly comments: number;
  readonly runs: number;
  readonly from1904: boolean;
  readonly unkept: readonly Unkept[];
}

/** What was found in a file, in sentences. */
export function sayFound({ sheets, comments, runs, from1904 }: Found): string[] {
  const hidden = sheets.filter((sheet) => sheet.hidden).length;
  const tables = sheets.reduce((sum, sheet) => sum + sheet.tables.length, 0);
  const rows = Math.max(0, ...sheets.map(({ rowCount }) => rowCount));
  const held =
    rows === 0 ? 'nothing in them' : `${countOf(tables, 'table')}, at most ${countOf(rows, 'row')} on a sheet`;
  return [
    `${countOf(sheets.length, 'sheet')}${hidden > 0 ? ` (${hidden} hidden)` : ''}, ${sheets.length === 1 && rows === 0 ? 'nothing in it' : held}.`,
    ...(comments > 0
      ? [`${countOf(comments, 'note')} ${comments === 1 ? 'is' : 'are'} not shown here, but kept in a copy.`]
      : []),
    ...(runs > 0
      ? [
          `${countOf(runs, 'text')} in several looks ${runs === 1 ? 'shows' : 'show'} in one here; a copy has the looks again where the text is the same.`,
        ]
      : []),
    ...(from1904
      ? ['Its dates are counted from 1904; here and in a copy they are counted from 1900, and stay the same days.']
      : []),
  ];
}

/** `Stock!B1`, `B2`: a sheet's name stands where it begins. */
function withoutRepeating(cells: readonly string[]): string[] {
  const sheetOf = (cell = ''): string => cell.slice(0, cell.lastIndexOf('!') + 1);
  return cells.map((cell, i) =>
    i > 0 && sheetOf(cell) === sheetOf(cells[i - 1]) ? cell.slice(sheetOf(cell).length) : cell,
  );
}

/** Cells that keep the file's values, once the workbook stood on the page. */
export function sayKeptValues(cells: readonly string[]): string[] {
  if (cells.length === 0) return [];
  const one = cells.length === 1;
  return [
    `${countOf(cells.length, 'cell')} (${listed(withoutRepeating(cells))}) ${one ? 'keeps' : 'keep'} the value that the file had: ${one ? 'its formula is' : 'their formulas are'} not calculated here. A copy has ${one ? 'it' : 'them'} again as long as the value is not changed and no rows, columns or sheets are moved.`,
  ];
}

/** Letters of a text that are shown: enough to know it again. */
const MOST_LETTERS = 60;

function sayShown({ kind, text }: Shown): string {
  if (kind === 'blank') return 'nothing';
  const letters = [...text];
  const short = letters.length > MOST_LETTERS ? `${letters.slice(0, MOST_LETTERS - 1).join('')}…` : text;
  return kind === 'text' ? `“${short}”` : short;
}

/** Cells that come out otherwise here than in the file, with both values. */
export function sayOtherwise(cells: readonly Otherwise[]): { readonly title: string; readonly items: string[] } {
  const one = cells.length === 1;
  const { shown, rest } = shortened(cells);
  return {
    title: `${countOf(cells.length, 'cell')} ${one ? 'comes' : 'come'} out otherwise here than in the file. Compare before you rely on ${one ? 'it' : 'them'}:`,
    items: [
      ...shown.map(
        ({ at, file, here }) => `${at}: the file kept ${sayShown(file)}, here it comes to ${sayShown(here)}`,
      ),
      ...(rest > 0 ? [`and ${rest} more`] : []),
    ],
  };
}

/** What the page says of itself while a file stands on it: the name, which a small page shows alone, and the rest of the sentence. */
export function sayAbout(file: string): { readonly file: string; readonly rest: string } {
  return { file, rest: ', opened from your computer, where it stays as it is. Nothing leaves this page.' };
}

/** How far putting it into the sheet is, of one whole. */
export function sayPlacing(share: number): string {
  return `${OPEN.placing.slice(0, -1)}: ${Math.floor(share * 100)} %`;
}

export function sayNotPlaced(file: string, why: string): string {
  return `${file} could not be put into the sheet (${why}). ${OPEN.stays}`;
}
