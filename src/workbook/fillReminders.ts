/** Filling who is due for a reminder into a sheet of its own, as values. */
import { REMINDER_SHEET, sayHeldBack } from '../words/intake';
import { fillPage, type MakePage } from './fillPage';
import type { RemindersDone } from './intakeOutcomes';
import { jobFacts } from './jobFacts';
import type { InTheWay } from './outcomes';
import type { Block, Cell, CellFormat, Change, WorkbookPort } from './port';
import { dueReminders, type HeldBack, type Reminder, type Reminders } from './reminders';
import { JOBS } from './schema';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, SCREEN_ROWS, type SheetColumn } from './sheetLooks';
import { pageSheetName } from './sheetName';
import type { Shop, ShopTables } from './shop';
import { GREY } from './palette';

interface ReminderColumn extends SheetColumn {
  readonly cell: (reminder: Reminder) => Cell;
}

export const REMINDER_COLUMNS: readonly ReminderColumn[] = [
  { header: 'Customer', width: 26, wrap: true, align: 'left', format: '@', cell: ({ customer }) => customer },
  { header: 'Last job', width: 11, align: 'left', format: '@', cell: ({ job }) => job },
  { header: 'Closed', width: 12, align: 'left', format: 'yyyy-mm-dd', cell: ({ closed }) => closed },
  { header: 'Clubs', width: 8, align: 'center', format: '0', cell: ({ clubs }) => clubs },
  { header: 'Grips', width: 28, wrap: true, align: 'left', format: '@', cell: ({ items }) => items.join(', ') || null },
  { header: 'Due since', width: 12, align: 'left', format: 'yyyy-mm-dd', cell: ({ due }) => due },
  { header: 'Reminded', width: 22, align: 'left', cell: () => null },
];

/** Rows above the list's header row. */
export const REMINDER_HEAD_ROWS = 4;

const RULE = GREY.rule;
/** Below the list no row has a line, even where a longer list stood before. */
const PAPER = '#FFFFFF';

/** Writes who is due into *Reminders*; a sheet that stands there already is rewritten in place. */
export async function fillReminders(
  port: WorkbookPort,
  shop: Shop,
  of: { readonly today: number; readonly agreed?: InTheWay | undefined },
): Promise<RemindersDone> {
  let customers = 0;
  let left: readonly HeldBack[] = [];
  const make: MakePage<Extract<RemindersDone, { reason: 'tableMissing' | 'noneDue' }>> = (tables) => {
    if (!tables.Jobs) return { done: false, reason: 'tableMissing', table: JOBS.name };
    const reminders = dueReminders(tables, of.today);
    const { due, months, held } = reminders;
    if (due.length === 0) return { done: false, reason: 'noneDue', months, held };
    customers = due.length;
    left = held;
    const page = reminderPage(tables, reminders);
    return {
      cells: page,
      list: { from: REMINDER_HEAD_ROWS, rows: due.length + 1 },
      key: 'reminders',
      job: null,
      sheetName: (taken) => pageSheetName('Reminders', '', taken),
      dress: (at) => dressReminders(at, page, due.length),
      label: 'Reminders',
    };
  };
  const end = await fillPage(port, shop, make, of.agreed);
  return end.done ? { ...end, customers, held: left } : end;
}

function reminderPage(tables: ShopTables, { due, months, held }: Reminders): Cell[][] {
  const rowOf = (cells: readonly Cell[]): Cell[] => REMINDER_COLUMNS.map((_, across) => cells[across] ?? null);
  return [
    rowOf([jobFacts(tables, null).shop || null]),
    rowOf([REMINDER_SHEET.title]),
    rowOf([REMINDER_SHEET.about(months)]),
    rowOf([]),
    REMINDER_COLUMNS.map(({ header }) => header),
    ...due.map((each) => REMINDER_COLUMNS.map(({ cell }) => cell(each))),
    ...(held.length > 0 ? [rowOf([]), rowOf([REMINDER_SHEET.held])] : []),
    ...held.map((each) => rowOf([sayHeldBack(each)])),
  ];
}

function dressReminders(at: Block, cells: readonly (readonly Cell[])[], rows: number): Change[] {
  const part = (row: number, column: number, rows: number, columns: number): Block => {
    return { sheet: at.sheet, row: at.row + row, column: at.column + column, rows, columns };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const from = REMINDER_HEAD_ROWS;
  const below = from + 1 + rows;
  const { sheet, column } = at;
  const titleRows = { row: at.row + from, rows: 1 };
  return [
    format(at, { bold: false, italic: false, align: 'left' }),
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 16 }),
    format(part(2, 0, 1, 1), { ink: LABEL_INK }),
    format(part(from, 0, 1, at.columns), HEADER_LOOK),
    format(
      part(
        from,
        REMINDER_COLUMNS.findIndex(({ align }) => align === 'center'),
        1,
        1,
      ),
      { align: 'center' },
    ),
    ...REMINDER_COLUMNS.map((each, across) => format(part(from + 1, across, rows, 1), bodyLook(each))),
    ...rowHeights(part(from, 0, 1, 1), REMINDER_COLUMNS, cells.slice(from, below), true),
    ...(below < at.rows ? [format(part(below, 0, at.rows - below, at.columns), { wrap: false, rule: PAPER })] : []),
    ...Array.from({ length: rows }, (_, down) =>
      format(part(from + 1 + down, REMINDER_COLUMNS.length - 1, 1, 1), { rule: RULE }),
    ),
    { do: 'widths', sheet, column, widths: REMINDER_COLUMNS.map(({ width }) => width) },
    { do: 'page', sheet, setup: { landscape: false, area: at, titleRows, footer: REMINDER_SHEET.title } },
    ...(at.rows > SCREEN_ROWS ? [{ do: 'freezeRows', sheet, rows: titleRows.row + 1 } as const] : []),
  ];
}
