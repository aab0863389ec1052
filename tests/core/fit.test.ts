import { describe, expect, it } from 'vitest';
import {
  additiveDiameter,
  diameterBy,
  diameterFrom,
  fillingLayers,
  fittedGrams,
  gripBalance,
  nearestLayers,
  outsideDiameter,
  seatInches,
  tapeGrams,
  tapeGsm,
  volumeDiameter,
} from '../../src/core/index';
import { issueOf, valueOf } from './make';

describe('a diameter gauged on one seat, on another', () => {
  it('by volume √(D*² + s² − s*²), additive D* + (s − s*); on its own seat itself', () => {
    const gauged = { inches: 0.93, seatInches: 0.62 };
    expect(diameterFrom('volume', gauged, 0.6)).toBeCloseTo(Math.sqrt(0.8649 + 0.36 - 0.3844), 12);
    expect(diameterFrom('additive', gauged, 0.6)).toBeCloseTo(0.91, 12);
    for (const growth of ['volume', 'additive'] as const)
      expect(diameterFrom(growth, gauged, 0.62)).toBeCloseTo(0.93, 12);
  });
});

describe('mass of grip and tape', () => {
  it('a layer: 10.5 in × 2 in × 130 g/m², 0.00064516 m² to the square inch', () => {
    expect(tapeGrams()).toBeCloseTo(21 * 0.00064516 * 130, 12); // 1.7613 g
    expect(tapeGrams(15)).toBeCloseTo(30 * 0.00064516 * 130, 12);
    expect(tapeGrams(10.5, 1, 100)).toBeCloseTo(10.5 * 0.00064516 * 100, 12);
    expect(tapeGsm(tapeGrams(9, 1.5, 117), 9, 1.5)).toBeCloseTo(117, 10); // the other way round
    expect(tapeGsm(1.761, 10.5, 2)).toBeCloseTo(129.98, 2);
  });

  it('a grip with its layers', () => {
    expect(fittedGrams(50, 2)).toBeCloseTo(50 + 2 * 1.7612868, 7);
    expect(fittedGrams(50, 2, 2)).toBe(54);
    expect(fittedGrams(50, 0, 2)).toBe(50);
  });

  it('a grip balances at 0.40 of its length (practice)', () => {
    expect(gripBalance(10.5)).toBeCloseTo(4.2, 12);
    expect(gripBalance(15)).toBeCloseTo(6, 12);
  });
});

describe('seat', () => {
  it('grows .010 a layer (Eagar 2009)', () => {
    expect(seatInches(0.58, 4)).toBeCloseTo(0.62, 12);
    expect(seatInches(0.58, 0)).toBe(0.58);
    expect(seatInches(0.58, 3, 0.006)).toBeCloseTo(0.616, 12);
  });

  it.each([
    [0.62, 0.58, 4], // .040 to fill
    [0.6, 0.58, 2],
    [0.58, 0.58, 0],
    [0.58, 0.6, 0],
    [0.6, 0.5996, 0], // less than a calliper tells apart
    [0.6, 0.5995, 0], // just that
    [0.6, 0.599, 1], // loose by a thousandth
    [0.6, 0.5895, 1], // half a thousandth short of a layer
    [0.6, 0.589, 2], // a thousandth more than a layer
  ])('a %d core on a %d butt is filled by %d layers', (core, butt, layers) => {
    expect(Object.is(fillingLayers(core, butt), layers)).toBe(true);
  });

  it('thicker tape fills in fewer', () => {
    expect(fillingLayers(0.62, 0.58, 0.01)).toBe(2);
  });
});

describe('outside diameter', () => {
  const eagar = { gripInches: 0.9, coreInches: 0.58, seatInches: 0.6 };

  it('by volume and additive on a butt .020 larger', () => {
    expect(volumeDiameter(eagar)).toBeCloseTo(Math.sqrt(0.81 - 0.3364 + 0.36), 12); // .9130
    expect(additiveDiameter(eagar)).toBeCloseTo(0.92, 12);
    expect(diameterBy('volume', eagar)).toBe(volumeDiameter(eagar));
    expect(diameterBy('additive', eagar)).toBe(additiveDiameter(eagar));
  });

  it('a stretched grip is thinner', () => {
    const stretch = 11.25 / 10.5; // ¾ in over 10.5 in
    const onCore = { gripInches: 0.9, coreInches: 0.58, seatInches: 0.58, stretch };
    expect(volumeDiameter(onCore)).toBeCloseTo(Math.sqrt(0.4736 / stretch + 0.3364), 12); // .8832
    expect(additiveDiameter({ ...onCore, seatInches: 0.6 })).toBeCloseTo(volumeDiameter(onCore) + 0.02, 12);
  });

  it('is refused where the core is loose, with the layers that fill it in all', () => {
    const loose = { gripInches: 0.9, coreInches: 0.62, seatInches: 0.59 };
    expect(issueOf(outsideDiameter('volume', loose, 1))).toEqual({
      code: 'looseCore',
      field: 'coreInches',
      got: 0.62,
      detail: 4, // one there, three more for .030
    });
    expect(issueOf(outsideDiameter('volume', loose)).detail).toBe(3);
    expect(issueOf(outsideDiameter('volume', loose, 0, 0.01)).detail).toBe(2); // 0.0295 / 0.020
  });

  it('is the named estimator’s where it is not', () => {
    expect(valueOf(outsideDiameter('volume', eagar))).toBe(volumeDiameter(eagar));
    expect(valueOf(outsideDiameter('additive', eagar))).toBe(additiveDiameter(eagar));
  });
});

