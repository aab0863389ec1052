/** Words about choosing grips: what they are judged by, why one was not tried, and what keeps a model from a set. */
import {
  type Aim,
  type CannotServe,
  type Count,
  type Limit,
  type NotTried,
  type Solution,
  type SizesDiffer,
} from '../core/index';
import { countOf, gramsText, thousandths } from './readings';

/** Headings of what grips are judged by; less is better in each. */
export const COUNT_WORDS: Readonly<Record<Count, string>> = {
  sizeError: 'Size error',
  largestChange: 'Largest change',
  out: 'Clubs out',
  weight: 'Weight to add',
  massAdded: 'Mass added',
  price: 'Price',
  short: 'Short',
};

export const COUNT_MEANING: Readonly<Record<Count, string>> = {
  sizeError: 'how far the club that misses its target diameter most is from it, in inches',
  largestChange: 'change of the reading with the grip alone, of the club where it is largest, in points',
  out: 'clubs out of tolerance with the grip alone',
  weight: 'head and butt weight that puts the set right, in grams',
  massAdded: 'grips, tape and weight after, less grips and tape before, over the set, in grams',
  price: 'the grips alone',
  short: 'pieces that stock lacks for the set',
};

const BEST_WORDS: Readonly<Record<Count, string>> = {
  sizeError: 'size',
  largestChange: 'change',
  out: 'clubs out',
  weight: 'weight to add',
  massAdded: 'mass added',
  price: 'price',
  short: 'stock',
};

/** What no other grip is better at, `size and price`; nothing where there is no such count. */
export function bestWords(counts: readonly Count[]): string {
  return listed(counts.map((count) => BEST_WORDS[count]));
}

/** The same in a sentence, `best at size and price`. */
export function bestAtText(counts: readonly Count[]): string {
  return counts.length === 0 ? '' : `best at ${bestWords(counts)}`;
}

/** Why a grip was not tried. */
export function sayNotTried(left: NotTried): string {
  const { item } = left;
  switch (left.why) {
    case 'noMass':
      return `${item}: its mass is not known. Weigh one and give Mass in Stock.`;
    case 'noCore':
      return `${item}: its core is not known. Give Core in Stock.`;
    case 'loose':
      return `${item}: too loose on ${left.club}. It takes more layers to fill its core than Most layers in Settings allows.`;
    case 'tight':
      return `${item}: too tight on ${left.club}.`;
    case 'otherUse':
      return `${item}: made for other clubs.`;
    case 'filtered':
      return `${item}: left out by what you narrowed down to.`;
  }
}

export const AIM_WORDS: Readonly<Record<Aim, string>> = {
  weight: 'Least weight to add',
  deviation: 'Least points off',
  price: 'Least price',
};

export const AIM_MEANING: Readonly<Record<Aim, string>> = {
  weight: 'head and butt weight over the set',
  deviation: 'points off with the grip alone, added up over the set',
  price: 'the grips of the set; one without a price counts as dearer than any',
};

export const SIZES_DIFFER_WORDS: Readonly<Record<SizesDiffer, string>> = {
  never: 'One size for the set',
  byGroup: 'A size for each group',
  byClub: 'Any size for any club',
};

export const SIZES_DIFFER_MEANING: Readonly<Record<SizesDiffer, string>> = {
  never: 'one moulded size throughout',
  byGroup: 'woods, irons, wedges and putters each have one moulded size',
  byClub: 'every club may have a moulded size of its own',
};

/** Stands beside every solved set. */
export const ONE_MODEL = 'One model and one profile throughout; each club gets the core that suits its butt.';

