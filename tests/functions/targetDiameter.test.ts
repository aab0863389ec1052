import { describe, expect, test } from 'vitest';
import { targetDiameter } from '../../src/functions/functions';
import { refusal } from './refusal';

/** An invented guide: .05 an inch, then .10; the finger is half of the hand. */
const GUIDE = [
  ['Hand length (in)', 'Middle finger (in)', 'Diameter (in)'],
  [7, 3.5, 0.9],
  [8, 4, 0.95],
  [9, 4.5, 1.05],
];
const withRow = (...row: unknown[]): unknown[][] => [...GUIDE, row];
const BLANKS = [null, 0, '', undefined];

function sentence(...args: Parameters<typeof targetDiameter>): string {
  const { code, message } = refusal(() => targetDiameter(...args));
  return `${code} ${message}`;
}

describe('TARGETDIAMETER', () => {
  test('of a median man’s hand (ANSUR II: 193 mm) is the usual standard size (practice)', () => {
    expect(targetDiameter(7.6, 3.2)).toBeCloseTo(0.9, 12);
    expect(targetDiameter(193 / 25.4)).toBeCloseTo(0.9, 3);
  });

  test('goes by the guide it is given', () => {
    expect(targetDiameter(7.5, null, GUIDE)).toBeCloseTo(0.925, 12);
    expect(targetDiameter(8, 3.9, GUIDE)).toBeCloseTo((0.95 + 0.94) / 2, 12);
    expect(targetDiameter([[7.5]], [['']], GUIDE)).toBeCloseTo(0.925, 12); // one cell as a range
    expect(targetDiameter('7,5', '3,75', GUIDE)).toBeCloseTo(0.925, 12);
  });

  test('a blank is a blank, however it arrives', () => {
    for (const blank of BLANKS) {
      expect(targetDiameter(7, blank, GUIDE)).toBe(0.9);
      expect(targetDiameter(7.6, blank, [[blank]])).toBeCloseTo(0.9, 12);
      expect(sentence(blank)).toBe('#VALUE! handInches is blank. Give 5 to 10 in.');
      // blank cells within the table, and blank rows below it
      expect(targetDiameter(8, 3.9, withRow(blank, blank, blank))).toBeCloseTo(0.945, 12);
      const without = GUIDE.map(([hand, finger, diameter], at) => [hand, at === 0 ? finger : blank, diameter]);
      expect(targetDiameter(8, 3.9, without)).toBe(0.95);
    }
    expect(targetDiameter(7.6, 3.2, GUIDE.slice(0, 1))).toBeCloseTo(0.9, 12); // no rows yet: the usual guide
  });

  test.each<[Parameters<typeof targetDiameter>, string]>([
    [
      [193],
      '#VALUE! handInches is 193: that looks like millimetres. 193 mm is 7.60 in: type that, or wrap it in CONVERT.',
    ],
    [
      [19.3],
      '#VALUE! handInches is 19.3: that looks like centimetres. 19.3 cm is 7.60 in: type that, or wrap it in CONVERT.',
    ],
    [
      [7.6, 81],
      '#VALUE! fingerInches is 81: that looks like millimetres. 81 mm is 3.19 in: type that, or wrap it in CONVERT.',
    ],
    [[4], '#VALUE! handInches is 4. Give 5 to 10 in.'],
    [[-7], '#VALUE! handInches is −7. Give 5 to 10 in.'],
    [[7.6, 1.5], '#VALUE! fingerInches is 1.5. Give 2 to 5 in.'],
    [[7.6, 20], '#VALUE! fingerInches does not fit: the middle finger must be shorter than the hand.'],
    [[3.2, 7.6], '#VALUE! fingerInches does not fit: the middle finger must be shorter than the hand.'],
    [['large'], '#VALUE! handInches is “large”, not a number. Give 5 to 10 in.'],
    [[7.6, true], '#VALUE! fingerInches is TRUE, not a number. Give 2 to 5 in.'],
    [['#N/A'], '#VALUE! handInches holds the error “#N/A”. Mend that cell first.'],
    [[[[7, 8]]], '#VALUE! handInches does not fit: one cell is needed, and a range of 1 × 2 was given.'],
    [
      [8, null, GUIDE.slice(1)],
      '#VALUE! There is no column “Hand length (in)” in Sizes. Add it, or give the header row too.',
    ],
    [[8, null, [[7.6]]], '#VALUE! There is no column “Hand length (in)” in Sizes. Add it, or give the header row too.'],
    [
      [8, null, withRow(9.5, 4.7, 'XL')],
      '#VALUE! Sizes row 5, Diameter (in) is “XL”, not a number. Give 0.7 to 1.8 in.',
    ],
    [
      [8, null, withRow(8, 4.2, 0.97)],
      '#VALUE! Sizes row 5, Hand length (in): 8 is there twice; the first one counts. Rename or remove this one.',
    ],
    [
      [8, null, withRow(9.5, 4.7, 1)],
      '#VALUE! Sizes row 5 does not fit: the hand of 9.5 in starts from a smaller diameter than a shorter hand; the rows above it count.',
    ],
  ])('%j is refused', (args, expected) => {
    expect(sentence(...args)).toBe(expected);
  });
});
