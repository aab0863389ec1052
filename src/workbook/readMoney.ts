/** From a shop's tables to what the core makes a quote from: rates, prices, taxes, terms, and what each club of a job is done to. */
import {
  linesFromPlan,
  quoteIssues,
  RATE_USES,
  ROUNDING_RULES,
  type ClubKind,
  type ClubWork,
  type Discount,
  type Issue,
  type PricedItem,
  type PricedWay,
  type QuoteInput,
  type QuoteTerms,
  type Rate,
  type RateUnit,
  type SetPlan,
  type TaxRate,
} from '../core/index';
import { RATE_USE_WORDS, ROUNDED_AT_WORDS, ROUNDING_WORDS } from '../words/money';
import { folded, lackingHeaders } from './headings';
import { rateUse } from './rateUses';
import { settingValues } from './readSettings';
import { readTable, type FieldValue, type Matrix, type Row } from './records';
import {
  columnOf,
  CLUBS,
  JOBS,
  RATES,
  SETTINGS,
  STOCK,
  TAXES,
  WEIGHTS,
  type SettingKey,
  type TableSchema,
} from './schema';

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

/** Prices of grips; only what is wrong with money is told here, sizes and masses are the plan's. */
export function readPrices(table: TableIn | undefined): Told<readonly PricedItem[]> {
  const { value: rows, issues } = rowsOf(STOCK, table);
  const value = rows.flatMap((row): PricedItem[] => {
    const item = text(row, 'item');
    return item === undefined
      ? []
      : [
          {
            item,
            description: text(row, 'description'),
            price: number(row, 'price'),
            cost: number(row, 'cost'),
            tax: text(row, 'tax'),
          },
        ];
  });
  return { value, issues: issues.filter(({ field }) => /, (Price|Cost|Tax)$/.test(field)) };
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

/** What is done to single clubs that a plan does not say, by their row. */
export function readWork(table: TableIn | undefined): ReadonlyMap<number, ClubWork> {
  const { value: rows } = rowsOf(CLUBS, table);
  return new Map(
    rows.map((row) => [
      row.row,
      {
        ownGrip: yes(row, 'ownGrip'),
        salvage: text(row, 'takeOff') === 'Whole',
        lengthChanged: (number(row, 'lengthChange') ?? 0) !== 0,
      },
    ]),
  );
}

/** What a person chose for this quote in place of what the sheet says; undefined: as the sheet says. */
export interface TermsChosen {
  /** Date serial. */
  readonly issued: number;
  readonly discountPercent?: number | undefined;
  readonly depositPercent?: number | undefined;
}

/** How the shop sells, and what this job has of its own. */
export function readTerms(tables: MoneyTables, job: string | null, chosen: TermsChosen): Told<QuoteTerms> {
  const settings = settingValues(tables.settings?.matrix, tables.settings?.headerRow);
  const values: ReadonlyMap<SettingKey, FieldValue> = settings.ok ? settings.value.values : new Map();
  const taxes = rowsOf(TAXES, tables.taxes);
  const jobs = rowsOf(JOBS, tables.jobs);
  const row = job === null ? undefined : jobs.value.find((each) => folded(text(each, 'job')) === folded(job));
  const settingText = (key: SettingKey): string => String(values.get(key) ?? '');
  const settingNumber = (key: SettingKey): number | undefined => {
    const value = values.get(key);
    return typeof value === 'number' ? value : undefined;
  };
  const deposit = chosen.depositPercent ?? (row && number(row, 'deposit')) ?? settingNumber('deposit');
  const gripDiscount = row && number(row, 'gripDiscount');
  const issues = [
    ...(settings.ok ? settings.value.problems : [settings.issue]),
    ...taxes.issues,
    ...(row?.issues ?? []),
    ...currencyIssue(settingText('currency')),
  ];
  return {
    value: {
      currency: settingText('currency'),
      prices: settingText('pricesAre') === 'With tax' ? 'withTax' : 'beforeTax',
      taxes: taxes.value.flatMap((each): TaxRate[] => {
        const [name, percent] = [text(each, 'tax'), number(each, 'percent')];
        return name === undefined || percent === undefined ? [] : [{ name, percent }];
      }),
      rounding: {
        rule: ROUNDING_RULES.find((rule) => ROUNDING_WORDS[rule] === settingText('rounding')) ?? 'halfUp',
        at: settingText('roundedAt') === ROUNDED_AT_WORDS.quote ? 'quote' : 'line',
      },
      setDiscount: percentOf(gripDiscount),
      jobDiscount: percentOf(chosen.discountPercent ?? (row && number(row, 'discount'))) ?? amountOf(row),
      deposit: percentOf(deposit),
      minimum: settingNumber('minimumCharge'),
      issued: chosen.issued,
      validDays: settingNumber('validDays') ?? USUAL_DAYS,
    },
    issues,
  };
}

/** How long a quote holds where Settings does not say (*practice*). */
const USUAL_DAYS = 30;

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

function percentOf(percent: number | undefined): Discount | undefined {
  return percent === undefined ? undefined : { percent };
}

function amountOf(row: Row | undefined): Discount | undefined {
  const amount = row && number(row, 'discountAmount');
  return amount === undefined ? undefined : { amount };
}

/** What a quote is made from; without issues it can be made. */
export interface QuoteReady {
  readonly input: QuoteInput;
  readonly issues: readonly Issue[];
}

/** The lines of a planned set under the shop's terms, and everything that has to be mended first. */
export function quoteInput(tables: MoneyTables, plan: SetPlan, job: string | null, chosen: TermsChosen): QuoteReady {
  const rates = readRates(tables.rates);
  const stock = readPrices(tables.stock);
  const ways = readWayPrices(tables.weights);
  const terms = readTerms(tables, job, chosen);
  const planned = linesFromPlan(plan, rates.value, stock.value, ways.value, { work: readWork(tables.clubs) });
  const input: QuoteInput = { ...terms.value, lines: planned.lines };
  const told = [...terms.issues, ...rates.issues, ...ways.issues, ...stock.issues, ...planned.issues];
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
