/** A set's plan made ready to be written: what has to be looked at, and what is to be changed then. Pure. */
import { sameClubs, clubIdentities, writeClubs } from './clubCells';
import { byRow, chosenSteps, lackingChoices } from './choices';
import { jobFacts } from './jobFacts';
import type { FillDone, Filled, FillRequest, WhyValues } from './outcomes';
import { mapSteps } from './pace';
import { foreignCells, putOverSteps } from './pageCells';
import { blockAt, fits, lookAgain, standsThere, withOlder } from './pagePlace';
import type { LookAgain, Target } from './pagePlace';
import { PLAN_COLUMNS, planCellSteps } from './planCells';
import { cellPrints, ownerSteps, rowPrintSteps } from './planOwners';
import type { Owner } from './planOwners';
import type { PlanEntry } from './planPlaces';
import { planCall, planScopeSteps, scopeRows, whyValues } from './planScope';
import type { Scoped } from './planScope';
import { dressBody, dressHead, dressSheet, HEAD_ROWS, headCells, SPARE_ROWS } from './planSheet';
import type { Highlighted } from './planSheet';
import type { Planned } from './planTables';
import { PortError } from './port';
import type { Block, BlockSeen, Cell, Change, NameSeen, Put, TableSeen } from './port';
import { CLUBS } from './schema';
import { MOST_ROWS } from './shared/limits';
import { isBlankCell, matrixOf } from './shop';
import type { Shop, ShopTables } from './shop';
import { askFirst, changedCells, formulaCells } from './tableCells';
import type { TableCell } from './tableCell';

/** A plan that is to be filled, and where. */
export interface PlanDraft {
  readonly request: Pick<FillRequest, 'scope' | 'choices' | 'agreed' | 'as'>;
  readonly target: Target;
  /** The clubs as they were known when the place was chosen. */
  readonly guess: Scoped;
}

/** What is looked at before a plan is written. */
export interface PlanLook {
  readonly tables: ShopTables;
  readonly name: NameSeen;
  /** The plan's block, and what an older, larger plan took. */
  readonly area: BlockSeen;
  /** Rows below, for the plan to grow into. */
  readonly spare: BlockSeen;
}

/** A plan that can be written. */
export interface ReadyPlan {
  readonly changes: readonly Change[];
  readonly looked: readonly BlockSeen[];
  readonly entry: PlanEntry;
  readonly label: string;
  readonly filled: Filled;
}

type Refused = Exclude<FillDone, { done: true }>;

/** The block the plan takes with so many clubs. */
function planBlock(target: Target, clubs: number): Block {
  return blockAt(target, { rows: HEAD_ROWS + 1 + clubs, columns: PLAN_COLUMNS.length });
}

/** What has to be read before a plan is written, beside the tables; refused where the sheet is too small for it. */
export function planQueries({ target, guess }: PlanDraft) {
  const block = planBlock(target, guess.rows.length);
  if (!fits(block)) return null;
  const area = withOlder(target, block);
  const below = area.row + area.rows;
  // At the very end of a sheet there is nothing below: then the last row of the plan stands in for it.
  const spareRows = Math.max(0, Math.min(SPARE_ROWS, MOST_ROWS - below));
  const spare = spareRows > 0 ? { ...area, row: below, rows: spareRows } : { ...area, row: below - 1, rows: 1 };
  return [
    { read: 'name', name: target.name },
    { read: 'block', at: area },
    { read: 'block', at: spare },
  ] as const;
}

/**
 * What is to be changed for a plan, or why it cannot be filled; or that the workbook differs from what was known. In steps: a plan may
 * have thousands of clubs.
 *
 * @param chosenFrom the shop as it was when the person chose
 */
