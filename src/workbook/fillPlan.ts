/** Filling a set's plan into the workbook: one read, one write. */
import { clubIdentities, sameClubs, writeClubs } from './clubCells';
import { byRow, chosenCells, lackingChoices } from './choices';
import { jobFacts } from './jobFacts';
import type { FillDone, FillRequest, WhyValues } from './outcomes';
import { foreignCells, putOver } from './pageCells';
import {
  again,
  blockAt,
  fits,
  fresh,
  lookAgain,
  ownSheet,
  rememberPage,
  standsThere,
  untilKnown,
  withOlder,
} from './pagePlace';
import type { LookAgain, Target } from './pagePlace';
import { PLAN_COLUMNS, planCells } from './planCells';
import { cellPrints, LAST_FILL_KEY, rowPrints } from './planPlaces';
import type { PlanEntry } from './planPlaces';
import { planCall, planScope, scopeRows, whyValues } from './planScope';
import type { Scoped } from './planScope';
import { dressBody, dressHead, dressSheet, HEAD_ROWS, headCells, SPARE_ROWS } from './planSheet';
import type { Highlighted } from './planSheet';
import type { Planned } from './planTables';
import { politely } from './polite';
import { PortError } from './port';
import type { Block, BlockSeen, Cell, Change, NameSeen, Put, TableSeen, WorkbookPort } from './port';
import { CLUBS, TABLES } from './schema';
import { holdsCell } from './shared/address';
import { MOST_ROWS } from './shared/limits';
import { planSheetName } from './sheetName';
import { isBlankCell, matrixOf, shopTables, tableQueries } from './shop';
import type { Shop, ShopTables } from './shop';
import { askFirst, changedCells, formulaCells } from './tableCells';
import type { TableCell } from './tableCell';

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
  if (!fits(planBlock(target, guess.rows.length))) return { done: false, reason: 'noRoom' };
  const look = await lookAt(port, target, guess.rows.length);
  const clubs = look.tables.Clubs;
  if (!clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
  // A plan over a table, perhaps over the very clubs it is made of, is never meant: this is not asked but refused.
  if (!target.place && look.area.tables.length > 0) {
    return { done: false, reason: 'port', error: new PortError('tableInTheWay', look.area.tables) };
  }
  const scoped = scopeRows(clubs, request.scope);
  if (scoped.rows.length !== guess.rows.length || scoped.key !== guess.key || !standsThere(target, look.name)) {
    return lookAgain(target, look.name);
  }
  if (!clubsStand(chosenFrom, clubs, scoped, request)) return { done: false, reason: 'clubsMoved' };
  if (scoped.rows.length === 0) return { done: false, reason: 'noClubs' };
  const lacking = lackingChoices(matrixOf(clubs), scoped.rows, request.choices);
  if (lacking.length > 0) return { done: false, reason: 'columnMissing', table: CLUBS.name, headers: lacking };
  const planned = planScope(look.tables, scoped, request.choices);
  if (!planned.ok) return { done: false, reason: 'notPlanned', issue: planned.issue };
  const job: Job = { port, known, request, target, look, clubs, scoped, planned: planned.value };
  const cells = choiceCells(job);
  const place = planBlock(target, scoped.rows.length);
  const question = askFirst(
    place,
    [...formulaCells(clubs, cells), ...foreignCells(look.area, target.place, place)],
    request.agreed,
  );
  // What is kept about our own cells may be out of date: then theirs and ours are told apart once more.
  if (question && tries === 1) return { namesInUse: [] };
  return question ?? write(job, cells);
}

/** Everything one attempt knows. */
interface Job {
  readonly port: WorkbookPort;
  readonly known: Shop;
  readonly request: FillRequest;
  readonly target: Target;
  readonly look: Look;
  readonly clubs: TableSeen;
  readonly scoped: Scoped;
  readonly planned: Planned;
}

/* ------------------------------------------------------------------ where */

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
function sheetOf({ key, job }: Scoped): string {
  if (job === null) return 'of chosen clubs';
  return key.startsWith('part:') ? `${job} part` : job;
}

/** The block the plan takes with so many clubs. */
function planBlock(target: Target, clubs: number): Block {
  return blockAt(target, { rows: HEAD_ROWS + 1 + clubs, columns: PLAN_COLUMNS.length });
}

/* ------------------------------------------------------------------ looking */

interface Look {
  readonly tables: ShopTables;
  readonly name: NameSeen;
  /** The plan's block, and what an older, larger plan took. */
  readonly area: BlockSeen;
  /** Rows below, for the plan to grow into. */
  readonly spare: BlockSeen;
}

async function lookAt(port: WorkbookPort, target: Target, clubs: number): Promise<Look> {
  const area = withOlder(target, planBlock(target, clubs));
  const below = area.row + area.rows;
  // At the very end of a sheet there is nothing below: then the last row of the plan stands in for it.
  const spareRows = Math.max(0, Math.min(SPARE_ROWS, MOST_ROWS - below));
  const spare = spareRows > 0 ? { ...area, row: below, rows: spareRows } : { ...area, row: below - 1, rows: 1 };
  const answers = await port.read([
    { read: 'name', name: target.name },
    { read: 'block', at: area },
    { read: 'block', at: spare },
    ...tableQueries(),
  ]);
  const [name, areaSeen, spareSeen, ...tables] = answers;
  return { name, area: areaSeen, spare: spareSeen, tables: shopTables(tables.slice(0, TABLES.length)) };
}