/** Why a model cannot serve the set, with the numbers that say so. */
export function sayCannot({ model, size, limit }: CannotServe, sizeToleranceInches: number): string {
  const named = size === undefined ? model : `${model} ${size}`;
  switch (limit.limit) {
    case 'use':
      return `${limit.club}: ${named} is not made for it.`;
    case 'lacks':
      return LACKS[limit.lacks](limit.item);
    case 'core':
      return `${limit.club}: no core of ${named} goes on its ${thousandths(limit.buttInches)} butt.`;
    case 'size':
      return `${limit.club}: no layers bring ${named} within ${thousandths(sizeToleranceInches)} of ${thousandths(limit.targetInches)}; ${limit.item} comes nearest at ${thousandths(limit.nearestInches)}.`;
    case 'weight':
      return `${limit.club}: with ${limit.item} it takes ${gramsText(limit.grams)}, over the limit of ${gramsText(limit.limitGrams)}.`;
    case 'stock':
      return `${named}: ${countOf(limit.needed, 'club')} can take only ${listed(limit.items, 'or')}, and ${onHandText(limit.onHand)}.`;
    case 'unknown':
      return `${limit.club}: too little is known of it. Its row in the plan says what is missing.`;
  }
}

const LACKS: Readonly<Record<Extract<Limit, { limit: 'lacks' }>['lacks'], (item: string) => string>> = {
  mass: (item) => `${item}: its mass is not known. Weigh one and give Mass in Stock.`,
  core: (item) => `${item}: its core is not known. Give Core in Stock.`,
  diameter: (item) => `${item}: its outside diameter is not known. Gauge one and give it in Stock.`,
};

function onHandText(count: number): string {
  return count === 0 ? 'none is on hand' : `${count} ${count === 1 ? 'is' : 'are'} on hand`;
}

/** What was found, in a sentence or two: the model and its sums, or why there is none and what to change. */
export function solutionText(solution: Solution): string {
  if (!solution.solved) return NOT_SOLVED[solution.why](solution.cannot);
  const { model, choices, weightGrams, deviationPoints, price, serving, cannot } = solution;
  const sums = [
    weightGrams === 0 ? 'no weight to add' : `${gramsText(weightGrams)} of weight to add`,
    `${deviationPoints.toFixed(1)} points off in all with the grips alone`,
    ...(price === undefined ? [] : [`price of the grips ${priceText(price)}`]),
  ];
  const others = serving === 1 ? 'No other model serves this set.' : `Best of ${serving} models that serve this set.`;
  const left = cannot.length === 0 ? '' : ` ${countOf(cannot.length, 'model')} cannot.`;
  return `${model} on ${countOf(choices.length, 'club')}: ${listed(sums)}. ${serving === 1 && cannot.length === 0 ? 'It is the only model there is.' : others}${left}`;
}

type WhyNot = Exclude<Solution, { solved: true }>['why'];

const NOT_SOLVED: Readonly<Record<WhyNot, (cannot: readonly CannotServe[]) => string>> = {
  noClubs: () => 'No clubs to choose for. Give the job some clubs in Clubs.',
  noStock: () => 'Nothing to choose from. Put grips for these clubs in Stock or on the shortlist.',
  limits: (cannot) =>
    `${cannot.length === 1 ? 'The one model tried cannot' : `None of the ${cannot.length} models can`} serve this set. ${listed(wayOn(cannot), 'or')}.`,
};

/** What would lift the limits that bite, in the order in which most models are kept off by them. */
function wayOn(cannot: readonly CannotServe[]): string[] {
  const counts = new Map<string, number>();
  for (const { size, limit } of cannot) {
    const way = size === undefined ? WAYS_ON[limit.limit] : 'let sizes differ more';
    counts.set(way, (counts.get(way) ?? 0) + 1);
  }
  const [first = '', ...rest] = [...counts].sort((a, b) => b[1] - a[1]).map(([way]) => way);
  return [first.charAt(0).toUpperCase() + first.slice(1), ...rest].slice(0, 3);
}

const WAYS_ON: Readonly<Record<Limit['limit'], string>> = {
  use: 'leave the putters out',
  lacks: 'complete what Stock says of the grips',
  core: 'put grips of another core on the shortlist',
  size: 'change the target diameter or the size tolerance',
  weight: 'raise the weight limit or choose another target reading',
  stock: 'order what is short',
  unknown: 'complete what Clubs says of the clubs',
};

/** A price in the sheet's own currency: two decimals, more only where it has more. */
export function priceText(price: number): string {
  const digits = String(price).split('.')[1]?.length ?? 0;
  return price.toFixed(Math.max(2, Math.min(4, digits)));
}

function listed(parts: readonly string[], last: 'and' | 'or' = 'and'): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} ${last} ${parts.at(-1)}`;
}
