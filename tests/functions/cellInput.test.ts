import { describe, expect, test } from 'vitest';
import * as cell from '../../src/functions/cellInput';
import { growthOf } from '../../src/functions/growth';
import { clubTable, optionalTable, table } from '../../src/functions/tableInput';
import { CLUBS, STOCK } from '../../src/workbook/schema';
import { refusal } from './refusal';

const grams = { low: 15, high: 220, unit: 'g' };
const added = { low: -6, high: 6, unit: 'in' };
const layers = { low: 0, high: 12, unit: 'layers' };

const say = (call: () => unknown): string => {
  const { code, message } = refusal(call);
  return `${code} ${message}`;
};

describe('a number', () => {
  test.each([
    [50, 50],
    ['50', 50],
    [' 50.5 ', 50.5],
    ['50,5', 50.5],
    ['\u00a050', 50],
    ['+50', 50],
    [[[50]], 50],
    [[['50,5']], 50.5],
    [[50], 50],
    [{ type: 'FormattedNumber', basicValue: 50, numberFormat: '0.0 "g"' }, 50],
    [15, 15],
    [220, 220],
  ])('%j is read as %d', (given, read) => {
    expect(cell.number(given, 'gripGrams', grams)).toBe(read);
  });

  test('a minus sign typed as text is read, also the typographic one', () => {
    expect(cell.number('-2,5', 'addedInches', added)).toBe(-2.5);
    expect(cell.number('−.5', 'addedInches', added)).toBe(-0.5);
  });

  test.each([
    ['50 g', '#VALUE! gripGrams is “50 g”, not a number. Give 15 to 220 g.'],
    ['1.234,5', '#VALUE! gripGrams is “1.234,5”, not a number. Give 15 to 220 g.'],
    ['5e1', '#VALUE! gripGrams is “5e1”, not a number. Give 15 to 220 g.'],
    ['.', '#VALUE! gripGrams is “.”, not a number. Give 15 to 220 g.'],
    [true, '#VALUE! gripGrams is TRUE, not a number. Give 15 to 220 g.'],
    [[[false]], '#VALUE! gripGrams is FALSE, not a number. Give 15 to 220 g.'],
    [NaN, '#VALUE! gripGrams is “NaN”, not a number. Give 15 to 220 g.'],
    [Infinity, '#VALUE! gripGrams is “Infinity”, not a number. Give 15 to 220 g.'],
    ['', '#VALUE! gripGrams is blank. Give 15 to 220 g.'],
    [null, '#VALUE! gripGrams is blank. Give 15 to 220 g.'],
    [undefined, '#VALUE! gripGrams is blank. Give 15 to 220 g.'],
    [0, '#VALUE! gripGrams is 0. Give 15 to 220 g.'],
    [14.99, '#VALUE! gripGrams is 14.99. Give 15 to 220 g.'],
    [500, '#VALUE! gripGrams is 500. Give 15 to 220 g.'],
    [-50, '#VALUE! gripGrams is −50. Give 15 to 220 g.'],
    ['#REF!', '#VALUE! gripGrams holds the error “#REF!”. Mend that cell first.'],
    [{ type: 'Error', basicValue: '#DIV/0!' }, '#VALUE! gripGrams holds the error “#DIV/0!”. Mend that cell first.'],
    [{ code: '#NUM!', message: '' }, '#VALUE! gripGrams holds the error “#NUM!”. Mend that cell first.'],
    [{ text: 'a picture' }, '#VALUE! gripGrams is “a data type”, not a number. Give 15 to 220 g.'],
    [{ type: 'Error', basicValue: '#N/A' }, '#VALUE! gripGrams holds the error “#N/A”. Mend that cell first.'],
    [
      [
        [50, 51],
        [52, 53],
        [54, 55],
      ],
      '#VALUE! gripGrams does not fit: one cell is needed, and a range of 3 × 2 was given.',
    ],
  ])('%j is refused', (given, sentence) => {
    expect(say(() => cell.number(given, 'gripGrams', grams))).toBe(sentence);
  });

  test('a range that reaches below nothing is said with a true minus sign', () => {
    expect(say(() => cell.number(7, 'addedInches', added))).toBe('#VALUE! addedInches is 7. Give −6 to 6 in.');
  });

  test('a blank cell is 0 where 0 makes sense; a text that is empty, and what was not given, is not', () => {
    expect(cell.number(null, 'addedInches', added)).toBe(0);
    expect(cell.number([[null]], 'addedInches', added)).toBe(0);
    expect(cell.number(0, 'addedInches', added)).toBe(0);
    expect(say(() => cell.number('', 'addedInches', added))).toBe('#VALUE! addedInches is blank. Give −6 to 6 in.');
    expect(say(() => cell.number(undefined, 'addedInches', added))).toBe(
      '#VALUE! addedInches is blank. Give −6 to 6 in.',
    );
  });
});

