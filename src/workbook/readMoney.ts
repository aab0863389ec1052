/** From a shop's tables to what the core makes a quote from: rates, prices, taxes, terms, and what each club of a job is done to. */
import {
  decimalText,
  linesFromPlan,
  quoteIssues,
  RATE_USES,
  readAmount,
  ROUNDING_RULES,
  saidPercent,
  type AmountCell,
  type ClubKind,
  type ClubWork,
  type Discount,
  type Issue,
  type PricedItem,
  type PricedWay,
  type QuoteInput,
  type QuoteLine,
  type QuoteTerms,
  type Rate,
  type RateUnit,
  type SetPlan,
  type TaxRate,
} from '../core/index';
import { RATE_USE_WORDS, ROUNDED_AT_WORDS, ROUNDING_WORDS } from '../words/moneyChoices';
import { describedBy } from './described';
import { folded, lackingHeaders } from './headings';
import { discountsByJob, linesNamed, notOnQuote, withDiscounts, type ListedOff } from './lineDiscounts';
import { inOwnNames, ownLists, type OwnLists } from './ownNames';
import { rateUse } from './rateUses';
import { settingValues } from './readSettings';
import { readTable, type FieldValue, type Matrix, type Row } from './records';
import {
  columnOf,
  CLUBS,
  JOBS,
  RATES,
  SETTING_ROWS,
  SETTINGS,
  STOCK,
  TAXES,
  WEIGHTS,
  type SettingKey,
  type TableSchema,
} from './schema';
import { DISCOUNTS } from './tables/discounts';
import { TAKE_OFF_CODES } from './takeOffCodes';

/** A table with its header row, and the row of the sheet that holds it, from 1. */
export interface TableIn {
  readonly matrix: Matrix | null | undefined;
  readonly headerRow?: number | undefined;
}

/** Tables that a price is made from; what is left out or lacks a column says nothing. */
export interface MoneyTables {
  readonly clubs?: TableIn | undefined;
  readonly stock?: TableIn | undefined;
  readonly weights?: TableIn | undefined;
  readonly rates?: TableIn | undefined;
  readonly taxes?: TableIn | undefined;
  readonly discounts?: TableIn | undefined;
  readonly jobs?: TableIn | undefined;
  readonly settings?: TableIn | undefined;
}

/** Something read, and what is wrong with its table, named by sheet and row. */
export interface Told<T> {
  readonly value: T;
  readonly issues: readonly Issue[];
}

function rowsOf(schema: TableSchema, table: TableIn | undefined): Told<readonly Row[]> {
  if (!table?.matrix) return { value: [], issues: [] };
  const read = readTable(schema, table.matrix, table.headerRow);
  return read.ok
    ? { value: read.value.rows, issues: read.value.rows.flatMap(({ issues }) => issues) }
    : { value: [], issues: [read.issue] };
}

const text = ({ values }: Row, key: string): string | undefined => {
  const value = values.get(key);
  return typeof value === 'string' && value !== '' ? value : undefined;
};

const number = ({ values }: Row, key: string): number | undefined => {
  const value = values.get(key);
  return typeof value === 'number' ? value : undefined;
};

const yes = ({ values }: Row, key: string): boolean => values.get(key) === true;

/** Rates of work, as Rates lists them. In a table of before the column *Charged for*, the words of each work tell what it is for. */
export function readRates(table: TableIn | undefined): Told<readonly Rate[]> {
  const { value: rows, issues } = rowsOf(RATES, table);
  const byWords = lackingHeaders(table?.matrix?.[0] ?? [], RATES, false).includes(columnOf(RATES, 'use').header);
  const value = rows.flatMap((row): Rate[] => {
    const work = text(row, 'work');
    if (work === undefined) return [];
    const unit = text(row, 'unit')?.toLowerCase() as RateUnit | undefined;
    const said = RATE_USES.find((each) => RATE_USE_WORDS[each] === text(row, 'use'));
    const use = byWords ? rateUse(work, unit ?? 'club') : said;
    return [
      {
        work,
        use,
        per: unit ?? (use === 'everyJob' ? 'job' : 'club'),
        kind: text(row, 'kind')?.toLowerCase() as ClubKind | undefined,
        price: number(row, 'price'),
        cost: number(row, 'cost'),
        minutes: number(row, 'minutes'),
        tax: text(row, 'tax'),
        includedLayers: number(row, 'includedLayers'),
      },
    ];
  });
  return { value, issues };
}

/** A grip as a quote prices it, and what is wrong with its money in its row of Stock. */
export interface StockPrice extends PricedItem {
  readonly issues: readonly Issue[];
}

