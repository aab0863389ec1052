import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { readClubList, type ListFault } from '../../src/workbook/clubList';
import { sayListFault } from '../../src/words/intake';

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
    ['7-iron, 3-wood', ['7 iron', '3 wood']],
    ['iron 7, wood 3', ['7 iron', '3 wood']],
    ['5 fairway wood', ['5 wood']],
    ['irons 8-9', ['8 iron', '9 iron']],
    ['8 to 9', ['8 iron', '9 iron']],
    ['8–9 irons', ['8 iron', '9 iron']],
    ['4-5 hybrid', ['4 hybrid', '5 hybrid']],
    ['8-GW', ['8 iron', '9 iron', 'PW', 'GW']],
    ['8-P', ['8 iron', '9 iron', 'PW']],
    ['9-pitching wedge', ['9 iron', 'PW']],
    ['60°', ['60 wedge']],
    ['56 degrees', ['56 wedge']],
    ['SW 56, 52 GW', ['SW 56', 'GW 52']],
    ['3W; 5W\n7W', ['3 wood', '5 wood', '7 wood']],
    ['spare putter', ['Spare putter']],
    ['left-hand 7 iron', ['Left-hand 7 iron']],
    ['Driver no. 2, 7 iron #3', ['Driver no. 2', '7 iron no. 3']],
    [' , ;', []],
  ])('%s', (text, expected) => {
    expect(readClubList(text)).toMatchObject({ faults: [] });
    expect(names(text)).toEqual(expected);
  });

  it('a junior club is one whatever else it is', () => {
    expect(kinds('Junior 7, junior putter, junior wood, junior 5 iron')).toEqual(Array(4).fill('Junior'));
  });

  it.each(['PW', 'pw', 'Pitching wedge', 'pitching  WEDGE', 'P wedge'])(
    '%s is the PW, which goes with the irons',
    (text) => {
      expect(readClubList(text)).toEqual({ clubs: [{ name: 'PW', kind: 'Iron' }], faults: [] });
    },
  );

  it('other wedges in words are those in letters', () => {
    const said = readClubList('Sand wedge, gap wedge, approach wedge, lob wedge');
    expect(said).toEqual(readClubList('SW, GW, AW, LW'));
    expect(said.clubs.map(({ kind }) => kind)).toEqual(Array(4).fill('Wedge'));
    expect(readClubList('PW, pitching wedge').faults).toEqual([{ why: 'twice', part: 'PW' }]);
  });

  it('says what is no club, and keeps the rest', () => {
    const { clubs, faults } = readClubList('Driver, spoon, 9-4, 5-SW, 3-5 wood, Driver, 0, no putter');
    expect(clubs).toEqual([{ name: 'Driver', kind: 'Driver' }]);
    expect(faults).toEqual([
      { why: 'unknown', part: 'spoon' },
      { why: 'range', part: '9-4' },
      { why: 'range', part: '5-SW' },
      { why: 'range', part: '3-5 wood' },
      { why: 'twice', part: 'Driver' },
      { why: 'unknown', part: '0' },
      { why: 'unknown', part: 'no putter' },
    ]);
  });
});

describe('numbers without a kind', () => {
  it.each<[string, readonly string[]]>([
    ['7, 8, 9, 56 wedge', ['7 iron', '8 iron', '9 iron', '56 wedge']],
    ['7, 8 and 9 iron', ['7 iron', '8 iron', '9 iron']],
    ['8, 9 and 56 wedge', ['8 iron', '9 iron', '56 wedge']],
    ['50, 54 and 58 wedge', ['50 wedge', '54 wedge', '58 wedge']],
    ['3 and 5 wood', ['3 wood', '5 wood']],
    ['3, 5 & 7 woods', ['3 wood', '5 wood', '7 wood']],
    ['1 and 3 wood', ['Driver', '3 wood']],
    ['woods 3, 5, irons 8, 9', ['3 wood', '5 wood', '8 iron', '9 iron']],
    ['hybrid 4 and 5', ['4 hybrid', '5 hybrid']],
    ['7, 8, 9, 3 wood', ['7 iron', '8 iron', '9 iron', '3 wood']],
    ['3 wood, 5, 6', ['3 wood', '5 iron', '6 iron']],
    ['52 wedge and 9', ['52 wedge', '9 iron']],
  ])('%s', (text, expected) => {
    expect(readClubList(text)).toMatchObject({ faults: [] });
    expect(names(text)).toEqual(expected);
  });

  it.each<[string, ListFault]>([
    ['3, 5 wood', { why: 'either', part: '3', these: ['3 iron', '3 wood'] }],
    ['4 hybrid and 5', { why: 'either', part: '5', these: ['5 iron', '5 hybrid'] }],
    ['wood 3, 5', { why: 'either', part: '5', these: ['5 iron', '5 wood'] }],
    ['P', { why: 'either', part: 'P', these: ['PW', 'Putter'] }],
  ])('%s is asked about', (text, fault) => {
    expect(readClubList(text).faults).toEqual([fault]);
    expect(sayListFault(fault)).toContain(fault.part);
  });
});