describe('layers for a target', () => {
  const wanted = { gripInches: 0.9, coreInches: 0.6, buttInches: 0.6, targetInches: 0.92 } as const;

  it('additive: .020 is two layers', () => {
    const found = valueOf(nearestLayers({ ...wanted, growth: 'additive' }));
    expect(found).toEqual({ layers: 2, inches: expect.closeTo(0.92, 10), over: false });
  });

  it('by volume when nothing is said: three layers give √(.45 + .63²) = .9203', () => {
    const found = valueOf(nearestLayers(wanted));
    expect(found.layers).toBe(3);
    expect(found.inches).toBeCloseTo(Math.sqrt(0.45 + 0.63 ** 2), 12);
  });

  it('between two equally near the larger (practice: err larger)', () => {
    expect(valueOf(nearestLayers({ ...wanted, targetInches: 0.915, growth: 'additive' })).layers).toBe(2);
    expect(valueOf(nearestLayers({ ...wanted, targetInches: 0.9149, growth: 'additive' })).layers).toBe(1);
  });

  it('never fewer than fill the core, and says when even they are over', () => {
    const found = valueOf(nearestLayers({ ...wanted, buttInches: 0.58, targetInches: 0.88 }));
    expect(found).toEqual({ layers: 2, inches: expect.closeTo(0.9, 10), over: true });
  });

  it('is over by more than half a layer only', () => {
    const at = (targetInches: number) => valueOf(nearestLayers({ ...wanted, targetInches })).over;
    expect(at(0.8951)).toBe(false); // .0049 over
    expect(at(0.8949)).toBe(true); // .0051 over
  });

  it('is not over once a layer more than the fewest is chosen', () => {
    expect(valueOf(nearestLayers({ ...wanted, targetInches: 0.91, growth: 'additive' }))).toMatchObject({
      layers: 1,
      over: false,
    });
  });

  it('twelve layers are the most: .120 reached, a little more forgiven, more than half a layer refused', () => {
    const at = (targetInches: number) => nearestLayers({ ...wanted, targetInches, growth: 'additive' });
    expect(valueOf(at(1.02)).layers).toBe(12);
    expect(valueOf(at(1.0249)).layers).toBe(12);
    expect(issueOf(at(1.0251))).toEqual({ code: 'tooManyLayers', field: 'targetInches', got: 1.0251, detail: 12 });
  });

  it('from a diameter gauged on another seat: .93 on .62, and the core unknown', () => {
    const gauged = { ...wanted, gripInches: 0.93, gaugedOnInches: 0.62, growth: 'additive' } as const;
    expect(valueOf(nearestLayers(gauged))).toEqual({ layers: 1, inches: expect.closeTo(0.92, 10), over: false });
    expect(valueOf(nearestLayers({ ...gauged, coreInches: undefined })).layers).toBe(1);
    expect(issueOf(nearestLayers({ ...wanted, coreInches: undefined }))).toEqual({
      code: 'blank',
      field: 'coreInches',
    });
  });

  it('a core that twelve layers do not fill is refused', () => {
    const hopeless = { ...wanted, coreInches: 0.75, buttInches: 0.6, targetInches: 0.9 };
    expect(issueOf(nearestLayers(hopeless)).code).toBe('tooManyLayers'); // .150 is fifteen layers
    expect(nearestLayers({ ...hopeless, coreInches: 0.72 }).ok).toBe(true); // twelve just do
  });

  it('counts with the tape’s own thickness and a stretched grip', () => {
    expect(valueOf(nearestLayers({ ...wanted, growth: 'additive', thicknessInches: 0.01 })).layers).toBe(1);
    const stretched = valueOf(nearestLayers({ ...wanted, growth: 'additive', stretch: 1.1 }));
    expect(stretched.layers).toBe(4); // √(.45/1.1 + .36) = .8769: .043 missing
  });

  it('half a layer is the tape’s own, too', () => {
    const thick = { ...wanted, targetInches: 0.892, thicknessInches: 0.01 };
    expect(valueOf(nearestLayers(thick)).over).toBe(false); // .008 over, half a layer is .010
    expect(valueOf(nearestLayers({ ...thick, targetInches: 0.889 })).over).toBe(true);
  });
});
