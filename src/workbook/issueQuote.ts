/** Issuing a quote: its sheet and its row of the register, in one write; and declaring one void. */
import { moneyNumber, type Money, type Quote } from '../core/index';
import type { Choices } from './choices';
import { columnLook } from './columnLook';
import { columnsAt, lackingHeaders } from './headings';
import { jobFacts } from './jobFacts';
import type { InTheWay, NotDone } from './outcomes';
import { politely } from './polite';
import type { Block, BlockSeen, Change, Query, TableSeen, WorkbookPort } from './port';
import type { IssueDone, QuoteId, VoidDone } from './quoteDone';
import { nextNumber, readRegister, registerRow, type NextNumber } from './quoteRegister';
import { addressLines, moneyTables, quoteCounter, quoteJob, quoteTermsText, type CounterAsked } from './quoteScope';
import { dressQuote, quotePage, type QuotePage } from './quoteSheet';
import { readMoney, type MoneyRead, type TermsChosen } from './readMoney';
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
 * over, and a row of the register, all in one write that *Undo* neither takes back nor forgets anything for. The register
 * is read right before, and again after.
 */
export async function issueQuote(port: WorkbookPort, request: IssueRequest): Promise<IssueDone> {
  const [end] = await issueQuotes(port, [request]);
  return end as IssueDone;
}

/**
 * Issues quotes, all of them in one write; one that cannot be made is left out. However many there are, the workbook is read three
 * times and written once.
 *
 * @param goOn asked before each quote is worked out, with how many are; false: nothing is issued
 * @returns how each ended, in the order asked for; null where it was stopped
 */
export async function issueQuotes(
  port: WorkbookPort,
  requests: readonly IssueRequest[],
  goOn: (worked: number) => Promise<boolean> = () => Promise.resolve(true),
): Promise<readonly (IssueDone | null)[]> {
  const all = (end: IssueDone | null) => requests.map(() => end);
  const ends = await politely(async () => {
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
      const prepared = await prepare(port, requests, goOn);
      if (!prepared) return all(null);
      if ('done' in prepared) return all(prepared);
      const drafts = prepared.made.filter((each): each is Draft => !('done' in each));
      if (drafts.length === 0) return prepared.made as readonly Refused[];
      const look = await lookAgain(port, prepared.register, drafts);
      if (!look) continue;
      await write(port, drafts, look);
      const verified = await verify(port, drafts);
      return prepared.made.map((each): IssueDone => ('done' in each ? each : (verified.get(each) as IssueDone)));
    }
    return all({ done: false, reason: 'registerBusy' });
  });
  return 'done' in ends ? all(ends) : ends;
}

/** Everything that is to be written of one quote, from one look at the workbook. */
interface Draft {
  readonly next: NextNumber & { readonly row: number };
  readonly job: string;
  readonly customer: string;
  readonly quote: Quote;
  readonly page: QuotePage;
  readonly at: Block;
  readonly cells: ReturnType<typeof registerRow>;
}

type Refused = Extract<IssueDone, { done: false }>;

interface Prepared {
  readonly register: TableSeen;
  /** For each request its draft, or why there is none. */
  readonly made: readonly (Draft | Refused)[];
}

async function prepare(
  port: WorkbookPort,
  requests: readonly IssueRequest[],
  goOn: (worked: number) => Promise<boolean>,
): Promise<Prepared | Refused | null> {
  const [sheets, ...answers] = await port.read([{ read: 'sheets' }, ...tableQueries()]);
  const tables = shopTables(answers);
  const register = tables.Quotes;
  if (!register) return { done: false, reason: 'tableMissing', table: QUOTES.name };
  const read = readMoney(moneyTables(tables));
  const made: (Draft | Refused)[] = [];
  const taken = sheets.map(({ name }) => name);
  // The register as it will be with the quotes before: each gets the number after theirs.
  let entered = register;
  for (const request of requests) {
    if (!(await goOn(made.length))) return null;
    const draft = draftOf({ tables, read, register: entered, taken }, request);
    made.push(draft);
    if ('done' in draft) continue;
    taken.push(draft.at.sheet);
    entered = withRow(entered, draft.next.row, draft.cells);
  }
  return { register, made };
}

interface Making {
  readonly tables: ShopTables;
  readonly read: MoneyRead;
  readonly register: TableSeen;
  /** Names of sheets. */
  readonly taken: readonly string[];
}

function draftOf({ tables, read, register, taken }: Making, request: IssueRequest): Draft | Refused {
  const job = 'job' in request.what ? request.what.job : '';
  const found = nextNumber(register, job, numberOnSheets(taken));
  if (!found.ok) return notRead(register, found.issue);
  const next = { ...found.value, row: found.value.row ?? register.rows.length + 1 };
  const quote = quoteNow(tables, read, request);
  if ('done' in quote) return quote;
  const facts = jobFacts(tables, job === '' ? null : job);
  const customer = 'job' in request.what ? facts.customer : request.what.customer.trim();
  const option = 'job' in request.what ? (request.what.option ?? '') : '';
  const page = quotePage(
    { ...facts, customer, option, ...next, address: addressLines(read), terms: quoteTermsText(read) },
    quote,
  );
  const { number, revision } = next;
  const sheet = pageSheetName('Quote', revision > 1 ? `${number} rev ${revision}` : String(number), taken);
  const at = { sheet, row: 0, column: 0, rows: page.cells.length, columns: page.cells[0]?.length ?? 1 };
  const draft = { next, job, customer, quote, page, at };
  return { ...draft, cells: registerCells(register, draft) };
}

