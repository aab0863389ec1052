/** Looking at a large list of the shop's own: what matching its columns, counting what cannot be read and turning it into ours take. */
import { drained } from '../../src/core/index';
import { bestTable, likenessOf } from '../../src/workbook/connect/likeness';
import { isStandIn, standIn } from '../../src/workbook/connect/standIn';
import { countUnread } from '../../src/workbook/connect/unread';
import type { ColumnMatch } from '../../src/workbook/connect/types';
import type { Seen } from '../../src/workbook/port';
import { readTable } from '../../src/workbook/records';
import { STOCK } from '../../src/workbook/schema';
import { figures, medians, printTable } from './measure';

const ROWS = 40_000;

export const HEADINGS = [
  ...['Art. No.', 'Grip name', 'Size', 'Core Ø mm', 'Wt (oz)', 'OD mm', 'Grip len (cm)', 'Profile', 'Cost', 'Retail'],
  ...['Qty on hand', 'Min qty', 'Pack qty', 'Vendor', 'Bin', 'Colour', 'Season', 'Last ordered', 'Barcode', 'Remarks'],
];

/** Invented grips in millimetres and ounces, 20 columns of which six are none of ours. */
export function list(): Seen[][] {
  return [
    HEADINGS,
    ...Array.from({ length: ROWS }, (_, at): Seen[] => [
      `G-${at}`,
      `Model ${at % 400}`,
      ['Std', 'Mid', 'Jumbo'][at % 3] ?? null,
      at % 2 ? 14.7 : 15.2,
      (160 + (at % 60)) / 100,
      (225 + (at % 25)) / 10,
      26.7,
      at % 5 ? 'Round' : 'Rib',
      (300 + (at % 500)) / 100,
      (700 + (at % 900)) / 100,
      at % 40,
      4,
      12,
      'Nordholm',
      `B${at % 90}`,
      ['Black', 'Green', 'Red'][at % 3] ?? null,
      2020 + (at % 7),
      45_000 + (at % 1500),
      4_000_000_000_000 + at,
      null,
    ]),
  ];
}

export function matchesOf(rows: readonly (readonly Seen[])[]): ColumnMatch[] {
  const { proposals } = likenessOf(STOCK, rows);
  return proposals.flatMap(({ key, position, unit }): ColumnMatch[] =>
    position === null ? [] : [{ key, position, unit, heading: HEADINGS[position] ?? '' }],
  );
}

export function benchConnect(): void {
  const rows = list();
  const matches = matchesOf(rows);
  const body = rows.slice(1);
  const at = { sheet: 'List', row: 0, column: 0, rows: rows.length, columns: HEADINGS.length };
  const table = { name: 'List', at, headers: HEADINGS, rows: body, protected: false, filtered: false };
  const connected = () => standIn({ schema: STOCK, list: 'List', columns: matches }, table);
  const seen = connected();
  const ours = isStandIn(seen) ? [seen.headers, ...seen.rows] : [];
  const reading = 'readTable of the same rows under our headings';
  const results = medians(
    [
      { name: reading, run: () => readTable(STOCK, ours) },
      { name: 'likenessOf', run: () => likenessOf(STOCK, rows) },
      { name: 'bestTable', run: () => bestTable(rows) },
      { name: 'standIn', run: connected },
      { name: 'countUnread', run: () => drained(countUnread(STOCK, matches, body)) },
    ],
    7,
  );
  printTable(
    `Connecting a list of ${ROWS} rows and ${HEADINGS.length} columns, ${matches.length} of them ours`,
    ['', 'ms', 'to readTable'],
    [...results].map(([name, ms]) => [name, figures(ms), `× ${figures(ms / (results.get(reading) ?? NaN))}`]),
  );
}
