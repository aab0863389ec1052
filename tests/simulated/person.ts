import type { Person } from '../contract/structureSuite';
import type { Book, SheetData } from './book';

/** Someone at the simulated workbook, whose hands go past the port and the client library. */
export function personAt(book: Book): Person {
  const sheetOf = (name: string): SheetData => {
    const sheet = book.sheet(name);
    if (!sheet) throw new Error(`there is no sheet ${name}`);
    return sheet;
  };
  const enter = (sheet: string, row: number, column: number, typed: string | number | boolean): void => {
    sheetOf(sheet).put(row, column, typed);
    book.tell(sheetOf(sheet));
  };
  return {
    type: (sheet, row, column, value) =>
      enter(sheet, row, column, typeof value === 'string' ? `'${value}` : (value ?? '')),
    typeFormula: (sheet, row, column, formula) => enter(sheet, row, column, formula),
    select: ({ sheet, ...at }) => {
      book.active = sheetOf(sheet);
      book.selection = at;
    },
    protect: (sheet) => {
      sheetOf(sheet).protected = true;
    },
    merge: ({ sheet, ...at }) => {
      sheetOf(sheet).merged.push(at);
    },
    filter: (name) => {
      const table = book.tables.find((other) => other.name === name);
      if (!table) throw new Error(`there is no table ${name}`);
      table.filtered = true;
    },
    deleteSheet: (sheet) => book.deleteSheet(sheetOf(sheet)),
  };
}
