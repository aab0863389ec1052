/** Under which headings of a shop's own list our columns stand: the memory of every connection, for all to see and to correct. */
import type { TableSchema } from '../columns';

/** Tables of ours for which a list of the shop's own can stand. The others are kept by us, or known row by row. */
export const CONNECTABLE = ['Stock', 'Clubs', 'Jobs', 'Rates', 'Tape', 'Weights', 'Sizes', 'Taxes'] as const;

export const SHOP_UNITS = ['in', 'mm', 'cm', 'm', 'ft', 'yd', 'thou', 'g', 'oz', 'lb', 'kg', 'part'] as const;

/** Not one of the tables that *Set up* makes: it is there once a list is connected. */
export const HEADINGS = {
  name: 'Headings',
  later: true,
  purpose: 'Which list of your own stands for which table, and under which of its headings each column is.',
  columns: [
    { key: 'table', header: 'Table', kind: 'choice', choices: CONNECTABLE, needed: true, width: 10, synonyms: [] },
    { key: 'column', header: 'Column', kind: 'text', needed: true, width: 22, format: '@', synonyms: [] },
    // Cells have no name that people know: this says where they are, as far as it was known when the list was connected.
    { key: 'where', header: 'Stands in', kind: 'text', later: true, width: 30, format: '@', synonyms: [] },
    { key: 'heading', header: 'Your heading', kind: 'text', needed: true, width: 26, format: '@', synonyms: [] },
    { key: 'unit', header: 'Unit', kind: 'choice', choices: SHOP_UNITS, width: 8, format: '@', synonyms: [] },
    // What the list is found by: a table's name, or the name that its cells were given. Every version finds it under this heading.
    { key: 'list', header: 'Your list', kind: 'text', needed: true, width: 22, format: '@', synonyms: [] },
  ],
} as const satisfies TableSchema;
