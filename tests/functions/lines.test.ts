import { describe, expect, test } from 'vitest';
import { lineTax, lineTotal } from '../../src/functions/functions';
import { refusal } from './refusal';

describe('LINETAX and LINETOTAL', () => {
  // By hand: 13 × 6.50 = 84.50; a fifth of it is 16.90. With the tax in it: 84.50 × 20/120 = 14.0833.
  test.each([
    [[13, 6.5, 20], 16.9, 101.4],
    [[13, 6.5, 20, 'Yes'], 14.08, 84.5],
    [[13, '6,50', 20, 'no'], 16.9, 101.4],
    [[3, 0.1, 0], 0, 0.3],
    // 0.05 × 10 % is half a cent: up, or to the even neighbour
    [[1, 0.05, 10], 0.01, 0.06],
    [[1, 0.05, 10, null, null, 'Half to even'], 0, 0.05],
    [[1, 0.19, 10, null, null, 'tax down'], 0.01, 0.2],
    // per cent with its sign, as text; half of one per cent too
    [[13, 6.5, '20 %'], 16.9, 101.4],
    [[1, 100, '0.5%'], 0.5, 100.5],
    [[1, 100, '0,5 %'], 0.5, 100.5],
    // ISO 4217: JPY has no minor unit, KWD three decimals
    [[1, 105, 10, null, 'JPY'], 11, 116],
    [[1, 1.005, 10, null, 'kwd'], 0.101, 1.106],
  ] as const)('%j: tax %d, in all %d', (args, tax, total) => {
    const cells = args as unknown as Parameters<typeof lineTax>;
    expect([lineTax(...cells), lineTotal(...cells)]).toEqual([tax, total]);
  });

  test('a blank cell is 0, as null and as 0', () => {
    for (const blank of [null, 0]) {
      expect(lineTax(blank, 6.5, 20)).toBe(0);
      expect(lineTotal(2, 6.5, blank, blank, blank, blank)).toBe(13);
    }
  });

  test.each([
    [['x', 6.5, 20], 'Quantity is “x”, not a number'],
    [[-1, 6.5, 20], 'Quantity is −1'],
    [[1, '1,234', 20], 'can be read in two ways'],
    [[1, 6.5, 120], 'Tax (%) is 120'],
    // a cell typed as 20 % holds 0.2
    [[13, 6.5, 0.2], 'Tax (%) is 0.2, which can be read in two ways. Give 20 if 20 % is meant'],
    [[13, 6.5, '0.2'], 'if so little is meant, 0.2 % as text'],
    [[13, 6.5, '120 %'], 'Tax (%) is “120 %”. Give 0 to 100'],
    [[1, 6.5, 20, 'maybe'], 'included is “maybe”'],
    [[1, 6.5, 20, null, 'XXQ'], 'Currency is “XXQ”'],
    [[1, 6.5, 20, null, null, 'up'], 'rounding is “up”'],
    [[1, undefined, 20], 'Price is blank'],
  ] as const)('%j is refused with a sentence', (args, sentence) => {
    const cells = args as unknown as Parameters<typeof lineTax>;
    const refused = refusal(() => lineTax(...cells));
    expect(refused).toMatchObject({ code: '#VALUE!', message: expect.stringContaining(sentence) as string });
    expect(refusal(() => lineTotal(...cells))).toEqual(refused);
  });
});
