import { beforeEach, describe, expect, test } from 'vitest';
import { compareGrips, DEFAULT_SIZE_GUIDE, drained } from '../../src/core/index';
import type { Deed } from '../../src/pane/state/deed';
import type { Agreed, HandSeen, Outcome, ShopSeen, Who } from '../../src/pane/state/work';
import { compareDeed } from '../../src/pane/view/tools/compareDeed';
import { handDeed } from '../../src/pane/view/tools/handDeed';
import { workOn } from '../../src/pane/workOn';
import { PortError } from '../../src/workbook/port';
import { LAYOUT } from '../../src/workbook/planPlaces';
import { TABLES } from '../../src/workbook/schema';
import { MemoryPort } from '../workbook/memoryPort';
import { workshop } from '../workbook/workshop';

const NO_HAND: HandSeen = {
  handLength: undefined,
  fingerLength: undefined,
  lowerHandLength: undefined,
  lowerFingerLength: undefined,
};
const JOB: Who = { by: 'job', job: '1042' };

let port: MemoryPort;
const seen = async (): Promise<ShopSeen> => {
  const look = await workOn(port).read();
  if (!look.shop) throw new Error('the workbook could not be read');
  return look.shop;
};
const act = (shop: ShopSeen, deed: Deed, agreed: Agreed | null = null): Promise<Outcome> =>
  workOn(port).deed(shop, deed, agreed, { say: () => undefined, signal: new AbortController().signal });
const rowsOf = (shop: ShopSeen, job: string) => shop.jobs.find((each) => each.job === job)?.rows ?? [];
const select = (sheet: string, row: number, rows: number, column = 0, columns = 1) => {
  port.selected = { sheet, row, column, rows, columns };
};

beforeEach(async () => {
  port = await workshop();
});

describe('a workbook of another version', () => {
  const keep = (layout: number, schema = 1) =>
    port.remember('setwright.plans', JSON.stringify({ schema, layout, plans: [] }));

  test.each([
    ['layout', () => keep(99)],
    ['kind of what is kept', () => keep(LAYOUT, 99)],
  ])('a newer %s: it is read and planned, and nothing at all is written', async (_, prepare) => {
    await prepare();
    const before = port.everything();
    const shop = await seen();
    expect(shop).toMatchObject({ age: 'newer', clubCount: 5 });
    const work = workOn(port);
    expect(drained(work.preview(shop, JOB, rowsOf(shop, '1042'), {})).ok).toBe(true);
    const asked = { who: JOB, rows: rowsOf(shop, '1042'), choices: {}, where: 'planSheet', agreed: null } as const;
    const lesson = { appliesTo: [1] } as unknown as Parameters<typeof work.useLesson>[1];
    const never: Deed = { doing: '', done: '', failed: '', run: () => Promise.reject(new Error('was run')) };
    const outcomes = [
      await work.setUp(),
      await work.fill(shop, asked),
      await work.freeze(shop, JOB, asked.rows),
      await work.useLesson(shop, lesson, null),
      await work.undo(),
      await act(shop, never),
    ];
    for (const outcome of outcomes) {
      expect(outcome).toMatchObject({ kind: 'failed', title: 'This workbook is newer than this add-in' });
      expect('text' in outcome && outcome.text).toContain('Update the add-in');
    }
    expect(port.everything()).toEqual(before);
  });

  test('an earlier one is told apart, and works', async () => {
    expect((await seen()).age).toBe('same');
    await keep(1);
    const shop = await seen();
    expect(shop.age).toBe('older');
    const asked = { who: JOB, rows: rowsOf(shop, '1042'), choices: {}, where: 'planSheet', agreed: null } as const;
    expect(await workOn(port).fill(shop, asked)).toMatchObject({ kind: 'done' });
    expect((await seen()).age).toBe('older');
  });
});

