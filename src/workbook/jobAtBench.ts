/** Looking at a job before something is done about it in Checkin: its tables and its plan, or why there is none. */
import { planJob } from './benchJob';
import type { JobNotReady } from './benchDone';
import type { NotDone } from './outcomes';
import { lackingNow } from './lackingNow';
import type { TableSeen, WorkbookPort } from './port';
import type { Planned } from './planTables';
import { CHECKIN, CLUBS } from './schema';
import { shopTables, tableQueries, type ShopTables } from './shop';

export interface AtBench {
  readonly tables: ShopTables;
  readonly checkin: TableSeen;
  readonly planned: Planned;
}

export type NotAtBench = Exclude<NotDone, { reason: 'port' }> | JobNotReady;

/** One read of everything. Throws a PortError. */
export async function lookAtJob(port: WorkbookPort, job: string): Promise<AtBench | NotAtBench> {
  const tables = shopTables(await port.read(tableQueries()));
  const { Checkin: checkin, Clubs } = tables;
  if (!Clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
  if (!checkin) return { done: false, reason: 'tableMissing', table: CHECKIN.name };
  const lacking = lackingNow(CHECKIN, checkin.headers);
  if (lacking.length > 0) return { done: false, reason: 'columnMissing', table: CHECKIN.name, headers: lacking };
  const planned = planJob(tables, job);
  if (!planned) return { done: false, reason: 'noClubs' };
  if (!planned.ok) return { done: false, reason: 'notPlanned', issue: planned.issue };
  return { tables, checkin, planned: planned.value };
}
