/** Words of the stock's screen; sentences about what is on the shelves stand in `src/words/stock.ts`. */
import type { OrderedLine, PlacedOrder, SupplierOrder } from '../../../core/index';
import { bareText, itemText, quantityText } from '../../../words/stock';
import { counted } from '../../words';

export const STOCK_WORDS = {
  title: 'Needs of open jobs',
  how: 'What is reserved stays with its job; what is free, or on order, goes to the job that is due first.',
  working: (done: number, of: number) => `Job ${done} of ${of}`,
  caption: 'What is there against what open jobs need, what is short first',
  item: 'Item',
  needed: 'Needed',
  onHand: 'On hand',
  free: 'Free',
  left: 'Left',
  onOrder: 'On order',
  notCounted: 'not counted',
  nothingNeeded: 'No open job needs anything from the shelves.',
  allThere: 'Everything that open jobs need is there.',
  allComing: 'Nothing is short: what open jobs lack is on order.',
  short: (items: number) => `${counted(items, 'item')} short:`,
  low: (items: number) => `${counted(items, 'item')} at the reorder point or below, even with what is on order.`,
  reserve: (job: string) => `Reserve ${job}`,
  reserveAll: 'Reserve all open jobs',
  release: (job: string) => `Release ${job}`,
  use: (job: string) => `Take what ${job} used`,
  nothingToReserve: 'Nothing to reserve',
  takenAlready: 'Taken already',
  releaseIdle: 'Release these',
  stranded: 'Reserved for nobody',
  toOrder: 'To order',
  packs: 'Packs',
  toOrderHow: 'Whole packs. Press once it is sent off: from then on it counts as on order.',
  nothingToOrder: 'Nothing is to be ordered.',
  noSupplier: 'No supplier named',
  ordered: (supplier: string) => (supplier === '' ? 'Ordered' : `Ordered from ${supplier}`),
  placed: 'On order',
  nothingPlaced: 'Nothing is on order.',
  whichOrder: 'Order',
  placedCaption: 'What of the order is still to come',
  pieces: 'Ordered',
  arrivedSoFar: 'Arrived',
  toCome: 'To come',
  allArrived: 'The rest arrived',
  cancelRest: 'Cancel the rest',
  partHow: 'Part of it is entered below, under Arrived.',
  alreadyOrdered: 'Nothing to order',
  nothingToCome: 'Nothing to come',
  sheets: 'Sheets',
  order: 'Fill order',
  pick: 'Fill pick list',
  pickJob: (job: string) => `Pick list of ${job}`,
  move: 'Something else happened',
  what: 'What',
  kinds: {
    arrived: 'Arrived',
    counted: 'Counted',
    writtenOff: 'Spoiled',
    sentBack: 'Sent back to supplier',
    broughtBack: 'Brought back by client',
    ordered: 'Ordered',
    cancelled: 'Taken off an order',
  },
  orderNo: 'Order no',
  nextNumber: 'the next number',
  anyOrder: 'The earliest',
  noOrder: 'None',
  ofOrder: (order: string, toCome: string) => `${order}, ${toCome} to come`,
  which: 'Item',
  quantity: 'How many',
  found: 'There are',
  units: { grip: 'pieces', tape: 'yd', weight: 'g', solvent: 'ml' },
  note: 'Note',
  noteExample: 'part of an order, torn …',
  enter: 'Enter it',
  chooseItem: 'Choose an item',
  chooseFirst: 'Choose an item and say how many.',
  noTable: 'This workbook has no table Movements yet: reservations and what is used are kept there.',
  mend: 'To mend first',
} as const;

/** What is to be ordered from one supplier, line by line. @example [['OS-M60', '1', '13 pieces']] */
export function orderCells({ lines }: SupplierOrder): string[][] {
  return lines.map(({ item, shelf, quantity, packs }) => [item, String(packs), quantityText(shelf, quantity)]);
}

/** An order among others, in a narrow field. @example '3, Larch Supply' */
export function orderChoice({ order, supplier }: PlacedOrder): string {
  return supplier === '' ? order : `${order}, ${supplier}`;
}

/** A line of an order that was placed, as the cells of its row. */
export function placedCells({ item, shelf, ordered, arrived, cancelled, outstanding }: OrderedLine): string[] {
  const off = cancelled > 0 ? ` −${bareText(shelf, cancelled)}` : '';
  const shown = (quantity: number): string => bareText(shelf, quantity);
  return [itemText(shelf, item), `${shown(ordered)}${off}`, shown(arrived), shown(outstanding)];
}
