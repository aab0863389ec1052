/** What is done with the shelves. */
import { dayOf } from '../../../workbook/days';
import { fillOrder } from '../../../workbook/fillOrder';
import { fillPick } from '../../../workbook/fillPick';
import { moveStock, type MoveAsked } from '../../../workbook/moveStock';
import { cancelOrder, orderThing, placeOrder, takeInOrder } from '../../../workbook/orderJobs';
import type { OrderThing, PlaceAsked } from '../../../workbook/orderJobs';
import { releaseJobs, reserveJobs, useStock } from '../../../workbook/stockJobs';
import type { StockAct } from '../../../workbook/stockWrites';
import type { InTheWay } from '../../../workbook/outcomes';
import { reservedLines, sayMoved, sayOrderEnded, sayPlaced, sayReleased } from '../../../words/stock';
import { sayReserved, sayStockPage, sayUsed } from '../../../words/stock';
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

/** Writes down that what is to be ordered from a supplier has been ordered. @param asked as it was shown */
export function placeDeed(asked: PlaceAsked): Deed {
  return {
    doing: 'Writing the order down…',
    done: 'On order',
    failed: 'Nothing was put on order',
    run: async (port, _shop, over) => {
      const end = await placeOrder(port, asked, act(over));
      const already = end.done && end.movements.length === 0;
      return { end, text: sayPlaced(end), ...(already ? { headline: STOCK_WORDS.alreadyOrdered } : {}) };
    },
  };
}

/** One thing put on order, or taken off one. @param entered called once it stands in the workbook, so that it is not entered again */
export function thingDeed(asked: OrderThing, entered: () => void): Deed {
  return {
    doing: 'Entering it…',
    done: 'Entered',
    failed: 'It was not entered',
    run: async (port, _shop, over) => {
      const end = await orderThing(port, asked, act(over));
      if (end.done) entered();
      return { end, text: sayPlaced(end) };
    },
  };
}

/** All of an order that was to come arrived. */
export function takeInDeed(order: string): Deed {
  return endDeed(order, takeInOrder, {
    doing: 'Entering it…',
    done: 'Entered as arrived',
    failed: 'It was not entered',
  });
}

export function cancelDeed(order: string): Deed {
  return endDeed(order, cancelOrder, {
    doing: 'Cancelling…',
    done: 'Cancelled',
    failed: 'Nothing was cancelled',
  });
}

function endDeed(order: string, ends: typeof cancelOrder, words: Pick<Deed, 'doing' | 'done' | 'failed'>): Deed {
  return {
    ...words,
    run: async (port, _shop, over) => {
      const end = await ends(port, order, act(over));
      const already = end.done && end.movements.length === 0;
      return { end, text: sayOrderEnded(end), ...(already ? { headline: STOCK_WORDS.nothingToCome } : {}) };
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
