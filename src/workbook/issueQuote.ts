/** Issuing a quote: its sheet and its row of the register, in one write; and declaring one void. */
import { moneyNumber, type Money, type Quote } from '../core/index';
import type { Choices } from './choices';
import { columnsAt, lackingHeaders } from './headings';
import { jobFacts } from './jobFacts';
import type { InTheWay, NotDone } from './outcomes';
import { politely } from './polite';
import type { Block, BlockSeen, Change, TableSeen, WorkbookPort } from './port';
import type { IssueDone, QuoteId, VoidDone } from './quoteDone';
import { nextNumber, readRegister, registerRow, type NextNumber } from './quoteRegister';
import { addressLines, moneyTables, quoteCounter, quoteJob, quoteTermsText, type CounterAsked } from './quoteScope';
import { dressQuote, quotePage, type QuotePage } from './quoteSheet';
import { readMoney, type TermsChosen } from './readMoney';
import { QUOTES } from './schema';
import { pageSheetName } from './sheetName';
import { shopTables, tableQueries, type ShopTables } from './shop';
import { quoteIdText } from '../words/quoteHead';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';

/** What is quoted: a job, perhaps as it will be with choices that are not filled yet; or clubs at the counter. */
export type QuoteWhat =
  | {
      readonly job: string;
      readonly choices?: Choices | undefined;
      /** Name of the option, where there were several. */
      readonly option?: string | undefined;
    }
  | { readonly counter: CounterAsked; readonly customer: string };

export interface IssueRequest {
  readonly what: QuoteWhat;
  readonly terms: TermsChosen;
  /** The total that the person saw; nothing is issued where the tables give another by now. */
  readonly shown: Money | null;
}

/** How often the register is looked at again when somebody else wrote into it meanwhile. */
const MOST_TRIES = 3;
/** Blank rows that a full register gets at once. */
const ROWS_MORE = 20;

/**
 * Issues a quote: the next number (or, for a job that has one, its next revision), a sheet of its own that is never written
 * over, and a row of the register, all in one write that *Undo last fill* neither takes back nor forgets anything for. The register
 * is read right before, and again after.
 */
export async function issueQuote(port: WorkbookPort, request: IssueRequest): Promise<IssueDone> {
  return politely(async (): Promise<IssueDone> => {
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
      const draft = await prepare(port, request);
      if ('done' in draft) return draft;
      const look = await lookAgain(port, draft);
      if (!look) continue;
      await write(port, draft, look);
      return verify(port, draft);
    }
    return { done: false, reason: 'registerBusy' };
  });
}

/** Everything that is to be written, from one look at the workbook. */
interface Draft {
  readonly tables: ShopTables;
  readonly register: TableSeen;
  readonly next: NextNumber;
  readonly job: string;
  readonly customer: string;
  readonly quote: Quote;
  readonly page: QuotePage;
  readonly at: Block;
}

type Refused = Extract<IssueDone, { done: false }>;

async function prepare(port: WorkbookPort, request: IssueRequest): Promise<Draft | Refused> {
  const [sheets, ...answers] = await port.read([{ read: 'sheets' }, ...tableQueries()]);
  const tables = shopTables(answers);
  const register = tables.Quotes;
  if (!register) return { done: false, reason: 'tableMissing', table: QUOTES.name };
  const job = 'job' in request.what ? request.what.job : '';
  const next = nextNumber(register, job);
  if (!next.ok) return notRead(register, next.issue);
  const quote = quoteNow(tables, request);
  if ('done' in quote) return quote;
  const read = readMoney(moneyTables(tables));
  const facts = jobFacts(tables, job === '' ? null : job);
  const customer = 'job' in request.what ? facts.customer : request.what.customer.trim();
  const option = 'job' in request.what ? (request.what.option ?? '') : '';
  const page = quotePage(
    { ...facts, customer, option, ...next.value, address: addressLines(read), terms: quoteTermsText(read) },
    quote,
  );
  const { number, revision } = next.value;
  const sheet = pageSheetName(
    'Quote',
    revision > 1 ? `${number} rev ${revision}` : String(number),
    sheets.map(({ name }) => name),
  );
  const at = { sheet, row: 0, column: 0, rows: page.cells.length, columns: page.cells[0]?.length ?? 1 };
  return { tables, register, next: next.value, job, customer, quote, page, at };
}

function quoteNow(tables: ShopTables, { what, terms, shown }: IssueRequest): Quote | Refused {
  const { quote, issues } =
    'job' in what ? quoteJob(tables, { ...what, terms }) : quoteCounter(tables, what.counter, terms);
  if (!quote) return { done: false, reason: 'notQuoted', issues };
  const now = quote.total;
  if (shown && (shown.minor !== now.minor || shown.currency.code !== now.currency.code)) {
    return { done: false, reason: 'totalChanged', shown, now };
  }
  return quote;
}

function notRead(
  register: TableSeen,
  issue: Extract<IssueDone, { reason: 'registerUnread' }>['issue'],
): Extract<NotDone, { reason: 'columnMissing' }> | Extract<IssueDone, { reason: 'registerUnread' }> {
  const headers = lackingHeaders(register.headers, QUOTES, false);
  return headers.length > 0
    ? { done: false, reason: 'columnMissing', table: QUOTES.name, headers }
    : { done: false, reason: 'registerUnread', issue };
}

