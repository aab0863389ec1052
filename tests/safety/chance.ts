/**
 * How random workbooks are drawn: the same ones each time, so that whether a change may land is no matter of luck. Whoever hunts for rare
 * cases sets `SETWRIGHT_RUNS`, so many of them in each test, and `SETWRIGHT_SEED`, a number or `random`.
 */
import type { Parameters } from 'fast-check';

const FIXED = 20_260_303;

/** Whether someone hunts for rare cases. */
export const isHunt = (): boolean => Boolean(process.env.SETWRIGHT_RUNS);

/** @param usualRuns how many are drawn unless the environment says otherwise */
export function drawn<T>(usualRuns: number): Parameters<T> {
  const { SETWRIGHT_RUNS: runs, SETWRIGHT_SEED: seed } = process.env;
  const numRuns = runs ? whole('SETWRIGHT_RUNS', runs) : usualRuns;
  // A case that is found is found for good; making it smaller takes many times as long, and is asked for by its seed.
  const how = { numRuns, endOnFailure: true } as const;
  if (seed === 'random') return how;
  return { ...how, seed: seed ? whole('SETWRIGHT_SEED', seed) : FIXED };
}

function whole(name: string, text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || (name === 'SETWRIGHT_RUNS' && value < 1)) {
    throw new Error(
      `${name} is ${text}; it must be a whole number${name === 'SETWRIGHT_SEED' ? ' or random' : ' from 1'}.`,
    );
  }
  return value;
}
