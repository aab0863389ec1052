import { afterEach, describe, expect, test } from 'vitest';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { goTo } from '../../../src/workbook/embedded/tools/address';
import { openSheet } from '../sheet';

let open: Spreadsheet | undefined;
afterEach(() => open?.dispose());

async function book(): Promise<Spreadsheet> {
  open = await openSheet(
    ['Clubs', 'Rates', "Ann's rack", 'Gone'].map((name) => ({ name, cells: [['a']], rowCount: 40, columnCount: 10 })),
  );
  open.workbook.getSheetByName('Gone')?.hideSheet();
  open.workbook.setActiveSheet(open.workbook.getSheets()[0]!);
  return open;
}

/** The sheet that is open, and the cells that are marked there. */
const at = ({ workbook }: Spreadsheet): string =>
  `${workbook.getActiveSheet().getSheetName()} ${workbook.getActiveRange()?.getA1Notation() ?? ''}`;

describe('an address with a sheet’s name in the box', () => {
  test.each([
    ['Rates!C2', 'Rates C2'],
    ['rates!$C$2:$D$3', 'Rates C2:D3'],
    ["'Ann''s rack'!B2", "Ann's rack B2"],
    ['Clubs!B2', 'Clubs B2'],
    ['Rates!C:C', 'Rates C1:C40'],
  ])('%s is gone to', async (typed, where) => {
    const spreadsheet = await book();
    expect(goTo(spreadsheet, typed)).toBe('there');
    expect(at(spreadsheet)).toBe(where);
  });

  test.each(['Rate!C2', 'Rates!', 'Rates!what', 'Gone!A1', 'Rates!A999', '!A1'])(
    '%s leads nowhere, and nothing moves',
    async (typed) => {
      const spreadsheet = await book();
      const before = at(spreadsheet);
      expect(goTo(spreadsheet, typed)).toBe('nowhere');
      expect(at(spreadsheet)).toBe(before);
    },
  );

  test.each(['C2', 'A1:B3', 'SomeName', ''])('%j is the spreadsheet’s own to follow', async (typed) => {
    const spreadsheet = await book();
    const before = at(spreadsheet);
    expect(goTo(spreadsheet, typed)).toBe('own');
    expect(at(spreadsheet)).toBe(before);
  });
});