describe('several that are called alike', () => {
  it.each<[string, readonly string[]]>([
    ['2 x 7 iron', ['7 iron no. 1', '7 iron no. 2']],
    ['7 iron x 3', ['7 iron no. 1', '7 iron no. 2', '7 iron no. 3']],
    ['7i x2', ['7 iron no. 1', '7 iron no. 2']],
    ['2× PW', ['PW no. 1', 'PW no. 2']],
    ['2 putters', ['Putter no. 1', 'Putter no. 2']],
    ['2 x 8-9', ['8 iron no. 1', '9 iron no. 1', '8 iron no. 2', '9 iron no. 2']],
    ['1 x Driver', ['Driver']],
  ])('%s', (text, expected) => {
    expect(readClubList(text)).toMatchObject({ faults: [] });
    expect(names(text)).toEqual(expected);
  });

  it.each(['7 irons', '3 woods', '7 x 6', '56 x 2', '0 x 7 iron', '2 x spoon', '7 iron x 2 x 3', '2 x Driver no. 2'])(
    '%s is not counted by guess',
    (text) => expect(readClubList(text)).toEqual({ clubs: [], faults: [{ why: 'count', part: text }] }),
  );

  it('no more than a bag holds, and all of a part or nothing', () => {
    expect(readClubList('99 x 7 iron')).toEqual({ clubs: [], faults: [{ why: 'many', part: '99 x 7 iron' }] });
    const { clubs, faults } = readClubList('55 x 7 iron, 3-PW, Driver');
    expect([clubs.length, faults]).toEqual([56, [{ why: 'many', part: '3-PW' }]]);
  });
});

it.each([
  'Driver 3w',
  '7 8 9 iron',
  'driver 3 wood 4 hybrid',
  'PW/SW',
  '7/8 iron',
  'Driver 2',
  'driver putter',
  'hybrid iron',
])('%s is not taken for one club', (text) =>
  expect(readClubList(text)).toEqual({ clubs: [], faults: [{ why: 'apart', part: text }] }),
);

/** What people type, and the clubs it means; `null`: it is refused. */
const TYPED: Readonly<Record<string, readonly string[] | null>> = {
  Driver: ['Driver'],
  '3w': ['3 wood'],
  '4 hybrid': ['4 hybrid'],
  '5-7': ['5 iron', '6 iron', '7 iron'],
  'iron 8': ['8 iron'],
  'Pitching wedge': ['PW'],
  'SW 56': ['SW 56'],
  '60°': ['60 wedge'],
  '2 x putter': ['Putter no. 1', 'Putter no. 2'],
  'Spare driver': ['Spare driver'],
  spoon: null,
  '7 irons': null,
  '3-5 wood': null,
  'putter driver': null,
  'without the 7 iron': null,
};

test('whatever parts are typed, each is read or refused by name, in any order and between any marks', () => {
  const part = fc.constantFrom(...Object.keys(TYPED));
  const mark = fc.constantFrom(', ', ';', '\n', ' ,, ', ',\n');
  fc.assert(
    fc.property(fc.uniqueArray(part), fc.array(mark, { minLength: 20, maxLength: 20 }), (parts, marks) => {
      const { clubs, faults } = readClubList(parts.map((each, at) => each + (marks[at] ?? ',')).join(''));
      expect(clubs.map(({ name }) => name)).toEqual(parts.flatMap((each) => TYPED[each] ?? []));
      expect(faults.map((fault) => fault.part)).toEqual(parts.filter((each) => TYPED[each] === null));
    }),
  );
});

const WORDS = [
  '7',
  '3',
  '56',
  'x',
  '-',
  'iron',
  'wood',
  'irons',
  'wedge',
  'PW',
  'p',
  'putter',
  'junior',
  'no.',
  'and',
  '+',
  ',',
  '/',
  '°',
  'spare',
];
const anyText = fc.oneof(
  fc.array(fc.constantFrom(...WORDS), { maxLength: 9 }).map((words) => words.join(' ')),
  fc.array(fc.constantFrom(...WORDS), { maxLength: 6 }).map((words) => words.join('')),
  fc.string({ unit: 'binary', maxLength: 30 }),
);

test('nothing that is typed is dropped without a word: each part has a club or a fault with its text', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const parts = text.split(/[,;\n+&]|\band\b/i).filter((part) => part.trim() !== '');
      const { clubs, faults } = readClubList(text);
      expect(clubs.length + faults.length).toBeGreaterThanOrEqual(parts.length);
      for (const fault of faults) {
        expect(sayListFault(fault)).toContain(fault.part);
        // the part is named as it was typed, but for blanks; a club named twice by its own name
        if (fault.why !== 'twice') expect(parts.map((part) => part.trim().replace(/\s+/g, ' '))).toContain(fault.part);
      }
    }),
    { numRuns: 2000 },
  );
});

test('what is shown back reads as the same clubs', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const { clubs } = readClubList(text);
      expect(readClubList(clubs.map(({ name }) => name).join(', '))).toEqual({ clubs, faults: [] });
    }),
    { numRuns: 2000 },
  );
});
