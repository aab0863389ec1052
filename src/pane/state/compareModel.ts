/** What the compare screen shows and takes over: filters, order, the plot's marks, and choices for the clubs. Pure. */
import {
  countOfTried,
  plainNumber,
  planSet,
  type Club,
  type Filters,
  type PlanInput,
  type Solved,
  type Tried,
} from '../../core/index';
import type { ClubChoices } from '../../workbook/choices';
import { fitsByClub, type Form } from './form';
import { ticksOf } from './plot';
import type { CompareForm } from './tools';

export interface FiltersRead {
  readonly filters: Filters;
  /** The price field holds something else than a price. */
  readonly priceFault: boolean;
}

export function readFilters(form: CompareForm): FiltersRead {
  const price = form.mostPrice.trim() === '' ? undefined : plainNumber(form.mostPrice);
  const priceFault = form.mostPrice.trim() !== '' && (price === undefined || price < 0);
  return {
    priceFault,
    filters: {
      ...(form.profile && { profile: form.profile }),
      ...(form.texture && { texture: form.texture }),
      ...(form.core && { coreInches: Number(form.core) }),
      ...(price !== undefined && !priceFault && { mostPrice: price }),
      onHandOnly: form.onHandOnly,
    },
  };
}

/** What stock offers to narrow down by. */
export function filterChoices({ stock }: PlanInput): {
  readonly textures: readonly string[];
  readonly cores: readonly number[];
} {
  const textures = new Map(
    stock.flatMap(({ texture }) => (texture ? [[texture.toLowerCase(), texture] as const] : [])),
  );
  const cores = new Set(stock.flatMap(({ coreInches }) => coreInches ?? []));
  return { textures: [...textures.values()].sort(), cores: [...cores].sort((a, b) => a - b) };
}

/** In the order asked for; what is not known comes last, and of equals the order stays. */
export function ordered(tried: readonly Tried[], by: CompareForm['orderBy']): readonly Tried[] {
  if (by === '') return tried;
  const value = (each: Tried) => countOfTried(each, by) ?? Infinity;
  return [...tried].sort((a, b) => (value(a) === value(b) ? 0 : value(a) - value(b)));
}

export interface PlotPoint {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly unbeaten: boolean;
}

export interface ComparePlotModel {
  /** Size error in thousandths, or, where no club has a target, grams added to the set. */
  readonly xIs: 'size' | 'mass';
  readonly points: readonly PlotPoint[];
  readonly x: { readonly low: number; readonly high: number; readonly ticks: readonly number[] };
  readonly y: { readonly low: number; readonly high: number; readonly ticks: readonly number[] };
  /** Half-widths within which size and change are right; undefined where sizes are not judged. */
  readonly within: { readonly x: number; readonly y: number } | undefined;
}

function axis(values: readonly number[], least: number) {
  const low = Math.min(0, ...values, -least);
  const high = Math.max(0, ...values, least);
  const room = (high - low) * 0.06;
  return { low: low - room, high: high + room, ticks: ticksOf(low - room, high + room) };
}

/** Marks of every grip whose both figures are known. */
export function comparePlot(tried: readonly Tried[], input: PlanInput): ComparePlotModel {
  const xIs = tried.some(({ sizeErrorInches }) => sizeErrorInches !== undefined) ? 'size' : 'mass';
  const points = tried.flatMap((each): PlotPoint[] => {
    const x = xIs === 'size' ? each.sizeErrorInches && each.sizeErrorInches * 1000 : each.massAddedGrams;
    const y = each.largestChangePoints;
    if (x === undefined || y === undefined) return [];
    return [{ key: each.candidate.key, x, y, unbeaten: each.unbeaten }];
  });
  const size = input.settings.sizeToleranceInches * 1000;
  const reading = input.settings.tolerancePoints;
  return {
    xIs,
    points,
    x: axis(
      points.map(({ x }) => x),
      xIs === 'size' ? size * 1.5 : 10,
    ),
    y: axis(
      points.map(({ y }) => y),
      reading * 1.5,
    ),
    within: xIs === 'size' ? { x: size, y: reading } : undefined,
  };
}

/** What is taken over for a candidate: one item for all where that says it, else choices club by club. */
export type Taken =
  | { readonly form: Partial<Form>; readonly perClub?: undefined }
  | { readonly form?: undefined; readonly perClub: ReadonlyMap<number, ClubChoices> };

/** Choices that fit a candidate as it was tried: the item for all clubs where nothing else is to be said of single ones. */
export function takenOf({ candidate, fits }: Tried, { clubs }: PlanInput, form: Form): Taken {
  const asPlanned = fits.every(({ layersSolved, layers }, at) =>
    layersSolved ? clubs[at]?.layers === undefined : layers === (clubs[at]?.layers ?? 0),
  );
  const [only] = candidate.items;
  if (!candidate.matched && only && asPlanned && !fitsByClub(form)) return { form: { item: only.item } };
  const entries = fits.map(({ row, item, layersSolved, layers }, at): [number, ClubChoices] => [
    row,
    { ...itemFor(clubs[at], item), layers: layersSolved ? null : layers },
  ]);
  return { perClub: new Map(entries) };
}

/** An item for a club; the mass of the very grip goes where that was another one. */
function itemFor(club: Club | undefined, item: string): ClubChoices {
  const weighedOther = club?.newGripGrams !== undefined && club.newItem?.toLowerCase() !== item.toLowerCase();
  return { newItem: item, ...(weighedOther && { newMass: null }) };
}

/** Whether the plan would find no layers by itself for this item on a club with a target diameter. */
function findsNone(club: Club, item: string, input: PlanInput): boolean {
  const { newGripGrams: _, ...bare } = club;
  const [plan] = planSet({ ...input, clubs: [{ ...bare, newItem: item, layers: undefined }] }).clubs;
  return plan?.layers === 0;
}

/**
 * Choices that fit a solution. In Clubs no layers beside a target diameter mean "find them": where others would be found, the
 * target goes, so that none are fitted.
 */
export function takenOfSolved({ choices }: Solved, input: PlanInput): ReadonlyMap<number, ClubChoices> {
  return new Map(
    choices.map(({ row, club, item, layers }): [number, ClubChoices] => {
      const fitted = itemFor(club, item);
      if (layers > 0 || club.targetInches === undefined) return [row, { ...fitted, layers }];
      if (findsNone(club, item, input)) return [row, { ...fitted, layers: null }];
      return [row, { ...fitted, layers, targetDiameter: null }];
    }),
  );
}

/** Items of the ticked candidates. */
export function itemsTicked(shortlist: readonly string[], tried: readonly Tried[]): readonly string[] {
  const ticked = tried.filter(({ candidate }) => shortlist.includes(candidate.key));
  return [...new Set(ticked.flatMap(({ candidate }) => candidate.items.map(({ item }) => item)))];
}
