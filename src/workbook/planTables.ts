/** From tables to a plan: reads Clubs, Stock, Settings, Weights and Tape, and hands the core typed records. */
import {
  DEFAULT_WAYS,
  drained,
  fail,
  fillingLayers,
  fittedSeatInches,
  knownBy,
  ok,
  planSetSteps,
  type Club,
  type ClubKind,
  type Grip,
  type GripUse,
  type Hold,
  type Issue,
  type Note,
  type OldMassFrom,
  type PlanInput,
  type Profile,
  type Progress,
  type Result,
  type SetPlan,
  type ShopSettings,
  type Way,
} from '../core/index';
import { describedBy } from './described';
import { folded } from './headings';
import { inOwnNames, ownLists } from './ownNames';
import { duplicates, isBlank, matchHeaders, readTable, rowSteps, type Matrix, type Row } from './records';
import { ALIKE_MASS, CATALOGUE_MASS, CLUBS, STOCK, WEIGHED_MASS, WEIGHTS } from './schema';
import { readSettings } from './readSettings';
import { thousandths } from '../words/readings';

/** The tables a plan is made from, each with its header row; all but Clubs may be left out. */
export interface TablesIn {
  readonly clubs: Matrix;
  readonly stock?: Matrix | null | undefined;
  readonly settings?: Matrix | null | undefined;
  readonly weights?: Matrix | null | undefined;
  readonly tape?: Matrix | null | undefined;
  /** Only the clubs of this job. */
  readonly job?: string | null | undefined;
  /** Only these body rows, from 1. */
  readonly rows?: readonly number[] | undefined;
  readonly headerRows?: HeaderRows | undefined;
}

/** Row of its sheet that holds each table's header, from 1, so that messages name real rows; where it is not known, 1. */
export interface HeaderRows {
  readonly clubs?: number | undefined;
  readonly stock?: number | undefined;
  readonly settings?: number | undefined;
  readonly weights?: number | undefined;
  readonly tape?: number | undefined;
}

export interface Planned {
  readonly plan: SetPlan;
  readonly input: PlanInput;
  /** What is wrong outside the clubs: settings, ways, tapes. */
  readonly problems: readonly Issue[];
}

/** What a plan is made from, as tables say it. */
export interface PlanRead {
  readonly input: PlanInput;
  readonly problems: readonly Issue[];
}

/**
 * Plans the clubs of a table.
 *
 * @returns the plan, or why nothing at all can be planned (a column missing, no clubs)
 */
export function planTables(tables: TablesIn): Result<Planned> {
  return drained(planSteps(tables));
}

/** {@link planTables} in steps. */
export function* planSteps(tables: TablesIn): Generator<Progress, Result<Planned>> {
  const read = yield* readSteps(tables);
  if (!read.ok) return read;
  const plan = yield* planSetSteps(read.value.input);
  return ok({ plan: inNamesOf(tables, plan), ...read.value });
}

/** Notes name a list of the shop's own that stands for Stock or Weights. */
function inNamesOf({ stock, weights }: TablesIn, plan: SetPlan): SetPlan {
  const own = ownLists({ Stock: stock?.[0], Weights: weights?.[0] });
  if (own.size === 0) return plan;
  const told = (note: Note): Note => (note.note === 'issue' ? { ...note, issue: inOwnNames(note.issue, own) } : note);
  return { ...plan, clubs: plan.clubs.map((club) => ({ ...club, notes: club.notes.map(told) })) };
}

/** What {@link planTables} plans from, not planned yet. */
export function readPlan(tables: TablesIn): Result<PlanRead> {
  return drained(readSteps(tables));
}

