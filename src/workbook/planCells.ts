/** A plan as cells: what SETPLAN spills. The columns a bench needs come first, detail after. */
import { drained, roundTo, type ClubPlan, type Issue, type SetPlan, type SpreadParts } from '../core/index';
import { sayProblems } from '../words/issues';
import { BASIS_WORDS, ESTIMATOR_WORDS, HOLD_WORDS, sayBreach, sayNote, VERDICT_WORDS } from '../words/notes';
import { readingText } from '../words/readings';
import { SPREAD_WORDS } from '../words/spread';
import { mapSteps } from './pace';

export type PlanCell = string | number;

/** One column of a plan. */
export interface PlanColumn {
  readonly key: string;
  readonly header: string;
  /** Width in characters. */
  readonly width: number;
  readonly format?: string;
  /** Holds a verdict word, to be highlighted. */
  readonly verdict?: boolean;
  readonly wrap?: boolean;
  readonly align?: 'left' | 'center' | 'right';
  /** Belongs to the bench part that is printed. */
  readonly bench?: boolean;
  readonly cell: (plan: ClubPlan) => PlanCell | undefined;
}

const POINTS = '+0.0;"−"0.0;0.0';
const GRAMS = '0.0';
const GRAMS_CHANGE = '+0.0;"−"0.0;0.0';
const DIAMETER = '.000';
/** Ends a format under which a zero shows blank: a blank in it, since the embedded spreadsheet shows the number itself in place of no text at all. */
const NOTHING = ';" ";" "';

const reading = (points: number | undefined): string | undefined =>
  points === undefined ? undefined : readingText(points);
const where = ({ remedy }: ClubPlan): string | undefined =>
  remedy && remedy.grams > 0 ? `${remedy.way} (${remedy.end})` : undefined;
const when = ({ remedy }: ClubPlan): string | undefined =>
  remedy && remedy.grams > 0 ? (remedy.gripOff ? 'Grip off' : 'Any time') : undefined;

/** What the ± is made of, to a thousandth: nobody needs more, and what undo keeps of a long plan must stay small. A part that does not count shows blank. */
const SPREAD_COLUMNS: readonly PlanColumn[] = (Object.keys(SPREAD_WORDS) as (keyof SpreadParts)[]).map((part) => ({
  key: `spread.${part}`,
  header: `± by ${SPREAD_WORDS[part]} (pt)`,
  width: 12,
  format: `0.00${NOTHING}`,
  cell: (club) => club.spreadParts && roundTo(club.spreadParts[part], 3),
}));

