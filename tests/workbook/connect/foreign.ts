/** An invented shop's workbook as shops have them: nothing in it was made for us. */
import type { Seen } from '../../../src/workbook/port';
import type { MemoryPort } from '../memoryPort';

const SIZES = ['Std', 'Mid', 'Jumbo', 'Std', 'Undersize'] as const;

/** Grips under a title and two rows of headings, in ounces and millimetres, with a sum below. */
function gripRows(): Seen[][] {
  return Array.from({ length: 24 }, (_, at) => {
    const grams = 44 + ((at * 7) % 19);
    const core = at % 3 === 2 ? '.580R' : '.600R';
    const upper = 22.9 + ((at * 5) % 7) * 0.4;
    return [
      `KF-${String(100 + at)}`,
      `Larch ${['cord', 'soft', 'wrap', 'plain'][at % 4] ?? ''}`,
      SIZES[at % SIZES.length] ?? 'Std',
      core,
      Number((grams / 28.349523125).toFixed(2)),
      Number(upper.toFixed(1)),
      Number((upper - 2.1).toFixed(1)),
      '10 1/2"',
      at % 5 === 0 ? null : (at * 3) % 17,
      `€ ${(6.5 + (at % 6)).toFixed(2).replace('.', ',')}`,
      at % 2 ? 'Auer & Söhne' : '=Nordhandel',
      at === 7 ? { error: '#N/A' } : 'rack 3',
    ];
  });
}

const GRIP_HEADINGS: readonly (readonly Seen[])[] = [
  [null, null, null, null, null, 'Ø mm', null, null, null, null, null, null],
  ['Art. no', 'Descripton', 'Size', 'Core', 'Wt (oz)', 'upper', 'lower', 'Length', 'Qty', 'Retail', 'Vendor', 'Where'],
];

const CLUBS: readonly (readonly Seen[])[] = [
  ['Ticket', 'Club', 'Type', 'Len.', 'Butt', 'SW', 'Total wt', 'Old grip', 'Old grip wt', 'Fitted with', 'Tape'],
  [4711, 'Driver', 'Driver', 45.25, 0.6, 'D3', 312, 'KF-100', 44, null, null],
  [4711, '5 wood', 'Wood', 42.5, 0.6, 'D2', 335, 'KF-100', 44, null, null],
  [4711, '6 iron', 'Iron', 37.5, 0.6, 'D2', 408, 'KF-100', 44, null, null],
  [4711, '8 iron', 'Iron', 36.5, 0.6, 'D1.5', 421, 'KF-100', 44, null, null],
  [4711, 'PW', 'Wedge', 35.5, 0.6, 'D3', 440, 'KF-100', 44, null, null],
];

export function typeForeign(port: MemoryPort): void {
  port.addSheet('Lager 2026');
  port.type('Lager 2026', 0, 1, 'Grips on the wall — Bestand');
  const grips = gripRows();
  port.typeRows('Lager 2026', 2, 1, [...GRIP_HEADINGS, ...grips]);
  port.typeRows('Lager 2026', 4 + grips.length, 1, [['Total', null, null, null, null, null, null, null, 172]]);
  port.merge({ sheet: 'Lager 2026', row: 2, column: 6, rows: 1, columns: 2 });
  port.typeTable('Bags', 'In work', CLUBS);
  port.typeTable('Diary', 'Diary', [
    ['Day', 'What'],
    [46_300, 'window cleaner'],
    [46_301, 'VAT'],
  ]);
}
