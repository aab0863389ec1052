/** Workbooks that no one here wrote, opened and saved: the copy is compared with the file cell by cell, by readers that are not ours. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import { Refusal } from '../../../src/workbook/embedded/open/refusal';
import { readBook } from '../../../src/workbook/embedded/open/read';
import { OFFICE_MS, officeIsThere } from '../save/office';
import { copyOf, openFile, type Copied, type Opened } from './openFile';
import { xmlBook, type XmlBook, type XmlCell } from './xmlCells';

const folder = join(import.meta.dirname, '../../fixtures/foreign');
const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(join(folder, name)));
const names = readdirSync(folder).filter((name) => name.endsWith('.xlsx') && name !== 'locked.xlsx');

let opened: Opened | undefined;
afterEach(() => {
  opened?.spreadsheet.dispose();
  opened = undefined;
});

async function roundTrip(name: string): Promise<{ file: XmlBook; copy: XmlBook; copied: Copied }> {
  opened = await openFile(bytesOf(name));
  const copied = await copyOf(opened.spreadsheet);
  return { file: xmlBook(bytesOf(name)), copy: xmlBook(copied.bytes), copied };
}

test('there are workbooks of several programs', () => expect(names.length).toBeGreaterThanOrEqual(10));

describe.each(names)('%s', (name) => {
  test('has the same cells, formulas, number formats, merged cells and tables in its copy', async () => {
    const { file, copy } = await roundTrip(name);
    expect(copy.sheets.map((sheet) => sheet.name)).toEqual(file.sheets.map((sheet) => sheet.name));
    expect(copy.tables).toEqual(file.tables);
    let compared = 0;
    for (const [i, sheet] of file.sheets.entries()) {
      const other = copy.sheets[i];
      expect(other?.merges).toEqual(sheet.merges);
      for (const at of new Set([...sheet.cells.keys(), ...(other?.cells.keys() ?? [])])) {
        compared += same(other?.cells.get(at), sheet.cells.get(at), `${sheet.name}!${at}`);
      }
    }
    expect(compared).toBeGreaterThan(0);
  });

  test('has rows as high as they were, and those that were fitted to their text go on being so', async () => {
    const { file, copy } = await roundTrip(name);
    const heights = ({ sheets }: XmlBook) => sheets.map((sheet) => [...sheet.heights]);
    for (const [i, rows] of heights(file).entries()) {
      // The library that writes files ends with the last cell.
      const last = Math.max(0, ...[...(copy.sheets[i]?.cells.keys() ?? [])].map((at) => Number(/\d+$/.exec(at)?.[0])));
      for (const [row, { points, set }] of rows) {
        if (row > last) continue;
        const other = copy.sheets[i]?.heights.get(row);
        expect(other?.set).toBe(set);
        // A pixel is three quarters of a point.
        expect(Math.abs((other?.points ?? 0) - points)).toBeLessThanOrEqual(0.75);
      }
    }
  });

  test('has highlights with the same fills', async () => {
    const { file, copy } = await roundTrip(name);
    expect(copy.highlightFills).toEqual(file.highlightFills);
  });

  test('and the copy opens without loss: no more is lost in a copy of the copy', async () => {
    const { copy, copied } = await roundTrip(name);
    opened?.spreadsheet.dispose();
    opened = await openFile(copied.bytes);
    const again = await copyOf(opened.spreadsheet);
    const second = xmlBook(again.bytes);
    expect(again.losses).toMatchObject({ otherFormulas: 0, rulesLeftOut: 0, unkept: [] });
    expect(second.sheets.map(({ cells }) => [...cells])).toEqual(copy.sheets.map(({ cells }) => [...cells]));
    expect(second.tables).toEqual(copy.tables);
  });
});

/** Whether two cells are the same; 1 where they hold a value. */
function same(copy: XmlCell | undefined, file: XmlCell | undefined, at: string): number {
  const [now, was] = [copy?.value ?? null, file?.value ?? null];
  if (typeof was === 'number' && typeof now === 'number') {
    // A day and time is kept to the millisecond.
    expect(Math.abs(now - was), at).toBeLessThanOrEqual(1e-8 * Math.max(1, Math.abs(was)));
  } else if (file?.formula != null && was === null) {
    // A file that was never calculated has formulas without results.
    expect(now, at).not.toBeNull();
  } else expect(now, at).toEqual(was === '' ? null : was);
  if (file?.formula) expect(copy?.formula, at).toBe(file.formula);
  const format = copy?.format ?? null;
  expect(formatted(format), at).toBe(formatted(file?.format ?? null));
  return was === null ? 0 : 1;
}

/** One format may be written in more than one way. */
function formatted(format: string | null): string | null {
  return format?.startsWith('built-in') ? 'built-in' : (format?.replace(/\\(.)/g, '$1') ?? null);
}

test('a locked file is refused as such', async () => {
  await expect(readBook(bytesOf('locked.xlsx'))).rejects.toMatchObject({ code: 'locked' } satisfies Partial<Refusal>);
});

test('charts are told of before anything is saved', async () => {
  for (const name of ['chart-and-formulas.xlsx', 'chart-and-merges.xlsx']) {
    const { copied } = await roundTrip(name);
    expect(copied.losses.unkept).toEqual([{ kind: 'charts', count: 1 }]);
    opened?.spreadsheet.dispose();
  }
});

test('tables are found by the port, and cells that are merged', async () => {
  opened = await openFile(bytesOf('named-tables.xlsx'));
  const file = xmlBook(bytesOf('named-tables.xlsx'));
  const [first] = file.tables.map((table) => table.split(' '));
  const sheet = file.sheets[0]?.name ?? '';
  const at = { sheet, row: 0, column: 0, rows: 40, columns: 10 };
  const [table, block] = await opened.port.read([
    { read: 'table', table: first?.[0] ?? '' },
    { read: 'block', at },
  ]);
  expect(table?.headers.length).toBeGreaterThan(1);
  expect(block.tables).toHaveLength(file.tables.length);
  expect(block.merged).toHaveLength(file.sheets[0]?.merges.length ?? -1);
});

describe.runIf(officeIsThere)('LibreOffice', () => {
  const place = mkdtempSync(join(tmpdir(), 'setwright-'));
  afterAll(() => rmSync(place, { recursive: true, force: true }));

  test(
    'reads the same in every sheet of every file and of its copy',
    async () => {
      for (const name of names) {
        writeFileSync(join(place, `file-${name}`), bytesOf(name));
        opened = await openFile(bytesOf(name));
        writeFileSync(join(place, `copy-${name}`), (await copyOf(opened.spreadsheet)).bytes);
        opened.spreadsheet.dispose();
      }
      opened = undefined;
      const csv = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1';
      const files = readdirSync(place).filter((name) => name.endsWith('.xlsx'));
      const own = `-env:UserInstallation=file://${join(place, 'profile')}`;
      const paths = files.map((name) => join(place, name));
      execFileSync('soffice', [own, '--headless', '--convert-to', csv, '--outdir', place, ...paths], {
        stdio: 'ignore',
      });
      const sheets = readdirSync(place).filter((name) => name.startsWith('file-') && name.endsWith('.csv'));
      expect(sheets.length).toBeGreaterThanOrEqual(names.length);
      for (const sheet of sheets) {
        const read = (which: string): string =>
          readFileSync(join(place, `${which}${sheet.slice(4)}`), 'utf8').trimEnd();
        expect(read('copy'), sheet).toBe(read('file'));
      }
    },
    OFFICE_MS,
  );
});

test.skipIf(officeIsThere)('(LibreOffice is not installed here: it reads no copies)', () => undefined);
