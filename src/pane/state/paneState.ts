/** The pane's state and everything that can happen to it, without a screen and without a workbook. */
import type { PlanInput } from '../../core/index';
import type { ClubChoices } from '../../workbook/choices';
import { changedForm, EMPTY_FORM, followed, withPerClub, type Form } from './form';
import { EMPTY_TOOLS, forAnotherSet, type Screen, type Tools } from './tools';
import type { Outcome, ShopSeen, Where, Who } from './work';

/** What is being done on the workbook; `look` is the first read. */
export type Task = 'look' | 'setUp' | 'fill' | 'freeze' | 'undo' | 'lesson' | 'deed';

/** A deed that runs. */
export interface Doing {
  readonly text: string;
  readonly canStop: boolean;
}

/** Rows drawn at once: a list of thousands is planned whole but shown in parts. */
export const PART = 40;

export interface PaneState {
  readonly stage: 'loading' | 'failed' | 'firstRun' | 'plan';
  readonly shop: ShopSeen | null;
  /** The person said *Not now*. */
  readonly skipped: boolean;
  readonly who: Who;
  /** Rows of Clubs that are selected in the sheet; null while the selection lies elsewhere. */
  readonly selection: readonly number[] | null;
  readonly screen: Screen;
  readonly tools: Tools;
  readonly form: Form;
  readonly where: Where;
  readonly shown: number;
  /** Rows whose details are open. */
  readonly open: readonly number[];
  readonly task: Task | null;
  /** What a screen's own deed says while it runs. */
  readonly doing: Doing | null;
  readonly outcome: Outcome | null;
  /** A list of the shop's can be read no more: nothing that was planned from it is shown until it can. */
  readonly lost: boolean;
}

export const START: PaneState = {
  stage: 'loading',
  shop: null,
  skipped: false,
  who: { by: 'job', job: '' },
  selection: null,
  screen: 'plan',
  tools: EMPTY_TOOLS,
  form: EMPTY_FORM,
  where: 'planSheet',
  shown: PART,
  open: [],
  task: 'look',
  doing: null,
  outcome: null,
  lost: false,
};

export type PaneEvent =
  | { readonly on: 'seen'; readonly shop: ShopSeen }
  | { readonly on: 'unseen'; readonly outcome: Outcome }
  | { readonly on: 'skip' }
  | { readonly on: 'who'; readonly who: Who }
  | { readonly on: 'selected'; readonly rows: readonly number[] | null }
  | { readonly on: 'form'; readonly change: Partial<Form> }
  | { readonly on: 'screen'; readonly screen: Screen }
  | {
      [Tool in keyof Tools]: { readonly on: 'tool'; readonly tool: Tool; readonly change: Partial<Tools[Tool]> };
    }[keyof Tools]
  /** What a screen found is taken over into the fields; the plan shows it. */
  | {
      readonly on: 'take';
      readonly from: Screen;
      readonly form?: Partial<Form>;
      readonly perClub?: ReadonlyMap<number, ClubChoices>;
      /** Where to go on; the plan where nothing is said. */
      readonly then?: Screen;
    }
  | { readonly on: 'where'; readonly where: Where }
  | { readonly on: 'more' }
  | { readonly on: 'open'; readonly row: number }
  | { readonly on: 'begin'; readonly task: Task; readonly doing?: Doing }
  | { readonly on: 'doing'; readonly text: string }
  | { readonly on: 'end'; readonly outcome: Outcome }
  | { readonly on: 'dismiss' };

/** The job to open with: the one that was open, else the first unfinished one that has clubs. */
export function jobToOpen(shop: ShopSeen, now: string): string {
  if (shop.jobs.some(({ job }) => job === now)) return now;
  const withClubs = shop.jobs.filter(({ rows }) => rows.length > 0);
  return (withClubs.find(({ done }) => !done) ?? withClubs[0] ?? shop.jobs[0])?.job ?? '';
}

/** The fields on a sheet that changed: what it has no more goes, and choices for single clubs go along with them. */
function formOn(shop: ShopSeen, { form, shop: before }: PaneState): Form {
  const itemGone = form.item !== '' && !shop.grips.some(({ item }) => item === form.item);
  const perClub = form.perClub && before ? followed(form.perClub, before.clubKeys, shop.clubKeys) : form.perClub;
  return itemGone || perClub !== form.perClub ? { ...form, item: itemGone ? '' : form.item, perClub } : form;
}

function see(state: PaneState, shop: ShopSeen): PaneState {
  const who: Who = state.who.by === 'job' ? { by: 'job', job: jobToOpen(shop, state.who.job) } : state.who;
  const moved = state.who.by === 'job' && who.by === 'job' && state.who.job !== who.job;
  return {
    ...state,
    shop,
    who,
    stage: shop.setUp ? 'plan' : 'firstRun',
    tools: moved ? forAnotherSet(state.tools) : state.tools,
    form: moved ? EMPTY_FORM : formOn(shop, state),
    open: moved ? [] : state.open,
    task: state.task === 'look' ? null : state.task,
    outcome: state.stage === 'failed' || ofLook(state.outcome) ? null : state.outcome,
    lost: false,
  };
}

