/**
 * One trial of everything that the pane does on a workbook, through any port: what must have happened before, and the deed itself as the
 * pane does it, with the sentence that a person reads. A deed without a trial fails `trials.test.ts`.
 */
import { compareGrips, openOrders, type Lesson, type Offer } from '../../src/core/index';
import type { Deed, Going } from '../../src/pane/state/deed';
import { scopeOf, shopOf } from '../../src/pane/state/seen';
import type { FillAsked, Outcome, ShopSeen, Who, Work } from '../../src/pane/state/work';
import {
  closeDeed,
  judgeDeed,
  labelsDeed,
  redoDeed,
  slipDeed,
  startDeed,
  ticketDeed,
} from '../../src/pane/view/tools/benchDeeds';
import { takeConstantDeed } from '../../src/pane/view/tools/calibrateDeeds';
import { compareDeed } from '../../src/pane/view/tools/compareDeed';
import { handDeed } from '../../src/pane/view/tools/handDeed';
import { beginDeed, intakeDeed, remindersDeed, takeLastDeed } from '../../src/pane/view/tools/intakeDeeds';
import { issueDeed, optionsDeed, voidDeed } from '../../src/pane/view/tools/quoteDeeds';
import {
  cancelDeed,
  moveDeed,
  orderDeed,
  pickDeed,
  placeDeed,
  releaseDeed,
  reserveDeed,
  takeInDeed,
  thingDeed,
  useDeed,
} from '../../src/pane/view/tools/stockDeeds';
import { batchDeed, weekDeed } from '../../src/pane/view/tools/weekDeeds';
import {
  besideDeed,
  connectDeed,
  disconnectDeed,
  followDeed,
  takeRowsInDeed,
} from '../../src/pane/view/tools/listsDeeds';
import { asked, beginMatch, type Match } from '../../src/pane/view/tools/listsModel';
import { workOn } from '../../src/pane/workOn';
import { STOCK } from '../../src/workbook/schema';
import { connectList, nameFor } from '../../src/workbook/connect/connectList';
import type { Connection } from '../../src/workbook/connect/connections';
import { findLists, readList } from '../../src/workbook/connect/lists';
import { connecting } from '../../src/workbook/connecting';
import { keepPlans, keptPlans, PLANS_KEY } from '../../src/workbook/planPlaces';
import { bringUpToDate } from '../../src/workbook/upToDate';
import { sayIssue } from '../../src/words/issues';
import { sayPortError } from '../../src/words/portErrors';
import { sayUpToDate, UP_TO_DATE } from '../../src/words/upToDate';
import { planScope, scopeRows } from '../../src/workbook/planScope';
import { PortError, type WorkbookPort } from '../../src/workbook/port';
import { stockOf } from '../../src/workbook/stockScope';
import { makeShop, PLAIN, TODAY, typeInto, type ShopNames } from './shop';

export interface Trial {
  readonly name: string;
  /** The exported function that it tries, of acts.ts or of a file of deeds. */
  readonly of: string;
  /** It begins in a workbook without our tables. */
  readonly empty?: true;
  /** Trials that went through before, in that order. */
  readonly after?: readonly string[];
  /** What a person types before it. */
  readonly typed?: (port: WorkbookPort) => Promise<void>;
  readonly run: (port: WorkbookPort) => Promise<Outcome>;
  /** It needs a host that calculates. */
  readonly calculates?: true;
  /** It writes more than once, each time something whole: stopped between, the parts that were written stay. */
  readonly inParts?: true;
  /** *Undo last fill* does not take it back: a quote stays, and so do the tables. */
  readonly stays?: true;
}

const quiet: Going = { say: () => undefined, signal: new AbortController().signal };

/** Looks at the workbook as the pane does when it is opened, then does something. */
async function looked(port: WorkbookPort, act: (work: Work, seen: ShopSeen) => Promise<Outcome>): Promise<Outcome> {
  const work = workOn(port);
  const look = await work.read();
  return look.shop ? act(work, look.shop) : look.failed;
}

