/** Ticket, labels and slip in the copy, read and printed by a program that shares nothing with ours; only where that is installed. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fillLabels, fillSlip } from '../../../src/workbook/fillHandOver';
import { fillTicket } from '../../../src/workbook/fillTicket';
import { readShop } from '../../../src/workbook/shop';
import { OFFICE_MS, officeCopy, officeIsThere, type OfficeCopy } from './office';

const [TICKET, LABELS, SLIP] = ['Ticket R-201', 'Labels R-201', 'Pick-up R-205'];

describe.runIf(officeIsThere)('LibreOffice, given what the bench prints', () => {
  let copy: OfficeCopy;
  beforeAll(async () => {
    copy = await officeCopy([TICKET, LABELS, SLIP], async (port) => {
      const ends = [
        await fillTicket(port, await readShop(port), { job: 'R-201' }),
        await fillLabels(port, await readShop(port), { job: 'R-201' }),
        await fillSlip(port, await readShop(port), { job: 'R-205' }),
      ];
      const ours = [TICKET, LABELS, SLIP];
      expect(ends).toMatchObject(ours.map((sheet) => ({ done: true, sheet })));
    });
  }, OFFICE_MS);
  afterAll(() => copy.forget());

  test(
    'reads what stands on each',
    () => {
      const text = copy.texts();
      expect(text(TICKET)).toMatch(
        /6 iron \(first\).*TB-S60.*2 layers of 10\.5 in.*Lead tape, head, 37\.5 in.*D1\.9 ± 0\.9/,
      );
      expect(text(TICKET)).toMatch(/29 CFR 1910\.242\(b\)[\s\S]*29 CFR 1910\.1025/);
      expect(text(LABELS).match(/Job R-201, Alex Marsh/g)).toHaveLength(13);
      expect(text(SLIP)).toMatch(/8 iron,OS-S58,3,D4\.2,448\.1/);
    },
    OFFICE_MS,
  );

  test(
    'prints a full bag’s ticket, its labels and a slip on one sheet of paper each',
    () => {
      expect(copy.papers()).toBe(3);
    },
    OFFICE_MS,
  );
});
