/**
 * The box with the cell's address takes a sheet's name as well. By itself the spreadsheet passes over the name, and goes to those cells of
 * the sheet that happens to be open: what is typed next would get into the wrong one.
 */
import { blockOf, sameName } from '../../shared/address';
import type { Spreadsheet } from '../spreadsheet';

/** What became of an address: the spreadsheet's own to follow, gone to, or of no cells that are shown. */
export type Went = 'own' | 'there' | 'nowhere';

/** Goes to cells of a sheet that is named; `typed` is what stands in the box. */
export function goTo({ workbook }: Spreadsheet, typed: string): Went {
  if (!typed.includes('!')) return 'own';
  const at = blockOf(typed);
  const sheet = at && workbook.getSheets().find((each) => sameName(each.getSheetName(), at.sheet));
  if (!at || !sheet || sheet.isSheetHidden()) return 'nowhere';
  // Whole rows and columns end with the sheet.
  const rows = Math.min(at.rows, sheet.getMaxRows() - at.row);
  const columns = Math.min(at.columns, sheet.getMaxColumns() - at.column);
  if (rows < 1 || columns < 1) return 'nowhere';
  workbook.setActiveSheet(sheet);
  sheet.setActiveRange(sheet.getRange(at.row, at.column, rows, columns));
  return 'there';
}

const BOX = '[data-u-comp=defined-name] input';

/** Has Enter in the box go where a sheet's name says; `arrived` is told of the first cell. An address of nothing changes back to the one before. */
export function takeSheetNames(container: HTMLElement, spreadsheet: Spreadsheet, arrived: () => void): void {
  const enter = (event: KeyboardEvent): void => {
    const { target, key } = event;
    if (key !== 'Enter' || !(target instanceof HTMLInputElement) || !target.matches(BOX)) return;
    const went = goTo(spreadsheet, target.value.trim());
    if (went === 'own') return;
    event.preventDefault();
    event.stopPropagation();
    if (went === 'there') arrived();
    else target.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true }));
  };
  container.addEventListener('keydown', enter, { capture: true });
}
