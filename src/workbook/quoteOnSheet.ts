/** What an issued quote says on its sheet, held against what the tables say now. Pure. */
import type { Quote } from '../core/index';
import { QUOTE_SHEET } from '../words/quoteHead';
import { folded } from './headings';
import type { BlockSeen, Cell, Seen } from './port';
import { isBlank } from './records';
import { QUOTE_COLUMNS, QUOTE_HEADERS, quotePage } from './quoteSheet';

/** How a sheet stands to the tables: the first thing that differs, by its words; `edited` where it does not hold together any more. */
export type OnSheet =
  | { readonly says: 'same' }
  | { readonly says: 'other'; readonly what: string }
  | { readonly says: 'edited' }
  /** there is no such sheet */
  | { readonly says: 'gone' };

/** Lines and sums of a page, each with what belongs to it, under its own words. */
interface PageSaid {
  readonly lines: readonly (readonly Seen[])[];
  readonly sums: readonly (readonly Seen[])[];
}

const AMOUNT = QUOTE_COLUMNS - 1;
/** More than a quote has lines; what comes after them is terms. */
export const QUOTE_ROWS_LOOKED = 400;

/**
 * Compares item, quantity, unit price, tax and amount of every line, and every sum.
 *
 * @param total what the register says that was issued
 */
export function onSheet(seen: BlockSeen | undefined, now: Quote, total: number | undefined): OnSheet {
  if (!seen?.sheetExists) return { says: 'gone' };
  const said = pageSaid(seen.values);
  if (!said || !holdsTogether(said, now, total)) return { says: 'edited' };
  const head = {
    job: '',
    customer: '',
    shop: '',
    due: null,
    number: 0,
    revision: 1,
    option: '',
    address: [],
    terms: '',
  };
  const ours = pageSaid(quotePage(head, now).cells);
  const what = ours && (firstOther(said.lines, ours.lines) ?? firstOther(said.sums, ours.sums));
  return what === undefined ? { says: 'same' } : { says: 'other', what };
}

/** Rows from below the header to the first blank one are lines, then come the sums. */
function pageSaid(rows: readonly (readonly Seen[])[]): PageSaid | undefined {
  const head = rows.findIndex((row) => QUOTE_HEADERS.every((header, at) => folded(row[at]) === folded(header)));
  if (head < 0) return undefined;
  const lines = untilBlank(rows, head + 1);
  return { lines, sums: untilBlank(rows, head + 1 + lines.length + 1) };
}

function untilBlank(rows: readonly (readonly Seen[])[], from: number): readonly (readonly Seen[])[] {
  const rest = rows.slice(from).map((row) => row.slice(0, QUOTE_COLUMNS));
  const end = rest.findIndex((row) => row.every(isBlank));
  return end < 0 ? rest : rest.slice(0, end);
}

/** Whether the lines add up to the sum below them, and the total is the one that was issued. */
function holdsTogether({ lines, sums }: PageSaid, { currency, prices }: Quote, total: number | undefined): boolean {
  const sumOf = (label: string): number | undefined => {
    const amount = sums.find((row) => folded(row[0]) === folded(label))?.[AMOUNT];
    return typeof amount === 'number' ? amount : undefined;
  };
  const all = sumOf(QUOTE_SHEET.total(currency.code));
  const ofLines = sumOf(QUOTE_SHEET.sum) ?? (prices === 'beforeTax' ? sumOf(QUOTE_SHEET.beforeTax) : all);
  const added = lines.reduce((sum, row) => sum + (typeof row[AMOUNT] === 'number' ? row[AMOUNT] : NaN), 0);
  return isSame(all, total) && isSame(added, ofLines);
}

function isSame(one: number | undefined, other: number | undefined): boolean {
  return one !== undefined && other !== undefined && Math.abs(one - other) < 1e-6;
}

/** The first row that one page has and the other has not, by its words; rows that moved say the same. */
function firstOther(
  said: readonly (readonly Seen[])[],
  ours: readonly (readonly Cell[] | readonly Seen[])[],
): string | undefined {
  const left = ours.map(keyOf);
  for (const row of said) {
    const at = left.indexOf(keyOf(row));
    if (at < 0) return String(row[0] ?? '');
    left.splice(at, 1);
  }
  const [more] = left;
  return more === undefined ? undefined : String((JSON.parse(more) as unknown[])[0] ?? '');
}

function keyOf(row: readonly Seen[]): string {
  return JSON.stringify(
    Array.from({ length: QUOTE_COLUMNS }, (_, at) => {
      const cell = row[at] ?? null;
      return typeof cell === 'number' ? Number(cell.toPrecision(12)) : isBlank(cell) ? null : cell;
    }),
  );
}
