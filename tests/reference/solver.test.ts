/**
 * A solved set against a mixed-integer program that was written on its own: binary variables for club, item and layers; rows for one
 * model, one size, stock and one grip a club; the aims minimised one after the other, each held at what it came to.
 *
 * Solved by HiGHS through the npm package `highs` 1.15.3 (MIT; Q. Huangfu and J. A. J. Hall, "Parallelizing the dual revised simplex
 * method", Mathematical Programming Computation 10, 2018). What a club comes to with an item and its layers is taken from `planSet`,
 * which is tested elsewhere; which of these are allowed, and what is best, is worked out here.
 */
import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import {
  AIMS,
  MOST_LAYERS,
  planSet,
  SIZES_DIFFER,
  solveSet,
  type Aim,
  type Club,
  type ClubPlan,
  type Grip,
  type PlanInput,
  type SizesDiffer,
  type Solution,
} from '../../src/core/index';
import { assign } from '../../src/workbook/assignment';
import { someInput } from '../core/choose/sets';

/** A grip on a club with so many layers, allowed by all that concerns this club alone; costs in whole numbers. */
interface Column {
  readonly name: string;
  readonly club: number;
  readonly item: number;
  readonly costs: Readonly<Record<string, number>>;
}

/** Lists that are minimised for an aim, one after the other: grips of unknown price go before the price of the others. */
const OBJECTIVES: Readonly<Record<Aim, readonly string[]>> = {
  weight: ['halfGrams'],
  deviation: ['micropoints'],
  price: ['unpriced', 'cents'],
};

const noted = (plan: ClubPlan, kind: string): boolean => plan.notes.some(({ note }) => note === kind);

function planOf(input: PlanInput, club: Club, grip: Grip, layers: number): ClubPlan {
  const same = club.newItem?.toLowerCase() === grip.item.toLowerCase();
  const one = { ...club, newItem: grip.item, layers, newGripGrams: same ? club.newGripGrams : undefined };
  return planSet({ ...input, clubs: [one] }).clubs[0]!;
}

function allowed(plan: ClubPlan, club: Club, grip: Grip, { settings }: PlanInput): boolean {
  const putter = club.kind === 'putter';
  if (grip.gripGrams === undefined || grip.coreInches === undefined) return false;
  if ((grip.use === 'putters' && !putter) || (grip.use === 'clubs' && putter)) return false;
  if (grip.use === 'juniors' && club.kind !== 'junior') return false;

  if (noted(plan, 'looseCore') || noted(plan, 'tightCore')) return false;
  if (club.targetInches !== undefined) {
    if (!plan.upper) return false;
    if (Math.abs(plan.upper.inches - club.targetInches) > settings.sizeToleranceInches + 1e-9) return false;
  }
  if (plan.hold === 'nothing') return true;
  if (plan.gapPoints === undefined || plan.remedy?.overLimit) return false;
  if (plan.remedy) return true;
  return settings.putRight === 'outOfTolerance' && Math.abs(plan.gapPoints) <= plan.tolerancePoints + 1e-9;
}

/** Up to as many as the shop builds up; without a target a club gets its own layers, or as many more as fill the core. */
function layersToTry(input: PlanInput, club: Club, grip: Grip): number[] {
  const all = Array.from({ length: MOST_LAYERS + 1 }, (_, layers) => layers);
  const { mostLayers } = input.settings;
  const isLoose = (layers: number): boolean => noted(planOf(input, club, grip, layers), 'looseCore');
  if (all.filter((layers) => layers <= mostLayers).every(isLoose)) return [];
  if (club.targetInches !== undefined) return all.filter((layers) => layers <= mostLayers);
  const first = all.find((layers) => layers >= (club.layers ?? 0) && !isLoose(layers));
  return first === undefined ? [] : [first];
}

