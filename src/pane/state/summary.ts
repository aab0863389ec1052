/** What a set comes to: how many clubs stand how, and what goes on them. */
import type { ClubPlan, SetPlan, Verdict } from '../../core/index';

/** Best first: the order of the summary and of nothing else. */
export const VERDICT_ORDER: readonly Verdict[] = ['within', 'likely', 'cannotTell', 'out', 'notHeld', 'unknown'];

export interface Summary {
  readonly clubs: number;
  /** Only verdicts that occur, best first. */
  readonly counts: readonly { readonly verdict: Verdict; readonly clubs: number }[];
  readonly headGrams: number;
  readonly buttGrams: number;
  readonly grips: number;
}

function gramsAt(end: 'head' | 'butt', clubs: readonly ClubPlan[]): number {
  const grams = clubs.reduce((sum, { remedy }) => sum + (remedy?.end === end ? remedy.grams : 0), 0);
  // Steps of half a gram and the like: what is left of binary fractions must not be read.
  return Math.round(grams * 100) / 100;
}

export function summarise(plan: SetPlan): Summary {
  return {
    clubs: plan.clubs.length,
    counts: VERDICT_ORDER.map((verdict) => ({
      verdict,
      clubs: plan.clubs.filter((club) => club.verdictAfter === verdict).length,
    })).filter((count) => count.clubs > 0),
    headGrams: gramsAt('head', plan.clubs),
    buttGrams: gramsAt('butt', plan.clubs),
    grips: [...plan.needed.values()].reduce((sum, count) => sum + count, 0),
  };
}
