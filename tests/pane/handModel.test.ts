import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SIZE_GUIDE, fromSample, RANGES, startDiameter, type StartSize } from '../../src/core/index';
import { answersOf, handModel, lengthText, toKeep, type MeasureFault } from '../../src/pane/state/handModel';
import { EMPTY_TOOLS, type HandForm } from '../../src/pane/state/tools';
import type { HandSeen } from '../../src/pane/state/work';
import { measureFaultText } from '../../src/pane/toolWords';

/** Two thicknesses of tape, .0066 in to the diameter: what a layer adds. */
const LAYER = 0.0066;
const NONE: HandSeen = {
  handLength: undefined,
  fingerLength: undefined,
  lowerHandLength: undefined,
  lowerFingerLength: undefined,
};
const model = (change: Partial<HandForm> = {}, seen: HandSeen | undefined = NONE) =>
  handModel({ ...EMPTY_TOOLS.hand, ...change }, seen, DEFAULT_SIZE_GUIDE, LAYER);
const faultOf = (change: Partial<HandForm>): MeasureFault | undefined => model(change).measures.hand.fault;
const sized = (hand: { handInches: number; fingerInches?: number }): StartSize => {
  const size = startDiameter(DEFAULT_SIZE_GUIDE, hand, LAYER);
  if (!size.ok) throw new Error('no size');
  return size.value;
};

describe('before anything is typed', () => {
  test('Jobs’ measures stand in the fields and give a size', () => {
    const { measures, start, differ, unkept } = model({}, { ...NONE, handLength: 7.6, fingerLength: 3.2 });
    expect([measures.hand.text, measures.finger.text]).toEqual(['7.6', '3.2']);
    expect(start).toEqual(sized({ handInches: 7.6, fingerInches: 3.2 }));
    // the row of the size guide for a hand of 7.6 in
    expect(start?.inches).toBeCloseTo(0.9, 9);
    expect([differ, unkept]).toEqual([false, false]);
  });

  test('they stand there in millimetres too, and give the same size', () => {
    const seen = { ...NONE, handLength: 7.6, fingerLength: 3.2 };
    const mm = model({ unit: 'mm' }, seen);
    // 7.6 × 25.4 = 193.04; 3.2 × 25.4 = 81.28, to half a millimetre
    expect([mm.measures.hand.text, mm.measures.finger.text]).toEqual(['193', '81.5']);
    expect(mm.start).toEqual(model({}, seen).start);
    expect(mm.unkept).toBe(false);
  });

  test('a lower hand in Jobs means that both differ, until the person says otherwise', () => {
    const seen = { ...NONE, handLength: 7.6, lowerHandLength: 8 };
    expect(model({}, seen)).toMatchObject({ differ: true, lowerStart: sized({ handInches: 8 }) });
    expect(model({ differ: false }, seen)).toMatchObject({ differ: false, lowerStart: undefined });
  });

  test('there is no size without a measure, nor for clubs of no job', () => {
    expect(model()).toMatchObject({ start: undefined, target: undefined, issue: undefined, unkept: false });
    expect(model({}, undefined)).toMatchObject({ start: undefined, unkept: false });
    expect(model({ finger: '3.2' })).toMatchObject({ start: undefined, issue: undefined, unkept: true });
  });

  test('a field that was emptied takes Jobs’ measure away', () => {
    const emptied = model({ hand: ' ' }, { ...NONE, handLength: 7.6 });
    expect(emptied).toMatchObject({ start: undefined, issue: undefined });
    expect(emptied.measures.hand).toEqual({ text: ' ', inches: undefined, fault: undefined });
  });
});

