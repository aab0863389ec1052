/** How long the bench takes, by the shop's own rates. */
import { fittingUse, includedLayers, NEEDED, ratesFor } from '../quote/rates';
import type { Rate, RateUnit, RateUse } from '../quote/types';
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

interface Counted {
  readonly use: RateUse;
  readonly layers?: number;
  readonly grams?: number;
  /** Named as missing where no rate has it. */
  readonly needed?: string;
}

/**
 * Minutes by the same rules by which a quote charges: fitting, build-up beyond what fitting includes, old grip taken off whole or thrown
 * away, weighing and reading where a reading is held, the weight and the work that put it right, length change, what every club or job has.
 *
 * Formula: minutes of one × what the rate is counted by. A rate without minutes counts as none, and is named.
 */
export function benchMinutes(
  clubs: readonly TimedClub[],
  rates: readonly Rate[],
  ways: readonly TimedWay[],
): BenchMinutes {
  const missing = new Set<string>();
  const perJob = new Set<Rate>();
  const minutesOf = (name: string, minutes: number | undefined): number => {
    if (minutes === undefined) missing.add(name);
    return minutes ?? 0;
  };
  const byRow = new Map<number, number>();
  for (const club of clubs) {
    let sum = 0;
    for (const work of worksOf(club, rates)) {
      const found = ratesFor(rates, work.use, club.plan.kind);
      if (found.length === 0 && work.needed !== undefined) missing.add(work.needed);
      for (const rate of found) {
        if (rate.per === 'job') perJob.add(rate);
        else sum += countOf(rate.per, work) * minutesOf(rate.work, rate.minutes);
      }
    }
    const { remedy } = club.plan;
    if (remedy && remedy.grams > 0) sum += minutesOf(remedy.way, wayMinutes(ways, remedy.way));
    byRow.set(club.plan.row, sum);
  }
  const job = [...perJob].reduce((sum, rate) => sum + minutesOf(rate.work, rate.minutes), 0);
  return { byRow, job, missing: [...missing] };
}

function worksOf({ plan, takeOff, lengthChanged, ownGrip }: TimedClub, rates: readonly Rate[]): Counted[] {
  const fitting = fittingUse(rates, plan.kind, ownGrip);
  const layers = plan.layers + plan.lowerLayers - includedLayers(ratesFor(rates, fitting, plan.kind));
  const grams = plan.remedy?.grams ?? 0;
  return [
    { use: fitting, needed: NEEDED.fitting },
    ...(layers > 0 ? [{ use: 'buildUp', layers, needed: NEEDED.buildUp } as const] : []),
    ...(takeOff === 'salvage' ? [{ use: 'salvage', needed: NEEDED.salvage } as const] : []),
    ...(takeOff === 'cutOff' ? [{ use: 'disposal' } as const] : []),
    ...(plan.hold === 'nothing' ? [] : [{ use: 'reading' } as const]),
    ...(grams > 0 ? [{ use: 'weight', grams } as const, { use: 'rebalancing', grams } as const] : []),
    ...(lengthChanged ? [{ use: 'length', needed: NEEDED.length } as const] : []),
    { use: 'everyClub' },
    { use: 'everyJob' },
  ];
}

function countOf(per: Exclude<RateUnit, 'job'>, { layers = 0, grams = 0 }: Counted): number {
  return { club: 1, layer: layers, gram: grams }[per];
}

function wayMinutes(ways: readonly TimedWay[], name: string): number | undefined {
  return ways.find((way) => way.name.toLowerCase() === name.toLowerCase())?.minutes;
}