/** Prices of grips; only what is wrong with money is told here, sizes and masses are the plan's. */
export function readPrices(table: TableIn | undefined): Told<readonly StockPrice[]> {
  const { value: rows, issues } = rowsOf(STOCK, table);
  const value = rows.flatMap((row): StockPrice[] => {
    const item = text(row, 'item');
    if (item === undefined) return [];
    const wrong = row.issues.filter(({ field }) => /, (Price|Cost|Tax)$/.test(field));
    return [
      {
        item,
        description: describedBy((key) => text(row, key)),
        price: number(row, 'price'),
        cost: number(row, 'cost'),
        tax: text(row, 'tax'),
        issues: wrong,
      },
    ];
  });
  // A row of a grip that a quote does not sell keeps nobody from quoting.
  return { value, issues: rows.length > 0 ? [] : issues };
}

/** Prices of the ways of putting weight on. */
export function readWayPrices(table: TableIn | undefined): Told<readonly PricedWay[]> {
  const { value: rows, issues } = rowsOf(WEIGHTS, table);
  const value = rows.flatMap((row): PricedWay[] => {
    const name = text(row, 'way');
    return name === undefined
      ? []
      : [
          {
            name,
            price: number(row, 'price'),
            cost: number(row, 'cost'),
            minutes: number(row, 'minutes'),
            tax: text(row, 'tax'),
          },
        ];
  });
  return { value, issues };
}

/** What is done to single clubs that a plan does not say, by their row; of what comes off, Settings says the usual. */
export function readWork(
  table: TableIn | undefined,
  settings: ReadonlyMap<SettingKey, FieldValue> = new Map<SettingKey, FieldValue>(),
): ReadonlyMap<number, ClubWork> {
  const usual = String(settings.get('takeOff') ?? '');
  const { value: rows } = rowsOf(CLUBS, table);
  return new Map(
    rows.map((row) => [
      row.row,
      {
        ownGrip: yes(row, 'ownGrip'),
        takeOff: TAKE_OFF_CODES[text(row, 'takeOff') ?? usual] ?? 'cutOff',
        lengthChanged: (number(row, 'lengthChange') ?? 0) !== 0,
      },
    ]),
  );
}

/** What is taken off one line alone. */
export interface LineOff {
  /** The line, by its description. */
  readonly description: string;
  readonly percent: AmountCell;
}

/** What a person chose for this quote in place of what the sheet says; undefined: as the sheet says. */
export interface TermsChosen {
  /** Date serial. */
  readonly issued: number;
  readonly discountPercent?: AmountCell;
  readonly gripDiscountPercent?: AmountCell;
  readonly depositPercent?: AmountCell;
  readonly validDays?: AmountCell;
  readonly lineOff?: LineOff | undefined;
}

/** Everything that prices are made from, read once for any number of quotes. */
export interface MoneyRead {
  readonly rates: Told<readonly Rate[]>;
  readonly stock: Told<readonly StockPrice[]>;
  readonly ways: Told<readonly PricedWay[]>;
  readonly work: ReadonlyMap<number, ClubWork>;
  readonly taxes: Told<readonly TaxRate[]>;
  readonly settings: Told<ReadonlyMap<SettingKey, FieldValue>>;
  /** Rows of Jobs, by the job's name as it is compared. */
  readonly jobs: ReadonlyMap<string, Row>;
  /** What is taken off single lines, by the same; with it what keeps Discounts from being read at all. */
  readonly discounts: Told<ReadonlyMap<string, readonly ListedOff[]>>;
  /** Lists of the shop's own that stand for some of these tables. */
  readonly own: OwnLists;
}

/** Reads the tables that prices are made from. */
export function readMoney(tables: MoneyTables): MoneyRead {
  const jobs = rowsOf(JOBS, tables.jobs).value;
  const settings = readMoneySettings(tables.settings);
  return {
    rates: readRates(tables.rates),
    stock: readPrices(tables.stock),
    ways: readWayPrices(tables.weights),
    work: readWork(tables.clubs, settings.value),
    taxes: readTaxes(tables.taxes),
    settings,
    // the first of a name counts
    discounts: readDiscounts(tables.discounts),
    jobs: new Map([...jobs].reverse().map((row) => [folded(text(row, 'job')), row])),
    own: ownLists({
      Rates: tables.rates?.matrix?.[0],
      Stock: tables.stock?.matrix?.[0],
      Weights: tables.weights?.matrix?.[0],
      Clubs: tables.clubs?.matrix?.[0],
      Jobs: tables.jobs?.matrix?.[0],
      Taxes: tables.taxes?.matrix?.[0],
    }),
  };
}

/** Only a table that cannot be read stands in the way of all; what is wrong in a row is its job's. */
function readDiscounts(table: TableIn | undefined): MoneyRead['discounts'] {
  const { value: rows, issues } = rowsOf(DISCOUNTS, table);
  return { value: discountsByJob(rows), issues: rows.length > 0 ? [] : issues };
}

