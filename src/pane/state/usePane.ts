/** Joins the pane's state to a workbook: looks, watches, and does what is asked, one thing at a time. */
import { useCallback, useEffect, useMemo, useReducer, useRef, useState } from 'react';
import { drained, type Lesson, type PlanInput, type Result } from '../../core/index';
import type { Choices } from '../../workbook/choices';
import type { Planned } from '../../workbook/planTables';
import type { Deed } from './deed';
import { readForm, sparingPutters, type Form, type FormRead } from './form';
import {
  afterEvent,
  concernedIn,
  plannedRows,
  puttersBeside,
  START,
  type Doing,
  type PaneEvent,
  type PaneState,
  type Task,
} from './paneState';
import { useLong } from './useLong';
import type { Agreed, FillAsked, Outcome, ShopSeen, Work } from './work';

/** Typing rests this long before the plan is worked out again. */
const TYPING_MS = 200;
/** A person edits cells in runs; one look follows the run. */
const EDITS_MS = 300;
/** How often the selection is asked for while it decides what is planned. */
const SELECTION_MS = 700;
/** Feedback sooner than this would flash. */
const SLOW_MS = 500;

function useSettled<T>(value: T, ms: number): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), ms);
    return () => clearTimeout(timer);
  }, [value, ms]);
  return settled;
}

/** The task, once it has taken so long that a person wonders. */
function useSlow(task: Task | null): Task | null {
  const [slow, setSlow] = useState<Task | null>(null);
  useEffect(() => {
    setSlow(null);
    if (!task) return undefined;
    const timer = setTimeout(() => setSlow(task), SLOW_MS);
    return () => clearTimeout(timer);
  }, [task]);
  return slow;
}

type Send = (event: PaneEvent) => void;

