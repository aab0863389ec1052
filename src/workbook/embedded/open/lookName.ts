/** How a look of the file is called in the spreadsheet: by its place among the file's looks. */
import type { ICellData } from '@univerjs/core';
import type { CellStyle } from './book';

const LOOK = 'look';

/** The name of a look, by one more than its place. */
export function lookName(place: number): string {
  return `${LOOK}${place}`;
}

/** The look of the file that a cell still has as it came: one that was changed since has another name. */
export function filedLook(styles: readonly CellStyle[], name: ICellData['s']): CellStyle | undefined {
  return typeof name === 'string' && name.startsWith(LOOK) ? styles[Number(name.slice(LOOK.length)) - 1] : undefined;
}
