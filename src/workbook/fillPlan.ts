/** Filling a set's plan into the workbook: one read, one write. */
import {
  cellPrints,
  freeName,
  keepPlans,
  LAST_FILL_KEY,
  owners,
  pickCells,
  PLANS_BEFORE_KEY,
  PLANS_KEY,
  rowPrints,
} from './planPlaces';
import type { Owner, PlanEntry, PlanPlace } from './planPlaces';
import { clubIdentities, sameClubs, writeClubs } from './clubCells';
import { byRow, chosenCells, lackingChoices } from './choices';
import { columnsAt } from './headings';
import type { FillDone, FillRequest, WhyValues } from './outcomes';
import { PLAN_COLUMNS, planCells } from './planCells';
import { planCall, planScope, scopeRows, whyValues } from './planScope';
import type { Scoped } from './planScope';
import { dressBody, dressHead, dressSheet, HEAD_ROWS, headCells, SPARE_ROWS } from './planSheet';
import type { Highlighted, PlanHead } from './planSheet';
import type { Planned } from './planTables';
import { politely } from './polite';
import { PortError } from './port';
import type { Block, BlockSeen, Cell, Change, NameSeen, Put, TableSeen, WorkbookPort } from './port';
import { CLUBS, JOBS, TABLES } from './schema';
import { holdsCell, sameBlock } from './shared/address';
import { MOST_COLUMNS, MOST_ROWS } from './shared/limits';
import { planSheetName } from './sheetName';
import { isBlankCell, jobName, matrixOf, readShop, shopName, shopTables, tableQueries } from './shop';
import type { Shop, ShopTables } from './shop';
import { askFirst, changedCells, formulaCells } from './tableCells';
import type { TableCell } from './tableCells';

/** How often the workbook is read again when it turns out to differ from what was read before. */
const MOST_TRIES = 3;

/**
 * Writes the choices into Clubs and the plan into a sheet, where it stands under a head with the job and a legend: one formula
 * that follows the tables, or values. Only blank cells, cells of the same plan and those that the person agreed to are
 * written over.
 *
 * @param shop as read when the person chose: when the clubs have moved since, nothing is written
 */
export async function fillPlan(port: WorkbookPort, shop: Shop, request: FillRequest): Promise<FillDone> {
  return politely(async (): Promise<FillDone> => {
    let known = shop;
    let namesInUse: readonly string[] = [];
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
      const end = await attempt(port, shop, known, request, tries, namesInUse);
      if ('done' in end) return end;
      namesInUse = [...namesInUse, ...end.namesInUse];
      known = await readShop(port);
    }
    // Somebody keeps working on the same cells: better nothing than something half known.
    return { done: false, reason: 'clubsMoved' };
  });
}

