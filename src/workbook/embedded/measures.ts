/** Sizes of sheets, columns and rows in the embedded spreadsheet; plain numbers, so that what comes first on the page can reckon with them. */
import { wrappedLines } from '../shared/wrappedLines';

export const usualRows = 400;
export const usualColumns = 80;
/** Blank rows below a table that a formula or a drop-down fed by it covers as well. */
export const spareRows = 200;

/* Digits of the default font here are 8 pixels wide; a drop-down's arrow takes 14 of the padding. */
export const pixelsPerCharacter = 8;
const paddingPixels = 18;

/** A width in characters of the default font, in pixels. */
export function widthInPixels(characters: number): number {
  return Math.round(characters * pixelsPerCharacter + paddingPixels);
}

/* Measured on the screen at the default size of 11 points: line height, what a row adds to its lines, a filter button. */
const linePixels = 19;
const aroundPixels = 5;
const buttonPixels = 22;
/** A point is 1/72 in, a pixel 1/96. */
const pixelsPerPoint = 96 / 72;
/** Bold letters are wider. */
const boldFactor = 1.08;

export function heightInPixels(points: number): number {
  return Math.ceil(points * pixelsPerPoint);
}

/** The height of a row whose fullest cell has so many lines. */
export function rowPixels(lines: number): number {
  return lines * linePixels + aroundPixels;
}

/** Over how many lines a text goes in a cell where it wraps. */
export function linesIn(
  text: string,
  { columnPixels, bold, filterButton }: { columnPixels: number; bold: boolean; filterButton: boolean },
): number {
  const perCharacter = pixelsPerCharacter * (bold ? boldFactor : 1);
  const room = Math.max(1, Math.floor((columnPixels - (filterButton ? buttonPixels : 0)) / perCharacter));
  return text.split('\n').reduce((lines, paragraph) => lines + wrappedLines(paragraph, room), 0);
}
