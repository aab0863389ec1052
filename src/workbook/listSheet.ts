/** A list that is printed: a head, then rows in groups, each under its heading and perhaps over its sum. */
import type { Block, Cell, CellFormat, Change } from './port';
import { bodyLook, HEADER_LOOK, LABEL_INK, rowHeights, SCREEN_ROWS, type SheetColumn } from './sheetLooks';
import { GREY } from './palette';

export interface ListRow {
  /** `group`: a heading; `sum`: what the rows above come to; `gap`: a blank row. */
  readonly is: 'line' | 'group' | 'sum' | 'gap';
  readonly cells: readonly Cell[];
}

export interface ListSheet {
  readonly shop: string;
  readonly title: string;
  /** Each in a row of its own, below the title. */
  readonly about: readonly string[];
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly ListRow[];
  readonly landscape: boolean;
}

/** All the cells, and which of their rows are the list, its header row first. */
export interface ListCells {
  readonly cells: readonly (readonly Cell[])[];
  readonly list: { readonly from: number; readonly rows: number };
}

export function listCells({ shop, title, about, columns, rows }: ListSheet): ListCells {
  const rowOf = (cells: readonly Cell[]): Cell[] => columns.map((_, across) => cells[across] ?? null);
  const head = [[shop || null], [title], ...about.map((line) => [line]), []].map(rowOf);
  const list = [columns.map(({ header }) => header), ...rows.map(({ cells }) => rowOf(cells))];
  return { cells: [...head, ...list], list: { from: head.length, rows: list.length } };
}

/** Below each row; every row gets one, since another kind of row may have stood there before. Blank rows: that of the paper. */
const RULES: Readonly<Record<ListRow['is'], string>> = {
  line: GREY.line,
  group: GREY.rule,
  sum: GREY.rule,
  gap: '#FFFFFF',
};

/** Looks, widths and page of a list that stands at `at`. */
export function dressList(at: Block, sheet: ListSheet, { cells, list }: ListCells): Change[] {
  const { columns, rows, title, about, landscape } = sheet;
  const part = (row: number, column: number, count: number, across: number): Block => {
    return { sheet: at.sheet, row: at.row + row, column: at.column + column, rows: count, columns: across };
  };
  const format = (where: Block, how: CellFormat): Change => ({ do: 'format', at: where, format: how });
  const body = list.from + 1;
  const titleRows = { row: at.row + list.from, rows: 1 };
  return [
    format(at, { bold: false, italic: false, align: 'left' }),
    format(part(0, 0, 1, 1), { bold: true, ink: LABEL_INK }),
    format(part(1, 0, 1, 1), { bold: true, size: 16 }),
    ...(about.length > 0 ? [format(part(2, 0, about.length, 1), { ink: LABEL_INK })] : []),
    format(part(list.from, 0, 1, at.columns), HEADER_LOOK),
    ...columns.flatMap((column, across) => [
      format(part(list.from, across, 1, 1), { align: column.align ?? 'left' }),
      format(part(body, across, rows.length, 1), bodyLook(column)),
    ]),
    ...rowHeights(part(list.from, 0, 1, 1), columns, fitted(cells.slice(list.from), rows), true),
    ...rows.flatMap(({ is }, down) => {
      const whole = part(body + down, 0, 1, at.columns);
      const [isBold, rule] = [is === 'group' || is === 'sum', RULES[is]];
      return [format(whole, { bold: isBold, rule, ...(is === 'line' ? {} : { wrap: false }) })];
    }),
    { do: 'widths', sheet: at.sheet, column: at.column, widths: columns.map(({ width }) => width) },
    { do: 'page', sheet: at.sheet, setup: { landscape, area: at, titleRows, footer: title } },
    ...(at.rows > SCREEN_ROWS ? [{ do: 'freezeRows', sheet: at.sheet, rows: titleRows.row + 1 } as const] : []),
  ];
}

/** A heading runs over its neighbours, which are blank, so it takes one line. */
function fitted(cells: readonly (readonly Cell[])[], rows: readonly ListRow[]): (readonly Cell[])[] {
  return cells.map((line, down) => (down === 0 || rows[down - 1]?.is === 'line' ? line : []));
}
