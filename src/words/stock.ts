/** Words for what is on the shelves: quantities, what is short, and how the jobs on it end. */
import { exactSum } from '../core/index';
import type { Lack, Movement, OrderedLine, PlacedOrder, Renamed, Shelf, Stranded } from '../core/index';
import type {
  MoveDone,
  OrderDone,
  PlaceDone,
  ReleaseDone,
  ReserveDone,
  StockPageDone,
  UseDone,
} from '../workbook/stockDone';
import type { NotDone, Occupied } from '../workbook/outcomes';
import { dayWords } from './intake';
import { sayIssue } from './issues';
import { listed } from './listed';
import { NO_CLUBS, sayNotDone, sayOccupied } from './outcomes';
import { countOf } from './readings';

const UNIT_WORDS: Readonly<Record<Exclude<Shelf, 'grip'>, string>> = { tape: 'yd', weight: 'g', solvent: 'ml' };

const DECIMALS: Readonly<Record<Exclude<Shelf, 'grip'>, number>> = { tape: 2, weight: 1, solvent: 0 };

/** A number without needless noughts, a minus sign in front where it is below 0. @example plain(2.5) //=> '2.5' */
function plain(quantity: number, decimals: number): string {
  return String(Number(quantity.toFixed(decimals))).replace('-', '−');
}

/** @example quantityText('grip', 2) //=> '2 pieces' */
export function quantityText(shelf: Shelf, quantity: number): string {
  if (shelf === 'grip') return `${plain(quantity, 0)} ${Math.abs(quantity) === 1 ? 'piece' : 'pieces'}`;
  return `${plain(quantity, DECIMALS[shelf])} ${UNIT_WORDS[shelf]}`;
}

/** What it is, with the unit that a table's numbers are in. @example itemText('tape', 'Two-way tape') //=> 'Two-way tape, yd' */
export function itemText(shelf: Shelf, item: string): string {
  return shelf === 'grip' ? item : `${item}, ${UNIT_WORDS[shelf]}`;
}

/** How many, beside what names the unit. @example bareText('tape', 2.5) //=> '2.5' */
export function bareText(shelf: Shelf, quantity: number): string {
  return plain(quantity, shelf === 'grip' ? 0 : DECIMALS[shelf]);
}

/** How many, in a table whose heading or neighbour tells the unit of grips. @example shortText('tape', 2) //=> '2 yd' */
export function shortText(shelf: Shelf, quantity: number): string {
  return shelf === 'grip' ? plain(quantity, 0) : quantityText(shelf, quantity);
}

/** What one job does not get, from when, and what of it is on order. @example `R-204 lacks 2 from 2026-05-15, 1 of it on order` */
export function sayLack(shelf: Shelf, { job, due, quantity, onOrder }: Lack): string {
  const from = due === undefined ? '' : ` from ${dayWords(due)}`;
  const waits = onOrderText(shelf, { quantity, onOrder });
  return `${job} lacks ${shortText(shelf, quantity)}${from}${waits && `, ${waits}`}`;
}

/** How much of what is lacked is on order; blank: none. @example `1 of it on order` */
export function onOrderText(shelf: Shelf, { quantity, onOrder }: Pick<Lack, 'quantity' | 'onOrder'>): string {
  if (onOrder <= 0) return '';
  return onOrder >= quantity ? 'on order' : `${shortText(shelf, onOrder)} of it on order`;
}

/** An order by its number, whom it went to and when. @example `Order 3, Larch Supply, 2026-05-04` */
export function orderName({ order, supplier, day }: Pick<PlacedOrder, 'order' | 'supplier' | 'day'>): string {
  return [`Order ${order}`, ...(supplier ? [supplier] : []), ...(day === undefined ? [] : [dayWords(day)])].join(', ');
}

/** What became of a line of an order so far; blank where nothing did. @example `6 arrived, 1 cancelled` */
export function lineSoFar({ shelf, arrived, cancelled }: OrderedLine): string {
  return [
    ...(arrived > 0 ? [`${shortText(shelf, arrived)} arrived`] : []),
    ...(cancelled > 0 ? [`${shortText(shelf, cancelled)} cancelled`] : []),
  ].join(', ');
}

const STRANDED: Readonly<Record<Stranded['why'], (job: string) => string>> = {
  gone: (job) => `Job ${job} is no longer in Jobs, and has`,
  done: (job) => `Job ${job} is done, and still has`,
  unneeded: (job) => `Job ${job} no longer needs all of what it has:`,
};

