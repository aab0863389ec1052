/** What is taken off single lines of a job's quote, as Discounts lists it. */
import { saidPercent, type Discount, type Issue, type QuoteLine } from '../core/index';
import { folded } from './headings';
import type { Row } from './records';
import { columnOf } from './schema';
import { DISCOUNTS } from './tables/discounts';

/** One row of Discounts. */
export interface ListedOff {
  readonly line: string;
  /** undefined where the row cannot be used. */
  readonly discount: Discount | undefined;
  /** `Discounts row 3`. */
  readonly where: string;
  readonly issues: readonly Issue[];
}

/** Rows of Discounts by the job's name as it is compared. What names no job is nobody's. */
export function discountsByJob(rows: readonly Row[]): ReadonlyMap<string, readonly ListedOff[]> {
  const jobs = new Map<string, ListedOff[]>();
  for (const row of rows) {
    const job = folded(row.values.get('job'));
    if (job === '') continue;
    jobs.set(job, [...(jobs.get(job) ?? []), listedOff(row)]);
  }
  return jobs;
}

function listedOff({ values, issues, sheetRow }: Row): ListedOff {
  const where = `${DISCOUNTS.name} row ${sheetRow}`;
  const number = (key: string): number | undefined => {
    const value = values.get(key);
    return typeof value === 'number' ? value : undefined;
  };
  const [percent, amount] = [number('percent'), number('amount')];
  const reason = values.has('reason') ? String(values.get('reason')) : undefined;
  const told = issues.length > 0 ? issues : bothOrNeither(percent, amount, where);
  const field = (key: string): string => `${where}, ${columnOf(DISCOUNTS, key).header}`;
  const discount: Discount =
    percent === undefined || (percent === 0 && amount !== undefined)
      ? { amount, field: field('amount'), reason }
      : { percent: saidPercent(percent), field: field('percent'), reason };
  return {
    line: String(values.get('line') ?? ''),
    discount: told.length > 0 ? undefined : discount,
    where,
    issues: told,
  };
}

/** A line has one discount: which of two is meant, or how much, is for a person to say. */
function bothOrNeither(percent: number | undefined, amount: number | undefined, where: string): Issue[] {
  if (percent === undefined && amount === undefined) {
    const field = `${where}, ${columnOf(DISCOUNTS, 'percent').header}`;
    return [{ code: 'blank', field, expected: 'a per cent, or an amount beside it' }];
  }
  if ((percent ?? 0) <= 0 || (amount ?? 0) <= 0) return [];
  const expected = `${percent} % and an amount of ${amount} are both there, and a line gets one discount; clear one of the two`;
  return [{ code: 'contradiction', field: where, expected }];
}

export interface LessOff {
  readonly lines: readonly QuoteLine[];
  readonly issues: readonly Issue[];
  /** Rows whose line this quote has not. */
  readonly unused: readonly ListedOff[];
}

/** Lines with what is taken off each of them. */
export function withDiscounts(lines: readonly QuoteLine[], listed: readonly ListedOff[]): LessOff {
  const issues: Issue[] = listed.flatMap((each) => each.issues);
  const unused: ListedOff[] = [];
  const off = new Map<QuoteLine, Discount>();
  for (const each of listed) {
    if (!each.discount) continue;
    const named = linesNamed(lines, each.line);
    const [line] = named;
    if (!line) unused.push(each);
    else if (named.length > 1 || off.has(line)) issues.push(unclear(each, named.length > 1));
    else off.set(line, each.discount);
  }
  return { lines: lines.map((line) => ({ ...line, discount: off.get(line) ?? line.discount })), issues, unused };
}

/** By item, or by the words on the quote. */
export function linesNamed(lines: readonly QuoteLine[], name: string): readonly QuoteLine[] {
  const wanted = folded(name);
  return lines.filter(({ item, description }) => folded(item) === wanted || folded(description) === wanted);
}

function unclear({ where, line }: ListedOff, isTwoLines: boolean): Issue {
  const field = `${where}, ${columnOf(DISCOUNTS, 'line').header}`;
  if (!isTwoLines) return { code: 'duplicate', field, got: line };
  return { code: 'contradiction', field, expected: `“${line}” is what two lines are called; rename one of them` };
}

/** A row whose line the quote has not: what it takes off would be lost without a word. */
export function notOnQuote({ where, line }: ListedOff, lines: readonly QuoteLine[], job: string): Issue {
  const expected = `a line of the quote for job ${job} (${lines.map(({ description }) => description).join('; ')}), or clear the row`;
  return { code: 'unknownChoice', field: `${where}, ${columnOf(DISCOUNTS, 'line').header}`, got: line, expected };
}