/**
 * Whether the clubs are those that were chosen: each in its row, or, for a whole job of which no club has a choice of its own,
 * the same ones in any order.
 */
function clubsStand(chosenFrom: Shop, clubs: TableSeen, scoped: Scoped, { scope, choices }: FillRequest): boolean {
  const before = chosenFrom.tables.Clubs;
  if (!before) return false;
  if ('rows' in scope) return sameClubs(before, clubs, scope.rows);
  const was = scopeRows(before, scope).rows;
  const names = (table: TableSeen, rows: readonly number[]): string =>
    rows.map(clubIdentities(table)).sort().join('\n');
  if (names(before, was) !== names(clubs, scoped.rows)) return false;
  // The same rows hold the same clubs; the set's names being equal, none is missing.
  return !byRow(choices) || (was.join() === scoped.rows.join() && sameClubs(before, clubs, was));
}

function choiceCells({ clubs, scoped, request }: Job): TableCell[] {
  return changedCells(clubs, chosenCells(matrixOf(clubs), scoped.rows, request.choices));
}

/* ------------------------------------------------------------------ writing */

async function write(job: Job, choices: readonly TableCell[]): Promise<FillDone> {
  const { port, request, target, look, clubs, scoped } = job;
  const why = whyValues(request, scoped, port.capabilities.spill);
  const block = planBlock(target, scoped.rows.length);
  const head = headCells({ ...jobFacts(look.tables, scoped.job), someClubs: !scoped.wholeJob });
  const plan: Cell[][] = planCells(job.planned.plan, job.planned.problems).map((row) =>
    row.map((cell) => (cell === '' ? null : cell)),
  );
  const rows: Put[][] = why === null ? [...head, ...liveCells(job, plan)] : [...head, ...plan];
  const entry: PlanEntry = {
    name: target.name,
    key: scoped.key,
    job: scoped.job,
    ownSheet: target.ownSheet,
    cellPrints: cellPrints(head),
    rowPrints: why === null ? [] : rowPrints(plan),
  };
  const tables = Object.values(look.tables).filter((table): table is TableSeen => table !== null);
  await port.apply(
    [
      ...(target.ownSheet ? [{ do: 'sheet', name: target.sheet } as const] : []),
      ...writeClubs(clubs, choices),
      ...dress(job, block, plan),
      { do: 'write', at: look.area.at, cells: putOver(look.area, target.place, rows) },
      { do: 'name', name: target.name, at: block },
      ...rememberPage(job.known, entry),
      { do: 'show', at: { ...block, rows: 1, columns: 1 } },
    ],
    [look.area, look.spare, ...tables],
    { label: fillLabel(scoped), receiptKey: LAST_FILL_KEY },
  );
  return filled(block, scoped, choices.length, why);
}

function filled(block: Block, scoped: Scoped, choicesWritten: number, why: WhyValues | null): FillDone {
  return {
    done: true,
    sheet: block.sheet,
    block,
    clubs: scoped.rows.length,
    choicesWritten,
    as: why === null ? 'live' : 'values',
    whyValues: why,
  };
}

function fillLabel({ job, wholeJob }: Scoped): string {
  if (job === null) return 'Plan of chosen clubs';
  return wholeJob ? `Plan of job ${job}` : `Plan of chosen clubs of job ${job}`;
}

/** The formula's own cell, and nothing in the cells that it fills. */
function liveCells({ look, scoped }: Job, plan: readonly (readonly Cell[])[]): Put[][] {
  const call = planCall(look.tables, scoped.job ?? '');
  return plan.map((row, down) => row.map((_, across): Put => (down === 0 && across === 0 ? call : null)));
}

function dress({ look, target }: Job, block: Block, plan: readonly (readonly Cell[])[]): Change[] {
  const bodyRows = look.area.at.rows - HEAD_ROWS - 1 + freeRows(look);
  return [
    ...dressHead(block),
    ...dressBody(block, bodyRows, plan, highlightedRows(look, target, block, bodyRows)),
    // The columns of a sheet that is not ours serve more than the plan.
    ...(target.ownSheet ? dressSheet(block) : []),
  ];
}

/**
 * In a sheet that is not ours highlights of a person's may be among those that are there, and stay: ours come beside them,
 * once. Filled again, only rows that the plan did not have get them.
 */
function highlightedRows(look: Look, { ownSheet, place }: Target, block: Block, bodyRows: number): Highlighted | null {
  if (ownSheet) return { fromRow: 0, beside: false };
  if (!place) return { fromRow: 0, beside: Boolean(look.area.highlighted ?? look.spare.highlighted) };
  const fromRow = place.block.rows - HEAD_ROWS - 1;
  return block.rows > place.block.rows && fromRow < bodyRows ? { fromRow, beside: true } : null;
}

/** How many of the rows below are free to be dressed: a person's own cells keep their looks. */
function freeRows({ spare, area }: Look): number {
  if (spare.tables.length > 0 || spare.merged.length > 0 || spare.at.row < area.at.row + area.at.rows) return 0;
  const used = spare.values.findIndex((row, down) => !row.every(isBlankCell) || spare.formulas[down]?.some(Boolean));
  return used < 0 ? spare.at.rows : used;
}
