import { describe, expect, test } from 'vitest';
import { canClose, checkIn, type CheckedClub, type MeasuredClub } from '../../../src/core/index';
import { massPoints } from '../../../src/core/balance/moment';
import { aGrip } from '../make';
import { aJob, aTicket, type Job } from './jobs';

const heavy = aGrip({ item: 'new', gripGrams: 65, balanceInches: 4.2, lengthInches: 10.5, capInches: 0.12 });
const light = aGrip({ item: 'old', gripGrams: 45, balanceInches: 4.2, lengthInches: 10.5, capInches: 0.12 });
const IRON = { kind: 'iron', reading: 32, massGrams: 420, lengthInches: 38, oldItem: 'old', newItem: 'new' } as const;

/** Irons that get a grip 20 g heavier, and so weight at the head. */
function job(clubs = 1, over: object = {}): Job {
  return aJob(
    Array.from({ length: clubs }, (_, at) => ({ ...IRON, massGrams: 420 + 3 * at, layers: at % 3, ...over })),
    { stock: [heavy, light] },
  );
}

function judge({ plan, input }: Job, measured: Omit<MeasuredClub, 'club'>): CheckedClub {
  return checkIn(plan, input, [{ club: 'club 1', ...measured }]).clubs[0] as CheckedClub;
}

describe('weight that the bench says is on', () => {
  test('takes the place of what was planned: a club put right as told is as predicted', () => {
    const made = job();
    const remedy = made.plan.clubs[0]?.remedy;
    const { reading, massGrams } = judge(made, {}).expected;
    if (!remedy || !reading || !massGrams) throw new Error('nothing predicted');
    // it came out 3 points light, and 3 points' worth of grams went on beside what was planned
    const more = Math.round((3 / massPoints(1, remedy.inches)) * 10) / 10;
    const cured = { reading: reading.value - 3 + 3, massGrams: massGrams.value + more };
    const before = judge(made, { reading: reading.value - 3, massGrams: massGrams.value });
    expect(before.state).toBe('open');
    const told = judge(made, { ...cured, onGrams: remedy.grams + more });
    expect(told.expected.massGrams?.value).toBeCloseTo(massGrams.value + more, 9);
    expect(told.expected.reading?.value).toBeCloseTo(reading.value + massPoints(more, remedy.inches), 9);
    expect(told.off.massGrams?.surprising).toBe(false);
  });

  test('is refused where no club bears it', () => {
    const wrong = judge(job(), { onGrams: 400, reading: 32, massGrams: 430 });
    expect(wrong.issues).toEqual([
      expect.objectContaining({ code: 'outOfRange', field: expect.stringContaining('Weight on') as string, got: 400 }),
    ]);
  });
});

describe('a club that is done once more', () => {
  const cases = [
    ['with weight on', {}],
    ['extended, with a plug', { lengthChangeInches: 0.5, plugGrams: 8 }],
  ] as const;

  test.each(cases)('%s is predicted from what it is bare, and nothing counts twice', (_, over) => {
    const made = job(1, over);
    const first = judge(made, {}).expected;
    const again = judge(made, { isAgain: true }).expected;
    if (!first.reading || !first.massGrams || !again.bareReading || !again.bareGrams) throw new Error('not predicted');
    // stripped of a grip that was fitted as planned, and fitted again the same: it is what it was
    const redone = judge(made, {
      isAgain: true,
      bareReading: again.bareReading.value,
      bareGrams: again.bareGrams.value,
      reading: first.reading.value,
      massGrams: first.massGrams.value,
    });
    expect(redone.expected.reading?.value).toBeCloseTo(first.reading.value, 6);
    expect(redone.expected.massGrams?.value).toBeCloseTo(first.massGrams.value, 6);
    expect(redone.next).toEqual([]);
    // by hand: bare it weighs what it weighed finished less grip, tape and strip
    const plan = made.plan.clubs[0];
    const strip = first.massGrams.value - again.bareGrams.value - (plan?.fittedAfterGrams ?? 0);
    expect(strip).toBeCloseTo(1.8, 1);
  });
});

describe('a club whose grip cannot be planned', () => {
  const made = aJob([{ ...IRON }, { ...IRON, newItem: 'nwe' }, { ...IRON, newItem: undefined }], {
    stock: [heavy, light],
  });

  test('stands against closing, and is told on the ticket; one without a grip is left as it is', () => {
    const first = judge(made, {}).expected;
    const measured = {
      club: 'club 1',
      reading: first.reading?.value,
      massGrams: first.massGrams?.value,
      decision: 'accept',
    } as const;
    const found = checkIn(made.plan, made.input, [measured]);
    expect(canClose(found)).toMatchObject({ closes: false, open: [], issues: [{ code: 'unknownItem', got: 'nwe' }] });
    const ticket = aTicket(made);
    expect(ticket.unplanned).toMatchObject([{ name: 'club 2', issues: [{ code: 'unknownItem', got: 'nwe' }] }]);
    expect(ticket.left.map(({ name }) => name)).toEqual(['club 3']);
  });
});

test('a grip that the client brings is marked, and not taken from the shelf', () => {
  const ticket = aTicket(job(3), { clubs: { 2: { ownGrip: true } } });
  expect(ticket.clubs.filter(({ ownGrip }) => ownGrip).map(({ name }) => name)).toEqual(['club 2']);
  expect(ticket.grips).toEqual([{ item: 'new', pieces: 2 }]);
});
