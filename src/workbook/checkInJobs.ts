/** A job's check-in: its clubs laid out in Checkin, and what was measured judged there. */
import { canClose, isGripped, type CheckedClub, type ClubPlan } from '../core/index';
import { addRows, roomNeeded } from './addRows';
import { checkInRows, judgedJob, roundOf, type JudgedJob } from './benchJob';
import { columnsAt, folded } from './headings';
import { lookAtJob, type AtBench } from './jobAtBench';
import { jobCell } from './jobNumber';
import { JUDGED_KEY, keepPrints, keptPrints, printOf } from './judgedPrints';
import type { CheckInDone, JudgeDone } from './benchDone';
import type { InTheWay } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { Block, BlockSeen, Cell, Change, Seen, TableSeen, WorkbookPort } from './port';
import type { Row } from './records';
import { CHECKIN, columnOf } from './schema';
import { wrappedLines } from './shared/wrappedLines';
import { isBlankCell, jobName, type ShopTables } from './shop';
import { askFirst, blockOfCell, changedCells, formulaCells, writeCells } from './tableCells';
import type { TableCell } from './tableCell';
import { clubNext, nextText, STATE_WORDS } from '../words/bench';
import { readingText } from '../words/readings';
import type { Planned } from './planTables';

const OURS = ['predicted', 'spread', 'difference', 'predictedMass', 'massDifference', 'standing', 'next'] as const;

/** Gives each club of a job that gets a grip a row in Checkin, never twice. */
export async function startCheckIn(port: WorkbookPort, job: string): Promise<CheckInDone> {
  return politely(async (): Promise<CheckInDone> => {
    const ready = await lookAtJob(port, job);
    if ('done' in ready) return ready;
    const { tables, checkin, planned } = ready;
    const clubs = missingClubs(planned, checkInRows(tables, job));
    const number = jobCell(tables, CHECKIN, checkin, job);
    const rows = clubs.map((club) =>
      checkInRow(checkin, { job: number, club: club.name, ...fittedCells(club), ...weightCells(club) }),
    );
    const { changes, looked, first } = await rowsAdded(port, checkin, rows);
    if (changes.length > 0) {
      await port.apply(
        [...changes, { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }, { do: 'show', at: first }],
        [checkin, ...looked],
        { label: `Check-in of job ${job}`, receiptKey: LAST_FILL_KEY },
      );
    }
    return { done: true, job, added: clubs.length };
  });
}

/** The grip that goes on and its layers, kept beside a club: a plan made later may say otherwise. */
export function fittedCells({ item, layers }: ClubPlan): Readonly<Record<'grip' | 'layers', Cell>> {
  return { grip: item ?? null, layers };
}

/** The weight that goes on, and where. */
function weightCells({ remedy }: ClubPlan): Readonly<Record<'weightOn' | 'weightAt' | 'weighting', Cell>> {
  if (!remedy || remedy.grams === 0) return { weightOn: 0, weightAt: null, weighting: null };
  return { weightOn: remedy.grams, weightAt: Math.round(remedy.inches * 100) / 100, weighting: remedy.way };
}

/** A row of Checkin under whatever order its headings have; cells that are not named stay as they are. */
export function checkInRow(
  checkin: TableSeen,
  values: Readonly<Partial<Record<(typeof CHECKIN)['columns'][number]['key'], Cell>>>,
): (Cell | undefined)[] {
  const at = columnsAt(CHECKIN, checkin.headers);
  const cells = Array<Cell | undefined>(checkin.headers.length).fill(undefined);
  for (const [key, value] of Object.entries(values)) if (at(key) >= 0) cells[at(key)] = value;
  return cells;
}

/** Rows put at the end of Checkin, which is made longer where its blank rows are too few. */
export async function rowsAdded(
  port: WorkbookPort,
  checkin: TableSeen,
  rows: readonly (readonly (Cell | undefined)[])[],
): Promise<{ readonly changes: Change[]; readonly looked: BlockSeen[]; readonly first: Block }> {
  const room = roomNeeded(checkin, rows.length);
  const looked = room ? await port.read([{ read: 'block', at: room }]) : [];
  const changes = addRows(checkin, rows, looked[0] ?? null);
  const write = changes.find((change) => change.do === 'write');
  const at = write?.do === 'write' ? write.at : checkin.at;
  return { changes, looked: [...looked], first: { ...at, rows: 1, columns: 1 } };
}

