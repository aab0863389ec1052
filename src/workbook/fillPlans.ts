/** Filling the plans of many jobs, each into its own sheet: one read and one write for all of them. */
import type { Progress } from '../core/index';
import type { FillDone, Filled, NotDone } from './outcomes';
import { ALWAYS, atEase, paced, STOPPED, type GoOn, type Stopped } from './pace';
import { again, fresh, ownSheet, rememberPages, untilKnown } from './pagePlace';
import type { LookAgain } from './pagePlace';
import { planQueries, readySteps } from './planDraft';
import type { PlanDraft, ReadyPlan } from './planDraft';
import { LAST_FILL_KEY } from './planPlaces';
import type { PlanPlace } from './planPlaces';
import { scopeRows } from './planScope';
import { politely } from './polite';
import { PortError } from './port';
import type { Answers, Change, Query, TableSeen, WorkbookPort } from './port';
import { CLUBS, TABLES } from './schema';
import { planSheetName } from './sheetName';
import { shopTables, tableQueries, tablesSeen } from './shop';
import type { Shop, ShopTables } from './shop';

/** A job whose plan was not filled, and why; the others were. */
export interface JobLeft {
  readonly job: string;
  readonly end: Exclude<FillDone, { done: true }>;
}

export interface PlansFilled {
  readonly done: true;
  readonly filled: readonly (Filled & { readonly job: string })[];
  readonly left: readonly JobLeft[];
}

/** What is written in the same step as the plans: rows of a ledger, say. */
export interface Beside {
  readonly changes: readonly Change[];
}

export interface PlansAsked {
  readonly jobs: readonly string[];
  /** Plans of these jobs, in their order, that are filled where they stand, in sheets of ours or not. */
  readonly over?: readonly PlanPlace[];
  /** What taking it back is called. */
  readonly label: string;
  /** Other changes that go into the same write, made from the tables as they are looked at then. */
  readonly beside?: (tables: ShopTables) => Beside;
  /** Asked between the jobs that are worked out; stopped, nothing is written. */
  readonly goOn?: GoOn;
}

interface Drafted {
  readonly job: string;
  readonly draft: PlanDraft;
}

/**
 * Fills the plans of whole jobs, each into a sheet of its own, or over itself where it stands. A job that cannot be filled (cells of
 * a person's in its way, no clubs) is left out and named; nothing is written over without having been asked about.
 *
 * @returns what was filled and what was left; not done where the workbook kept changing or refused
 */
export async function fillPlans(
  port: WorkbookPort,
  shop: Shop,
  asked: PlansAsked,
): Promise<PlansFilled | NotDone | Stopped> {
  return politely(async (): Promise<PlansFilled | NotDone | Stopped> => {
    const end = await untilKnown<PlansFilled | NotDone | Stopped>(port, shop, (known, tries, namesInUse) =>
      attempt(port, shop, known, asked, tries, namesInUse),
    );
    return end ?? { done: false, reason: 'port', error: new PortError('notLookedAt') };
  });
}

async function attempt(
  port: WorkbookPort,
  chosenFrom: Shop,
  known: Shop,
  { jobs, over, label, beside, goOn = ALWAYS }: PlansAsked,
  tries: number,
  namesInUse: readonly string[],
): Promise<PlansFilled | NotDone | Stopped | LookAgain> {
  const { Clubs } = known.tables;
  if (!Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
  const drafts = await paced(draftsOf({ known, clubs: Clubs, namesInUse }, jobs, over), goOn);
  if (!drafts) return STOPPED;
  const looks = await lookAtAll(port, drafts);
  const left: JobLeft[] = [];
  const ready: (ReadyPlan & { readonly job: string })[] = [];
  for (const [at, { job, draft }] of drafts.entries()) {
    if (!(await goOn({ done: at, of: drafts.length }))) return STOPPED;
    const look = looks.places[at];
    if (!look) {
      left.push({ job, end: { done: false, reason: 'noRoom' } });
      continue;
    }
    if (look.area.protected) {
      const error = new PortError('protected', [draft.target.sheet]);
      left.push({ job, end: { done: false, reason: 'port', error } });
      continue;
    }
    const seen = { ...look, tables: looks.tables };
    const plan = await atEase(readySteps(draft, seen, chosenFrom, port.capabilities.spill));
    if ('changes' in plan) ready.push({ ...plan, job });
    // What is known may be out of date: the workbook is read again before anything is left out.
    else if (!('done' in plan)) return plan;
    else if (plan.reason === 'occupied' && tries === 1) return { namesInUse: [] };
    else left.push({ job, end: plan });
  }
  // The last chance to stop: what follows is the one write.
  if (!(await goOn({ done: drafts.length, of: drafts.length }))) return STOPPED;
  const other = beside?.(looks.tables).changes ?? [];
  if (ready.length + other.length > 0) {
    await port.apply(
      [
        ...ready.flatMap(({ changes }) => changes),
        ...other,
        ...rememberPages(
          known,
          ready.map(({ entry }) => entry),
        ),
      ],
      [...ready.flatMap(({ looked }) => looked), ...tablesSeen(looks.tables)],
      { label, receiptKey: LAST_FILL_KEY },
    );
  }
  return { done: true, filled: ready.map(({ filled, job }) => ({ ...filled, job })), left };
}

interface Drafting {
  readonly known: Shop;
  readonly clubs: TableSeen;
  readonly namesInUse: readonly string[];
}

/** A place for each job, none of them twice. */
function* draftsOf(
  { known, clubs, namesInUse }: Drafting,
  jobs: readonly string[],
  over: readonly PlanPlace[] = [],
): Generator<Progress, Drafted[]> {
  let shop = known;
  const drafts: Drafted[] = [];
  for (const [at, job] of jobs.entries()) {
    yield { done: 0, of: jobs.length };
    const guess = scopeRows(clubs, { job });
    const stands = known.plans.find(({ name }) => name === over[at]?.name);
    const target = stands ? again(stands) : ownSheet(shop, namesInUse, guess.key, (taken) => planSheetName(job, taken));
    if (!target.place)
      shop = { ...shop, plans: [...shop.plans, promised(fresh(shop, namesInUse, target, true), guess)] };
    drafts.push({ job, draft: { request: { scope: { job }, choices: {}, as: 'live' }, target, guess } });
  }
  return drafts;
}

/** A place that is given out, so that the next job gets another. */
function promised({ name, sheet, row, column }: ReturnType<typeof fresh>, { key, job }: PlanDraft['guess']): PlanPlace {
  const block = { sheet, row, column, rows: 1, columns: 1 };
  return { name, key, job, ownSheet: true, cellPrints: [], rowPrints: [], block };
}

type Places = Answers<NonNullable<ReturnType<typeof planQueries>>>;

async function lookAtAll(port: WorkbookPort, drafts: readonly Drafted[]) {
  const queries = drafts.map(({ draft }) => planQueries(draft));
  const answers: readonly unknown[] = await port.read<readonly Query[]>([
    ...tableQueries(),
    ...queries.flatMap((each) => each ?? []),
  ]);
  const tables = shopTables(answers.slice(0, TABLES.length) as (TableSeen | null)[]);
  let next = TABLES.length;
  const places = queries.map((each) => {
    if (!each) return null;
    const [name, area, spare] = answers.slice(next, next + each.length) as unknown as Places;
    next += each.length;
    return { name, area, spare };
  });
  return { tables, places };
}
