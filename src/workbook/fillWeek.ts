/** Filling the work ahead into a sheet of its own, as values to be printed. */
import { fillPage, type MakePage } from './fillPage';
import { jobFacts } from './jobFacts';
import type { InTheWay } from './outcomes';
import type { WorkbookPort } from './port';
import { CLUBS } from './schema';
import { pageSheetName } from './sheetName';
import type { Shop } from './shop';
import { weekOf, type WeekDone } from './week';
import { dressWeek, weekPage } from './weekSheet';
import { WEEK_SHEET } from '../words/week';

/**
 * Writes all open jobs by the week they are due in. Filled again, the page is rewritten in place.
 *
 * @param today as a workbook counts days
 */
export async function fillWeek(
  port: WorkbookPort,
  shop: Shop,
  { today, agreed }: { readonly today: number; readonly agreed?: InTheWay | undefined },
): Promise<WeekDone> {
  let jobs = 0;
  const make: MakePage<Extract<WeekDone, { reason: 'notPlanned' | 'tableMissing' }>> = (tables) => {
    if (!tables.Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    const week = weekOf({ tables, today });
    if (!week.ok) return { done: false, reason: 'notPlanned', issue: week.issue };
    jobs = week.value.jobs;
    const page = weekPage({ shop: jobFacts(tables, null).shop, today: Math.floor(today) }, week.value);
    return {
      cells: page.cells,
      list: page.list,
      key: 'week',
      job: null,
      sheetName: (taken) => pageSheetName('Week', '', taken),
      dress: (at) => dressWeek(at, page),
      label: WEEK_SHEET.title,
    };
  };
  const end = await fillPage(port, shop, make, agreed);
  return end.done ? { ...end, jobs } : end;
}
