/** Beginning a job: its row in Jobs and its clubs in Clubs, in rows that hold nothing. */
import { addRows, roomNeeded } from './addRows';
import { columnsAt, folded } from './headings';
import type { JobDone, JobFault, JobRequest } from './intakeOutcomes';
import { jobCell, lastGivenAfter, LAST_JOB_KEY, namedJobs, nextJob } from './jobNumber';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { Block, BlockSeen, Cell, Query, TableSeen, WorkbookPort } from './port';
import { CLUBS, columnOf, JOBS, TABLES, type TableSchema } from './schema';
import { shopTables, tableQueries, type ShopTables } from './shop';
import { tagsFrom, tagsOut } from './tags';

/** Writes a job and its clubs. Nothing that is there is written over, and its number is one that was never given. */
export async function startJob(port: WorkbookPort, request: JobRequest): Promise<JobDone> {
  return politely(async (): Promise<JobDone> => {
    const lastGiven = await port.recall(LAST_JOB_KEY);
    const ready = await look(port, request);
    if ('done' in ready) return ready;
    const { tables, jobs, clubs, below } = ready;
    const job = request.job?.trim() || nextJob(namedJobs(tables), lastGiven);
    const fault = jobFault(tables, request, job);
    if (fault) return { done: false, reason: 'fault', fault };
    const clubChanges = addRows(clubs, clubLines(tables, clubs, request, job), below.clubs);
    const written = clubChanges.find((change) => change.do === 'write');
    await port.apply(
      [
        ...addRows(jobs, [jobLine(tables, jobs, request, job)], below.jobs),
        ...clubChanges,
        { do: 'remember', key: PLANS_BEFORE_KEY, value: '' },
        { do: 'remember', key: LAST_JOB_KEY, value: lastGivenAfter(job, lastGiven) },
        ...(written ? [{ do: 'show', at: { ...written.at, rows: 1, columns: 1 } } as const] : []),
      ],
      [jobs, clubs, ...[below.jobs, below.clubs].flatMap((seen) => seen ?? [])],
      { label: `Job ${job} begun`, receiptKey: LAST_FILL_KEY },
    );
    const instead = request.suggested !== null && folded(request.suggested) !== folded(job) && !request.job?.trim();
    return {
      done: true,
      job,
      insteadOf: instead ? request.suggested : null,
      clubs: request.clubs.length,
      takenOver: lastOf(request).length,
    };
  });
}

/** What is wrong with a job as it is asked for; undefined where nothing is. */
export function jobFault(tables: ShopTables, request: JobRequest, job: string | null): JobFault | undefined {
  const { customer, clubs, due, today, firstTag } = request;
  if (customer.trim() === '') return { why: 'noCustomer' };
  if (clubs.length === 0) return { why: 'noClubs' };
  if (due !== null && due < today) return { why: 'duePast', due, today };
  if (job !== null && namedJobs(tables).some((each) => folded(each) === folded(job))) return { why: 'jobUsed', job };
  if (firstTag.trim() === '') return undefined;
  const tags = tagsFrom(firstTag, clubs.length);
  if (!tags) return { why: 'tagNoNumber', tag: firstTag.trim() };
  const by = tagsOut(tables).find((out) => tags.some((tag) => folded(tag) === folded(out.tag)));
  return by ? { why: 'tagUsed', tag: by.tag, by } : undefined;
}

/* ------------------------------------------------------------------ looking */

interface Ready {
  readonly tables: ShopTables;
  readonly jobs: TableSeen;
  readonly clubs: TableSeen;
  /** Where the tables grow; null where their own blank rows are enough. */
  readonly below: { readonly jobs: BlockSeen | null; readonly clubs: BlockSeen | null };
}

type NotReady = Extract<JobDone, { reason: 'tableMissing' | 'columnMissing' }>;