describe('what was typed', () => {
  test('counts in the unit that is chosen, with point or comma', () => {
    const inches = sized({ handInches: 7.6 });
    expect(model({ hand: '7.6' }).start).toEqual(inches);
    expect(model({ hand: '7,6' }).start).toEqual(inches);
    expect(model({ hand: '193,04', unit: 'mm' }).start?.inches).toBeCloseTo(inches.inches, 9);
  });

  test('that is no number says so', () => {
    for (const hand of ['big', '7.6.1', '1,234,5']) expect(faultOf({ hand })).toEqual({ fault: 'notNumber' });
    expect(model({ hand: 'big' })).toMatchObject({ start: undefined, issue: undefined, unkept: false });
    expect(measureFaultText({ fault: 'notNumber' }, 'in')).toBe('Give a number alone, such as 7.6 or 7,6.');
  });

  test('in millimetres or centimetres while inches are chosen is asked about', () => {
    expect(faultOf({ hand: '193' })).toMatchObject({ fault: 'unit', typed: 193, seems: 'mm' });
    expect(faultOf({ hand: '19.3' })).toMatchObject({ fault: 'unit', typed: 19.3, seems: 'cm' });
    const fault = faultOf({ hand: '193' });
    expect(fault?.fault === 'unit' && fault.inches).toBeCloseTo(193 / 25.4, 9);
    expect(model({ hand: '193' })).toMatchObject({ start: undefined, issue: undefined, unkept: false });
    expect(measureFaultText(fault as MeasureFault, 'in')).toBe('193 looks like millimetres.');
    expect(measureFaultText(faultOf({ hand: '19,3' }) as MeasureFault, 'in')).toBe('19.3 looks like centimetres.');
  });

  test('in inches or centimetres while millimetres are chosen is asked about', () => {
    expect(faultOf({ unit: 'mm', hand: '7.6' })).toEqual({ fault: 'unit', typed: 7.6, seems: 'in', inches: 7.6 });
    expect(faultOf({ unit: 'mm', hand: '19.3' })).toMatchObject({ fault: 'unit', seems: 'cm' });
    expect(measureFaultText(faultOf({ unit: 'mm', hand: '7.6' }) as MeasureFault, 'mm')).toBe('7.6 looks like inches.');
    expect(measureFaultText(faultOf({ unit: 'mm', hand: '8' }) as MeasureFault, 'mm')).toBe('8 looks like inches.');
  });

  test('far out of range in any unit says what is accepted, in the unit that is chosen', () => {
    const { low, high } = RANGES.handInches;
    expect(faultOf({ hand: '40' })).toEqual({ fault: 'outOfRange', low, high });
    expect(measureFaultText(faultOf({ hand: '40' }) as MeasureFault, 'in')).toBe(
      `${low} to ${high} in are accepted. Measure again.`,
    );
    expect(measureFaultText(faultOf({ hand: '1', unit: 'mm' }) as MeasureFault, 'mm')).toBe(
      `${Math.round(low * 25.4)} to ${Math.round(high * 25.4)} mm are accepted. Measure again.`,
    );
    for (const hand of ['-7.6', '0', '1000000']) expect(faultOf({ hand })?.fault).toBe('outOfRange');
  });

  test('a finger as long as the hand is told before two ranges are: they may be exchanged', () => {
    for (const [unit, hand, finger] of [
      ['in', '3.2', '7.6'],
      ['mm', '81', '193'],
      ['mm', '178', '190'],
    ] as const) {
      const { issue, measures, target } = model({ unit, hand, finger });
      expect([hand, issue?.code]).toEqual([hand, 'contradiction']);
      expect([measures.hand.fault, measures.finger.fault, target]).toEqual([undefined, undefined, undefined]);
    }
    // a finger in millimetres beside a hand in inches is a unit, not a long finger
    expect(model({ hand: '7.6', finger: '84' }).measures.finger.fault).toMatchObject({ fault: 'unit', seems: 'mm' });
  });

  test('a finger has a range of its own', () => {
    expect(model({ finger: '81' }).measures.finger.fault).toMatchObject({ fault: 'unit', seems: 'mm' });
    expect(model({ finger: '3.2' }).measures.finger.fault).toBeUndefined();
    expect(faultOf({ hand: '3.2' })).toMatchObject({ fault: 'outOfRange' });
  });

  test('whatever the unit, what is offered for a mistaken one is accepted as it is written', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 400, noNaN: true }), fc.constantFrom('in', 'mm'), (value, unit) => {
        const fault = faultOf({ hand: String(value), unit });
        if (fault?.fault !== 'unit') return;
        const taken = model({ hand: lengthText(fault.inches, unit), unit });
        // the text is rounded to a hundredth of an inch or half a millimetre: at the ends of the range that may fall outside
        const atEnd = [RANGES.handInches.low, RANGES.handInches.high].some(
          (end) => Math.abs(fault.inches - end) < 0.011,
        );
        if (!atEnd) expect(taken.measures.hand.fault).toBeUndefined();
      }),
    );
  });
});