describe('looking', () => {
  test('shows jobs with the rows of their clubs, the grips and the ways', async () => {
    port.fillTable('Jobs', [{ 'Hand length (in)': 7.5, 'Lower middle finger (in)': 3 }]);
    const shop = await seen();
    const hand = { handLength: undefined, fingerLength: undefined, lowerHandLength: undefined };
    expect(shop).toMatchObject({ setUp: true, missing: [], faults: [], clubCount: 5 });
    expect(shop.jobs).toEqual([
      {
        job: '1042',
        customer: 'Tamsin Orrell',
        done: false,
        rows: [1, 2, 3],
        hand: { ...hand, handLength: 7.5, lowerFingerLength: 3 },
      },
      { job: '1043', customer: 'Ivo Brandt', done: false, rows: [4], hand: { ...hand, lowerFingerLength: undefined } },
    ]);
    expect(shop.grips[0]).toMatchObject({ item: 'FERN-M', coreInches: 0.6, gripGrams: 52, onHand: 20 });
    expect(shop.ways).toContain('Lead tape');
  });

  test('of an empty workbook finds nothing set up', async () => {
    port = new MemoryPort();
    expect(await seen()).toMatchObject({
      setUp: false,
      missing: TABLES.map(({ name }) => name),
    });
  });

  test('names a column that is missing', async () => {
    port = new MemoryPort();
    port.typeTable('Clubs', 'Clubs', [
      ['Job', 'Length (in)'],
      ['1', 37],
    ]);
    expect((await seen()).faults).toEqual([{ code: 'missingColumn', field: 'Clubs', expected: 'Club' }]);
  });

  test('that fails comes back as a sentence', async () => {
    port.read = () => Promise.reject(new PortError('editing'));
    const { failed } = await workOn(port).read();
    expect(failed).toMatchObject({
      kind: 'failed',
      text: 'A cell is being edited. Press Enter to finish it, then try again.',
    });
  });
});

describe('the selection', () => {
  test('takes the rows of Clubs that it touches and that hold a club', async () => {
    const shop = await seen();
    select('Clubs', 2, 2);
    expect(await workOn(port).selectedRows(shop)).toEqual([2, 3]);
    select('Clubs', 0, 1_048_576);
    expect(await workOn(port).selectedRows(shop)).toEqual([1, 2, 3, 4, 5]);
  });

  test('elsewhere is none', async () => {
    const shop = await seen();
    for (const [sheet, row, column] of [
      ['Stock', 2, 0],
      ['Clubs', 0, 0],
      ['Clubs', 200, 0],
      ['Clubs', 2, 60],
    ] as const) {
      select(sheet, row, 1, column);
      expect(await workOn(port).selectedRows(shop)).toBeNull();
    }
  });

  test('that cannot be read is no news', async () => {
    const shop = await seen();
    port.selection = () => Promise.reject(new PortError('host'));
    expect(await workOn(port).selectedRows(shop)).toBeNull();
  });
});

describe('the preview', () => {
  test('is the plan as it would be with the choices written', async () => {
    const shop = await seen();
    const rows = rowsOf(shop, '1042');
    const before = drained(workOn(port).preview(shop, JOB, rows, {}));
    const chosen = drained(workOn(port).preview(shop, JOB, rows, { newItem: 'MOSS-S', layers: 0 }));
    if (!before.ok || !chosen.ok) throw new Error('not planned');
    expect(before.value.plan.clubs.map(({ name, item, layers }) => [name, item, layers])).toEqual([
      ['Driver', 'FERN-M', 1],
      ['7 iron', 'FERN-M', 1],
      ['Pitching wedge', 'FERN-M', 1],
    ]);
    expect(chosen.value.plan.clubs.map(({ item, layers }) => [item, layers])).toEqual(rows.map(() => ['MOSS-S', 0]));
    expect(port.applies).toBe(0);
  });
});

