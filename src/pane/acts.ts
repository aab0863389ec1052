/** What the pane does on a workbook beyond looking: loaded once it has looked, so that it is there when it is first asked for. */
import type { Lesson } from '../core/index';
import { addColumns, type Adding } from '../workbook/addColumns';
import { fillPlan } from '../workbook/fillPlan';
import { freezePlan } from '../workbook/freeze';
import { useLesson } from '../workbook/learn';
import { plansAmiss } from '../workbook/lookAfter';
import type { InTheWay, NotDone, Occupied } from '../workbook/outcomes';
import { scopeRows } from '../workbook/planScope';
import { ownLists } from '../workbook/ownNames';
import { sayOwn } from '../workbook/ownSentences';
import type { TableSeen, WorkbookPort } from '../workbook/port';
import { calledBy } from '../workbook/records';
import { setUp as setUpTables } from '../workbook/setUp';
import { ageOf, matricesOf, shopTables, type Shop } from '../workbook/shop';
import { keepingSteps, undoLast } from '../workbook/undo';
import { keptPlans, LAYOUT, PLANS_KEY } from '../workbook/planPlaces';
import { UP_TO_DATE } from '../words/upToDate';
import { FILLED_AMISS, sayAmiss, sayFill, sayFreeze, sayLesson, saySetUp, sayUndo } from '../words/outcomes';
import { ADD_COLUMNS, sayColumnsAdded } from '../words/columnsAdded';
import type { Deed, Going } from './state/deed';
import { scopeOf, shopOf } from './state/seen';
import type { Again, Agreed, FillAsked, Mend, Outcome, ShopSeen, Who } from './state/work';
import { ENDS } from './words';

function failed(title: string, text: string): Outcome {
  return { kind: 'failed', title, text, list: [] };
}

function done(title: string, text: string, partly = false, list: readonly string[] = []): Outcome {
  return { kind: 'done', title, text, partly, list };
}

/** Why nothing is written where a newer version set the workbook up; null where it may be. */
function newerOf({ version, layout }: Pick<Shop, 'version' | 'layout'>): Outcome | null {
  if (ageOf({ version, layout }) !== 'newer') return null;
  return failed(UP_TO_DATE.newer, UP_TO_DATE.newerText(layout ?? 0, LAYOUT));
}

/** The same, asked of the workbook itself. */
async function newerNow(port: WorkbookPort): Promise<Outcome | null> {
  const kept = keptPlans(await port.recall(PLANS_KEY));
  return newerOf({ version: kept?.schema ?? null, layout: kept?.layout ?? null });
}

/** The outcome with the names that the shop has for lists of its own. */
function inOwnWords(outcome: Outcome, { tables }: Shop): Outcome {
  if (outcome.kind === 'occupied') return outcome;
  const headers = Object.entries(tables).map(([name, table]: [string, TableSeen | null]) => [name, table?.headers]);
  const own = ownLists(Object.fromEntries(headers) as Record<string, readonly string[] | undefined>);
  return { ...outcome, text: sayOwn(outcome.text, own), list: outcome.list.map((line) => sayOwn(line, own)) };
}

/** An end in which cells of a person's stand in the way, so that writing over them can be offered. */
function ended<End extends { readonly done: boolean }>(
  end: End | Occupied,
  titles: { readonly done: string; readonly failed: string },
  text: string,
  again: (agreed: InTheWay) => Again,
): Outcome {
  if ('reason' in end && end.reason === 'occupied' && 'inTheWay' in end)
    return { kind: 'occupied', cells: end.cells, again: again(end.inTheWay) };
  return end.done ? done(titles.done, text) : failed(titles.failed, text);
}

type Lacking = Extract<NotDone, { reason: 'columnMissing' }>;

function isLacking(end: object): end is Lacking {
  return 'reason' in end && end.reason === 'columnMissing';
}

/** Where columns are lacking, adding them can be offered, and what was asked is done then. */
function orAdded(outcome: Outcome, end: object, shop: Shop, again: Mend['again']): Outcome {
  if (outcome.kind !== 'failed' || !isLacking(end)) return outcome;
  const { table, headers } = end;
  const seen = shop.tables[table as keyof Shop['tables']];
  const list = (seen && calledBy(seen.headers)?.list) ?? table;
  return {
    ...outcome,
    text: ADD_COLUMNS.text(list, headers),
    mend: { says: ADD_COLUMNS.button(headers), adding: { table, headers }, again },
  };
}

/** Adds columns that a table, or a list that stands for it, lacks. */
export async function addLacking(port: WorkbookPort, adding: Adding): Promise<Outcome> {
  const newer = await newerNow(port);
  if (newer) return newer;
  const end = await addColumns(keepingSteps(port), adding);
  return end.done ? done(ENDS.columns.done, sayColumnsAdded(end)) : failed(ENDS.columns.failed, sayColumnsAdded(end));
}

