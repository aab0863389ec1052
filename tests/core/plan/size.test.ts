import { describe, expect, it } from 'vitest';
import { noteKinds, noteOf, planOne } from '../make';

describe('layers', () => {
  it('given ones are kept, target or not', () => {
    const plan = planOne({ layers: 1, targetInches: 0.95 });
    expect(plan).toMatchObject({ layers: 1, layersSolved: false });
    expect(noteKinds(plan)).not.toContain('overTarget');
  });

  it('none given and no target: none', () => {
    expect(planOne({ layers: undefined })).toMatchObject({ layers: 0, layersSolved: false });
  });

  it('solved from a target: three by volume reach .9203', () => {
    const plan = planOne({ layers: undefined, targetInches: 0.92 });
    expect(plan).toMatchObject({ layers: 3, layersSolved: true, tapeInches: 31.5 });
    expect(plan.upper?.inches).toBeCloseTo(Math.sqrt(0.45 + 0.63 ** 2), 10);
    expect(plan.notes).toEqual([]);
    const additive = planOne({ layers: undefined, targetInches: 0.92 }, {}, { settings: { growth: 'additive' } });
    expect(additive).toMatchObject({ layers: 2, growth: 'additive' });
    expect(additive.upper?.inches).toBeCloseTo(0.92, 10);
  });

  it('solved with the shop’s own tape', () => {
    const thick = { buildUp: { stripInches: 2, gsm: 130, thicknessInches: 0.01 } };
    const plan = planOne({ layers: undefined, targetInches: 0.92 }, {}, { settings: { ...thick, growth: 'additive' } });
    expect(plan.layers).toBe(1);
    expect(plan.upper?.inches).toBeCloseTo(0.92, 10);
  });

  it('a grip over the target with no tape is told', () => {
    const plan = planOne({ layers: undefined, targetInches: 0.88 });
    expect(plan).toMatchObject({ layers: 0, layersSolved: true });
    expect(noteOf(plan, 'overTarget')).toEqual({
      note: 'overTarget',
      inches: expect.closeTo(0.9, 10),
      targetInches: 0.88,
      layers: 0,
    });
  });

  it('a target out of reach is told; twelve are counted', () => {
    const plan = planOne({ layers: undefined, targetInches: 1.2 });
    expect(plan).toMatchObject({ layers: 12, layersSolved: true });
    expect(noteOf(plan, 'tooManyLayers')).toEqual({ note: 'tooManyLayers', targetInches: 1.2, most: 12 });
  });

  it('a core that twelve layers do not fill is loose, not a matter of the target', () => {
    const plan = planOne({ layers: undefined, targetInches: 0.9, buttInches: 0.46 }, { coreInches: 0.62 });
    expect(noteKinds(plan)).toContain('looseCore');
    expect(noteKinds(plan)).not.toContain('tooManyLayers');
    expect(noteOf(plan, 'looseCore')?.layers).toBe(16); // .160
    const just = planOne({ layers: undefined, targetInches: 1.2, buttInches: 0.6 }, { coreInches: 0.72 });
    expect(noteKinds(just)).toEqual(['tooManyLayers', 'overLimit']); // twelve fill it, and fall short of the target
  });

  it('a target that cannot be solved is told once', () => {
    expect(noteKinds(planOne({ layers: undefined, targetInches: 0.92 }, { upperInches: undefined }))).toEqual([
      'sizeUnknown',
    ]);
    expect(noteKinds(planOne({ layers: undefined, targetInches: 0.92, buttInches: undefined }))).toEqual([
      'sizeUnknown',
    ]);
    expect(noteKinds(planOne({ layers: undefined, targetInches: 0.92 }, { coreInches: undefined }))).toEqual([
      'sizeUnknown',
    ]);
    const wanted = { layers: undefined, targetInches: 0.92 };
    const unsolved = { layers: 0, layersSolved: false };
    expect(planOne(wanted, { upperInches: undefined })).toMatchObject(unsolved);
    expect(planOne(wanted, { coreInches: undefined })).toMatchObject(unsolved);
    expect(planOne({ ...wanted, buttInches: undefined })).toMatchObject(unsolved);
  });
});

