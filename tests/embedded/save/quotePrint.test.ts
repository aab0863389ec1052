/** An issued quote, and options beside each other, in the copy. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fillOptions } from '../../../src/workbook/fillOptions';
import { issueQuote } from '../../../src/workbook/issueQuote';
import { readShop } from '../../../src/workbook/shop';
import { OFFICE_MS, officeCopy, officeIsThere, type OfficeCopy } from './office';

const QUOTE = 'Quote 1042';
const OPTIONS = 'Options R-201';

describe.runIf(officeIsThere)('LibreOffice, given an issued quote', () => {
  let copy: OfficeCopy;
  let total = '';
  beforeAll(async () => {
    copy = await officeCopy([QUOTE, OPTIONS], async (port) => {
      const terms = { issued: 46_120 };
      const issued = await issueQuote(port, { what: { job: 'R-201' }, terms, shown: null });
      if (!issued.done) throw new Error(`not issued: ${issued.reason}`);
      total = (Number(issued.total.minor) / 100).toFixed(2);
      const options = [
        { name: 'As it is', choices: {} },
        { name: 'With tape', choices: { layers: 3, exceptPutters: true } },
        { name: 'Other grip', choices: { newItem: 'OS-M60', exceptPutters: true } },
      ];
      await fillOptions(port, await readShop(port), { job: 'R-201', terms, options });
    });
  }, OFFICE_MS);
  afterAll(() => copy.forget());

  test(
    'shows the amounts as they were issued, with the decimals of the currency',
    () => {
      const text = copy.texts();
      const lines = text(QUOTE).split('\n');
      expect(lines.find((line) => line.startsWith('"Total, EUR"'))).toBe(`"Total, EUR",,,,${total}`);
      expect(lines.some((line) => line.endsWith(',2026-04-08'))).toBe(true);
      expect(text(OPTIONS)).toContain(`"Total, EUR",${total}`);
    },
    OFFICE_MS,
  );

  test('prints each on one sheet of paper', () => expect(copy.papers()).toBe(2), OFFICE_MS);
});
