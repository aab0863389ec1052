/** Columns that hold what the plan says, beside the clubs in the very list they stand in. */
import { headingText } from './connect/headingWords';

/** One result: a column of the plan under a heading that no column of Clubs has. */
export interface ResultColumn {
  readonly key: string;
  readonly heading: string;
  /** Column of Clubs whose unit the list keeps it in. */
  readonly unitOf?: string;
  readonly format?: string;
}

export const RESULTS: readonly ResultColumn[] = [
  { key: 'readingAfter', heading: 'Planned reading' },
  { key: 'verdictAfter', heading: 'Planned verdict' },
  { key: 'grams', heading: 'Weight to add (g)', format: '0.0' },
  { key: 'where', heading: 'Weight goes' },
  { key: 'massAfter', heading: 'Planned mass', unitOf: 'mass', format: '0.0' },
  { key: 'upper', heading: 'Planned diameter', unitOf: 'butt', format: '0.000' },
  { key: 'notes', heading: 'Plan notes' },
];

/** One such heading may be the owner's; they are written together. */
const LEAST_OURS = 2;

/** Where results stand under these headings. */
export function resultPlaces(headings: readonly string[]): ReadonlySet<number> {
  const places = headings.flatMap((heading, at) =>
    RESULTS.some((column) => isHeadingOf(column, heading)) ? [at] : [],
  );
  return new Set(places.length < LEAST_OURS ? [] : places);
}

function isHeadingOf({ heading, unitOf }: ResultColumn, theirs: string): boolean {
  const text = headingText(theirs);
  return unitOf === undefined ? text === heading : text.startsWith(`${heading} (`);
}
