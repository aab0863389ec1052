/** What is found out about formulas once a file stands on the page. */
import { afterEach, describe, expect, test } from 'vitest';
import { writeXlsx, type Cell } from 'hucre/xlsx';
import { ICommandService } from '@univerjs/core';
import { SetFormulaCalculationStartMutation } from '@univerjs/engine-formula';
import { drained } from '../../../src/core/index';
import { calculated } from '../../../src/workbook/embedded/calculation';
import { causesAmong, type Failed } from '../../../src/workbook/embedded/open/causes';
import { openedContent } from '../../../src/workbook/embedded/open/complete';
import { readBook } from '../../../src/workbook/embedded/open/read';
import { reviewFormulas } from '../../../src/workbook/embedded/open/review';
import { createHeadless, type Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { blockOf } from '../../../src/workbook/shared/address';
import { valuesAt } from '../sheet';
import { openFile, type Opened } from './openFile';

const open: Spreadsheet[] = [];
afterEach(() => {
  for (const spreadsheet of open.splice(0)) spreadsheet.dispose();
});

type Cells = [at: string, cell: Partial<Cell>][];

async function openCells(cells: Cells): Promise<Opened> {
  const opened = await openFile(await writeXlsx({ sheets: [{ name: 'S', cells: new Map(cells) }] }));
  open.push(opened.spreadsheet);
  return opened;
}

// The numbers are sums that anybody can do.
test('a second file with the same formulas is calculated from its own cells while the first still stands', async () => {
  const counted = (pieces: number): Cells => [
    ['0,0', { value: pieces }],
    ['1,0', { value: pieces * 2 }],
    ['2,0', { value: pieces * 3, formula: 'SUM(A1:A2)', formulaResult: pieces * 3 }],
    ['3,0', { value: pieces * 2, formula: 'A1*2', formulaResult: pieces * 2 }],
  ];
  const first = await openCells(counted(5));
  const second = await openCells(counted(7));
  expect(valuesAt(first.spreadsheet, 'S!A3:A4')).toEqual([[15], [10]]);
  expect(valuesAt(second.spreadsheet, 'S!A3:A4')).toEqual([[21], [14]]);
  expect(second.file.otherwise).toEqual([]);
});

test('a calculation is waited for to its end, also where it is given up for another half way', async () => {
  const rows = 3000;
  // A sum that runs on; the file says that it is 0 throughout.
  const cells = Array.from({ length: rows }, (_, i): Cells => [
    [`${i},0`, { value: 1 }],
    [`${i},1`, { value: 0, formula: i === 0 ? 'A1' : `B${i}+A${i + 1}`, formulaResult: 0 }],
  ]).flat();
  const { file, spreadsheet } = await openCells(cells);
  expect(file.otherwise).toHaveLength(rows);
  spreadsheet.workbook.getSheetByName('S')?.getRange('A1').setValue(2);
  let asked = 0;
  await calculated(spreadsheet, () => spreadsheet.recalculate(), rows, {
    onProgress: ({ done, of }) => {
      expect(done).toBeLessThanOrEqual(of);
      if (asked++ === 0) spreadsheet.recalculate();
    },
  });
  expect(asked).toBeGreaterThan(0);
  expect(valuesAt(spreadsheet, `S!B${rows}`)).toEqual([[rows + 1]]);
});

test('very many formulas that fail keep their values, and what hangs on them is calculated', async () => {
  const many = 1000;
  const cells = Array.from({ length: many }, (_, i): Cells => [
    // A function that there is none of, and an error of which only the calculation tells.
    [`${i},0`, { value: i, formula: `UNHEARDOF(D${i + 1})`, formulaResult: i }],
    [`${i},1`, { value: i, formula: `1/D${i + 1}`, formulaResult: i }],
    [`${i},2`, { value: i * 2, formula: `A${i + 1}+B${i + 1}`, formulaResult: i * 2 }],
  ]).flat();
  const opened = await openCells(cells);
  expect(opened.file.keptValues).toHaveLength(many * 2);
  expect(opened.file.otherwise).toEqual([]);
  expect(valuesAt(opened.spreadsheet, 'S!A1000:C1000')).toEqual([[999, 999, 1998]]);
});

test('a function that is unknown where it is not reached, or caught, leaves a formula alive; where its result counted, the file’s stays', async () => {
  const { file, spreadsheet } = await openCells([
    ['0,0', { value: 5 }],
    ['0,1', { value: 10, formula: 'IF(A1>0,A1*2,UNHEARDOF(A1))', formulaResult: 10 }],
    ['0,2', { value: 11, formula: 'B1+1', formulaResult: 11 }],
    ['0,3', { value: 10, formula: 'IFERROR(UNHEARDOF(A1),A1*2)', formulaResult: 10 }],
    ['0,4', { value: 7, formula: 'IFERROR(UNHEARDOF(A1),0)', formulaResult: 7 }],
  ]);
  expect(file.keptValues).toEqual(['S!E1']);
  expect(file.otherwise).toEqual([]);
  spreadsheet.workbook.getSheetByName('S')?.getRange('A1').setValue(100);
  await calculated(spreadsheet, () => spreadsheet.recalculate(), 4);
  expect(valuesAt(spreadsheet, 'S!A1:E1')).toEqual([[100, 200, 201, 200, 7]]);
});

test('cells that come out otherwise are told with both values, numbers as the cell shows them', async () => {
  // Kept is what the file says; what it comes to here are sums that anybody can do.
  const cells = (
    [
      ['A1', 12.5, '6.5*2', undefined, ['number', '12.5'], ['number', '13']],
      ['A2', 0.5, '1/4', '0.0%', ['number', '50.0%'], ['number', '25.0%']],
      // Alike as the cell shows them.
      ['A3', 2.001, '1+1', '0.0', ['number', '2.001'], ['number', '2']],
      ['A4', 46000, '46001+0', 'yyyy-mm-dd', ['number', '2025-12-09'], ['number', '2025-12-10']],
      ['A5', 'D2', '"D"&3', undefined, ['text', 'D2'], ['text', 'D3']],
      ['A6', '#N/A', '1+1', undefined, ['error', '#N/A'], ['number', '2']],
      ['A7', true, '1>2', undefined, ['truth', 'TRUE'], ['truth', 'FALSE']],
      ['A8', 'x', '""', undefined, ['text', 'x'], ['blank', '']],
      // Shows nothing of a number.
      ['A9', 1, '1+1', ';;;', ['number', '1'], ['number', '2']],
      ['A10', 0.3, '0.1+0.2+1', undefined, ['number', '0.3'], ['number', '1.3']],
    ] as const
  ).map(([at, kept, formula, numFmt, file, here], row) => ({
    told: {
      at: `S!${at}`,
      file: { kind: file[0], text: file[1] },
      here: { kind: here[0], text: here[1] },
    },
    cell: [
      `${row},0`,
      { value: kept, formula, formulaResult: kept, ...(numFmt !== undefined && { style: { numFmt } }) },
    ] satisfies Cells[number],
  }));
  const { file } = await openCells(cells.map(({ cell }) => cell));
  expect(file.otherwise).toEqual(cells.map(({ told }) => told));
});

test('nothing is calculated before the formulas are reviewed, and then once', async () => {
  const book = await readBook(
    await writeXlsx({
      sheets: [
        { name: 'S', cells: new Map([['0,0', { value: 5, formula: '2+3', formulaResult: 5 }]]) },
        {
          name: 'T',
          rows: [['Item'], ['A']],
          tables: [{ name: 'Things', range: 'A1:A2', columns: [{ name: 'Item' }] }],
        },
      ],
      namedRanges: [{ name: 'five', range: 'S!$A$1' }],
    }),
  );
  const spreadsheet = await createHeadless({ sheets: [], opened: await openedContent(book) });
  open.push(spreadsheet);
  let begun = 0;
  spreadsheet.injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (id === SetFormulaCalculationStartMutation.id) begun += 1;
  });
  // A calculation begins a tenth of a second after there is a reason for it.
  await new Promise((later) => setTimeout(later, 400));
  expect(begun).toBe(0);
  await reviewFormulas(spreadsheet);
  expect(begun).toBe(1);
  spreadsheet.workbook.getSheetByName('S')?.getRange('A2').setValue('=A1*2');
  await expect.poll(() => valuesAt(spreadsheet, 'S!A2')).toEqual([[10]]);
});

