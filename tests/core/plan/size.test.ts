import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, layersFor, measuresOn } from '../../../src/core/index';
import { aGrip, issueOf, noteKinds, noteOf, planOne, valueOf } from '../make';

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

  it('a grip over the target, and within the size tolerance of it, is no news', () => {
    const right = planOne({ layers: undefined, targetInches: 0.891 });
    expect(right).toMatchObject({ layers: 0, layersSolved: true });
    expect(noteOf(right, 'overTarget')).toBeUndefined();
    const closer = planOne(
      { layers: undefined, targetInches: 0.891 },
      {},
      { settings: { sizeToleranceInches: 0.008 } },
    );
    expect(noteOf(closer, 'overTarget')).toMatchObject({ layers: 0 });
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
    const told = { note: 'sizeUnknown', targetInches: 0.92 };
    expect(planOne(wanted, { upperInches: undefined }).notes).toEqual([told]);
    expect(planOne({ ...wanted, buttInches: undefined }).notes).toEqual([told]);
    // whoever says how many layers asks for no size
    expect(planOne({ ...wanted, layers: 1, buttInches: undefined }).notes).toEqual([{ note: 'sizeUnknown' }]);
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

describe('a shop’s own calliper reading of a fitted grip', () => {
  // .935 upper and .850 lower, on a .600 butt with two layers: the seat was .620
  const fitted = { fittedUpperInches: 0.935, fittedLowerInches: 0.85, fittedButtInches: 0.6, fittedLayers: 2 };

  it('goes before the catalogue; on the seat it was read on it is what was read, and has no range', () => {
    const { upper, lower } = planOne({ layers: 2 }, fitted);
    for (const each of [upper?.inches, upper?.lowInches, upper?.highInches]) expect(each).toBeCloseTo(0.935, 10);
    for (const each of [lower?.inches, lower?.lowInches, lower?.highInches]) expect(each).toBeCloseTo(0.85, 10);
  });

  it('on another seat: √(D*² + s² − s*²) by volume, D* + (s − s*) additive', () => {
    const { upper } = planOne({ layers: 5 }, fitted); // s = .650
    const byVolume = Math.sqrt(0.935 ** 2 + 0.65 ** 2 - 0.62 ** 2);
    expect(upper).toEqual({
      inches: expect.closeTo(byVolume, 10),
      lowInches: expect.closeTo(byVolume, 10),
      highInches: expect.closeTo(0.965, 10),
    });
    const thinner = planOne({ layers: 0 }, fitted, { settings: { growth: 'additive' } }).upper; // s = .600
    expect(thinner?.inches).toBeCloseTo(0.915, 10);
    expect(thinner?.highInches).toBeCloseTo(Math.sqrt(0.935 ** 2 + 0.36 - 0.62 ** 2), 10);
  });

  it('each hand has its own', () => {
    const { upper, lower } = planOne({ layers: 0 }, { fittedLowerInches: 0.84 });
    expect(upper?.inches).toBeCloseTo(0.9, 10); // the catalogue's
    expect(lower?.inches).toBeCloseTo(0.84, 10); // on a butt of the core's size, without tape
  });

  it('is solved with: one layer more than it was read on reaches .945 additive, where the catalogue has four reach .940', () => {
    const wanted = { layers: undefined, targetInches: 0.944 };
    const additive = { settings: { growth: 'additive' } } as const;
    expect(planOne(wanted, fitted, additive)).toMatchObject({ layers: 3, layersSolved: true });
    expect(planOne(wanted, {}, additive).layers).toBe(4);
    expect(planOne(wanted, { ...fitted, upperInches: undefined }, additive).layers).toBe(3);
  });

  it('counts the shop’s own tape', () => {
    const settings = { growth: 'additive', buildUp: { stripInches: 2, gsm: 130, thicknessInches: 0.01 } } as const;
    // the two layers it was read on were .040 then, and four on the same butt are .080
    expect(planOne({ layers: 4 }, fitted, { settings }).upper?.inches).toBeCloseTo(0.975, 10);
  });

  it('needs neither core nor catalogue, once the butt it was read on is known', () => {
    const unknown = { coreInches: undefined, upperInches: undefined, lowerInches: undefined };
    const plan = planOne({ layers: 2 }, { ...fitted, ...unknown });
    expect(plan.upper?.inches).toBeCloseTo(0.935, 10);
    expect(plan.notes).toEqual([]);
    expect(planOne({ layers: undefined, targetInches: 0.935 }, { ...fitted, ...unknown })).toMatchObject({
      layers: 2,
      layersSolved: true,
    });
    const nowhere = planOne({ layers: 2 }, { ...fitted, ...unknown, fittedButtInches: undefined });
    expect(nowhere.upper).toBeUndefined();
    expect(noteKinds(nowhere)).toEqual(['sizeUnknown']);
  });

  it('a loose core is as loose as before', () => {
    const plan = planOne({ buttInches: 0.58 }, fitted);
    expect(plan.upper).toBeUndefined();
    expect(noteOf(plan, 'looseCore')?.layers).toBe(2);
  });

  it('that is not above its seat is nothing: the catalogue counts', () => {
    expect(planOne({}, { ...fitted, fittedUpperInches: 0.62 }).upper?.inches).toBeCloseTo(0.9, 10);
    expect(planOne({}, { ...fitted, fittedUpperInches: 0.621 }).upper?.inches).toBeCloseTo(
      Math.sqrt(0.621 ** 2 + 0.36 - 0.62 ** 2),
      10,
    );
  });

  it('that was taken where the core is loose is nothing, either', () => {
    const loose = { ...fitted, fittedButtInches: 0.58, fittedLayers: 1 }; // .590 does not fill .600
    expect(planOne({}, loose).upper?.inches).toBeCloseTo(0.9, 10);
    const filled = { ...loose, fittedLayers: 2 };
    expect(planOne({}, filled).upper?.inches).toBeCloseTo(0.935, 10);
  });
});

describe('asked for one grip on one butt', () => {
  const on = { buttInches: 0.58, targetInches: 0.92 };

  it('what it measures at both hands, and how many layers fill it', () => {
    const seat = { buttInches: 0.58, layers: 3, lowerLayers: 1, taperPerInch: 0.005 };
    const found = measuresOn(aGrip(), seat, DEFAULT_SETTINGS);
    expect(found.filling).toBe(2);
    expect(found.upper?.inches).toBeCloseTo(Math.sqrt(0.45 + 0.61 ** 2), 10);
    expect(found.lower?.inches).toBeCloseTo(Math.sqrt(0.82 ** 2 - 0.36 + 0.6 ** 2), 10); // .580 − .020 + .040
    expect(measuresOn(aGrip(), { buttInches: 0.58, layers: 1 }, DEFAULT_SETTINGS)).toEqual({
      upper: undefined,
      lower: undefined,
      filling: 2,
    });
    expect(measuresOn(aGrip({ coreInches: undefined }), seat, DEFAULT_SETTINGS).filling).toBeUndefined();
  });

  it('which layers come nearest, or what is missing', () => {
    const settings = { ...DEFAULT_SETTINGS, growth: 'additive' } as const;
    expect(valueOf(layersFor(aGrip(), on, settings))).toMatchObject({ layers: 4, over: false });
    expect(issueOf(layersFor(aGrip({ coreInches: undefined }), on, settings)).field).toBe('coreInches');
    expect(issueOf(layersFor(aGrip({ upperInches: undefined }), on, settings)).field).toBe('upperInches');
  });
});