/** Makes the tables that are missing. */
export async function setUp(port: WorkbookPort): Promise<Outcome> {
  const newer = await newerNow(port);
  if (newer) return newer;
  const end = await setUpTables(keepingSteps(port));
  if (!end.done) return failed(ENDS.setUp.failed, saySetUp(end));
  return done(end.blocked.length ? ENDS.setUp.partly : ENDS.setUp.done, saySetUp(end), end.blocked.length > 0);
}

/** Takes back the last fill. */
export async function undo(port: WorkbookPort): Promise<Outcome> {
  const newer = await newerNow(port);
  if (newer) return newer;
  const end = await undoLast(port);
  // Nobody did anything wrong: another pane took it back meanwhile, or nothing was filled yet.
  if (!end.done && end.reason === 'nothingToUndo') return done(ENDS.undo.nothing, sayUndo(end));
  if (!end.done) return failed(ENDS.undo.failed, sayUndo(end));
  const kept = [...end.reverted.left, ...end.reverted.notFound];
  return done(ENDS.undo.done, sayUndo(end), kept.length > 0, kept);
}

/** Fills the plan of what is chosen. */
export async function fill(port: WorkbookPort, seen: ShopSeen, asked: FillAsked): Promise<Outcome> {
  const { who, rows, choices, where, agreed } = asked;
  // Row numbers that were agreed to are those of the workbook as it was then.
  const from = agreed?.seen ?? seen;
  const newer = newerOf(shopOf(from));
  if (newer) return newer;
  const over = agreed?.over;
  const end = await fillPlan(keepingSteps(port), shopOf(from), {
    scope: scopeOf(who, rows),
    choices,
    where,
    agreed: over,
    as: 'live',
  });
  const outcome = ended(end, ENDS.fill, sayFill(end), (inTheWay) => {
    return { task: 'fill', asked: { ...asked, agreed: { seen: from, over: inTheWay } } };
  });
  const [amiss] = end.done ? await plansAmiss(port, [end]) : [];
  if (amiss) return inOwnWords(done(FILLED_AMISS, `${sayFill(end)} ${sayAmiss(amiss)}`, true), shopOf(from));
  return orAdded(inOwnWords(outcome, shopOf(from)), end, shopOf(from), { task: 'fill', asked });
}

/** Plans of what is chosen: of the job, or of a selection, in the order they were filled; the latest is frozen. */
export async function freeze(port: WorkbookPort, shop: Shop, who: Who, rows: readonly number[]): Promise<Outcome> {
  const newer = newerOf(shop);
  if (newer) return newer;
  const clubs = shop.tables.Clubs;
  const key = clubs ? scopeRows(clubs, scopeOf(who, rows)).key : '';
  const place = shop.plans.filter((plan) => plan.key === key).at(-1);
  if (!place) return failed(ENDS.freeze.failed, ENDS.noPlan);
  const end = await freezePlan(keepingSteps(port), shop, place);
  return end.done ? done(ENDS.freeze.done, sayFreeze(end)) : failed(ENDS.freeze.failed, sayFreeze(end));
}

/** Writes what a stripped club taught. */
export async function teach(
  port: WorkbookPort,
  seen: ShopSeen,
  lesson: Lesson,
  agreed: Agreed | null,
): Promise<Outcome> {
  const from = agreed?.seen ?? seen;
  const newer = newerOf(shopOf(from));
  if (newer) return newer;
  const end = await useLesson(keepingSteps(port), shopOf(from), lesson, lesson.appliesTo, agreed?.over);
  const again = (over: InTheWay): Again => ({ task: 'lesson', lesson, agreed: { seen: from, over } });
  const outcome = inOwnWords(ended(end, ENDS.lesson, sayLesson(end), again), shopOf(from));
  return orAdded(outcome, end, shopOf(from), { task: 'lesson', lesson, agreed });
}

/** What a deed that needs no look is handed before one succeeded. */
const NO_SHOP: Shop = {
  tables: shopTables([]),
  matrices: matricesOf(shopTables([])),
  jobs: [],
  plans: [],
  version: null,
  layout: null,
};

/** Does what a screen brought along. */
export async function act(
  port: WorkbookPort,
  seen: ShopSeen | null,
  deed: Deed,
  agreed: Agreed | null,
  going: Going,
): Promise<Outcome> {
  // Row numbers that were agreed to are those of the workbook as it was then.
  const from = agreed?.seen ?? seen;
  const newer = from && newerOf(shopOf(from));
  if (newer) return newer;
  const shop = from ? shopOf(from) : NO_SHOP;
  const { end, text, partly, list, headline } = await deed.run(keepingSteps(port), shop, agreed?.over ?? null, going);
  const titles = { done: headline ?? deed.done, failed: headline ?? deed.failed };
  const outcome = ended(end, titles, text, (over) => ({ task: 'deed', deed, agreed: from && { seen: from, over } }));
  if (outcome.kind === 'occupied') return outcome;
  const more = inOwnWords({ ...outcome, list: list ?? outcome.list }, shop);
  return more.kind === 'done' ? { ...more, partly: partly ?? more.partly } : more;
}
