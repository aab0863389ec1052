/** How an intake sheet stands on paper: who and what for, club by club what came in and what is wanted, and who said so. */
import { INTAKE_SHEET, sayWanted } from '../words/intake';
import { columnsAt, folded } from './headings';
import { jobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change } from './port';
import { settingValues } from './readSettings';
import type { Row } from './records';
import { JOBS } from './schema';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, type SheetColumn } from './sheetLooks';
import { matrixOf, type ShopTables } from './shop';
import { clubRows, jobRows, numberOf, textOf } from './shopRows';
import { brokenLines } from './shared/brokenLines';
import { GREY } from './palette';

interface IntakeColumn extends SheetColumn {
  /** null: not known yet, a line to write on. */
  readonly cell: (row: Row) => Cell;
}

const textIn =
  (key: string) =>
  (row: Row): Cell =>
    textOf(row, key) || null;

export const INTAKE_COLUMNS: readonly IntakeColumn[] = [
  { header: 'Tag', width: 9, align: 'left', format: '@', cell: textIn('tag') },
  { header: 'Club', width: 14, wrap: true, align: 'left', format: '@', cell: textIn('club') },
  { header: 'Hand', width: 8, align: 'left', cell: textIn('hand') },
  { header: 'Shaft', width: 10, align: 'left', cell: textIn('shaft') },
  { header: 'Old grip', width: 17, wrap: true, align: 'left', format: '@', cell: oldGrip },
  { header: 'Damage seen', width: 28, wrap: true, align: 'left', cell: textIn('damage') },
  { header: 'Logo', width: 8, align: 'left', cell: textIn('logo') },
  { header: 'Rib', width: 10, align: 'left', cell: textIn('rib') },
  { header: 'Keep old grip', width: 14, wrap: true, align: 'left', cell: keep },
  { header: 'Wanted', width: 34, wrap: true, align: 'left', format: '@', cell: wanted },
];

/** Where the facts at the head stand. */
const VALUE_COLUMN = 2;
/** Second pair of label and value, to the right of the first. */
const RIGHT_LABEL = 8;
const RIGHT_VALUE = 9;
/** Where the signature and its line begin. */
const SIGN_LABEL = 4;

function oldGrip(row: Row): Cell {
  const item = textOf(row, 'oldItem');
  const layers = numberOf(row, 'oldLayers');
  const parts = [item, item !== '' && layers ? INTAKE_SHEET.layers(layers) : ''].filter((part) => part !== '');
  return parts.join(', ') || null;
}

function keep(row: Row): Cell {
  const takeOff = textOf(row, 'takeOff');
  return takeOff === '' ? null : (INTAKE_SHEET.keep[takeOff] ?? takeOff);
}

function wanted(row: Row): Cell {
  const own = row.values.get('ownGrip') === true;
  return (
    sayWanted({
      item: textOf(row, 'newItem'),
      own,
      layers: numberOf(row, 'layers'),
      lowerLayers: numberOf(row, 'lowerLayers'),
      targetDiameter: numberOf(row, 'targetDiameter'),
      hold: textOf(row, 'hold'),
      targetPoints: numberOf(row, 'target'),
      lengthChange: numberOf(row, 'lengthChange'),
    }) || null
  );
}

/** All the cells, which of their rows are the list, and where what is to be signed stands. */
export interface IntakeCells {
  readonly cells: readonly (readonly Cell[])[];
  readonly list: { readonly from: number; readonly rows: number };
  /** First row below the list; the lines to sign are in `sign`. */
  readonly tail: number;
  readonly sign: number;
  /** Row of the shop's terms; undefined where it has none. */
  readonly terms: number | undefined;
}

/** Rows above the list's header row. */
export const INTAKE_HEAD_ROWS = 6;

export function intakePage(tables: ShopTables, job: string): IntakeCells {
  const rows = clubRows(tables, job);
  const list = [
    INTAKE_COLUMNS.map(({ header }) => header),
    ...rows.map((row) => INTAKE_COLUMNS.map(({ cell }) => cell(row))),
  ];
  const tail = INTAKE_HEAD_ROWS + list.length;
  const notes = jobText(tables, job, 'notes');
  const terms = termsOf(tables);
  const noteLines = notes === '' ? [] : brokenLines(`${INTAKE_SHEET.notes}: ${notes}`, LINE_CHARACTERS);
  const sign = tail + 1 + noteLines.length + (noteLines.length > 0 ? 1 : 0);
  const termLines = terms === '' ? [] : brokenLines(terms, LINE_CHARACTERS);
  const after = [
    rowOf([]),
    ...noteLines.map((text) => rowOf([text])),
    ...(noteLines.length > 0 ? [rowOf([])] : []),
    signRow(jobText(tables, job, 'authorisedBy')),
    ...(termLines.length > 0
      ? [rowOf([]), rowOf([INTAKE_SHEET.terms]), ...termLines.map((text) => rowOf([text]))]
      : []),
  ];
  return {
    cells: [...headCells(tables, job, rows.length), ...list, ...after],
    list: { from: INTAKE_HEAD_ROWS, rows: list.length },
    tail,
    sign,
    terms: termLines.length > 0 ? sign + 2 : undefined,
  };
}

