/** A job's check-in: its clubs laid out in Checkin, what was measured judged there, and the job closed. */
import { canClose, type CheckedClub } from '../core/index';
import { checkInRows, judgedJob, planJob, type JudgedJob } from './benchJob';
import { columnsAt, folded, lackingHeaders } from './headings';
import type { CheckInDone, CloseDone, InTheWay, JudgeDone } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { TableSeen, WorkbookPort } from './port';
import { isBlank, type Row } from './records';
import { CHECKIN, CLUBS, columnOf, JOBS } from './schema';
import { shopTables, tableQueries, type ShopTables } from './shop';
import { askFirst, changedCells, formulaCells, writeCells } from './tableCells';
import type { TableCell } from './tableCell';
import { nextText, STATE_WORDS } from '../words/bench';
import { readingText } from '../words/readings';
import type { Planned } from './planTables';

const OURS = ['predicted', 'spread', 'difference', 'standing', 'next'] as const;

interface Ready {
  readonly tables: ShopTables;
  readonly checkin: TableSeen;
  readonly planned: Planned;
}

type NotReady = Extract<
  CheckInDone & { done: false },
  { reason: 'tableMissing' | 'columnMissing' | 'noClubs' | 'notPlanned' }
>;

async function look(port: WorkbookPort, job: string): Promise<Ready | NotReady> {
  const tables = shopTables(await port.read(tableQueries()));
  const { Checkin: checkin, Clubs } = tables;
  if (!Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
  if (!checkin) return { done: false, reason: 'tableMissing', table: CHECKIN.name };
  const lacking = lackingHeaders(checkin.headers, CHECKIN, false);
  if (lacking.length > 0) return { done: false, reason: 'columnMissing', table: CHECKIN.name, headers: lacking };
  const planned = planJob(tables, job);
  if (!planned) return { done: false, reason: 'noClubs' };
  if (!planned.ok) return { done: false, reason: 'notPlanned', issue: planned.issue };
  return { tables, checkin, planned: planned.value };
}

/** Gives each club of a job that gets a grip a row in Checkin, never twice, in rows that hold nothing. */
export async function startCheckIn(port: WorkbookPort, job: string): Promise<CheckInDone> {
  return politely(async (): Promise<CheckInDone> => {
    const ready = await look(port, job);
    if ('done' in ready) return ready;
    const { tables, checkin, planned } = ready;
    const names = missingClubs(planned, checkInRows(tables, job));
    const free = blankRows(checkin);
    if (free.length < names.length) return { done: false, reason: 'noRows', needed: names.length, free: free.length };
    const at = columnsAt(CHECKIN, checkin.headers);
    const cells = names.flatMap((name, i): TableCell[] => {
      const row = free[i] ?? 0;
      return [
        { row, column: at('job'), value: job },
        { row, column: at('club'), value: name },
      ];
    });
    // What names a row is written here, so the rows are known by where they stand.
    const changes = writeCells(checkin, cells, []).map((change) => {
      if (change.do !== 'write') return change;
      const { of: _byName, ...plain } = change;
      return plain;
    });
    if (changes.length > 0) {
      const first = { ...checkin.at, row: checkin.at.row + (free[0] ?? 1), rows: 1, columns: 1 };
      await port.apply(
        [...changes, { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }, { do: 'show', at: first }],
        [checkin],
        { label: `Check-in of job ${job}`, receiptKey: LAST_FILL_KEY },
      );
    }
    return { done: true, job, added: names.length };
  });
}

/** Names of clubs that have no row yet; of clubs with one name each needs a row. */
function missingClubs({ plan }: Planned, rows: readonly Row[]): string[] {
  const there = rows.map(({ values }) => folded(values.get('club')));
  return plan.clubs.flatMap(({ grip, name }) => {
    if (!grip) return [];
    const at = there.indexOf(folded(name));
    if (at < 0) return [name];
    there.splice(at, 1);
    return [];
  });
}

/** Body rows, from 1, that hold nothing and no formula: those below the last used one first. */
function blankRows({ rows, formulas }: TableSeen): number[] {
  const blank = rows.map((row, i) => row.every(isBlank) && !(formulas?.[i] ?? []).some((text) => text !== null));
  const last = blank.lastIndexOf(false);
  const all = blank.flatMap((free, i) => (free ? [i + 1] : []));
  return [...all.filter((row) => row > last + 1), ...all.filter((row) => row <= last)];
}

/** Judges what was measured and writes it beside each row; columns of a person are left alone. */
export async function judgeCheckIn(
  port: WorkbookPort,
  job: string,
  agreed: InTheWay | null = null,
): Promise<JudgeDone> {
  return politely(async (): Promise<JudgeDone> => {
    const ready = await look(port, job);
    if ('done' in ready) return ready;
    const { tables, checkin, planned } = ready;
    const judged = judgedJob(tables, job, planned);
    if (judged.rows.length === 0) return { done: false, reason: 'notStarted' };
    const cells = changedCells(checkin, judgedCells(checkin, judged));
    const question = askFirst(null, formulaCells(checkin, cells), agreed);
    if (question) return question;
    const at = columnsAt(CHECKIN, checkin.headers);
    if (cells.length > 0) {
      await port.apply(
        [...writeCells(checkin, cells, [at('job'), at('club')]), { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }],
        [checkin],
        { label: `Judged check-in of job ${job}`, receiptKey: LAST_FILL_KEY },
      );
    }
    return { done: true, job, cells: cells.length, closing: canClose(judged.checkIn) };
  });
}

function judgedCells(checkin: TableSeen, { checkIn, rows }: JudgedJob): TableCell[] {
  const at = columnsAt(CHECKIN, checkin.headers);
  return rows.flatMap(({ row, sheetRow }) => {
    const club = checkIn.clubs.find(({ measured }) => measured?.sheetRow === sheetRow);
    const wrong = checkIn.issues.filter(({ field }) =>
      field.toLowerCase().replace('-', '').startsWith(`checkin row ${sheetRow},`),
    );
    const values = { ...judgement(club), next: nextText(club?.next ?? [], wrong) || null };
    return OURS.map((key) => ({ row, column: at(key), value: values[key] }));
  });
}

function judgement(
  club: CheckedClub | undefined,
): Record<Exclude<(typeof OURS)[number], 'next'>, string | number | null> {
  const reading = club?.expected.reading;
  const round = (value: number | undefined): number | null =>
    value === undefined ? null : Math.round(value * 10) / 10;
  return {
    predicted: reading ? readingText(reading.value) : null,
    spread: round(reading?.spread),
    difference: round(club?.off.reading?.by),
    standing: club ? STATE_WORDS[club.state] : null,
  };
}

/** Sets the job's Status to Done, only when every club is accepted or waived; else says what is open. */
export async function closeJob(port: WorkbookPort, job: string, agreed: InTheWay | null = null): Promise<CloseDone> {
  return politely(async (): Promise<CloseDone> => {
    const ready = await look(port, job);
    if ('done' in ready) return ready;
    const { tables, planned } = ready;
    const closing = canClose(judgedJob(tables, job, planned).checkIn);
    if (!closing.closes) return { done: false, reason: 'open', closing };
    const jobs = tables.Jobs;
    if (!jobs) return { done: false, reason: 'tableMissing', table: JOBS.name };
    const at = columnsAt(JOBS, jobs.headers);
    if (at('status') < 0) {
      return { done: false, reason: 'columnMissing', table: JOBS.name, headers: [columnOf(JOBS, 'status').header] };
    }
    const row = jobs.rows.findIndex((each) => folded(each[at('job')]) === folded(job)) + 1;
    if (row === 0) return { done: false, reason: 'jobNotListed', job };
    const cells = changedCells(jobs, [{ row, column: at('status'), value: 'Done' }]);
    const question = askFirst(null, formulaCells(jobs, cells), agreed);
    if (question) return question;
    if (cells.length > 0) {
      await port.apply(
        [...writeCells(jobs, cells, [at('job')]), { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }],
        [jobs],
        { label: `Job ${job} closed`, receiptKey: LAST_FILL_KEY },
      );
    }
    return { done: true, job };
  });
}
