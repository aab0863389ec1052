/** Forty clubs of one job, as a program that shares nothing with ours prints them: no label is cut by a page; only where that is installed. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readClubList } from '../../../src/workbook/clubList';
import { fillLabels } from '../../../src/workbook/fillHandOver';
import { fillIntake } from '../../../src/workbook/fillIntake';
import { fillTicket } from '../../../src/workbook/fillTicket';
import { readShop } from '../../../src/workbook/shop';
import { startJob } from '../../../src/workbook/startJob';
import { OFFICE_MS, officeCopy, officeIsThere, type OfficeCopy } from './office';

const JOB = 'R-900';
const SHEETS = [`Labels ${JOB}`, `Ticket ${JOB}`, `Intake ${JOB}`];
const CLUBS = readClubList('38 x 7 iron, Driver, Putter').clubs;

describe.runIf(officeIsThere)('LibreOffice, given forty clubs', () => {
  let copy: OfficeCopy;
  beforeAll(async () => {
    copy = await officeCopy(SHEETS, async (port) => {
      const last = CLUBS.map(({ name }) => {
        const grip = { item: 'TB-S60', layers: 2, lowerLayers: undefined, targetDiameter: undefined };
        return { club: name, job: 'R-1', done: true, day: 46000, ...grip };
      });
      const asked = { customer: 'Alex Marsh', due: null, today: 46153, hand: null, firstTag: '', authorisedBy: '' };
      await startJob(port, { ...asked, job: JOB, suggested: null, clubs: CLUBS, last });
      const shop = await readShop(port);
      const ends = [
        await fillLabels(port, shop, { job: JOB }),
        await fillTicket(port, await readShop(port), { job: JOB }),
        await fillIntake(port, await readShop(port), { job: JOB }),
      ];
      expect(ends).toMatchObject(SHEETS.map((sheet) => ({ done: true, sheet })));
    });
  }, OFFICE_MS);
  afterAll(() => copy.forget());

  test(
    'prints labels whole: each has all its lines on one page',
    () => {
      const pages = copy.pages().filter((text) => text.includes(`Job ${JOB}, Alex Marsh`) && !text.includes('Layers'));
      expect(pages.length).toBeGreaterThan(1);
      const count = (text: string, what: RegExp): number => text.match(what)?.length ?? 0;
      const labels = pages.map((text) => ({
        names: count(text, /7 iron no\. \d+|Driver|Putter/g),
        jobs: count(text, new RegExp(`Job ${JOB}, Alex Marsh`, 'g')),
        grips: count(text, /TB-S60/g),
      }));
      // three side by side on each page, the last but for one label
      expect(labels.slice(0, -1).every(({ names }) => names % 3 === 0)).toBe(true);
      for (const { names, jobs, grips } of labels) expect([jobs, grips]).toEqual([names, names]);
      expect(labels.reduce((sum, { names }) => sum + names, 0)).toBe(40);
    },
    OFFICE_MS,
  );
});