/** Reservations that hold pieces for nobody, and what to do about them. */
export function sayStranded({ job, why, entries }: Stranded): string {
  const items = [...new Set(entries.map(({ shelf, item }) => `${shelf}\n${item}`))].map((key) => {
    const own = entries.filter(({ shelf, item }) => `${shelf}\n${item}` === key);
    const { shelf = 'grip', item = '' } = own[0] ?? {};
    return `${shortText(shelf, total(own.map(({ reserved }) => reserved)))} of ${item}`;
  });
  return `${STRANDED[why](job)} ${listed(items)} reserved.`;
}

function total(quantities: readonly number[]): number {
  return exactSum(quantities, 1000);
}

/** What moved, by shelf. @example '13 pieces, 4.08 yd and 12 g' */
function amounts(movements: readonly Movement[], kind: Movement['kind']): string {
  const own = movements.filter((movement) => movement.kind === kind);
  const texts = (['grip', 'tape', 'weight', 'solvent'] as const).flatMap((shelf) => {
    const quantity = total(own.filter((each) => each.shelf === shelf).map((each) => each.quantity));
    return quantity === 0 ? [] : [quantityText(shelf, quantity)];
  });
  return listed(texts);
}

function sayNot(end: NotDone | Occupied | { reason: 'unreadable'; issue: Parameters<typeof sayIssue>[0] }): string {
  if (end.reason === 'occupied') return sayOccupied(end);
  if (end.reason === 'unreadable') return `${sayIssue(end.issue)} Nothing was written.`;
  return sayNotDone(end);
}

function jobsText(jobs: readonly string[]): string {
  return jobs.length === 1 ? `job ${jobs[0] ?? ''}` : countOf(jobs.length, 'job');
}

/** How reserving ended; what is lacked is told by `reservedLines`. */
export function sayReserved(end: ReserveDone): string {
  const said = sayReservedAlone(end);
  return end.done && end.lacks.length > 0 ? `${said} Not all is there:` : said;
}

/** The same where what is lacked is told elsewhere. */
export function sayReservedAlone(end: ReserveDone): string {
  if (!end.done) {
    if (end.reason !== 'noOpenJob') return sayNot(end);
    return end.jobs.length === 0
      ? 'No job is open, so there is nothing to reserve for.'
      : `${listed(end.jobs)}: no such job is open and has clubs. Nothing was written.`;
  }
  const { jobs, movements } = end;
  const reserved = amounts(movements, 'reserved');
  const released = amounts(movements, 'released');
  const said = [
    reserved ? `Reserved ${reserved} for ${jobsText(jobs)}.` : '',
    released ? `Released ${released} that ${jobs.length === 1 ? 'it does' : 'they do'} not get or need any more.` : '',
    movements.length === 0 ? `Nothing was to be changed for ${jobsText(jobs)}.` : '',
  ];
  return said.filter((text) => text !== '').join(' ');
}

/** What jobs lack, and what is to be mended, a line each. */
export function reservedLines(end: ReserveDone): string[] {
  if (!end.done) return [];
  return [...end.lacks.map((lack) => `${lack.item}: ${sayLack(lack.shelf, lack)}`), ...end.problems.map(sayIssue)];
}

/** How releasing ended. */
export function sayReleased(end: ReleaseDone): string {
  if (!end.done) return sayNot(end);
  return end.movements.length === 0
    ? 'Nothing was reserved there.'
    : `Released ${amounts(end.movements, 'released')} of ${jobsText(end.jobs)}.`;
}

/** How taking what a job used ended. */
export function sayUsed(end: UseDone): string {
  if (end.done) {
    const said = end.movements.some(({ kind }) => kind === 'used')
      ? `Taken from stock for job ${end.job}: ${amounts(end.movements, 'used')}.`
      : `What job ${end.job} uses has been taken from stock already.`;
    return [said, ...sayRenamed(end.renamed)].join(' ');
  }
  if (end.reason === 'noClubs') return NO_CLUBS;
  if (end.reason !== 'cannotTake') return sayNot(end);
  const { issues, tooFew } = end.cannot;
  const few = tooFew.map(
    ({ item, shelf, onHand, wanted }) =>
      `${item}: ${quantityText(shelf, wanted)} used, ${shortText(shelf, onHand)} on hand.`,
  );
  const mend = few.length > 0 ? ['Count what is there, then take it again.'] : [];
  return [...issues.map(sayIssue), ...few, ...mend, 'Nothing was written.'].join(' ');
}

/** Clubs that are called otherwise by now than when their piece was taken. */
export function sayRenamed(renamed: readonly Renamed[]): string[] {
  return renamed.map(
    ({ was, now, item }) => `${item} of ${now} was taken before, as that of ${was}, and was not taken again.`,
  );
}

const MOVED: Readonly<Record<'arrived' | 'sentBack' | 'broughtBack' | 'writtenOff', string>> = {
  arrived: 'arrived',
  sentBack: 'sent back',
  broughtBack: 'brought back',
  writtenOff: 'written off',
};

