import { PortError } from '../port';
import type { Answers, Block, BlockSeen, NameSeen, Query, SheetContents, TableSeen } from '../port';
import { blockOf, sameName } from '../shared/address';
import { charactersWide } from './dress';
import { hostCode } from './errors';
import { extrasOf, inBatch } from './host';
import type { ExcelHost } from './host';
import { askBlock } from './readBlock';
import type { Asking } from './readBlock';
import { atOnce } from './sources';
import type { CellReader } from './sources';
import { askStanding, holds } from './standing';
import type { Stood } from './standing';

const tooLong = 'ResponsePayloadSizeLimitExceeded';

/** Hosts of which an answer was too long: the types of cells, its longest part, are not asked for any more. */
const brief = new WeakSet<ExcelHost>();

/** What was asked of a host when it had to answer in pieces: asked for all of that again, it is not first refused again. */
const large = new WeakMap<ExcelHost, readonly string[]>();

/** Errors by which a host may say that a child of a null object is none. */
const nullChild: readonly string[] = ['InvalidObjectPath', 'ItemNotFound', 'InvalidOperation'];

type Ask<T> = (asking: Asking) => () => T;

/**
 * Asks in one round trip and answers with what stands as well.
 *
 * Two hosts need more: one that refuses to look for cells on a sheet that is not there is first asked what is there, and
 * one that refuses a long answer is asked again without the types of cells, then in pieces.
 */
export async function askAll<T>(host: ExcelHost, ask: Ask<T>): Promise<{ answer: T; stood: Stood }> {
  return askGuarded(host, ask, (typed) => askOnce(host, ask, null, atOnce(typed)));
}

async function askGuarded<T>(
  host: ExcelHost,
  ask: Ask<T>,
  first: (typed: boolean) => Promise<{ answer: T; stood: Stood }>,
  tables: readonly string[] = [],
): Promise<{ answer: T; stood: Stood }> {
  const typed = !brief.has(host);
  if (large.get(host)?.every((table) => tables.includes(table))) {
    return askInPieces(host, ask);
  }
  try {
    return await first(typed);
  } catch (error) {
    if (hostCode(error) === tooLong) {
      brief.add(host);
      if (typed) return askGuarded(host, ask, first, tables);
      if (tables.length > 0) large.set(host, tables);
      return askInPieces(host, ask);
    }
    if (nullChild.includes(hostCode(error))) return askWithCare(host, ask, atOnce());
    throw error;
  }
}

async function askInPieces<T>(host: ExcelHost, ask: Ask<T>): Promise<{ answer: T; stood: Stood }> {
  const { inPieces } = await import('./inPieces');
  return askWithCare(host, ask, inPieces());
}

async function askWithCare<T>(host: ExcelHost, ask: Ask<T>, reader: CellReader): Promise<{ answer: T; stood: Stood }> {
  const { stood } = await askOnce(host, () => () => null, null, atOnce());
  return askOnce(host, ask, stood, reader);
}

async function askOnce<T>(
  host: ExcelHost,
  ask: Ask<T>,
  known: Stood | null,
  reader: CellReader,
): Promise<{ answer: T; stood: Stood }> {
  return inBatch(host, async (context) => {
    const standing = askStanding(context);
    const later: (() => boolean)[] = [];
    const answer = ask({
      context,
      extras: extrasOf(host),
      stood: known,
      cells: reader.add,
      later: (more) => void later.push(more),
    });
    await context.sync();
    await reader.finish(context);
    while (later.map((more) => more()).includes(true)) await context.sync();
    const stood = standing();
    if (!stood) throw new PortError('host', [], 'The host answered nothing.');
    return { answer: answer(), stood };
  });
}

/** Answers the queries, and what stands, from one round trip. */
export async function readQueries<const Qs extends readonly Query[]>(
  host: ExcelHost,
  queries: Qs,
): Promise<{ answers: Answers<Qs>; stood: Stood }> {
  const ask: Ask<unknown[]> = (asking) => {
    const asked = queries.map((query) => askQuery(asking, query));
    return () => asked.map((answerOf) => answerOf());
  };
  // Which sheets and tables there are has to be known before each can be asked what it holds.
  const needsNames = queries.some(({ read }) => read === 'contents');
  const first = (typed: boolean) =>
    needsNames ? askWithCare(host, ask, atOnce(typed)) : askOnce(host, ask, null, atOnce(typed));
  const tables = queries.flatMap((query) => (query.read === 'table' ? [query.table] : []));
  const { answer, stood } = await askGuarded(host, ask, first, tables);
  const sheets = stood.sheets.map((name) => ({ name, protected: holds(stood.protectedSheets, name) }));
  const answers = queries.map((query, i) => (query.read === 'sheets' ? sheets : answer[i]));
  return { answers: answers as unknown as Answers<Qs>, stood };
}

