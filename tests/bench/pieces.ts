/** How long a page would be kept from taking a keystroke: the longest piece of work between two turns of the event loop. */
import { lesser, spentBetween, spentNow } from '../simulated/spent';
import type { Spent } from '../simulated/spent';

/** What was not ours, so far. */
export type NotOurs = () => Spent;

/** A turn as short as this, milliseconds, found nothing to do. */
const IDLE_MS = 0.1;

interface Watched<T> {
  readonly answer: T;
  /** Work in all, milliseconds. */
  readonly ms: number;
  readonly longestMs: number;
}

/** Does something and measures its work and its longest piece: of what passed and what was computed, the lesser. */
export async function watched<T>(act: () => Promise<T> | T, notOurs: NotOurs): Promise<Watched<T>> {
  let [ms, longestMs] = [0, 0];
  let watching = true;
  const nextTurn = () => new Promise((done) => setImmediate(done));
  await nextTurn();
  let last = spentNow();
  let theirs = notOurs();
  const turn = (): void => {
    const [now, notOursNow] = [spentNow(), notOurs()];
    const piece = lesser(spentBetween(spentBetween(theirs, notOursNow), spentBetween(last, now)));
    if (piece >= IDLE_MS) ms += piece;
    longestMs = Math.max(longestMs, piece);
    [last, theirs] = [now, notOursNow];
  };
  const turns = (): void => {
    turn();
    if (watching) setImmediate(turns);
  };
  setImmediate(turns);
  const answer = await act();
  turn();
  watching = false;
  await nextTurn();
  return { answer, ms, longestMs };
}
