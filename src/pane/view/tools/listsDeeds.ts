/** What the tab of lists does on the workbook. */
import {
  connectList,
  disconnectList,
  type ConnectAsked,
  type ConnectDone,
} from '../../../workbook/connect/connectList';
import type { Connection } from '../../../workbook/connect/connections';
import { readConnected, type List } from '../../../workbook/connect/lists';
import { followLists, plansReading, type PlanBehind } from '../../../workbook/connect/plansBehind';
import { bareOf } from '../../../workbook/connecting';
import { plansAmiss } from '../../../workbook/lookAfter';
import { sayAmiss } from '../../../words/outcomes';
import type { Deed } from '../../state/deed';
import { fillBeside } from '../../../workbook/fillBeside';
import { asConnected, asked, beginMatch } from './listsModel';
import { followedLines, LISTS_WORDS, sayBeside, sayConnected, sayFollowed, sayLeftBehind } from './listsWords';

/** @param connected called once it is written down */
export function connectDeed(asked: ConnectAsked, connected: () => void): Deed {
  return {
    doing: 'Connecting…',
    done: 'Connected',
    failed: 'Nothing was connected',
    early: true,
    run: async (port) => {
      const end = await connectList(bareOf(port), asked);
      if (end.done) connected();
      return { end, text: sayConnected(end) };
    },
  };
}

/** Rows that go on below plain cells, taken in as *Change* and *Connect* would. */
export function takeRowsInDeed(list: Pick<List, 'table' | 'at'>, connection: Connection): Deed {
  return {
    doing: 'Taking the rows in…',
    done: 'Rows taken in',
    failed: 'No rows were taken in',
    early: true,
    run: async (port) => {
      const bare = bareOf(port);
      const again = await readConnected(bare, list, connection);
      const match = again && beginMatch(again.read, connection.schema.name, again.taken);
      const end: ConnectDone = match
        ? await connectList(bare, asked(asConnected(match, connection)))
        : { done: false, reason: 'listChanged' };
      return { end, text: sayConnected(end) };
    },
  };
}

/** Live plans that still read our own tables, filled again so that they read the lists. */
export function followDeed(behind: readonly PlanBehind[]): Deed {
  return {
    doing: 'Filling the plans…',
    done: 'The plans read your lists',
    failed: 'The plans stand as they were',
    run: async (port, shop) => {
      const end = await followLists(port, shop, behind);
      const amiss = end.done ? await plansAmiss(port, end.filled) : [];
      const partly = end.done && end.left.length + amiss.length > 0;
      return { end, text: sayFollowed(end), partly, list: [...amiss.map(sayAmiss), ...followedLines(end)] };
    },
  };
}

/** What the plan of a job says, beside its clubs. */
export function besideDeed(job: string): Deed {
  return {
    doing: 'Writing the results…',
    done: 'Results written',
    failed: 'No results were written',
    run: async (port, _shop, over) => {
      const end = await fillBeside(port, job, over);
      const same = end.done && end.cells === 0 && end.made.length === 0;
      return { end, text: sayBeside(end), ...(same && { headline: LISTS_WORDS.sameResults }) };
    },
  };
}

export function disconnectDeed(table: string, ended: () => void): Deed {
  return {
    doing: 'Ending the connection…',
    done: 'Connection ended',
    failed: 'The connection stands as it was',
    early: true,
    run: async (port) => {
      const bare = bareOf(port);
      const plans = await plansReading(bare, table);
      const end = await disconnectList(bare, table);
      if (end.done) ended();
      const left = end.done ? plans.map((plan) => sayLeftBehind(plan, table)) : [];
      return { end, text: sayConnected(end), partly: left.length > 0, list: left };
    },
  };
}
