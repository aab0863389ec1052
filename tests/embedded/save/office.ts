/** Pages of ours in a copy, read and printed by LibreOffice, which shares nothing with ours; for tests that run where it is installed. */
import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describeCopy } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import type { WorkbookPort } from '../../../src/workbook/port';
import { openDemo } from './demoBook';

export const officeIsThere = spawnSync('soffice', ['--version']).status === 0;

/** How long a copy is made, or an office started, at the most. */
export const OFFICE_MS = 180_000;

export interface OfficeCopy {
  /** Cells of a sheet, comma separated, with numbers as their formats show them or as they are. */
  readonly texts: (numbers?: 'shown' | 'plain') => (sheet: string) => string;
  /** How many sheets of paper the pages take together; the file is kept where KEEP_PDF says. */
  readonly papers: () => number;
  /** The text of each sheet of paper, where pdftotext is installed. */
  readonly pages: () => string[];
  readonly forget: () => void;
}

/** The demo with some pages filled, saved with these alone. */
export async function officeCopy(
  sheets: readonly string[],
  fill: (port: WorkbookPort) => Promise<void>,
): Promise<OfficeCopy> {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-'));
  const file = join(folder, 'copy.xlsx');
  const { spreadsheet, port } = await openDemo();
  await fill(port);
  const { workbook } = await describeCopy(spreadsheet);
  const ours = (name: string | undefined): boolean => name !== undefined && sheets.includes(name);
  const pages = {
    ...workbook,
    activeSheet: 0,
    sheets: workbook.sheets.filter(({ name }) => ours(name)),
    namedRanges: (workbook.namedRanges ?? []).filter(({ scope }) => ours(scope)),
  };
  writeFileSync(file, await bytesOf(pages));
  spreadsheet.dispose();
  const convert = (to: string): void => {
    const own = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    execFileSync('soffice', [own, '--headless', '--convert-to', to, '--outdir', folder, file]);
  };
  return {
    texts: (numbers = 'shown') => {
      convert(
        `csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,${String(numbers === 'shown')},false,false,false,-1`,
      );
      return (sheet) => readFileSync(join(folder, `copy-${sheet}.csv`), 'utf8');
    },
    papers: () => {
      convert('pdf');
      const pdf = join(folder, 'copy.pdf');
      if (process.env.KEEP_PDF) copyFileSync(pdf, process.env.KEEP_PDF);
      return readFileSync(pdf, 'latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    },
    pages: () => {
      convert('pdf');
      const pdf = join(folder, 'copy.pdf');
      if (process.env.KEEP_PDF) copyFileSync(pdf, process.env.KEEP_PDF);
      const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' });
      return text.split('\f').filter((page) => page.trim() !== '');
    },
    forget: () => rmSync(folder, { recursive: true, force: true }),
  };
}
