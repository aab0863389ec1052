/** What the tab of lists does on the workbook. */
import { connectList, disconnectList, type ConnectAsked } from '../../../workbook/connect/connectList';
import { followLists, type PlanBehind } from '../../../workbook/connect/plansBehind';
import { bareOf } from '../../../workbook/connecting';
import { plansAmiss } from '../../../workbook/lookAfter';
import { sayAmiss } from '../../../words/outcomes';
import type { Deed } from '../../state/deed';
import { fillBeside } from '../../../workbook/fillBeside';
import { followedLines, LISTS_WORDS, sayBeside, sayConnected, sayFollowed } from './listsWords';

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
      const end = await disconnectList(bareOf(port), table);
      if (end.done) ended();
      return { end, text: sayConnected(end) };
    },
  };
}
