/** Each worksheet function against the core it asks and against the same arithmetic in a bare loop over typed arrays. */
import * as core from '../../src/core/index';
import { FUNCTIONS } from '../../src/functions/implementations';
import { figures, medians, printTable } from './measure';

const COUNT = 10_000;
const P = core.POINT_GRAM_INCHES;
const AREA = core.SQUARE_METRES_PER_SQUARE_INCH;

/** Inputs that differ from call to call, so that nothing can be worked out once. */
const column = (low: number, high: number): Float64Array =>
  Float64Array.from({ length: COUNT }, (_, at) => low + ((high - low) * ((at * 7919) % COUNT)) / COUNT);
const grams = column(40, 80);
const more = column(45, 70);
const inches = column(34, 46);
const points = column(1, 68);
const change = column(-4, 4);
const total = column(300, 500);
const balance = column(26, 29);
const sizes = column(0.88, 1);
const slim = column(0.88, 0.93);
const butts = column(0.6, 0.62);
const layers = Float64Array.from({ length: COUNT }, (_, at) => at % 5);
const readings = Array.from(points, (each) => {
  const reading = core.formatReading(each);
  return reading.ok ? reading.value : 'D0';
});

const at = (values: Float64Array, index: number): number => values[index] ?? 0;

interface Case {
  /** Fills `out` with nothing but arithmetic; text is left out, since arrays of numbers hold none. */
  readonly bare: (out: Float64Array) => void;
  readonly core: (index: number) => unknown;
  readonly cells: (index: number) => readonly unknown[];
}

function loop(out: Float64Array, of: (index: number) => number): void {
  for (let index = 0; index < COUNT; index += 1) out[index] = of(index);
}

