/** A set laid out for trying grips on it: the same plan as anywhere else, of any club with any grip. */
import { planClub, tryClub, type Bench, type Tryout } from '../plan/planClub';
import { keyed, learn } from '../plan/planSet';
import { notesTogether } from '../plan/together';
import type { Club, ClubPlan, Grip, PlanInput } from '../plan/types';
import { fewestLayers } from './fits';

export interface SetBench {
  /**
   * The plan of the club at a position with a grip and so many layers; undefined: solved from its target diameter, else none.
   * What only shows once every club has its grip (stock that runs short) is not noted.
   */
  readonly plan: (at: number, grip: Grip, layers: number | undefined) => ClubPlan;
  /** What a choice looks at of that plan. */
  readonly tryOut: (at: number, grip: Grip, layers: number | undefined) => Tryout;
}

/** Works out once what stays the same whatever grip is tried. */
export function setBench(input: PlanInput): SetBench {
  const { clubs, settings } = input;
  const stock = keyed(input.stock, ({ item }) => item);
  const ways = keyed(input.ways, ({ name }) => name);
  const { notes: taught } = learn(input, stock);
  const together = notesTogether(
    clubs,
    clubs.map(() => undefined),
  );
  const notes = clubs.map((_, at) => [...(taught.get(at) ?? []), ...(together.get(at) ?? [])]);
  const bench: Omit<Bench, 'grip'> = { stock, ways, settings };
  return {
    plan: (at, grip, layers) => planClub(fitted(clubs[at] as Club, grip, layers), { ...bench, grip }, notes[at]),
    tryOut: (at, grip, layers) => {
      const club = clubs[at] as Club;
      return tryClub(club, { grip, layers, weighedGrams: weighedOf(club, grip) }, bench);
    },
  };
}

/** The club as its row would be. */
function fitted(club: Club, grip: Grip, layers: number | undefined): Club {
  return { ...club, newItem: grip.item, layers, newGripGrams: weighedOf(club, grip) };
}

/** A grip that was weighed for a club is of the item that it was to get, and of no other. */
function weighedOf({ newItem, newGripGrams }: Club, { item }: Grip): number | undefined {
  return newGripGrams !== undefined && newItem?.toLowerCase() === item.toLowerCase() ? newGripGrams : undefined;
}

/** Layers that a club gets where no size is wanted: its own, and never fewer than fill the core. */
export function ownLayers(club: Club, grip: Grip, settings: PlanInput['settings']): number {
  return Math.max(club.layers ?? 0, fewestLayers(grip, club.buttInches, settings));
}
