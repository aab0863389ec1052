import { describe, expect, test } from 'vitest';
import { DEFAULT_SIZE_GUIDE, type PlanInput } from '../../src/core/index';
import { EMPTY_FORM } from '../../src/pane/state/form';
import {
  puttersBeside,
  afterEvent,
  concernedIn,
  jobToOpen,
  PART,
  plannedRows,
  START,
  type PaneEvent,
  type PaneState,
} from '../../src/pane/state/paneState';
import { EMPTY_TOOLS } from '../../src/pane/state/tools';
import type { JobSeen, Outcome, ShopSeen } from '../../src/pane/state/work';

const NO_HAND = {
  handLength: undefined,
  fingerLength: undefined,
  lowerHandLength: undefined,
  lowerFingerLength: undefined,
};
const job = (name: string, rows: number[], done = false): JobSeen => ({
  job: name,
  customer: '',
  rows,
  done,
  hand: NO_HAND,
});
const shop = (change: Partial<ShopSeen> = {}): ShopSeen => ({
  shop: null,
  missing: [],
  setUp: true,
  age: 'same',
  faults: [],
  goingOn: [],
  jobs: [job('1', [], false), job('2', [1, 2], true), job('3', [3, 4, 5])],
  grips: [],
  putterRows: [],
  clubKeys: new Map(['a', 'b', 'c', 'd', 'e'].map((club, at) => [at + 1, club])),
  ways: [],
  guide: DEFAULT_SIZE_GUIDE,
  guideProblems: [],
  clubCount: 5,
  ...change,
});
const after = (state: PaneState, ...events: PaneEvent[]) => events.reduce(afterEvent, state);
const planning = after(START, { on: 'seen', shop: shop() });
const asked = { who: planning.who, rows: [3], choices: {}, where: 'planSheet', agreed: null } as const;
const occupied: Outcome = { kind: 'occupied', cells: ['Plan 3!A1'], again: { task: 'fill', asked } };
const done: Outcome = { kind: 'done', title: '', text: '', list: [], partly: false };
const failed: Outcome = { kind: 'failed', title: '', text: '', list: [] };

describe('opening', () => {
  test('a workbook without our tables begins with the first run', () => {
    expect(after(START, { on: 'seen', shop: shop({ setUp: false, jobs: [] }) })).toMatchObject({
      stage: 'firstRun',
      task: null,
    });
  });

  test('the first unfinished job that has clubs is open', () => {
    expect(planning).toMatchObject({ stage: 'plan', who: { by: 'job', job: '3' } });
    expect(plannedRows(planning)).toEqual([3, 4, 5]);
  });

  test('finished jobs, then empty ones, are better than none', () => {
    expect(jobToOpen(shop({ jobs: [job('1', []), job('2', [1], true)] }), '')).toBe('2');
    expect(jobToOpen(shop({ jobs: [job('1', [])] }), '')).toBe('1');
    expect(jobToOpen(shop({ jobs: [] }), '9')).toBe('');
  });

  test('a workbook that cannot be read at first says so; later it keeps the plan on the screen', () => {
    expect(after(START, { on: 'unseen', outcome: failed })).toMatchObject({
      stage: 'failed',
      outcome: failed,
      task: null,
    });
    expect(after(planning, { on: 'unseen', outcome: failed })).toMatchObject({ stage: 'plan', outcome: failed });
  });

  test('reading again after a failure takes the message away', () => {
    expect(after(START, { on: 'unseen', outcome: failed }, { on: 'seen', shop: shop() })).toMatchObject({
      stage: 'plan',
      outcome: null,
    });
  });
});

describe('a look that fails later', () => {
  const lost: Outcome = { ...failed, look: 'lists' };

  test('because a list is not as it was takes the plan from the screen, whatever is said meanwhile', () => {
    const now = after(planning, { on: 'unseen', outcome: lost }, { on: 'dismiss' });
    expect(now).toMatchObject({ stage: 'plan', outcome: null, lost: true });
    expect(after(now, { on: 'unseen', outcome: { ...failed, look: 'other' } }).lost).toBe(true);
  });

  test('for another reason leaves it', () => {
    expect(after(planning, { on: 'unseen', outcome: { ...failed, look: 'other' } }).lost).toBe(false);
  });

  test('is forgotten once one succeeds, its message with it', () => {
    const mended = after(planning, { on: 'unseen', outcome: lost }, { on: 'seen', shop: shop() });
    expect(mended).toMatchObject({ outcome: null, lost: false });
  });

  test('what was said of a deed stays', () => {
    const told = after(planning, { on: 'end', outcome: failed }, { on: 'seen', shop: shop() });
    expect(told.outcome).toBe(failed);
  });
});

