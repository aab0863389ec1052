/** From a plan to the lines of its quote. */
import { exactSum, PER_GRAM } from '../choose/exact';
import { readAmount } from '../decimal';
import type { ClubPlan, SetPlan } from '../plan/types';
import type { Issue } from '../result';
import { mergeLines } from './merge';
import { AMOUNT_LIMITS } from './read';
import { firstOfEach, laterOnes, NEEDED, noRate, rateIssues, rateLine, ratesFor, unitsOf } from './rates';
import { LINE_CLASSES, type ClubWork, type PricedItem, type PricedWay, type QuoteLine, type Rate } from './types';
import { worksOf, type AskedWork } from './works';

export interface LinesOptions {
  /** What the plan does not say about a club, by its row. */
  readonly work?: ReadonlyMap<number, ClubWork>;
}

export interface PlannedLines {
  readonly lines: readonly QuoteLine[];
  /**
   * What is missing or wrong, each said once. A line without a price is kept, and no quote is made of it; what is not listed
   * anywhere has no line, so that only a duplicate leaves the lines whole.
   */
  readonly issues: readonly Issue[];
}

/** A line on its way: what it says, and for which clubs how much of it. */
interface Gathering {
  readonly line: QuoteLine;
  readonly quantities: number[];
  readonly rows: number[];
}

/** What the lines of one plan are made with, and where they gather. */
interface Making {
  readonly rates: readonly Rate[];
  readonly stock: ReadonlyMap<string, PricedItem>;
  readonly ways: Map<string, PricedWay>;
  /** Ways that Rates charges, by the way as listed. */
  readonly included: Map<PricedWay, PricedWay>;
  /** By the row of Stock, Rates or Weights that each comes from. */
  readonly lines: Map<object, Gathering>;
  readonly issues: Issue[];
}

/**
 * Lines for everything that a plan does: grips by item, fitting, layers beyond what a fitting includes, salvage or disposal of the old
 * grips, weighing and reading, weight by way, length changes, and what is charged for every club or job.
 *
 * A club without a grip to fit is not charged. What costs nothing has 0 for its price; a price that is not there is an issue that
 * names it.
 *
 * @param plan the set as planned
 * @param rates what the shop charges for work
 * @param stock prices of grips
 * @param ways prices of weight, for one club; a blank one is 0 where Rates charges the weight itself
 * @param options what the client wants of each club
 */
export function linesFromPlan(
  plan: SetPlan,
  rates: readonly Rate[],
  stock: readonly PricedItem[],
  ways: readonly PricedWay[],
  options: LinesOptions = {},
): PlannedLines {
  const making: Making = {
    rates: firstOfEach(rates, ({ work }) => work),
    stock: byName(stock, ({ item }) => item),
    ways: byName(ways, ({ name }) => name),
    included: new Map(),
    lines: new Map(),
    issues: rateIssues(rates),
  };
  making.issues.push(...pricesTwice(stock, plan));
  for (const club of plan.clubs) addClub(club, options.work?.get(club.row) ?? {}, making);
  const lines = [...making.lines.values()].map(({ line, quantities, rows }) => ({
    ...line,
    quantity: exactSum(quantities, PER_GRAM),
    rows,
  }));
  return { lines: mergeLines(inOrder(lines)), issues: eachOnce(making.issues) };
}

function addClub(club: ClubPlan, work: ClubWork, making: Making): void {
  if (club.item === undefined && !work.ownGrip) return;
  let charged = false;
  for (const asked of worksOf(club, work, making.rates)) {
    const rates = addWork(club, making, asked);
    if (asked.use === 'weight') charged ||= rates.length > 0;
    if (asked.needed === NEEDED.fitting && !work.ownGrip) addGrip(club, making);
  }
  if (club.remedy && club.remedy.grams > 0) addWeight(club, club.remedy.way, charged, making);
}

function addGrip(club: ClubPlan, making: Making): void {
  const wanted = club.item ?? '';
  const item = making.stock.get(wanted.toLowerCase());
  if (!item) {
    making.issues.push({ code: 'unknownItem', field: 'New grip', got: wanted });
    return;
  }
  const field = `Price of ${item.item} in Stock`;
  addLine(item, () => itemLine(item, []), { quantity: 1, row: club.row, field }, making);
}

