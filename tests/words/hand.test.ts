import { describe, expect, it } from 'vitest';
import type { Grip, Move, MoveCode, Reaching, StartSize } from '../../src/core/index';
import { CLINICIAN, sayMove, sayNoneReaching, sayStart, STARTING_POINT } from '../../src/words/hand';

/** Every reason as the core gives it, and the sentence. */
const MOVES: Record<MoveCode, readonly [Omit<Move, 'code'>, string]> = {
  press: [{ hand: 'upper', layers: 2 }, '2 layers more: the fingertips press into the palm, so the grip is too small.'],
  gap: [
    { hand: 'upper', layers: -2 },
    '2 layers fewer: a clear gap between fingertips and palm, so the grip is too large.',
  ],
  short: [
    { hand: 'upper', layers: -1 },
    '1 layer fewer: the little finger does not wrap past the grip’s centre line, so there is too much grip for it.',
  ],
  contradict: [
    { hand: 'upper', layers: 0 },
    'Nothing moved: fingertips that press say too small, a little finger that falls short says too large. Look at both again on the sample grip.',
  ],
  squeeze: [
    { hand: 'upper', layers: 0 },
    'Nothing moved: a grip too small and one too large both make a player squeeze. Go by the fingertips and the little finger.',
  ],
  errLarger: [
    { hand: 'upper', layers: 1 },
    '1 layer more: between two sizes the larger is the better guess, by a layer or two and not by a moulded size.',
  ],
  lowerLarger: [
    { hand: 'lower', layers: 3 },
    '3 layers more under the lower hand: by its own measures it starts from a larger size.',
  ],
  lowerMost: [
    { hand: 'lower', layers: 4, wanted: 6 },
    '4 layers more under the lower hand, not the 6 that its measures ask for: so many would turn the taper round. Measure both hands again, or choose a grip with less taper.',
  ],
  lowerSmaller: [
    { hand: 'lower', layers: 0, wanted: 1 },
    'Nothing moved: by its own measures the lower hand starts 1 layer smaller, and tape cannot make a grip smaller there. A grip with more taper does.',
  ],
  reachFewer: [
    { hand: 'lower', layers: -1 },
    '1 layer fewer under the lower hand: its index finger has to reach round the grip.',
  ],
  reachSmaller: [
    { hand: 'upper', layers: -1 },
    '1 layer fewer: the lower hand’s index finger has to reach, and there is no extra tape under that hand to leave out. A grip with more taper does it for that hand alone.',
  ],
  reachTaper: [
    { hand: 'lower', layers: 0 },
    'Nothing moved: the lower hand’s index finger has to reach, but the upper hand, which is fitted first, wants more. A grip with more taper serves both.',
  ],
  pain: [
    { hand: 'upper', layers: 0 },
    'Nothing moved for the pain: no size answers it. Send the player to a clinician before grips are changed for it.',
  ],
};

describe('why a size moves', () => {
  it.each(Object.entries(MOVES) as [MoveCode, (typeof MOVES)[MoveCode]][])('%s', (code, [move, sentence]) => {
    expect(sayMove({ code, ...move })).toBe(sentence);
  });
});

it('a size from a hand is a starting point, and pain is not ours to treat', () => {
  expect(STARTING_POINT).toMatch(/starting point/);
  expect(CLINICIAN).toMatch(/clinician/);
});

describe('a starting size', () => {
  const start: StartSize = {
    inches: 0.9,
    byHandInches: 0.92,
    byFingerInches: 0.88,
    beyond: [],
    disagree: false,
  };

  it('of a hand that the guide knows needs no more said', () => expect(sayStart(start)).toEqual([]));

  it('beyond the guide, or of a hand and a finger that disagree', () => {
    const short = { measure: 'hand', end: 'below' } as const;
    expect(sayStart({ ...start, beyond: [short], disagree: true })).toEqual([
      'This hand is shorter than any in Sizes: its half of the size is the smallest there. Add a row to Sizes if you fit such hands.',
      'By hand length .920, by middle finger .880: more than a layer apart, and the size is half-way. Measure both again.',
    ]);
    const long = { measure: 'finger', end: 'above' } as const;
    expect(sayStart({ ...start, beyond: [long] })).toEqual([
      'This finger is longer than any in Sizes: its half of the size is the largest there. Add a row to Sizes if you fit such hands.',
    ]);
    expect(sayStart({ ...start, byFingerInches: undefined, beyond: [{ ...long, measure: 'hand' }] })).toEqual([
      'This hand is longer than any in Sizes: the largest size there counts. Add a row to Sizes if you fit such hands.',
    ]);
  });
});

describe('no grip that reaches a size', () => {
  const nearest = (errorInches: number): Reaching => ({
    grip: { item: 'R60-S' } as Grip,
    layers: 1,
    upper: { inches: 0.95 + errorInches, lowInches: 0.9, highInches: 1 },
    lower: undefined,
    fittedGrams: 52,
    errorInches,
  });

  it.each([
    ['noStock', undefined, 'Stock lists no grips. Add the ones you keep, with core, mass and diameters.'],
    [
      'none',
      undefined,
      'No grip of Stock can be tried for .950: each is made for other clubs, too tight on this butt, or lacks its core or diameter.',
    ],
    ['none', nearest(-0.02), 'No grip of Stock reaches .950. R60-S with 1 layer comes nearest: .930, .020 too small.'],
    ['none', nearest(0.03), 'No grip of Stock reaches .950. R60-S with 1 layer comes nearest: .980, .030 too large.'],
    [undefined, undefined, undefined],
  ] as const)('%s, %j', (why, near, sentence) => {
    expect(sayNoneReaching({ found: [], nearest: near, why }, 0.95)).toBe(sentence);
  });
});
