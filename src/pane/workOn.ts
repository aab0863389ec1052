/** Does through a port what the pane asks for, and says in sentences how it ended. Whatever fails comes back as an outcome. */
import { parseReading, type Lesson } from '../core/index';
import { fillPlan } from '../workbook/fillPlan';
import { freezePlan } from '../workbook/freeze';
import { useLesson } from '../workbook/learn';
import type { InTheWay, Occupied } from '../workbook/outcomes';
import { scopeRows } from '../workbook/planScope';
import { PortError, type WorkbookPort } from '../workbook/port';
import { setUp } from '../workbook/setUp';
import { planSheetName } from '../workbook/sheetName';
import { readShop, type Shop } from '../workbook/shop';
import { undoLast } from '../workbook/undo';
import { sayFill, sayFreeze, sayLesson, sayPortError, saySetUp, sayUndo } from '../words/outcomes';
import { scopeOf, shopOf, type Deed, type Going } from './state/deed';
import { previewOf, rowsTouched, seenOf } from './state/lookAt';
import type { Again, Agreed, FillAsked, Look, Outcome, ShopSeen, Who, Work } from './state/work';
import { ENDS } from './words';

function failed(title: string, text: string): Outcome {
  return { kind: 'failed', title, text, list: [] };
}

function done(title: string, text: string, partly = false, list: readonly string[] = []): Outcome {
  return { kind: 'done', title, text, partly, list };
}

/** What was thrown, in a sentence: a port says what state the workbook is in, anything else is a mistake of ours. */
function thrown(title: string, error: unknown): Outcome {
  if (error instanceof PortError) return failed(title, sayPortError(error));
  return failed(title, ENDS.ourMistake(error instanceof Error ? error.message : String(error)));
}

async function caught(title: string, job: () => Promise<Outcome>): Promise<Outcome> {
  try {
    return await job();
  } catch (error) {
    return thrown(title, error);
  }
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

async function look(port: WorkbookPort): Promise<Look> {
  try {
    return { shop: seenOf(await readShop(port)) };
  } catch (error) {
    return { failed: thrown(ENDS.look.failed, error) };
  }
}

async function fill(port: WorkbookPort, seen: ShopSeen, asked: FillAsked): Promise<Outcome> {
  const { who, rows, choices, where, agreed } = asked;
  // Row numbers that were agreed to are those of the workbook as it was then.
  const from = agreed?.seen ?? seen;
  const over = agreed?.over;
  const end = await fillPlan(port, shopOf(from), {
    scope: scopeOf(who, rows),
    choices,
    where,
    agreed: over,
    as: 'live',
  });
  return ended(end, ENDS.fill, sayFill(end), (inTheWay) => {
    return { task: 'fill', asked: { ...asked, agreed: { seen: from, over: inTheWay } } };
  });
}

/** Plans of what is chosen: of the job, or of a selection, in the order they were filled; the latest is frozen. */
async function freeze(port: WorkbookPort, shop: Shop, who: Who, rows: readonly number[]): Promise<Outcome> {
  const clubs = shop.tables.Clubs;
  const key = clubs ? scopeRows(clubs, scopeOf(who, rows)).key : '';
  const place = shop.plans.filter((plan) => plan.key === key).at(-1);
  if (!place) return failed(ENDS.freeze.failed, ENDS.noPlan);
  const end = await freezePlan(port, shop, place);
  return end.done ? done(ENDS.freeze.done, sayFreeze(end)) : failed(ENDS.freeze.failed, sayFreeze(end));
}

async function teach(port: WorkbookPort, seen: ShopSeen, lesson: Lesson, agreed: Agreed | null): Promise<Outcome> {
  const from = agreed?.seen ?? seen;
  const end = await useLesson(port, shopOf(from), lesson, lesson.appliesTo, agreed?.over);
  return ended(end, ENDS.lesson, sayLesson(end), (over) => ({ task: 'lesson', lesson, agreed: { seen: from, over } }));
}

async function act(
  port: WorkbookPort,
  seen: ShopSeen,
  deed: Deed,
  agreed: Agreed | null,
  going: Going,
): Promise<Outcome> {
  // Row numbers that were agreed to are those of the workbook as it was then.
  const from = agreed?.seen ?? seen;
  const { end, text, partly, list, headline } = await deed.run(port, shopOf(from), agreed?.over ?? null, going);
  const titles = { done: headline ?? deed.done, failed: headline ?? deed.failed };
  const outcome = ended(end, titles, text, (over) => ({ task: 'deed', deed, agreed: { seen: from, over } }));
  if (outcome.kind === 'occupied') return outcome;
  const more = { ...outcome, list: list ?? outcome.list };
  return more.kind === 'done' ? { ...more, partly: partly ?? more.partly } : more;
}

function planSheetOf({ plans, tables }: Shop, who: Who, rows: readonly number[]): string {
  const scoped = tables.Clubs && scopeRows(tables.Clubs, scopeOf(who, rows));
  const place = plans.find(({ key, ownSheet }) => ownSheet && key === scoped?.key);
  if (place) return place.block.sheet;
  if (!scoped || scoped.job === null) return planSheetName(ENDS.chosenClubs, []);
  return planSheetName(scoped.wholeJob ? scoped.job : `${scoped.job} part`, []);
}

/** Everything the pane can ask, done on the workbook behind a port. */
export function workOn(port: WorkbookPort): Work {
  return {
    read: () => look(port),
    selectedRows: async (seen) => {
      try {
        return rowsTouched(shopOf(seen), (await port.selection()).at);
      } catch {
        // Asked for again in a moment; a selection that cannot be read (a chart, a cell being edited) is no news.
        return null;
      }
    },
    preview: (seen, _who, rows, choices) => previewOf(shopOf(seen), rows, choices),
    isReading: (text) => parseReading(text).ok,
    planSheetOf: (seen, who, rows) => planSheetOf(shopOf(seen), who, rows),
    setUp: () =>
      caught(ENDS.setUp.failed, async () => {
        const end = await setUp(port);
        if (!end.done) return failed(ENDS.setUp.failed, saySetUp(end));
        return done(end.blocked.length ? ENDS.setUp.partly : ENDS.setUp.done, saySetUp(end), end.blocked.length > 0);
      }),
    fill: (seen, asked) => caught(ENDS.fill.failed, () => fill(port, seen, asked)),
    freeze: (seen, who, rows) => caught(ENDS.freeze.failed, () => freeze(port, shopOf(seen), who, rows)),
    deed: (seen, deed, agreed, going) => caught(deed.failed, () => act(port, seen, deed, agreed, going)),
    undo: () =>
      caught(ENDS.undo.failed, async () => {
        const end = await undoLast(port);
        if (!end.done) return failed(ENDS.undo.failed, sayUndo(end));
        const kept = [...end.reverted.left, ...end.reverted.notFound];
        return done(ENDS.undo.done, sayUndo(end), kept.length > 0, kept);
      }),
    useLesson: (seen, lesson, agreed) => caught(ENDS.lesson.failed, () => teach(port, seen, lesson, agreed)),
    watch: (changed) => port.watch(changed),
  };
}