interface Look {
  readonly register: TableSeen;
  readonly page: BlockSeen;
  readonly below: BlockSeen;
  readonly row: number | null;
}

/** The place of the page, which must hold nothing, and the register once more; null where the number is no longer the next. */
async function lookAgain(port: WorkbookPort, { register: before, next, job, at }: Draft): Promise<Look | null> {
  const below = { ...before.at, row: before.at.row + before.at.rows, rows: ROWS_MORE };
  const [register, page, rows] = await port.read([
    { read: 'table', table: QUOTES.name },
    { read: 'block', at },
    { read: 'block', at: below },
  ]);
  if (!register || page.sheetExists) return null;
  const again = nextNumber(register, job);
  if (!again.ok || again.value.number !== next.number || again.value.revision !== next.revision) return null;
  // A row that was added meanwhile moves the end of the table.
  return register.at.rows === before.at.rows ? { register, page, below: rows, row: again.value.row } : null;
}

async function write(port: WorkbookPort, draft: Draft, look: Look): Promise<void> {
  const { next, quote, page, at } = draft;
  const { register, below } = look;
  const row = look.row ?? register.at.rows;
  const rowAt: Block = { ...register.at, row: register.at.row + row, rows: 1 };
  const longer: Change[] =
    look.row === null
      ? [{ do: 'lengthen', table: register.name, rows: ROWS_MORE }, ...dressRows(register, below.at)]
      : [];
  await port.apply(
    [
      { do: 'sheet', name: at.sheet },
      ...dressQuote(at, page, quote),
      { do: 'write', at, cells: page.cells },
      ...longer,
      { do: 'write', at: rowAt, cells: [registerCells(register, draft)] },
      { do: 'show', at: { ...at, rows: 1, columns: 1 } },
    ],
    [register, look.page, ...(look.row === null ? [below] : [])],
    { label: `Quote ${quoteIdText(next)}` },
  );
}

/** Number formats of rows that a register is made longer by. */
function dressRows({ headers }: TableSeen, at: Block): Change[] {
  const place = columnsAt(QUOTES, headers);
  return QUOTES.columns.flatMap((column): Change[] => {
    if (!('format' in column) || place(column.key) < 0) return [];
    const where = { ...at, column: at.column + place(column.key), columns: 1 };
    return [{ do: 'format', at: where, format: { number: column.format } }];
  });
}

function registerCells(register: TableSeen, { next, job, customer, quote, at }: Draft): ReturnType<typeof registerRow> {
  return registerRow(register, {
    number: next.number,
    revision: next.revision,
    job: job === '' ? null : job,
    customer: customer === '' ? null : customer,
    issued: quote.issued ?? null,
    validUntil: quote.validUntil ?? null,
    total: moneyNumber(quote.total),
    currency: quote.currency.code,
    status: 'Issued',
    sheet: at.sheet,
  });
}

/** Reads back what was written: the number must stand in the register once, and on its sheet. */
async function verify(port: WorkbookPort, { next, quote, page, at }: Draft): Promise<IssueDone> {
  const id: QuoteId = { number: next.number, revision: next.revision };
  const [register, seen] = await port.read([
    { read: 'table', table: QUOTES.name },
    { read: 'block', at },
  ]);
  const read = register && readRegister(register);
  if (read && !read.ok && read.issue.code === 'duplicate') {
    return { done: false, reason: 'usedTwice', ...id, sheet: at.sheet };
  }
  const rows = read?.ok ? read.value.filter((each) => each.number === id.number && each.revision === id.revision) : [];
  const isThere = rows.some(({ sheet, isVoid }) => sheet === at.sheet && !isVoid);
  const total = seen.values[page.totalRow]?.at(-1);
  if (!isThere || seen.values[page.facts]?.[1] !== id.number || total !== moneyNumber(quote.total)) {
    return { done: false, reason: 'notVerified', ...id, sheet: at.sheet };
  }
  return { done: true, ...id, sheet: at.sheet, total: quote.total };
}

/** Declares a quote void: its row keeps everything but its status, and its number is not given again. */
export async function voidQuote(port: WorkbookPort, id: QuoteId, agreed: InTheWay | null = null): Promise<VoidDone> {
  return politely(async (): Promise<VoidDone> => {
    const [register] = await port.read([{ read: 'table', table: QUOTES.name }]);
    if (!register) return { done: false, reason: 'tableMissing', table: QUOTES.name };
    const read = readRegister(register);
    if (!read.ok) return notRead(register, read.issue);
    const { number, revision } = id;
    const found = read.value.find((each) => each.number === number && each.revision === revision);
    if (!found) return { done: false, reason: 'notFound', number, revision };
    if (found.isVoid) return { done: false, reason: 'voidAlready', number, revision };
    const at = columnsAt(QUOTES, register.headers);
    const cells = changedCells(register, [{ row: found.row, column: at('status'), value: 'Void' }]);
    const question = askFirst(null, formulaCells(register, cells), agreed);
    if (question) return question;
    await port.apply(writeCells(register, cells, [at('number'), at('revision')]), [register], {
      label: `Quote ${quoteIdText(id)} void`,
    });
    return { done: true, number, revision };
  });
}
