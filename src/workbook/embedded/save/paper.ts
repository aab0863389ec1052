/** How a sheet is printed, in the terms of a workbook file. */
import type { WriteOptions, WriteSheet } from 'hucre/xlsx';
import type { PageSetup } from '../../port';
import { columnLetters, fixed, sheetInFormula } from '../../shared/address';
import { MOST_ROWS } from '../../shared/limits';
import type { SheetBeside } from '../open/book';

/** A defined name of the file. */
export type FileName = NonNullable<WriteOptions['namedRanges']>[number];

/** A page's setup, and the names under which a file keeps its area and its repeated rows. */
export interface Paper {
  readonly sheet: Pick<WriteSheet, 'pageSetup' | 'headerFooter' | 'rowBreaks'>;
  readonly names: FileName[];
}

/* Inches: a narrow edge makes a wide page readable; the foot stands in it. */
const MARGINS = { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 };

/** Of a page eleven inches wide, which both usual papers have at least when they lie across. */
const WIDE_INCHES = 11 - MARGINS.left - MARGINS.right;
/** In our tables a job and a club, or an item and what it is. */
const REPEATED_COLUMNS = '$A:$B';
/** Smaller than this is no longer read at the bench. */
const LEAST_SCALE = 0.55;

/**
 * What a sheet gets of which nobody said how to print it: across, its name at the foot, on as many pages side by side as keep it
 * readable; then its first columns are repeated, which say what a row is about.
 */
export function usualPaper(sheet: string, titleRow: number | null, inches: number): Paper {
  const titleRows = titleRow === null ? {} : { titleRows: { row: titleRow, rows: 1 } };
  const pages = Math.max(1, Math.ceil((inches * LEAST_SCALE) / WIDE_INCHES));
  return paper(sheet, { landscape: true, footer: sheet, ...titleRows }, pages);
}

type Setup = Omit<PageSetup, 'area'> & Partial<Pick<PageSetup, 'area'>>;

/** One page wide unless told otherwise, as long as it takes. Names written here, since a sheet's name may need quotes. */
export function paper(sheet: string, setup: Setup, pagesAcross = 1): Paper {
  const { landscape, area, titleRows, footer, breaks } = setup;
  const names: FileName[] = [];
  if (area) names.push({ name: '_xlnm.Print_Area', scope: sheet, range: areaText({ ...area, sheet }) });
  if (titleRows) {
    const own = sheetInFormula(sheet);
    const rows = `${own}!$${titleRows.row + 1}:$${titleRows.row + titleRows.rows}`;
    const range = pagesAcross > 1 ? `${own}!${REPEATED_COLUMNS},${rows}` : rows;
    names.push({ name: '_xlnm.Print_Titles', scope: sheet, range });
  }
  return {
    sheet: {
      pageSetup: {
        orientation: landscape ? 'landscape' : 'portrait',
        fitToPage: true,
        fitToWidth: pagesAcross,
        fitToHeight: 0,
        margins: MARGINS,
      },
      // `&` begins a code: a plain one is written twice.
      ...(breaks && { rowBreaks: breaks.map((row) => row - 1) }),
      headerFooter: { oddFooter: `${footer ? `&C${footer.replaceAll('&', '&&')}` : ''}&R&P / &N` },
    },
    names,
  };
}

/** Whole columns are named as such, so that what is added below is printed too. */
function areaText(area: PageSetup['area']): string {
  if (area.row > 0 || area.rows < MOST_ROWS) return fixed(area);
  const last = area.column + area.columns - 1;
  return `${sheetInFormula(area.sheet)}!$${columnLetters(area.column)}:$${columnLetters(last)}`;
}

/**
 * How a sheet of an opened file is printed: as the file says. What is printed and what is repeated is left out where cells have been moved
 * since, for nothing told these places to follow.
 */
export function filedPaper(sheet: string, { pageSetup, headerFooter }: SheetBeside, inPlace: boolean): Paper {
  const { printArea, printTitlesRow, printTitlesColumn, ...setup } = pageSetup ?? {};
  const own = `${sheetInFormula(sheet)}!`;
  const areas = printArea?.split(',').map((area) => `${own}${area}`);
  const titles = [printTitlesColumn, printTitlesRow].flatMap((title) =>
    title === undefined ? [] : [`${own}${title}`],
  );
  return {
    sheet: { ...(pageSetup && { pageSetup: setup }), ...(headerFooter && { headerFooter }) },
    names: [
      ...(inPlace && areas ? [{ name: '_xlnm.Print_Area', scope: sheet, range: areas.join(',') }] : []),
      ...(inPlace && titles.length > 0 ? [{ name: '_xlnm.Print_Titles', scope: sheet, range: titles.join(',') }] : []),
    ],
  };
}