/** Reads the workbook now and after every run of edits; an older look never overwrites a newer one. */
function useLooks(work: Work, send: Send): () => Promise<ShopSeen | null> {
  const latest = useRef(0);
  const look = useCallback(async () => {
    const mine = (latest.current += 1);
    const { shop, failed } = await work.read();
    if (mine !== latest.current) return null;
    if (shop) send({ on: 'seen', shop });
    else send({ on: 'unseen', outcome: failed });
    return shop ?? null;
  }, [work, send]);
  useEffect(() => {
    void look();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = work.watch(() => {
      clearTimeout(timer);
      timer = setTimeout(() => void look(), EDITS_MS);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [work, look]);
  return look;
}

function useSelection(work: Work, { shop, who, selection, task }: PaneState, send: Send): void {
  const now = useRef(selection);
  now.current = selection;
  useEffect(() => {
    if (!shop || who.by !== 'selection' || task) return undefined;
    let gone = false;
    const ask = async () => {
      if (document.visibilityState === 'hidden') return;
      const rows = await work.selectedRows(shop);
      if (!gone && JSON.stringify(rows) !== JSON.stringify(now.current)) send({ on: 'selected', rows });
    };
    void ask();
    const timer = setInterval(() => void ask(), SELECTION_MS);
    return () => {
      gone = true;
      clearInterval(timer);
    };
  }, [work, shop, who, task, send]);
}

export interface PaneDoes {
  readonly look: () => void;
  readonly setUp: () => void;
  readonly fill: () => void;
  readonly writeOver: () => void;
  /** Adds what is lacking, and does what was asked. */
  readonly mend: () => void;
  readonly freeze: () => void;
  readonly undo: () => void;
  readonly lesson: (lesson: Lesson) => void;
  /** Does what a screen brought along. */
  readonly deed: (deed: Deed) => void;
  /** Stops a deed that can be stopped, after the step it is at. */
  readonly stop: () => void;
}

export interface PaneNow {
  readonly state: PaneState;
  readonly send: Send;
  readonly does: PaneDoes;
  /** The choices as they stand in the fields. */
  readonly read: FormRead;
  /** How many putters are planned beside other clubs. */
  readonly putters: number;
  /** The plan of the settled choices; null while there is nothing to plan. */
  readonly preview: Result<Planned> | null;
  /** The clubs that the choices go to, as a screen that helps choosing takes them; null while there are none. */
  readonly concerned: PlanInput | null;
  /** Whether something has just been typed that `preview` and `concerned` do not know yet. */
  readonly settling: boolean;
  readonly slowTask: Task | null;
  readonly inspect: Work['inspect'];
}

function useDoes(work: Work, state: PaneState, send: Send, look: () => Promise<ShopSeen | null>): PaneDoes {
  const current = useRef(state);
  current.current = state;
  const stopping = useRef(new AbortController());
  return useMemo(() => {
    const doing = async (task: Task, what: () => Promise<Outcome>, said?: Doing) => {
      send({ on: 'begin', task, ...(said && { doing: said }) });
      const outcome = await what();
      await look();
      send({ on: 'end', outcome });
    };
    const run = async (task: Task, what: (shop: ShopSeen) => Promise<Outcome>) => {
      const { shop, task: now } = current.current;
      if (!now && shop) await doing(task, () => what(shop));
    };
    const lesson = (taught: Lesson, agreed: Agreed | null) =>
      run('lesson', (shop) => work.useLesson(shop, taught, agreed));
    const act = (deed: Deed, agreed: Agreed | null) => {
      stopping.current = new AbortController();
      const going = { say: (text: string) => send({ on: 'doing', text }), signal: stopping.current.signal };
      const { shop, task: now } = current.current;
      if (now || !(shop || deed.early)) return undefined;
      const said = { text: deed.doing, canStop: deed.canStop ?? false };
      return doing('deed', () => work.deed(shop, deed, agreed, going), said);
    };
    const fill = (asked: FillAsked) => run('fill', (shop) => work.fill(shop, asked));
    return {
      look: () => void look(),
      setUp: () => void run('setUp', () => work.setUp()),
      fill: () => {
        const { who, form, where } = current.current;
        const rows = plannedRows(current.current);
        void fill({ who, rows, choices: choicesOf(work, current.current, rows, form), where, agreed: null });
      },
      writeOver: () => {
        const { outcome } = current.current;
        if (outcome?.kind !== 'occupied') return;
        const { again } = outcome;
        if (again.task === 'fill') void fill(again.asked);
        else if (again.task === 'deed') void act(again.deed, again.agreed);
        else void lesson(again.lesson, again.agreed);
      },
      mend: () => {
        const { outcome } = current.current;
        if (outcome?.kind !== 'failed' || !outcome.mend) return;
        const { adding, again } = outcome.mend;
        void run(again.task, async (shop) => {
          const added = await work.addColumns(adding);
          if (added.kind !== 'done') return added;
          const end = await (again.task === 'fill'
            ? work.fill(shop, again.asked)
            : work.useLesson(shop, again.lesson, again.agreed));
          return end.kind === 'occupied' ? end : { ...end, text: `${added.text} ${end.text}` };
        });
      },
      freeze: () => void run('freeze', (shop) => work.freeze(shop, current.current.who, plannedRows(current.current))),
      undo: () => void run('undo', () => work.undo()),
      lesson: (taught) => void lesson(taught, null),
      deed: (deed) => void act(deed, null),
      stop: () => stopping.current.abort(),
    };
  }, [work, send, look]);
}

/** More clubs than this are planned in slices. */
const AT_ONCE = 100;

type Begin = () => ReturnType<Work['preview']>;

/** The plan: of some clubs at once; of many the last one for the same job or rows stays until the next is worked out. */
function usePreview(begin: Begin | null, rows: readonly number[], who: PaneState['who']) {
  const many = rows.length > AT_ONCE;
  const atOnce = useMemo(() => (begin && !many ? drained(begin()) : null), [begin, many]);
  const later = useLong(many ? begin : null, who.by === 'job' ? who.job : String(rows));
  return many ? { preview: later.answer ?? null, current: later.settled } : { preview: atOnce, current: true };
}

function choicesOf(work: Work, state: PaneState, rows: readonly number[], form: Form): Choices {
  return sparingPutters(readForm(form, work.isReading).choices, form, puttersBeside(state, rows));
}

/** Everything a screen needs to show the pane and to act on it. */
export function usePane(work: Work): PaneNow {
  const [state, send] = useReducer(afterEvent, START);
  const look = useLooks(work, send);
  useSelection(work, state, send);
  const read = useMemo(() => readForm(state.form, work.isReading), [state.form, work]);
  const settled = useSettled(state.form, TYPING_MS);
  const rows = useMemo(() => plannedRows(state), [state.shop, state.who, state.selection]);
  const { shop, who, lost } = state;
  const begin = useMemo(
    () =>
      shop && !lost && rows.length ? () => work.preview(shop, who, rows, choicesOf(work, state, rows, settled)) : null,
    [work, shop, who, rows, settled, lost],
  );
  const { preview: planned, current } = usePreview(begin, rows, who);
  // Of many clubs the last plan would stay.
  const preview = lost ? null : planned;
  const putters = puttersBeside(state, rows);
  const concerned = useMemo(
    () => (preview?.ok ? concernedIn(preview.value.input, settled.puttersToo) : null),
    [preview, settled.puttersToo],
  );
  return {
    concerned,
    settling: settled !== state.form || !current,
    state,
    send,
    does: useDoes(work, state, send, look),
    read,
    putters,
    preview,
    slowTask: useSlow(state.task),
    inspect: work.inspect,
  };
}
