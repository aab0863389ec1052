/** Shelves, jobs and a ledger, made at random or by hand. */
import fc from 'fast-check';
import {
  entriesOf,
  type JobNeeds,
  type Movement,
  type Need,
  type StockAsked,
  type Stocked,
} from '../../../src/core/index';

export const grip = (item: string, onHand: number | undefined, more: Partial<Stocked> = {}): Stocked => ({
  shelf: 'grip',
  item,
  onHand,
  reorderAt: undefined,
  pack: undefined,
  packCost: undefined,
  supplier: undefined,
  ...more,
});

export const need = (item: string, club: string, quantity = 1): Need => ({ shelf: 'grip', item, club, quantity });

export const jobOf = (job: string, due: number | undefined, ...needs: Need[]): JobNeeds => ({
  job,
  due,
  round: 1,
  needs,
  twoWayStrips: needs.length,
});

export const asked = (
  stocked: readonly Stocked[],
  jobs: readonly JobNeeds[],
  movements: readonly Movement[] = [],
  doneJobs: readonly string[] = [],
): StockAsked => ({ stocked, jobs, entries: entriesOf(movements), doneJobs: new Set(doneJobs) });

const ITEMS = ['FERN-M', 'MOSS-S', 'OAK-58'];
const CLUBS = ['Driver', '7 iron', 'Putter'];

const stockedArb = fc.tuple(...ITEMS.map((item) => fc.nat(12).map((onHand) => grip(item, onHand))));

const needsArb = fc
  .uniqueArray(
    fc.record({
      item: fc.constantFrom(...ITEMS),
      club: fc.constantFrom(...CLUBS),
      quantity: fc.integer({ min: 1, max: 3 }),
    }),
    {
      selector: ({ item, club }) => item + club,
      maxLength: 5,
    },
  )
  .map((list) => list.map(({ item, club, quantity }) => need(item, club, quantity)));

const jobsArb = fc
  .array(fc.record({ due: fc.option(fc.integer({ min: 46000, max: 46003 }), { nil: undefined }), needs: needsArb }), {
    minLength: 1,
    maxLength: 5,
  })
  .map((list) => list.map(({ due, needs }, at) => jobOf(`J${at}`, due, ...needs)));

const movementArb: fc.Arbitrary<Movement> = fc.record({
  kind: fc.constantFrom('reserved' as const, 'released' as const, 'used' as const),
  job: fc.constantFrom('J0', 'J1', 'J2', 'gone'),
  club: fc.constantFrom(...CLUBS),
  shelf: fc.constant('grip' as const),
  item: fc.constantFrom(...ITEMS),
  quantity: fc.integer({ min: 1, max: 3 }),
  round: fc.constantFrom(1, 1, 2),
});

export interface World {
  readonly stocked: readonly Stocked[];
  readonly jobs: readonly JobNeeds[];
  readonly movements: readonly Movement[];
}

export const worldArb: fc.Arbitrary<World> = fc.record({
  stocked: stockedArb,
  jobs: jobsArb,
  movements: fc.array(movementArb, { maxLength: 12 }),
});
