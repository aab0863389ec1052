/** How a bench ticket stands in its sheet: who and what for, the clubs in bench order, then what it uses up and what to mind. */
import { cautionsFor, type BenchTicket, type TicketClub } from '../core/index';
import {
  CAUTIONS_FOOT,
  predictedGrams,
  predictedReading,
  sayAlign,
  sayCaution,
  sayMissingMinutes,
  sayPilot,
  sayTape,
  sayWeight,
  TAKE_OFF_WORDS,
  usedUpLines,
  TICKET_WORDS,
} from '../words/bench';
import { gripName } from '../words/handOver';
import type { JobFacts } from './jobFacts';
import type { Block, Cell, CellFormat, Change } from './port';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, type SheetColumn } from './sheetLooks';
import { brokenLines } from './shared/brokenLines';
import { GREY } from './palette';

interface TicketColumn extends SheetColumn {
  readonly cell: (club: TicketClub) => Cell;
}

/** A cell of an older, longer page that nobody wrote in; a box to write in with a pen. */
const BOX = (): null => null;

export const TICKET_COLUMNS: readonly TicketColumn[] = [
  { header: 'No.', width: 9, align: 'center', cell: ({ order }) => order },
  { header: 'Club', width: 15, wrap: true, align: 'left', cell: clubText },
  { header: 'Grip', width: 11, wrap: true, align: 'left', cell: gripName },
  { header: 'Take off', width: 12, wrap: true, cell: takeOffText },
  { header: 'Tape', width: 21, wrap: true, cell: ({ tape }) => sayTape(tape) },
  { header: 'Align', width: 16, wrap: true, cell: ({ align }) => sayAlign(align) || null },
  { header: 'Weight', width: 30, wrap: true, cell: ({ weight }) => (weight ? sayWeight(weight) : null) },
  {
    header: 'To read',
    width: 11,
    wrap: true,
    cell: ({ expected: { reading } }) => (reading ? predictedReading(reading) : null),
  },
  { header: 'Tolerance (pt)', width: 10, format: '0.0', cell: toleranceOf },
  {
    header: 'To weigh',
    width: 14,
    wrap: true,
    cell: ({ expected: { massGrams } }) => (massGrams ? predictedGrams(massGrams) : null),
  },
  { header: TICKET_WORDS.before, width: 13, cell: BOX },
  { header: TICKET_WORDS.bare, width: 13, cell: BOX },
  { header: TICKET_WORDS.after, width: 13, cell: BOX },
  { header: 'Minutes', width: 9, format: '0.0', cell: ({ minutes }) => minutes },
];

const BOXES = [10, 11, 12] as const;

/** Rows above the list's header row. */
export const TICKET_HEAD_ROWS = 7;

/** All the cells, and which of their rows are the list, its header row first. */
export interface TicketCells {
  readonly cells: readonly (readonly Cell[])[];
  readonly list: { readonly from: number; readonly rows: number };
}

function clubText({ name, pilot, tag }: TicketClub): string {
  return [name, ...(pilot ? [TICKET_WORDS.isFirst] : []), ...(tag ? [TICKET_WORDS.tag(tag)] : [])].join(' ');
}

function takeOffText({ takeOff, buttWeight, lengthChangeInches }: TicketClub): string {
  const parts = [TAKE_OFF_WORDS[takeOff]];
  if (buttWeight) parts.push(TICKET_WORDS.buttWeight(buttWeight.grams, buttWeight.leaves));
  if (lengthChangeInches !== 0) parts.push(TICKET_WORDS.length(lengthChangeInches));
  return parts.join('; ');
}

function toleranceOf({ hold, tolerancePoints }: TicketClub): Cell {
  return hold === 'nothing' ? null : tolerancePoints;
}

export function ticketPage(facts: JobFacts, ticket: BenchTicket): TicketCells {
  const list = [
    TICKET_COLUMNS.map(({ header }) => header),
    ...ticket.clubs.map((club) => TICKET_COLUMNS.map(({ cell }) => cell(club))),
  ];
  return {
    cells: [
      ...headCells(facts, ticket),
      ...list,
      ...tailLines(ticket)
        .flatMap((line) => (line === null ? [null] : brokenLines(line, LINE_CHARACTERS)))
        .map((line) => rowOf([line])),
    ],
    list: { from: TICKET_HEAD_ROWS, rows: list.length },
  };
}

