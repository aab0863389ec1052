/** An issued quote in the copy, read and printed by a program that shares nothing with ours; only where that program is installed. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeCopy } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import { fillOptions } from '../../../src/workbook/fillOptions';
import { issueQuote } from '../../../src/workbook/issueQuote';
import { readShop } from '../../../src/workbook/shop';
import { openDemo } from './demoBook';

const isThere = spawnSync('soffice', ['--version']).status === 0;

const QUOTE = 'Quote 1042';
const OPTIONS = 'Options R-201';

describe.runIf(isThere)('LibreOffice, given an issued quote', () => {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-'));
  const file = join(folder, 'quote.xlsx');
  let total = '';

  const convert = (to: string): void => {
    const own = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    execFileSync('soffice', [own, '--headless', '--convert-to', to, '--outdir', folder, file]);
  };

  beforeAll(async () => {
    const { spreadsheet, port } = await openDemo();
    const terms = { issued: 46_120 };
    const issued = await issueQuote(port, { what: { job: 'R-201' }, terms, shown: null });
    if (!issued.done) throw new Error(`not issued: ${issued.reason}`);
    total = (Number(issued.total.minor) / 100).toFixed(2);
    const options = [
      { name: 'As it is', choices: {} },
      { name: 'With tape', choices: { layers: 3, exceptPutters: true } },
      { name: 'Other grip', choices: { newItem: 'OS-M60', exceptPutters: true } },
    ];
    await fillOptions(port, await readShop(port), { job: 'R-201', terms, options });
    const { workbook } = await describeCopy(spreadsheet);
    const ours = [QUOTE, OPTIONS];
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

  test('shows the amounts as they were issued, with the decimals of the currency', () => {
    convert('csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1');
    const lines = readFileSync(join(folder, `quote-${QUOTE}.csv`), 'utf8').split('\n');
    expect(lines.find((line) => line.startsWith('"Total, EUR"'))).toBe(`"Total, EUR",,,,${total}`);
    expect(lines.some((line) => line.endsWith(',2026-04-08'))).toBe(true);
    const beside = readFileSync(join(folder, `quote-${OPTIONS}.csv`), 'utf8');
    expect(beside).toContain(`"Total, EUR",${total}`);
  }, 180_000);

  test('prints each on one sheet of paper', () => {
    convert('pdf');
    const pdf = readFileSync(join(folder, 'quote.pdf'), 'latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(2);
  }, 180_000);
});
