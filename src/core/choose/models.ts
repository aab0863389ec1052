/** The models that a set may be solved with, their moulded sizes, and the groups of clubs that share one. */
import { keyed } from '../plan/planSet';
import { groupedBy } from '../plan/together';
import type { Club, ClubKind, Grip } from '../plan/types';
import { modelKey, sizeKey, suits } from './fits';
import type { CannotServe, Limit, SizesDiffer } from './types';

/** Grips that are one throughout a set. */
export interface Model {
  readonly name: string;
  /** Those of which enough is known to plan with them. */
  readonly items: readonly Grip[];
  /** What none of its grips goes without, where there is none that can be planned with. */
  readonly lacks: Limit | undefined;
}

/**
 * Models in the order of Stock. Each is of one profile: round and ribbed grips of one name are two models, told apart by name.
 * A model none of whose grips is made for any of the clubs is left out, unless it was asked for.
 */
export function modelsOf(
  stock: readonly Grip[],
  shortlist: readonly string[] | undefined,
  clubs: readonly Club[],
): Model[] {
  const asked = shortlist && new Set(shortlist.map((item) => item.toLowerCase()));
  const items = [...keyed(stock, ({ item }) => item).values()].filter(
    (grip) => (!asked || asked.has(grip.item.toLowerCase())) && (asked || clubs.some(({ kind }) => suits(grip, kind))),
  );
  const groups = [...groupedBy(items, modelKey).values()];
  const named = groupedBy(groups, nameOf);
  return groups.map((grips) => {
    const name = nameOf(grips);
    const profile = grips[0]?.profile;
    const alone = named.get(name)?.length === 1 || profile === undefined;
    const planned = grips.filter(({ gripGrams, coreInches }) => gripGrams !== undefined && coreInches !== undefined);
    return {
      name: alone ? name : `${name} ${profile}`,
      items: planned,
      lacks: planned.length ? undefined : lack(grips),
    };
  });
}

function nameOf(grips: readonly Grip[]): string {
  return grips[0]?.model ?? grips[0]?.item ?? '';
}

function lack(grips: readonly Grip[]): Limit {
  const item = grips[0]?.item ?? '';
  return { limit: 'lacks', item, lacks: grips[0]?.gripGrams === undefined ? 'mass' : 'core' };
}

/** Positions in a model's items that one group of clubs may share; all of them where each club may have its own size. */
export interface Size {
  /** undefined: not said, or the model has no other. */
  readonly name: CannotServe['size'];
  readonly items: readonly number[];
}

export function sizesOf({ items }: Model, sizesDiffer: SizesDiffer): Size[] {
  const all = items.map((_, at) => at);
  if (sizesDiffer === 'byClub') return [{ name: undefined, items: all }];
  const sizes = [...groupedBy(all, (at) => sizeKey(items[at] as Grip)).values()];
  return sizes.map((same) => ({
    name: sizes.length === 1 ? undefined : items[same[0] as number]?.size,
    items: same,
  }));
}

const GROUP_OF: Readonly<Record<ClubKind, string>> = {
  driver: 'woods',
  wood: 'woods',
  hybrid: 'woods',
  iron: 'irons',
  wedge: 'wedges',
  putter: 'putters',
  junior: 'others',
};

/** Positions of the clubs that have one size together: woods, irons, wedges, putters and what is none of these, or all. */
export function groupsOf(clubs: readonly Club[], sizesDiffer: SizesDiffer): number[][] {
  const all = clubs.map((_, at) => at);
  if (sizesDiffer !== 'byGroup') return [all];
  return [...groupedBy(all, (at) => GROUP_OF[clubs[at]?.kind ?? 'junior']).values()];
}