/** The tables, and where they are too short, what stands below them: in one trip, so that all of it was there at once. */
async function look(port: WorkbookPort, request: JobRequest): Promise<Ready | NotReady> {
  let room: readonly (Block | null)[] = [null, null];
  // a table that grows meanwhile wants other rows below it; somebody who keeps adding rows is refused by the port
  for (let tries = 1; ; tries += 1) {
    const blocks = room.flatMap((at) => (at ? [{ read: 'block', at } as const] : []));
    const answers = await port.read<readonly Query[]>([...tableQueries(), ...blocks]);
    const tables = shopTables(answers.slice(0, TABLES.length) as readonly (TableSeen | null)[]);
    const ready = readyTables(tables);
    if ('done' in ready) return ready;
    const seen = answers.slice(TABLES.length) as readonly BlockSeen[];
    const needed = [roomNeeded(ready.jobs, 1), roomNeeded(ready.clubs, request.clubs.length)];
    if (JSON.stringify(needed) === JSON.stringify(room) || tries === 3) {
      const [jobs = null, clubs = null] = room.map((at) => seen.find((each) => isAt(each, at)) ?? null);
      return { ...ready, tables, below: { jobs, clubs } };
    }
    room = needed;
  }
}

function isAt({ at }: BlockSeen, where: Block | null): boolean {
  return where !== null && at.sheet === where.sheet && at.row === where.row && at.column === where.column;
}

function readyTables({ Jobs, Clubs }: ShopTables): Pick<Ready, 'jobs' | 'clubs'> | NotReady {
  if (!Jobs) return { done: false, reason: 'tableMissing', table: JOBS.name };
  if (!Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
  const lacking = missing(JOBS, Jobs, ['job', 'customer']) ?? missing(CLUBS, Clubs, ['job', 'club']);
  return lacking ?? { jobs: Jobs, clubs: Clubs };
}

function missing(schema: TableSchema, table: TableSeen, keys: readonly string[]): NotReady | undefined {
  const at = columnsAt(schema, table.headers);
  const headers = keys.filter((key) => at(key) < 0).map((key) => columnOf(schema, key).header);
  return headers.length > 0 ? { done: false, reason: 'columnMissing', table: schema.name, headers } : undefined;
}

/* ------------------------------------------------------------------ the rows */

/** A row under whatever headings a table has; what it has no column for is left out, what is not said is left alone. */
function line(
  schema: TableSchema,
  { headers }: TableSeen,
  values: Readonly<Record<string, Cell | undefined>>,
): (Cell | undefined)[] {
  const at = columnsAt(schema, headers);
  const cells = Array<Cell | undefined>(headers.length).fill(undefined);
  for (const [key, value] of Object.entries(values)) {
    if (at(key) >= 0 && value !== '' && value !== null) cells[at(key)] = value;
  }
  return cells;
}

function jobLine(
  tables: ShopTables,
  jobs: TableSeen,
  { customer, due, today, authorisedBy }: JobRequest,
  job: string,
): (Cell | undefined)[] {
  return line(JOBS, jobs, {
    job: jobCell(tables, JOBS, jobs, job),
    customer: customer.trim(),
    received: today,
    due,
    authorisedBy: authorisedBy.trim(),
    status: 'Open',
  });
}

function clubLines(tables: ShopTables, clubs: TableSeen, request: JobRequest, job: string): (Cell | undefined)[][] {
  const number = jobCell(tables, CLUBS, clubs, job);
  const tags = tagsFrom(request.firstTag, request.clubs.length) ?? [];
  return request.clubs.map(({ name, kind }, at) => {
    const last = request.last.find(({ club }) => folded(club) === folded(name));
    return line(CLUBS, clubs, {
      job: number,
      club: name,
      kind,
      hand: request.hand,
      tag: tags[at],
      newItem: last?.item,
      layers: last?.layers,
      lowerLayers: last?.lowerLayers,
      targetDiameter: last?.layers === undefined ? last?.targetDiameter : undefined,
    });
  });
}

function lastOf({ clubs, last }: JobRequest): JobRequest['last'] {
  return last.filter(({ club }) => clubs.some(({ name }) => folded(name) === folded(club)));
}
