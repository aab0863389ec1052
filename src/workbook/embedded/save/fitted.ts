/**
 * Rows that a program fitted to their text: the copy keeps their height, and they go on being fitted. The library that writes files takes
 * every height for one that a person has set (`customHeight`, ECMA-376 Part 1, 18.3.1.73), so the heights of such rows carry a mark that
 * is taken off the finished file.
 */
import type { WriteOptions } from 'hucre/xlsx';
import { partsOf, textOf } from '../open/zip';
import { withPart } from './zipPart';

/** Follows two digits after the point; no height that a person or a screen gives has so many. */
const MARK = '0123';
const MARKED = / ht="(\d+\.\d\d)0123" customHeight="1"/g;

/** A height in points, marked. */
export function fittedHeight(points: number): number {
  return Number(`${points.toFixed(2)}${MARK}`);
}

/** The finished file of a workbook, with its marked rows fitted. */
export async function withFittedRows(file: Uint8Array, { sheets }: Pick<WriteOptions, 'sheets'>): Promise<Uint8Array> {
  const parts = partsOf(file) ?? [];
  let made = file;
  for (const [at, { rowDefs }] of sheets.entries()) {
    if (![...(rowDefs?.values() ?? [])].some(({ height }) => height !== undefined && isMarked(height))) continue;
    const part = parts.find(({ name }) => name === `xl/worksheets/sheet${at + 1}.xml`);
    if (!part) continue;
    const xml = await textOf(file, part);
    const told = xml.replace(MARKED, (_, points: string) => ` ht="${Number(points)}"`);
    made = await withPart(made, part.name, new TextEncoder().encode(told));
  }
  return made;
}

function isMarked(height: number): boolean {
  return String(height).endsWith(MARK);
}
