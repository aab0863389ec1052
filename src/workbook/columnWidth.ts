/** How wide a column of our tables is, in characters of the default font. */
import type { Column } from './schema';
import { wrappedLines } from './shared/wrappedLines';

/** A heading over more lines makes the whole row as high, in a table of forty columns too. */
const MOST_LINES = 2;
/** Bold letters are wider. */
const BOLD_FACTOR = 1.05;
/** What the button of a filter takes beside the heading. */
const BUTTON_CHARACTERS = 2;

/** As wide as its cells need, and as its heading needs to go over two lines at the most without a broken word. */
export function columnWidth({ header, width }: Pick<Column, 'header' | 'width'>): number {
  return Math.max(width, Math.ceil(lineOf(header) * BOLD_FACTOR) + BUTTON_CHARACTERS);
}

/** The shortest line that the heading fits into. */
function lineOf(header: string): number {
  let characters = Math.max(...header.split(' ').map((word) => word.length));
  while (wrappedLines(header, characters) > MOST_LINES) characters += 1;
  return characters;
}
