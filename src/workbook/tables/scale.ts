/** Readings of a reference club, kept to see whether the balance scale still reads as it did. */
import type { TableSchema } from '../columns';

export const SCALE = {
  name: 'Scale',
  later: true,
  room: 60,
  purpose: 'Readings of a club that never changes: they show whether the scale still reads as it did.',
  columns: [
    {
      key: 'date',
      header: 'Date',
      kind: 'date',
      needed: true,
      width: 12,
      format: 'yyyy-mm-dd',
      synonyms: ['day', 'read on'],
    },
    {
      key: 'reading',
      header: 'Reading',
      kind: 'reading',
      needed: true,
      width: 11,
      format: '@',
      synonyms: ['swing weight', 'swingweight', 'sw'],
    },
    {
      key: 'notes',
      header: 'Notes',
      kind: 'text',
      width: 40,
      synonyms: ['note', 'remarks'],
    },
  ],
} as const satisfies TableSchema;