function askQuery(asking: Asking, query: Query): () => unknown {
  switch (query.read) {
    case 'sheets':
      return () => null;
    case 'contents':
      return askContents(asking);
    case 'block':
      return query.widths ? askWide(asking, query.at) : askBlock(asking, query.at);
    case 'table':
      return askTable(asking, query.table);
    case 'name':
      return askName(asking, query.name);
  }
}

/** A block with the widths of its columns. */
function askWide(asking: Asking, at: Block): () => BlockSeen {
  const seen = askBlock(asking, at);
  if (asking.stood && !holds(asking.stood.sheets, at.sheet)) return seen;
  const sheet = asking.context.workbook.worksheets.getItemOrNullObject(at.sheet).load('name');
  const looks = Array.from({ length: at.columns }, (_, across) =>
    sheet.getRangeByIndexes(at.row, at.column + across, 1, 1).format.load('columnWidth'),
  );
  return () =>
    sheet.isNullObject ? seen() : { ...seen(), widths: looks.map((look) => charactersWide(look.columnWidth)) };
}

function askContents({ context, stood }: Asking): () => SheetContents[] {
  const sheets = (stood?.visibleSheets ?? []).map((name) => {
    const sheet = context.workbook.worksheets.getItem(name);
    return { name, used: sheet.getUsedRangeOrNullObject(true).load('address') };
  });
  const tables = (stood?.tables ?? []).map((name) => {
    const table = context.workbook.tables.getItem(name);
    return { name, range: table.getRange().load('address') };
  });
  return () => {
    const placed = tables.flatMap(({ name, range }) => {
      const at = blockOf(range.address);
      return at ? [{ name, at }] : [];
    });
    return sheets.map(({ name, used }) => {
      const at = used.isNullObject ? null : blockOf(used.address);
      const own = placed.filter((table) => sameName(table.at.sheet, name));
      return { name, used: at && fromCorner(name, at), tables: own };
    });
  };
}

function fromCorner(sheet: string, { row, column, rows, columns }: Block): Block {
  return { sheet, row: 0, column: 0, rows: row + rows, columns: column + columns };
}

function askName({ context, stood }: Asking, name: string): () => NameSeen {
  if (stood && !holds(stood.names, name)) return () => ({ name, at: null });
  const range = context.workbook.names.getItemOrNullObject(name).getRangeOrNullObject().load('address');
  return () => ({ name, at: range.isNullObject ? null : blockOf(range.address) });
}

function askTable(asking: Asking, name: string): () => TableSeen | null {
  if (asking.stood && !holds(asking.stood.tables, name)) return () => null;
  const table = asking.context.workbook.tables.getItemOrNullObject(name).load('name,showHeaders');
  const columns = table.columns.load('items/name');
  const sheet = table.worksheet.load('name');
  const protection = sheet.protection.load('protected');
  const filter = table.autoFilter.load('isDataFiltered');
  const body = table.getDataBodyRange().load('address');
  const bodyAt = (): Block | null => (table.isNullObject ? null : blockOf(body.address));
  const source = asking.cells(body, bodyAt);
  return () => {
    const at = bodyAt();
    if (!at) return null;
    if (!table.showHeaders) throw new PortError('unsupported', [table.name], 'The table does not show its header row.');
    const { values, formulas } = source.cells();
    const anyFormula = formulas.some((line) => line.some((formula) => formula !== null));
    return {
      name: table.name,
      at: { ...at, sheet: sheet.name, row: at.row - 1, rows: at.rows + 1 },
      headers: columns.items.map((column) => column.name),
      rows: values,
      ...(anyFormula ? { formulas } : {}),
      protected: protection.protected,
      filtered: filter.isDataFiltered,
    };
  };
}