function* readSteps(tables: TablesIn): Generator<Progress, Result<PlanRead>> {
  const { headerRows = {} } = tables;
  const rows: Row[] = [];
  const clubs = yield* rowSteps(CLUBS, onlyWanted(tables), headerRows.clubs ?? 1, (row) => rows.push(row));
  if (!clubs.ok) return clubs;
  yield { done: rows.length, of: rows.length };
  const wanted = rows.filter(isWanted(tables));
  if (!wanted.length) {
    const job = String(tables.job ?? '').trim();
    return fail({ code: 'noRows', field: 'Clubs', expected: job ? `clubs of job ${job}` : 'clubs' });
  }
  const settings = readSettings(tables.settings, tables.tape, headerRows);
  if (!settings.ok) return settings;
  const stock = yield* gripSteps(tables.stock, headerRows.stock, settings.value.settings);
  if (!stock.ok) return stock;
  const ways = readWays(tables.weights, headerRows.weights);
  if (!ways.ok) return ways;
  const input: PlanInput = {
    clubs: yield* clubSteps(wanted, stock.value),
    stock: stock.value.grips,
    ways: ways.value.ways,
    settings: settings.value.settings,
  };
  const problems = [...settings.value.problems, ...ways.value.problems, ...stock.value.problems];
  return ok({ input, problems });
}

function* clubSteps(rows: readonly Row[], stock: StockRead): Generator<Progress, PlanInput['clubs']> {
  const clubs: PlanInput['clubs'][number][] = [];
  for (const [at, row] of rows.entries()) {
    if (at % CLUBS_A_STEP === 0) yield { done: at, of: rows.length };
    clubs.push(clubFrom(row, stock));
  }
  return clubs;
}

/** Clubs that are made of their rows at a stretch. */
const CLUBS_A_STEP = 200;

/**
 * The table with rows that are certainly not asked for left blank, so that a plan of one job does not read the clubs of all the
 * others: of hundreds of jobs planned one by one, each read thousands of rows.
 */
function onlyWanted({ clubs, job: asked, rows }: TablesIn): Matrix {
  const wanted = jobText(asked);
  if (!wanted && !rows) return clubs;
  const chosen = rows && new Set(rows);
  const at = wanted ? matchHeaders(CLUBS, clubs[0] ?? []).get('job') : undefined;
  return clubs.map((row, i) => {
    if (i === 0) return row;
    const cell = at === undefined ? undefined : row[at];
    // a cell that is neither text nor number is left to the reading
    const job = jobText(cell);
    const other = at !== undefined && (isBlank(cell) || job !== '') && job !== wanted;
    return other || (chosen && !chosen.has(i)) ? [] : row;
  });
}

function isWanted({ job, rows }: TablesIn): (row: Row) => boolean {
  const wanted = jobText(job);
  const chosen = rows && new Set(rows);
  return (row) => (!chosen || chosen.has(row.row)) && (!wanted || jobText(row.values.get('job')) === wanted);
}

function jobText(job: unknown): string {
  return folded(job);
}

export interface StockRead {
  readonly grips: readonly Grip[];
  /** What each grip is called beside its code. */
  readonly described: readonly (string | undefined)[];
  /** What is wrong with an item, by its lower-case code: told to every club that would get it. */
  readonly issues: ReadonlyMap<string, readonly Issue[]>;
  /** What is wrong with rows that name no item: no club can be told. */
  readonly problems: readonly Issue[];
}

/** What a matrix was last read as: a preview follows each keystroke, and Stock may have tens of thousands of rows. */
const stockKnown = new WeakMap<Matrix, { readonly by: string; readonly read: Result<StockRead> }>();

/** Reads Stock in steps; once it is read, so it stays known for as long as its cells and what it is read by are the same. */
export function* gripSteps(
  matrix: Matrix | null | undefined,
  headerRow: number | undefined,
  settings: ShopSettings,
): Generator<Progress, Result<StockRead>> {
  if (!matrix) return ok({ grips: [], described: [], issues: new Map(), problems: [] });
  const by = JSON.stringify([headerRow, settings]);
  const known = stockKnown.get(matrix);
  if (known?.by === by) return known.read;
  const read = yield* stockAnew(matrix, headerRow, settings);
  stockKnown.set(matrix, { by, read });
  return read;
}