function ofLook(outcome: Outcome | null) {
  return outcome?.kind === 'failed' ? outcome.look : undefined;
}

/** A look that fails later takes the plan from the screen only where that can no longer be what the lists say. */
function unseen(state: PaneState, outcome: Outcome): PaneState {
  return {
    ...state,
    stage: state.shop ? state.stage : 'failed',
    task: state.task === 'look' ? null : state.task,
    outcome,
    lost: state.lost || ofLook(outcome) === 'lists',
  };
}

/** What has still to be looked at stays over all screens; that something went well has been read by who goes to the next. */
function lasting(outcome: Outcome | null): Outcome | null {
  return outcome?.kind === 'done' && !outcome.partly && !outcome.list.length ? null : outcome;
}

function end(state: PaneState, outcome: Outcome): PaneState {
  // What was filled now stands in Clubs: the fields go back to it, so that an edit in the sheet shows at once.
  const filled = state.task === 'fill' && outcome.kind === 'done';
  return { ...state, task: null, doing: null, outcome, form: filled ? EMPTY_FORM : state.form };
}

function take(state: PaneState, { from, form, perClub, then = 'plan' }: Extract<PaneEvent, { on: 'take' }>): PaneState {
  const changed = form ? changedForm(state.form, form) : state.form;
  const next = perClub ? withPerClub(changed, perClub, from, decidedRows(state)) : changed;
  return { ...state, form: next, screen: then, outcome: null };
}

/** What the state is after an event. */
export function afterEvent(state: PaneState, event: PaneEvent): PaneState {
  switch (event.on) {
    case 'seen':
      return see(state, event.shop);
    case 'unseen':
      return unseen(state, event.outcome);
    case 'skip':
      return { ...state, skipped: true };
    case 'who':
      return {
        ...state,
        who: event.who,
        form: EMPTY_FORM,
        tools: forAnotherSet(state.tools),
        open: [],
        shown: PART,
        outcome: null,
      };
    case 'screen':
      return { ...state, screen: event.screen, outcome: lasting(state.outcome) };
    case 'tool':
      return { ...state, tools: { ...state.tools, [event.tool]: { ...state.tools[event.tool], ...event.change } } };
    case 'take':
      return take(state, event);
    case 'selected':
      return { ...state, selection: event.rows };
    case 'form':
      return {
        ...state,
        form: changedForm(state.form, event.change),
        // What was said last was said of other choices.
        outcome: null,
      };
    case 'where':
      return { ...state, where: event.where, outcome: state.outcome?.kind === 'occupied' ? null : state.outcome };
    case 'more':
      return { ...state, shown: state.shown + PART };
    case 'open':
      return {
        ...state,
        open: state.open.includes(event.row)
          ? state.open.filter((row) => row !== event.row)
          : [...state.open, event.row],
      };
    case 'begin':
      return { ...state, task: event.task, doing: event.doing ?? null, outcome: null };
    case 'doing':
      return state.doing ? { ...state, doing: { ...state.doing, text: event.text } } : state;
    case 'end':
      return end(state, event.outcome);
    case 'dismiss':
      return { ...state, outcome: null };
  }
}

/** How many putters are planned beside other clubs; 0 where there are none, or nothing else. */
export function puttersBeside({ shop }: Pick<PaneState, 'shop'>, rows: readonly number[]): number {
  const putters = new Set(shop?.putterRows);
  const count = rows.filter((row) => putters.has(row)).length;
  return count < rows.length ? count : 0;
}

/** Rows that the fields decide for: all that are planned, but for putters that keep what the sheet says. */
function decidedRows(state: PaneState): readonly number[] {
  const rows = plannedRows(state);
  if (state.form.puttersToo || !puttersBeside(state, rows)) return rows;
  const putters = new Set(state.shop?.putterRows);
  return rows.filter((row) => !putters.has(row));
}

/** Without the putters beside other clubs, unless they are meant too. */
export function concernedIn(input: PlanInput, puttersToo: boolean): PlanInput {
  const others = input.clubs.filter(({ kind }) => kind !== 'putter');
  return puttersToo || !others.length ? input : { ...input, clubs: others };
}

/** Rows of Clubs that are planned now. */
export function plannedRows(state: PaneState): readonly number[] {
  const { shop, who } = state;
  if (who.by === 'selection') return state.selection ?? [];
  return shop?.jobs.find(({ job }) => job === who.job)?.rows ?? [];
}