/** The highest number that a sheet of a quote bears: it was given, whatever became of its row in the register. */
function numberOnSheets(names: readonly string[]): number {
  return names.reduce((most, name) => Math.max(most, Number(/^Quote (\d{1,8})\b/i.exec(name)?.[1] ?? 0)), 0);
}

/** A table with one more row filled. */
function withRow(table: TableSeen, row: number, cells: Draft['cells']): TableSeen {
  const rows = [...table.rows];
  while (rows.length < row) rows.push(table.headers.map(() => null));
  rows[row - 1] = table.headers.map((_, at) => cells[at] ?? null);
  return { ...table, rows };
}

function quoteNow(tables: ShopTables, read: MoneyRead, { what, terms, shown }: IssueRequest): Quote | Refused {
  const { quote, issues } =
    'job' in what ? quoteJob(tables, { ...what, terms }, read) : quoteCounter(tables, what.counter, terms, read);
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
  readonly pages: readonly BlockSeen[];
  readonly below: BlockSeen;
}

/** The places of the pages, which must not exist yet, and the register once more; null where anything is not as it was. */
async function lookAgain(port: WorkbookPort, before: TableSeen, drafts: readonly Draft[]): Promise<Look | null> {
  const rows = Math.max(ROWS_MORE, drafts.length);
  const below = { ...before.at, row: before.at.row + before.at.rows, rows };
  const [register, under, ...pages] = (await port.read<readonly Query[]>([
    { read: 'table', table: QUOTES.name },
    { read: 'block', at: below },
    ...drafts.map(({ at }) => ({ read: 'block', at }) as const),
  ])) as readonly [TableSeen | null, BlockSeen, ...BlockSeen[]];
  if (!register || pages.some(({ sheetExists }) => sheetExists)) return null;
  const isSame = JSON.stringify([register.at, register.rows]) === JSON.stringify([before.at, before.rows]);
  return isSame ? { register, pages, below: under } : null;
}

async function write(port: WorkbookPort, drafts: readonly Draft[], { register, pages, below }: Look): Promise<void> {
  const isFull = drafts.some(({ next }) => next.row > register.rows.length);
  const longer: Change[] = isFull
    ? [{ do: 'lengthen', table: register.name, rows: below.at.rows }, ...dressRows(register, below.at)]
    : [];
  const [first] = drafts;
  await port.apply(
    [
      ...drafts.flatMap(({ at, page, quote }): Change[] => [
        { do: 'sheet', name: at.sheet },
        ...dressQuote(at, page, quote),
        { do: 'write', at, cells: page.cells },
      ]),
      ...longer,
      ...drafts.map(({ next, cells }): Change => {
        const at = { ...register.at, row: register.at.row + next.row, rows: 1 };
        return { do: 'write', at, cells: [cells] };
      }),
      ...(first && drafts.length === 1 ? [{ do: 'show', at: { ...first.at, rows: 1, columns: 1 } } as const] : []),
    ],
    [register, ...pages, ...(isFull ? [below] : [])],
    { label: first && drafts.length === 1 ? `Quote ${quoteIdText(first.next)}` : `${drafts.length} quotes` },
  );
}

/** Number formats of rows that a register is made longer by. */
function dressRows({ headers }: TableSeen, at: Block): Change[] {
  const place = columnsAt(QUOTES, headers);
  return QUOTES.columns.flatMap((column): Change[] => {
    const format = columnLook(column);
    if (!format || place(column.key) < 0) return [];
    return [{ do: 'format', at: { ...at, column: at.column + place(column.key), columns: 1 }, format }];
  });
}

function registerCells(
  register: TableSeen,
  { next, job, customer, quote, at }: Omit<Draft, 'cells'>,
): ReturnType<typeof registerRow> {
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

/** Reads back what was written: each number must stand in the register once, and on its sheet. */
async function verify(port: WorkbookPort, drafts: readonly Draft[]): Promise<ReadonlyMap<Draft, IssueDone>> {
  const [register, ...pages] = (await port.read<readonly Query[]>([
    { read: 'table', table: QUOTES.name },
    ...drafts.map(({ at }) => ({ read: 'block', at }) as const),
  ])) as readonly [TableSeen | null, ...BlockSeen[]];
  const read = register && readRegister(register);
  return new Map(drafts.map((draft, at) => [draft, verified(draft, read, pages[at])]));
}

function verified(
  { next, quote, page, at }: Draft,
  read: ReturnType<typeof readRegister> | null,
  seen: BlockSeen | undefined,
): IssueDone {
  const id: QuoteId = { number: next.number, revision: next.revision };
  if (read && !read.ok && read.issue.code === 'duplicate') {
    return { done: false, reason: 'usedTwice', ...id, sheet: at.sheet };
  }
  const rows = read?.ok ? read.value.filter((each) => each.number === id.number && each.revision === id.revision) : [];
  const isThere = rows.some(({ sheet, isVoid }) => sheet === at.sheet && !isVoid);
  const total = seen?.values[page.totalRow]?.at(-1);
  if (!isThere || seen?.values[page.title + 1]?.at(-1) !== id.number || total !== moneyNumber(quote.total)) {
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
