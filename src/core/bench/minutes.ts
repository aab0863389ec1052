/** How long the bench takes, by the shop's own rates. */
import { firstOfEach, ratesFor, unitsOf } from '../quote/rates';
import type { Rate } from '../quote/types';
import { worksOf } from '../quote/works';
import type { ClubPlan } from '../plan/types';
import type { TakeOff, TimedWay } from './types';

/** Minutes of each club and of what is done once a job. */
export interface BenchMinutes {
  readonly byRow: ReadonlyMap<number, number>;
  readonly job: number;
  readonly missing: readonly string[];
}

export interface TimedClub {
  readonly plan: ClubPlan;
  readonly takeOff: TakeOff;
  readonly lengthChanged: boolean;
  readonly ownGrip: boolean;
}

/**
 * Minutes of everything that a quote charges, its weights among it.
 *
 * Formula: minutes of one × what the rate is counted by. A rate without minutes counts as none, and is named.
 */
export function benchMinutes(
  clubs: readonly TimedClub[],
  listed: readonly Rate[],
  ways: readonly TimedWay[],
): BenchMinutes {
  const rates = firstOfEach(listed, ({ work }) => work);
  const missing = new Set<string>();
  const perJob = new Set<Rate>();
  const minutesOf = (name: string, minutes: number | undefined): number => {
    if (minutes === undefined) missing.add(name);
    return minutes ?? 0;
  };
  const byRow = new Map<number, number>();
  for (const club of clubs) {
    let sum = 0;
    for (const { use, needed, layers = 0, grams = 0 } of worksOf(club.plan, club, rates)) {
      const found = ratesFor(rates, use, club.plan.kind);
      if (found.length === 0 && needed !== undefined) missing.add(needed);
      for (const rate of found) {
        if (rate.per === 'job') perJob.add(rate);
        else sum += unitsOf(rate, { layers, grams }) * minutesOf(rate.work, rate.minutes);
      }
    }
    const { remedy } = club.plan;
    if (remedy && remedy.grams > 0) sum += minutesOf(remedy.way, wayMinutes(ways, remedy.way));
    byRow.set(club.plan.row, sum);
  }
  const job = [...perJob].reduce((sum, rate) => sum + minutesOf(rate.work, rate.minutes), 0);
  return { byRow, job, missing: [...missing] };
}

function wayMinutes(ways: readonly TimedWay[], name: string): number | undefined {
  return ways.find((way) => way.name.toLowerCase() === name.toLowerCase())?.minutes;
}
