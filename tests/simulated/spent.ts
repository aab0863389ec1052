/** Time that something took, by the clock and by the processors. */

/** Milliseconds. A busy machine lengthens the one; other threads of the process, which sweep up memory, the other. */
export interface Spent {
  readonly passed: number;
  readonly computed: number;
}

export const NOTHING_SPENT: Spent = { passed: 0, computed: 0 };

/** Since some moment long ago. */
export function spentNow(): Spent {
  const { user, system } = process.cpuUsage();
  return { passed: performance.now(), computed: (user + system) / 1000 };
}

export function spentBetween(from: Spent, to: Spent): Spent {
  return { passed: to.passed - from.passed, computed: to.computed - from.computed };
}

export function together(one: Spent, other: Spent): Spent {
  return { passed: one.passed + other.passed, computed: one.computed + other.computed };
}

/** What a thread itself took: no more than what passed, and no more than was computed. */
export function lesser({ passed, computed }: Spent): number {
  return Math.min(passed, computed);
}
