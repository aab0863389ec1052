import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BASIS_LEGEND, SPREAD_LEGEND } from '../../src/words/planHead';
import { verdictOf } from '../../src/core/plan/spread';
import { BASIS_WORDS, VERDICT_MEANING } from '../../src/words/notes';
import { planOne } from '../core/make';

describe('legend of a plan', () => {
  it('explains every basis by the word that stands in the column', () => {
    for (const word of Object.values(BASIS_WORDS)) expect(BASIS_LEGEND).toContain(`${word} = `);
  });

  it('says of the ± what the formula does: errors add by their squares', () => {
    expect(SPREAD_LEGEND).toContain('independent errors add by their squares');
    const only = { oldSpreadGrams: 0, balanceSpreadInches: 0, readingSpreadPoints: 0, tapeSpread: 0 };
    const spread = (settings: object) =>
      planOne({ target: 33 }, { spreadGrams: 0 }, { settings: { ...only, ...settings } }).spreadPoints!;
    const [one, other] = [spread({ oldSpreadGrams: 4 }), spread({ readingSpreadPoints: 0.2 })];
    const both = spread({ oldSpreadGrams: 4, readingSpreadPoints: 0.2 });
    expect(both).toBeCloseTo(Math.hypot(one, other), 12);
    expect(both).toBeLessThan(one + other); // so not "even if every ± goes against it"
  });

  it('says of each verdict what the formula does', () => {
    const legend = { within: 'within tolerance by at least its ±', out: 'outside tolerance by more than its ±' };
    expect(VERDICT_MEANING).toMatchObject(legend);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), fc.integer({ min: 0, max: 2000 }), (off, spread) => {
        const verdict = verdictOf(off / 1000, spread / 1000, 1); // thousandths of a point
        expect(verdict === 'within').toBe(1000 - off >= spread);
        expect(verdict === 'out').toBe(off - 1000 > spread);
      }),
    );
    expect(Object.values(VERDICT_MEANING).join()).not.toContain('every');
  });
});
