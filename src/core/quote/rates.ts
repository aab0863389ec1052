/** Which rates a piece of work is charged by, and what is wrong with a list of them. */
import type { ClubKind } from '../plan/types';
import type { Issue } from '../result';
import type { LineClass, QuoteLine, Rate, RateUnit, RateUse } from './types';

/** What a rate may be counted by. Only build-up has layers, and only weight has grams. */
const UNITS: Readonly<Record<RateUse, readonly RateUnit[]>> = {
  fitting: ['club', 'job'],
  ownGrip: ['club', 'job'],
  buildUp: ['layer', 'club', 'job'],
  salvage: ['club', 'job'],
  disposal: ['club', 'job'],
  reading: ['club', 'job'],
  weight: ['gram', 'club', 'job'],
  rebalancing: ['gram', 'club', 'job'],
  length: ['club', 'job'],
  everyClub: ['club'],
  everyJob: ['job'],
};

const CLASSES: Readonly<Record<RateUse, LineClass>> = {
  fitting: 'fitting',
  ownGrip: 'fitting',
  buildUp: 'buildUp',
  salvage: 'salvage',
  disposal: 'disposal',
  reading: 'reading',
  weight: 'weight',
  rebalancing: 'rebalancing',
  length: 'length',
  everyClub: 'other',
  everyJob: 'other',
};

/** Rates for a use: those for this kind of club, else those for all. */
export function ratesFor(rates: readonly Rate[], use: RateUse, kind: ClubKind | undefined): readonly Rate[] {
  const used = rates.filter((rate) => rate.use === use);
  const own = kind === undefined ? [] : used.filter((rate) => rate.kind === kind);
  return own.length > 0 ? own : used.filter((rate) => rate.kind === undefined);
}

/** Which work fits a grip: a client’s own by a rate for such, where there is one. */
export function fittingUse(rates: readonly Rate[], kind: ClubKind | undefined, ownGrip: boolean): RateUse {
  return ownGrip && ratesFor(rates, 'ownGrip', kind).length > 0 ? 'ownGrip' : 'fitting';
}

/** Layers that a fitting includes. */
export function includedLayers(fitting: readonly Rate[]): number {
  return fitting.reduce((most, rate) => Math.max(most, rate.includedLayers ?? 0), 0);
}

/** A work to be charged; `needed` names what is missing where no rate is found for it. */
export interface Work {
  readonly use: RateUse;
  readonly needed?: string;
}

/** What a job cannot be quoted without, as it is called where Rates lacks it. */
export const NEEDED = {
  fitting: 'Fitting a grip',
  buildUp: 'Build-up',
  salvage: 'Old grip taken off whole',
  reading: 'Weighing and reading',
  length: 'Length change',
} as const;

export function noRate(needed: string): Issue {
  return { code: 'blank', field: `${needed} in Rates`, expected: 'a row with its price' };
}

/** Without rates that stand there twice: the first one counts. */
export function firstOfEach<T>(list: readonly T[], nameOf: (each: T) => string): T[] {
  const seen = new Set<string>();
  return list.filter((each) => {
    const name = nameOf(each).trim().toLowerCase();
    return !seen.has(name) && seen.add(name);
  });
}

/** What stands in a list under a name that an earlier one has already. */
export function laterOnes<T>(list: readonly T[], nameOf: (each: T) => string): T[] {
  const names = list.map((each) => nameOf(each).trim().toLowerCase());
  return list.filter((_, at) => names.indexOf(names[at] ?? '') < at);
}

/** What is wrong with the list itself: a work that stands there twice, a unit that its use has not got. */
export function rateIssues(rates: readonly Rate[]): Issue[] {
  const twice = laterOnes(rates, ({ work }) => work).map(({ work }): Issue => ({
    code: 'duplicate',
    field: 'Work in Rates',
    got: work,
  }));
  const misplaced = firstOfEach(rates, ({ work }) => work).flatMap(({ work, use, per }): Issue[] => {
    if (use === undefined || UNITS[use].includes(per)) return [];
    const expected = `it is charged for something that is not counted by the ${per}`;
    return [{ code: 'contradiction', field: `Per of ${work} in Rates`, got: per, expected }];
  });
  return [...twice, ...misplaced];
}

/** What the units of a rate are counted from. */
export interface Counted {
  readonly layers: number;
  readonly grams: number;
}

/** How many units of a rate one club takes. */
export function unitsOf({ per }: Rate, { layers, grams }: Counted): number {
  return { club: 1, job: 1, layer: layers, gram: grams }[per];
}

export function rateLine(rate: Rate & { readonly use: RateUse }, quantity: number): QuoteLine {
  return {
    class: CLASSES[rate.use],
    description: rate.work,
    quantity,
    unitPrice: rate.price,
    unitCost: rate.cost,
    tax: rate.tax,
    minutesEach: rate.minutes,
    rows: [],
  };
}