export function* readySteps(
  draft: PlanDraft,
  look: PlanLook,
  chosenFrom: Shop,
  spill: boolean,
): Generator<unknown, ReadyPlan | Refused | LookAgain> {
  const { request, target, guess } = draft;
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
  yield;
  if (!clubsStand(chosenFrom, clubs, scoped, request)) return { done: false, reason: 'clubsMoved' };
  if (scoped.rows.length === 0) return { done: false, reason: 'noClubs' };
  yield;
  const lacking = lackingChoices(matrixOf(clubs), scoped.rows, request.choices);
  if (lacking.length > 0) return { done: false, reason: 'columnMissing', table: CLUBS.name, headers: lacking };
  const planned = yield* planScopeSteps(look.tables, scoped, request.choices);
  if (!planned.ok) return { done: false, reason: 'notPlanned', issue: planned.issue };
  const owner = yield* ownerSteps(look.area, target.place);
  const job: Job = { spill, request, target, look, owner, clubs, scoped, planned: planned.value };
  const cells = yield* choiceCells(job);
  const place = planBlock(target, scoped.rows.length);
  yield;
  const question = askFirst(
    place,
    [...formulaCells(clubs, cells), ...foreignCells(look.area, owner, place)],
    request.agreed,
  );
  return question ?? (yield* changeSteps(job, cells));
}

/** Everything that writing a plan takes. */
interface Job {
  readonly spill: boolean;
  readonly request: PlanDraft['request'];
  readonly target: Target;
  readonly look: PlanLook;
  /** Whose each cell of the area is. */
  readonly owner: readonly (readonly Owner[])[];
  readonly clubs: TableSeen;
  readonly scoped: Scoped;
  readonly planned: Planned;
}

/**
 * Whether the clubs are those that were chosen: each in its row, or, for a whole job of which no club has a choice of its own,
 * the same ones in any order.
 */
function clubsStand(
  chosenFrom: Shop,
  clubs: TableSeen,
  scoped: Scoped,
  { scope, choices }: PlanDraft['request'],
): boolean {
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

function* choiceCells({ clubs, scoped, request }: Job): Generator<unknown, TableCell[]> {
  return changedCells(clubs, yield* chosenSteps(matrixOf(clubs), scoped.rows, request.choices));
}

function* changeSteps(job: Job, choices: readonly TableCell[]): Generator<void, ReadyPlan> {
  const { spill, request, target, look, owner, clubs, scoped } = job;
  const why = whyValues(request, scoped, spill);
  const block = planBlock(target, scoped.rows.length);
  const head = headCells({ ...jobFacts(look.tables, scoped.job), someClubs: !scoped.wholeJob });
  const shown = yield* planCellSteps(job.planned.plan, job.planned.problems);
  const plan = yield* mapSteps(shown, (row) => row.map((cell): Cell => (cell === '' ? null : cell)));
  const rows: Put[][] = why === null ? [...head, ...liveCells(job, plan)] : [...head, ...plan];
  const cells = yield* putOverSteps(owner, rows);
  const prints = why === null ? [] : yield* rowPrintSteps(plan);
  return {
    changes: [
      ...(target.ownSheet ? [{ do: 'sheet', name: target.sheet } as const] : []),
      ...writeClubs(clubs, choices),
      ...dress(job, block, plan),
      { do: 'write', at: look.area.at, cells },
      { do: 'name', name: target.name, at: block },
    ],
    looked: [look.area, look.spare],
    entry: {
      name: target.name,
      key: scoped.key,
      job: scoped.job,
      ownSheet: target.ownSheet,
      cellPrints: cellPrints(head),
      rowPrints: prints,
    },
    label: fillLabel(scoped),
    filled: filled(block, scoped, choices.length, why),
  };
}

function filled(block: Block, scoped: Scoped, choicesWritten: number, why: WhyValues | null): Filled {
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
function highlightedRows(
  look: PlanLook,
  { ownSheet, place }: Target,
  block: Block,
  bodyRows: number,
): Highlighted | null {
  if (ownSheet) return { fromRow: 0, beside: false };
  if (!place) return { fromRow: 0, beside: Boolean(look.area.highlighted ?? look.spare.highlighted) };
  const fromRow = place.block.rows - HEAD_ROWS - 1;
  return block.rows > place.block.rows && fromRow < bodyRows ? { fromRow, beside: true } : null;
}

/** How many of the rows below are free to be dressed: a person's own cells keep their looks. */
function freeRows({ spare, area }: PlanLook): number {
  if (spare.tables.length > 0 || spare.merged.length > 0 || spare.at.row < area.at.row + area.at.rows) return 0;
  const used = spare.values.findIndex((row, down) => !row.every(isBlankCell) || spare.formulas[down]?.some(Boolean));
  return used < 0 ? spare.at.rows : used;
}
