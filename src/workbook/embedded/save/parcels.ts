/**
 * A described workbook on its way to the worker that makes the file. What is handed to a worker is copied, in one piece for each
 * message: a large sheet goes in many.
 */
import type { WriteOptions, WriteSheet } from 'hucre/xlsx';

type Cells = NonNullable<WriteSheet['cells']>;
type Entry = Cells extends Map<infer At, infer Cell> ? readonly [At, Cell] : never;

export type Parcel =
  /** everything but the cells */
  | { readonly workbook: WriteOptions }
  /** cells of one of its sheets, after those that came before */
  | { readonly sheet: number; readonly cells: readonly Entry[] }
  | { readonly complete: true };

/** Cells in one message. */
const MOST_CELLS = 2000;

/** The workbook in parcels. */
export function* parcelsOf(workbook: WriteOptions): Generator<Parcel> {
  yield { workbook: { ...workbook, sheets: workbook.sheets.map((sheet) => ({ ...sheet, cells: new Map() })) } };
  for (const [sheet, { cells }] of workbook.sheets.entries()) {
    let some: Entry[] = [];
    for (const entry of cells ?? []) {
      some.push(entry);
      if (some.length < MOST_CELLS) continue;
      yield { sheet, cells: some };
      some = [];
    }
    if (some.length > 0) yield { sheet, cells: some };
  }
  yield { complete: true };
}

/** Puts parcels together again; answers the workbook with the last one, null before. */
export function unpacker(): (parcel: Parcel) => WriteOptions | null {
  let workbook: WriteOptions | null = null;
  return (parcel) => {
    if ('workbook' in parcel) ({ workbook } = parcel);
    else if ('cells' in parcel) {
      const cells = workbook?.sheets[parcel.sheet]?.cells;
      for (const [at, cell] of parcel.cells) cells?.set(at, cell);
    } else return workbook;
    return null;
  };
}
