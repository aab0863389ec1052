/** Putting a file that was read into a spreadsheet, told about on the way, and stopped. */
import { ICommandService } from '@univerjs/core';
import { SetFormulaCalculationNotificationMutation } from '@univerjs/engine-formula';
import { writeXlsx, type Cell } from 'hucre/xlsx';
import { beforeAll, expect, test, vi } from 'vitest';
import { FUNCTIONS } from '../../../src/functions/implementations';
import { functions as metadata } from '../../../src/functions/functions.json';
import { releaseCalculation } from '../../../src/workbook/embedded/calculation';
import type { OpenedBook } from '../../../src/workbook/embedded/open/book';
import { openedContent } from '../../../src/workbook/embedded/open/complete';
import { readBook } from '../../../src/workbook/embedded/open/read';
import { placed } from '../../../src/workbook/embedded/opening';
import { createHeadless, type OpenedContent, type Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { valuesAt } from '../sheet';

const ROWS = 3000;
let book: OpenedBook;
beforeAll(async () => {
  // Counted up from 1, each from the cell above; the file says that all of them are 0.
  const cells = Array.from({ length: ROWS }, (_, i): [string, Partial<Cell>] => [
    `${i},0`,
    { value: 0, formula: i === 0 ? '0+1' : `A${i}+1`, formulaResult: 0 },
  ]);
  book = await readBook(await writeXlsx({ sheets: [{ name: 'S', cells: new Map(cells) }] }));
});

/** Makes spreadsheets, and tells which of them are gone. */
function maker() {
  const made: Spreadsheet[] = [];
  const gone: Spreadsheet[] = [];
  const make = async (opened: OpenedContent): Promise<Spreadsheet> => {
    const spreadsheet = await createHeadless({
      sheets: [],
      opened,
      functions: { metadata, implementations: FUNCTIONS },
    });
    made.push(spreadsheet);
    const dispose = spreadsheet.dispose.bind(spreadsheet);
    vi.spyOn(spreadsheet, 'dispose').mockImplementation(() => {
      gone.push(spreadsheet);
      dispose();
    });
    return spreadsheet;
  };
  return { make, made, gone };
}

/** A second after a calculation began the spreadsheet wants to say so: were it let, that would be an error which nobody catches. */
const aSecondLater = (): Promise<void> => new Promise((later) => setTimeout(later, 1200));

test('how far it is goes up from the cells over what hangs on what to the results, and everything is calculated', async () => {
  const { make, gone } = maker();
  const told: number[] = [];
  const done = await placed(book, make, {
    signal: new AbortController().signal,
    onProgress: (progress) => told.push(progress.done / progress.of),
  });
  expect(done?.found).toMatchObject({ keptValues: [] });
  expect(done?.found.otherwise).toHaveLength(ROWS);
  expect(done && valuesAt(done.spreadsheet, `S!A${ROWS}`)).toEqual([[ROWS]]);
  expect(told).toEqual([...told].sort((a, b) => a - b));
  // Where each part begins is told in opening.ts and calculation.ts: the cells, the finding, the results.
  for (const [from, to] of [
    [0, 0.1],
    [0.2, 0.52],
    [0.52, 1],
  ] as const)
    expect(told.some((share) => share > from && share <= to)).toBe(true);
  expect(gone).toEqual([]);
  done?.spreadsheet.dispose();
});

test.each([
  ['the cells are made', 0, 0],
  ['it is found what hangs on what', 0.2, 1],
  ['it is calculated', 0.52, 1],
])('stopped while %s, nothing is left of it', async (_, from, sheets) => {
  const { make, made, gone } = maker();
  const going = new AbortController();
  const told: number[] = [];
  const done = await placed(book, make, {
    signal: going.signal,
    onProgress: (progress) => {
      told.push(progress.done / progress.of);
      if (progress.done / progress.of > from) going.abort();
    },
  });
  expect(going.signal.aborted).toBe(true);
  expect(done).toBeUndefined();
  expect(made).toHaveLength(sheets);
  expect(gone).toEqual(made);
  await aSecondLater();
});

test('stopped while it is shown for the first time, nothing is left of it', async () => {
  const { make, made, gone } = maker();
  const going = new AbortController();
  const shown = async (opened: OpenedContent): Promise<Spreadsheet> => {
    const spreadsheet = await make(opened);
    going.abort();
    return spreadsheet;
  };
  const done = await placed(book, shown, { signal: going.signal, onProgress: () => undefined });
  expect(done).toBeUndefined();
  expect(made).toHaveLength(1);
  expect(gone).toEqual(made);
  await aSecondLater();
});

test('a spreadsheet may go while it is calculating', async () => {
  const spreadsheet = await maker().make(await openedContent(book));
  releaseCalculation(spreadsheet);
  const begun = new Promise<void>((resolve) => {
    spreadsheet.injector.get(ICommandService).onCommandExecuted(({ id }) => {
      if (id === SetFormulaCalculationNotificationMutation.id) resolve();
    });
  });
  spreadsheet.recalculate();
  await begun;
  spreadsheet.dispose();
  await aSecondLater();
});

test('what fails once it stands leaves nothing of it, and is told', async () => {
  const { make, made, gone } = maker();
  const failing = async (opened: OpenedContent): Promise<Spreadsheet> =>
    Object.assign(await make(opened), { ready: Promise.reject(new Error('no picture')) });
  const placing = { signal: new AbortController().signal, onProgress: () => undefined };
  await expect(placed(book, failing, placing)).rejects.toThrow('no picture');
  expect(gone).toEqual(made);
  expect(made).toHaveLength(1);
});