/** One grip of the shop's. */
export function itemLine(item: PricedItem, rows: readonly number[], quantity = 1): QuoteLine {
  const described = item.description?.trim();
  return {
    class: 'grip',
    description: described ? `${item.item}, ${described}` : item.item,
    item: item.item,
    quantity,
    unitPrice: item.price,
    unitCost: item.cost,
    tax: item.tax,
    rows,
  };
}

/**
 * The way's own price for a club. A way without a price costs nothing where Rates charges the weight itself, by the gram or the club, and
 * still has its minutes and what it costs the shop. That work is charged for putting a reading right does not say so: what is stuck on may be
 * dear.
 */
function addWeight(club: ClubPlan, name: string, charged: boolean, making: Making): void {
  const listed = wayNamed(name, making);
  const price = readAmount(listed.price, name);
  const isIn = charged && !price.ok && price.issue.code === 'blank';
  const way = isIn ? includedWay(listed, making) : listed;
  addLine(way, () => wayLine(way), { quantity: 1, row: club.row, field: `Price of ${name} in Weights` }, making);
}

/** The same without a price of its own; one for all clubs. */
function includedWay(way: PricedWay, { included }: Making): PricedWay {
  const known = included.get(way) ?? { ...way, price: 0 };
  included.set(way, known);
  return known;
}

/** A way that Weights does not list has no price either. */
function wayNamed(name: string, making: Making): PricedWay {
  const key = name.trim().toLowerCase();
  const way = making.ways.get(key) ?? { name };
  making.ways.set(key, way);
  return way;
}

function wayLine({ name, price, cost, tax, minutes }: PricedWay): QuoteLine {
  return {
    class: 'weight',
    description: name,
    quantity: 1,
    unitPrice: price,
    unitCost: cost,
    tax,
    minutesEach: minutes,
    rows: [],
  };
}

/** Charges a club for a work; answers the rates by which it is charged. */
function addWork(club: ClubPlan, making: Making, { use, layers = 0, grams = 0, needed }: AskedWork): readonly Rate[] {
  const rates = ratesFor(making.rates, use, club.kind);
  if (rates.length === 0 && needed !== undefined) making.issues.push(noRate(needed));
  for (const rate of rates) {
    if (rate.per === 'job' && making.lines.has(rate)) continue;
    const quantity = unitsOf(rate, { layers, grams });
    const field = `Price of ${rate.work} in Rates`;
    addLine(rate, () => rateLine({ ...rate, use }, quantity), { quantity, row: club.row, field }, making);
  }
  return rates;
}

/** How much of a line a club takes, and how its price is called. */
interface Share {
  readonly quantity: number;
  readonly row: number;
  readonly field: string;
}

/** One more of a line; it is made, and its price looked at, when it is first needed. */
function addLine(source: object, make: () => QuoteLine, { quantity, row, field }: Share, making: Making): void {
  const before = making.lines.get(source);
  if (before) {
    before.quantities.push(quantity);
    before.rows.push(row);
    return;
  }
  const line = make();
  const price = readAmount(line.unitPrice, field, AMOUNT_LIMITS);
  if (!price.ok) making.issues.push(price.issue);
  making.lines.set(source, { line, quantities: [quantity], rows: [row] });
}

/** Grips first, then work, in the order of `LINE_CLASSES`. */
export function inOrder(lines: readonly QuoteLine[]): QuoteLine[] {
  return [...lines].sort((one, other) => LINE_CLASSES.indexOf(one.class) - LINE_CLASSES.indexOf(other.class));
}

/** First of each name wins, as in the plan. */
function byName<T>(list: readonly T[], nameOf: (each: T) => string): Map<string, T> {
  return new Map(firstOfEach(list, nameOf).map((each) => [nameOf(each).trim().toLowerCase(), each]));
}

/** Items of the plan that Stock lists twice: whose price is it? */
function pricesTwice(stock: readonly PricedItem[], plan: SetPlan): Issue[] {
  const worn = new Set(plan.clubs.map(({ item }) => item?.toLowerCase()));
  return laterOnes(stock, ({ item }) => item)
    .filter(({ item }) => worn.has(item.trim().toLowerCase()))
    .map(({ item }): Issue => ({ code: 'duplicate', field: 'Item in Stock', got: item }));
}

function eachOnce(issues: readonly Issue[]): Issue[] {
  return [...new Map(issues.map((issue) => [JSON.stringify(issue), issue])).values()];
}
