/** Does through a port what the pane asks for, and says in sentences how it ended. Whatever fails comes back as an outcome. */
import { parseReading } from '../core/index';
import { scopeRows } from '../workbook/planScope';
import { atEase } from '../workbook/pace';
import { LAST_FILL_KEY } from '../workbook/planPlaces';
import { PortError, type WorkbookPort } from '../workbook/port';
import { planSheetName } from '../workbook/sheetName';
import { readShop, type Shop } from '../workbook/shop';
import { STEPS_KEY, stepsIn } from '../workbook/undoSteps';
import { sayPortError } from '../words/portErrors';
import { scopeOf, shopOf } from './state/seen';
import { previewSteps } from './state/previewSteps';
import type { Look, Outcome, Who, Work } from './state/work';
import { ENDS } from './words';

/** What was thrown, in a sentence: a port says what state the workbook is in, anything else is a mistake of ours. */
function thrown(title: string, error: unknown): Outcome {
  const said = error instanceof Error ? error.message : String(error);
  const text = error instanceof PortError ? sayPortError(error) : ENDS.ourMistake(said);
  return { kind: 'failed', title, text, list: [] };
}

/** A failed look: the next one that succeeds takes back what was said. */
function unread(error: unknown): Outcome {
  const look = error instanceof PortError && error.code === 'connection' ? 'lists' : 'other';
  const said = thrown(ENDS.look.failed, error);
  return said.kind === 'failed' ? { ...said, look } : said;
}

/** Whatever is done on a workbook, loaded once. */
const acts = () => import('./acts');

async function caught(title: string, job: () => Promise<Outcome>): Promise<Outcome> {
  try {
    return await job();
  } catch (error) {
    return thrown(title, error);
  }
}

/** What shows a workbook comes while it is being read. */
const looking = () => import('./state/lookAt');

async function look(port: WorkbookPort): Promise<Look> {
  try {
    const [{ seenSteps }, shop, steps] = await Promise.all([looking(), readShop(port), port.recall(STEPS_KEY)]);
    // Whoever looks will do something next; what fails to load is said when it is asked for.
    acts().catch(() => undefined);
    // A large workbook is read through in slices, so that typing goes on.
    const undo = stepsIn(steps).at(-1)?.label ?? ((await port.recall(LAST_FILL_KEY)) ? undefined : null);
    return { shop: { ...(await atEase(seenSteps(shop))), undo } };
  } catch (error) {
    return { failed: unread(error) };
  }
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
        const { rowsTouched } = await looking();
        return rowsTouched(shopOf(seen), (await port.selection()).at);
      } catch {
        // Asked for again in a moment; a selection that cannot be read (a chart, a cell being edited) is no news.
        return null;
      }
    },
    preview: (seen, _who, rows, choices) => previewSteps(shopOf(seen), rows, choices),
    isReading: (text) => parseReading(text).ok,
    planSheetOf: (seen, who, rows) => planSheetOf(shopOf(seen), who, rows),
    setUp: () => caught(ENDS.setUp.failed, async () => (await acts()).setUp(port)),
    fill: (seen, asked) => caught(ENDS.fill.failed, async () => (await acts()).fill(port, seen, asked)),
    addColumns: (adding) => caught(ENDS.fill.failed, async () => (await acts()).addLacking(port, adding)),
    freeze: (seen, who, rows) =>
      caught(ENDS.freeze.failed, async () => (await acts()).freeze(port, shopOf(seen), who, rows)),
    deed: (seen, deed, agreed, going) =>
      caught(deed.failed, async () => (await acts()).act(port, seen, deed, agreed, going)),
    inspect: (reading) => reading(port),
    undo: () => caught(ENDS.undo.failed, async () => (await acts()).undo(port)),
    useLesson: (seen, lesson, agreed) =>
      caught(ENDS.lesson.failed, async () => (await acts()).teach(port, seen, lesson, agreed)),
    watch: (changed) => port.watch(changed),
  };
}
