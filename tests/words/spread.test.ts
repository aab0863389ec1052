import { describe, expect, it } from 'vitest';
import type { SpreadParts } from '../../src/core/index';
import { SPREAD_WORDS, saySpread } from '../../src/words/spread';

const NONE = Object.fromEntries(Object.keys(SPREAD_WORDS).map((part) => [part, 0])) as Record<
  keyof SpreadParts,
  number
>;

describe('what a ± is made of, in words', () => {
  it('the largest first, mass and balance point of a grip together by their squares', () => {
    const parts = { ...NONE, oldMass: 0.3, oldBalance: 0.4, newMass: 0.79, reading: 0.2 };
    expect(saySpread(parts)).toBe('new grip 0.8, old grip 0.5, scale 0.2');
  });

  it('what does not show in a tenth of a point is left out', () => {
    expect(saySpread({ ...NONE, tape: 0.049, cap: 0.05, length: 0.07, body: 1 })).toBe(
      'club mass 1.0, length 0.1, cap 0.1',
    );
    expect(saySpread(NONE)).toBe('');
  });

  it('every part can be told', () => {
    for (const part of Object.keys(SPREAD_WORDS)) expect(saySpread({ ...NONE, [part]: 1 })).toMatch(/^[a-z ]+ 1\.0$/);
    const all = Object.values(SPREAD_WORDS);
    expect(new Set(all).size).toBe(all.length);
  });
});
