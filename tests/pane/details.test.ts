import { describe, expect, it } from 'vitest';
import { detailsOf } from '../../src/pane/view/details';
import { DETAIL } from '../../src/pane/words';
import { planOne } from '../core/make';

const confidence = (...asked: Parameters<typeof planOne>) => new Map(detailsOf(planOne(...asked))).get(DETAIL.spread);

describe('confidence, among the details of a club', () => {
  it('the word, the ± and what it comes from, the largest first', () => {
    // 4 g over 9.8 in and 0.1 in of 50 g; 2 g over 9.8 in and 0.1 in of 60 g
    expect(confidence()).toBe('out with the grip alone, ± 0.9 pt: old grip 0.8, new grip 0.4');
    expect(confidence({ bareReading: 42, bareGrams: 368 })).toMatch(/, ± 0\.5 pt: new grip 0\.4, scale 0\.3$/);
  });

  it('without a ± the word alone', () => {
    expect(confidence({ oldGripGrams: undefined })).toBe('unknown with the grip alone');
    const exact = { oldSpreadGrams: 0, newSpreadGrams: 0, balanceSpreadInches: 0 };
    expect(confidence({}, { spreadGrams: undefined }, { settings: exact })).toBe('out with the grip alone, ± 0.0 pt');
  });
});

describe('what moves a club, and how thick it gets', () => {
  it('says by which estimator the first number is, and what both give', () => {
    const sized = new Map(detailsOf(planOne({ layers: 2 }))).get(DETAIL.size);
    expect(sized).toMatch(/^0\.\d{3} in \((by volume|additive), as in Settings; 0\.\d{3} to 0\.\d{3} by both\)$/);
  });

  it('a cap that moves the reading by less than a tenth is named with two decimals', () => {
    // 425 − 50 g moved by .004 in: 375 × 0.004 / 49.61 = 0.03 points (the lever)
    const club = planOne({});
    const shift = { ...club.shift, total: -1, grip: -0.9, tape: -0.13, twoWay: 0, cap: 0.03, length: 0, buttWeight: 0 };
    const moved = new Map(detailsOf({ ...club, shift })).get(DETAIL.shift);
    expect(moved).toBe('−1.0 pt: grip −0.9, tape −0.1, cap +0.03');
  });
});