describe('of formulas that fail', () => {
  const failed = (at: string, entered: string, fills = at): Failed => ({
    at: blockOf(at, 'S') ?? { sheet: 'S', row: 0, column: 0, rows: 1, columns: 1 },
    formula: { entered },
    wanted: blockOf(fills, 'S') ?? { sheet: 'S', row: 0, column: 0, rows: 1, columns: 1 },
  });
  const causes = (...all: Failed[]): string[] => drained(causesAmong(all)).map(({ formula }) => formula.entered ?? '');

  test.each<[string, Failed[], string[]]>([
    ['a cell', [failed('A1', '=X()'), failed('B1', '=A1*2')], ['=X()']],
    ['a cell on another sheet', [failed('T!A1', '=X()'), failed('B1', '=t!$A$1')], ['=X()']],
    ['a range', [failed('A5', '=X()'), failed('B1', '=SUM(A1:A9)')], ['=X()']],
    ['a whole column', [failed('A5', '=X()'), failed('B1', '=SUM(A:C)')], ['=X()']],
    ['what one fills', [failed('A5', '=X()', 'A5:C9'), failed('E1', '=C9')], ['=X()']],
    ['none of them', [failed('A1', '=X()'), failed('B1', '=A2+C1')], ['=X()', '=A2+C1']],
    ['itself alone', [failed('A1', '=A1+1')], ['=A1+1']],
    ['each other', [failed('A1', '=B1'), failed('B1', '=A1')], []],
  ])('those that point at %s', (_, all, first) => {
    expect(causes(...all)).toEqual(first);
  });
});
