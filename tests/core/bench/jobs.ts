/** Planned jobs for the tests of the bench. */
import {
  benchTicket,
  DEFAULT_HABITS,
  DEFAULT_SETTINGS,
  DEFAULT_WAYS,
  planSet,
  type BenchAsk,
  type BenchHabits,
  type BenchTicket,
  type Club,
  type ClubBench,
  type Grip,
  type PlanInput,
  type Rate,
  type SetPlan,
  type ShopSettings,
  type Way,
} from '../../../src/core/index';
import { aClub, aGrip } from '../make';

export interface Shop {
  readonly stock?: readonly Grip[];
  readonly ways?: readonly Way[];
  readonly settings?: Partial<ShopSettings>;
}

export interface Job {
  readonly input: PlanInput;
  readonly plan: SetPlan;
}

/** Clubs numbered from 1 and planned together. */
export function aJob(clubs: readonly Partial<Club>[], shop: Shop = {}): Job {
  const input: PlanInput = {
    clubs: clubs.map((club, at) => aClub({ row: at + 1, sheetRow: at + 2, name: `club ${at + 1}`, ...club })),
    stock: shop.stock ?? [aGrip()],
    ways: shop.ways ?? DEFAULT_WAYS,
    settings: { ...DEFAULT_SETTINGS, ...shop.settings },
  };
  return { input, plan: planSet(input) };
}

/** Minutes of an invented shop. */
export const RATES: readonly Rate[] = [
  { work: 'Fit a grip', use: 'fitting', per: 'club', price: 3.5, minutes: 8 },
  { work: 'Fit a putter grip', use: 'fitting', per: 'club', price: 5, minutes: 11, kind: 'putter' },
  { work: 'Build-up tape', use: 'buildUp', per: 'layer', price: 0.4, minutes: 1.5 },
  { work: 'Keep the old grip', use: 'salvage', per: 'club', price: 1.5, minutes: 4 },
  { work: 'Throw the old grip away', use: 'disposal', per: 'club', price: 0, minutes: 1 },
  { work: 'Weigh and read', use: 'reading', per: 'club', price: 1, minutes: 3 },
  { work: 'Put a reading right', use: 'rebalancing', per: 'club', price: 2.5, minutes: 5 },
  { work: 'Extend or trim', use: 'length', per: 'club', price: 6, minutes: 15 },
  { work: 'Look over the bag', use: 'everyJob', per: 'job', price: 0, minutes: 6 },
];

export const WAY_MINUTES = [
  { name: 'Lead tape', minutes: 2 },
  { name: 'Tip plug', minutes: 7 },
];

export interface TicketAsk {
  readonly habits?: Partial<BenchHabits>;
  readonly clubs?: Readonly<Record<number, ClubBench>>;
  readonly rates?: readonly Rate[];
  readonly again?: ReadonlySet<number>;
}

export function aTicket(
  { plan, input }: Job,
  { habits, clubs = {}, rates = RATES, again }: TicketAsk = {},
): BenchTicket {
  const ask: BenchAsk = {
    habits: { ...DEFAULT_HABITS, ...habits },
    clubs: new Map(Object.entries(clubs).map(([row, club]) => [Number(row), club])),
    rates,
    ways: WAY_MINUTES,
    again,
  };
  return benchTicket(plan, input, ask);
}
