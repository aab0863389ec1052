import { describe, expect, it } from 'vitest';
import { DEFAULT_SIZE_GUIDE, startDiameter, type SizeGuideRow } from '../../src/core/index';
import { sayIssue } from '../../src/words/issues';
import { readSizes } from '../../src/workbook/readSizes';
import { SIZES, STARTING_SIZES } from '../../src/workbook/schema';

type Cells = unknown[];

const HEADER = SIZES.columns.map(({ header }) => header);

function read(rows: Cells[], header: Cells = HEADER, headerRow?: number) {
  const result = readSizes([header, ...rows], headerRow);
  if (!result.ok) throw new Error(sayIssue(result.issue));
  return { guide: result.value.guide, said: result.value.problems.map(sayIssue) };
}

const row = (handInches: number, fingerInches: number | undefined, diameterInches: number): SizeGuideRow => ({
  handInches,
  fingerInches,
  diameterInches,
});

describe('a size guide', () => {
  it('is the usual one where there is no table, or none of its rows says anything', () => {
    const usual = { ok: true, value: { guide: DEFAULT_SIZE_GUIDE, problems: [] } };
    expect(readSizes(null)).toEqual(usual);
    expect(readSizes(undefined)).toEqual(usual);
    expect(readSizes([HEADER])).toEqual(usual);
    expect(readSizes([HEADER, ['', null, ' '], [null, null, null]])).toEqual(usual);
  });

  it('as a new workbook holds it, is the usual one', () => {
    expect(read(STARTING_SIZES.map((cells) => [...cells]))).toEqual({ guide: DEFAULT_SIZE_GUIDE, said: [] });
  });

  it('has its rows by hand length, whichever order and words a shop writes', () => {
    const { guide, said } = read(
      [
        [0.95, '8,0'],
        [0.9, 7],
      ],
      ['OD', 'Hand size'],
    );
    expect(guide).toEqual([row(7, undefined, 0.9), row(8, undefined, 0.95)]);
    expect(said).toEqual([]);
  });

  it('takes a finger that is blank, or 0 for a blank, as none', () => {
    const { guide } = read([
      [7, '', 0.9],
      [8, 0, 0.95],
      [9, 3.9, 1],
    ]);
    expect(guide.map(({ fingerInches }) => fingerInches)).toEqual([undefined, undefined, 3.9]);
  });
});

describe('what cannot be used is left out and told', () => {
  it.each<[Cells, string]>([
    [['long', 3.4, 0.93], 'Sizes row 5, Hand length (in) is “long”, not a number. Give 5 to 10 in.'],
    [[203, 3.4, 0.93], 'Sizes row 5, Hand length (in) is 203. Give 5 to 10 in.'],
    [[8, 3.4, ''], 'Sizes row 5, Diameter (in) is blank. Give 0.7 to 1.8 in.'],
    [['', 3.4, 0.93], 'Sizes row 5, Hand length (in) is blank. Give 5 to 10 in.'],
    [['#N/A', 3.4, 0.93], 'Sizes row 5, Hand length (in) holds the error “#N/A”. Mend that cell first.'],
    [
      [7, 3.4, 0.93],
      'Sizes row 5, Hand length (in): 7 is there twice; the first one counts. Rename or remove this one.',
    ],
    [
      [8, 3.4, 0.89],
      'Sizes row 5 does not fit: the hand of 8 in starts from a smaller diameter than a shorter hand; the rows above it count.',
    ],
    [
      [6, 3.4, 0.85],
      'Sizes row 5 does not fit: the hand of 7 in does not have a longer finger than a shorter hand; the rows above it count.',
    ],
  ])('%j: %s', (cells, sentence) => {
    const { guide, said } = read([[7, 2.95, 0.9], cells, [9, 3.8, 1]], HEADER, 3);
    expect(guide).toEqual([row(7, 2.95, 0.9), row(9, 3.8, 1)]);
    expect(said).toEqual([sentence]);
    expect(startDiameter(guide, { handInches: 8, fingerInches: 3.4 }).ok).toBe(true);
  });

  it('a bad finger costs the finger alone', () => {
    const { guide, said } = read([
      [7, 81, 0.9],
      [8, 3.4, 0.95],
    ]);
    expect(guide).toEqual([row(7, undefined, 0.9), row(8, 3.4, 0.95)]);
    expect(said).toEqual(['Sizes row 2, Middle finger (in) is 81. Give 2 to 5 in.']);
  });

  it('where nothing is left the usual guide serves, and every row is told', () => {
    const { guide, said } = read([
      [178, 75, 0.9],
      [203, 85, 0.95],
    ]);
    expect(guide).toBe(DEFAULT_SIZE_GUIDE);
    expect(said).toHaveLength(4);
  });

  it('a column that is needed is missing', () => {
    const result = readSizes([
      ['Hand length (in)', 'Size'],
      [7, 0.9],
    ]);
    expect(result.ok ? '' : sayIssue(result.issue)).toBe(
      'There is no column “Diameter (in)” in Sizes. Add it, or give the header row too.',
    );
    // millimetres under a heading that says so are not taken for inches
    expect(
      readSizes([
        ['Hand length (mm)', 'Diameter (in)'],
        [178, 0.9],
      ]).ok,
    ).toBe(false);
  });
});