function columnsOf(input: PlanInput): Column[] {
  return input.clubs.flatMap((club, at) =>
    input.stock.flatMap((grip, item) =>
      layersToTry(input, club, grip).flatMap((layers): Column[] => {
        const plan = planOf(input, club, grip, layers);
        if (!allowed(plan, club, grip, input)) return [];
        const costs = {
          halfGrams: Math.round((plan.remedy?.grams ?? 0) * 2),
          micropoints: Math.round(Math.abs(plan.gapPoints ?? 0) * 1e6),
          unpriced: grip.price === undefined ? 1 : 0,
          cents: Math.round((grip.price ?? 0) * 100),
        };
        return [{ name: `x_${at}_${item}_${layers}`, club: at, item, costs }];
      }),
    ),
  );
}

const WOODS = ['driver', 'wood', 'hybrid'];

function groupOf({ kind }: Club): string {
  return kind !== undefined && WOODS.includes(kind) ? 'woods' : (kind ?? 'junior'); // what is none of the groups has one of its own together
}

/** Rows of the program: a model and profile throughout, a size where sizes may not differ, one grip a club, stock. */
function rowsOf(
  input: PlanInput,
  columns: readonly Column[],
  sizesDiffer: SizesDiffer,
): { rows: string[]; extra: string[] } {
  const modelOf = ({ model, item, profile }: Grip): string => JSON.stringify([model ?? { item }, profile]);
  const sizeOf = (grip: Grip): string => `${modelOf(grip)} ${grip.size ?? `${grip.upperInches ?? 'none'} in`}`;
  const models = [...new Set(input.stock.map(modelOf))];
  const sizes = [...new Set(input.stock.map(sizeOf))];
  const groups = [...new Set(input.clubs.map((club) => (sizesDiffer === 'byGroup' ? groupOf(club) : 'set')))];
  const y = (model: number) => `y_${model}`;
  const z = (group: number, size: number) => `z_${group}_${size}`;
  const rows = [`one: ${models.map((_, at) => y(at)).join(' + ')} = 1`];
  const add = (terms: readonly string[], rest: string): void => {
    if (terms.length > 0) rows.push(`r${rows.length}: ${terms.join(' + ')} ${rest}`);
  };
  const named = (keep: (column: Column) => boolean): string[] => columns.filter(keep).map(({ name }) => name);
  input.clubs.forEach((club, at) => {
    models.forEach((model, of) => {
      const own = named((each) => each.club === at && modelOf(input.stock[each.item]!) === model);
      // of the model that is taken this club gets exactly one grip; where it can take none, the model cannot be taken
      if (own.length > 0) add(own, `- ${y(of)} = 0`);
      else add([y(of)], '= 0');
    });
    if (sizesDiffer === 'byClub') return;
    const group = groups.indexOf(sizesDiffer === 'byGroup' ? groupOf(club) : 'set');
    sizes.forEach((size, of) => {
      const own = named((each) => each.club === at && sizeOf(input.stock[each.item]!) === size);
      add([...own], `- ${z(group, of)} <= 0`);
    });
  });
  const extra = models.map((_, at) => y(at));
  if (sizesDiffer !== 'byClub') {
    groups.forEach((_, group) => {
      const all = sizes.map((__, size) => z(group, size));
      add(all, '= 1');
      extra.push(...all);
    });
  }
  input.stock.forEach(({ onHand }, item) => {
    if (onHand !== undefined)
      add(
        named((each) => each.item === item),
        `<= ${onHand}`,
      );
  });
  return { rows, extra };
}

type Highs = Awaited<ReturnType<typeof loadHighs>>;

