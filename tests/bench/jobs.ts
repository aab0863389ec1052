/** A shop's open jobs at once: every set planned and quoted, and its pieces reserved. */
import {
  benchTicket,
  DEFAULT_HABITS,
  entriesOf,
  linesFromPlan,
  needsOf,
  planSet,
  quoteOf,
  reserveFor,
  stockState,
  type Club,
  type PlanInput,
  type PricedItem,
  type PricedWay,
  type QuoteTerms,
  type Rate,
  type SetPlan,
  type StockAsked,
  type Stocked,
} from '../../src/core/index';
import { planTables } from '../../src/workbook/planTables';
import { clubTable, stockTable } from './clubs';
import { figures, medians, printTable } from './measure';

const JOBS = 200;
const CLUBS = 14;

const RATES: readonly Rate[] = [
  { work: 'Fit', use: 'fitting', per: 'club', price: 3.5, minutes: 8, includedLayers: 1 },
  { work: 'Tape', use: 'buildUp', per: 'layer', price: 0.4, minutes: 1 },
  { work: 'Read', use: 'reading', per: 'club', price: 1, minutes: 3 },
  { work: 'Put right', use: 'rebalancing', per: 'club', price: 2.5, minutes: 5 },
];

const TERMS: QuoteTerms = {
  currency: 'EUR',
  prices: 'beforeTax',
  taxes: [{ name: 'Tax', percent: 19 }],
  rounding: { rule: 'halfEven', at: 'line' },
  setDiscount: { percent: 5 },
  jobDiscount: undefined,
  deposit: { percent: 20 },
  minimum: undefined,
  issued: 46000,
  validDays: 30,
};

function jobs(): { readonly inputs: readonly PlanInput[]; readonly stock: PricedItem[]; readonly ways: PricedWay[] } {
  const made = planTables({ clubs: clubTable(JOBS * CLUBS), stock: stockTable() });
  if (!made.ok) throw new Error(made.issue.code);
  const { clubs, ...rest } = made.value.input;
  const set = (job: number): Club[] => clubs.slice(job * CLUBS, (job + 1) * CLUBS);
  return {
    inputs: Array.from({ length: JOBS }, (_, job) => ({ ...rest, clubs: set(job) })),
    stock: rest.stock.map(({ item }, at) => ({ item, price: 4 + ((at * 31) % 900) / 100, cost: 3 })),
    ways: rest.ways.map(({ name }) => ({ name, price: 1.5, cost: 0.3, minutes: 3 })),
  };
}

/** What each job needs of grips, tape and weight, the shelves against all of it, and the rows that reserve it. */
function reserve(inputs: readonly PlanInput[], plans: readonly SetPlan[], stocked: readonly Stocked[]): number {
  const asked: StockAsked = {
    stocked,
    entries: entriesOf([]),
    doneJobs: new Set(),
    jobs: plans.map((plan, at) => {
      const ask = { habits: DEFAULT_HABITS, clubs: new Map(), rates: RATES, ways: [] };
      const { clubs } = benchTicket(plan, inputs[at] as PlanInput, ask);
      const tapes = { buildUpTape: 'Build-up tape', twoWayTape: 'Two-way tape' };
      return needsOf({ job: `J-${at}`, due: 46000 + (at % 20), round: 1, clubs, ownGrips: new Set(), ...tapes });
    }),
  };
  stockState(asked);
  const rows = reserveFor(
    asked,
    asked.jobs.map(({ job }) => job),
  );
  if (rows.length < JOBS * CLUBS) throw new Error(`only ${rows.length} rows`);
  return rows.length;
}

export function benchJobs(): void {
  const { inputs, stock, ways } = jobs();
  const shelves = stock.map(({ item }): Stocked => {
    const supply = { reorderAt: 10, pack: 10, packCost: 30, supplier: 'A supplier' };
    return { shelf: 'grip', item, onHand: 1000, ...supply };
  });
  const plan = (): SetPlan[] => inputs.map((input) => planSet(input));
  const quote = (plans: readonly SetPlan[]) =>
    plans.map((each) => {
      const { lines, issues } = linesFromPlan(each, RATES, stock, ways);
      const made = quoteOf({ ...TERMS, lines });
      if (!made.ok || issues.length > 0) throw new Error(JSON.stringify(made.ok ? issues[0] : made.issue));
      return made.value;
    });
  const plans = plan();
  const results = medians([
    { name: 'plan', run: plan },
    { name: 'quote', run: () => quote(plans) },
    { name: 'reserve', run: () => reserve(inputs, plans, shelves) },
    {
      name: 'all of it',
      run: () => {
        const made = plan();
        quote(made);
        reserve(inputs, made, shelves);
      },
    },
  ]);
  printTable(
    `${JOBS} jobs of ${CLUBS} clubs`,
    ['', 'ms', 'to plan'],
    [...results].map(([name, ms]) => [name, figures(ms), `× ${figures(ms / (results.get('plan') ?? NaN))}`]),
  );
}
