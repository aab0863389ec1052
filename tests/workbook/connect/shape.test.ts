import { describe, expect, it } from 'vitest';
import { likenessOf } from '../../../src/workbook/connect/likeness';
import { bodyOf, headingsIn } from '../../../src/workbook/connect/shape';
import type { Seen } from '../../../src/workbook/port';
import { STOCK } from '../../../src/workbook/schema';

const BODY: readonly (readonly Seen[])[] = [
  ['Item', 'Core (in)', 'Mass (g)', 'On hand'],
  ['FERN-M', 0.58, 52, 4],
  ['FERN-J', 0.6, 58, 2],
  ['MOSS-S', 0.58, 46, 11],
];
const BLANK: readonly Seen[] = [null, '', null, ' '];

describe('where the rows end', () => {
  it.each<[string, readonly (readonly Seen[])[], readonly (readonly ['totals' | 'notes', number, number])[]]>([
    ['at the last row', [], []],
    ['before blanks', [BLANK, BLANK], []],
    ['before totals', [['Total', null, null, 17]], [['totals', 4, 4]]],
    ['before totals of several words', [BLANK, ['Grand total stock value:', null, null, 17]], [['totals', 5, 5]]],
    ['before sums that are not called so', [[null, null, 156, 17]], [['totals', 4, 4]]],
    [
      'before totals and the notes below them',
      [['Sum', null, 156, 17], BLANK, ['counted on Friday'], ['* the box under the bench too']],
      [
        ['totals', 4, 4],
        ['notes', 6, 7],
      ],
    ],
  ])('%s', (_, below, left) => {
    const body = bodyOf([...BODY, ...below], 0);
    expect(body.lastRow).toBe(3);
    expect(body.warnings).toEqual(left.map(([why, from, to]) => ({ warning: 'rowsLeftOut', why, from, to })));
  });

  it.each<[string, readonly Seen[]]>([
    ['a grip that is called Total', ['Total Comfort', 0.58, 50, 3]],
    ['a grip of which nothing is known yet', ['NEW-1', null, null, null]],
    ['a row after a gap', ['OAK-60', 0.6, 49, 1]],
  ])('not before %s', (_, last) => {
    expect(bodyOf([...BODY, ...(last[0] === 'OAK-60' ? [BLANK] : []), last], 0)).toEqual({
      lastRow: last[0] === 'OAK-60' ? 5 : 4,
      warnings: [],
    });
  });
});

describe('where the headings stand', () => {
  it('is below titles, addresses and a date, however many', () => {
    const above: Seen[][] = [['Grip room'], ['12 Mill Lane', 'Harrow End'], [], ['Date', 46100], []];
    expect(headingsIn(STOCK, [...above, ...BODY])).toMatchObject({ headerRow: 5, headerRows: 1, known: true });
  });

  it('is nowhere where there are numbers alone', () => {
    expect(
      headingsIn(STOCK, [
        [1, 2],
        [3, 4],
      ]).known,
    ).toBe(false);
  });

  it('keeps two headings alike apart by the one above them', () => {
    const rows: Seen[][] = [
      [null, 'Old grip', null, 'New grip', null],
      ['Item', 'Weight', 'Core', 'Weight', 'Core'],
      ['FERN-M', 50, 0.58, 52, 0.6],
    ];
    expect(headingsIn(STOCK, rows).headings).toEqual([
      ...['Item', 'Old grip Weight', 'Old grip Core', 'New grip Weight', 'New grip Core'],
    ]);
    const { proposals, warnings } = likenessOf(STOCK, rows);
    expect(proposals.find(({ key }) => key === 'mass')).toMatchObject({ position: 1, others: [3] });
    expect(warnings.map(({ warning }) => warning)).toEqual(['lookAlike', 'lookAlike']);
  });
});

describe('units that have a row of headings to themselves', () => {
  const rows = BODY.slice(1);
  const found = (headings: readonly (readonly Seen[])[]) => {
    const likeness = likenessOf(STOCK, [['Grip room'], [], ...headings, ...rows.map((row) => [...row, 'left wall'])]);
    const unit = (key: string) => likeness.proposals.find((each) => each.key === key);
    return {
      headerRow: likeness.headerRow,
      headerRows: likeness.headerRows,
      places: ['item', 'core', 'mass', 'onHand'].map((key) => unit(key)?.position),
      mass: unit('mass')?.unit ?? null,
    };
  };

  it.each<[string, readonly (readonly Seen[])[]]>([
    [
      'below',
      [
        ['Item', 'Core', 'Weight', 'Qty', 'Shelf'],
        [null, '(in)', '(oz)', null, null],
      ],
    ],
    [
      'below, one of them',
      [
        ['Item', 'Core', 'Weight', 'Qty', 'Shelf'],
        [null, null, '(oz)', null, null],
      ],
    ],
    [
      'below, among other words',
      [
        ['Item', 'Core', 'Weight', 'Qty', 'Shelf'],
        ['code', 'in', 'oz', 'pcs', null],
      ],
    ],
    [
      'above',
      [
        [null, 'in', 'oz', null, null],
        ['Item', 'Core', 'Weight', 'Qty', 'Shelf'],
      ],
    ],
    [
      'above, one of them',
      [
        [null, null, 'oz', null, null],
        ['Item', 'Core', 'Weight', 'Qty', 'Shelf'],
      ],
    ],
  ])('%s are read as theirs', (_, headings) => {
    expect(found(headings)).toEqual({ headerRow: 3, headerRows: 2, places: [0, 1, 2, 3], mass: 'oz' });
  });
});