describe('an optional number', () => {
  test.each([null, undefined, 0, '', ' ', '0', [[null]], [[0]], [['']]])('%j takes the default', (blank) => {
    expect(cell.numberOr(blank, 50, 'gripGrams', grams)).toBe(50);
    expect(cell.optionalNumber(blank, 'gripGrams', grams)).toBeUndefined();
  });

  test('anything else is checked as any number', () => {
    expect(cell.numberOr('60,5', 50, 'gripGrams', grams)).toBe(60.5);
    expect(say(() => cell.numberOr(5, 50, 'gripGrams', grams))).toBe('#VALUE! gripGrams is 5. Give 15 to 220 g.');
    expect(say(() => cell.optionalNumber('x', 'gripGrams', grams))).toBe(
      '#VALUE! gripGrams is “x”, not a number. Give 15 to 220 g.',
    );
  });
});

describe('a length that somebody measured', () => {
  const inches = { low: 5, high: 10, unit: 'in' };

  test.each([null, undefined, 0, '', ' ', '0', [[null]], [[0]]])('%j is a blank', (blank) => {
    expect(cell.optionalMeasured(blank, 'handInches', inches)).toBeUndefined();
    expect(say(() => cell.measured(blank, 'handInches', inches))).toBe('#VALUE! handInches is blank. Give 5 to 10 in.');
  });

  test('is handed on out of range too, if it is a number', () => {
    for (const given of [193, '193', [[193]], -7, 7.6]) {
      expect(cell.measured(given, 'handInches', inches)).toBe(Number(given));
      expect(cell.optionalMeasured(given, 'handInches', inches)).toBe(Number(given));
    }
    expect(say(() => cell.optionalMeasured('long', 'handInches', inches))).toBe(
      '#VALUE! handInches is “long”, not a number. Give 5 to 10 in.',
    );
  });
});

describe('a count', () => {
  test('is whole and not below nothing', () => {
    expect(cell.count(3, 'layers', layers)).toBe(3);
    expect(cell.count(null, 'layers', layers)).toBe(0);
    expect(cell.countOrNone(undefined, 'layers', layers)).toBe(0);
    expect(cell.countOrNone('', 'layers', layers)).toBe(0);
    expect(say(() => cell.count(2.5, 'layers', layers))).toBe(
      '#VALUE! layers is 2.5. Give a whole number, 0 to 12 layers.',
    );
    expect(say(() => cell.countOrNone(-1, 'layers', layers))).toBe('#VALUE! layers is −1. Give 0 to 12 layers.');
    expect(say(() => cell.countOrNone(13, 'layers', layers))).toBe('#VALUE! layers is 13. Give 0 to 12 layers.');
  });

  test('decimals tell 0 from blank', () => {
    expect([null, undefined, '', 0, 2].map((given) => cell.decimals(given, 'decimals'))).toEqual([1, 1, 1, 0, 2]);
    expect(say(() => cell.decimals(9, 'decimals'))).toBe('#VALUE! decimals is 9. Give 0 to 4 decimals.');
    expect(say(() => cell.decimals(1.5, 'decimals'))).toBe(
      '#VALUE! decimals is 1.5. Give a whole number, 0 to 4 decimals.',
    );
  });
});

describe('a reading', () => {
  // Ten points to a letter, A0 is 0 (trade practice).
  test.each([
    ['D3', 33],
    ['d3', 33],
    ['D 3.5', 33.5],
    ['D3,5', 33.5],
    [' e4 ', 44],
    ['A0', 0],
    [[['C9.5']], 29.5],
    [33, 33],
    [-67, -67],
  ])('%j is %d points', (given, points) => {
    expect(cell.reading(given, 'reading')).toBeCloseTo(points, 12);
  });

  const expected = 'Give a letter A to G and a number, such as D2.5.';
  test.each([
    [null, `#VALUE! reading is blank. ${expected}`],
    [0, `#VALUE! reading is blank. ${expected}`],
    ['', `#VALUE! reading is blank. ${expected}`],
    ['H2', `#VALUE! reading is “H2”, which is not a reading. ${expected}`],
    ['D12', `#VALUE! reading is “D12”, which is not a reading. ${expected}`],
    ['33', `#VALUE! reading is “33”, which is not a reading. ${expected}`],
    [true, `#VALUE! reading is TRUE, which is not a reading. ${expected}`],
    [374, '#VALUE! reading is 374. Give −150 to 150 points.'],
    ['#N/A', '#VALUE! reading holds the error “#N/A”. Mend that cell first.'],
  ])('%j is refused', (given, sentence) => {
    expect(say(() => cell.reading(given, 'reading'))).toBe(sentence);
  });
});

