/** The assignment library, as the core asks for one: the core itself depends on no package. */
import { munkres } from 'munkres';
import type { Assign } from '../core/index';

type Pairs = ReturnType<Assign>;

/** Least-cost pairs of rows and columns, by the Hungarian method; the shorter side of the matrix is served whole. */
export const assign: Assign = (costs) => {
  // the library spreads its columns, and knows a matrix without any as none
  if (costs.length === 0 || costs[0]?.length === 0) return [];
  return munkres(costs as readonly (readonly number[])[]) as Pairs;
};
