/** What is taken off single lines of a job's quote. */
import type { TableSchema } from '../columns';

export const DISCOUNTS = {
  name: 'Discounts',
  later: true,
  room: 40,
  purpose: 'What is taken off single lines of a quote; Jobs has what is taken off the grips or the whole job.',
  columns: [
    {
      key: 'job',
      header: 'Job',
      kind: 'text',
      needed: true,
      width: 9,
      format: '@',
      synonyms: ['job no', 'job number'],
    },
    { key: 'line', header: 'Line', kind: 'text', needed: true, width: 32, format: '@', synonyms: ['item', 'work'] },
    {
      key: 'percent',
      header: 'Percent (%)',
      unit: '%',
      kind: 'number',
      low: 0,
      high: 100,
      width: 11,
      synonyms: ['percent', 'rate'],
    },
    { key: 'amount', header: 'Amount', kind: 'money', low: 0, width: 10, format: '#,##0.00#', synonyms: [] },
    { key: 'reason', header: 'Reason', kind: 'text', width: 32, synonyms: ['why'] },
  ],
} as const satisfies TableSchema;