function readTaxes(table: TableIn | undefined): Told<readonly TaxRate[]> {
  const { value: rows, issues } = rowsOf(TAXES, table);
  const value = rows.flatMap((each): TaxRate[] => {
    const [name, percent] = [text(each, 'tax'), number(each, 'percent')];
    return name === undefined || percent === undefined ? [] : [{ name, percent: saidPercent(percent) }];
  });
  return { value, issues };
}

/** Settings that a quote goes by: what is wrong with another one keeps nobody from quoting. */
const MONEY_SETTINGS: readonly SettingKey[] = [
  'currency',
  'pricesAre',
  'rounding',
  'roundedAt',
  'minimumCharge',
  'deposit',
  'validDays',
];

function readMoneySettings(table: TableIn | undefined): Told<ReadonlyMap<SettingKey, FieldValue>> {
  const read = settingValues(table?.matrix, table?.headerRow);
  if (!read.ok) return { value: new Map(), issues: [read.issue] };
  const names = MONEY_SETTINGS.map((key) => SETTING_ROWS.find((row) => row.key === key)?.name);
  const issues = read.value.problems.filter(({ field, got }) =>
    names.some((name) => name !== undefined && (field.endsWith(`, ${name}`) || folded(got) === folded(name))),
  );
  return { value: read.value.values, issues };
}

/** How the shop sells, and what a job has of its own. */
export function readTerms(read: MoneyRead, job: string | null, chosen: TermsChosen): Told<QuoteTerms> {
  const { value: values } = read.settings;
  const row = job === null ? undefined : read.jobs.get(folded(job));
  const settingText = (key: SettingKey): string => String(values.get(key) ?? '');
  const ofJob = (key: string): number | undefined => row && number(row, key);
  const days = readDays(chosen.validDays, settingNumber(values, 'validDays') ?? USUAL_DAYS);
  const issues = [
    ...read.settings.issues,
    ...read.taxes.issues,
    ...moneyIssues(row),
    ...twoDiscounts(job, 'Discount', ofJob('discount'), ofJob('discountAmount')),
    ...twoDiscounts(job, 'Grip discount', ofJob('gripDiscount'), ofJob('gripDiscountAmount')),
    ...currencyIssue(settingText('currency')),
    ...days.issues,
  ];
  return {
    value: {
      currency: settingText('currency'),
      prices: settingText('pricesAre') === 'With tax' ? 'withTax' : 'beforeTax',
      taxes: read.taxes.value,
      rounding: {
        rule: ROUNDING_RULES.find((rule) => ROUNDING_WORDS[rule] === settingText('rounding')) ?? 'halfUp',
        at: settingText('roundedAt') === ROUNDED_AT_WORDS.quote ? 'quote' : 'line',
      },
      setDiscount: discountOf(chosen.gripDiscountPercent, row, 'gripDiscount', 'gripDiscountAmount'),
      jobDiscount: discountOf(chosen.discountPercent, row, 'discount', 'discountAmount'),
      deposit: percentOf(chosen.depositPercent ?? said(ofJob('deposit') ?? settingNumber(values, 'deposit'))),
      minimum: settingNumber(values, 'minimumCharge'),
      issued: chosen.issued,
      validDays: days.value,
    },
    issues,
  };
}

/** How long a quote holds where Settings does not say (*practice*). */
const USUAL_DAYS = 30;

function readDays(chosen: AmountCell, usual: number): Told<number | undefined> {
  if (chosen === undefined || chosen === null || chosen === '') return { value: usual, issues: [] };
  const read = readAmount(chosen, 'Days a quote holds');
  return read.ok
    ? { value: Number(decimalText(read.value)), issues: [] }
    : { value: undefined, issues: [{ ...read.issue, expected: 'a whole number of days' }] };
}

function settingNumber(values: ReadonlyMap<SettingKey, FieldValue>, key: SettingKey): number | undefined {
  const value = values.get(key);
  return typeof value === 'number' ? value : undefined;
}

/** What is wrong with a job's money; a hand that was mismeasured is another screen's. */
function moneyIssues(row: Row | undefined): readonly Issue[] {
  const headers = ['discount', 'discountAmount', 'gripDiscount', 'gripDiscountAmount', 'deposit'].map(
    (key) => columnOf(JOBS, key).header,
  );
  return (row?.issues ?? []).filter(({ field }) => headers.some((header) => field.endsWith(`, ${header}`)));
}

/** What is chosen for this quote, else what Jobs says: a per cent, or an amount where that is blank or 0. */
function discountOf(
  chosen: AmountCell,
  row: Row | undefined,
  percentKey: 'discount' | 'gripDiscount',
  amountKey: 'discountAmount' | 'gripDiscountAmount',
): Discount | undefined {
  if (chosen !== undefined || !row) return percentOf(chosen);
  const percent = number(row, percentKey);
  const amount = number(row, amountKey);
  const field = (key: string): string => `${row.where}, ${columnOf(JOBS, key).header}`;
  if (percent !== undefined && percent !== 0) return { percent: saidPercent(percent), field: field(percentKey) };
  return amount === undefined ? undefined : { amount, field: field(amountKey) };
}