/** Clubs that have no row yet; of clubs with one name each needs a row. */
function missingClubs({ plan }: Planned, rows: readonly Row[]): ClubPlan[] {
  const there = rows.filter((row) => roundOf(row) === 1).map(({ values }) => folded(values.get('club')));
  const again = new Set(rows.filter((row) => roundOf(row) > 1).map(({ values }) => folded(values.get('club'))));
  return plan.clubs.flatMap((club) => {
    const { name } = club;
    if (!isGripped(club) || again.has(folded(name))) return [];
    const at = there.indexOf(folded(name));
    if (at < 0) return [club];
    there.splice(at, 1);
    return [];
  });
}

/**
 * Judges what was measured and writes it beside each row of the last round. Blank cells and what judging wrote before are written over;
 * what a person typed in these columns is asked about, and other columns are left alone.
 */
export async function judgeCheckIn(
  port: WorkbookPort,
  job: string,
  agreed: InTheWay | null = null,
): Promise<JudgeDone> {
  return politely(async (): Promise<JudgeDone> => {
    const ready = await lookAtJob(port, job);
    if ('done' in ready) return ready;
    const { tables, checkin, planned } = ready;
    const judged = judgedJob(tables, job, planned);
    if (judged.rows.length === 0) return { done: false, reason: 'notStarted' };
    const judging = await judgingOf(port, ready, judged, job);
    const question = askFirst(null, judging.theirs, agreed);
    if (question) return question;
    const { cells } = judging;
    await port.apply(
      [
        ...writeCells(checkin, cells, identity(checkin)),
        ...wrapped(checkin, cells),
        judging.remember,
        // where the judged rows begin: a table of many jobs may show others
        ...(cells[0] ? [{ do: 'show', at: blockOfCell(checkin, { ...cells[0], column: 0 }) } as const] : []),
        ...(cells.length > 0 ? [{ do: 'remember', key: PLANS_BEFORE_KEY, value: '' } as const] : []),
      ],
      [checkin],
      { label: `Judged check-in of job ${job}`, ...(cells.length > 0 ? { receiptKey: LAST_FILL_KEY } : {}) },
    );
    return { done: true, job, cells: cells.length, closing: canClose(judged.checkIn) };
  });
}

/** How many cells of Checkin do not say yet what judging it now would write there. */
export function unjudgedCells({ Checkin: checkin }: Pick<ShopTables, 'Checkin'>, judged: JudgedJob): number {
  return checkin ? changedCells(checkin, judgedCells(checkin, judged)).length : 0;
}

/** What judging would change. */
interface Judging {
  readonly cells: readonly TableCell[];
  /** Those of the cells that hold a formula, or what a person typed. */
  readonly theirs: readonly Block[];
  /** Keeps which cells are ours from now on. */
  readonly remember: Change;
}

async function judgingOf(
  port: WorkbookPort,
  ready: Pick<AtBench, 'checkin'>,
  judged: JudgedJob,
  job: string,
): Promise<Judging> {
  const { checkin } = ready;
  const kept = keptPrints(await port.recall(JUDGED_KEY));
  const wanted = judgedCells(checkin, judged);
  const whose = cellsOf(ready, judged);
  const ours = new Set(kept[folded(job)]);
  const cells = changedCells(checkin, wanted);
  const prints = [...stillOurs(checkin, wanted, whose, ours), ...wanted.map((cell) => whose(cell, cell.value))];
  const at = columnsAt(CHECKIN, checkin.headers)('job');
  const jobsThere = checkin.rows.map((row) => jobName(row[at]));
  return {
    cells,
    theirs: notOurs(checkin, cells, whose, ours),
    remember: { do: 'remember', key: JUDGED_KEY, value: keepPrints(kept, job, prints, jobsThere) },
  };
}

/** Judging as a closed job leaves it: what a person typed over it is left alone, and not asked about. */
export async function lastJudging(
  port: WorkbookPort,
  ready: Pick<AtBench, 'checkin'>,
  judged: JudgedJob,
  job: string,
): Promise<Change[]> {
  const { checkin } = ready;
  const { cells, theirs, remember } = await judgingOf(port, ready, judged, job);
  const left = ({ row, column }: TableCell): boolean => {
    const at = blockOfCell(checkin, { row, column });
    return theirs.some((cell) => cell.row === at.row && cell.column === at.column);
  };
  const changed = cells.filter((cell) => !left(cell));
  return [...writeCells(checkin, changed, identity(checkin)), ...wrapped(checkin, changed), remember];
}

