/**
 * Where plans stand in the workbook, and which of their cells are ours.
 *
 * A place is a defined name, so that it survives inserted rows and renamed sheets; which job it holds is kept in the
 * workbook's settings. A cell of a plan is ours when our formula stands in it or fills it, or when it shows what we put: a
 * short print of that is kept, by cell for the head of the plan and by row for its body. What a person typed over it has
 * another print and is theirs.
 */
import type { Block, BlockSeen, NameSeen, Seen } from './port';
import { calls } from './shared/revert';
import { filledFromElsewhere } from './shared/looked';
import { overlap } from './shared/address';

/** Version of what we keep in a workbook. */
export const SCHEMA_VERSION = 1;

/** Which tables, columns and settings a workbook has: `layoutSteps.ts` says what each layout brought. */
export const LAYOUT = 5;

/** Keys of the workbook's settings. */
export const PLANS_KEY = 'setwright.plans';
/** The places as they were before the last fill, for taking it back. */
export const PLANS_BEFORE_KEY = 'setwright.plansBefore';
export const LAST_FILL_KEY = 'setwright.lastFill';

const NAME_STEM = 'Setwright_Plan_';

/** What is kept of a plan. */
export interface PlanEntry {
  /** The defined name of its place. */
  readonly name: string;
  /** Which plan it is: `job:1042`, `part:1042` for some clubs of a job, `mixed` for clubs of several. */
  readonly key: string;
  readonly job: string | null;
  /** Whether we made the sheet for it. */
  readonly ownSheet: boolean;
  readonly cellPrints: readonly string[];
  readonly rowPrints: readonly string[];
}

/** A plan that stands in the workbook. */
export interface PlanPlace extends PlanEntry {
  readonly block: Block;
}

interface Kept {
  readonly schema: number;
  /** Layout of the tables; null in a workbook of a version that did not write it down. */
  readonly layout: number | null;
  readonly plans: readonly PlanEntry[];
}

/** What is to be kept of all plans, as text; a workbook of which no layout is known is from now on of the first. */
export function keepPlans(plans: readonly PlanEntry[], layout: number | null): string {
  const bare = plans.map(({ name, key, job, ownSheet, cellPrints, rowPrints }) => {
    return { name, key, job, ownSheet, cellPrints, rowPrints };
  });
  return JSON.stringify({ schema: SCHEMA_VERSION, layout: layout ?? 1, plans: bare } satisfies Kept);
}

/** What was kept; nothing when the text is not ours, since plans can be found by their names again only with it. */
export function keptPlans(text: string | null): Kept | null {
  if (text === null) return null;
  try {
    const kept: unknown = JSON.parse(text);
    if (!isKept(kept)) return null;
    const { schema, layout, plans } = kept;
    return { schema, layout: typeof layout === 'number' ? layout : null, plans: plans.filter(isEntry) };
  } catch {
    return null;
  }
}

function isKept(value: unknown): value is Kept {
  const kept = value as Partial<Kept> | null;
  return typeof kept === 'object' && kept !== null && typeof kept.schema === 'number' && Array.isArray(kept.plans);
}

function isEntry(value: unknown): value is PlanEntry {
  const entry = value as Partial<PlanEntry> | null;
  return (
    typeof entry === 'object' &&
    entry !== null &&
    typeof entry.name === 'string' &&
    typeof entry.key === 'string' &&
    Array.isArray(entry.cellPrints) &&
    Array.isArray(entry.rowPrints)
  );
}

/** The places that still exist. */
export function standing(entries: readonly PlanEntry[], names: readonly NameSeen[]): PlanPlace[] {
  return entries.flatMap((entry) => {
    const block = names.find((seen) => seen.name === entry.name)?.at;
    return block ? [{ ...entry, block }] : [];
  });
}

/** A defined name that no plan has, and that the workbook does not use for something we know nothing of. */
export function freeName(entries: readonly PlanEntry[], inUse: readonly string[]): string {
  const taken = new Set([...entries.map(({ name }) => name), ...inUse]);
  let number = 1;
  while (taken.has(`${NAME_STEM}${number}`)) number += 1;
  return `${NAME_STEM}${number}`;
}

/* ------------------------------------------------------------------ whose cell it is */

export type Owner = 'nobody' | 'formula' | 'filled' | 'ours' | 'person';

