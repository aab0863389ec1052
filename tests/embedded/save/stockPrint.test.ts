/** The order and the pick list in the copy, printed by a program that shares nothing with ours; only where that is installed. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeCopy } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import { fillOrder } from '../../../src/workbook/fillOrder';
import { fillPick } from '../../../src/workbook/fillPick';
import { readShop } from '../../../src/workbook/shop';
import { openDemo } from './demoBook';

const isThere = spawnSync('soffice', ['--version']).status === 0;
const ORDER = 'Order';
const PICK = 'Pick list';

describe.runIf(isThere)('LibreOffice, given an order and a pick list', () => {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-'));
  const file = join(folder, 'stock.xlsx');

  const convert = (to: string): void => {
    const own = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    execFileSync('soffice', [own, '--headless', '--convert-to', to, '--outdir', folder, file]);
  };

  beforeAll(async () => {
    const { spreadsheet, port } = await openDemo();
    const order = await fillOrder(port, await readShop(port));
    const pick = await fillPick(port, await readShop(port), {});
    expect([order, pick]).toMatchObject([
      { done: true, sheet: ORDER },
      { done: true, sheet: PICK },
    ]);
    const { workbook } = await describeCopy(spreadsheet);
    const ours = [ORDER, PICK];
    const pages = {
      ...workbook,
      activeSheet: 0,
      sheets: workbook.sheets.filter(({ name }) => ours.includes(name)),
      namedRanges: (workbook.namedRanges ?? []).filter(({ scope }) => scope !== undefined && ours.includes(scope)),
    };
    writeFileSync(file, await bytesOf(pages));
    spreadsheet.dispose();
  }, 180_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('adds the order up as its lines do', () => {
    convert('csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1');
    const lines = readFileSync(join(folder, `stock-${ORDER}.csv`), 'utf8')
      .split('\n')
      .map((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/).map((cell) => cell.replaceAll('"', '')));
    const cost = (line: string[]): number => Number(line[7]);
    const isLine = (line: string[]): boolean => Number(line[2]) > 0;
    const sum = lines.filter(isLine).reduce((total, line) => total + cost(line), 0);
    const all = lines.find(([first]) => first === 'All orders');
    expect(sum).toBeGreaterThan(100);
    expect(all && cost(all)).toBeCloseTo(sum, 6);
  }, 180_000);

  test('prints the order on one sheet of paper, and the pick list no wider than one', () => {
    convert('pdf');
    const pdf = readFileSync(join(folder, 'stock.pdf'), 'latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBeLessThanOrEqual(3);
  }, 180_000);
});
