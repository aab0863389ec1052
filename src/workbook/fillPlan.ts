/** Filling a set's plan into the workbook: one read, one write. */
import type { FillDone, FillRequest } from './outcomes';
import { atEase } from './pace';
import { again, fresh, ownSheet, rememberPages, untilKnown } from './pagePlace';
import type { LookAgain, Target } from './pagePlace';
import { planQueries, readySteps } from './planDraft';
import { LAST_FILL_KEY } from './planPlaces';
import { scopeRows } from './planScope';
import type { Scoped } from './planScope';
import { politely } from './polite';
import type { WorkbookPort } from './port';
import { CLUBS, TABLES } from './schema';
import { holdsCell } from './shared/address';
import { planSheetName } from './sheetName';
import { shopTables, tableQueries, tablesSeen } from './shop';
import type { Shop } from './shop';

/**
 * Writes the choices into Clubs and the plan into a sheet, where it stands under a head with the job and a legend: one formula
 * that follows the tables, or values. Only blank cells, cells of the same plan and those that the person agreed to are
 * written over.
 *
 * @param shop as read when the person chose: when the clubs have moved since, nothing is written
 */
export async function fillPlan(port: WorkbookPort, shop: Shop, request: FillRequest): Promise<FillDone> {
  return politely(async (): Promise<FillDone> => {
    const end = await untilKnown(port, shop, (known, tries, namesInUse) =>
      attempt(port, shop, known, request, tries, namesInUse),
    );
    return end ?? { done: false, reason: 'clubsMoved' };
  });
}

async function attempt(
  port: WorkbookPort,
  chosenFrom: Shop,
  known: Shop,
  request: FillRequest,
  tries: number,
  namesInUse: readonly string[],
): Promise<FillDone | LookAgain> {
  if (!known.tables.Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
  const guess = scopeRows(known.tables.Clubs, request.scope);
  const target = await chooseTarget(port, known, guess, request, namesInUse);
  const draft = { request, target, guess };
  const queries = planQueries(draft);
  if (!queries) return { done: false, reason: 'noRoom' };
  const [name, area, spare, ...answers] = await port.read([...queries, ...tableQueries()]);
  const tables = shopTables(answers.slice(0, TABLES.length));
  const look = { name, area, spare, tables };
  const ready = await atEase(readySteps(draft, look, chosenFrom, port.capabilities.spill));
  // What is kept about our own cells may be out of date: then theirs and ours are told apart once more.
  if ('done' in ready && ready.reason === 'occupied' && tries === 1) return { namesInUse: [] };
  if (!('changes' in ready)) return ready;
  const { block } = ready.filled;
  await port.apply(
    [...ready.changes, ...rememberPages(known, [ready.entry]), { do: 'show', at: { ...block, rows: 1, columns: 1 } }],
    [...ready.looked, ...tablesSeen(tables)],
    { label: ready.label, receiptKey: LAST_FILL_KEY },
  );
  return ready.filled;
}

async function chooseTarget(
  port: WorkbookPort,
  known: Shop,
  scoped: Scoped,
  request: FillRequest,
  namesInUse: readonly string[],
): Promise<Target> {
  if (request.where === 'planSheet') {
    return ownSheet(known, namesInUse, scoped.key, (taken) => planSheetName(sheetOf(scoped), taken));
  }
  // Once the person agreed, it is the place they agreed to, wherever they are by now.
  const at = request.agreed?.place ?? request.at ?? (await port.selection()).at;
  const place = known.plans.find(
    ({ key, block }) => key === scoped.key && holdsCell(block, at.sheet, at.row, at.column),
  );
  return place ? again(place) : fresh(known, namesInUse, at, false);
}

/** What a new sheet is for, in its name. */
export function sheetOf({ key, job }: Scoped): string {
  if (job === null) return 'of chosen clubs';
  return key.startsWith('part:') ? `${job} part` : job;
}
