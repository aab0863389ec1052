import { describe, expect, it } from 'vitest';
import { sayIssue } from '../../src/words/issues';
import {
  CLUBS,
  columnOf,
  JOBS,
  SETTINGS,
  STOCK,
  TABLES,
  TAPE,
  WEIGHTS,
  type Column,
  type TableSchema,
} from '../../src/workbook/schema';
import {
  cellNumber,
  duplicates,
  errorText,
  expectation,
  isBlank,
  matchHeaders,
  placed,
  readCell,
  readTable,
} from '../../src/workbook/records';

const read = (schema: TableSchema, matrix: readonly (readonly unknown[])[], headerRow?: number) => {
  const table = readTable(schema, matrix, headerRow);
  if (!table.ok) throw new Error(sayIssue(table.issue));
  return table.value;
};

const values = (schema: TableSchema, headers: readonly unknown[], cells: readonly unknown[]) => {
  const [row] = read(schema, [headers, cells]).rows;
  return { values: Object.fromEntries(row?.values ?? []), said: (row?.issues ?? []).map(sayIssue) };
};

describe('headings', () => {
  const at = (schema: TableSchema, headers: readonly unknown[]) => Object.fromEntries(matchHeaders(schema, headers));

  it.each(TABLES.map((schema) => [schema.name, schema] as const))('%s: our own, in any order', (_, schema) => {
    const headers = schema.columns.map(({ header }) => header);
    expect(at(schema, headers)).toEqual(Object.fromEntries(schema.columns.map(({ key }, position) => [key, position])));
    const turned = [...headers].reverse();
    const last = headers.length - 1;
    expect(at(schema, turned)).toEqual(
      Object.fromEntries(schema.columns.map(({ key }, position) => [key, last - position])),
    );
  });

  it.each(TABLES.map((schema) => [schema.name, schema] as const))(
    '%s: each column under each of its other names',
    (_, schema) => {
      for (const column of schema.columns) {
        for (const synonym of column.synonyms) {
          // a name that two columns share belongs to the first of them when it stands alone
          const first = schema.columns.find(({ synonyms }) => (synonyms as readonly string[]).includes(synonym));
          expect(at(schema, [synonym.toUpperCase()]), synonym).toEqual({ [(first ?? column).key]: 0 });
        }
      }
    },
  );

  it('are compared without case, doubled spaces and units in brackets', () => {
    expect(at(CLUBS, ['  BUTT   (IN) '])).toEqual({ butt: 0 });
    expect(at(CLUBS, ['Butt'])).toEqual({ butt: 0 });
    expect(at(CLUBS, ['Butt [inches]'])).toEqual({ butt: 0 });
    expect(at(CLUBS, ['Swing  Weight (14 in scale)'])).toEqual({ reading: 0 });
  });

  it('in other units are not taken for ours', () => {
    for (const unit of ['mm', 'cm', 'm', 'oz', 'lb', 'lbs', 'kg', 'oz.', ' MM ']) {
      expect(at(CLUBS, [`Length change (${unit})`, `Mass [${unit}]`]), unit).toEqual({});
    }
  });

  it('our own name goes before another’s, wherever it stands', () => {
    // “grip” is another name for an item, “length” for a length
    expect(at(STOCK, ['Grip', 'Item'])).toEqual({ item: 1 });
    expect(at(CLUBS, ['Length', 'Length (in)'])).toEqual({ length: 1 });
    expect(at(CLUBS, ['Extension', 'Length change'])).toEqual({ lengthChange: 1 });
  });

  it('the first of two alike counts; one heading serves one column', () => {
    expect(at(CLUBS, ['Club', 'Club'])).toEqual({ club: 0 });
    expect(at(TAPE, ['Name'])).toEqual({ tape: 0 });
  });

  it('that are ours in no way are left alone', () => {
    expect(at(CLUBS, ['Colour', null, undefined, '', 7, 'Club', true])).toEqual({ club: 5 });
  });
});

