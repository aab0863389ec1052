/**
 * A workbook that is nothing but data as yet, as a port: changes are made to it as to any other, and it answers as the embedded
 * spreadsheet will that is made of it (`content.ts`). So a page can show what stands in it while the spreadsheet is on its way.
 */
import type {
  Answer,
  Answers,
  Block,
  BlockSeen,
  Change,
  Query,
  Receipt,
  Reverted,
  Selection,
  SheetContents,
  TableSeen,
  WorkbookPort,
} from '../../port';
import { PortError } from '../../port';
import { contains, overlap, sameName } from '../../shared/address';
import { nothingThere } from '../../shared/looked';
import { buildReceipt } from '../../shared/receipt';
import { refuseUnsafe } from '../../shared/refuse';
import { EMBEDDED } from '../capabilities';
import type { DraftBook, DraftSheet } from './book';
import { blankBook, draftSheet, shownIn } from './book';
import { fitRows, growTable, makeChange } from './making';

export class Draft implements WorkbookPort {
  readonly capabilities = EMBEDDED;
  readonly book: DraftBook;

  constructor(sheetNames: readonly string[]) {
    this.book = blankBook(sheetNames);
  }

  async read<const Qs extends readonly Query[]>(queries: Qs): Promise<Answers<Qs>> {
    return queries.map((query) => this.answer(query)) as unknown as Answers<Qs>;
  }

  async apply(
    changes: readonly Change[],
    looked: readonly (BlockSeen | TableSeen)[],
    { label }: { readonly label: string },
  ): Promise<Receipt> {
    refuseUnsafe(changes, looked);
    const { book } = this;
    const receipt = buildReceipt(changes, looked, label, {
      sheets: book.sheets.map(({ name }) => name),
      tables: book.tables.map(({ name }) => name),
      names: [],
      placeOf: () => null,
    });
    for (const change of changes) makeChange(book, change);
    for (const change of changes) if (change.do === 'format' && change.format.wrap === true) fitRows(book, change.at);
    for (const table of book.tables) growTable(book, table);
    return receipt;
  }

  /** What stands in a draft is there from the start: nobody has filled in anything that could be taken back. */
  async revert(receipt: Receipt): Promise<Reverted> {
    throw new PortError('unsupported', [], receipt.label);
  }

  async selection(): Promise<Selection> {
    const { shown, tables } = this.book;
    const table = tables.find(({ at }) => contains(at, shown));
    return { at: shown, table: table?.name ?? null };
  }

  async recall(key: string): Promise<string | null> {
    return this.book.settings.get(key) ?? null;
  }

  async remember(key: string, value: string | null): Promise<void> {
    if (value === null) this.book.settings.delete(key);
    else this.book.settings.set(key, value);
  }

  /** There is no sheet yet that a person could change. */
  watch(): () => void {
    return () => undefined;
  }

  private answer(query: Query): Answer<Query> {
    switch (query.read) {
      case 'sheets':
        return this.book.sheets.map(({ name }) => ({ name, protected: false }));
      case 'contents':
        return this.book.sheets.map((sheet) => contentsOf(this.book, sheet));
      case 'table':
        return tableSeen(this.book, query.table);
      case 'block':
        return blockSeen(this.book, query.at);
      case 'name':
        return { name: query.name, at: null };
    }
  }
}

function contentsOf(book: DraftBook, { name, cells }: DraftSheet): SheetContents {
  let [rows, columns] = [0, 0];
  cells.forEach((line, row) =>
    line.forEach((cell, column) => {
      if (cell !== null && cell !== undefined) [rows, columns] = [row + 1, Math.max(columns, column + 1)];
    }),
  );
  const used = rows > 0 ? { sheet: name, row: 0, column: 0, rows, columns } : null;
  const tables = book.tables.filter(({ at }) => sameName(at.sheet, name));
  return { name, used, tables: tables.map((table) => ({ name: table.name, at: table.at })) };
}

function tableSeen(book: DraftBook, name: string): TableSeen | null {
  const table = book.tables.find((each) => sameName(each.name, name));
  if (!table) return null;
  const [headers = [], ...rows] = blockSeen(book, table.at).values;
  return {
    name: table.name,
    at: table.at,
    headers: headers.map((header) => (header === null ? '' : String(header))),
    rows,
    protected: false,
    filtered: false,
  };
}

function blockSeen(book: DraftBook, at: Block): BlockSeen {
  const sheet = draftSheet(book, at.sheet);
  if (!sheet) return nothingThere(at);
  const values = Array.from({ length: at.rows }, (_, down) =>
    Array.from({ length: at.columns }, (_unused, across) => shownIn(sheet, at.row + down, at.column + across)),
  );
  const tables = book.tables.flatMap((table) => (overlap(table.at, at) ? [table.name] : []));
  return { ...nothingThere(at), values, sheetExists: true, tables };
}
