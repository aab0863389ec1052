/** What deleting a sheet leaves of the undo list, and what counts as a change. */
import { ICommandService, IUndoRedoService, IUniverInstanceService, UndoCommandId } from '@univerjs/core';
import { afterEach, expect, test } from 'vitest';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import type { Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { openSheet, type, valueAt } from './sheet';

let open: Spreadsheet | undefined;
afterEach(() => {
  open?.dispose();
  open = undefined;
});

async function opened(): Promise<Spreadsheet> {
  open = await openSheet([
    { name: 'Stock', cells: [['KF-104', 12]] },
    { name: 'Notes', cells: [] },
  ]);
  // On the page whatever is worked in has it.
  open.injector.get(IUniverInstanceService).focusUnit(open.id);
  return open;
}

const canUndo = ({ injector }: Spreadsheet): boolean => injector.get(IUndoRedoService).pitchTopUndoElement() !== null;
const undo = ({ injector }: Spreadsheet) => injector.get(ICommandService).executeCommand(UndoCommandId);
const namesOf = ({ workbook }: Spreadsheet): string[] => workbook.getSheets().map((sheet) => sheet.getSheetName());
const remove = ({ workbook }: Spreadsheet, name: string): void => {
  workbook.deleteSheet(workbook.getSheetByName(name)?.getSheetId() ?? '');
};

test('after a sheet was deleted Undo takes back nothing earlier in its place', async () => {
  const sheet = await opened();
  await type(sheet, 'Stock', 'B1', 13);
  expect(canUndo(sheet)).toBe(true);
  remove(sheet, 'Notes');
  expect(canUndo(sheet)).toBe(false);
  await undo(sheet);
  expect(namesOf(sheet)).toEqual(['Stock']);
  expect(valueAt(sheet, 'Stock!B1')).toBe(13);
});

test('the last sheet stays, and so does what can be undone', async () => {
  const sheet = await opened();
  remove(sheet, 'Notes');
  await type(sheet, 'Stock', 'B1', 13);
  expect(() => remove(sheet, 'Stock')).not.toThrow();
  expect(namesOf(sheet)).toEqual(['Stock']);
  expect(canUndo(sheet)).toBe(true);
});

test('a sheet that was taken back in the pane does not come back by Undo of the sheet', async () => {
  const sheet = await opened();
  const port = createEmbeddedPort(sheet);
  const at = { sheet: 'Plan', row: 0, column: 0, rows: 1, columns: 1 };
  const looked = await port.read([{ read: 'block', at }]);
  const receipt = await port.apply(
    [
      { do: 'sheet', name: 'Plan' },
      { do: 'write', at, cells: [['Regrip plan']] },
    ],
    looked,
    { label: 'Test' },
  );
  expect(namesOf(sheet)).toContain('Plan');
  await port.revert(receipt);
  expect(namesOf(sheet)).toEqual(['Stock', 'Notes']);
  for (let presses = 0; presses < 3; presses += 1) await undo(sheet);
  expect(namesOf(sheet)).toEqual(['Stock', 'Notes']);
});

test('a change is told of for what is typed, undone and deleted, and for nothing that is only looked at', async () => {
  const sheet = await opened();
  let changes = 0;
  sheet.onChange(() => (changes += 1));
  const more = (): boolean => {
    const told = changes > 0;
    changes = 0;
    return told;
  };
  const { workbook } = sheet;
  const notes = workbook.getSheetByName('Notes');
  if (notes) workbook.setActiveSheet(notes);
  sheet.recalculate();
  await sheet.settled();
  expect(more()).toBe(false);
  await type(sheet, 'Stock', 'B1', 13);
  expect(more()).toBe(true);
  await undo(sheet);
  expect(more()).toBe(true);
  remove(sheet, 'Notes');
  expect(more()).toBe(true);
});
