/** What a bench does that has not said otherwise. */
import type { BenchHabits } from './types';

/** How a bench works that has not said otherwise (*practice*, all of it). */
export const DEFAULT_HABITS: BenchHabits = {
  activator: 'solvent',
  solvent: undefined,
  solventMl: 15,
  takeOff: 'cutOff',
  salvageWith: 'air',
  salvageMl: 20,
};
