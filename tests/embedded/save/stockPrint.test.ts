/** The order and the pick list in the copy, printed by a program that shares nothing with ours; only where that is installed. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fillOrder } from '../../../src/workbook/fillOrder';
import { fillPick } from '../../../src/workbook/fillPick';
import { readShop } from '../../../src/workbook/shop';
import { OFFICE_MS, officeCopy, officeIsThere, type OfficeCopy } from './office';

const ORDER = 'Order';
const PICK = 'Pick list';

describe.runIf(officeIsThere)('LibreOffice, given an order and a pick list', () => {
  let copy: OfficeCopy;
  beforeAll(async () => {
    copy = await officeCopy([ORDER, PICK], async (port) => {
      const order = await fillOrder(port, await readShop(port));
      const pick = await fillPick(port, await readShop(port), {});
      expect([order, pick]).toMatchObject([
        { done: true, sheet: ORDER },
        { done: true, sheet: PICK },
      ]);
    });
  }, OFFICE_MS);
  afterAll(() => copy.forget());

  test(
    'adds the order up as its lines do',
    () => {
      const lines = copy
        .texts('plain')(ORDER)
        .split('\n')
        .map((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/).map((cell) => cell.replaceAll('"', '')));
      const heads = lines.find((line) => line.includes('Cost')) ?? [];
      const cost = (line: string[]): number => Number(line[heads.indexOf('Cost')]);
      const isLine = (line: string[]): boolean => Number(line[2]) > 0;
      const sum = lines.filter(isLine).reduce((total, line) => total + cost(line), 0);
      const all = lines.find(([first]) => first === 'All orders');
      expect(sum).toBeGreaterThan(100);
      expect(all && cost(all)).toBeCloseTo(sum, 6);
    },
    OFFICE_MS,
  );

  test(
    'prints the order on one sheet of paper, and the pick list no wider than one',
    () => {
      expect(copy.papers()).toBeLessThanOrEqual(3);
    },
    OFFICE_MS,
  );
});
