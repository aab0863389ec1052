/** A shop's own list of clubs that stands for ours, and what is planned from it. */
import { asked, beginMatch } from '../../../src/pane/view/tools/listsModel';
import { connectList } from '../../../src/workbook/connect/connectList';
import { readList } from '../../../src/workbook/connect/lists';
import { connecting } from '../../../src/workbook/connecting';
import { planTables } from '../../../src/workbook/planTables';
import { setUp } from '../../../src/workbook/setUp';
import { readShop } from '../../../src/workbook/shop';
import type { MemoryPort } from '../memoryPort';
import { STOCK_ROWS } from '../workshop';

/** Connects a list with what is proposed for it, in a workbook that is set up then. */
export async function connectedClubs(bare: MemoryPort, list: Parameters<typeof readList>[1]) {
  const read = await readList(bare, list);
  const match = read && beginMatch(read, 'Clubs');
  if (!match) throw new Error('no match');
  await connectList(bare, asked(match));
  const port = connecting(bare);
  await setUp(port);
  bare.fillTable('Stock', STOCK_ROWS);
  return { bare, port, match };
}

/** The plan of a job, by the tables as they are read. */
export async function plannedJob(port: Parameters<typeof readShop>[0], job: string) {
  const { matrices } = await readShop(port);
  const { Clubs: clubs, Stock: stock, Settings: settings, Weights: weights, Tape: tape } = matrices;
  return planTables({ clubs: clubs ?? [], stock, settings, weights, tape, job });
}
