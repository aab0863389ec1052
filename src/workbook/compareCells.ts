/** A comparison of grips as cells: one row for each candidate, unbeaten ones first. */
import { roundTo } from '../core/index';
import type { Comparison, Tried } from '../core/index';
import { bestWords, COUNT_WORDS } from '../words/choose';
import { STANDING_WORDS } from '../words/compareHead';
import type { Cell } from './port';
import type { SheetColumn } from './sheetLooks';

interface CompareColumn extends SheetColumn {
  readonly key: string;
  readonly cell: (tried: Tried) => string | number | undefined;
}

const INCHES = '.000;"−".000;.000';
const INCHES_OFF = '+.000;"−".000;.000';
const POINTS = '0.0';
const POINTS_OFF = '+0.0;"−"0.0;0.0';
const GRAMS = '0.0;"−"0.0;"–"';
const GRAMS_CHANGE = '+0.0;"−"0.0;0.0';

export const COMPARE_COLUMNS: readonly CompareColumn[] = [
  {
    key: 'standing',
    header: 'Standing',
    width: 10,
    align: 'center',
    cell: ({ unbeaten }) => STANDING_WORDS[unbeaten ? 'unbeaten' : 'beaten'],
  },
  { key: 'grip', header: 'Grip', width: 16, wrap: true, align: 'left', cell: ({ candidate }) => candidate.key },
  {
    key: 'description',
    header: 'Description',
    width: 24,
    wrap: true,
    cell: (tried) => told(tried, ({ description, model }) => description ?? model),
  },
  { key: 'size', header: 'Size', width: 10, wrap: true, cell: (tried) => told(tried, ({ size }) => size) },
  { key: 'layers', header: 'Layers', width: 8, align: 'center', cell: layersOf },
  {
    key: 'sizeError',
    header: `${COUNT_WORDS.sizeError} (in)`,
    width: 10,
    format: INCHES_OFF,
    cell: ({ sizeErrorInches }) => rounded(sizeErrorInches, 3),
  },
  {
    key: 'meanSizeError',
    header: 'Mean size error (in)',
    width: 10,
    format: INCHES,
    cell: ({ meanSizeErrorInches }) => rounded(meanSizeErrorInches, 3),
  },
  {
    key: 'largestChange',
    header: `${COUNT_WORDS.largestChange} (pt)`,
    width: 10,
    format: POINTS_OFF,
    cell: ({ largestChangePoints }) => rounded(largestChangePoints, 1),
  },
  {
    key: 'meanChange',
    header: 'Mean change (pt)',
    width: 10,
    format: POINTS,
    cell: ({ meanChangePoints }) => rounded(meanChangePoints, 1),
  },
  { key: 'out', header: COUNT_WORDS.out, width: 7, format: '0', align: 'center', cell: ({ clubsOut }) => clubsOut },
  { key: 'head', header: 'Head weight (g)', width: 9, format: GRAMS, cell: ({ headGrams }) => headGrams },
  { key: 'butt', header: 'Butt weight (g)', width: 9, format: GRAMS, cell: ({ buttGrams }) => buttGrams },
  {
    key: 'massAdded',
    header: `${COUNT_WORDS.massAdded} (g)`,
    width: 9,
    format: GRAMS_CHANGE,
    cell: ({ massAddedGrams }) => massAddedGrams,
  },
  { key: 'price', header: COUNT_WORDS.price, width: 9, format: '#,##0.00', cell: ({ price }) => price },
  {
    key: 'short',
    header: 'Pieces short',
    width: 8,
    format: '0;;"–"',
    align: 'center',
    cell: ({ piecesShort }) => piecesShort,
  },
  {
    key: 'bestAt',
    header: 'Best at',
    width: 30,
    wrap: true,
    align: 'left',
    cell: ({ bestAt }) => bestWords(bestAt),
  },
];

/** Header row and a row for each candidate; null where nothing is known. */
export function compareCells({ tried }: Comparison): Cell[][] {
  return [
    COMPARE_COLUMNS.map(({ header }) => header),
    ...tried.map((each) => COMPARE_COLUMNS.map(({ cell }) => tidy(cell(each)))),
  ];
}

/** What the items of a candidate say, each once. */
function told({ candidate }: Tried, pick: (grip: Tried['candidate']['items'][number]) => string | undefined): string {
  return [...new Set(candidate.items.flatMap((grip) => pick(grip) ?? []))].join(' + ');
}

function layersOf({ fewestLayers, mostLayers }: Tried): string | number {
  return fewestLayers === mostLayers ? fewestLayers : `${fewestLayers}–${mostLayers}`;
}

/** As far as a shop can tell sizes and readings apart: a sign before .000 would say more than is known. */
function rounded(value: number | undefined, decimals: number): number | undefined {
  return value === undefined ? undefined : roundTo(value, decimals);
}

/** Sums of binary fractions carry noise such as 0.30000000000000004; seven decimals are beyond any scale. A −0 becomes 0. */
function tidy(cell: string | number | undefined): Cell {
  if (cell === undefined || cell === '') return null;
  return typeof cell === 'number' ? Math.round(cell * 1e7) / 1e7 + 0 : cell;
}