/** What a screen says where its buttons would be. */
type NoButton = Extract<Outcome, { kind: 'failed' }>;

const noButton = (text: string): NoButton => ({ kind: 'failed', title: 'Stock', text, list: [] });

const deed =
  (make: (seen: ShopSeen) => Deed | NoButton) =>
  (port: WorkbookPort): Promise<Outcome> =>
    looked(port, async (work, seen) => {
      const made = make(seen);
      return 'kind' in made ? made : work.deed(seen, made, null, quiet);
    });

const OFFER = { field: 'layerGrams', item: undefined, suggested: 1.9, low: 1.8, high: 2 } as Offer;
const TERMS = { issued: TODAY };
/** A list of the shop's own, under headings like ours. */
async function typeList(port: WorkbookPort): Promise<void> {
  const cells = [
    ['Item', 'Description', 'Core (in)', 'Mass (g)', 'Upper diameter (in)', 'On hand'],
    ['ASH-60', '=soft', 0.6, 50, 0.94, 4],
    ['ELM-58', '+firm', 0.58, 48, 0.92, 7],
  ];
  const at = { sheet: 'Shelf', row: 0, column: 0, rows: 3, columns: 6 };
  const seen = await port.read([{ read: 'block', at }]);
  await port.apply(
    [
      { do: 'sheet', name: 'Shelf' },
      { do: 'write', at, cells },
      { do: 'table', name: 'Shelf', at },
    ],
    seen,
    { label: 'typed' },
  );
}

const HOOKS = { sheet: 'Hooks', row: 0, column: 0, rows: 3, columns: 6 };

const ON_HOOKS: Connection = {
  schema: STOCK,
  list: nameFor(STOCK),
  columns: [
    { key: 'item', heading: 'Item', position: 0, unit: null },
    { key: 'core', heading: 'Core (in)', position: 2, unit: null },
    { key: 'mass', heading: 'Mass (g)', position: 3, unit: null },
  ],
};

/** A connected list of plain cells, and a row that was typed below it since. */
async function typeGoingOn(port: WorkbookPort): Promise<void> {
  const cells = [
    ['Item', 'Description', 'Core (in)', 'Mass (g)', 'Upper diameter (in)', 'On hand'],
    ['ASH-60', '=soft', 0.6, 50, 0.94, 4],
    ['ELM-58', '+firm', 0.58, 48, 0.92, 7],
    ['FIR-58', 'plain', 0.58, 49, 0.92, 2],
  ];
  const at = { ...HOOKS, rows: 4 };
  const seen = await port.read([{ read: 'block', at }]);
  const options = { label: 'list', receiptKey: 'typed' };
  await port.apply(
    [
      { do: 'sheet', name: HOOKS.sheet },
      { do: 'write', at, cells },
    ],
    seen,
    options,
  );
  const read = await readList(port, { table: null, at: HOOKS });
  const match = read && beginMatch(read, 'Stock');
  if (!match) throw new Error('the list is not there');
  const end = await connectList(port, asked(match));
  if (!end.done) throw new Error('the list was not connected');
}

async function matchOf(port: WorkbookPort): Promise<Match> {
  const list = (await findLists(port)).find(({ table }) => table === 'Shelf');
  const read = list && (await readList(port, list));
  const match = read && beginMatch(read, 'Stock');
  if (!match) throw new Error('the list is not there');
  return match;
}

/** Every club of the job as if measured on the bench, and waived where it is off. */
async function measured(port: WorkbookPort): Promise<void> {
  for (const row of [1, 2, 3]) {
    await typeInto(port, 'Checkin', row, {
      Reading: 'D2.2',
      'Mass (g)': 400 + row,
      Decision: 'Waive',
      Reason: '=agreed',
    });
  }
}

const HAND = { handLength: 7.5, fingerLength: 3.15, lowerHandLength: null, lowerFingerLength: 3 };