/** Up to *As finished* they are as narrow as their headings allow: the answer is to be in the first view of a sheet of some 880 pixels. */
export const PLAN_COLUMNS: readonly PlanColumn[] = [
  { key: 'club', header: 'Club', width: 11, bench: true, cell: (club) => club.name },
  { key: 'item', header: 'New grip', width: 11, bench: true, cell: (club) => club.item },
  {
    key: 'layers',
    header: 'Layers',
    width: 6,
    format: '0',
    bench: true,
    align: 'center',
    cell: (club) => (club.grip ? club.layers : undefined),
  },
  {
    key: 'lowerLayers',
    header: 'Lower layers',
    width: 6,
    format: `0${NOTHING}`,
    bench: true,
    align: 'center',
    cell: (club) => (club.grip ? club.lowerLayers : undefined),
  },
  {
    key: 'readingBefore',
    header: 'Reads now',
    width: 5,
    bench: true,
    align: 'center',
    cell: (club) => reading(club.readingBefore),
  },
  {
    key: 'readingGripped',
    header: 'With new grip',
    width: 6,
    bench: true,
    align: 'center',
    cell: (club) => reading(club.readingGripped),
  },
  {
    key: 'verdict',
    header: 'As gripped',
    width: 10,
    verdict: true,
    bench: true,
    align: 'center',
    cell: (club) => VERDICT_WORDS[club.verdict],
  },
  {
    key: 'grams',
    header: 'Add (g)',
    width: 6,
    format: '0.0;"−"0.0;"–"',
    bench: true,
    align: 'center',
    cell: (club) => club.remedy?.grams,
  },
  {
    key: 'readingAfter',
    header: 'Finished',
    width: 7,
    bench: true,
    align: 'center',
    cell: (club) => reading(club.readingAfter),
  },
  {
    key: 'verdictAfter',
    header: 'As finished',
    width: 10,
    verdict: true,
    bench: true,
    align: 'center',
    cell: (club) => VERDICT_WORDS[club.verdictAfter],
  },
  { key: 'where', header: 'Where', width: 19, bench: true, cell: where },
  { key: 'when', header: 'When', width: 10, bench: true, cell: when },
  {
    key: 'massAfter',
    header: 'Total mass (g)',
    width: 10,
    format: GRAMS,
    bench: true,
    align: 'center',
    cell: (club) => club.massAfterGrams,
  },
  {
    key: 'notes',
    header: 'Notes',
    width: 46,
    bench: true,
    wrap: true,
    align: 'left',
    cell: (club) => club.notes.map(sayNote).join(' '),
  },
  {
    key: 'kind',
    header: 'Kind',
    width: 9,
    cell: (club) => club.kind && club.kind[0]?.toUpperCase() + club.kind.slice(1),
  },
  { key: 'hold', header: 'Hold', width: 10, cell: (club) => HOLD_WORDS[club.hold] },
  { key: 'held', header: 'Held reading', width: 9, align: 'center', cell: (club) => reading(club.heldReading) },
  { key: 'basis', header: 'Known from', width: 10, cell: (club) => club.basis && BASIS_WORDS[club.basis] },
  { key: 'spread', header: '± (pt)', width: 7, format: '0.0', cell: (club) => club.spreadPoints },
  ...SPREAD_COLUMNS,
  { key: 'upper', header: 'Upper diameter (in)', width: 10, format: DIAMETER, cell: (club) => club.upper?.inches },
  { key: 'upperLow', header: 'Upper from (in)', width: 10, format: DIAMETER, cell: (club) => club.upper?.lowInches },
  { key: 'upperHigh', header: 'Upper to (in)', width: 10, format: DIAMETER, cell: (club) => club.upper?.highInches },
  { key: 'lower', header: 'Lower diameter (in)', width: 10, format: DIAMETER, cell: (club) => club.lower?.inches },
  { key: 'lowerLow', header: 'Lower from (in)', width: 10, format: DIAMETER, cell: (club) => club.lower?.lowInches },
  { key: 'lowerHigh', header: 'Lower to (in)', width: 10, format: DIAMETER, cell: (club) => club.lower?.highInches },
  {
    key: 'growth',
    header: 'Size estimator',
    width: 11,
    cell: (club) => (club.upper ? ESTIMATOR_WORDS[club.growth] : undefined),
  },
  {
    key: 'fittedBefore',
    header: 'Grip and tape before (g)',
    width: 12,
    format: GRAMS,
    cell: (club) => club.fittedBeforeGrams,
  },
  {
    key: 'fittedAfter',
    header: 'Grip and tape after (g)',
    width: 10,
    format: GRAMS,
    cell: (club) => club.fittedAfterGrams,
  },
  { key: 'fittedChange', header: 'Change (g)', width: 9, format: GRAMS_CHANGE, cell: (club) => club.fittedChangeGrams },
  { key: 'change', header: 'Change (pt)', width: 10, format: POINTS, cell: (club) => club.shift?.total },
  { key: 'changeGrip', header: 'by grip (pt)', width: 9, format: POINTS, cell: (club) => club.shift?.grip },
  {
    key: 'changeTape',
    header: 'by tape (pt)',
    width: 9,
    format: POINTS,
    cell: (club) => club.shift && club.shift.tape + club.shift.twoWay,
  },
  { key: 'changeCap', header: 'by cap (pt)', width: 9, format: POINTS, cell: (club) => club.shift?.cap },
  { key: 'changeLength', header: 'by length (pt)', width: 9, format: POINTS, cell: (club) => club.shift?.length },
  {
    key: 'changeButt',
    header: 'by butt weight (pt)',
    width: 9,
    format: POINTS,
    cell: (club) => club.shift?.buttWeight,
  },
  { key: 'exact', header: 'Exact weight (g)', width: 9, format: '0.00', cell: (club) => club.remedy?.exactGrams },
  { key: 'inertia', header: 'Inertia change (kg·cm²)', width: 10, format: POINTS, cell: (club) => club.inertiaChange },
  {
    key: 'tape',
    header: 'Build-up tape (in)',
    width: 9,
    format: GRAMS,
    cell: (club) => (club.grip ? club.tapeInches : undefined),
  },
  {
    key: 'twoWay',
    header: 'Two-way tape (in)',
    width: 9,
    format: GRAMS,
    cell: (club) => (club.grip ? club.twoWayInches : undefined),
  },
  { key: 'length', header: 'Length after (in)', width: 9, format: '0.00', cell: (club) => club.lengthAfterInches },
  {
    key: 'rules',
    header: 'Rules',
    width: 26,
    wrap: true,
    cell: (club) => (club.grip ? club.breaches.map(sayBreach).join('; ') || 'OK' : undefined),
  },
];

/** Header row of a plan. */
export function planHeaders(): string[] {
  return PLAN_COLUMNS.map((column) => column.header);
}

/** One club as a row of cells; '' where nothing is known. */
export function clubCells(club: ClubPlan): PlanCell[] {
  return PLAN_COLUMNS.map((column) => tidy(column.cell(club)));
}

/**
 * A plan as cells, header row first. What is wrong outside the clubs (a setting, a way) stands before the first club's notes, the first
 * two of it in full.
 *
 * @returns rows × {@link PLAN_COLUMNS}; numbers unrounded but for binary noise and the parts of a ±, '' for blanks
 */
export function planCells(plan: SetPlan, problems: readonly Issue[] = []): PlanCell[][] {
  return drained(planCellSteps(plan, problems));
}

/** {@link planCells} in steps. */
export function* planCellSteps(plan: SetPlan, problems: readonly Issue[] = []): Generator<void, PlanCell[][]> {
  const rows = yield* mapSteps(plan.clubs, clubCells);
  const notes = PLAN_COLUMNS.findIndex((column) => column.key === 'notes');
  const first = rows[0];
  if (first && problems.length) first[notes] = [sayProblems(problems), first[notes]].filter(Boolean).join(' ');
  return [planHeaders(), ...rows];
}

/** Sums of binary fractions carry noise such as 0.30000000000000004; seven decimals are beyond any scale. A −0 becomes 0. */
function tidy(cell: PlanCell | undefined): PlanCell {
  if (cell === undefined) return '';
  return typeof cell === 'number' ? Math.round(cell * 1e7) / 1e7 + 0 : cell;
}
