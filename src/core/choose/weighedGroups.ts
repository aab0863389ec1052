/** Weighed grips sorted by item, with the clubs that get that item. */
import { MOST_WEIGHED_GRIPS, RANGES } from '../constants';
import { groupedBy } from '../plan/together';
import type { Grip, PlanInput } from '../plan/types';
import { fail, ok, type Issue, type Result } from '../result';

/** One loose grip as weighed. */
export interface WeighedGrip {
  /** From 1, as typed. */
  readonly number: number;
  /** undefined: the only item that the clubs get. */
  readonly item?: string | undefined;
  readonly grams: number;
}

/** One item: its clubs by their position in the set, and its grips as typed. */
export interface Group {
  /** As Stock spells it, else as the clubs do. */
  readonly item: string;
  /** What Stock says of it. */
  readonly grip: Grip | undefined;
  /** None where no club gets this item. */
  readonly clubs: readonly number[];
  readonly grips: readonly WeighedGrip[];
}

/** Sorts weighed grips to the clubs that get their item; refused where that cannot be told of one of them. */
export function groupsOf(input: PlanInput, weighed: readonly WeighedGrip[]): Result<{ groups: readonly Group[] }> {
  if (weighed.length === 0) return fail({ code: 'noRows', field: 'Weighed grips', expected: 'masses' });
  if (weighed.length > MOST_WEIGHED_GRIPS) {
    const expected = `at most ${MOST_WEIGHED_GRIPS} at a time`;
    return fail({ code: 'outOfRange', field: 'The number of weighed grips', got: weighed.length, expected });
  }
  const clubs = clubsByItem(input);
  if (clubs.size === 0) return fail({ code: 'noRows', field: 'Clubs', expected: 'clubs with a new grip' });
  const stock = new Map([...input.stock].reverse().map((grip) => [folded(grip.item), grip])); // the first of a name counts
  const only = itemsInDoubt(input);
  for (const grip of weighed) {
    const issue = wrongMass(grip) ?? wrongItem(grip, only, clubs, stock);
    if (issue) return fail(issue);
  }
  const grips = groupedBy(weighed, ({ item }) => folded(item ?? only[0] ?? ''));
  const groups = [...grips].map(([key, list]): Group => {
    const grip = stock.get(key);
    const at = clubs.get(key) ?? [];
    return {
      item: grip?.item ?? input.clubs[at[0] ?? -1]?.newItem ?? list[0]?.item ?? '',
      grip,
      clubs: at,
      grips: list,
    };
  });
  if (groups.every((group) => group.clubs.length === 0)) {
    return fail({ code: 'noRows', field: 'Clubs', expected: `clubs that get ${groups[0]?.item ?? 'them'}` });
  }
  return ok({ groups });
}

/** Items are the same whatever their capitals, as everywhere in a plan. */
function folded(item: string): string {
  return item.trim().toLowerCase();
}

function clubsByItem({ clubs }: PlanInput): ReadonlyMap<string, readonly number[]> {
  const byItem = groupedBy(clubs.keys(), (index) => folded(clubs[index]?.newItem ?? ''));
  byItem.delete('');
  return byItem;
}

/** Items that a grip without one may be. A putter's grip is another than its set's, so putters count only among themselves. */
function itemsInDoubt({ clubs }: PlanInput): readonly string[] {
  const gripped = clubs.filter(({ newItem }) => newItem !== undefined && folded(newItem) !== '');
  const others = gripped.filter(({ kind }) => kind !== 'putter');
  const names = new Map<string, string>();
  for (const { newItem = '' } of others.length > 0 ? others : gripped) {
    if (!names.has(folded(newItem))) names.set(folded(newItem), newItem);
  }
  return [...names.values()];
}

function wrongMass({ number, grams }: WeighedGrip): Issue | undefined {
  const { low, high, unit } = RANGES.gripGrams;
  if (grams >= low && grams <= high) return undefined;
  return { code: 'outOfRange', field: `Mass of grip ${number}`, got: grams, expected: `${low} to ${high} ${unit}` };
}

function wrongItem(
  { number, item }: WeighedGrip,
  only: readonly string[],
  clubs: ReadonlyMap<string, unknown>,
  stock: ReadonlyMap<string, unknown>,
): Issue | undefined {
  const field = `Item of grip ${number}`;
  if (item !== undefined) {
    const known = clubs.has(folded(item)) || stock.has(folded(item));
    return known ? undefined : { code: 'unknownItem', field, got: item };
  }
  if (only.length === 1) return undefined;
  return { code: 'blank', field, expected: `each grip its item, since these clubs get ${listed(only)}` };
}

/** `A and B`; of many the first few. */
function listed(items: readonly string[]): string {
  const shown = items.slice(0, items.length > 4 ? 3 : -1);
  const rest = items.length - shown.length;
  return `${shown.join(', ')} and ${rest > 1 ? `${rest} more` : (items.at(-1) ?? '')}`;
}
