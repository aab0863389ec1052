/** A job's quote from the tables as they stand: its plan, what that costs, and what has to be mended first. */
import { minutesOf, quoteOf, type Issue, type Minutes, type Quote } from '../core/index';
import { matrixOf } from './shop';
import type { ShopTables } from './shop';
import { planScope, scopeRows } from './planScope';
import { quoteInput, type MoneyTables, type TableIn, type TermsChosen } from './readMoney';
import { settingValues } from './readSettings';
import type { TableSeen } from './port';

/** A job as it would be quoted now. */
export interface JobQuote {
  /** undefined: something has to be mended first. */
  readonly quote: Quote | undefined;
  readonly issues: readonly Issue[];
  readonly minutes: Minutes;
}

function tableIn(table: TableSeen | null): TableIn | undefined {
  return table ? { matrix: matrixOf(table), headerRow: table.at.row + 1 } : undefined;
}

/** The shop's tables as prices are read from them. */
export function moneyTables({ Clubs, Stock, Weights, Rates, Taxes, Jobs, Settings }: ShopTables): MoneyTables {
  return {
    clubs: tableIn(Clubs),
    stock: tableIn(Stock),
    weights: tableIn(Weights),
    rates: tableIn(Rates),
    taxes: tableIn(Taxes),
    jobs: tableIn(Jobs),
    settings: tableIn(Settings),
  };
}

/** Quotes a whole job as Clubs has it. */
export function quoteJob(tables: ShopTables, job: string, chosen: TermsChosen): JobQuote {
  const none = { quote: undefined, minutes: { minutes: 0, missing: [] } };
  const scoped = tables.Clubs && scopeRows(tables.Clubs, { job });
  if (!scoped || scoped.rows.length === 0) {
    return { ...none, issues: [{ code: 'noRows', field: 'Clubs', expected: `clubs of job ${job}` }] };
  }
  const planned = planScope(tables, scoped, {});
  if (!planned.ok) return { ...none, issues: [planned.issue] };
  const { input, issues } = quoteInput(moneyTables(tables), planned.value.plan, job, chosen);
  const made = issues.length === 0 ? quoteOf(input) : undefined;
  return { quote: made?.ok ? made.value : undefined, issues, minutes: minutesOf(input.lines) };
}

/** The terms at the foot of a quote, as Settings gives them. */
export function quoteTermsText({ Settings }: ShopTables): string {
  const read = settingValues(Settings && matrixOf(Settings));
  return read.ok ? String(read.value.values.get('terms') ?? '') : '';
}
