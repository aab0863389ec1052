import { describe, expect, test } from 'vitest';
import type { EvenCost, EvenGroupPlan, Evenness, PlacedClub, Placement } from '../../src/core/index';
import * as words from '../../src/words/place';
import { aClub, planOne } from '../core/make';

const even = (more: Partial<Evenness> = {}): Evenness => ({
  largestGap: 1.44,
  rmsGap: 0.81,
  rangePoints: 2.3,
  headGrams: 9.5,
  buttGrams: 0,
  ...more,
});

const club = (row: number, more: Partial<PlacedClub> = {}): PlacedClub => {
  const plan = planOne({ row });
  return { row, name: `${row} iron`, item: 'OS-S60', grip: undefined, plan, before: plan, ...more };
};

const placement = (more: Partial<Placement> = {}): Placement => ({
  placed: [],
  left: [],
  unserved: [],
  odd: [],
  delivered: even(),
  asPlaced: even({ largestGap: 1, rmsGap: 0.2, rangePoints: 0.9, headGrams: 3, buttGrams: 6 }),
  ...more,
});

describe('a placing', () => {
  test('as delivered, as placed, and the head weight between them', () => {
    expect(words.sayDelivered(placement())).toBe(
      'In the order typed: at most 1.4 points off, usually 0.8 (root mean square), 2.3 points between the ends; 9.5 g at the heads to add.',
    );
    expect(words.sayAsPlaced(placement())).toBe(
      'As placed: at most 1.0 point off, usually 0.2 (root mean square), 0.9 points between the ends; 3 g at the heads and 6 g in the butts to add.',
    );
    expect(words.sayHeadSaved(placement())).toBe('Placing them saves 6.5 g of head weight.');
    expect(words.sayHeadSaved(placement({ asPlaced: even({ headGrams: 11 }) }))).toBe(
      'Placing them takes 1.5 g more head weight, for readings that are closer together.',
    );
    expect(words.sayHeadSaved(placement({ asPlaced: even() }))).toBe(
      'Placing them changes nothing in the head weight to add.',
    );
    expect(words.sayAsPlaced(placement({ asPlaced: even({ headGrams: 0 }) }))).toContain('; no weight to add.');
    const nothing = even({ largestGap: undefined, rmsGap: undefined, rangePoints: undefined });
    expect(words.sayAsPlaced(placement({ asPlaced: nothing }))).toBe(
      'As placed: none of these clubs is held at a reading that can be reckoned.',
    );
  });

  test('clubs without a grip, and grips without a club', () => {
    expect(words.sayUnserved(placement())).toBeUndefined();
    expect(words.sayUnserved(placement({ placed: [club(7), club(8), club(9)], unserved: [7, 9] }))).toBe(
      'No weighed grip was left for 7 iron and 9 iron: planned with the mass in Stock. Weigh 2 more.',
    );
    expect(words.sayLeft(placement())).toBeUndefined();
    expect(words.sayLeft(placement({ left: [{ number: 3, grams: 51.2 }] }))).toBe('Left over: grip 3 (51.2 g).');
    const left = [3, 7].map((number) => ({ number, grams: 50 + number }));
    expect(words.sayLeft(placement({ left }))).toBe('Left over: grips 3 (53 g) and 7 (57 g).');
  });

  test('an odd mass', () => {
    const odd = { grip: { number: 4, grams: 61.2 }, item: 'OS-S60', stockGrams: 50 };
    const sentence =
      'Grip 4 weighs 61.2 g, and Stock says 50 g for OS-S60. Check that it is this grip, and the scale; it is placed as weighed.';
    expect(words.sayOddMass(odd)).toBe(sentence);
    expect(words.sayPlacement(placement({ odd: [odd] }))).toEqual([
      words.sayDelivered(placement()),
      words.sayAsPlaced(placement()),
      words.sayHeadSaved(placement()),
      sentence,
    ]);
    const short = placement({ placed: [club(7)], unserved: [7], left: [{ number: 1, grams: 50 }] });
    expect(words.sayPlacement(short).slice(3)).toEqual([words.sayUnserved(short), words.sayLeft(short)]);
  });

  test('how many went on', () => {
    const on = club(7, { grip: { number: 1, grams: 50 } });
    expect(words.placedText(placement({ placed: [on, club(8)] }))).toBe('1 grip on 1 club');
    expect(words.placedText(placement({ placed: [on, on] }))).toBe('2 grips on 2 clubs');
  });
});