/** The workbook is not as it was known; `namesInUse` are names that turned out to be taken. */
interface LookAgain {
  readonly namesInUse: readonly string[];
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
  if (!fits(target, guess.rows.length)) return { done: false, reason: 'noRoom' };
  const look = await lookAt(port, target, guess.rows.length);
  const clubs = look.tables.Clubs;
  if (!clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
  // A plan over a table, perhaps over the very clubs it is made of, is never meant: this is not asked but refused.
  if (!target.place && look.area.tables.length > 0) {
    return { done: false, reason: 'port', error: new PortError('tableInTheWay', look.area.tables) };
  }
  const scoped = scopeRows(clubs, request.scope);
  if (scoped.rows.length !== guess.rows.length || scoped.key !== guess.key || !standsThere(target, look.name)) {
    return { namesInUse: look.name.at && !target.place ? [target.name] : [] };
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
  const question = askFirst(place, [...formulaCells(clubs, cells), ...foreignCells(job)], request.agreed);
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

interface Target {
  /** The plan that stands there already. */
  readonly place: PlanPlace | null;
  readonly name: string;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly ownSheet: boolean;
}

async function chooseTarget(
  port: WorkbookPort,
  known: Shop,
  scoped: Scoped,
  request: FillRequest,
  namesInUse: readonly string[],
): Promise<Target> {
  const fresh = (at: Pick<Block, 'sheet' | 'row' | 'column'>, ownSheet: boolean): Target => {
    const { sheet, row, column } = at;
    return { place: null, name: freeName(known.plans, namesInUse), sheet, row, column, ownSheet };
  };
  const same = known.plans.filter(({ key }) => key === scoped.key);
  if (request.where === 'planSheet') {
    const place = same.find(({ ownSheet }) => ownSheet);
    return place ? again(place) : fresh({ sheet: newSheet(known, scoped), row: 0, column: 0 }, true);
  }
  // Once the person agreed, it is the place they agreed to, wherever they are by now.
  const at = request.agreed?.place ?? request.at ?? (await port.selection()).at;
  const place = same.find(({ block }) => holdsCell(block, at.sheet, at.row, at.column));
  return place ? again(place) : fresh(at, false);
}

function again(place: PlanPlace): Target {
  const { sheet, row, column } = place.block;
  return { place, name: place.name, sheet, row, column, ownSheet: place.ownSheet };
}

function newSheet(known: Shop, { key, job }: Scoped): string {
  const what = job === null ? 'of chosen clubs' : key.startsWith('part:') ? `${job} part` : job;
  return planSheetName(
    what,
    known.plans.map(({ block }) => block.sheet),
  );
}

/** The block the plan takes with so many clubs. */
function planBlock({ sheet, row, column }: Target, clubs: number): Block {
  return { sheet, row, column, rows: HEAD_ROWS + 1 + clubs, columns: PLAN_COLUMNS.length };
}

function fits(target: Target, clubs: number): boolean {
  const { row, column, rows, columns } = planBlock(target, clubs);
  return row + rows <= MOST_ROWS && column + columns <= MOST_COLUMNS;
}

/** Whether the place is still where it was, or the name for a new one still free. */
function standsThere({ place }: Target, seen: NameSeen): boolean {
  if (!place) return seen.at === null;
  return seen.at !== null && sameBlock(seen.at, place.block);
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
  const block = planBlock(target, clubs);
  const old = target.place?.block ?? block;
  const area = { ...block, rows: Math.max(block.rows, old.rows), columns: Math.max(block.columns, old.columns) };
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

/** Cells the plan needs that hold something of a person's. */
function foreignCells({ look, target, scoped }: Job): Block[] {
  const owner = owners(look.area, target.place);
  const { rows, columns } = planBlock(target, scoped.rows.length);
  return pickCells(look.area, (down, across) => down < rows && across < columns && owner[down]?.[across] === 'person');
}

/* ------------------------------------------------------------------ writing */

async function write(job: Job, choices: readonly TableCell[]): Promise<FillDone> {
  const { port, request, target, look, clubs, scoped } = job;
  const why = whyValues(request, scoped, port.capabilities.spill);
  const block = planBlock(target, scoped.rows.length);
  const head = headCells(planHead(job));
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
      ...remember(job, entry),
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

/**
 * What to put into each cell of the area: the plan, and blanks over what is left of an older one. Cells that are blank already,
 * or that only a formula fills, are left alone: there is nothing in them to be replaced, nor to be put back.
 */
function putOver(area: BlockSeen, place: PlanPlace | null, rows: readonly (readonly Put[])[]): Put[][] {
  const owner = owners(area, place);
  return owner.map((line, down) =>
    line.map((whose, across): Put => {
      const put = rows[down]?.[across];
      if (put === undefined) return leftOver(whose);
      return put === null && (whose === 'nobody' || whose === 'filled') ? undefined : put;
    }),
  );
}

/** Outside the new plan: what an older one left is blanked, what a person wrote stays. */
function leftOver(whose: Owner): Put {
  return whose === 'ours' || whose === 'formula' ? null : undefined;
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

function planHead({ look, scoped }: Job): PlanHead {
  const shop = look.tables.Settings ? shopName(matrixOf(look.tables.Settings)) : '';
  const someClubs = !scoped.wholeJob;
  const bare = { shop, job: scoped.job, customer: '', due: null, someClubs };
  const jobs = look.tables.Jobs;
  if (!jobs || scoped.job === null) return bare;
  const at = columnsAt(JOBS, jobs.headers);
  const name = scoped.job.toLowerCase();
  const row = jobs.rows.find((each) => jobName(each[at('job')]).toLowerCase() === name);
  const due = row?.[at('due')];
  return { ...bare, customer: jobName(row?.[at('customer')]), due: typeof due === 'number' ? due : null };
}

function remember({ known, target }: Job, entry: PlanEntry): Change[] {
  const others = known.plans.filter(({ name }) => name !== target.name);
  return [
    { do: 'remember', key: PLANS_BEFORE_KEY, value: keepPlans(known.plans) },
    { do: 'remember', key: PLANS_KEY, value: keepPlans([...others, entry]) },
  ];
}
