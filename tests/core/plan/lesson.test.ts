import { describe, expect, it } from 'vitest';
import { aClub, noteKinds, noteOf, P, planOf, planOne } from '../make';

const LAYER = 21 * 0.00064516 * 130;
const STRIP = 21 * 0.00064516 * 133;

/** A bare club of 368 g that reads E4, and what an old grip of 52 g at 4.3 in behind ⅛ in of cap made of it. */
const bare = { bareReading: 44, bareGrams: 368 };
const massGrams = 368 + 52 + STRIP;
const reading = 44 + (52 * (4.3 - 14) + STRIP * -8.75 + 368 * 0.125) / P;
const stripped = { ...bare, massGrams, reading, oldItem: 'Worn' };

describe('what a stripped club teaches', () => {
  it('mass and balance point of its old grip', () => {
    const { lessons, clubs } = planOf([aClub(stripped)]);
    expect(lessons).toEqual([
      {
        row: 1,
        club: '7 iron',
        oldItem: 'Worn',
        removedGrams: expect.closeTo(52 + STRIP, 9),
        gripGrams: expect.closeTo(52, 9),
        balanceInches: expect.closeTo(4.3, 8),
        appliesTo: [],
      },
    ]);
    expect(noteOf(clubs[0]!, 'taught')).toEqual({
      note: 'taught',
      grams: expect.closeTo(52, 9),
      balanceInches: expect.closeTo(4.3, 8),
    });
  });

  it('tape and a weight that left are taken out', () => {
    const more = 2 * LAYER + 12;
    const club = aClub({
      ...stripped,
      massGrams: massGrams + more,
      reading: reading + (2 * LAYER * -8.75 + 12 * -13) / P,
      oldLayers: 2,
      buttWeightGrams: 12,
      buttWeightLeaves: true,
    });
    const [lesson] = planOf([club]).lessons;
    expect(lesson?.gripGrams).toBeCloseTo(52, 9);
    expect(lesson?.balanceInches).toBeCloseTo(4.3, 8);
    expect(lesson?.removedGrams).toBeCloseTo(52 + STRIP + 2 * LAYER, 9);
  });

  it.each(['reading', 'massGrams', 'bareReading', 'bareGrams'] as const)('nothing without %s', (missing) => {
    const { lessons, clubs } = planOf([aClub({ ...stripped, [missing]: undefined })]);
    expect(lessons).toEqual([]);
    expect(noteKinds(clubs[0]!)).not.toContain('taught');
    expect(noteKinds(clubs[0]!)).not.toContain('bareContradicts');
  });

  it.each([
    ['nothing came off', { massGrams: 368 }],
    ['under 15 g came off', { massGrams: 368 + 14 + STRIP, reading: 44 + (14 * -9.7 + STRIP * -8.75 + 46) / P }],
    ['over 220 g came off', { massGrams: 368 + 221 + STRIP, reading: 44 + (221 * -9.7 + STRIP * -8.75 + 46) / P }],
    ['it would balance above 1.5 in', { reading: 44 + (52 * (1.4 - 14) + STRIP * -8.75 + 46) / P }],
    ['it would balance beyond 12 in', { reading: 44 + (52 * (12.1 - 14) + STRIP * -8.75 + 46) / P }],
    ['exactly the strip came off', { massGrams: 368 + STRIP, reading: 40 }],
  ])('a contradiction where %s', (_, more) => {
    const { lessons, clubs } = planOf([aClub({ ...stripped, ...more })]);
    expect(lessons).toEqual([]);
    expect(noteKinds(clubs[0]!)).toContain('bareContradicts');
    expect(clubs[0]?.readingGripped).toBeDefined(); // planned from bare all the same
  });

  it.each([
    ['15 g', 15.001, 4.3],
    ['220 g', 219.999, 4.3],
    ['1.5 in', 52, 1.501],
    ['12 in', 52, 11.999],
  ])('at the borders there is none: %s', (_, grams, at) => {
    const club = aClub({
      ...stripped,
      massGrams: 368 + grams + STRIP,
      reading: 44 + (grams * (at - 14) + STRIP * -8.75 + 46) / P,
    });
    expect(planOf([club]).lessons).toHaveLength(1);
  });
});

describe('who learns', () => {
  const teacher = aClub({ ...stripped, row: 1, name: 'taught', job: 'A' });
  const other = (more: object) => aClub({ row: 2, name: 'other', job: 'A', oldItem: 'worn', ...more });
  const learners = (more: object) => planOf([teacher, other(more)]).lessons[0]?.appliesTo;

  it('a club of the bag with the same old grip on an estimate, however it is written', () => {
    expect(learners({})).toEqual([2]);
    expect(learners({ job: 'a', oldItem: 'WORN' })).toEqual([2]);
    expect(learners({ oldGripGrams: undefined })).toEqual([2]);
    expect(learners({ oldGripGrams: undefined, oldMassFrom: 'weighed' })).toEqual([2]); // nothing was weighed
  });

  it('no other', () => {
    expect(learners({ oldItem: 'another' })).toEqual([]);
    expect(learners({ oldItem: undefined })).toEqual([]);
    expect(learners({ oldMassFrom: 'weighed' })).toEqual([]);
    expect(learners({ oldMassFrom: 'alike' })).toEqual([]); // it was taught already
    expect(learners({ bareReading: 43 })).toEqual([]);
    expect(learners({ job: 'B' })).toEqual([]);
    expect(learners({ job: undefined })).toEqual([]);
  });

  it('nobody from an old grip that has no name', () => {
    const [lesson] = planOf([aClub({ ...stripped, oldItem: undefined }), other({ oldItem: undefined })]).lessons;
    expect(lesson?.appliesTo).toEqual([]);
  });

  it('several, in their order', () => {
    const set = [other({ row: 5 }), teacher, other({ row: 2 }), other({ row: 9, oldItem: 'another' })];
    expect(planOf(set).lessons[0]?.appliesTo).toEqual([5, 2]);
  });

  it('a club that teaches is planned from bare', () => {
    expect(planOne(stripped).basis).toBe('bare');
  });
});

describe('inertia of a stripped club', () => {
  it('is reckoned with the grip that came off, whatever the catalogue says of it', () => {
    const { bareReading: _reading, bareGrams: _grams, ...worn } = stripped;
    const truth = planOne({ ...worn, oldGripGrams: 52, oldBalanceInches: 4.3 }).inertiaChange;
    for (const oldGripGrams of [49, undefined]) {
      expect(planOne({ ...stripped, oldGripGrams, oldBalanceInches: undefined }).inertiaChange).toBeCloseTo(truth!, 8);
    }
    expect(planOne({ ...stripped, oldCapInches: 0.2 }).inertiaChange).not.toBeCloseTo(truth!, 2); // where the body sat counts
  });

  it('is unknown, or that of the catalogue, where the four measurements do not tell', () => {
    expect(planOne({ ...stripped, massGrams: undefined, oldGripGrams: undefined }).inertiaChange).toBeUndefined();
    const catalogue = planOne({ ...stripped, massGrams: undefined }).inertiaChange;
    expect(catalogue).toBeDefined();
    expect(planOne({ ...stripped, massGrams: 368 }).inertiaChange).toBeCloseTo(catalogue!, 10); // they contradict
  });
});