/** How something that came, went or was counted was entered. */
export function sayMoved(end: MoveDone): string {
  if (!end.done) return sayNot(end);
  const { shelf, item, kind, quantity } = end.movement;
  const now = end.onHand === undefined ? 'not counted' : `${quantityText(shelf, end.onHand)} on hand`;
  if (kind in MOVED) {
    const said = `${item}: ${quantityText(shelf, quantity)} ${MOVED[kind as keyof typeof MOVED]}, ${now}.`;
    return [said, ...sayShares(end)].join(' ');
  }
  const off =
    quantity === 0
      ? 'as it was'
      : `${shortText(shelf, Math.abs(quantity))} ${quantity > 0 ? 'more' : 'fewer'} than it said`;
  return `${item} counted: ${now}, ${off}.`;
}

/** Which orders what came counts for; nothing where none waited for it. */
function sayShares({ movement, shares }: Extract<MoveDone, { done: true }>): string[] {
  if (shares.every(({ order }) => order === undefined)) return [];
  return shares.map(({ order, quantity, outstanding }) => {
    const part = shortText(movement.shelf, quantity);
    if (order === undefined) return `${part} beyond what was ordered.`;
    const rest = outstanding > 0 ? `${shortText(movement.shelf, outstanding)} still to come` : 'all of it here';
    return `Order ${order}: ${part}, ${rest}.`;
  });
}

/** How placing an order, or entering one thing of an order, ended. */
export function sayPlaced(end: PlaceDone): string {
  if (!end.done) {
    if (end.reason !== 'orderChanged') return sayNot(end);
    return `What is to be ordered ${fromWhom(end.supplier)} has changed since it was shown. Nothing was written; look at it once more.`;
  }
  const { order, supplier, movements } = end;
  if (order === null) return `Nothing is to be ordered ${fromWhom(supplier)}: what is short is on order.`;
  const [first] = movements;
  if (first?.kind !== 'cancelled') {
    return `Order ${order} ${supplier ? `with ${supplier}` : 'with nobody named'}: ${amounts(movements, 'ordered')}.`;
  }
  const of = listed([...new Set(movements.flatMap((row) => row.order ?? []))]);
  return `${first.item}: ${amounts(movements, 'cancelled')} of order ${of} cancelled.`;
}

function fromWhom(supplier: string): string {
  return supplier ? `from ${supplier}` : 'without a supplier';
}

/** How taking in an order, or giving up its rest, ended. */
export function sayOrderEnded(end: OrderDone): string {
  if (!end.done) return sayNot(end);
  const { order, movements } = end;
  if (movements.length === 0) return `Nothing of order ${order} is still to come.`;
  const kind = movements[0]?.kind === 'cancelled' ? 'cancelled' : 'arrived';
  return `Order ${order}: ${amounts(movements, kind)} ${kind}.`;
}

/** How filling a page ended. @param what `Order` */
export function sayStockPage(end: StockPageDone, what: 'Order' | 'Pick list'): string {
  if (end.done && end.lines === 0)
    return `Nothing more is to be ordered; what is on order is listed in ${end.sheet}. Fill it again after a change.`;
  if (end.done)
    return `${what} of ${countOf(end.lines, 'line')} filled into ${end.sheet}. Fill it again after a change.`;
  if (end.reason === 'nothing') {
    return what === 'Order'
      ? 'Nothing is short or at its reorder point, so there is nothing to order.'
      : 'No open job needs anything from the shelves.';
  }
  return end.reason === 'noRoom' ? 'The page would run over the edge of the sheet.' : sayNot(end);
}

/** What is written in the order sheet and the pick list. */
export const STOCK_PAGE_WORDS = {
  order: 'Order',
  orderHow: 'Whole packs: with what is on order, enough for every open job, and more left than the reorder point.',
  placed: 'On order',
  noSupplier: 'No supplier named',
  together: (supplier: string) => `Together ${supplier}`.trim(),
  all: 'All orders',
  unpriced: (items: readonly string[]) => `Without a cost: ${listed(items)}.`,
  lackFor: (shelf: Shelf, lacks: readonly Lack[]) => lacks.map((lack) => sayLack(shelf, lack)).join('; '),
  pick: 'Pick list',

  jobs: 'For',
  dueOf: (job: string, due: number | undefined) => (due === undefined ? job : `${job} (${dayWords(due)})`),
  split: (shelf: Shelf, jobs: readonly { readonly job: string; readonly quantity: number }[]) =>
    jobs.map(({ job, quantity }) => `${job}: ${shortText(shelf, quantity)}`).join('; '),
  strips: 'Two-way strips',
  stripsOf: (strips: number) => countOf(strips, 'strip'),
  shelves: { grip: 'Grips', tape: 'Tape', weight: 'Weight' },
  others: 'Besides',
} as const;