describe('a hand that gives no size', () => {
  test('has a finger as long as itself', () => {
    const { issue, target } = model({ hand: '5', finger: '5' });
    expect(issue).toMatchObject({ code: 'contradiction', field: 'fingerInches' });
    expect(target).toBeUndefined();
  });

  test('waits for a finger that cannot be read, but not for one that was left out', () => {
    expect(model({ hand: '7.6', finger: '81' })).toMatchObject({ target: undefined, issue: undefined });
    expect(model({ hand: '7.6', finger: '' }).target?.targetInches).toBeCloseTo(0.9, 9);
  });

  test('has a guide that cannot be used', () => {
    const empty = handModel({ ...EMPTY_TOOLS.hand, hand: '7.6' }, NONE, [], LAYER);
    expect(empty).toMatchObject({ issue: { code: 'noRows', field: 'guide' }, target: undefined });
  });

  test('says so of the lower hand too, and keeps the upper one’s size', () => {
    const both = model({ hand: '7.6', differ: true, lowerHand: '5', lowerFinger: '5' });
    expect(both.issue).toMatchObject({ code: 'contradiction' });
    expect(both.start?.inches).toBeCloseTo(0.9, 9);
  });
});

describe('the target', () => {
  test('is what the answers make of the start, for both hands', () => {
    const form = { hand: '7.6', differ: true, lowerHand: '8', fingertips: 'press', errLarger: '1' } as const;
    const expected = fromSample(
      sized({ handInches: 7.6 }),
      sized({ handInches: 8 }),
      { fingertips: 'press', squeezes: false, pain: false, errLarger: 1 },
      LAYER,
    );
    expect(model(form).target).toEqual(expected);
    expect(expected.layersMoved).not.toBe(0);
    expect(expected.lowerLayers).toBeGreaterThan(0);
  });

  test('takes no answer that was not given', () => {
    expect(answersOf(EMPTY_TOOLS.hand)).toEqual({ squeezes: false, pain: false, errLarger: 0 });
    const all = { fingertips: 'gap', littleFinger: 'short', lowerIndex: 'reaches' } as const;
    expect(answersOf({ ...EMPTY_TOOLS.hand, ...all, squeezes: true, pain: true, errLarger: '2' })).toEqual({
      ...all,
      squeezes: true,
      pain: true,
      errLarger: 2,
    });
  });
});

describe('keeping a hand', () => {
  const seen = { ...NONE, handLength: 7.6, fingerLength: 3.2 };

  test('is offered where Jobs has other measures, or none', () => {
    expect(model({ hand: '7.7' }, seen).unkept).toBe(true);
    expect(model({ hand: '7.60' }, seen).unkept).toBe(false);
    expect(model({ hand: '193', unit: 'mm' }, seen).unkept).toBe(false);
    expect(model({ hand: '194', unit: 'mm' }, seen).unkept).toBe(true);
    expect(model({ hand: '7.6' }).unkept).toBe(true);
    expect(model({ differ: true, lowerHand: '7.9' }, seen).unkept).toBe(true);
    expect(model({ differ: false, lowerHand: '7.9' }, seen).unkept).toBe(false);
  });

  test('writes hundredths of an inch, and leaves what was not measured or cannot be read', () => {
    expect(toKeep(model({ hand: '191', finger: 'long', unit: 'mm' }))).toEqual({
      handLength: 7.52,
      fingerLength: null,
      lowerHandLength: null,
      lowerFingerLength: null,
    });
    const both = { hand: '7.6', lowerHand: '8', lowerFinger: '3,35' };
    expect(toKeep(model({ ...both, differ: true }))).toMatchObject({ lowerHandLength: 8, lowerFingerLength: 3.35 });
    expect(toKeep(model({ ...both, differ: false }))).toMatchObject({ lowerHandLength: null, lowerFingerLength: null });
  });

  test('once kept it is not offered again, whatever was typed in whichever unit', () => {
    fc.assert(
      fc.property(fc.double({ min: 5.2, max: 9.8, noNaN: true }), fc.constantFrom('in', 'mm'), (inches, unit) => {
        const form = { hand: lengthText(inches, unit), unit };
        const kept = toKeep(model(form));
        expect(model(form, { ...NONE, handLength: kept.handLength ?? undefined }).unkept).toBe(false);
      }),
    );
  });
});