describe('an edit in the sheet', () => {
  const chosen = after(planning, { on: 'form', change: { item: 'A-1', sizeBy: 'layers' } }, { on: 'open', row: 4 });

  test('keeps the job, the choices and the open rows', () => {
    const next = after(chosen, { on: 'seen', shop: shop({ grips: [grip('A-1')] }) });
    expect(next).toMatchObject({ who: { job: '3' }, form: { item: 'A-1', sizeBy: 'layers' }, open: [4] });
  });

  test('drops a grip that is gone from Stock, not the rest', () => {
    expect(after(chosen, { on: 'seen', shop: shop() }).form).toMatchObject({ item: '', sizeBy: 'layers' });
  });

  test('that takes the job away opens another one afresh', () => {
    const next = after(chosen, { on: 'seen', shop: shop({ jobs: [job('2', [1, 2])], grips: [grip('A-1')] }) });
    expect(next).toMatchObject({ who: { job: '2' }, form: EMPTY_FORM, open: [] });
  });
});

function grip(item: string) {
  return { item, description: '', size: '', coreInches: undefined, gripGrams: undefined, onHand: undefined };
}

describe('choosing', () => {
  test('another job forgets the choices made for the one before', () => {
    const next = after(
      planning,
      { on: 'form', change: { item: 'A-1' } },
      { on: 'more' },
      { on: 'who', who: { by: 'job', job: '2' } },
    );
    expect(next).toMatchObject({ who: { job: '2' }, form: EMPTY_FORM, shown: PART });
  });

  test('selected clubs are those that are selected now', () => {
    const selecting = after(planning, { on: 'who', who: { by: 'selection' } });
    expect(plannedRows(selecting)).toEqual([]);
    expect(plannedRows(after(selecting, { on: 'selected', rows: [2, 3] }))).toEqual([2, 3]);
  });

  test('details open and close, a club at a time', () => {
    expect(after(planning, { on: 'open', row: 4 }, { on: 'open', row: 5 }, { on: 'open', row: 4 }).open).toEqual([5]);
  });

  test('an offer to write over cells is void once something else is chosen', () => {
    const offered = after(planning, { on: 'begin', task: 'fill' }, { on: 'end', outcome: occupied });
    expect(offered.outcome).toBe(occupied);
    expect(after(offered, { on: 'where', where: 'openSheet' }).outcome).toBeNull();
    expect(after(offered, { on: 'form', change: { item: '' } }).outcome).toBeNull();
    expect(after(offered, { on: 'dismiss' }).outcome).toBeNull();
  });
});

describe('another screen', () => {
  test('takes along what has still to be looked at, not that something went well', () => {
    const partly = { ...done, partly: true as const };
    const listed = { ...done, list: ['1042 lacks 2 of FERN-M.'] };
    const kept = [failed, occupied, partly, listed, done].map(
      (outcome) =>
        after(planning, { on: 'begin', task: 'fill' }, { on: 'end', outcome }, { on: 'screen', screen: 'quote' })
          .outcome,
    );
    expect(kept).toEqual([failed, occupied, partly, listed, null]);
  });
});

describe('doing', () => {
  test('takes the last message away and says what is being done', () => {
    const busy = after({ ...planning, outcome: failed }, { on: 'begin', task: 'fill' });
    expect(busy).toMatchObject({ task: 'fill', outcome: null });
  });

  test('a filled plan hands the choices to the sheet', () => {
    const chosen = after(
      planning,
      { on: 'form', change: { layers: '3', sizeBy: 'layers' } },
      { on: 'begin', task: 'fill' },
    );
    expect(after(chosen, { on: 'end', outcome: done })).toMatchObject({ form: EMPTY_FORM, task: null, outcome: done });
  });

  test('a plan that was not filled keeps them', () => {
    const chosen = after(
      planning,
      { on: 'form', change: { layers: '3', sizeBy: 'layers' } },
      { on: 'begin', task: 'fill' },
    );
    expect(after(chosen, { on: 'end', outcome: failed }).form).toMatchObject({ layers: '3', sizeBy: 'layers' });
    const undone = after(
      chosen,
      { on: 'end', outcome: failed },
      { on: 'begin', task: 'undo' },
      { on: 'end', outcome: done },
    );
    expect(undone.form.layers).toBe('3');
  });

  test('a look in between does not end it', () => {
    const busy = after(planning, { on: 'begin', task: 'fill' }, { on: 'seen', shop: shop() });
    expect(busy.task).toBe('fill');
  });
});

