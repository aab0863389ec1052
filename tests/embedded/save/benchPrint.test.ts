/** Ticket, labels and slip in the copy, read and printed by a program that shares nothing with ours; only where that is installed. */
import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeCopy } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import { fillLabels, fillSlip } from '../../../src/workbook/fillHandOver';
import { fillTicket } from '../../../src/workbook/fillTicket';
import { readShop } from '../../../src/workbook/shop';
import { openDemo } from './demoBook';

const isThere = spawnSync('soffice', ['--version']).status === 0;
const [TICKET, LABELS, SLIP] = ['Ticket R-201', 'Labels R-201', 'Pick-up R-205'];

describe.runIf(isThere)('LibreOffice, given what the bench prints', () => {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-'));
  const file = join(folder, 'bench.xlsx');

  const convert = (to: string): void => {
    const own = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    execFileSync('soffice', [own, '--headless', '--convert-to', to, '--outdir', folder, file]);
  };

  beforeAll(async () => {
    const { spreadsheet, port } = await openDemo();
    const ends = [
      await fillTicket(port, await readShop(port), { job: 'R-201' }),
      await fillLabels(port, await readShop(port), { job: 'R-201' }),
      await fillSlip(port, await readShop(port), { job: 'R-205' }),
    ];
    const ours = [TICKET, LABELS, SLIP];
    expect(ends).toMatchObject(ours.map((sheet) => ({ done: true, sheet })));
    const { workbook } = await describeCopy(spreadsheet);
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

  test('reads what stands on each', () => {
    convert('csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1');
    const text = (sheet: string): string => readFileSync(join(folder, `bench-${sheet}.csv`), 'utf8');
    expect(text(TICKET)).toMatch(
      /6 iron \(first\).*TB-S60.*2 layers of 10\.5 in.*Lead tape, head, 37\.5 in.*D1\.9 ± 0\.9/,
    );
    expect(text(TICKET)).toMatch(/29 CFR 1910\.242\(b\)[\s\S]*29 CFR 1910\.1025/);
    expect(text(LABELS).match(/Job R-201, Alex Marsh/g)).toHaveLength(13);
    expect(text(SLIP)).toMatch(/8 iron,OS-S58,3,D4\.2,448\.1/);
  }, 180_000);

  test('prints a full bag’s ticket, its labels and a slip on one sheet of paper each', () => {
    convert('pdf');
    if (process.env.KEEP_PDF) copyFileSync(join(folder, 'bench.pdf'), process.env.KEEP_PDF);
    const pdf = readFileSync(join(folder, 'bench.pdf'), 'latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(3);
  }, 180_000);
});