describe('cores', () => {
  it.each([
    [0.6, 0],
    [0.5995, 0],
    [0.599, 1], // a thousandth
    [0.58, 2],
  ])('.600 on a butt of %d is filled by %d layers', (buttInches, layers) => {
    const plan = planOne({ buttInches });
    expect(noteOf(plan, 'looseCore')).toEqual(
      layers ? { note: 'looseCore', coreInches: 0.6, buttInches, layers } : undefined,
    );
    expect(plan.upper === undefined).toBe(layers > 0); // the formula would shrink the grip; in truth it turns
    expect(plan.lower === undefined).toBe(layers > 0);
    expect(plan.readingGripped).toBeDefined(); // the rest is planned
    expect(noteKinds(planOne({ buttInches, layers }))).toEqual([]);
  });

  it('more than .030 of stretch is tight (practice)', () => {
    expect(noteKinds(planOne({ buttInches: 0.63 }))).toEqual([]);
    expect(noteOf(planOne({ buttInches: 0.631 }), 'tightCore')).toEqual({
      note: 'tightCore',
      coreInches: 0.6,
      buttInches: 0.631,
    });
  });
});

describe('diameters', () => {
  it('on its own core a grip measures what it says, at both hands', () => {
    const plan = planOne();
    for (const each of [plan.upper?.inches, plan.upper?.lowInches, plan.upper?.highInches])
      expect(each).toBeCloseTo(0.9, 10);
    for (const each of [plan.lower?.inches, plan.lower?.lowInches, plan.lower?.highInches])
      expect(each).toBeCloseTo(0.82, 10);
  });

  it('lie between both estimators, the shop’s one being named', () => {
    const low = Math.sqrt(0.81 - 0.36 + 0.62 ** 2); // two layers
    const plan = planOne({ layers: 2 });
    expect(plan.upper).toEqual({
      inches: expect.closeTo(low, 10),
      lowInches: expect.closeTo(low, 10),
      highInches: expect.closeTo(0.92, 10),
    });
    expect(planOne({ layers: 2 }, {}, { settings: { growth: 'additive' } }).upper).toEqual({
      inches: expect.closeTo(0.92, 10),
      lowInches: expect.closeTo(low, 10),
      highInches: expect.closeTo(0.92, 10),
    });
  });

  it('the lower hand: the butt has thinned over 4 in, and lower layers count there only', () => {
    const plan = planOne({ taperPerInch: 0.007, layers: 1, lowerLayers: 2 });
    // .600 − .028 + .030
    expect(plan.lower?.inches).toBeCloseTo(Math.sqrt(0.82 ** 2 - 0.36 + 0.602 ** 2), 10);
    expect(plan.upper?.inches).toBeCloseTo(Math.sqrt(0.45 + 0.61 ** 2), 10);
  });

  it('where the butt has thinned below the core, the range turns round', () => {
    const { lower } = planOne({ taperPerInch: 0.007 });
    const byVolume = Math.sqrt(0.82 ** 2 - 0.36 + 0.572 ** 2);
    expect(lower?.lowInches).toBeCloseTo(0.82 - 0.028, 10);
    expect(lower?.highInches).toBeCloseTo(byVolume, 10);
    expect(lower?.inches).toBeCloseTo(byVolume, 10);
  });

  it('a diameter that Stock does not give is blank', () => {
    expect(planOne({}, { lowerInches: undefined })).toMatchObject({ lower: undefined, notes: [] });
    expect(planOne({}, { upperInches: undefined }).upper).toBeUndefined();
  });

  it('without butt or core nothing is gauged, and that is told', () => {
    expect(planOne({ buttInches: undefined })).toMatchObject({ upper: undefined, lower: undefined });
    expect(noteKinds(planOne({ buttInches: undefined }))).toEqual(['sizeUnknown']);
    expect(noteKinds(planOne({}, { coreInches: undefined }))).toEqual(['sizeUnknown']);
  });
});