const CASES: Readonly<Record<string, Case>> = {
  TAPEGRAMS: {
    bare: (out) => loop(out, (i) => at(inches, i) * 2 * AREA * 130),
    core: (i) => core.tapeGrams(at(inches, i) / 3),
    cells: (i) => [at(inches, i) / 3],
  },
  GRIPMASS: {
    bare: (out) => loop(out, (i) => at(grams, i) + at(layers, i) * 1.76),
    core: (i) => core.fittedGrams(at(grams, i), at(layers, i)),
    cells: (i) => [at(grams, i), at(layers, i)],
  },
  MASSPOINTS: {
    bare: (out) => loop(out, (i) => (at(grams, i) * (at(inches, i) - 14)) / P),
    core: (i) => core.massPoints(at(grams, i), at(inches, i)),
    cells: (i) => [at(grams, i), at(inches, i)],
  },
  BALANCECHANGE: {
    bare: (out) =>
      loop(out, (i) => (at(more, i) * -9.8 - at(grams, i) * -9.8 + at(layers, i) * 1.76 * (5.25 - 14)) / P),
    core: (i) =>
      core.balanceChange({ oldGripGrams: at(grams, i), newGripGrams: at(more, i), newLayers: at(layers, i) }),
    cells: (i) => [at(grams, i), at(more, i), null, at(layers, i)],
  },
  LENGTHCHANGE: {
    bare: (out) => loop(out, (i) => (at(total, i) * at(change, i) + 6 * -13) / P),
    core: (i) => core.lengthPoints(at(total, i), at(change, i), 6),
    cells: (i) => [at(total, i), at(change, i), 6],
  },
  COMPENSATION: {
    bare: (out) => loop(out, (i) => (-at(change, i) * P) / (at(inches, i) - 14)),
    core: (i) => core.compensationGrams(at(change, i), at(inches, i)),
    cells: (i) => [at(change, i), at(inches, i)],
  },
  COUNTERWEIGHT: {
    bare: (out) => loop(out, (i) => (at(change, i) * P) / 13),
    core: (i) => core.counterweightGrams(at(change, i)),
    cells: (i) => [at(change, i)],
  },
  SWINGWEIGHT: {
    bare: (out) => loop(out, (i) => (at(total, i) * (at(balance, i) - 14)) / P - 92),
    core: (i) => core.formatReading(core.clubPoints(at(total, i), at(balance, i))),
    cells: (i) => [350 + at(total, i) / 10, 27 + at(balance, i) / 100],
  },
  TOPOINTS: {
    bare: (out) => loop(out, (i) => Math.floor(at(points, i) / 10) * 10 + (at(points, i) % 10)),
    core: (i) => core.parseReading(readings[i] ?? ''),
    cells: (i) => [readings[i]],
  },
  TOREADING: {
    bare: (out) => loop(out, (i) => Math.round(at(points, i) * 10) / 10),
    core: (i) => core.formatReading(at(points, i)),
    cells: (i) => [at(points, i)],
  },
  SHIFTREADING: {
    bare: (out) => loop(out, (i) => Math.round((30 + at(change, i)) * 10) / 10),
    core: (i) => core.formatReading(30 + at(change, i)),
    cells: (i) => ['D0', at(change, i)],
  },
  FITTEDREADING: {
    bare: (out) => loop(out, (i) => 40 + (at(grams, i) * -9.8 + at(layers, i) * 1.76 * -8.75 + 1.8 * -8.75) / P),
    core: (i) =>
      core.formatReading(40 + core.massPoints(at(grams, i), 4.2) + core.massPoints(at(layers, i) * 1.76, 5.25)),
    cells: (i) => ['E0', at(grams, i), at(layers, i)],
  },
  OUTSIDEDIAMETER: {
    bare: (out) => loop(out, (i) => Math.sqrt(at(sizes, i) ** 2 - 0.36 + (at(butts, i) + 0.01 * at(layers, i)) ** 2)),
    core: (i) =>
      core.outsideDiameter('volume', {
        gripInches: at(sizes, i),
        coreInches: 0.6,
        seatInches: core.seatInches(at(butts, i), at(layers, i)),
      }),
    cells: (i) => [at(sizes, i), 0.6, at(butts, i), at(layers, i)],
  },
  TAPELAYERS: {
    bare: (out) =>
      loop(out, (i) => {
        // the seat that measures 0.95 by volume, in layers
        const seat = Math.sqrt(0.95 ** 2 - at(slim, i) ** 2 + 0.36);
        return Math.max(0, Math.round((seat - at(butts, i)) / 0.01));
      }),
    core: (i) =>
      core.nearestLayers({ gripInches: at(slim, i), coreInches: 0.6, buttInches: at(butts, i), targetInches: 0.95 }),
    cells: (i) => [at(slim, i), 0.6, at(butts, i), 0.95],
  },
  INERTIACHANGE: {
    bare: (out) => loop(out, (i) => at(grams, i) * at(inches, i) ** 2 * 0.0064516),
    core: (i) => core.massInertia(at(grams, i), at(inches, i)),
    cells: (i) => [at(grams, i), at(inches, i)],
  },
  RULECHECK: {
    bare: (out) => loop(out, (i) => (at(sizes, i) > 1.75 || at(inches, i) > 48 || at(inches, i) < 18 ? 1 : 0)),
    core: (i) => core.ruleBreaches({ upperInches: at(sizes, i), gripLengthInches: 10.5, clubInches: at(inches, i) }),
    cells: (i) => [at(sizes, i), 10.5, at(inches, i)],
  },
};

export function benchScalars(): void {
  const out = new Float64Array(COUNT);
  const rows = Object.entries(CASES).map(([name, { bare, core: direct, cells }]) => {
    const sheet = FUNCTIONS[name] as unknown as (...args: readonly unknown[]) => unknown;
    if (!sheet) throw new Error(`${name} is not among the worksheet functions`);
    const args = Array.from({ length: COUNT }, (_, index) => cells(index));
    const kept: unknown[] = Array<unknown>(COUNT).fill(undefined);
    const times = medians([
      { name: 'bare', run: () => bare(out) },
      { name: 'core', run: () => kept.forEach((_, index) => (kept[index] = direct(index))) },
      { name: 'sheet', run: () => args.forEach((each, index) => (kept[index] = sheet(...each))) },
    ]);
    const nanoseconds = (subject: string): number => ((times.get(subject) ?? NaN) * 1e6) / COUNT;
    const ratio = (subject: string): string => `× ${figures(nanoseconds(subject) / nanoseconds('bare'))}`;
    return [
      name,
      ...['bare', 'core', 'sheet'].map((each) => figures(nanoseconds(each))),
      ratio('core'),
      ratio('sheet'),
    ];
  });
  printTable(
    `Scalar functions, nanoseconds a call over ${COUNT} calls; ratios to the bare loop, which checks nothing and makes no text`,
    ['', 'bare loop', 'core', 'worksheet function', 'core', 'worksheet function'],
    rows,
  );
}
