import { afterEach, describe, expect, test } from 'vitest';
import { IDescriptionService } from '@univerjs/sheets-formula';
import { createHeadless, type Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { describeFunction, openSheet, type, valueAt, valuesAt, type TestFunctions } from './sheet';

class SheetError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

let open: Spreadsheet | undefined;
afterEach(() => {
  open?.dispose();
  open = undefined;
});

/** Answers how its arguments arrived. */
const echo = {
  takes: ['first?', 'second?', 'third?', 'range[]?'],
  does: (...args: unknown[]) => JSON.stringify(args),
};
const twice = {
  takes: ['range[]'],
  does: (range: unknown[][]) => range.map((row) => row.map((cell) => Number(cell) * 2)),
};
const refuse = {
  takes: ['grams'],
  does: (grams: unknown) => {
    if (typeof grams !== 'number') throw new SheetError('#VALUE!', 'grams: give a number.');
    if (grams < 0) throw new SheetError('#N/A', 'grams: no grip weighs less than nothing.');
    return grams;
  },
};

async function openWith(formulas: readonly string[], functions: TestFunctions): Promise<Spreadsheet> {
  open = await openSheet(
    [
      {
        name: 'Shop',
        cells: [
          [52.5, null, '007', true],
          [1, 2],
          [3, 4],
        ],
      },
      { name: 'Out sheet', cells: formulas.map((formula) => [{ formula }]) },
    ],
    functions,
  );
  return open;
}

describe('arguments arrive as in Excel', () => {
  test('scalars as scalars, text as text, truth values as such', async () => {
    const sheet = await openWith(['=REGRIP.ECHO(Shop!A1,Shop!C1,Shop!D1)'], { functions: { ECHO: echo } });
    expect(valueAt(sheet, "'Out sheet'!A1")).toBe('[52.5,"007",true,null]');
  });

  test('an argument left out is null, in the middle and at the end', async () => {
    const sheet = await openWith(['=REGRIP.ECHO(1,,3)', '=REGRIP.ECHO()'], {
      functions: { ECHO: echo },
      blanks: 'zero',
    });
    expect(valueAt(sheet, "'Out sheet'!A1")).toBe('[1,null,3,null]');
    expect(valueAt(sheet, "'Out sheet'!A2")).toBe('[null,null,null,null]');
  });

  test.each([
    ['null', '[52.5,null,null,[[52.5,"","007"]]]'],
    ['zero', '[52.5,0,null,[[52.5,"","007"]]]'],
  ] as const)('a blank cell arrives as %s, a blank inside a range as empty text', async (blanks, expected) => {
    const formula = '=REGRIP.ECHO(Shop!A1,Shop!B1,,Shop!A1:C1)';
    const sheet = await openWith([formula], { functions: { ECHO: echo }, blanks });
    expect(valueAt(sheet, "'Out sheet'!A1")).toBe(expected);
  });

  test('one value where a range is asked for is a range of one', async () => {
    const sheet = await openWith(['=REGRIP.ECHO(1,2,3,4)'], { functions: { ECHO: echo } });
    expect(valueAt(sheet, "'Out sheet'!A1")).toBe('[1,2,3,[[4]]]');
  });

  test('a range where one cell is asked for is refused in a sentence', async () => {
    const sheet = await openWith(['=REGRIP.REFUSE(Shop!A2:B3)'], { functions: { REFUSE: refuse } });
    expect(valueAt(sheet, "'Out sheet'!A1")).toEqual({ error: '#VALUE!' });
    expect(sheet.errors.at({ sheetId: 'sheet2', row: 0, column: 0 })).toMatch(/grams: give one cell; a range of 2 × 2/);
  });
});

describe('answers', () => {
  test('text that looks like something else stays text', async () => {
    const does = (): unknown => [
      ['007', 'TRUE', '=x', '1/2'],
      ['', true, 1.5, 'a'],
    ];
    const sheet = await openWith(['=REGRIP.TEXTS()'], { functions: { TEXTS: { takes: [], does } } });
    expect(valuesAt(sheet, "'Out sheet'!A1:D2")).toEqual([
      ['007', 'TRUE', '=x', '1/2'],
      [null, true, 1.5, 'a'],
    ]);
  });

  test('a matrix spills, rows of unequal length are filled up, an error object inside it is an error value', async () => {
    const does = (): unknown => [[1, 2, 3], [4], [new SheetError('#N/A', 'none')]];
    const sheet = await openWith(['=REGRIP.ROWS()'], { functions: { ROWS: { takes: [], does } } });
    expect(valuesAt(sheet, "'Out sheet'!A1:C3")).toEqual([
      [1, 2, 3],
      [4, null, null],
      [{ error: '#N/A' }, null, null],
    ]);
  });

  test('a spill that meets a filled cell is #SPILL! and leaves the cell alone', async () => {
    const sheet = await openWith(['=REGRIP.TWICE(Shop!A2:B3)'], { functions: { TWICE: twice } });
    await type(sheet, 'Out sheet', 'B2', 'mine');
    expect(valueAt(sheet, "'Out sheet'!A1")).toEqual({ error: '#SPILL!' });
    expect(valueAt(sheet, "'Out sheet'!B2")).toBe('mine');
  });

  test('nothing shows as 0, a number that is none as #NUM!', async () => {
    const functions = { NOTHING: { takes: [], does: () => null }, NONE: { takes: [], does: () => Number.NaN } };
    const sheet = await openWith(['=REGRIP.NOTHING()', '=REGRIP.NONE()'], { functions });
    expect(valueAt(sheet, "'Out sheet'!A1")).toBe(0);
    expect(valueAt(sheet, "'Out sheet'!A2")).toEqual({ error: '#NUM!' });
  });
});

describe('errors', () => {
  test('carry their code to the cell and their sentence to whoever listens, with the cell', async () => {
    const heard: unknown[] = [];
    const sheet = await openWith(['=REGRIP.REFUSE(-1)', '=REGRIP.REFUSE("x")'], {
      functions: { REFUSE: refuse },
      onError: (...said) => heard.push(said),
    });
    expect(valuesAt(sheet, "'Out sheet'!A1:A2")).toEqual([[{ error: '#N/A' }], [{ error: '#VALUE!' }]]);
    const first = { sheetId: 'sheet2', row: 0, column: 0 };
    expect(heard).toContainEqual([first, 'REGRIP.REFUSE', 'grams: no grip weighs less than nothing.']);
    expect(sheet.errors.at(first)).toBe('grams: no grip weighs less than nothing.');
  });

  test('the sentence goes when the cell is mended', async () => {
    const sheet = await openWith(['=REGRIP.REFUSE(Shop!A2)'], { functions: { REFUSE: refuse } });
    const cell = { sheetId: 'sheet2', row: 0, column: 0 };
    await type(sheet, 'Shop', 'A2', -5);
    expect(sheet.errors.at(cell)).not.toBeNull();
    await type(sheet, 'Shop', 'A2', 5);
    expect(sheet.errors.at(cell)).toBeNull();
    expect(valueAt(sheet, "'Out sheet'!A1")).toBe(5);
  });

  test('a single argument that is an error is the answer, without a call', async () => {
    let calls = 0;
    const count = { takes: ['a', 'range[]?'], does: () => (calls += 1) };
    const sheet = await openWith(['=REGRIP.COUNT(1/0)'], { functions: { COUNT: count } });
    expect(valueAt(sheet, "'Out sheet'!A1")).toEqual({ error: '#DIV/0!' });
    expect(calls).toBe(0);
  });

  test('an error inside a range is handed over, so that one bad cell does not cost a whole plan', async () => {
    const sheet = await openWith(['=1/0', '=REGRIP.ECHO(1,2,3,A1:A1)'], { functions: { ECHO: echo } });
    expect(valueAt(sheet, "'Out sheet'!A2")).toBe('[1,2,3,[[{"error":"#DIV/0!"}]]]');
  });

  test('a failure that is no sheet error shows as #VALUE!', async () => {
    const does = (): never => {
      throw new TypeError('unexpected');
    };
    const sheet = await openWith(['=REGRIP.BREAK()'], { functions: { BREAK: { takes: [], does } } });
    expect(valueAt(sheet, "'Out sheet'!A1")).toEqual({ error: '#VALUE!' });
  });
});

describe('calculation', () => {
  test('an edit recalculates what depends on it, across sheets and through other formulas', async () => {
    const sheet = await openWith(['=REGRIP.TWICE(Shop!A2:B3)'], { functions: { TWICE: twice } });
    await type(sheet, 'Out sheet', 'D1', '=SUM(A1:B2)');
    // (1 + 2 + 3 + 4) × 2
    expect(valueAt(sheet, "'Out sheet'!D1")).toBe(20);
    await type(sheet, 'Shop', 'A2', 11);
    expect(valueAt(sheet, "'Out sheet'!D1")).toBe(40);
  });

  test('references follow rows that are inserted above and inside', async () => {
    const sheet = await openWith(['=REGRIP.TWICE(Shop!A2:B3)'], { functions: { TWICE: twice } });
    const shop = sheet.workbook.getSheetByName('Shop');
    shop?.insertRows(0, 1);
    shop?.insertRows(3, 1);
    await sheet.settled();
    await type(sheet, 'Shop', 'B4', 50);
    expect(valuesAt(sheet, "'Out sheet'!A1:B3")).toEqual([
      [2, 4],
      [0, 100],
      [6, 8],
    ]);
  });

  test('names are found whatever their case', async () => {
    const sheet = await openWith(['=regrip.refuse(7)'], { functions: { REFUSE: refuse } });
    expect(valueAt(sheet, "'Out sheet'!A1")).toBe(7);
  });
});

describe('registration', () => {
  test('describes the function and its arguments to the person who types it', async () => {
    const sheet = await openWith([], { functions: { REFUSE: refuse } });
    const described = sheet.injector.get(IDescriptionService).getFunctionInfo('REGRIP.REFUSE');
    expect(described).toMatchObject({
      description: 'What REFUSE does.',
      functionParameter: [{ name: 'grams', require: 1 }],
    });
  });

  test('refuses a function that has no implementation', async () => {
    const functions = { metadata: [describeFunction('LOST', [])], implementations: {} };
    await expect(createHeadless({ sheets: [{ name: 'A', cells: [] }], functions })).rejects.toThrow(/LOST/);
  });
});