describe('tables', () => {
  it('a needed column that no heading matches', () => {
    const missing = readTable(CLUBS, [['Kind'], ['Iron']]);
    expect(missing).toEqual({ ok: false, issue: { code: 'missingColumn', field: 'Clubs', expected: 'Club' } });
    expect(
      readTable(STOCK, [
        ['Item', 'Mass (g)'],
        ['X', 50],
      ]),
    ).toMatchObject({ issue: { expected: 'Core (in)' } });
    expect(readTable(CLUBS, []).ok).toBe(false);
  });

  it('rows keep their place in the body and in the sheet; blank ones are skipped', () => {
    const table = read(CLUBS, [['Club'], ['a'], [null], ['  '], [undefined], [], ['b']], 5);
    expect(table.rows.map(({ row, sheetRow }) => [row, sheetRow])).toEqual([
      [1, 6],
      [6, 11],
    ]);
    expect(read(CLUBS, [['Club'], ['a']]).rows[0]?.sheetRow).toBe(2);
    expect(read(CLUBS, [['Club']]).rows).toEqual([]);
    expect([...read(CLUBS, [['x', 'Club']]).found]).toEqual([['club', 1]]);
  });

  it('a bad cell is left out and told; the rest of its row is kept', () => {
    const row = values(CLUBS, ['Club', 'Length (in)', 'Butt (in)'], ['7 iron', 'long', 0.6]);
    expect(row.values).toEqual({ club: '7 iron', butt: 0.6 });
    expect(row.said).toEqual(['Clubs row 2, Length (in) is “long”, not a number. Give 18 to 52 in.']);
  });

  it('a needed cell that is blank is told, others are not', () => {
    expect(values(CLUBS, ['Club', 'Kind'], ['', 'Iron']).said).toEqual(['Clubs row 2, Club is blank. Give the club.']);
    expect(values(STOCK, ['Item', 'Core (in)', 'Mass (g)'], ['X', 0.58, 0]).said).toEqual([
      'Stock row 2, Mass (g) is blank. Give 15 to 220 g.', // a blank that came as 0
    ]);
    expect(values(CLUBS, ['Club', 'Kind', 'Length (in)'], ['7 iron', null, '']).said).toEqual([]);
    expect(values(WEIGHTS, ['Way', 'End', 'From that end (in)'], ['Lead tape', 'Head', 0]).values).toEqual({
      way: 'Lead tape',
      end: 'Head',
      position: 0, // 0 is a place
    });
  });

  it('cells beyond a short row are blank', () => {
    expect(values(CLUBS, ['Club', 'Kind', 'Length (in)'], ['7 iron'])).toEqual({
      values: { club: '7 iron' },
      said: [],
    });
  });
});

describe('cells of per cent', () => {
  const discount = (given: unknown) => {
    const result = readCell(columnOf(JOBS, 'discount'), given);
    return result.ok ? result.value : sayIssue(result.issue);
  };

  // A spreadsheet keeps a typed 20 % as 0.2 and hands no number format over, so that what is below 1 is asked about.
  it.each([
    [20, 20],
    ['20 %', 20],
    ['0,5 %', 0.5],
    [0, 0],
    [1, 1],
    ['', undefined],
    [0.2, expect.stringMatching(/^Discount \(%\) is 0\.2, which can be read in two ways\. Give 20 if 20 % is meant/)],
    ['0,2', expect.stringContaining('Give 20 if 20 % is meant')],
    ['120 %', 'Discount (%) is “120 %”. Give 0 to 100 %.'],
    ['x %', 'Discount (%) is “x %”, not a number. Give 0 to 100 %.'],
  ])('%s', (given, said) => {
    expect(discount(given)).toEqual(said);
  });
});

