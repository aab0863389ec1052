/** The register of quotes: what was issued, which number comes next, and where its row goes. Pure. */
import { fail, ok, type Issue, type Result } from '../core/index';
import { columnsAt, folded, lackingHeaders } from './headings';
import type { Cell, TableSeen } from './port';
import { isBlank, readTable } from './records';
import type { Row } from './records';
import { QUOTES } from './schema';
import { jobName, matrixOf } from './shop';
import { quoteIdText } from '../words/quoteHead';

/** One issued quote. */
export interface Registered {
  readonly number: number;
  readonly revision: number;
  /** '' for a price at the counter. */
  readonly job: string;
  readonly customer: string;
  /** Date serials. */
  readonly issued: number | undefined;
  readonly validUntil: number | undefined;
  readonly total: number | undefined;
  readonly currency: string;
  readonly isVoid: boolean;
  readonly sheet: string;
  /** Body row, from 1. */
  readonly row: number;
}

/** Number and revision of the next quote. */
export interface NextNumber {
  readonly number: number;
  readonly revision: number;
  /** Body row of the register that is still free, from 1; null where it has none. */
  readonly row: number | null;
}

/** Every row of the register; refused where a number in it cannot be read or stands there twice, since it could be given again. */
export function readRegister(table: TableSeen): Result<readonly Registered[]> {
  const read = readTable(QUOTES, matrixOf(table), table.at.row + 1);
  if (!read.ok) return read;
  const bad = read.value.rows.flatMap(({ issues }) => issues).find(({ field }) => NEEDED.test(field));
  if (bad) return fail(bad);
  const quotes = read.value.rows.map(registered);
  const twice = usedTwice(quotes, table.at.row + 1);
  return twice ? fail(twice) : ok(quotes);
}

/** What tells one quote from another; a total that a person typed as words keeps nobody from issuing. */
const NEEDED = /, (No\.|Revision|Job|Status)$/;

function registered({ row, values }: Row): Registered {
  const number = (key: string): number | undefined => {
    const value = values.get(key);
    return typeof value === 'number' ? value : undefined;
  };
  return {
    number: Number(values.get('number')),
    revision: Number(values.get('revision')),
    job: jobName(values.get('job')),
    customer: jobName(values.get('customer')),
    issued: number('issued'),
    validUntil: number('validUntil'),
    total: number('total'),
    currency: jobName(values.get('currency')),
    isVoid: values.get('status') === 'Void',
    sheet: jobName(values.get('sheet')),
    row,
  };
}

/** A number and revision that stands in a second row, and where. */
function usedTwice(quotes: readonly Registered[], headerRow: number): Issue | undefined {
  const seen = new Map<string, number>();
  for (const { number, revision, row } of quotes) {
    const name = quoteIdText({ number, revision });
    const first = seen.get(name);
    if (first !== undefined) {
      return {
        code: 'duplicate',
        field: `${QUOTES.name} row ${headerRow + row}, No.`,
        got: name,
        detail: headerRow + first,
      };
    }
    seen.set(name, row);
  }
  return undefined;
}

/**
 * The next number: the highest and one; or, where a quote of the job still stands, its number and the next revision.
 *
 * @param job '' for a price at the counter, which is never another one's revision
 * @param given the highest number known to be given elsewhere, as by the name of a sheet
 * @returns what in the register is missing or cannot be read
 */
export function nextNumber(table: TableSeen, job: string, given = 0): Result<NextNumber> {
  const [lacking] = lackingHeaders(table.headers, QUOTES, false);
  if (lacking !== undefined) return fail({ code: 'missingColumn', field: QUOTES.name, expected: lacking });
  const read = readRegister(table);
  if (!read.ok) return read;
  const row = freeRow(table);
  const highest = read.value.reduce((most, { number }) => Math.max(most, number), given);
  const standing = read.value.filter(({ isVoid }) => !isVoid);
  const latest = job === '' ? undefined : latestOf(standing, job);
  if (!latest) return ok({ number: highest + 1, revision: 1, row });
  // A number that a person gave to another job as well has its revisions there.
  const revisions = read.value.filter(({ number }) => number === latest.number).map(({ revision }) => revision);
  return ok({ number: latest.number, revision: Math.max(...revisions) + 1, row });
}

/** The first row below every used one that holds nothing and no formula. */
function freeRow({ rows, formulas }: TableSeen): number | null {
  const blank = rows.map((row, at) => row.every(isBlank) && !(formulas?.[at] ?? []).some((text) => text !== null));
  const lastUsed = blank.lastIndexOf(false);
  return lastUsed + 1 < rows.length ? lastUsed + 2 : null;
}

/** The latest of a job: the last revision of its highest number. */
export function latestOf(quotes: readonly Registered[], job: string): Registered | undefined {
  return quotes
    .filter((each) => folded(each.job) === folded(job))
    .reduce<Registered | undefined>((latest, each) => {
      if (!latest) return each;
      const later = each.number - latest.number || each.revision - latest.revision;
      return later > 0 ? each : latest;
    }, undefined);
}

/** A row of the register under whatever order its headings have. */
export function registerRow(
  table: TableSeen,
  values: Readonly<Record<(typeof QUOTES)['columns'][number]['key'], Cell>>,
): (Cell | undefined)[] {
  const at = columnsAt(QUOTES, table.headers);
  const cells = Array<Cell | undefined>(table.headers.length).fill(undefined);
  for (const [key, value] of Object.entries(values)) {
    if (at(key) >= 0) cells[at(key)] = value;
  }
  return cells;
}