/** A job has one discount, and so have its grips: which of two is meant is for a person to say. */
function twoDiscounts(job: string | null, what: string, percent = 0, amount = 0): Issue[] {
  if (percent <= 0 || amount <= 0) return [];
  const expected = `${percent} % and an amount of ${amount} are both there, and only one of them can count; clear one of the two`;
  return [{ code: 'contradiction', field: `${what} of job ${job ?? ''} in Jobs`, expected }];
}

function currencyIssue(currency: string): Issue[] {
  if (currency.trim() !== '') return [];
  return [
    {
      code: 'blank',
      field: `Currency in ${SETTINGS.name}`,
      expected: 'the code of your currency in three letters, such as EUR, in a row Currency',
    },
  ];
}

/** A per cent of the sheet, which was asked about where it had to be. */
function said(percent: number | undefined): AmountCell {
  return percent === undefined ? undefined : saidPercent(percent);
}

function percentOf(percent: AmountCell): Discount | undefined {
  return percent === undefined || percent === null || percent === '' ? undefined : { percent };
}

/** What a quote is made from; without issues it can be made. */
export interface QuoteReady {
  readonly input: QuoteInput;
  readonly issues: readonly Issue[];
  /** Lines that Discounts takes something off and this way of doing the job has not. */
  readonly notTakenOff?: readonly string[];
}

/**
 * The lines of a planned set under the shop's terms, and everything that has to be mended first.
 *
 * @param isOption the job as it might be done: another grip has other lines, and what is taken off one that is not there is told apart
 */
export function quoteInput(
  read: MoneyRead,
  plan: SetPlan,
  job: string | null,
  chosen: TermsChosen,
  isOption = false,
): QuoteReady {
  const terms = readTerms(read, job, chosen);
  const planned = linesFromPlan(plan, read.rates.value, read.stock.value, read.ways.value, { work: read.work });
  const less = lessListed(read, planned.lines, job);
  const lost = less.unused.map((each) => notOnQuote(each, planned.lines, job ?? ''));
  const told = [
    ...terms.issues,
    ...shopIssues(read),
    ...wrongItems(read, planned.lines),
    ...planned.issues,
    ...less.issues,
    ...(isOption ? [] : lost),
  ];
  const ready = readyOf({ ...terms.value, lines: lessOff(less.lines, chosen.lineOff) }, told);
  const issues = ready.issues.map((issue) => inOwnNames(issue, read.own));
  return { ...ready, issues, notTakenOff: isOption ? less.unused.map(({ line }) => line) : [] };
}

function lessListed(
  { discounts }: MoneyRead,
  lines: readonly QuoteLine[],
  job: string | null,
): ReturnType<typeof withDiscounts> {
  const less = withDiscounts(lines, discounts.value.get(folded(job)) ?? []);
  return { ...less, issues: [...discounts.issues, ...less.issues] };
}

/** What is wrong with the shop's own price lists. */
export function shopIssues({ rates, ways, stock }: MoneyRead): readonly Issue[] {
  return [...rates.issues, ...ways.issues, ...stock.issues];
}

/** What is wrong in Stock with the money of items that are sold here. */
export function wrongItems({ stock }: MoneyRead, lines: readonly QuoteLine[]): readonly Issue[] {
  const sold = new Set(lines.map(({ item }) => item?.toLowerCase()));
  return stock.value.filter(({ item }) => sold.has(item.toLowerCase())).flatMap(({ issues }) => issues);
}

/** Lines with what is taken off one of them. */
export function lessOff(lines: readonly QuoteLine[], off: LineOff | undefined): readonly QuoteLine[] {
  const discount = off && percentOf(off.percent);
  const [named] = off ? linesNamed(lines, off.description) : [];
  return discount ? lines.map((line) => (line === named ? { ...line, discount } : line)) : lines;
}

/** Everything that has to be mended, each said once. */
export function readyOf(input: QuoteInput, told: readonly Issue[]): QuoteReady {
  const issues = [...told, ...unsaid(input, told)];
  return { input, issues: [...new Map(issues.map((issue) => [JSON.stringify(issue), issue])).values()] };
}

/** What the core finds besides: a price or a currency that was named already is not named again. */
function unsaid(input: QuoteInput, told: readonly Issue[]): Issue[] {
  return quoteIssues(input).filter(({ code, field }) => {
    if (field === 'Currency' && code === 'blank') return false;
    return told.length === 0 || !/^Line \d+ .*, price$/.test(field);
  });
}