describe('what is wrong outside the clubs', () => {
  test('comes with the preview, with the row of the sheet it stands in', async () => {
    const settings = port.tableSeen('Settings')!;
    const at = settings.rows.findIndex(([name]) => name === 'Tolerance');
    port.fillTable('Settings', [...settings.rows.slice(0, at).map(() => ({})), { Value: 'tight' }]);
    const shop = await seen();
    const preview = drained(workOn(port).preview(shop, JOB, rowsOf(shop, '1042'), {}));
    if (!preview.ok) throw new Error('not planned');
    expect(preview.value.problems).toEqual([
      expect.objectContaining({ code: 'notNumber', field: `Settings row ${settings.at.row + at + 2}, Tolerance` }),
    ]);
    expect(preview.value.plan.clubs).toHaveLength(3);
  });
});

describe('filling, freezing, taking back', () => {
  const fill = async (change: { where?: 'planSheet' | 'openSheet' } = {}): Promise<Outcome> => {
    const shop = await seen();
    const asked = {
      who: JOB,
      rows: rowsOf(shop, '1042'),
      choices: { newItem: 'MOSS-S' },
      where: 'planSheet',
      agreed: null,
      ...change,
    } as const;
    return workOn(port).fill(shop, asked);
  };
  const newGrips = () => {
    const clubs = port.tableSeen('Clubs');
    const column = clubs?.headers.indexOf('New grip') ?? -1;
    return clubs?.rows.map((row) => row[column]);
  };

  test('go together and end as they began', async () => {
    const work = workOn(port);
    const before = newGrips();
    expect(work.planSheetOf(await seen(), JOB, [1, 2, 3])).toBe('Plan 1042');
    expect((await seen()).undo).toBeNull();
    expect(await fill()).toMatchObject({ kind: 'done', title: 'Plan filled' });
    expect((await seen()).undo).toBe('Plan of job 1042');
    expect(newGrips()?.slice(0, 4)).toEqual(['MOSS-S', 'MOSS-S', 'MOSS-S', 'FERN-M']);
    expect(await work.undo()).toMatchObject({ kind: 'done', title: 'Last fill undone', partly: false });
    expect(newGrips()).toEqual(before);
    expect((await seen()).undo).toBeNull();
    // Asked for all the same, as by a pane that did not look since, it is no mistake.
    expect(await work.undo()).toMatchObject({
      kind: 'done',
      title: 'Nothing to undo',
      text: 'There is no fill to take back.',
    });
  });

  test('a plan whose formula shows an error is not called done, and says where and why', async () => {
    port.calculate = () => ({ error: '#NAME?' });
    const outcome = await fill();
    expect(outcome).toMatchObject({ kind: 'done', title: 'Plan filled, but it shows an error', partly: true });
    expect(outcome.kind === 'done' && outcome.text).toContain("'Plan 1042'!A10 shows #NAME? instead of a plan.");
  });

  test('a cell changed since is left and listed', async () => {
    await fill();
    const clubs = port.tableSeen('Clubs');
    port.type('Clubs', 1, clubs?.headers.indexOf('New grip') ?? -1, 'OAK-58');
    const outcome = await workOn(port).undo();
    expect(outcome).toMatchObject({ kind: 'done', partly: true });
    expect(outcome.kind === 'done' && outcome.list).toHaveLength(1);
    expect(newGrips()?.[0]).toBe('OAK-58');
  });

  test('cells in the way are listed, and written over once the person agreed', async () => {
    select('Sheet1', 3, 1, 1);
    port.type('Sheet1', 5, 2, 'my note');
    const outcome = await fill({ where: 'openSheet' });
    expect(outcome).toMatchObject({ kind: 'occupied', cells: ["'Sheet1'!C6"] });
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'fill') throw new Error('nothing to agree to');
    const again = await workOn(port).fill(await seen(), outcome.again.asked);
    expect(again).toMatchObject({ kind: 'done' });
    await workOn(port).undo();
    expect(port.shows('Sheet1', 5, 2)).toBe('my note');
  });

  test('a yes holds for the place and the cells that were named, wherever the person is by then', async () => {
    select('Sheet1', 3, 1, 1);
    port.type('Sheet1', 5, 2, 'my note');
    const outcome = await fill({ where: 'openSheet' });
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'fill') throw new Error('nothing to agree to');
    select('Sheet1', 40, 1, 1);
    port.type('Sheet1', 42, 2, 'not asked about');
    port.type('Sheet1', 6, 2, 'typed since');
    const second = await workOn(port).fill(await seen(), outcome.again.asked);
    expect(second).toMatchObject({ kind: 'occupied', cells: ["'Sheet1'!C6:C7"] });
    expect([port.shows('Sheet1', 5, 2), port.shows('Sheet1', 6, 2)]).toEqual(['my note', 'typed since']);
    if (second.kind !== 'occupied' || second.again.task !== 'fill') throw new Error('nothing to agree to');
    expect(await workOn(port).fill(await seen(), second.again.asked)).toMatchObject({ kind: 'done' });
    expect(port.shows('Sheet1', 42, 2)).toBe('not asked about');
    expect(port.name('Setwright_Plan_1')).toMatchObject({ sheet: 'Sheet1', row: 3, column: 1 });
  });

  test('a yes for chosen rows is void once other clubs stand in them', async () => {
    port.addSheet('Plan 1042 part');
    port.type('Plan 1042 part', 1, 0, 'mine');
    const asked = { who: { by: 'selection' }, rows: [1], choices: { newItem: 'MOSS-S' }, where: 'planSheet' } as const;
    const outcome = await workOn(port).fill(await seen(), { ...asked, agreed: null });
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'fill') throw new Error('nothing to agree to');
    const names = port.tableSeen('Clubs')?.headers.indexOf('Club') ?? -1;
    port.type('Clubs', 1, names, '7 iron');
    port.type('Clubs', 2, names, 'Driver');
    const before = port.content();
    expect(await workOn(port).fill(await seen(), outcome.again.asked)).toMatchObject({ kind: 'failed' });
    expect(port.content()).toEqual(before);
  });

  test('a lesson’s yes holds for the formulas that were named', async () => {
    const shop = await seen();
    const mass = port.tableSeen('Clubs')?.headers.indexOf('Old grip mass (g)') ?? -1;
    const lesson = {
      row: 1,
      club: 'Driver',
      oldItem: 'MOSS-S',
      removedGrams: 49,
      gripGrams: 47.2,
      balanceInches: 4.1,
      appliesTo: [2, 3],
    };
    port.type('Clubs', 2, mass, { formula: '=Z1' });
    const outcome = await workOn(port).useLesson(shop, lesson, null);
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'lesson') throw new Error('nothing to agree to');
    port.type('Clubs', 3, mass, { formula: '=Z2' });
    expect(await workOn(port).useLesson(shop, lesson, outcome.again.agreed)).toMatchObject({ kind: 'occupied' });
    port.type('Clubs', 3, mass, null);
    expect(await workOn(port).useLesson(shop, lesson, outcome.again.agreed)).toMatchObject({ kind: 'done' });
  });

  test('a comparison is written, asked about where a person typed over it, and taken back', async () => {
    const compareSheet = async (agreed: Agreed | null = null): Promise<Outcome> => {
      const shop = await seen();
      const planned = drained(workOn(port).preview(shop, JOB, [1, 2, 3], {}));
      if (!planned.ok) throw new Error('cannot be planned');
      const asked = { who: JOB, rows: [1, 2, 3], comparison: compareGrips(planned.value.input), about: 'As they are.' };
      return act(shop, compareDeed(asked), agreed);
    };
    const before = port.content();
    const end = await compareSheet();
    expect(end).toMatchObject({ kind: 'done', title: 'Comparison written' });
    expect(end.kind === 'done' && end.text).toMatch(/^\d grips compared in Compare 1042, \d of them unbeaten\./);
    expect(port.shows('Compare 1042', 7, 1)).toBe('As they are.');
    port.type('Compare 1042', 7, 1, 'mine');
    const outcome = await compareSheet();
    expect(outcome).toMatchObject({ kind: 'occupied', cells: ["'Compare 1042'!B8"] });
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'deed') throw new Error('nothing to agree to');
    expect(await compareSheet(outcome.again.agreed)).toMatchObject({ kind: 'done' });
    await workOn(port).undo();
    expect(port.shows('Compare 1042', 7, 1)).toBe('mine');
    port.deleteSheet('Compare 1042');
    expect(await compareSheet()).toMatchObject({ kind: 'done' });
    expect(await workOn(port).undo()).toMatchObject({ kind: 'done', partly: false });
    expect(port.content()).toEqual(before);
  });

  test('a hand is kept, asked about where a formula stands, and refused for a job that Jobs does not list', async () => {
    const hand = { handLength: 7.5, fingerLength: 3.1, lowerHandLength: null, lowerFingerLength: null };
    const at = port.tableSeen('Jobs')?.headers.indexOf('Hand length (in)') ?? -1;
    port.type('Jobs', 1, at, { formula: '=15/2' });
    const outcome = await act(await seen(), handDeed('1042', hand));
    expect(outcome).toMatchObject({ kind: 'occupied', cells: ['Jobs!D2'] });
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'deed') throw new Error('nothing to agree to');
    const agreed = await act(await seen(), outcome.again.deed, outcome.again.agreed);
    expect(agreed).toMatchObject({ kind: 'done', title: 'Kept in Jobs' });
    expect((await seen()).jobs[0]?.hand).toMatchObject({ handLength: 7.5, fingerLength: 3.1 });
    const unlisted = await act(await seen(), handDeed('77', hand));
    expect(unlisted).toMatchObject({ kind: 'failed', text: expect.stringContaining('no row for job 77') as string });
  });

  test('freezing needs a plan', async () => {
    const work = workOn(port);
    const rows = [1, 2, 3];
    expect(await work.freeze(await seen(), JOB, rows)).toMatchObject({
      kind: 'failed',
      title: 'The plan was not frozen',
    });
    await fill();
    expect(await work.freeze(await seen(), JOB, rows)).toMatchObject({
      kind: 'done',
      title: 'The plan holds values now',
    });
    expect(await work.freeze(await seen(), JOB, rows)).toMatchObject({ kind: 'failed' });
  });

  test('a failure of ours is said, not thrown', async () => {
    port.apply = () => Promise.reject(new TypeError('nothing there'));
    expect(await fill()).toMatchObject({ kind: 'failed', title: 'The plan was not filled' });
  });
});

