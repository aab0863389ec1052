import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changeOf, plotOf, ticksOf } from '../../src/pane/state/plot';
import { asideText } from '../../src/pane/words';
import { clubPlan, shiftOf } from './clubs';

/** D2 is 32 points: ten a letter from A0. */
const held = clubPlan({
  row: 1,
  name: '7 iron',
  heldReading: 32,
  readingBefore: 32,
  readingGripped: 30.1,
  readingAfter: 31.9,
  spreadPoints: 0.6,
  shift: shiftOf(-1.9),
  verdictAfter: 'within',
});
const putter = clubPlan({
  row: 2,
  name: 'Putter',
  hold: 'nothing',
  readingBefore: 46,
  readingGripped: 42,
  readingAfter: 42,
  shift: shiftOf(-4),
  verdictAfter: 'notHeld',
});
const junior = clubPlan({
  row: 3,
  name: 'First 7',
  hold: 'nothing',
  readingBefore: -67,
  readingGripped: -64.6,
  readingAfter: -64.6,
  shift: shiftOf(2.4),
  verdictAfter: 'notHeld',
});
const unread = clubPlan({ row: 4, name: '6 iron', shift: shiftOf(-0.7) });

describe('the scale', () => {
  test('is swing weight where a club is held to a reading', () => {
    const plot = plotOf({ clubs: [held, putter] });
    expect(plot.scale).toBe('reading');
    expect(plot.low).toBeLessThanOrEqual(29.5);
    expect(plot.high).toBeGreaterThanOrEqual(33);
    expect(plot.rows[0]).toMatchObject({
      before: 32,
      gripped: 30.1,
      after: 31.9,
      band: { low: 31, high: 33 },
      aside: undefined,
    });
  });

  test('is not stretched by a club that holds nothing: that one says its change instead', () => {
    const [, row] = plotOf({ clubs: [held, putter] }).rows;
    expect(row?.aside).toEqual({ change: -4 });
  });

  test('is the change in points where no club is held, each from 0', () => {
    const plot = plotOf({ clubs: [junior, putter] });
    expect(plot.scale).toBe('change');
    expect(plot.rows.map(({ before, band, aside }) => [before, band, aside])).toEqual([
      [0, undefined, undefined],
      [0, undefined, undefined],
    ]);
    expect(plot.rows[0]?.gripped).toBeCloseTo(2.4);
    expect(plot.rows[1]?.after).toBe(-4);
  });

  test('is the change in points where what is held lies off the letters', () => {
    const below = { ...junior, hold: 'asArrived' as const, heldReading: -67 };
    const plot = plotOf({ clubs: [below] });
    expect(plot.scale).toBe('change');
    expect(plot.rows[0]?.band).toEqual({ low: -1, high: 1 });
  });

  test('keeps a width below which tenths would look like landslides', () => {
    const plot = plotOf({ clubs: [{ ...held, readingGripped: 32, readingAfter: 32, spreadPoints: 0 }] });
    expect(plot.high - plot.low).toBeGreaterThanOrEqual(6);
  });
});

test('a club without a reading says its change, and one that nothing is known of says so', () => {
  const rows = plotOf({ clubs: [held, unread, clubPlan({ row: 5, name: 'PW' })] }).rows;
  expect(rows.map(({ aside }) => aside)).toEqual([undefined, { change: -0.7 }, { change: undefined }]);
});

test('a reading that is known is said, whatever else is not: a junior club at B5 beside others at D2', () => {
  // B5 is 15 points: ten a letter from A0.
  const first = clubPlan({ row: 6, name: 'Junior 7', hold: 'nothing', readingBefore: 15, verdictAfter: 'notHeld' });
  const [, row] = plotOf({ clubs: [held, first] }).rows;
  expect(row?.aside).toEqual({ change: undefined, reading: 15 });
  expect(row && asideText(row)).toBe('B5.0, change not known');
  const [, none] = plotOf({ clubs: [held, clubPlan({ row: 5, name: 'PW' })] }).rows;
  expect(none && asideText(none)).toBe('no reading');
});

test('an empty plan has a scale and no rows', () => {
  expect(plotOf({ clubs: [] })).toMatchObject({ rows: [], scale: 'change' });
});

test('the change is from arrival to the end, else what moves it, else unknown', () => {
  expect(changeOf(held)).toBeCloseTo(-0.1);
  expect(changeOf(unread)).toBe(-0.7);
  expect(changeOf(clubPlan({ name: 'PW' }))).toBeUndefined();
});

test('ticks are whole points on the scale, few and evenly apart', () => {
  expect(ticksOf(29.5, 33.5)).toEqual([30, 31, 32, 33]);
  expect(ticksOf(-4, 12)).toEqual([0, 5, 10]);
  // Tenths: what a scale shows. Numbers next to nothing vanish when they are divided.
  const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenth) => tenth / 10);
  const ends = fc.tuple(tenths(-120, 69), tenths(6, 200));
  fc.assert(
    fc.property(ends, ([low, width]) => {
      const ticks = ticksOf(low, low + width);
      const steps = new Set(ticks.slice(1).map((tick, i) => tick - (ticks[i] ?? 0)));
      return (
        ticks.length >= 1 &&
        ticks.length <= 7 &&
        steps.size <= 1 &&
        ticks.every((tick) => Number.isInteger(tick) && tick >= low && tick <= low + width)
      );
    }),
  );
});

test('every mark of a row that is drawn lies on the scale', () => {
  const reading = fc.option(fc.double({ min: -80, max: 75, noNaN: true }), { nil: undefined });
  const any = fc.record({
    held: reading,
    before: reading,
    gripped: reading,
    after: reading,
    spread: fc.double({ min: 0, max: 3, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(any, { maxLength: 8 }), (list) => {
      const clubs = list.map(({ held: heldReading, before, gripped, after, spread }, i) =>
        clubPlan({
          row: i + 1,
          name: `${i}`,
          heldReading,
          readingBefore: before,
          readingGripped: gripped,
          readingAfter: after,
          spreadPoints: spread,
        }),
      );
      const plot = plotOf({ clubs });
      return plot.rows
        .filter(({ aside }) => !aside)
        .every((row) =>
          [row.before, row.gripped, row.after, row.band?.low, row.band?.high]
            .filter((value) => value !== undefined)
            .every((value) => value >= plot.low && value <= plot.high),
        );
    }),
  );
});
