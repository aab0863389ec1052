/** What of an opened file a copy cannot hold, told by looking at the file's own parts. */
import type { Part } from './zip';

/** A kind of thing that goes missing. */
export type UnkeptKind =
  | 'macros'
  | 'charts'
  | 'pictures'
  | 'pivots'
  | 'slicers'
  | 'externalLinks'
  | 'connections'
  | 'threads'
  | 'embedded'
  | 'controls'
  | 'signature'
  | 'chartSheets'
  | 'shapes'
  /** highlights of kinds that are not known here */
  | 'highlights'
  /** checks of entries of kinds that are not known here */
  | 'checks'
  /** conditions of a filter of a table; the rows it hides stay hidden */
  | 'tableFilters'
  /** tables that have no row of headings */
  | 'headlessTables'
  /** formulas that a table gives to its new rows */
  | 'columnFormulas'
  /** tables of results for several inputs */
  | 'whatIf'
  | 'passwords'
  | 'protectedRanges'
  | 'scenarios'
  /** sheets that show formulas, no zeros, no headings, or pages */
  | 'shownOtherwise'
  /** sheets with looks of whole rows or columns */
  | 'lineLooks'
  /** sheets with a usual height of rows of their own */
  | 'rowHeights'
  /** sheets that are printed in ways that are not known here */
  | 'printing'
  | 'hiddenArrows'
  | 'asides'
  /** tables with columns that stand out, or a style made up in the workbook */
  | 'tableLooks'
  | 'calculation'
  | 'hiddenNames'
  | 'readOnly'
  | 'namedLooks'
  /** sheets with columns far right of their cells that have a width, are hidden or grouped */
  | 'farColumns'
  /** sheets with rows below their cells that have a height, are hidden or grouped */
  | 'lowRows'
  /** notes whose letters have looks */
  | 'noteLooks'
  /** lists that say by what they were sorted */
  | 'sorts'
  /** what stands beside names and tables as a comment of theirs */
  | 'remarks'
  /** days shown in the order that the computer has */
  | 'localDays';

export interface Unkept {
  readonly kind: UnkeptKind;
  readonly count: number;
}

const BY_PART: readonly (readonly [UnkeptKind, RegExp])[] = [
  ['macros', /(^|\/)vbaProject\.bin$|(^|\/)macrosheets\//i],
  ['charts', /(^|\/)charts\/chart[^/]*\.xml$|(^|\/)chartex[^/]*\.xml$/i],
  ['chartSheets', /(^|\/)(chartsheets|dialogsheets)\/[^/]*\.xml$/i],
  ['pictures', /(^|\/)media\/[^/]+$|(^|\/)cellimages\.xml$/i],
  ['pivots', /(^|\/)pivotTables\/[^/]*\.xml$/i],
  ['slicers', /(^|\/)(slicers|timelines)\/[^/]*\.xml$/i],
  ['externalLinks', /(^|\/)externalLinks\/[^/]*\.xml$/i],
  ['connections', /(^|\/)(connections\.xml|queryTables\/[^/]*\.xml|model\/item\.data)$/i],
  ['threads', /(^|\/)threadedComments\/[^/]*\.xml$/i],
  ['embedded', /(^|\/)embeddings\/[^/]+$/i],
  ['controls', /(^|\/)(ctrlProps|activeX)\/[^/]*\.xml$/i],
  ['signature', /^_xmlsignatures\/sig[^/]*\.xml$/i],
];

/** Things that parts of their own hold. */
export function unkeptByParts(parts: readonly Part[]): Unkept[] {
  return BY_PART.flatMap(([kind, name]) => counted(kind, parts.filter((part) => name.test(part.name)).length));
}

/** How a thing is said of which there are none, or some. */
export function counted(kind: UnkeptKind, count: number): Unkept[] {
  return count > 0 ? [{ kind, count }] : [];
}

/** The same kinds put together. */
export function summed(all: readonly Unkept[]): Unkept[] {
  const byKind = new Map<UnkeptKind, number>();
  for (const { kind, count } of all) byKind.set(kind, (byKind.get(kind) ?? 0) + count);
  return [...byKind].map(([kind, count]) => ({ kind, count }));
}
