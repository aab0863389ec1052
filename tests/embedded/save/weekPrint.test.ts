import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_MONDAY } from '../../../src/tryout/demo/demoDays';
import { runBatch } from '../../../src/workbook/batch';
import { fillWeek } from '../../../src/workbook/fillWeek';
import { readShop } from '../../../src/workbook/shop';
import { OFFICE_MS, officeCopy, officeIsThere, type OfficeCopy } from './office';

describe.runIf(officeIsThere)('LibreOffice, given the work ahead', () => {
  let copy: OfficeCopy;
  beforeAll(async () => {
    copy = await officeCopy(['Week'], async (port) => {
      const going = {
        step: () => undefined,
        signal: new AbortController().signal,
        rest: () => Promise.resolve(),
      };
      const asked = { jobs: ['R-201', 'R-203'], quote: true, reserve: true, plan: false, today: DEMO_MONDAY };
      const done = await runBatch(port, asked, going);
      expect([...(done.quotes?.values() ?? [])].map((end) => end.done)).toEqual([true, true]);
      const end = await fillWeek(port, await readShop(port), { today: DEMO_MONDAY });
      expect(end).toMatchObject({ done: true, sheet: 'Week', jobs: 6 });
    });
  }, OFFICE_MS);
  afterAll(() => copy.forget());

  test(
    'reads each week with its jobs, and what is short',
    () => {
      const text = copy.texts()('Week');
      expect(text).toMatch(/Week of,2026-05-11,[\s\S]*2026-05-15,R-201,Alex Marsh,Open,,1042,13,/);
      expect(text).toMatch(/Week of,2026-05-18,/);
      expect(text).toMatch(/R-202,Robin Field,Open,OS-M60 × 4,not issued,8,\d+,/);
    },
    OFFICE_MS,
  );

  test('prints it on one sheet of paper', () => expect(copy.papers()).toBe(1), OFFICE_MS);
});
