/** A filter and what else hangs on the places of cells: in a copy as long as no cells of its own sheet were moved. */
import { writeXlsx } from 'hucre/xlsx';
import { afterEach, describe, expect, test } from 'vitest';
import { sayLosses } from '../../../src/tryout/save/words';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { copyOf, openFile, type Opened } from './openFile';
import { xmlBook } from './xmlCells';

const open: Spreadsheet[] = [];
afterEach(() => {
  for (const spreadsheet of open.splice(0)) spreadsheet.dispose();
});

/** Two sheets, each with a filter; the first is printed in part. */
async function shelf(): Promise<Opened> {
  const rows = [['Grip', 'Pieces'], ...[4, 7, 1].map((pieces) => ['A', pieces])];
  const autoFilter = { range: 'A1:B4' };
  const opened = await openFile(
    await writeXlsx({
      sheets: [
        { name: 'Shelf', rows, autoFilter, pageSetup: { printArea: 'A1:B3' } },
        { name: 'Clubs', rows, autoFilter },
      ],
    }),
  );
  open.push(opened.spreadsheet);
  return opened;
}

/** What the copy has, sheet by sheet, and which sheets are said to have lost it. */
async function left({
  spreadsheet,
}: Opened): Promise<{ filters: Record<string, string | null>; moved: readonly string[] }> {
  const { bytes, losses } = await copyOf(spreadsheet);
  const again = await openFile(bytes);
  open.push(again.spreadsheet);
  const { sheets, parts } = xmlBook(bytes);
  const printed = /name="_xlnm.Print_Area"[^>]*>([^<]*)</.exec(parts.get('xl/workbook.xml') ?? '')?.[1] ?? null;
  expect(again.book.sheets.find(({ name }) => name === 'Shelf')?.asItWas.pageSetup?.printArea !== undefined).toBe(
    printed !== null,
  );
  return {
    filters: Object.fromEntries(
      sheets.map(({ name, xml }) => [name, /<autoFilter ref="([^"]*)"/.exec(xml)?.[1] ?? null]),
    ),
    moved: losses.moved,
  };
}

const BOTH = { Shelf: 'A1:B4', Clubs: 'A1:B4' };

describe('filters in a copy', () => {
  test('stay when sheets that the file never had come, are worked on and go', async () => {
    const opened = await shelf();
    const { workbook } = opened.spreadsheet;
    const added = workbook.insertSheet('New');
    added.getRange('A1').setValue('x');
    added.insertRows(0, 2);
    added.setName('Other');
    expect(await left(opened)).toEqual({ filters: { ...BOTH, Other: null }, moved: [] });
    workbook.deleteSheet(added);
    expect(await left(opened)).toEqual({ filters: BOTH, moved: [] });
  });

  test('stay when a change that adds a sheet is taken back', async () => {
    const opened = await shelf();
    const at = { sheet: 'Plan', row: 0, column: 0, rows: 1, columns: 1 };
    const looked = await opened.port.read([{ read: 'block', at }]);
    const changes = [{ do: 'sheet', name: 'Plan' } as const, { do: 'write', at, cells: [['x']] } as const];
    await opened.port.apply(changes, looked, { label: 'Test' });
    expect(await left(opened)).toEqual({ filters: { ...BOTH, Plan: null }, moved: [] });
    opened.spreadsheet.workbook.undo();
    expect(await left(opened)).toEqual({ filters: BOTH, moved: [] });
  });

  test('a sheet of the file that is taken out takes its own along only', async () => {
    const opened = await shelf();
    const { workbook } = opened.spreadsheet;
    workbook.deleteSheet(workbook.getSheetByName('Clubs') ?? '');
    expect(await left(opened)).toEqual({ filters: { Shelf: 'A1:B4' }, moved: [] });
  });

  test('go where rows were put into their own sheet, which is said', async () => {
    const opened = await shelf();
    opened.spreadsheet.workbook.getSheetByName('Clubs')?.insertRows(0, 1);
    expect(await left(opened)).toEqual({ filters: { Shelf: 'A1:B4', Clubs: null }, moved: ['Clubs'] });
    const [said] = sayLosses((await copyOf(opened.spreadsheet)).losses);
    expect(said).toContain('is left out in Clubs: cells were moved');
  });
});
