import { describe, expect, it } from 'vitest';
import { BASIS_LEGEND, SPREAD_LEGEND } from '../../src/words/planHead';
import { BASIS_WORDS } from '../../src/words/notes';

describe('legend of a plan', () => {
  it('explains every basis by the word that stands in the column', () => {
    for (const word of Object.values(BASIS_WORDS)) expect(BASIS_LEGEND).toContain(`${word} = `);
  });

  it('explains the ±', () => {
    expect(SPREAD_LEGEND).toContain('±');
  });
});
