/** Filling a comparison of grips into a sheet of its own, as values. */
import type { Comparison } from '../core/index';
import { comparePage, dressCompare } from './compareSheet';
import { fillPage } from './fillPage';
import type { MakePage, Page } from './fillPage';
import { jobFacts } from './jobFacts';
import type { CompareDone, InTheWay, Scope } from './outcomes';
import { ownSheet } from './pagePlace';
import { scopeRows } from './planScope';
import type { Scoped } from './planScope';
import type { TableSeen, WorkbookPort } from './port';
import { CLUBS } from './schema';
import { pageSheetName } from './sheetName';
import type { Shop, ShopTables } from './shop';

/** A comparison to be written. */
export interface CompareRequest {
  readonly scope: Scope;
  readonly comparison: Comparison;
  /** What was compared, in a sentence. */
  readonly about: string;
  /** What `occupied` told the person, who agreed that it may go: this and nothing else. */
  readonly agreed?: InTheWay | undefined;
}

/**
 * Writes a comparison under a head with the job and a legend. Filled again for the same clubs, it is rewritten in place.
 *
 * @param shop from which grips were compared: when its clubs, stock or settings have changed since, nothing is written
 */
export async function fillCompare(port: WorkbookPort, shop: Shop, request: CompareRequest): Promise<CompareDone> {
  const { comparison } = request;
  if (comparison.tried.length === 0) return { done: false, reason: 'nothingTried' };
  const end = await fillPage(port, shop, pageOf(shop, request), request.agreed);
  if (!end.done) return end;
  const unbeaten = comparison.tried.filter((each) => each.unbeaten).length;
  return { ...end, grips: comparison.tried.length, unbeaten };
}

/** Name of the sheet that a comparison of these clubs has, or would get. */
export function compareSheetOf(shop: Shop, scope: Scope): string {
  const scoped = shop.tables.Clubs && scopeRows(shop.tables.Clubs, scope);
  return scoped
    ? ownSheet(shop, [], keyOf(scoped), nameFor(scoped)).sheet
    : nameFor({ job: null, wholeJob: false })([]);
}

type No = Extract<CompareDone, { reason: 'tableMissing' | 'noClubs' | 'outOfDate' }>;

function pageOf(shop: Shop, { scope, comparison, about }: CompareRequest): MakePage<No> {
  return (tables): Page | No => {
    const clubs = tables.Clubs;
    if (!clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    const scoped = scopeRows(clubs, scope);
    if (scoped.rows.length === 0) return { done: false, reason: 'noClubs' };
    const changed = changedSince(shop.tables, tables, scope);
    if (changed.length > 0) return { done: false, reason: 'outOfDate', tables: changed };
    const clubsCompared = comparison.tried[0]?.clubs ?? 0;
    const head = { ...jobFacts(tables, scoped.job), clubsCompared, clubsInScope: scoped.rows.length, about };
    const page = comparePage(head, comparison);
    return {
      ...page,
      key: keyOf(scoped),
      job: scoped.job,
      sheetName: nameFor(scoped),
      dress: (at) => dressCompare(at, page),
      label: scoped.job === null ? 'Comparison for chosen clubs' : `Comparison for job ${scoped.job}`,
    };
  };
}

function keyOf({ key }: Scoped): string {
  return `compare:${key}`;
}

function nameFor({ job, wholeJob }: Pick<Scoped, 'job' | 'wholeJob'>): (taken: readonly string[]) => string {
  const what = job === null ? 'chosen clubs' : wholeJob ? job : `${job} part`;
  return (taken) => pageSheetName('Compare', what, taken);
}

/** Tables a comparison rests on that hold something else than they did: of Clubs, the clubs concerned. */
function changedSince(before: ShopTables, now: ShopTables, scope: Scope): string[] {
  const whole = (['Stock', 'Settings', 'Weights', 'Tape'] as const).filter(
    (name) => contentOf(before[name]) !== contentOf(now[name]),
  );
  const clubs = clubsOf(before.Clubs, scope) === clubsOf(now.Clubs, scope) ? [] : [CLUBS.name];
  return [...clubs, ...whole];
}

function contentOf(table: TableSeen | null): string {
  return JSON.stringify(table && [table.headers, table.rows]);
}

/** The order of a job's clubs does not matter. */
function clubsOf(clubs: TableSeen | null, scope: Scope): string {
  if (!clubs) return '';
  const rows = scopeRows(clubs, scope).rows.map((row) => JSON.stringify(clubs.rows[row - 1]));
  return JSON.stringify([clubs.headers, 'job' in scope ? rows.sort() : rows]);
}
