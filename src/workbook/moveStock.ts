/** What else happens to a thing on the shelves: it came, went or was counted. Its count and its rows in the ledger, together or not at all. */
import {
  happenTo,
  placedOrders,
  sharesOf,
  type HappeningKind,
  type Movement,
  type Shelf,
  type Share,
} from '../core/index';
import { readMovements } from './movements';
import { politely } from './polite';
import type { WorkbookPort } from './port';
import { readShelves } from './shelves';
import type { MoveDone } from './stockDone';
import { ledgerIn, lookAtAll, placeOf, readQuantity, unreadable, writeStock, type StockAct } from './stockWrites';

export interface MoveAsked {
  readonly shelf: Shelf;
  readonly item: string;
  readonly kind: HappeningKind;
  /** As typed. */
  readonly quantity: string;
  readonly note: string;
  /** The order that it came on; null: none, undefined: whichever waits for it, the earliest first. */
  readonly order?: string | null | undefined;
}

/** Something came, went or was counted. What came counts for orders that wait for it. */
export async function moveStock(
  port: WorkbookPort,
  asked: MoveAsked,
  { today, agreed = null }: StockAct,
): Promise<MoveDone> {
  return politely(async (): Promise<MoveDone> => {
    const tables = await lookAtAll(port);
    const ledger = ledgerIn(tables);
    if ('done' in ledger) return ledger;
    const shelved = readShelves(tables);
    const place = placeOf(shelved, asked, asked.kind === 'counted');
    if (!place.ok) return unreadable(place.issue);
    const { stocked, table, column } = place.value;
    if (column < 0) return { done: false, reason: 'columnMissing', table: table.name, headers: ['On hand'] };
    const quantity = readQuantity(asked.quantity);
    if (!quantity.ok) return unreadable(quantity.issue);
    const known = readMovements(ledger);
    if (!known.ok) return unreadable(known.issue);
    const { kind, order } = asked;
    const isForOrder = kind === 'arrived' && order !== null;
    const orders = isForOrder ? placedOrders(known.value) : [];
    const shares = sharesOf({ ...stocked, quantity: quantity.value }, orders, order ?? undefined);
    const isOrdered = isForOrder && shares.every((share) => share.order !== undefined);
    const after = happenTo(stocked, { kind, quantity: quantity.value }, isOrdered);
    if (!after.ok) return unreadable(after.issue);
    const { movement, onHand } = after.value;
    const movements = kind === 'arrived' ? shares.map((share) => rowOf(movement, share)) : [movement];
    const supplier = kind === 'sentBack' ? stocked.supplier : undefined;
    const question = await writeStock(
      port,
      {
        ledger,
        movements: supplier === undefined ? movements : movements.map((row) => ({ ...row, supplier })),
        counts: onHand === undefined ? [] : [{ stocked, onHand }],
        shelved,
        today,
        note: asked.note.trim(),
        agreed,
      },
      `${asked.item} ${LABELS[kind]}`,
    );
    return question ?? { done: true, movement, onHand, shares: isForOrder ? shares : [] };
  });
}

const LABELS: Readonly<Record<HappeningKind, string>> = {
  arrived: 'arrived',
  sentBack: 'sent back',
  broughtBack: 'brought back',
  writtenOff: 'written off',
  counted: 'counted',
};

function rowOf(movement: Movement, { order, supplier, quantity }: Share): Movement {
  return { ...movement, quantity, order, supplier: supplier || undefined };
}
