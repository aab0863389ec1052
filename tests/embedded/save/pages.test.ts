import { afterEach, describe, expect, test } from 'vitest';
import { keptPage, movedPage } from '../../../src/workbook/embedded/pages';
import { createEmbeddedPort } from '../../../src/workbook/embedded/port';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import type { PageSetup } from '../../../src/workbook/port';
import { openSheet } from '../sheet';

let open: Spreadsheet | undefined;
afterEach(() => open?.dispose());

const setup: PageSetup = {
  landscape: true,
  area: { sheet: 'Plan', row: 0, column: 0, rows: 12, columns: 4 },
  titleRows: { row: 9, rows: 1 },
  footer: 'Regrip plan',
};

async function printed(): Promise<() => PageSetup | null> {
  open = await openSheet([{ name: 'Plan', cells: [['a']], rowCount: 40 }]);
  const spreadsheet = open;
  const port = createEmbeddedPort(spreadsheet);
  await port.apply([{ do: 'page', sheet: 'Plan', setup }], [], { label: 'Page' });
  const id = spreadsheet.workbook.getSheetByName('Plan')?.getSheetId() ?? '';
  return () => keptPage(spreadsheet, id);
}

describe('how a sheet is printed', () => {
  test('is kept, also under another name of the sheet', async () => {
    const page = await printed();
    expect(page()).toEqual(setup);
    open?.workbook.getSheetByName('Plan')?.setName('Bench');
    expect(page()).toEqual(setup);
  });

  test('follows rows that are put in above, taken out, and put back by undoing', async () => {
    const page = await printed();
    const sheet = open?.workbook.getSheetByName('Plan');
    sheet?.insertRows(4, 3);
    expect(page()).toMatchObject({ area: { row: 0, rows: 15 }, titleRows: { row: 12 } });
    sheet?.deleteRows(0, 2);
    expect(page()).toMatchObject({ area: { row: 0, rows: 13 }, titleRows: { row: 10 } });
    await open?.workbook.undo();
    expect(page()).toMatchObject({ area: { row: 0, rows: 15 }, titleRows: { row: 12 } });
  });

  test('of whole columns stays whole; what is below the change stands', () => {
    const whole = { ...setup, area: { ...setup.area, rows: 1_048_576 } };
    expect(movedPage(whole, 2, 5)).toEqual({ ...whole, titleRows: { row: 14, rows: 1 } });
    expect(movedPage(setup, 20, 5)).toEqual(setup);
    expect(movedPage({ ...setup, breaks: [4, 11] }, 6, 2).breaks).toEqual([4, 13]);
    expect(movedPage({ ...setup, area: { ...setup.area, row: 3 } }, 0, -3).area).toMatchObject({ row: 0, rows: 12 });
  });
});