describe('cells', () => {
  const cell = (column: Column, given: unknown) => {
    const result = readCell(column, given);
    return result.ok ? result.value : sayIssue(result.issue);
  };
  const club = (key: string) => columnOf(CLUBS, key);

  it.each([
    ['club', '  7 iron ', '7 iron'],
    ['club', 7, '7'],
    ['club', true, 'true'],
    ['length', 37, 37],
    ['length', '37,5', 37.5],
    ['length', ' 37.5 ', 37.5],
    ['length', 18, 18],
    ['length', 52, 52],
    ['length', 17.9, 'Length (in) is 17.9. Give 18 to 52 in.'],
    ['length', 52.1, 'Length (in) is 52.1. Give 18 to 52 in.'],
    ['length', -37, 'Length (in) is −37. Give 18 to 52 in.'],
    ['length', 'long', 'Length (in) is “long”, not a number. Give 18 to 52 in.'],
    ['length', true, 'Length (in) is TRUE, not a number. Give 18 to 52 in.'],
    ['length', '1.000,5', 'Length (in) is “1.000,5”, not a number. Give 18 to 52 in.'],
    ['length', 0, undefined], // a blank that came as 0
    ['length', null, undefined],
    ['length', '', undefined],
    ['lengthChange', 0, 0], // here 0 is meant
    ['lengthChange', '−0,5', -0.5],
    ['lengthChange', 7, 'Length change (in) is 7. Give −6 to 6 in.'],
    ['plug', -41, 'Plug mass (g) is −41. Give −40 to 60 g.'],
    ['tolerance', 20, 'Tolerance (pt) is 20. Give 0.1 to 10 points.'],
    ['layers', 2, 2],
    ['layers', 0, 0],
    ['layers', '3', 3],
    ['layers', 1.5, 'Layers is 1.5. Give a whole number, 0 to 12.'],
    ['layers', 13, 'Layers is 13. Give 0 to 12.'],
    ['layers', 'two', 'Layers is “two”, not a number. Give 0 to 12.'],
    ['kind', 'Iron', 'Iron'],
    ['kind', ' iRON ', 'Iron'],
    ['kind', 0, undefined],
    ['kind', 'Spoon', 'Kind is “Spoon”. Give Driver, Wood, Hybrid, Iron, Wedge, Putter or Junior.'],
    ['kind', 7, 'Kind is 7. Give Driver, Wood, Hybrid, Iron, Wedge, Putter or Junior.'],
    ['hold', 'as it  was', 'As it was'],
    ['oldMassKnown', 'guess', 'Old mass from is “guess”. Give Catalogue, Weighed or Like one stripped.'],
    ['buttWeightLeaves', 'Yes', true],
    ['buttWeightLeaves', 'n', false],
    ['buttWeightLeaves', true, true],
    ['buttWeightLeaves', false, false],
    ['buttWeightLeaves', 0, undefined],
    ['buttWeightLeaves', 'perhaps', 'Leaves with grip is “perhaps”. Give Yes or No.'],
    ['buttWeightLeaves', 1, 'Leaves with grip is 1. Give Yes or No.'],
    ['reading', 'D2.4', 32.4],
    ['reading', 'd2,4', 32.4],
    ['reading', 32.4, 32.4],
    ['reading', '-67', -67],
    ['reading', -67, -67],
    ['reading', 150, 150],
    ['reading', -151, 'Reading is −151. Give a reading such as D2.5, or −150 to 150 points above A0.'],
    ['reading', 151, 'Reading is 151. Give a reading such as D2.5, or −150 to 150 points above A0.'],
    ['reading', 0, undefined],
    ['reading', 'H2', 'Reading is “H2”, which is not a reading. Give a letter A to G and a number, such as D2.5.'],
    ['reading', true, 'Reading is “true”, which is not a reading. Give a letter A to G and a number, such as D2.5.'],
    ['butt', '#REF!', 'Butt (in) holds the error “#REF!”. Mend that cell first.'],
    ['butt', { error: '#N/A' }, 'Butt (in) holds the error “#N/A”. Mend that cell first.'],
    ['butt', { code: '#VALUE!' }, 'Butt (in) holds the error “#VALUE!”. Mend that cell first.'],
    ['club', '#N/A', 'Club holds the error “#N/A”. Mend that cell first.'],
    ['kind', {}, 'Kind holds the error “error”. Mend that cell first.'],
  ])('%s: %j gives %j', (key, given, expected) => {
    expect(cell(club(key), given)).toBe(expected);
  });

  it('money and dates', () => {
    expect(cell(columnOf(STOCK, 'cost'), 4.5)).toBe(4.5);
    expect(cell(columnOf(STOCK, 'cost'), 0)).toBe(0);
    expect(cell(columnOf(STOCK, 'cost'), -1)).toBe('Cost is −1. Give 0 or more.');
    const due: Column = { key: 'due', header: 'Due', kind: 'date', width: 9, synonyms: [] };
    expect(cell(due, 45000)).toBe(45000);
    expect(cell(due, ' friday ')).toBe('friday');
  });
});

