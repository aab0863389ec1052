/** What is done with the shelves. */
import { dayOf } from '../../../workbook/days';
import { fillOrder } from '../../../workbook/fillOrder';
import { fillPick } from '../../../workbook/fillPick';
import {
  moveStock,
  releaseJobs,
  reserveJobs,
  useStock,
  type MoveAsked,
  type StockAct,
} from '../../../workbook/stockJobs';
import type { InTheWay } from '../../../workbook/outcomes';
import { reservedLines, sayMoved, sayReleased, sayReserved, sayStockPage, sayUsed } from '../../../words/stock';
import type { Deed } from '../../state/deed';
import { STOCK_WORDS } from './stockWords';

function act(agreed: InTheWay | null): StockAct {
  return { today: dayOf(new Date()), agreed };
}

/** @param jobs null: every open job */
export function reserveDeed(jobs: readonly string[] | null): Deed {
  return {
    doing: 'Reserving…',
    done: 'Reserved',
    failed: 'Nothing was reserved',
    run: async (port, _shop, over) => {
      const end = await reserveJobs(port, jobs, act(over));
      const list = reservedLines(end);
      const idle = end.done && end.movements.length === 0;
      const headline = idle ? STOCK_WORDS.nothingToReserve : undefined;
      return { end, text: sayReserved(end), list, partly: list.length > 0, ...(headline ? { headline } : {}) };
    },
  };
}

export function useDeed(job: string): Deed {
  return {
    doing: 'Taking it from stock…',
    done: 'Taken from stock',
    failed: 'Nothing was taken from stock',
    run: async (port, _shop, over) => {
      const end = await useStock(port, job, act(over));
      const already = end.done && end.movements.length === 0;
      return { end, text: sayUsed(end), ...(already ? { headline: STOCK_WORDS.takenAlready } : {}) };
    },
  };
}

/** @param jobs null: what is reserved for nobody */
export function releaseDeed(jobs: readonly string[] | null): Deed {
  return {
    doing: 'Releasing…',
    done: 'Released',
    failed: 'Nothing was released',
    run: async (port, _shop, over) => {
      const end = await releaseJobs(port, jobs, act(over));
      return { end, text: sayReleased(end) };
    },
  };
}

/** @param entered called once it stands in the workbook, so that it is not entered again */
export function moveDeed(asked: MoveAsked, entered: () => void): Deed {
  return {
    doing: 'Entering it…',
    done: 'Entered',
    failed: 'It was not entered',
    run: async (port, _shop, over) => {
      const end = await moveStock(port, asked, act(over));
      if (end.done) entered();
      return { end, text: sayMoved(end) };
    },
  };
}

export function orderDeed(): Deed {
  return {
    doing: 'Filling the order…',
    done: 'Order filled',
    failed: 'The order was not filled',
    run: async (port, shop, over) => {
      const end = await fillOrder(port, shop, { agreed: over ?? undefined });
      return { end, text: sayStockPage(end, 'Order') };
    },
  };
}

/** @param jobs null: every open job */
export function pickDeed(jobs: readonly string[] | null): Deed {
  return {
    doing: 'Filling the pick list…',
    done: 'Pick list filled',
    failed: 'The pick list was not filled',
    run: async (port, shop, over) => {
      const end = await fillPick(port, shop, { jobs, agreed: over ?? undefined });
      return { end, text: sayStockPage(end, 'Pick list') };
    },
  };
}
