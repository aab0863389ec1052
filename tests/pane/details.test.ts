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