function headCells(tables: ShopTables, job: string, clubs: number): Cell[][] {
  const facts = jobFacts(tables, job);
  const received = jobRows(tables).find((each) => folded(each.job) === folded(job))?.received ?? null;
  const { title, customer, due, clubCount } = INTAKE_SHEET;
  const pair = (left: string, leftValue: Cell, right: string, rightValue: Cell): Cell[] => {
    const row = rowOf([left]);
    row[VALUE_COLUMN] = leftValue;
    row[RIGHT_LABEL] = right;
    row[RIGHT_VALUE] = rightValue;
    return row;
  };
  return [
    rowOf([facts.shop || null]),
    rowOf([title]),
    pair(INTAKE_SHEET.job, job, INTAKE_SHEET.received, received),
    pair(customer, facts.customer || null, due, facts.due),
    pair(clubCount, clubs, INTAKE_SHEET.phone, null),
    rowOf([]),
  ];
}

function signRow(authorisedBy: string): Cell[] {
  const row = rowOf([INTAKE_SHEET.authorised]);
  row[VALUE_COLUMN] = authorisedBy || null;
  row[SIGN_LABEL] = INTAKE_SHEET.signature;
  row[RIGHT_LABEL] = INTAKE_SHEET.date;
  return row;
}

function jobText({ Jobs }: ShopTables, job: string, key: string): string {
  if (!Jobs) return '';
  const at = columnsAt(JOBS, Jobs.headers);
  const row = Jobs.rows.find((each) => folded(each[at('job')]) === folded(job));
  const value = row?.[at(key)];
  return typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
}

/** What the shop itself says: no words of ours about what it answers for. */
function termsOf({ Settings }: ShopTables): string {
  const read = settingValues(Settings && matrixOf(Settings));
  return read.ok ? String(read.value.values.get('terms') ?? '') : '';
}

/** A cell does not flow over its neighbours once it wraps, so that a long text is cut into lines of the page's width. */
const LINE_CHARACTERS = Math.floor(INTAKE_COLUMNS.reduce((sum, { width }) => sum + width, 0) * 0.95);

function rowOf(cells: readonly Cell[]): Cell[] {
  return INTAKE_COLUMNS.map((_, across) => cells[across] ?? null);
}

const RULE = GREY.rule;
/** Room for a pen, in lines of text. */
const PEN_LINES = 2;

/** Looks, widths and page of an intake sheet that stands at `at`. */
export function dressIntake(at: Block, page: IntakeCells): Change[] {
  const { cells, list, sign, terms } = page;
  const part = (row: number, column: number, rows: number, columns: number): Block => {
    return { sheet: at.sheet, row: at.row + row, column: at.column + column, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const clubs = list.rows - 1;
  const body = list.from + 1;
  const titleRows = { row: at.row + list.from, rows: 1 };
  const { sheet, column } = at;
  return [
    format(at, { bold: false, italic: false, align: 'left' }),
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 16 }),
    format(part(2, 0, 3, 1), { ink: LABEL_INK }),
    format(part(2, RIGHT_LABEL, 3, 1), { ink: LABEL_INK }),
    format(part(2, VALUE_COLUMN, 2, 1), { number: '@', bold: true }),
    format(part(4, VALUE_COLUMN, 1, 1), { number: '0', bold: true }),
    format(part(2, RIGHT_VALUE, 2, 1), { number: 'yyyy-mm-dd', bold: true }),
    // lines to write on: dates that nobody knows yet, and how to reach the customer
    ...[2, 3, 4]
      .filter((row) => (cells[row]?.[RIGHT_VALUE] ?? null) === null)
      .map((row) => format(part(row, RIGHT_VALUE, 1, 1), { rule: RULE })),
    format(part(list.from, 0, 1, at.columns), HEADER_LOOK),
    ...INTAKE_COLUMNS.map((each, across) =>
      format(part(body, across, clubs, 1), { ...bodyLook(each), vertical: 'center' }),
    ),
    ...rowHeights(part(list.from, 0, 1, 1), INTAKE_COLUMNS, cells.slice(list.from, body + clubs).map(roomForPen), true),
    ...Array.from({ length: clubs }, (_, down) => format(part(body + down, 0, 1, at.columns), { rule: RULE })),
    format(part(sign, 0, 1, at.columns), { vertical: 'bottom', height: 34 }),
    ...[0, SIGN_LABEL, RIGHT_LABEL].map((across) => format(part(sign, across, 1, 1), { ink: LABEL_INK })),
    format(part(sign, VALUE_COLUMN, 1, 2), { rule: RULE, bold: true }),
    format(part(sign, SIGN_LABEL + 1, 1, 2), { rule: RULE }),
    format(part(sign, RIGHT_VALUE, 1, 1), { rule: RULE }),
    ...(terms === undefined ? [] : [format(part(terms, 0, 1, 1), { bold: true })]),
    { do: 'widths', sheet, column, widths: INTAKE_COLUMNS.map(({ width }) => width) },
    { do: 'page', sheet, setup: { landscape: true, area: at, titleRows, footer: INTAKE_SHEET.title } },
  ];
}

/** Rows are fitted to their texts, and never lower than a pen needs. */
function roomForPen(row: readonly Cell[], down: number): readonly Cell[] {
  if (down === 0) return row;
  const wide = INTAKE_COLUMNS.findIndex(({ header }) => header === 'Damage seen');
  const width = INTAKE_COLUMNS[wide]?.width ?? 20;
  const pen = 'x'.repeat((PEN_LINES - 1) * width + 1);
  return row.map((cell, across) => (across === wide && String(cell ?? '').length < pen.length ? pen : cell));
}
