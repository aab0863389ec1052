/** The copy read by a program that shares nothing with ours; only where that program is installed. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readCells, worksheetNamed } from '../../../src/workbook/embedded/cells';
import { describeCopy } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { fillIntake } from '../../../src/workbook/fillIntake';
import { fillReminders } from '../../../src/workbook/fillReminders';
import { CLUBS, JOBS } from '../../../src/workbook/schema';
import { columnLetters } from '../../../src/workbook/shared/address';
import { readShop } from '../../../src/workbook/shop';
import { type } from '../sheet';
import { COMPARE_SHEET, filledDemo, PLAN_SHEET } from './demoBook';

const isThere = spawnSync('soffice', ['--version']).status === 0;

const LENGTH_COLUMN = CLUBS.columns.findIndex(({ key }) => key === 'length');

/** Every sheet as CSV: comma, double quote, UTF-8, values as kept rather than as shown. */
const csv = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1';

describe.runIf(isThere)('LibreOffice', () => {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-'));
  let spreadsheet: Spreadsheet;

  const convert = (to: string): void => {
    const own = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    execFileSync('soffice', [own, '--headless', '--convert-to', to, '--outdir', folder, join(folder, 'demo.xlsx')]);
  };
  const lines = (sheet: string): string[][] => parse(readFileSync(join(folder, `demo-${sheet}.csv`), 'utf8'));

  beforeAll(async () => {
    const book = await filledDemo();
    ({ spreadsheet } = book);
    const today = 46153; // 2026-05-11
    await fillIntake(book.port, await readShop(book.port), { job: 'R-201' });
    await fillReminders(book.port, await readShop(book.port), { today });
    const column = columnLetters(LENGTH_COLUMN);
    await type(spreadsheet, 'Tape', 'H2', `=SUM(Clubs!$${column}$2:$${column}$14)`);
    const { workbook } = await describeCopy(spreadsheet);
    writeFileSync(join(folder, 'demo.xlsx'), await bytesOf(workbook));
    convert(csv);
  }, 180_000);
  afterAll(() => {
    spreadsheet.dispose();
    rmSync(folder, { recursive: true, force: true });
  });

  test.each(['Jobs', 'Clubs', 'Stock', 'Settings', PLAN_SHEET, COMPARE_SHEET])('reads the same in %s', (sheet) => {
    const found = lines(sheet);
    const worksheet = worksheetNamed(spreadsheet, sheet);
    const at = { sheet, row: 0, column: 0, rows: found.length, columns: 60 };
    const ours = worksheet ? readCells(spreadsheet, worksheet, at).values : [];
    let numbers = 0;
    ours.forEach((line, row) =>
      line.forEach((value, column) => {
        const theirs = found[row]?.[column] ?? '';
        if (isDate(sheet, row, column)) return;
        if (typeof value === 'number') {
          numbers += 1;
          // Twelve digits: what is written out as decimal differs in the last ones.
          expect(Number(theirs), `${row},${column}`).toBeCloseTo(value, 9);
        } else expect(theirs, `${row},${column}`).toBe(value === null ? '' : String(value));
      }),
    );
    expect(numbers).toBeGreaterThan(5);
  });

  test('calculates a formula that is still one as we do', () => {
    const ours = Number(lines('Tape')[1]?.[7]);
    const lengths = lines('Clubs')
      .slice(1, 14)
      .map((line) => Number(line[LENGTH_COLUMN]));
    expect(ours).toBeGreaterThan(0);
    expect(ours).toBeCloseTo(
      lengths.reduce((sum, length) => sum + length, 0),
      9,
    );
  });

  test('prints each page of ours on one sheet of paper', async () => {
    const { workbook } = await describeCopy(spreadsheet);
    const ours = [PLAN_SHEET, COMPARE_SHEET, 'Intake R-201', 'Reminders'];
    const pages = {
      ...workbook,
      activeSheet: 0,
      sheets: workbook.sheets.filter(({ name }) => ours.includes(name)),
      namedRanges: (workbook.namedRanges ?? []).filter(({ scope }) => scope !== undefined && ours.includes(scope)),
    };
    writeFileSync(join(folder, 'demo.xlsx'), await bytesOf(pages));
    convert('pdf');
    const pdf = readFileSync(join(folder, 'demo.pdf'), 'latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(ours.length);
  }, 180_000);
});

/** A date is written out as a date, whatever is asked for. */
function isDate(sheet: string, row: number, column: number): boolean {
  return (
    (sheet === 'Jobs' && JOBS.columns[column]?.kind === 'date') || (sheet === PLAN_SHEET && row === 4 && column === 1)
  );
}

/** Lines of a CSV with quoted cells. */
function parse(text: string): string[][] {
  const rows: string[][] = [[]];
  for (const [whole, quoted, bare, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\n]*))(,|\r?\n|$)/g)) {
    if (whole === '') continue;
    rows.at(-1)?.push(quoted?.replaceAll('""', '"') ?? bare ?? '');
    if (end !== ',') rows.push([]);
  }
  return rows;
}