test('not now is remembered', () => {
  expect(after(START, { on: 'seen', shop: shop({ setUp: false }) }, { on: 'skip' })).toMatchObject({
    stage: 'firstRun',
    skipped: true,
  });
});

test('putters count where other clubs are planned with them', () => {
  const state = { shop: shop({ putterRows: [3, 5] }) };
  expect(puttersBeside(state, [1, 2, 3])).toBe(1);
  expect(puttersBeside(state, [3, 5])).toBe(0);
  expect(puttersBeside(state, [1, 2])).toBe(0);
  expect(puttersBeside({ shop: null }, [])).toBe(0);
});

describe('the screens that help choosing', () => {
  const worked = after(
    planning,
    { on: 'screen', screen: 'place' },
    { on: 'tool', tool: 'hand', change: { unit: 'mm', hand: '193', squeezes: true } },
    { on: 'tool', tool: 'compare', change: { profile: 'round', shortlist: ['A-1'] } },
    { on: 'tool', tool: 'even', change: { by: { woods: 'one', irons: 'line', wedges: 'own' } } },
    { on: 'tool', tool: 'place', change: { typed: '50.2' } },
  );
  const kept = {
    ...EMPTY_TOOLS,
    hand: { ...EMPTY_TOOLS.hand, unit: 'mm' },
    compare: { ...EMPTY_TOOLS.compare, profile: 'round', shortlist: ['A-1'] },
  };

  test('are gone to and keep what was typed, each by itself', () => {
    expect(planning.screen).toBe('plan');
    expect(worked.screen).toBe('place');
    expect(worked.tools.hand).toEqual({ ...EMPTY_TOOLS.hand, unit: 'mm', hand: '193', squeezes: true });
    expect(worked.tools.place).toEqual({ typed: '50.2' });
    expect(after(worked, { on: 'screen', screen: 'hand' }).tools).toBe(worked.tools);
  });

  test('begin afresh with another bag; the unit and the ways of comparing stay', () => {
    const other = after(worked, { on: 'who', who: { by: 'job', job: '2' } });
    expect(other).toMatchObject({ screen: 'place', form: EMPTY_FORM });
    expect(other.tools).toEqual(kept);
  });

  test('do so too when an edit in the sheet takes the job away, and not when it changes something else', () => {
    expect(after(worked, { on: 'seen', shop: shop({ jobs: [job('2', [1])] }) }).tools).toEqual(kept);
    expect(after(worked, { on: 'seen', shop: shop() }).tools).toBe(worked.tools);
  });

  test('keep what was typed when the plan was filled: it may be taken over again', () => {
    expect(after(worked, { on: 'begin', task: 'fill' }, { on: 'end', outcome: done }).tools).toBe(worked.tools);
  });

  test('what a screen’s own deed did leaves the fields as they are', () => {
    const chosen = after(worked, { on: 'form', change: { item: 'A-1' } });
    const doing = { text: 'Writing…', canStop: true };
    const told = after(chosen, { on: 'begin', task: 'deed', doing }, { on: 'doing', text: '3 of 20' });
    expect(told.doing).toEqual({ text: '3 of 20', canStop: true });
    const ended = after(told, { on: 'end', outcome: done });
    expect(ended).toMatchObject({ form: chosen.form, tools: chosen.tools, outcome: done, task: null, doing: null });
    expect(after(ended, { on: 'doing', text: 'late' }).doing).toBeNull();
  });
});

