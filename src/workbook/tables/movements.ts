/** The ledger of the shelves: what was reserved, used, bought and counted, a row for each, none of them taken out. */
import type { TableSchema } from '../columns';

export const MOVEMENT_WORDS = ['Reserved', 'Released', 'Used', 'Arrived', 'Written off', 'Counted'] as const;

/** What things are counted in: grips in pieces, tape in yards, weight in grams. */
export const STOCK_UNITS = ['pc', 'yd', 'g'] as const;

export const MOVEMENTS = {
  name: 'Movements',
  later: true,
  room: 100,
  purpose: 'What was reserved, used, bought and counted: rows are added, none is taken out.',
  columns: [
    {
      key: 'date',
      header: 'Date',
      kind: 'date',
      width: 12,
      format: 'yyyy-mm-dd',
      synonyms: ['day'],
    },
    {
      key: 'kind',
      header: 'Movement',
      kind: 'choice',
      choices: MOVEMENT_WORDS,
      needed: true,
      width: 12,
      synonyms: ['kind', 'type'],
    },
    {
      key: 'job',
      header: 'Job',
      kind: 'text',
      width: 9,
      format: '@',
      synonyms: ['job no', 'job number'],
    },
    {
      key: 'club',
      header: 'Club',
      kind: 'text',
      width: 16,
      format: '@',
      synonyms: ['club name'],
    },
    {
      key: 'item',
      header: 'Item',
      kind: 'text',
      needed: true,
      width: 22,
      format: '@',
      synonyms: ['sku', 'code', 'article'],
    },
    {
      key: 'quantity',
      header: 'Quantity',
      kind: 'number',
      low: -1000000,
      high: 1000000,
      needed: true,
      width: 10,
      format: '0.###',
      synonyms: ['qty', 'amount'],
    },
    {
      key: 'unit',
      header: 'Unit',
      kind: 'choice',
      choices: STOCK_UNITS,
      needed: true,
      width: 7,
      synonyms: [],
    },
    {
      key: 'round',
      header: 'Round',
      kind: 'count',
      low: 1,
      high: 99,
      width: 8,
      format: '0',
      synonyms: ['time'],
    },
    {
      key: 'note',
      header: 'Note',
      kind: 'text',
      width: 40,
      synonyms: ['notes', 'remarks'],
    },
  ],
} as const satisfies TableSchema;