const LINE_POINTS = 15;

/** What to do is a sentence or two: rows are made as high as it needs, so that it is read and printed whole. */
function wrapped(checkin: TableSeen, cells: readonly TableCell[]): Change[] {
  const { width } = columnOf(CHECKIN, 'next');
  const column = columnsAt(CHECKIN, checkin.headers)('next');
  return cells
    .filter((cell) => cell.column === column)
    .map((cell) => {
      const lines = typeof cell.value === 'string' ? wrappedLines(cell.value, width) : 1;
      const format = { wrap: true, height: LINE_POINTS * lines } as const;
      return { do: 'format', at: blockOfCell(checkin, cell), format };
    });
}

/** Columns by which a row is known after a sort. */
function identity({ headers }: TableSeen): number[] {
  const at = columnsAt(CHECKIN, headers);
  return ['job', 'club', 'round'].map(at).filter((column) => column >= 0);
}

/** The print that a value has in a cell of the judged rows. */
type Whose = (cell: TableCell, value: Seen) => string;

function cellsOf({ checkin }: Pick<AtBench, 'checkin'>, { rows }: JudgedJob): Whose {
  const at = columnsAt(CHECKIN, checkin.headers);
  const byRow = new Map(rows.map((row) => [row.row, row]));
  const keys = new Map<number, string>(OURS.map((key) => [at(key), key]));
  return ({ row, column }, value) => {
    const judged = byRow.get(row);
    const club = String(judged?.values.get('club') ?? '');
    return printOf({ club, round: judged ? roundOf(judged) : 1, key: keys.get(column) ?? '', value });
  };
}

/** Cells to be written that hold a formula, or something that judging did not write. */
function notOurs(checkin: TableSeen, cells: readonly TableCell[], whose: Whose, ours: ReadonlySet<string>): Block[] {
  const formulas = formulaCells(checkin, cells);
  const typed = cells.filter((cell) => {
    const value = checkin.rows[cell.row - 1]?.[cell.column];
    return !isBlankCell(value) && !ours.has(whose(cell, value ?? null));
  });
  const isFormula = ({ row, column }: Block): boolean =>
    formulas.some((cell) => cell.row === row && cell.column === column);
  return [...formulas, ...typed.map((cell) => blockOfCell(checkin, cell)).filter((cell) => !isFormula(cell))];
}

/** Prints of what stands there of an earlier judging: taking back the next one brings it up again. */
function stillOurs(checkin: TableSeen, cells: readonly TableCell[], whose: Whose, ours: ReadonlySet<string>): string[] {
  return cells
    .map((cell) => whose(cell, checkin.rows[cell.row - 1]?.[cell.column] ?? null))
    .filter((print) => ours.has(print));
}

function judgedCells(checkin: TableSeen, { checkIn, rows }: JudgedJob): TableCell[] {
  const at = columnsAt(CHECKIN, checkin.headers);
  return rows.flatMap(({ row, sheetRow }) => {
    const club = checkIn.clubs.find(({ measured }) => measured?.sheetRow === sheetRow);
    const wrong = checkIn.issues.filter(({ field }) => field.startsWith(`${CHECKIN.name} row ${sheetRow},`));
    const values = { ...judgement(club), next: (club ? clubNext(club, wrong) : nextText([], wrong)) || null };
    // an older workbook lacks some
    return OURS.filter((key) => at(key) >= 0).map((key) => ({ row, column: at(key), value: values[key] }));
  });
}

function judgement(
  club: CheckedClub | undefined,
): Record<Exclude<(typeof OURS)[number], 'next'>, string | number | null> {
  const { reading, massGrams } = club?.expected ?? {};
  const round = (value: number | undefined): number | null =>
    value === undefined ? null : Math.round(value * 10) / 10;
  return {
    predicted: reading ? readingText(reading.value) : null,
    spread: round(reading?.spread),
    difference: round(club?.off.reading?.by),
    predictedMass: round(massGrams?.value),
    massDifference: round(club?.off.massGrams?.by),
    standing: club ? STATE_WORDS[club.state] : null,
  };
}