test('setting up says what was made, kept and in the way', async () => {
  port = new MemoryPort();
  port.typeTable('Stock', 'Stock', [
    ['Bolt', 'Nut'],
    ['M6', 'M6'],
  ]);
  expect(await workOn(port).setUp()).toMatchObject({ kind: 'done', partly: true });
  expect(await seen()).toMatchObject({ setUp: true, jobs: [], clubCount: 0 });
});

test('a lesson is written for the clubs with the same old grip', async () => {
  const shop = await seen();
  const lesson = {
    row: 1,
    club: 'Driver',
    oldItem: 'MOSS-S',
    removedGrams: 49,
    gripGrams: 47.2,
    balanceInches: 4.1,
    appliesTo: [2, 3],
  };
  expect(await workOn(port).useLesson(shop, lesson, null)).toMatchObject({ kind: 'done' });
  const clubs = port.tableSeen('Clubs');
  const mass = clubs?.headers.indexOf('Old grip mass (g)') ?? -1;
  expect(clubs?.rows.map((row) => row[mass])).toEqual([null, 47.2, 47.2, null, null]);
});

describe('what hands and the size guide say', () => {
  test('what is wrong with the guide is told with its row', async () => {
    const sizes = port.tableSeen('Sizes')!;
    port.type('Sizes', sizes.at.row + 1, sizes.at.column, 'large');
    const { guide, guideProblems } = await seen();
    expect(guide).toHaveLength(DEFAULT_SIZE_GUIDE.length - 1);
    expect(guideProblems).toEqual([
      expect.objectContaining({ code: 'notNumber', field: `Sizes row ${sizes.at.row + 2}, ${sizes.headers[0]}` }),
    ]);
  });

  test('without the table the usual guide counts', async () => {
    const old = new MemoryPort();
    old.typeTable('Clubs', 'Clubs', [['Club'], ['7 iron']]);
    port = old;
    expect(await seen()).toMatchObject({ guide: DEFAULT_SIZE_GUIDE, guideProblems: [] });
  });
});

