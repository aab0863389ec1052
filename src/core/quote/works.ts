/** What is done to a club: the quote charges it, the ticket and SETMINUTES time it, all by the same list. */
import type { ClubPlan } from '../plan/types';
import { fittingUse, includedLayers, NEEDED, ratesFor } from './rates';
import type { ClubWork, Rate, RateUse } from './types';

/** A work, what it is counted from, and how it is called where no rate is found for it but must be. */
export interface AskedWork {
  readonly use: RateUse;
  readonly layers?: number;
  readonly grams?: number;
  readonly needed?: string;
}

export type WorkedPlan = Pick<ClubPlan, 'kind' | 'layers' | 'lowerLayers' | 'hold' | 'remedy'>;

/**
 * Works on one club: fitting, layers beyond what fitting includes (lower-hand ones are layers too), the old grip taken off whole or thrown
 * away, weighing and reading where a reading is held, the weight and the work that put it right, length change, what every club or job has.
 */
export function worksOf(
  plan: WorkedPlan,
  { takeOff = 'cutOff', lengthChanged = false, ownGrip = false }: ClubWork,
  rates: readonly Rate[],
): readonly AskedWork[] {
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
