/** Which formulas fail by themselves, and which only because they point at others that fail. */
import type { Block } from '../../port';
import { blockOf, sameBlock } from '../../shared/address';

/** A formula that fails. */
export interface Failed {
  readonly at: Block;
  readonly formula: { readonly entered: string | null };
  /** The cells that it was to fill. */
  readonly wanted: Block;
}

/** Formulas that are looked at at a stretch. */
const AT_A_STRETCH = 100;

/** Those that point at no other that fails, in steps. */
export function* causesAmong<T extends Failed>(failed: readonly T[]): Generator<void, T[]> {
  const places = new Places();
  for (const [i, each] of failed.entries()) {
    places.add(each);
    if (i % AT_A_STRETCH === 0) yield;
  }
  places.sort();
  const causes: T[] = [];
  for (const [i, each] of failed.entries()) {
    if (!blocksIn(each).some((block) => places.holdsOther(block, each))) causes.push(each);
    if (i % AT_A_STRETCH === 0) yield;
  }
  return causes;
}

/** The cells that a formula names; what cannot be told is left out. */
function blocksIn({ formula, at }: Failed): Block[] {
  const references = (formula.entered ?? '').matchAll(
    /(?:(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|\$?[A-Z]{1,3}:\$?[A-Z]{1,3})/giu,
  );
  return [...references].flatMap(
    ([, quoted, bare, cells = '']) => blockOf(cells, quoted?.replaceAll("''", "'") ?? bare ?? at.sheet) ?? [],
  );
}

/** Rows of one column that a formula was to fill. */
interface Stretch {
  readonly first: number;
  readonly last: number;
  readonly of: Failed;
}

/** Where formulas fail, by sheet and column: there may be tens of thousands, each of which asks about the others. */
class Places {
  private readonly sheets = new Map<string, Map<number, Stretch[]>>();

  add(of: Failed): void {
    const { sheet, row, column, rows, columns } = of.wanted;
    const name = sheet.toLowerCase();
    const onSheet = this.sheets.get(name) ?? new Map<number, Stretch[]>();
    this.sheets.set(name, onSheet);
    for (let each = column; each < column + columns; each++) {
      const stretches = onSheet.get(each) ?? [];
      onSheet.set(each, stretches);
      stretches.push({ first: row, last: row + rows - 1, of });
    }
  }

  /** To be called once all are there. */
  sort(): void {
    for (const columns of this.sheets.values())
      for (const stretches of columns.values()) stretches.sort((one, other) => one.first - other.first);
  }

  /** Whether another one was to fill a cell of the block. */
  holdsOther({ sheet, row, column, rows, columns }: Block, than: Failed): boolean {
    const onSheet = this.sheets.get(sheet.toLowerCase());
    if (!onSheet) return false;
    for (const [each, stretches] of columns < onSheet.size ? some(onSheet, column, columns) : onSheet) {
      if (each < column || each >= column + columns) continue;
      if (otherIn(stretches, row, row + rows - 1, than)) return true;
    }
    return false;
  }
}

function* some(all: ReadonlyMap<number, Stretch[]>, from: number, count: number): Generator<[number, Stretch[]]> {
  for (let at = from; at < from + count; at++) {
    const found = all.get(at);
    if (found) yield [at, found];
  }
}

/** Whether one of the stretches reaches into these rows; no cell of a file is filled by two formulas, so they stand one after another. */
function otherIn(stretches: readonly Stretch[], first: number, last: number, than: Failed): boolean {
  let [low, high] = [0, stretches.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((stretches[middle]?.last ?? 0) < first) low = middle + 1;
    else high = middle;
  }
  for (let i = low; i < stretches.length; i++) {
    const stretch = stretches[i];
    if (!stretch || stretch.first > last) return false;
    if (!sameBlock(stretch.of.at, than.at)) return true;
  }
  return false;
}
