import { describe, expect, it } from 'vitest';
import { readClubList } from '../../src/workbook/clubList';

const names = (text: string) => readClubList(text).clubs.map(({ name }) => name);
const kinds = (text: string) => readClubList(text).clubs.map(({ kind }) => kind);

describe('a set as it is said over the counter', () => {
  it('a whole bag', () => {
    const bag = readClubList('Driver, 3 wood, 4h, 5-PW, 52, 56 wedge, putter');
    expect(bag.clubs.map(({ name }) => name)).toEqual([
      'Driver',
      '3 wood',
      '4 hybrid',
      '5 iron',
      '6 iron',
      '7 iron',
      '8 iron',
      '9 iron',
      'PW',
      '52 wedge',
      '56 wedge',
      'Putter',
    ]);
    expect(bag.clubs.map(({ kind }) => kind)).toEqual([
      'Driver',
      'Wood',
      'Hybrid',
      ...Array<string>(6).fill('Iron'),
      'Wedge',
      'Wedge',
      'Putter',
    ]);
    expect(bag.faults).toEqual([]);
  });

  it.each<[string, readonly string[]]>([
    ['1w', ['Driver']],
    ['7', ['7 iron']],
    ['irons 8-9', ['8 iron', '9 iron']],
    ['8 to 9', ['8 iron', '9 iron']],
    ['8–9 irons', ['8 iron', '9 iron']],
    ['4-5 hybrid', ['4 hybrid', '5 hybrid']],
    ['8-GW', ['8 iron', '9 iron', 'PW', 'GW']],
    ['3 and 5 wood', ['3 wood', '5 wood']],
    ['50, 54 and 58 wedge', ['50 wedge', '54 wedge', '58 wedge']],
    ['60°', ['60 wedge']],
    ['3W; 5W\n7W', ['3 wood', '5 wood', '7 wood']],
    ['spare putter', ['Spare putter']],
    [' , ;', []],
  ])('%s', (text, expected) => {
    expect(readClubList(text)).toMatchObject({ faults: [] });
    expect(names(text)).toEqual(expected);
  });

  it('a junior club is one whatever else it is', () => {
    expect(kinds('Junior 7, junior putter, junior wood')).toEqual(['Junior', 'Junior', 'Junior']);
  });

  it('says what is no club, and keeps the rest', () => {
    const { clubs, faults } = readClubList('Driver, spoon, 9-4, 5-SW, 3-5 wood, Driver, 0');
    expect(clubs).toEqual([{ name: 'Driver', kind: 'Driver' }]);
    expect(faults).toEqual([
      { why: 'unknown', part: 'spoon' },
      { why: 'range', part: '9-4' },
      { why: 'range', part: '5-SW' },
      { why: 'range', part: '3-5 wood' },
      { why: 'twice', part: 'Driver' },
      { why: 'unknown', part: '0' },
    ]);
  });
});