function* stockAnew(
  matrix: Matrix,
  headerRow: number | undefined,
  settings: ShopSettings,
): Generator<Progress, Result<StockRead>> {
  const grips: Grip[] = [];
  const byItem = new Map<string, Grip>();
  const described: (string | undefined)[] = [];
  const issues = new Map<string, Issue[]>();
  const problems: Issue[] = [];
  const take = (row: Row): void => {
    const grip = gripFrom(row);
    const key = grip.item.toLowerCase();
    const known = issues.get(key);
    if (!key) problems.push(...row.issues);
    else if (known) known.push({ code: 'duplicate', field: `${row.where}, Item`, got: grip.item });
    else issues.set(key, [...row.issues, ...impossible(grip, row), ...misread(grip, row, settings)]);
    if (!key) return;
    grips.push(grip);
    // The first of each name counts.
    if (!known) byItem.set(key, grip);
    described.push(describedBy(reader(row).text));
  };
  const read = yield* rowSteps(STOCK, matrix, headerRow ?? 1, take);
  knownBy(grips, byItem);
  return read.ok ? ok({ grips, described, issues, problems }) : read;
}

/** Sizes that cannot both be true: every grip is thicker than its bore. */
function impossible({ coreInches, upperInches, lowerInches }: Grip, { where }: Row): Issue[] {
  const thinnest = Math.min(upperInches ?? Infinity, lowerInches ?? Infinity);
  if (coreInches === undefined || thinnest > coreInches) return [];
  const expected = `a grip that measures ${thousandths(thinnest)} has no core of ${thousandths(coreInches)}`;
  return [{ code: 'contradiction', field: where, expected }];
}

/** A calliper reading of a fitted grip that cannot be true on what it was fitted on; the plan goes by the catalogue then. */
function misread(grip: Grip, { where: field }: Row, settings: ShopSettings): Issue[] {
  const { coreInches, fittedUpperInches, fittedLowerInches } = grip;
  const thinnest = Math.min(fittedUpperInches ?? Infinity, fittedLowerInches ?? Infinity);
  const seat = fittedSeatInches(grip, settings);
  if (seat === undefined || thinnest === Infinity) return [];
  const loose = coreInches !== undefined && fillingLayers(coreInches, seat, settings.buildUp.thicknessInches) > 0;
  if (loose) {
    const expected = `a core of ${thousandths(coreInches)} is loose on ${thousandths(seat)}, the butt and layers it was fitted on`;
    return [{ code: 'contradiction', field, expected }];
  }
  if (thinnest > seat) return [];
  const expected = `a grip fitted on ${thousandths(seat)}, butt and layers, does not measure ${thousandths(thinnest)}`;
  return [{ code: 'contradiction', field, expected }];
}

function gripFrom(row: Row): Grip {
  const { text, number } = reader(row);
  const profile = text('profile');
  return {
    item: text('item') ?? '',
    // a shop's own heading may be Model where ours is Description
    description: text('description') ?? text('model'),
    coreInches: number('core'),
    profile: profile === undefined ? undefined : (profile.toLowerCase() as Profile),
    gripGrams: number('mass'),
    spreadGrams: number('massSpread'),
    upperInches: number('upperDiameter'),
    lowerInches: number('lowerDiameter'),
    lengthInches: number('length'),
    balanceInches: number('balance'),
    capInches: number('cap'),
    onHand: number('onHand'),
    model: text('model') ?? text('description'),
    size: text('size'),
    texture: text('texture'),
    use: text('use')?.toLowerCase() as GripUse | undefined,
    price: number('price'),
    fittedUpperInches: number('fittedUpper'),
    fittedLowerInches: number('fittedLower'),
    fittedButtInches: number('fittedButt'),
    fittedLayers: number('fittedLayers'),
  };
}

const MASS_CODES: Readonly<Record<string, OldMassFrom>> = {
  [CATALOGUE_MASS]: 'estimate',
  [WEIGHED_MASS]: 'weighed',
  [ALIKE_MASS]: 'alike',
};