describe('a hand', () => {
  const HAND = { handLength: 7.6, fingerLength: 3.2, lowerHandLength: null, lowerFingerLength: null };
  const keep = async (): Promise<Outcome> => act(await seen(), handDeed('1042', HAND));
  const kept = async () => (await seen()).jobs[0]?.hand;

  test('is kept in its job’s row and can be taken back', async () => {
    expect(await keep()).toMatchObject({ kind: 'done', title: 'Kept in Jobs' });
    expect(await kept()).toEqual({ ...NO_HAND, handLength: 7.6, fingerLength: 3.2 });
    expect(await workOn(port).undo()).toMatchObject({ kind: 'done' });
    expect(await kept()).toEqual(NO_HAND);
  });

  test('that was typed into the sheet since the person looked is asked about', async () => {
    const shop = await seen();
    port.fillTable('Jobs', [{ 'Hand length (in)': 8 }]);
    const outcome = await act(shop, handDeed('1042', HAND));
    expect(outcome).toMatchObject({ kind: 'occupied' });
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'deed') throw new Error('nothing to agree to');
    expect(await act(await seen(), outcome.again.deed, outcome.again.agreed)).toMatchObject({ kind: 'done' });
    expect(await kept()).toMatchObject({ handLength: 7.6 });
  });

  test('that cannot be written says why', async () => {
    port.apply = () => Promise.reject(new PortError('editing'));
    expect(await keep()).toMatchObject({ kind: 'failed', text: expect.stringContaining('Press Enter') });
  });
});

