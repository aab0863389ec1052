/**
 * Which cells of a plan are ours.
 *
 * A cell is ours when our formula stands in it or fills it, or when it shows what we put: a short print of that is kept, by
 * cell for the head of the plan and by row for its body. What a person typed over it has another print and is theirs.
 */
import { drained } from '../core/index';
import { mapSteps } from './pace';
import type { PlanEntry } from './planPlaces';
import type { Block, BlockSeen, Seen } from './port';
import { overlap } from './shared/address';
import { filledFromElsewhere } from './shared/looked';
import { calls } from './shared/cellNow';

export type Owner = 'nobody' | 'formula' | 'filled' | 'ours' | 'person';

/** Tells whose each cell of a block is. */
export function owners(seen: BlockSeen, entry: Pick<PlanEntry, 'cellPrints' | 'rowPrints'> | null): Owner[][] {
  return drained(ownerSteps(seen, entry));
}

/** {@link owners} in steps. */
export function ownerSteps(
  seen: BlockSeen,
  entry: Pick<PlanEntry, 'cellPrints' | 'rowPrints'> | null,
): Generator<void, Owner[][]> {
  const cells = new Set(entry?.cellPrints);
  const rows = new Set(entry?.rowPrints);
  // Only a formula of a plan we know counts as ours: the same function called by a person is theirs.
  const known = entry !== null;
  return mapSteps(seen.values, (line, down) => {
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
  return drained(rowPrintSteps(rows));
}

/** {@link rowPrints} in steps. */
export function rowPrintSteps(rows: readonly (readonly Seen[])[]): Generator<void, string[]> {
  return mapSteps(
    rows.filter((row) => !row.every(isBlank)),
    rowPrint,
  );
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
  if (typeof value === 'number') return `n${isShort(value) ? value : Number(value.toPrecision(12))}`;
  return typeof value === 'object' ? `e${value.error}` : `${typeof value}${String(value)}`;
}

/** Whether twelve digits hold a number whole. Those of a plan have seven decimals at most, and to print them digit by digit takes long. */
function isShort(value: number): boolean {
  const size = Math.abs(value);
  return (size < 1e12 && Number.isInteger(value)) || (size < 1e5 && Math.round(value * 1e7) / 1e7 === value);
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