function headCells(facts: JobFacts, { clubs, pilot, minutes, isAgain }: BenchTicket): Cell[][] {
  const first = clubs.find(({ row }) => row === pilot?.row);
  const { title, job, customer, due, firstClub } = TICKET_WORDS;
  const rows = [
    rowOf([facts.shop || null]),
    rowOf([isAgain ? TICKET_WORDS.titleAgain : title]),
    rowOf([job, null, facts.job]),
    rowOf(facts.customer ? [customer, null, facts.customer] : []),
    rowOf(facts.due === null ? [] : [due, null, facts.due]),
    rowOf(first && pilot ? [firstClub, null, sayPilot(first.name, pilot.why)] : []),
    rowOf([TICKET_WORDS.minutes, null, TICKET_WORDS.minutesOf(minutes.total, minutes.job)]),
  ];
  return rows;
}

function tailLines(ticket: BenchTicket): (string | null)[] {
  const missing = sayMissingMinutes(ticket.minutes.missing);
  const cautions = cautionsFor(ticket).map((caution) => sayCaution(caution, ticket.clubs.length));
  const left = ticket.left.map(({ name }) => name);
  const damaged = ticket.clubs.flatMap(({ name, damage }) => (damage ? [`${name}: ${damage}`] : []));
  return [
    null,
    ...usedUpLines(ticket),
    ...(damaged.length > 0 ? [TICKET_WORDS.damaged(damaged)] : []),
    ...(left.length > 0 ? [TICKET_WORDS.left(left)] : []),
    ...ticket.unplanned.map(({ name, issues }) => TICKET_WORDS.unplanned(name, issues)),
    ...(missing ? [missing] : []),
    ...(cautions.length > 0 ? [null, TICKET_WORDS.cautions, ...cautions, CAUTIONS_FOOT] : []),
  ];
}

/** Characters that the page holds side by side: a width is counted in digits, and most letters are narrower. */
const LINE_CHARACTERS = Math.floor(1.1 * TICKET_COLUMNS.reduce((sum, { width }) => sum + width, 0));

function rowOf(cells: readonly Cell[]): Cell[] {
  return TICKET_COLUMNS.map((_, across) => cells[across] ?? null);
}

/** Borders all round are not to be had: a line below each row leads the eye, and a tint keeps the middle box from its neighbours. */
const RULE = GREY.faint;
const BOX_TINT = GREY.pale;
/** Room for a pen. */
const PEN_POINTS = 30;

/** Looks, widths and page of a ticket that stands at `at`. */
export function dressTicket(at: Block, { cells, list }: TicketCells): Change[] {
  const part = (row: number, column: number, rows: number, columns: number): Block => {
    return { sheet: at.sheet, row: at.row + row, column: at.column + column, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const clubs = list.rows - 1;
  const body = list.from + 1;
  const titleRows = { row: at.row + list.from, rows: 1 };
  const { sheet, column } = at;
  const caution = cells.findIndex(([first]) => first === TICKET_WORDS.cautions);
  return [
    format(at, { bold: false, italic: false, align: 'left' }),
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 16 }),
    format(part(2, 0, TICKET_HEAD_ROWS - 2, 1), { ink: LABEL_INK }),
    format(part(2, 2, 2, 1), { number: '@', bold: true }),
    format(part(4, 2, 1, 1), { number: 'yyyy-mm-dd', bold: true }),
    format(part(5, 2, 1, 1), { bold: true }),
    format(part(list.from, 0, 1, at.columns), HEADER_LOOK),
    ...TICKET_COLUMNS.map((each, across) => format(part(body, across, clubs, 1), bodyLook(each))),
    ...rowHeights(part(list.from, 0, 1, 1), TICKET_COLUMNS, cells.slice(list.from, body + clubs).map(roomForPen), true),
    format(part(body, BOXES[1], clubs, 1), { fill: BOX_TINT }),
    ...Array.from({ length: clubs }, (_, down) => format(part(body + down, 0, 1, at.columns), { rule: RULE })),
    ...(caution >= 0 ? [format(part(caution, 0, 1, 1), { bold: true })] : []),
    { do: 'widths', sheet, column, widths: TICKET_COLUMNS.map(({ width }) => width) },
    { do: 'page', sheet, setup: { landscape: true, area: at, titleRows, footer: TICKET_WORDS.title } },
  ];
}

/** Rows are fitted to their texts, and never lower than a pen needs: two lines. */
function roomForPen(row: readonly Cell[], down: number): readonly Cell[] {
  if (down === 0) return row;
  const longest = 'x'.repeat(Math.ceil((PEN_POINTS / 15 - 1) * (TICKET_COLUMNS[4]?.width ?? 20)) + 1);
  return row.map((cell, across) => (across === 4 && String(cell).length < longest.length ? longest : cell));
}