/** The sums of all objectives in their order, or undefined where nothing serves. */
function oracle(highs: Highs, input: PlanInput, aims: readonly Aim[], sizesDiffer: SizesDiffer): number[] | undefined {
  const columns = columnsOf(input);
  if (columns.length === 0) return undefined;
  const { rows, extra } = rowsOf(input, columns, sizesDiffer);
  const held: string[] = [];
  const sums: number[] = [];
  for (const objective of aims.flatMap((aim) => OBJECTIVES[aim])) {
    const terms = columns.map(({ name, costs }) => `${costs[objective]} ${name}`).join(' + ');
    const binary = [...columns.map(({ name }) => name), ...extra].join(' ');
    const problem = `Minimize\n obj: ${terms}\nSubject To\n ${[...rows, ...held].join('\n ')}\nBinary\n ${binary}\nEnd`;
    const found = highs.solve(problem, {
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 0,
      mip_feasibility_tolerance: 1e-9,
      primal_feasibility_tolerance: 1e-9,
    });
    if (found.Status === 'Infeasible') return undefined;
    if (found.Status !== 'Optimal') throw new Error(`HiGHS ended with ${found.Status}`);
    const sum = columns.reduce((total, { name, costs }) => {
      const variable = found.Columns[name]!;
      const value = 'Primal' in variable ? variable.Primal : NaN;
      if (Math.abs(value - Math.round(value)) > 1e-6) throw new Error(`${name} is ${value}`);
      return total + Math.round(value) * costs[objective]!;
    }, 0);
    sums.push(sum);
    // half a unit of slack: all costs are whole
    held.push(`h${held.length}: ${terms} <= ${sum + 0.5}`);
  }
  return sums;
}

/** The same sums of a solution, from its plans. */
function sumsOf({ choices }: Extract<Solution, { solved: true }>, aims: readonly Aim[]): number[] {
  const total = (each: (plan: ClubPlan) => number): number => choices.reduce((sum, { plan }) => sum + each(plan), 0);
  const sums: Record<string, number> = {
    halfGrams: total(({ remedy }) => Math.round((remedy?.grams ?? 0) * 2)),
    micropoints: total(({ gapPoints }) => Math.round(Math.abs(gapPoints ?? 0) * 1e6)),
    unpriced: total(({ grip }) => (grip?.price === undefined ? 1 : 0)),
    cents: total(({ grip }) => Math.round((grip?.price ?? 0) * 100)),
  };
  return aims.flatMap((aim) => OBJECTIVES[aim]).map((objective) => sums[objective]!);
}

/** Sets that somebody can plan: most of what is random in unit tests is known, and stock is what is tight. */
const someTask = fc.record({
  input: fc.tuple(someInput, fc.constantFrom(0.6, 0.58)).map(([input, butt]): PlanInput => ({
    ...input,
    clubs: input.clubs.map((club) => ({
      ...club,
      kind: club.kind === 'putter' ? ('wedge' as const) : club.kind,
      buttInches: club.buttInches ?? butt,
      oldGripGrams: club.oldGripGrams ?? 50,
      lengthInches: club.lengthInches ?? 37,
    })),
    stock: input.stock.map((grip) => ({
      ...grip,
      model: grip.model === undefined ? undefined : 'Alder',
      profile: 'round' as const,
      use: grip.use === 'putters' ? undefined : grip.use,
      coreInches: grip.coreInches ?? butt,
      gripGrams: grip.gripGrams ?? 50,
      upperInches: grip.upperInches ?? 0.9,
    })),
    settings: { ...input.settings, headLimitGrams: 8, sizeToleranceInches: 0.02 },
  })),
  aims: fc.shuffledSubarray([...AIMS], { minLength: 1 }),
});

describe('a solved set against a mixed-integer program', () => {
  it.each(SIZES_DIFFER)(
    'sizes differ %s: the same sums, and the same sets that cannot be served',
    async (sizesDiffer) => {
      const highs = await loadHighs();
      const tally = { solved: 0, not: 0 };
      const check = (input: PlanInput, aims: readonly Aim[]): void => {
        const solution = solveSet({ input, shortlist: undefined, aims, sizesDiffer }, assign);
        const best = oracle(highs, input, aims, sizesDiffer);
        expect(solution.solved ? sumsOf(solution, aims) : undefined).toEqual(best);
        if (solution.solved) tally.solved += 1;
        else tally.not += 1;
      };
      fc.assert(
        fc.property(someTask, ({ input, aims }) => check(input, aims)),
        { numRuns: 60, seed: 20, endOnFailure: true },
      );
      // with all that may be unknown
      fc.assert(
        fc.property(someInput, (input) => check(input, AIMS)),
        { numRuns: 20, seed: 21, endOnFailure: true },
      );
      expect(tally.solved).toBeGreaterThan(15);
      expect(tally.not).toBeGreaterThan(15);
    },
  );
});
