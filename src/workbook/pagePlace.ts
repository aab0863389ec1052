/** Where a page of ours (a plan, a comparison) goes: where it stands already, or a free place. */
import { freeName, keepPlans, PLANS_BEFORE_KEY, PLANS_KEY } from './planPlaces';
import type { PlanEntry, PlanPlace } from './planPlaces';
import type { Block, Change, NameSeen, WorkbookPort } from './port';
import { sameBlock } from './shared/address';
import { MOST_COLUMNS, MOST_ROWS } from './shared/limits';
import { readShop } from './shop';
import type { Shop } from './shop';

/** How often the workbook is read again when it turns out to differ from what was read before. */
const MOST_TRIES = 3;

/** A place for a page. */
export interface Target {
  /** The page that stands there already. */
  readonly place: PlanPlace | null;
  readonly name: string;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly ownSheet: boolean;
}

/** The workbook is not as it was known; `namesInUse` are names that turned out to be taken. */
export interface LookAgain {
  readonly namesInUse: readonly string[];
}

/**
 * Tries a job with what is known of the workbook, and with what a new look at it tells as long as that is out of date.
 *
 * @returns how it ended; null when somebody keeps working on the same cells: better nothing than something half known
 */
export async function untilKnown<End extends { readonly done: boolean }>(
  port: WorkbookPort,
  shop: Shop,
  attempt: (known: Shop, tries: number, namesInUse: readonly string[]) => Promise<End | LookAgain>,
): Promise<End | null> {
  let known = shop;
  let namesInUse: readonly string[] = [];
  for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
    const end = await attempt(known, tries, namesInUse);
    if ('done' in end) return end;
    namesInUse = [...namesInUse, ...end.namesInUse];
    known = await readShop(port);
  }
  return null;
}

/** The place of a page that stands in the workbook. */
export function again(place: PlanPlace): Target {
  const { sheet, row, column } = place.block;
  return { place, name: place.name, sheet, row, column, ownSheet: place.ownSheet };
}

/** A place for a page that stands nowhere yet. */
export function fresh(
  known: Shop,
  namesInUse: readonly string[],
  at: Pick<Block, 'sheet' | 'row' | 'column'>,
  ownSheet: boolean,
): Target {
  const { sheet, row, column } = at;
  return { place: null, name: freeName(known.plans, namesInUse), sheet, row, column, ownSheet };
}

/** The sheet of its own that a page has, or would get. */
export function ownSheet(
  known: Shop,
  namesInUse: readonly string[],
  key: string,
  sheetName: (taken: readonly string[]) => string,
): Target {
  const place = known.plans.find((each) => each.key === key && each.ownSheet);
  if (place) return again(place);
  const sheet = sheetName(known.plans.map(({ block }) => block.sheet));
  return fresh(known, namesInUse, { sheet, row: 0, column: 0 }, true);
}

/** The block a page of that size takes. */
export function blockAt({ sheet, row, column }: Target, size: Pick<Block, 'rows' | 'columns'>): Block {
  return { sheet, row, column, rows: size.rows, columns: size.columns };
}

/** Whether the sheet is large enough. */
export function fits({ row, column, rows, columns }: Block): boolean {
  return row + rows <= MOST_ROWS && column + columns <= MOST_COLUMNS;
}

/** The block together with what an older, larger page took. */
export function withOlder({ place }: Target, block: Block): Block {
  const old = place?.block ?? block;
  return { ...block, rows: Math.max(block.rows, old.rows), columns: Math.max(block.columns, old.columns) };
}

/** Whether the page is still where it was, or the name for a new one still free. */
export function standsThere({ place }: Target, seen: NameSeen): boolean {
  if (!place) return seen.at === null;
  return seen.at !== null && sameBlock(seen.at, place.block);
}

/** What to do when the page is not where it was known. */
export function lookAgain({ place, name }: Target, seen: NameSeen): LookAgain {
  return { namesInUse: seen.at && !place ? [name] : [] };
}

/** Keeps where pages stand, and how places were before, for taking them back. */
export function rememberPages(known: Shop, entries: readonly PlanEntry[]): Change[] {
  const names = new Set(entries.map(({ name }) => name));
  const others = known.plans.filter(({ name }) => !names.has(name));
  return [
    { do: 'remember', key: PLANS_BEFORE_KEY, value: keepPlans(known.plans, known.layout) },
    { do: 'remember', key: PLANS_KEY, value: keepPlans([...others, ...entries], known.layout) },
  ];
}
