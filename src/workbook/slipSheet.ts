/** How a pick-up slip stands in its sheet: whose clubs, how each came out, how to care for them, and room to sign. */
import { careLines, gripName, sayHandedOver, SLIP_WORDS, type Care } from '../words/handOver';
import { readingText } from '../words/readings';
import type { HandedClub } from './handOver';
import type { JobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change } from './port';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, type SheetColumn } from './sheetLooks';
import { brokenLines } from './shared/brokenLines';
import { GREY } from './palette';

interface SlipColumn extends SheetColumn {
  readonly cell: (club: HandedClub) => Cell;
}

const COLUMNS: readonly SlipColumn[] = [
  { header: SLIP_WORDS.club, width: 18, wrap: true, align: 'left', cell: ({ plan }) => plan.name },
  { header: SLIP_WORDS.grip, width: 14, wrap: true, align: 'left', cell: ({ plan }) => gripName(plan) || null },
  { header: SLIP_WORDS.layers, width: 8, align: 'center', cell: ({ plan }) => plan.layers + plan.lowerLayers },
  { header: SLIP_WORDS.reads, width: 11, align: 'center', cell: readsOf },
  {
    header: SLIP_WORDS.weighs,
    width: 11,
    align: 'center',
    format: '0.0',
    cell: ({ checked }) => checked?.measured?.massGrams ?? null,
  },
  {
    header: SLIP_WORDS.note,
    width: 32,
    wrap: true,
    align: 'left',
    cell: ({ checked }) => (checked && sayHandedOver(checked)) || null,
  },
];

/** Rows above the list's header row. */
export const SLIP_HEAD_ROWS = 5;

export interface SlipCells {
  readonly cells: readonly (readonly Cell[])[];
  readonly list: { readonly from: number; readonly rows: number };
}

function readsOf({ checked }: HandedClub): Cell {
  const reading = checked?.measured?.reading;
  return reading === undefined ? SLIP_WORDS.notRead : readingText(reading);
}

export function slipPage(
  facts: JobFacts,
  clubs: readonly HandedClub[],
  { care, isRedo }: { readonly care: Omit<Care, 'hasLead'>; readonly isRedo: boolean },
): SlipCells {
  const whole = isRedo ? [] : clubs.filter(({ ticket }) => ticket?.takeOff === 'salvage').map(({ plan }) => plan.name);
  const hasLead = clubs.some((club) => club.hasLead);
  const list = [COLUMNS.map(({ header }) => header), ...clubs.map((club) => COLUMNS.map(({ cell }) => cell(club)))];
  const tail = [
    null,
    ...(whole.length > 0 ? [SLIP_WORDS.oldGrips(whole), null] : []),
    SLIP_WORDS.care,
    ...careLines({ ...care, hasLead }),
    null,
    SLIP_WORDS.received,
  ];
  return {
    cells: [
      rowOf([facts.shop || null]),
      rowOf([isRedo ? SLIP_WORDS.titleAgain : SLIP_WORDS.title]),
      rowOf([SLIP_WORDS.job, facts.job]),
      rowOf(facts.customer ? [SLIP_WORDS.customer, facts.customer] : []),
      rowOf([]),
      ...list,
      ...tail
        .flatMap((line) => (line === null ? [null] : brokenLines(line, LINE_CHARACTERS)))
        .map((line) => rowOf([line])),
    ],
    list: { from: SLIP_HEAD_ROWS, rows: list.length },
  };
}

/** Characters side by side: a width is counted in digits, and most letters are narrower. */
const LINE_CHARACTERS = Math.floor(1.1 * COLUMNS.reduce((sum, { width }) => sum + width, 0));

function rowOf(cells: readonly Cell[]): Cell[] {
  return COLUMNS.map((_, across) => cells[across] ?? null);
}

const RULE = GREY.faint;
const SIGN_POINTS = 34;

/** Looks, widths and page of a slip that stands at `at`. */
export function dressSlip(at: Block, { cells, list }: SlipCells): Change[] {
  const { sheet, column } = at;
  const part = (row: number, across: number, rows: number, columns: number): Block => {
    return { sheet, row: at.row + row, column: column + across, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const body = list.from + 1;
  const clubs = list.rows - 1;
  const care = cells.findIndex(([first]) => first === SLIP_WORDS.care);
  const sign = cells.length - 1;
  return [
    format(at, { bold: false, italic: false, align: 'left', number: 'General' }),
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 16 }),
    format(part(2, 0, 2, 1), { ink: LABEL_INK }),
    format(part(2, 1, 2, 1), { number: '@', bold: true }),
    format(part(list.from, 0, 1, at.columns), HEADER_LOOK),
    ...COLUMNS.map((each, across) => format(part(body, across, clubs, 1), bodyLook(each))),
    ...COLUMNS.flatMap(({ align }, across) =>
      align === 'center' ? [format(part(list.from, across, 1, 1), { align })] : [],
    ),
    ...rowHeights(part(list.from, 0, 1, 1), COLUMNS, cells.slice(list.from, body + clubs), true),
    ...Array.from({ length: clubs }, (_, down) => format(part(body + down, 0, 1, at.columns), { rule: RULE })),
    format(part(care, 0, 1, 1), { bold: true }),
    format(part(sign, 0, 1, at.columns), { rule: RULE, height: SIGN_POINTS, vertical: 'bottom' }),
    { do: 'widths', sheet, column, widths: COLUMNS.map(({ width }) => width) },
    {
      do: 'page',
      sheet,
      setup: {
        landscape: false,
        area: at,
        titleRows: { row: at.row + list.from, rows: 1 },
        footer: SLIP_WORDS.title,
      },
    },
  ];
}
