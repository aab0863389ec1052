/** Sizes of sheets, columns and rows in the embedded spreadsheet; without the spreadsheet, so that what comes first on the page can reckon with them. */
import { textPixels } from './textPixels';

export const usualRows = 400;
export const usualColumns = 80;
/** Columns that a sheet of a file has right of its cells, at the least. */
const spareColumns = 10;

/** Columns of a sheet that was opened. */
export function columnsShown(columnsInUse: number): number {
  return Math.max(usualColumns, columnsInUse + spareColumns);
}

/** Blank rows below a table that a formula or a drop-down fed by it covers as well. */
export const spareRows = 200;

/** A drop-down's arrow takes 14 of it. */
const paddingPixels = 18;

/** As wide as a digit of the default font: whole pixels, so that a width that was kept is the same when it is read again. */
export function pixelsPerCharacter(): number {
  return Math.round(textPixels('0', false));
}

/** A width in characters of the default font, in pixels. */
export function widthInPixels(characters: number): number {
  return Math.round(characters * pixelsPerCharacter() + paddingPixels);
}

/** A width in pixels, in characters of the default font. */
export function widthInCharacters(pixels: number): number {
  return (pixels - paddingPixels) / pixelsPerCharacter();
}

/** Room between a cell's edges and its text. On the left it is that of the spreadsheet's own drop-downs, so that columns of both line up. */
export const CELL_PADDING = { t: 2, r: 4, b: 2, l: 6 } as const;

/* Measured on the screen at the default size of 11 points: line height, what a row adds to its lines, a filter button. */
const linePixels = 19;
const aroundPixels = 5;
const buttonPixels = 19;
/** A point is 1/72 in, a pixel 1/96. */
const pixelsPerPoint = 96 / 72;
/** How much higher than its letters a line is, at the most. */
const lineFactor = 1.2;

export function heightInPixels(points: number): number {
  return Math.ceil(points * pixelsPerPoint);
}

/** The height of a row whose fullest cell has so many lines. */
export function rowPixels(lines: number): number {
  return lines * linePixels + aroundPixels;
}

/** The height of a row with one line of letters of another size. */
export function rowOfSize(points: number): number {
  return Math.ceil(points * pixelsPerPoint * lineFactor) + aroundPixels;
}

/** Over how many lines a text goes in a cell where it wraps. */
export function linesIn(
  text: string,
  { columnPixels, bold, filterButton }: { columnPixels: number; bold: boolean; filterButton: boolean },
): number {
  const edges = CELL_PADDING.l + CELL_PADDING.r + (filterButton ? buttonPixels : 0);
  const room = Math.max(1, columnPixels - edges);
  return text.split('\n').reduce((lines, paragraph) => lines + linesOf(paragraph, room, bold), 0);
}

/** The spreadsheet breaks after blanks, hyphens and strokes, and a blank at the end of a line needs room as well. */
function linesOf(paragraph: string, room: number, bold: boolean): number {
  let lines = 1;
  let used = 0;
  for (const part of paragraph.split(/(?<=[ \-/])/)) {
    const pixels = textPixels(part, bold);
    if (used > 0 && used + pixels > room) {
      lines += 1;
      used = 0;
    }
    lines += Math.max(0, Math.ceil((used + pixels) / room) - 1);
    used = (used + pixels) % room || used + pixels;
  }
  return lines;
}
