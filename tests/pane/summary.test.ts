import { describe, expect, test } from 'vitest';
import { gatherDecisions, isOpen } from '../../src/pane/state/decisions';
import { findGrips } from '../../src/pane/state/findGrips';
import { summarise } from '../../src/pane/state/summary';
import type { GripSeen } from '../../src/pane/state/work';
import { addedText, namesText, summaryText, willWriteText } from '../../src/pane/words';
import { clubPlan, remedyOf, setPlan } from './clubs';

describe('the summary', () => {
  const plan = setPlan(
    [
      clubPlan({ name: 'Driver', verdictAfter: 'out', remedy: remedyOf(0.1 + 0.2) }),
      clubPlan({ name: '7 iron', verdictAfter: 'within', remedy: remedyOf(3.5) }),
      clubPlan({ name: '8 iron', verdictAfter: 'within', remedy: remedyOf(6, 'butt') }),
      clubPlan({ name: 'Putter', verdictAfter: 'notHeld' }),
    ],
    { 'A-1': 3, 'P-1': 1 },
  );

  test('counts verdicts best first and grams by end, free of binary noise', () => {
    expect(summarise(plan)).toEqual({
      clubs: 4,
      counts: [
        { verdict: 'within', clubs: 2 },
        { verdict: 'out', clubs: 1 },
        { verdict: 'notHeld', clubs: 1 },
      ],
      headGrams: 3.8,
      buttGrams: 6,
      grips: 4,
    });
  });

  test('reads as a sentence', () => {
    const summary = summarise(plan);
    expect(summaryText(summary)).toBe('4 clubs: 2 within, 1 out, 1 not held');
    expect(addedText(summary)).toBe('3.8 g at the heads, 6 g in the butts');
    expect(addedText({ ...summary, headGrams: 0, buttGrams: 0 })).toBe('no weight to add');
  });
});

describe('what waits for a decision', () => {
  const say = { note: (note: { note: string }) => `says ${note.note}`, breach: () => 'breaks' };
  const loose = { note: 'noGrip' } as const;

  test('is gathered by what it is, each sentence once with its clubs', () => {
    const plan = setPlan([
      clubPlan({ name: '7 iron', notes: [loose, { note: 'readingUnknown' }] }),
      clubPlan({ name: '8 iron', notes: [loose] }),
      clubPlan({ name: 'Driver', breaches: [{ rule: 'clubLong', inches: 48.5 }] }),
    ]);
    expect(gatherDecisions(plan, say)).toEqual([
      { topic: 'noGrip', sentences: [{ text: 'says noGrip', clubs: ['7 iron', '8 iron'] }] },
      { topic: 'readingUnknown', sentences: [{ text: 'says readingUnknown', clubs: ['7 iron'] }] },
      { topic: 'breach', sentences: [{ text: 'breaks', clubs: ['Driver'] }] },
    ]);
  });

  test('is not what is only news', () => {
    const news = clubPlan({ name: 'Putter', notes: [{ note: 'taught', grams: 47, balanceInches: 4 }] });
    expect(gatherDecisions(setPlan([news]), say)).toEqual([]);
    expect(isOpen(news)).toBe(false);
    expect(isOpen(clubPlan({ name: '7 iron', notes: [loose] }))).toBe(true);
  });

  test('is not that a size was never checked, unless a size is wanted', () => {
    const clubs = ['7 iron', '8 iron'].map((name) => clubPlan({ name, notes: [{ note: 'sizeUnknown' }] }));
    expect(gatherDecisions(setPlan(clubs), say)).toEqual([]);
    expect(clubs.some(isOpen)).toBe(false);
    const wanted = clubPlan({ name: 'Driver', notes: [{ note: 'sizeUnknown', targetInches: 0.96 }] });
    expect(gatherDecisions(setPlan([...clubs, wanted]), say)).toEqual([
      { topic: 'sizeUnknown', sentences: [{ text: 'says sizeUnknown', clubs: ['Driver'] }] },
    ]);
    expect(isOpen(wanted)).toBe(true);
  });
});

describe('finding a grip', () => {
  const grip = (item: string, description: string, size: string, coreInches: number): GripSeen => ({
    item,
    description,
    size,
    coreInches,
    gripGrams: 50,
    onHand: 3,
  });
  const grips = [
    grip('A-S58', 'Firm', 'Standard', 0.58),
    grip('A-M60', 'Firm', 'Midsize', 0.6),
    grip('B-M58', 'Soft', 'Midsize', 0.58),
  ];
  const found = (typed: string) => findGrips(grips, typed).found.map(({ item }) => item);

  test('takes every typed word, wherever it stands', () => {
    expect(found('')).toEqual(['A-S58', 'A-M60', 'B-M58']);
    expect(found('mid .58')).toEqual(['B-M58']);
    expect(found('FIRM')).toEqual(['A-S58', 'A-M60']);
    expect(found('cork')).toEqual([]);
  });

  test('shows a part of a long list and says how many are left', () => {
    const many = Array.from({ length: 100 }, (_, i) => grip(`N-${i}`, '', '', 0.6));
    expect(findGrips(many, '')).toMatchObject({ more: 60 });
  });
});

test('names are listed, and counted when there are many', () => {
  expect(namesText(['PW'])).toBe('PW');
  expect(namesText(['7 iron', '8 iron', 'PW'])).toBe('7 iron, 8 iron and PW');
  expect(namesText(['1', '2', '3', '4', '5', '6', '7'])).toBe('1, 2, 3, 4, 5 and 2 more');
});

test('what will be written is said before it is', () => {
  expect(willWriteText({}, 13, 'sheet ‘Plan 1042’')).toBe(
    'Writes the plan into sheet ‘Plan 1042’. Clubs stays as it is.',
  );
  expect(willWriteText({ newItem: 'A-1', layers: null, targetDiameter: 0.92 }, 13, 'sheet ‘Plan 1042’')).toBe(
    'Writes the grip and target diameter of 13 clubs into Clubs, blanks the layers there, and writes the plan into sheet ‘Plan 1042’.',
  );
  expect(willWriteText({ hold: 'Nothing' }, 1, 'sheet ‘Plan 1042’')).toBe(
    'Writes the hold of 1 club into Clubs, and the plan into sheet ‘Plan 1042’.',
  );
});