describe('what a column accepts, in words', () => {
  const base = { kind: 'number', header: 'Thing (g)', choices: undefined } as const;

  it.each([
    [{ ...base, low: 1, high: 2, unit: 'g' }, '1 to 2 g'],
    [{ ...base, low: -6, high: -1, unit: 'in' }, '−6 to −1 in'],
    [{ ...base, low: 1, high: 2 }, '1 to 2'],
    [{ ...base, low: 0, unit: 'pt' }, '0 or more points'],
    [{ ...base, unit: 'g' }, 'a number in g'],
    [base, 'a number'],
    [{ ...base, kind: 'text' }, 'the thing'],
    [{ ...base, kind: 'choice', choices: ['A', 'B', 'C'] }, 'A, B or C'],
    [{ ...base, kind: 'choice', choices: ['A'] }, 'A'],
    [{ ...base, kind: 'choice' }, ''],
  ] as const)('%j: %s', (column, words) => {
    expect(expectation(column)).toBe(words);
  });
});

describe('plain numbers', () => {
  it.each([
    [5, 5],
    [-5.5, -5.5],
    ['5', 5],
    ['5.', 5],
    ['.5', 0.5],
    ['+5', 5],
    ['−5', -5],
    ['5,25', 5.25],
    [NaN, undefined],
    [Infinity, undefined],
    ['', undefined],
    ['.', undefined],
    ['5 g', undefined],
    ['5e3', undefined],
    ['0x10', undefined],
    ['1,234,5', undefined],
    [null, undefined],
    [true, undefined],
    [{}, undefined],
  ])('%j is %j', (given, number) => {
    expect(cellNumber(given)).toBe(number);
  });
});

describe('blanks and errors', () => {
  it.each([null, undefined, '', ' ', '\t\n'])('%j is blank', (cell) => {
    expect(isBlank(cell)).toBe(true);
  });

  it.each([0, false, 'x', {}])('%j is not', (cell) => {
    expect(isBlank(cell)).toBe(false);
  });

  it.each([
    '#N/A',
    '#VALUE!',
    '#REF!',
    '#DIV/0!',
    '#NUM!',
    '#NAME?',
    '#NULL!',
    '#SPILL!',
    '#CALC!',
    '#BUSY!',
    '#GETTING_DATA',
    '#FIELD!',
    '#CONNECT!',
    '#BLOCKED!',
    '#UNKNOWN!',
  ])('%s is an error', (text) => {
    expect(errorText(text)).toBe(text);
  });

  it.each(['#7', '# 1 iron', '#N/A!', 'N/A', '#value!', '', 'x #N/A', 7, true, null, undefined])(
    '%j is none',
    (cell) => {
      expect(errorText(cell)).toBeUndefined();
    },
  );

  it('an issue is placed before the field it names', () => {
    expect(placed({ code: 'blank', field: 'Club' }, 'Clubs row 3')).toEqual({
      code: 'blank',
      field: 'Clubs row 3, Club',
    });
  });
});

describe('names that stand twice', () => {
  it('are told for every row after the first, whatever their case', () => {
    const { rows } = read(SETTINGS, [
      ['Setting', 'Value'],
      ['Tolerance', 1],
      ['tolerance', 2],
      [null, 3],
      ['', 4],
      ['Cap', 5],
      ['TOLERANCE', 6],
    ]);
    expect(duplicates(SETTINGS, rows, 'setting').map(sayIssue)).toEqual([
      'Settings row 3, Setting: “tolerance” is there twice; the first one counts. Rename or remove this one.',
      'Settings row 7, Setting: “TOLERANCE” is there twice; the first one counts. Rename or remove this one.',
    ]);
  });
});
