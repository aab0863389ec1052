import { expect, test } from 'vitest';
import { comingPort } from '../../src/tryout/comingPort';
import { Draft } from '../../src/workbook/embedded/draft/draft';
import type { BlockSeen, WorkbookPort } from '../../src/workbook/port';
import { sayPortError } from '../../src/words/portErrors';
import { MemoryPort } from '../workbook/memoryPort';

const at = { sheet: 'Clubs', row: 0, column: 0, rows: 1, columns: 1 };
const look = async (port: WorkbookPort): Promise<BlockSeen> => (await port.read([{ read: 'block', at }]))[0];
const write = async (port: WorkbookPort, word: string) =>
  port.apply([{ do: 'write', at, cells: [[word]] }], [await look(port)], { label: 'A word' });

/** A port whose spreadsheet comes when it is told to. */
async function waiting(inSpreadsheet = 'from the spreadsheet') {
  const data = new Draft(['Clubs']);
  await write(data, 'from data');
  const spreadsheet = new MemoryPort(['Clubs']);
  await write(spreadsheet, inSpreadsheet);
  let come = (): void => undefined;
  let fail = (): void => undefined;
  const coming = new Promise<WorkbookPort>((resolve, reject) => {
    come = () => resolve(spreadsheet);
    fail = () => reject(new Error('no such script'));
  });
  return { port: comingPort(data, coming), spreadsheet, come, fail };
}

test('what stands in the workbook is told at once, and by the spreadsheet once that is there', async () => {
  const { port, come } = await waiting();
  expect((await look(port)).values).toEqual([['from data']]);
  come();
  await Promise.resolve();
  await Promise.resolve();
  expect((await look(port)).values).toEqual([['from the spreadsheet']]);
});

test('a change waits for the spreadsheet, goes there, and is seen afterwards', async () => {
  const { port, spreadsheet, come } = await waiting('from data');
  const before = spreadsheet.applies;
  const written = write(port, 'mine');
  const kept = port.remember('key', 'value');
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(spreadsheet.applies).toBe(before);
  come();
  const receipt = await written;
  await kept;
  expect(spreadsheet.shows('Clubs', 0, 0)).toBe('mine');
  expect(spreadsheet.setting('key')).toBe('value');
  expect((await port.revert(receipt)).restored).toBe(1);
});

test('whoever watches hears of the spreadsheet’s changes, unless that was stopped before it came', async () => {
  const { port, spreadsheet, come } = await waiting();
  const heard: string[] = [];
  const told = new Set<(sheet: string) => void>();
  spreadsheet.watch = (changed) => {
    told.add(changed);
    return () => void told.delete(changed);
  };
  const stop = port.watch((sheet) => heard.push(`first: ${sheet}`));
  port.watch((sheet) => heard.push(`second: ${sheet}`))();
  come();
  await new Promise((resolve) => setTimeout(resolve));
  for (const tell of told) tell('Clubs');
  expect(heard).toEqual(['first: Clubs']);
  stop();
  expect(told.size).toBe(0);
});

test('where the spreadsheet does not come, a change fails in a sentence and reading goes on', async () => {
  const { port, fail } = await waiting();
  const written = write(port, 'mine');
  fail();
  const error: unknown = await written.catch((thrown: unknown) => thrown);
  expect(error).toMatchObject({ code: 'host' });
  expect(sayPortError(error as never)).toBe('The workbook did not answer. Nothing was written; try again.');
  expect((await look(port)).values).toEqual([['from data']]);
});