describe('target readings', () => {
  const group = (more: Partial<EvenGroupPlan> = {}): EvenGroupPlan => ({
    group: 'irons',
    job: undefined,
    choice: 'one',
    clubs: [aClub({ lengthInches: 38 }), aClub({ lengthInches: 35.75 }), aClub({ lengthInches: undefined })],
    one: undefined,
    line: undefined,
    standsOut: [],
    unread: [],
    issue: undefined,
    ...more,
  });

  test('what a group is to read', () => {
    expect(words.sayEvenTarget(group({ choice: 'own' }))).toBe('Irons: each as it read.');
    expect(words.sayEvenTarget(group({ one: 32.4 }))).toBe('Irons: all D2.4.');
    const line = { slope: -1, intercept: 70 };
    expect(words.sayEvenTarget(group({ choice: 'line', line }))).toBe(
      'Irons: a line from D2.0 at 38 in to D4.3 at 35.75 in, −1.00 points an inch.',
    );
    const issue = {
      code: 'contradiction',
      field: 'A line by length for the irons',
      expected: 'it needs three',
    } as const;
    expect(words.sayEvenTarget(group({ choice: 'line', issue }))).toBe(
      'Irons stay as they are. A line by length for the irons does not fit: it needs three.',
    );
  });

  test('what stands out, and what was never read', () => {
    const out = { row: 9, name: '9 iron', reading: 34.1, points: 2.3 };
    expect(words.sayStandsOut(out, 'one')).toBe('9 iron reads D4.1, 2.3 points above its group.');
    expect(words.sayStandsOut({ ...out, points: -1 }, 'line')).toBe(
      '9 iron reads D4.1, 1.0 point below the line of its group.',
    );
    const unread = [
      { row: 1, name: '6 iron', lacks: 'reading' },
      { row: 2, name: '7 iron', lacks: 'length' },
    ] as const;
    const sentences = [
      'Irons: all D2.0.',
      '9 iron reads D4.1, 2.3 points above its group.',
      '6 iron has no reading and no say in its group’s target. Put it on the scale.',
      '7 iron has no length, so a line gives it no target. Measure it.',
    ];
    const told = group({ one: 32, standsOut: [out], unread });
    expect(words.sayEvenGroup(told)).toEqual(sentences);
    expect(words.sayEven({ groups: [told], targets: new Map(), noKind: [{ row: 5, name: 'thing' }] })).toEqual([
      ...sentences,
      'thing: no group without a kind. Give Kind in Clubs.',
    ]);
    expect(words.sayEven({ groups: [], targets: new Map(), noKind: [] })).toEqual([]);
  });

  test('what a choice would cost', () => {
    const cost: EvenCost = {
      group: 'irons',
      job: undefined,
      choice: 'one',
      largestGap: 2.04,
      headGrams: 6.5,
      buttGrams: 8,
      tooHeavy: 1,
      overLimit: 0,
      issue: undefined,
    };
    expect(words.sayEvenCost(cost)).toBe(
      'One reading: 6.5 g at the heads and 8 g in the butts to add, at most 2.0 points off with the grip alone; 1 club reads too heavy for it.',
    );
    expect(words.sayEvenCost({ ...cost, largestGap: undefined, buttGrams: 0, tooHeavy: 0, overLimit: 2 })).toBe(
      'One reading: 6.5 g at the heads to add; 2 clubs over your limit of weight.',
    );
    expect(words.sayEvenCost({ ...cost, choice: 'line', issue: { code: 'noRows', field: 'x' } })).toBe(
      'A line by length: not to be had.',
    );
  });
});
