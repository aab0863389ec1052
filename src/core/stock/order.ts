/** What is to be ordered, and what is to be picked for the bench. */
import { exactSum, PER_MONEY } from '../choose/exact';
import { groupedBy } from '../plan/together';
import { itemKey, sameWord, sumOf } from './quantity';
import { byDue } from './state';
import type { ItemState, JobNeeds, OrderLine, PickLine, PickList, SupplierOrder } from './types';

/**
 * What to order, by supplier: for each thing that is short or no more is left of than its reorder point, what is on order counted in, the
 * fewest whole packs that serve every open job and leave more than the reorder point; without a reorder point, that serve every open job.
 *
 * `packs = ⌊(reorderAt − coming) / pack⌋ + 1`, or `⌈−coming / pack⌉`; `coming` is what is left and on order, below 0 by what is missing.
 */
export function orderOf(items: readonly ItemState[]): SupplierOrder[] {
  const wanted = items.filter(({ low }) => low).flatMap((state) => lineOf(state));
  const bySupplier = groupedBy(wanted, ({ supplier }) => sameWord(supplier));
  return [...bySupplier.values()].map((group) => {
    const lines = group.map(({ line }) => line);
    return {
      supplier: group[0]?.supplier ?? '',
      lines,
      cost: exactSum(
        lines.flatMap(({ cost }) => cost ?? []),
        PER_MONEY,
      ),
      unpriced: lines.filter(({ cost }) => cost === undefined).map(({ item }) => item),
    };
  });
}

/** What a pack of pieces costs. @param cost of one piece */
export function costOfPack(cost: number, pack: number): number {
  return exactSum([cost * pack], PER_MONEY);
}

function lineOf({ shelf, item, stocked, left, onOrder, lacks }: ItemState): { supplier: string; line: OrderLine }[] {
  if (!stocked || left === undefined) return [];
  const { pack = 1, packCost, reorderAt, supplier = '' } = stocked;
  const coming = sumOf([left, onOrder]);
  const packs = reorderAt === undefined ? Math.ceil(-coming / pack) : Math.floor((reorderAt - coming) / pack) + 1;
  const cost = packCost === undefined ? undefined : exactSum([packCost * packs], PER_MONEY);
  const quantity = sumOf([packs * pack]);
  return [{ supplier, line: { shelf, item, packs, quantity, pack, cost, lacks, left, onOrder, reorderAt } }];
}

/** One list of all that jobs need, each thing with what of it is for which job; jobs by the day they are due. */
export function pickList(jobs: readonly JobNeeds[]): PickList {
  const inOrder = byDue(jobs);
  const all = inOrder.flatMap(({ job, needs }) => needs.map((need) => ({ job, need })));
  const lines = [...groupedBy(all, ({ need }) => itemKey(need)).values()].map((group): PickLine => {
    const { shelf, item } = (group[0] as (typeof group)[number]).need;
    const byJob = [...groupedBy(group, ({ job }) => job)].map(([job, own]) => ({
      job,
      quantity: sumOf(own.map(({ need }) => need.quantity)),
    }));
    return { shelf, item, jobs: byJob, quantity: sumOf(byJob.map(({ quantity }) => quantity)) };
  });
  const shelfOrder = ['grip', 'tape', 'weight', 'solvent'];
  return {
    jobs: inOrder.map(({ job, due }) => ({ job, due })),
    lines: lines.sort(
      (one, other) =>
        shelfOrder.indexOf(one.shelf) - shelfOrder.indexOf(other.shelf) || (one.item < other.item ? -1 : 1),
    ),
    twoWayStrips: sumOf(jobs.map((job) => job.twoWayStrips)),
  };
}
