/** What live plans show once they are written: a formula can come to an error though the very tables were planned from. */
import type { Amiss, Filled } from './outcomes';
import { HEAD_ROWS } from './planSheet';
import type { Answers, BlockSeen, Query, WorkbookPort } from './port';
import { named } from './shared/address';

/** What Excel shows while a function of an add-in has not answered yet. */
const UNANSWERED: readonly string[] = ['#BUSY!', '#GETTING_DATA'];

/** Long enough for functions that run in this very page to answer, and hardly felt. */
const WAIT_MS = 400;
const waiting = (): Promise<void> => new Promise((done) => setTimeout(done, WAIT_MS));

/**
 * Formulas of plans just filled that show an error: one read, and another where one has not answered yet. Plans that hold values are not
 * looked at. A look that fails says nothing: what was written stands, whether it could be looked at or not.
 *
 * @param wait replaced in tests
 */
export async function plansAmiss(
  port: WorkbookPort,
  filled: readonly Pick<Filled, 'as' | 'block'>[],
  wait: () => Promise<void> = waiting,
): Promise<readonly Amiss[]> {
  const queries = filled
    .filter(({ as }) => as === 'live')
    .map(({ block }) => {
      return { read: 'block', at: { ...block, row: block.row + HEAD_ROWS, rows: 1, columns: 1 } } as const;
    });
  if (queries.length === 0) return [];
  try {
    const amiss = await lookAt(port, queries);
    if (!amiss.some(({ unanswered }) => unanswered)) return amiss;
    await wait();
    return await lookAt(port, queries);
  } catch {
    return [];
  }
}

async function lookAt(port: WorkbookPort, queries: readonly Query[]): Promise<readonly Amiss[]> {
  const seen = (await port.read(queries)) as Answers<readonly Query[]> as readonly BlockSeen[];
  return seen.flatMap(({ at, values, reasons }) => {
    const shows = values[0]?.[0] ?? null;
    if (typeof shows !== 'object' || shows === null) return [];
    const { error } = shows;
    return [{ cell: named(at), error, says: reasons?.[0]?.says ?? null, unanswered: UNANSWERED.includes(error) }];
  });
}
