/** Shops with a known truth: clubs gripped with grips and tape of known mass, read and weighed on scales that err. */
import { DEFAULT_SETTINGS, type FinishedClub } from '../../../src/core/index';
import { P } from '../make';
import { numbersFrom } from '../choose/placing/sets';

export interface Truth {
  readonly layerGrams: number;
  /** Where each item balances. */
  readonly items: Readonly<Record<string, { readonly grams: number; readonly balanceInches: number }>>;
  /** Standard deviations: one reading in points, one weighing and one grip in grams. */
  readonly readingSd: number;
  readonly weighingSd: number;
  readonly gripSd: number;
  readonly looseWeighed: boolean;
}

export const TRUTH: Truth = {
  layerGrams: 1.9,
  items: { A: { grams: 50, balanceInches: 4.5 } },
  readingSd: 0,
  weighingSd: 0,
  gripSd: 0,
  looseWeighed: false,
};

/** What is fitted to one club. */
export interface Job {
  readonly item: string;
  readonly layers: number;
  readonly lowerLayers?: number;
  readonly addedGrams?: number;
}

/** The sum of twelve even numbers less six is nearly normal with standard deviation 1 (*memory*). */
export function normalFrom(seed: number): () => number {
  const from = numbersFrom(seed);
  for (let skip = 0; skip < 20; skip += 1) from(0, 1); // neighbouring seeds start alike
  return () => Array.from({ length: 12 }, () => from(0, 1)).reduce((sum, each) => sum + each, -6);
}

/** Bodies of 300 to 480 g, in turn. */
export function finishedShop(jobs: readonly Job[], truth: Truth, normal: () => number = () => 0): FinishedClub[] {
  const taped = DEFAULT_SETTINGS.tapedInches;
  const start = DEFAULT_SETTINGS.lowerTapeStartInches;
  return jobs.map(({ item, layers, lowerLayers = 0, addedGrams = 0 }, at) => {
    const made = truth.items[item];
    if (!made) throw new Error(`no item ${item}`);
    const body = 300 + ((at * 37) % 180);
    const grip = made.grams + truth.gripSd * normal();
    const full = layers * truth.layerGrams;
    const run = taped - start;
    const lower = (lowerLayers * truth.layerGrams * run) / taped;
    const cap = 0.125;
    const added = 36;
    const points =
      (body * cap +
        grip * (made.balanceInches - 14) +
        full * (taped / 2 - 14) +
        lower * (start + run / 2 - 14) +
        1.8 * (taped / 2 - 14) +
        addedGrams * (added - 14)) /
      P;
    const read = (value: number): number => value + truth.readingSd * normal();
    const weigh = (value: number): number => value + truth.weighingSd * normal();
    return {
      club: `club ${at + 1}`,
      item,
      bareReading: read(44),
      bareGrams: weigh(body),
      reading: read(44 + points),
      massGrams: weigh(body + grip + full + lower + 1.8 + addedGrams),
      gripGrams: truth.looseWeighed ? weigh(grip) : undefined,
      gripInches: taped,
      capInches: cap,
      tapedInches: taped,
      layers,
      lowerLayers,
      lowerStartInches: start,
      twoWayGrams: 1.8,
      addedGrams,
      addedInches: added,
      lengthChangeInches: 0,
      plugGrams: 0,
    };
  });
}

/** Layers in turn, 0 to 3. */
export function turns(count: number, item = 'A', layers: readonly number[] = [0, 1, 2, 3]): Job[] {
  return Array.from({ length: count }, (_, at) => ({ item, layers: layers[at % layers.length] ?? 0 }));
}
