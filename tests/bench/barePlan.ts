/** The arithmetic of a plan with nothing around it: typed arrays in, typed arrays out, no checks, no notes, no words. */
import { POINT_GRAM_INCHES as P, tapeGrams, type PlanInput } from '../../src/core/index';

export const INPUTS = [
  'length',
  'butt',
  'taper',
  'reading',
  'mass',
  'oldGrams',
  'newGrams',
  'oldBalance',
  'newBalance',
  'oldCap',
  'newCap',
  'oldSpread',
  'newSpread',
  'layers',
  'lengthChange',
  'core',
  'upper',
  'lower',
] as const;
const OUTPUTS = [
  'fittedBefore',
  'fittedAfter',
  'change',
  'gripped',
  'gap',
  'spread',
  'verdict',
  'grams',
  'after',
  'verdictAfter',
  'massAfter',
  'inertia',
  'upperLow',
  'upperHigh',
  'lowerLow',
  'lowerHigh',
] as const;

type Columns<K extends string> = Readonly<Record<K, Float64Array>>;
export type BareInput = Columns<(typeof INPUTS)[number]>;
export type BareOutput = Columns<(typeof OUTPUTS)[number]>;

const empty = <K extends string>(names: readonly K[], count: number): Columns<K> =>
  Object.fromEntries(names.map((name) => [name, new Float64Array(count)])) as Columns<K>;

export const bareOutput = (count: number): BareOutput => empty(OUTPUTS, count);

export function bareInput({ clubs, stock }: PlanInput): BareInput {
  const columns = empty(INPUTS, clubs.length);
  const items = new Map(stock.map((grip) => [grip.item.toLowerCase(), grip]));
  clubs.forEach((club, at) => {
    const grip = items.get(club.newItem?.toLowerCase() ?? '');
    const values: Record<(typeof INPUTS)[number], number | undefined> = {
      length: club.lengthInches,
      butt: club.buttInches,
      taper: club.taperPerInch ?? 0,
      reading: club.reading,
      mass: club.massGrams,
      oldGrams: club.oldGripGrams,
      newGrams: grip?.gripGrams,
      oldBalance: club.oldBalanceInches ?? 4.2,
      newBalance: grip?.balanceInches,
      oldCap: club.oldCapInches ?? 0.125,
      newCap: grip?.capInches,
      oldSpread: club.oldMassFrom === 'weighed' ? 0.5 : 4,
      newSpread: grip?.spreadGrams,
      layers: club.layers ?? 4,
      lengthChange: club.lengthChangeInches,
      core: grip?.coreInches,
      upper: grip?.upperInches,
      lower: grip?.lowerInches,
    };
    for (const name of INPUTS) columns[name][at] = values[name] ?? NaN;
  });
  return columns;
}

const LAYER = tapeGrams(10.5, 2, 130);
const STRIP = tapeGrams(10.5, 2, 133);

const verdict = (gap: number, spread: number): number =>
  gap + spread <= 1 ? 0 : gap <= 1 ? 1 : gap - spread <= 1 ? 2 : 3;

/** Every number a plan has for a club held as it was, from an old grip that is known. */
export function barePlan(input: BareInput, out: BareOutput): void {
  const n = (column: Float64Array, at: number): number => column[at] as number;
  for (let at = 0; at < input.length.length; at += 1) {
    const layers = n(input.layers, at);
    const oldGrams = n(input.oldGrams, at);
    const newGrams = n(input.newGrams, at);
    const oldLever = 14 - n(input.oldBalance, at);
    const newLever = 14 - n(input.newBalance, at);
    const body = n(input.mass, at) - oldGrams - STRIP;
    const moved = n(input.newCap, at) - n(input.oldCap, at) + n(input.lengthChange, at);
    const tape = layers * LAYER;
    const change = (oldGrams * oldLever - newGrams * newLever - tape * 8.75 + body * moved) / P;
    const gap = -change;
    const spread =
      Math.sqrt(
        (n(input.newSpread, at) * newLever) ** 2 +
          (newGrams * 0.1) ** 2 +
          (0.1 * tape * 8.75) ** 2 +
          (n(input.oldSpread, at) * (oldLever - moved)) ** 2 +
          (n(input.lengthChange, at) === 0 ? 0 : (body / 32) ** 2) +
          (oldGrams * 0.25) ** 2,
      ) / P;
    const place = gap >= 0 ? n(input.length, at) + moved : 1;
    const exact = (gap * P) / (place - 14);
    const step = gap >= 0 ? 0.5 : 1;
    const grams = Math.abs(gap) <= 1 ? 0 : Math.round(exact / step) * step;
    const added = (grams * (place - 14)) / P;
    const seat = n(input.butt, at) + 0.01 * layers;
    const lowerSeat = seat - 4 * n(input.taper, at);
    const core = n(input.core, at);
    const upper = n(input.upper, at);
    const lower = n(input.lower, at);
    out.fittedBefore[at] = oldGrams;
    out.fittedAfter[at] = newGrams + tape;
    out.change[at] = change;
    out.gripped[at] = n(input.reading, at) + change;
    out.gap[at] = gap;
    out.spread[at] = spread;
    out.verdict[at] = verdict(Math.abs(gap), spread);
    out.grams[at] = grams;
    out.after[at] = n(input.reading, at) + change + added;
    out.verdictAfter[at] = verdict(Math.abs(gap - added), spread);
    out.massAfter[at] = body + newGrams + tape + STRIP + grams;
    out.inertia[at] =
      (newGrams * n(input.newBalance, at) ** 2 - oldGrams * n(input.oldBalance, at) ** 2 + grams * place * place) *
      0.0064516;
    out.upperLow[at] = Math.sqrt(upper * upper - core * core + seat * seat);
    out.upperHigh[at] = upper + seat - core;
    out.lowerLow[at] = Math.sqrt(lower * lower - core * core + lowerSeat * lowerSeat);
    out.lowerHigh[at] = lower + lowerSeat - core;
  }
}