describe('taking over', () => {
  const found = new Map([[3, { newItem: 'A-1', layers: 2 }]]);

  test('shows the plan, with the fields changed and the last message gone', () => {
    const taken = after(
      { ...planning, screen: 'hand', outcome: done },
      { on: 'take', from: 'hand', form: { sizeBy: 'diameter', diameter: '0.920' } },
    );
    expect(taken).toMatchObject({ screen: 'plan', outcome: null, form: { sizeBy: 'diameter', diameter: '0.920' } });
    expect(taken.form.perClub).toBeNull();
  });

  test('goes on to another screen where that was asked', () => {
    expect(after(planning, { on: 'take', from: 'hand', form: {}, then: 'compare' }).screen).toBe('compare');
  });

  test('of choices for single clubs leaves a field that still decides for others', () => {
    const chosen = after(planning, { on: 'form', change: { item: 'B-2' } });
    const some = after(chosen, { on: 'take', from: 'compare', perClub: found });
    expect(some.form).toEqual({ ...EMPTY_FORM, item: 'B-2', perClub: { entries: found, from: ['compare'] } });
    const all = new Map([3, 4, 5].map((row) => [row, { newItem: 'A-1' }]));
    expect(after(chosen, { on: 'take', from: 'compare', perClub: all }).form.item).toBe('');
  });

  test('a putter that keeps what the sheet says has no say in that', () => {
    const bag = after(START, { on: 'seen', shop: shop({ putterRows: [5] }) });
    const both = new Map([3, 4].map((row) => [row, { newItem: 'A-1' }]));
    const chosen = after(bag, { on: 'form', change: { item: 'B-2' } });
    expect(after(chosen, { on: 'take', from: 'compare', perClub: both }).form.item).toBe('');
    const with5 = after(chosen, { on: 'form', change: { puttersToo: true } });
    expect(after(with5, { on: 'take', from: 'compare', perClub: both }).form.item).toBe('B-2');
  });

  describe('of choices for single clubs goes along with them when the sheet changes:', () => {
    const two = new Map([
      [3, { layers: 3 }],
      [4, { layers: 4 }],
    ]);
    const taken = after(planning, { on: 'take', from: 'compare', perClub: two });
    const rows = (clubs: readonly string[]) => {
      const clubKeys = new Map(clubs.map((club, at) => [at + 1, club]));
      return [...(after(taken, { on: 'seen', shop: shop({ clubKeys }) }).form.perClub?.entries ?? [])];
    };

    test('they stay where nothing moved, whatever else was typed', () => {
      const next = after(taken, { on: 'seen', shop: shop({ clubCount: 6 }) });
      expect(next.form).toBe(taken.form);
      expect(rows(['z', 'b', 'c', 'd', 'e', 'f'])).toEqual([...two]);
    });

    test('a row put in above, or a table that was sorted, takes them along', () => {
      expect(rows(['new', 'a', 'b', 'c', 'd', 'e'])).toEqual([
        [4, { layers: 3 }],
        [5, { layers: 4 }],
      ]);
      expect(rows(['d', 'c', 'e', 'a', 'b'])).toEqual([
        [2, { layers: 3 }],
        [1, { layers: 4 }],
      ]);
    });

    test('a club that is gone, or that may be either of two, loses them', () => {
      expect(rows(['a', 'b', 'd', 'e'])).toEqual([[3, { layers: 4 }]]);
      expect(rows(['c', 'a', 'b', 'c', 'd'])).toEqual([[5, { layers: 4 }]]);
      expect(rows(['x'])).toEqual([]);
    });
  });

  test('is gone once the plan was filled, or another job is open', () => {
    const taken = after(planning, { on: 'take', from: 'compare', perClub: found });
    expect(after(taken, { on: 'begin', task: 'fill' }, { on: 'end', outcome: done }).form).toEqual(EMPTY_FORM);
    expect(after(taken, { on: 'who', who: { by: 'selection' } }).form).toEqual(EMPTY_FORM);
  });
});

test('screens that help choosing leave a putter out beside other clubs, unless it is meant too', () => {
  const input = { clubs: [{ kind: 'iron' }, { kind: 'putter' }, { kind: undefined }] } as unknown as PlanInput;
  expect(concernedIn(input, false).clubs).toEqual([{ kind: 'iron' }, { kind: undefined }]);
  expect(concernedIn(input, true)).toBe(input);
  const putter = { ...input, clubs: input.clubs.slice(1, 2) };
  expect(concernedIn(putter, false)).toBe(putter);
});