/** Everything that the pane does, on the shop with these names. */
export function trialsOf(names: ShopNames): readonly Trial[] {
  const { job, otherJob, customer, grip, otherGrip, club, note } = names;
  const byJob: Who = { by: 'job', job: job.trim() };
  const rowsOf = (seen: ShopSeen): readonly number[] => seen.jobs.find((each) => each.job === job.trim())?.rows ?? [];

  const filling =
    (choices: FillAsked['choices']) =>
    (port: WorkbookPort): Promise<Outcome> =>
      looked(port, (work, seen) =>
        work.fill(seen, { who: byJob, rows: rowsOf(seen), choices, where: 'planSheet', agreed: null }),
      );

  const comparing = deed((seen) => {
    const { tables } = shopOf(seen);
    const rows = rowsOf(seen);
    const planned = tables.Clubs && planScope(tables, scopeRows(tables.Clubs, scopeOf(byJob, rows)), {});
    if (!planned?.ok) return noButton('The job cannot be planned.');
    return compareDeed({
      who: byJob,
      rows,
      comparison: compareGrips(planned.value.input, {}),
      about: note ?? 'As they are.',
    });
  });

  const lesson: Lesson = {
    row: 1,
    club,
    oldItem: otherGrip,
    removedGrams: 52.31,
    gripGrams: 48.76,
    balanceInches: 4.221,
    appliesTo: [2, 3],
  };

  const issuing = deed(() => issueDeed({ what: { job }, terms: TERMS, shown: null }));
  const move = (kind: 'arrived' | 'writtenOff' | 'counted') =>
    deed(() => moveDeed({ shelf: 'grip', item: grip, kind, quantity: '2', note: note ?? 'as told' }, () => undefined));

  return [
    { name: 'set up', of: 'setUp', empty: true, run: (port) => workOn(port).setUp(), stays: true },
    {
      name: 'make the other tables',
      of: 'setUp',
      empty: true,
      typed: async (port) => {
        await typeList(port);
        const match = await matchOf(port);
        const end = await deed(() => connectDeed(asked(match), () => undefined))(port);
        if (end.kind !== 'done') throw new Error(said(end));
      },
      run: (port) => workOn(connecting(port)).setUp(),
    },
    { name: 'fill plan', of: 'fill', run: filling({ newItem: otherGrip, layers: 2 }) },
    { name: 'fill plan again', of: 'fill', after: ['fill plan'], run: filling({ newItem: 'OAK-58' }) },
    {
      name: 'fill plan of chosen clubs',
      of: 'fill',
      run: (port) =>
        looked(port, (work, seen) =>
          work.fill(seen, {
            who: { by: 'selection' },
            rows: [1, 4],
            choices: { layers: 1 },
            where: 'planSheet',
            agreed: null,
          }),
        ),
    },
    {
      name: 'freeze',
      of: 'freeze',
      after: ['fill plan'],
      run: (port) => looked(port, (work, seen) => work.freeze(seen, byJob, rowsOf(seen))),
      calculates: true,
    },
    { name: 'undo', of: 'undo', after: ['fill plan'], run: (port) => workOn(port).undo(), inParts: true },
    {
      name: 'use a lesson',
      of: 'teach',
      run: (port) => looked(port, (work, seen) => work.useLesson(seen, lesson, null)),
    },
    { name: 'compare', of: 'compareDeed', run: comparing },
    { name: 'keep a hand', of: 'handDeed', run: deed(() => handDeed(job, HAND)) },
    { name: 'issue a quote', of: 'issueDeed', run: issuing, stays: true },
    { name: 'issue its revision', of: 'issueDeed', after: ['issue a quote'], run: issuing, stays: true },
    {
      name: 'void a quote',
      of: 'voidDeed',
      after: ['issue a quote'],
      run: deed(() => voidDeed({ number: 1, revision: 1 })),
      stays: true,
    },
    {
      name: 'quote options',
      of: 'optionsDeed',
      run: deed(() =>
        optionsDeed(job, TERMS, [
          { name: note ?? 'Soft', choices: { newItem: otherGrip } },
          { name: 'As they are', choices: {} },
        ]),
      ),
    },
    { name: 'reserve', of: 'reserveDeed', run: deed(() => reserveDeed(null)) },
    { name: 'release', of: 'releaseDeed', after: ['reserve'], run: deed(() => releaseDeed([job])) },
    { name: 'use stock', of: 'useDeed', after: ['reserve'], run: deed(() => useDeed(job)) },
    { name: 'arrived', of: 'moveDeed', run: move('arrived') },
    { name: 'written off', of: 'moveDeed', run: move('writtenOff') },
    { name: 'counted', of: 'moveDeed', run: move('counted') },
    { name: 'order', of: 'orderDeed', run: deed(() => orderDeed()) },
    {
      name: 'place an order',
      of: 'placeDeed',
      run: deed((seen) => {
        const stock = stockNow(seen);
        if (!stock.ok) return noButton(sayIssue(stock.issue));
        const [wanted] = stock.value.orders;
        if (!wanted) return noButton('Nothing is to be ordered.');
        return placeDeed({ supplier: wanted.supplier, lines: wanted.lines });
      }),
    },
    {
      name: 'take an order in',
      of: 'takeInDeed',
      after: ['place an order'],
      run: ofPlaced(takeInDeed),
    },
    {
      name: 'put on order',
      of: 'thingDeed',
      run: deed(() =>
        thingDeed({ shelf: 'grip', item: grip, kind: 'ordered', quantity: '2', note: note ?? '' }, () => undefined),
      ),
    },
    {
      name: 'cancel an order',
      of: 'cancelDeed',
      after: ['put on order'],
      run: ofPlaced(cancelDeed),
    },
    { name: 'pick list', of: 'pickDeed', run: deed(() => pickDeed(null)) },
    { name: 'ticket', of: 'ticketDeed', run: deed(() => ticketDeed(job)) },
    { name: 'labels', of: 'labelsDeed', run: deed(() => labelsDeed(job)) },
    { name: 'start check-in', of: 'startDeed', run: deed(() => startDeed(job)) },
    {
      name: 'judge',
      of: 'judgeDeed',
      after: ['start check-in'],
      typed: measured,
      run: deed(() => judgeDeed(job)),
    },
    { name: 'close', of: 'closeDeed', after: ['judge'], run: deed(() => closeDeed(job)) },
    { name: 'pick-up slip', of: 'slipDeed', after: ['close'], run: deed(() => slipDeed(job)) },
    { name: 'redo', of: 'redoDeed', after: ['close'], run: deed(() => redoDeed(job, [club])) },
    {
      name: 'begin a job',
      of: 'beginDeed',
      run: deed(() =>
        beginDeed(
          {
            job: null,
            suggested: null,
            customer,
            due: TODAY + 10,
            today: TODAY,
            clubs: [
              { name: `${note ?? ''}9 iron`, kind: 'Iron' },
              { name: 'Putter', kind: 'Putter' },
            ],
            hand: 'Left',
            firstTag: 'A09',
            authorisedBy: note ?? '',
            last: [],
          },
          () => undefined,
        ),
      ),
    },
    { name: 'intake sheet', of: 'intakeDeed', run: deed(() => intakeDeed(job)) },
    { name: 'take last time', of: 'takeLastDeed', run: deed(() => takeLastDeed(otherJob)) },
    { name: 'reminders', of: 'remindersDeed', run: deed(() => remindersDeed(TODAY)) },
    { name: 'week', of: 'weekDeed', run: deed(() => weekDeed(TODAY)) },
    {
      name: 'batch',
      of: 'batchDeed',
      run: deed(() => batchDeed({ jobs: [job], quote: true, reserve: true, plan: true, today: TODAY })),
      inParts: true,
      stays: true,
    },
    { name: 'take a constant', of: 'takeConstantDeed', run: deed(() => takeConstantDeed(OFFER)) },
    {
      name: 'bring up to date',
      of: 'bringUpToDate',
      typed: (port) => port.remember(PLANS_KEY, keepPlans([], null)),
      run: deed(() => ({
        doing: UP_TO_DATE.doing,
        done: UP_TO_DATE.done,
        failed: UP_TO_DATE.failed,
        run: async (port) => {
          const end = await bringUpToDate(port);
          return { end, text: sayUpToDate(end) };
        },
      })),
      stays: true,
    },
    {
      name: 'connect a list',
      of: 'connectDeed',
      typed: typeList,
      run: async (port) => {
        const match = await matchOf(port).catch((error: unknown) => {
          // The screen says by itself that it could not look.
          if (error instanceof PortError) return error;
          throw error;
        });
        if (match instanceof PortError)
          return { kind: 'failed', title: 'No look', text: sayPortError(match), list: [] };
        return deed(() => connectDeed(asked(match), () => undefined))(port);
      },
      stays: true,
    },
    {
      name: 'take in the rows below a list',
      of: 'takeRowsInDeed',
      typed: typeGoingOn,
      run: deed(() => takeRowsInDeed({ table: null, at: HOOKS }, ON_HOOKS)),
      stays: true,
    },
    {
      name: 'let plans read the lists',
      of: 'followDeed',
      after: ['fill plan', 'connect a list'],
      run: async (port) => {
        // The screen says by itself that it could not look.
        const kept = await port.recall(PLANS_KEY).catch((error: unknown) => error);
        if (kept instanceof PortError) return noButton(sayPortError(kept));
        const plans = keptPlans(kept as string | null)?.plans ?? [];
        const block = { sheet: `Plan ${job.trim()}`, row: 0, column: 0, rows: 13, columns: 12 };
        const behind = plans.map((plan) => ({ place: { ...plan, block }, tables: ['Stock'] }));
        return deed(() => followDeed(behind))(port);
      },
    },
    {
      name: 'disconnect a list',
      of: 'disconnectDeed',
      after: ['connect a list'],
      run: deed(() => disconnectDeed('Stock', () => undefined)),
      stays: true,
    },
    {
      name: 'add a column to a list',
      of: 'addLacking',
      after: ['connect a list'],
      run: (port) => workOn(connecting(port)).addColumns({ table: 'Stock', headers: ['Supplier'] }),
    },
    {
      name: 'results beside the clubs',
      of: 'besideDeed',
      run: deed(() => besideDeed(job.trim())),
    },
  ];
}