const HOLD_CODES: Readonly<Record<string, Hold>> = { 'As it was': 'asArrived', Target: 'target', Nothing: 'nothing' };

function clubFrom(row: Row, stock: StockRead): Club {
  const { text, number, yes } = reader(row);
  const issues = [...row.issues];
  const newItem = text('newItem');
  if (newItem !== undefined) issues.push(...(stock.issues.get(newItem.toLowerCase()) ?? []));
  const oldMassFrom = MASS_CODES[text('oldMassKnown') ?? ''] ?? 'estimate';
  if (oldMassFrom !== 'estimate' && number('oldMass') === undefined) {
    issues.push({
      code: 'blank',
      field: `${row.where}, Old grip mass (g)`,
      expected: oldMassFrom === 'weighed' ? 'the mass that was weighed' : 'the mass that the stripped club showed',
    });
  }
  const targetInches = number('targetDiameter');
  const layers = number('layers');
  return {
    row: row.row,
    sheetRow: row.sheetRow,
    job: text('job'),
    name: text('club') ?? `Row ${row.sheetRow}`,
    kind: text('kind')?.toLowerCase() as ClubKind | undefined,
    lengthInches: number('length'),
    buttInches: number('butt'),
    taperPerInch: number('taper'),
    reading: number('reading'),
    massGrams: number('mass'),
    oldItem: text('oldItem'),
    oldGripGrams: number('oldMass'),
    oldMassFrom,
    oldLayers: number('oldLayers') ?? 0,
    oldBalanceInches: number('oldBalance'),
    oldCapInches: number('oldCap'),
    buttWeightGrams: number('buttWeight') ?? 0,
    buttWeightLeaves: yes('buttWeightLeaves') ?? false,
    bareReading: number('bareReading'),
    bareGrams: number('bareMass'),
    newItem,
    ownGrip: yes('ownGrip'),
    newGripGrams: number('newMass'),
    // a blank may arrive as 0: beside a target diameter, no layers means "find them"
    layers: targetInches !== undefined && layers === 0 ? undefined : layers,
    lowerLayers: number('lowerLayers') ?? 0,
    targetInches,
    hold: HOLD_CODES[text('hold') ?? ''],
    target: number('target'),
    tolerancePoints: number('tolerance'),
    way: text('weighting'),
    lengthChangeInches: number('lengthChange') ?? 0,
    plugGrams: number('plug') ?? 0,
    issues,
  };
}

function readWays(
  matrix: Matrix | null | undefined,
  headerRow: number | undefined,
): Result<{ ways: readonly Way[]; problems: Issue[] }> {
  if (!matrix) return ok({ ways: DEFAULT_WAYS, problems: [] });
  const read = readTable(WEIGHTS, matrix, headerRow);
  if (!read.ok) return read;
  const problems = read.value.rows.flatMap((row) => row.issues);
  problems.push(...duplicates(WEIGHTS, read.value.rows, 'way'));
  const ways: Way[] = [];
  for (const row of read.value.rows) {
    const { text, number, yes } = reader(row);
    const name = text('way');
    const end = text('end');
    const inches = number('position');
    if (name === undefined || end === undefined || inches === undefined) continue;
    ways.push({
      name,
      end: end === 'Head' ? 'head' : 'butt',
      inches,
      stepGrams: number('step') ?? 1,
      gripOff: yes('gripOff') ?? false,
      limitGrams: number('limit') || undefined,
    });
  }
  return ok({ ways, problems });
}

interface Reader {
  text(key: string): string | undefined;
  number(key: string): number | undefined;
  yes(key: string): boolean | undefined;
}

function reader(row: Row): Reader {
  const get = (key: string): unknown => row.values.get(key);
  return {
    text: (key) => (typeof get(key) === 'string' ? (get(key) as string) : undefined),
    number: (key) => (typeof get(key) === 'number' ? (get(key) as number) : undefined),
    yes: (key) => (typeof get(key) === 'boolean' ? (get(key) as boolean) : undefined),
  };
}