describe('words', () => {
  test('a text is trimmed, a number is a name too, 0 and blank are none', () => {
    expect(cell.optionalText(' 1042 ', 'job')).toBe('1042');
    expect(cell.optionalText(1042, 'job')).toBe('1042');
    for (const blank of [null, undefined, 0, '', ' ', [[0]]]) expect(cell.optionalText(blank, 'job')).toBeUndefined();
    expect(say(() => cell.optionalText(true, 'job'))).toBe('#VALUE! job is TRUE. Give text.');
  });

  test('a choice is found whatever its capitals, and refused with the words there are', () => {
    const kinds = ['Iron', 'Putter'] as const;
    expect(cell.optionalChoice('PUTTER', 'kind', kinds)).toBe('Putter');
    expect(cell.optionalChoice(0, 'kind', kinds)).toBeUndefined();
    expect(say(() => cell.optionalChoice('chipper', 'kind', kinds))).toBe(
      '#VALUE! kind is “chipper”. Give Iron, Putter.',
    );
  });

  test('growth: 1 is additive, blank by volume, and the words of the settings hold too', () => {
    expect([1, '1', 'additive', [[1]]].map(growthOf)).toEqual(Array(4).fill('additive'));
    expect([null, undefined, 0, '', 'By volume'].map(growthOf)).toEqual(Array(5).fill('volume'));
    expect(say(() => growthOf(2))).toBe('#VALUE! growth is “2”. Give 1 or Additive, or blank or By volume.');
  });
});

describe('a table', () => {
  test('blanks are empty texts and errors their code', () => {
    const error = { type: 'Error', basicValue: '#REF!' };
    expect(table([['Club'], [null], [undefined], [error]], 'clubs', CLUBS)).toEqual([['Club'], [''], [''], ['#REF!']]);
  });

  test.each([null, undefined, 0, '', [[null]], [[0]], [['']], []])('%j is none', (blank) => {
    expect(optionalTable(blank, CLUBS)).toBeNull();
    expect(say(() => table(blank, 'clubs', CLUBS))).toBe('#VALUE! clubs is blank. Give a table with its header row.');
  });

  describe('whose blanks came as 0', () => {
    const headings = ['Club', 'Old grip', 'Old cap (in)', 'Layers', 'Reading', 'Length (in)'];

    test('a 0 among words, and where the range holds no 0, is a blank', () => {
      const cells = table([headings, ['7 iron', 0, 0, 0, 0, 0], ['8 iron', 'R1', 0.1, 2, 'D2', 36.5]], 'clubs', CLUBS);
      expect(cells[1]).toEqual(['7 iron', '', '', 0, '', '']);
      expect(cells[2]).toEqual(['8 iron', 'R1', 0.1, 2, 'D2', 36.5]);
    });

    test('a row of nothing but 0 is a blank row', () => {
      const cells = table([headings, ['7 iron', 'R1', '', 0, 'D2', 37], [0, 0, 0, 0, 0, 0]], 'clubs', CLUBS);
      expect(cells[2]).toEqual(['', '', '', '', '', '']);
    });

    test('a stock that is 0 all the way down was never counted; one 0 among counts is none left', () => {
      const stock = (first: unknown, second: unknown) => [
        ['Item', 'On hand', 'Pack'],
        ['R1', first, 6],
        ['R2', second, 6],
      ];
      const counts = (cells: unknown[][] | null) => cells?.slice(1).map((row) => row[1]);
      expect(counts(optionalTable(stock(0, 0), STOCK))).toEqual(['', '']);
      expect(counts(optionalTable(stock(5, 0), STOCK))).toEqual([5, 0]);
      expect(counts(optionalTable(stock(null, 0), STOCK))).toEqual(['', 0]);
    });

    test('a setting of 0 stays', () => {
      const settings = [
        ['Setting', 'Value'],
        ['Head weight limit', 0],
      ];
      expect(optionalTable(settings, null)).toEqual(settings);
    });
  });

  test('one club stands under its header row', () => {
    expect(clubTable([['7 iron', null]], [['Club', 'New grip']])).toEqual([
      ['Club', 'New grip'],
      ['7 iron', ''],
    ]);
    expect(say(() => clubTable([['7 iron']], [['Club', 'New grip']]))).toBe(
      '#VALUE! club does not fit: it is 1 wide and header 2; both must span the same columns.',
    );
    expect(say(() => clubTable([['a'], ['b']], [['Club']]))).toBe(
      '#VALUE! club does not fit: one row is needed, and 2 were given.',
    );
    expect(say(() => clubTable([['a']], [['Club'], ['b']]))).toBe(
      '#VALUE! header does not fit: one row is needed, and 2 were given.',
    );
    expect(say(() => clubTable(null, [['Club']]))).toBe('#VALUE! club is blank. Give a table with its header row.');
  });
});
