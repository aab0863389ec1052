/** How long a page would be kept from taking a keystroke: the longest piece of work between two turns of the event loop. */

/** Time in one piece that is not ours, so far. */
export type NotOurs = () => number;

function computed(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** A turn as short as this, milliseconds, found nothing to do. */
const IDLE_MS = 0.1;

interface Watched<T> {
  readonly answer: T;
  /** Computing in all, milliseconds. */
  readonly ms: number;
  readonly longestMs: number;
}

/**
 * Does something and measures what it computes and its longest piece. For the piece the lesser of passed and computed time counts: a
 * busy machine lengthens the one, other threads of this process (the sweeping up of memory) the other.
 */
export async function watched<T>(act: () => Promise<T> | T, notOurs: NotOurs): Promise<Watched<T>> {
  let [ms, longestMs] = [0, 0];
  let watching = true;
  const nextTurn = () => new Promise((done) => setImmediate(done));
  await nextTurn();
  let [wall, cpu, theirs] = [performance.now(), computed(), notOurs()];
  const turn = (): void => {
    const now = [performance.now(), computed(), notOurs()] as const;
    const [passed, own] = [now[0] - wall, now[1] - cpu - (now[2] - theirs)];
    if (own >= IDLE_MS) ms += own;
    longestMs = Math.max(longestMs, Math.min(passed - (now[2] - theirs), own));
    [wall, cpu, theirs] = now;
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
