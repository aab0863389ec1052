import { describe, expect, it } from 'vitest';
import {
  DEFAULT_SETTINGS,
  fromSample,
  layerOutside,
  reaching,
  type HandTarget,
  type SampleAnswers,
  type StartSize,
} from '../../../src/core/index';
import { aGrip } from '../make';

const LAYER = 0.01; // .010 a layer: D. Eagar, "Grip Sizing", 2009

const size = (inches: number): StartSize => ({
  inches,
  byHandInches: inches,
  byFingerInches: undefined,
  beyond: [],
  disagree: false,
});

function moved(answers: Partial<SampleAnswers>, lowerInches?: number, layer = LAYER): HandTarget {
  const lower = lowerInches === undefined ? undefined : size(lowerInches);
  return fromSample(size(0.9), lower, { errLarger: 0, pain: false, ...answers }, layer);
}

const said = ({ moves }: HandTarget): string[] => moves.map(({ code, hand, layers }) => `${hand} ${code} ${layers}`);

describe('a sample grip', () => {
  it('that fits moves nothing', () => {
    const fits = moved({ fingertips: 'touch', littleFinger: 'past', lowerIndex: 'sits', squeezes: false });
    const still = { startInches: 0.9, targetInches: 0.9, layersMoved: 0, lowerLayers: 0, moves: [] };
    expect(fits).toEqual(still);
    expect(moved({})).toEqual(still);
    expect(moved({}, 0.904)).toEqual(still); // less than half a layer between the hands
  });

  // layers of each answer: practice, no source
  it.each<[Partial<SampleAnswers>, string[], number]>([
    [{ fingertips: 'press' }, ['upper press 2'], 0.92],
    [{ fingertips: 'gap' }, ['upper gap -2'], 0.88],
    [{ littleFinger: 'short' }, ['upper short -1'], 0.89],
    [{ fingertips: 'gap', littleFinger: 'short' }, ['upper gap -2', 'upper short -1'], 0.87],
    [{ squeezes: true }, ['upper squeeze 0'], 0.9],
    [{ fingertips: 'press', squeezes: true }, ['upper press 2', 'upper squeeze 0'], 0.92],
    [{ errLarger: 1 }, ['upper errLarger 1'], 0.91],
    [{ errLarger: 2 }, ['upper errLarger 2'], 0.92],
    [{ fingertips: 'press', errLarger: 2 }, ['upper press 2', 'upper errLarger 2'], 0.94],
    [{ pain: true }, ['upper pain 0'], 0.9],
    [{ lowerIndex: 'reaches' }, ['upper reachSmaller -1'], 0.89],
    [{ lowerIndex: 'reaches', fingertips: 'press' }, ['upper press 2', 'lower reachTaper 0'], 0.92],
  ])('%j: %j', (answers, moves, inches) => {
    const target = moved(answers);
    expect(said(target)).toEqual(moves);
    expect(target.targetInches).toBeCloseTo(inches, 12);
    expect(target.lowerLayers).toBe(0);
  });

  it('whose answers contradict each other moves nothing by them, and says so', () => {
    const target = moved({ fingertips: 'press', littleFinger: 'short', errLarger: 1 });
    expect(said(target)).toEqual(['upper contradict 0', 'upper errLarger 1']);
    expect(target.targetInches).toBeCloseTo(0.91, 12);
  });

  it('moves by the layer of the shop’s own tape', () => {
    expect(moved({ fingertips: 'press' }, undefined, 0.012).targetInches).toBeCloseTo(0.924, 12);
  });
});

describe('the lower hand', () => {
  it.each<[number, Partial<SampleAnswers>, string[], number]>([
    [0.92, {}, ['lower lowerLarger 2'], 2],
    [0.906, {}, ['lower lowerLarger 1'], 1],
    [0.94, {}, ['lower lowerLarger 4'], 4],
    [0.95, {}, ['lower lowerMost 4'], 4],
    [0.88, {}, ['lower lowerSmaller 0'], 0],
    [0.92, { lowerIndex: 'reaches' }, ['lower lowerLarger 2', 'lower reachFewer -1'], 1],
    [0.91, { lowerIndex: 'reaches' }, ['lower lowerLarger 1', 'lower reachFewer -1'], 0],
    [0.88, { lowerIndex: 'reaches' }, ['lower lowerSmaller 0', 'upper reachSmaller -1'], 0],
  ])('from %d, the upper from .900, %j: %j', (lowerInches, answers, moves, lowerLayers) => {
    const target = moved(answers, lowerInches);
    expect(said(target)).toEqual(moves);
    expect(target.lowerLayers).toBe(lowerLayers);
  });

  it('says by how many layers it differs where tape cannot follow', () => {
    const wanted = (lowerInches: number) => moved({}, lowerInches).moves.map((move) => move.wanted);
    expect(wanted(0.96)).toEqual([6]);
    expect(wanted(0.87)).toEqual([3]);
    expect(wanted(0.92)).toEqual([undefined]);
  });
});

describe('so many layers more', () => {
  it.each(['volume', 'additive'] as const)('are fitted as so many, by the shop’s estimator %s', (growth) => {
    const settings = { ...DEFAULT_SETTINGS, growth };
    const layer = layerOutside(growth);
    const grip = aGrip({ upperInches: 0.9, coreInches: 0.6 });
    for (const [answers, layers] of [
      [{ fingertips: 'press', errLarger: 0, pain: false }, 2],
      [{ errLarger: 2, pain: false }, 2],
      [{ fingertips: 'press', errLarger: 2, pain: false }, 4],
    ] as const) {
      const { targetInches, layersMoved } = fromSample(size(0.9), undefined, answers, layer);
      expect(layersMoved).toBe(layers);
      const { found } = reaching({ targetInches, buttInches: 0.6, lowerLayers: 0, stock: [grip], settings });
      expect(found[0]?.layers).toBe(layers);
    }
  });

  it('show by volume as two thirds of what they show where every thousandth does', () => {
    expect(layerOutside('additive')).toBeCloseTo(0.01, 12);
    // √(.81 − .36 + .62²) = .91346
    expect(layerOutside('volume')).toBeCloseTo((Math.sqrt(0.81 - 0.36 + 0.3844) - 0.9) / 2, 12);
  });
});