/** Tells whose each cell of a block is. */
export function owners(seen: BlockSeen, entry: Pick<PlanEntry, 'cellPrints' | 'rowPrints'> | null): Owner[][] {
  const cells = new Set(entry?.cellPrints);
  const rows = new Set(entry?.rowPrints);
  // Only a formula of a plan we know counts as ours: the same function called by a person is theirs.
  const known = entry !== null;
  return seen.values.map((line, down) => {
    const rowIsOurs = rows.size > 0 && rows.has(rowPrint(line));
    return line.map((value, across): Owner => {
      const formula = seen.formulas[down]?.[across] ?? null;
      if (formula !== null) return known && calls(formula, 'SETPLAN') ? 'formula' : 'person';
      if (known && filledByPlan(seen, down, across)) return 'filled';
      if (isBlank(value)) return filledAtAll(seen, down, across) ? 'person' : 'nobody';
      return rowIsOurs || cells.has(cellPrint(value, across)) ? 'ours' : 'person';
    });
  });
}

/** The area that the plan's formula fills, its own cell first; null when it fills none. */
export function planSpill(seen: BlockSeen): Block | null {
  return (seen.spills ?? []).find((spill) => isPlanFormula(seen, spill)) ?? null;
}

/** The cell of the block that holds the plan's formula, and what it shows. */
export function planFormula(seen: BlockSeen): { readonly cell: Block; readonly shows: Seen } | null {
  for (const [down, line] of seen.formulas.entries()) {
    const across = line.findIndex((formula) => formula !== null && calls(formula, 'SETPLAN'));
    if (across < 0) continue;
    const { sheet, row, column } = seen.at;
    const cell = { sheet, row: row + down, column: column + across, rows: 1, columns: 1 };
    return { cell, shows: seen.values[down]?.[across] ?? null };
  }
  return null;
}

function isPlanFormula(seen: BlockSeen, spill: Block): boolean {
  const formula = seen.formulas[spill.row - seen.at.row]?.[spill.column - seen.at.column] ?? null;
  return formula !== null && calls(formula, 'SETPLAN');
}

function filledByPlan(seen: BlockSeen, down: number, across: number): boolean {
  if (!seen.spills) return false;
  const cell = { ...seen.at, row: seen.at.row + down, column: seen.at.column + across, rows: 1, columns: 1 };
  return seen.spills.some((spill) => isPlanFormula(seen, spill) && overlap(spill, cell) !== null);
}

function filledAtAll(seen: BlockSeen, down: number, across: number): boolean {
  return Boolean(seen.spills) && filledFromElsewhere(seen, seen.at.row + down, seen.at.column + across);
}

function isBlank(value: Seen): boolean {
  return value === null || value === '';
}

/* ------------------------------------------------------------------ prints */

/** Prints of every filled cell of some rows, their columns counted from the left edge of the plan. */
export function cellPrints(rows: readonly (readonly Seen[])[]): string[] {
  return rows.flatMap((row) => row.flatMap((value, across) => (isBlank(value) ? [] : [cellPrint(value, across)])));
}

/** Prints of whole rows, blank ones left out. */
export function rowPrints(rows: readonly (readonly Seen[])[]): string[] {
  return rows.filter((row) => !row.every(isBlank)).map(rowPrint);
}

function cellPrint(value: Seen, across: number): string {
  return print(`${across}|${asText(value)}`);
}

function rowPrint(row: readonly Seen[]): string {
  const texts = row.map(asText);
  // A block may be read wider than it was written: blank cells to the right say nothing.
  while (texts.length > 0 && texts.at(-1) === '') texts.pop();
  return print(texts.join('\u001f'));
}

function asText(value: Seen): string {
  if (value === null || value === '') return '';
  if (typeof value === 'number')
    return `n${Number.isInteger(value) && Math.abs(value) < 1e12 ? value : Number(value.toPrecision(12))}`;
  return typeof value === 'object' ? `e${value.error}` : `${typeof value}${String(value)}`;
}

/** Two 32-bit FNV-1a hashes of a text (Fowler, Noll and Vo; the second over another start), as one short text. */
function print(text: string): string {
  let one = 0x811c9dc5;
  let two = 0x01000193;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    one = Math.imul(one ^ code, 0x01000193) >>> 0;
    two = Math.imul(two ^ code, 0x85ebca6b) >>> 0;
  }
  return one.toString(36) + two.toString(36);
}

/** The cells of a seen block that `which` picks. */
export function pickCells(seen: BlockSeen, which: (down: number, across: number) => boolean): Block[] {
  const cells: Block[] = [];
  for (let down = 0; down < seen.at.rows; down += 1) {
    for (let across = 0; across < seen.at.columns; across += 1) {
      if (!which(down, across)) continue;
      cells.push({ ...seen.at, row: seen.at.row + down, column: seen.at.column + across, rows: 1, columns: 1 });
    }
  }
  return cells;
}
