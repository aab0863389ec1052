import { PortError } from '../port';
import type { CellFormat, Change, Highlight, Look, PageSetup } from '../port';
import { columnLetters, named } from '../shared/address';
import { literal } from '../shared/call';
import { rangeOf } from './writeCells';

type Choices = Extract<Change, { do: 'choices' }>;

/** Excel's limit for the words of a drop-down, joined by commas. */
const longestWords = 255;
/** Excel's limits for what a drop-down tells the person. */
const longestHint = 255;

export function setFormat(range: Excel.Range, format: CellFormat): void {
  // One text for the whole range: Excel takes it for every cell.
  if (format.number !== undefined) range.numberFormat = format.number as unknown as string[][];
  const { font, fill, borders } = range.format;
  if (format.bold !== undefined) font.bold = format.bold;
  if (format.italic !== undefined) font.italic = format.italic;
  if (format.ink !== undefined) font.color = format.ink;
  if (format.size !== undefined) font.size = format.size;
  if (format.fill !== undefined) fill.color = format.fill;
  if (format.wrap !== undefined) range.format.wrapText = format.wrap;
  if (format.align) range.format.horizontalAlignment = horizontal[format.align];
  if (format.vertical) range.format.verticalAlignment = vertical[format.vertical];
  if (format.height !== undefined) range.format.rowHeight = format.height;
  if (format.rule !== undefined) setRule(borders.getItem('EdgeBottom'), format.rule);
}

/**
 * Takes looks of ours off a range, and no others. A drop-down or highlights go; a part of a format goes back to what a new sheet
 * has. The usual size of letters is not known, and a table leaves all kinds of looks: there the whole format goes.
 */
export function undressRange(range: Excel.Range, looks: readonly Look[]): void {
  if (looks.includes('highlight')) range.conditionalFormats.clearAll();
  if (looks.includes('choices')) range.dataValidation.clear();
  if (looks.includes('table') || looks.includes('size')) range.clear('Formats');
  else for (const look of looks) usual[look]?.(range);
}

/** How a part of a format goes back to what a new sheet has; a row's height stays. */
const usual: Partial<Record<Look, (range: Excel.Range) => void>> = {
  number: (range) => setFormat(range, { number: 'General' }),
  bold: (range) => setFormat(range, { bold: false }),
  italic: (range) => setFormat(range, { italic: false }),
  ink: (range) => setFormat(range, { ink: '#000000' }),
  fill: (range) => range.format.fill.clear(),
  wrap: (range) => setFormat(range, { wrap: false }),
  align: (range) => {
    range.format.horizontalAlignment = 'General';
  },
  vertical: (range) => setFormat(range, { vertical: 'bottom' }),
  rule: (range) => {
    range.format.borders.getItem('EdgeBottom').style = 'None';
  },
};

const horizontal = { left: 'Left', center: 'Center', right: 'Right' } as const;
const vertical = { top: 'Top', center: 'Center', bottom: 'Bottom' } as const;

function setRule(border: Excel.RangeBorder, color: string): void {
  border.style = 'Continuous';
  border.weight = 'Thin';
  border.color = color;
}

/** Width of a column in points, from characters of the default font: seven pixels each and five for the edges (*from memory*). */
export function pointsWide(characters: number): number {
  return (characters * 7 + 5) * 0.75;
}

/** The same the other way round. */
export function charactersWide(points: number): number {
  return (points / 0.75 - 5) / 7;
}

/* ------------------------------------------------------------ drop-downs */

/** Throws where Excel could not hold the words of a drop-down; asked before anything is written. */
export function refuseChoices({ at, from }: Choices): void {
  if (!Array.isArray(from)) return;
  const words = from as readonly string[];
  const odd = words.find((word) => word.includes(','));
  if (odd !== undefined) throw new PortError('unsupported', [named(at)], `A choice may not hold a comma: ${odd}`);
  if (words.join(',').length > longestWords) {
    throw new PortError('unsupported', [named(at)], `The choices are longer than ${longestWords} characters together.`);
  }
}

export function setChoices(context: Excel.RequestContext, { at, from, hint }: Choices): void {
  const validation = rangeOf(context, at).dataValidation;
  const source = 'table' in from ? columnSource(from.table, from.header) : from.join(',');
  const message = hint.slice(0, longestHint);
  validation.rule = { list: { inCellDropDown: true, source } };
  validation.ignoreBlanks = true;
  validation.prompt = { showPrompt: message !== '', title: '', message };
  validation.errorAlert = { showAlert: true, style: 'Warning', title: '', message };
}

/** A drop-down takes no table reference itself, but takes one that INDIRECT makes from text; that grows with the table. */
function columnSource(table: string, header: string): string {
  return `=INDIRECT(${literal(`${table}${columnReference(header)}`)})`;
}

/** A table's column as formulas name it. @example columnReference('Mass (g)') //=> '[[Mass (g)]]' */
export function columnReference(header: string): string {
  const name = header.replace(/['[\]#@]/g, "'$&");
  return /^[\p{L}\p{N}_]+$/u.test(header) ? `[${name}]` : `[[${name}]]`;
}

/* ------------------------------------------------------------ highlights */

/** Gives a block its highlights; those it had go, so that a block filled again does not collect them, unless ours come beside. */
export function setHighlights(context: Excel.RequestContext, change: Extract<Change, { do: 'highlight' }>): void {
  const formats = rangeOf(context, change.at).conditionalFormats;
  if (!change.beside) formats.clearAll();
  // Each new one goes before the others, and the first of ours shall win.
  for (const rule of [...change.rules].reverse()) {
    const { custom } = formats.add('Custom');
    custom.rule.formula = highlightFormula(change.at, rule);
    custom.format.fill.color = rule.fill;
    custom.format.font.color = rule.ink;
    if (rule.bold !== undefined) custom.format.font.bold = rule.bold;
  }
}

/** True in the rows to highlight; written for the block's first row, as Excel wants it. */
function highlightFormula(at: { readonly row: number; readonly column: number }, rule: Highlight): string {
  const cell = `$${columnLetters(at.column + rule.column)}${at.row + 1}`;
  // Joined with an empty text, so that a number compares as the text it looks like.
  return `=OR(${rule.equals.map((text) => `${cell}&""=${literal(text)}`).join(',')})`;
}

/* ------------------------------------------------------------ printing */

export function setPage(context: Excel.RequestContext, sheet: string, setup: PageSetup): void {
  const worksheet = context.workbook.worksheets.getItem(sheet);
  const layout = worksheet.pageLayout;
  layout.orientation = setup.landscape ? 'Landscape' : 'Portrait';
  layout.zoom = { horizontalFitToPages: 1 };
  layout.setPrintArea(rangeOf(context, setup.area));
  if (setup.titleRows) layout.setPrintTitleRows(rowsAddress(setup.titleRows));
  if (setup.breaks) {
    worksheet.horizontalPageBreaks.removePageBreaks();
    for (const row of setup.breaks) worksheet.horizontalPageBreaks.add(`A${row + 1}`);
  }
  const pages = layout.headersFooters.defaultForAllPages;
  // `&` begins a code of Excel's: a plain one is written twice.
  if (setup.footer !== undefined) pages.centerFooter = setup.footer.replaceAll('&', '&&');
  pages.rightFooter = '&P / &N';
}

function rowsAddress({ row, rows }: { readonly row: number; readonly rows: number }): string {
  return `$${row + 1}:$${row + rows}`;
}
