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
      help: 'When it was.',
    },
    {
      key: 'kind',
      header: 'Movement',
      kind: 'choice',
      choices: MOVEMENT_WORDS,
      needed: true,
      width: 12,
      synonyms: ['kind', 'type'],
      help: 'Reserved and Released move nothing; Used and Written off take away, Arrived adds; Counted sets right.',
    },
    {
      key: 'job',
      header: 'Job',
      kind: 'text',
      width: 9,
      format: '@',
      synonyms: ['job no', 'job number'],
      help: 'Which job it was for; blank: none.',
    },
    {
      key: 'club',
      header: 'Club',
      kind: 'text',
      width: 16,
      format: '@',
      synonyms: ['club name'],
      help: 'The club that gets the grip; blank: the whole job.',
    },
    {
      key: 'item',
      header: 'Item',
      kind: 'text',
      needed: true,
      width: 22,
      format: '@',
      synonyms: ['sku', 'code', 'article'],
      help: 'A grip of Stock, a tape of Tape or a way of Weights.',
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
      help: 'How much, in the unit beside it; of a count, by how much it differed.',
    },
    {
      key: 'unit',
      header: 'Unit',
      kind: 'choice',
      choices: STOCK_UNITS,
      needed: true,
      width: 7,
      synonyms: [],
      help: 'Pieces of a grip, yards of a tape, grams of a weight.',
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
      help: 'Blank: the first time. 2: the first redo under warranty.',
    },
    {
      key: 'note',
      header: 'Note',
      kind: 'text',
      width: 40,
      synonyms: ['notes', 'remarks'],
      help: 'Anything to remember: who sent it, what was wrong with it.',
    },
  ],
} as const satisfies TableSchema;