describe('a comparison', () => {
  const asked = async () => {
    const shop = await seen();
    const rows = rowsOf(shop, '1042');
    const preview = drained(workOn(port).preview(shop, JOB, rows, {}));
    if (!preview.ok) throw new Error('not planned');
    return {
      who: JOB,
      rows,
      comparison: compareGrips(preview.value.input),
      about: 'As told.',
    };
  };

  test('does not write over what a person has in a sheet of that name, unless the person agreed', async () => {
    port.addSheet('Compare 1042');
    port.type('Compare 1042', 2, 1, 'mine');
    const outcome = await act(await seen(), compareDeed(await asked()));
    expect(outcome.kind).not.toBe('failed');
    expect(port.shows('Compare 1042', 2, 1)).toBe('mine');
    if (outcome.kind !== 'occupied' || outcome.again.task !== 'deed') throw new Error('nothing to agree to');
    expect(await act(await seen(), outcome.again.deed, outcome.again.agreed)).toMatchObject({ kind: 'done' });
    expect(port.shows('Compare 1042', 2, 1)).not.toBe('mine');
    await workOn(port).undo();
    expect(port.shows('Compare 1042', 2, 1)).toBe('mine');
  });

  test('of clubs that have changed since is not written', async () => {
    const before = await asked();
    const shop = await seen();
    port.fillTable('Clubs', [{ 'Length (in)': 46 }]);
    expect(await act(shop, compareDeed(before))).toMatchObject({
      kind: 'failed',
      title: 'The comparison was not written',
    });
  });
});