export const TRIALS = trialsOf(PLAIN);

const stockNow = (seen: ShopSeen) => stockOf(shopOf(seen));

/** Does something with the order that still waits for something. */
function ofPlaced(make: (order: string) => Deed) {
  return deed((seen) => {
    const stock = stockNow(seen);
    return stock.ok ? make(openOrders(stock.value.placed)[0]?.order ?? '') : noButton(sayIssue(stock.issue));
  });
}

export function trialNamed(name: string): Trial {
  const found = TRIALS.find((trial) => trial.name === name);
  if (!found) throw new Error(`there is no trial ${name}`);
  return found;
}

/** Brings an empty workbook to where a trial begins. */
export async function prepare(trial: Trial, port: WorkbookPort): Promise<void> {
  if (!trial.empty) await makeShop(port);
  await bringTo(trial, port);
}

/** Brings a shop's workbook to where a trial begins. */
export async function bringTo(trial: Trial, port: WorkbookPort): Promise<void> {
  for (const name of trial.after ?? []) {
    const earlier = trialNamed(name);
    await bringTo(earlier, port);
    const end = await earlier.run(port);
    if (end.kind !== 'done') throw new Error(`${name} before ${trial.name}: ${said(end)}`);
  }
  await trial.typed?.(port);
}

/** What a person reads of how it ended. */
export function said(end: Outcome): string {
  return end.kind === 'occupied' ? `occupied: ${end.cells.join(', ')}` : `${end.title}: ${end.text}`;
}
