import { describe, expect, it } from 'vitest';
import { ruleBreaches } from '../../src/core/index';

/** R&A / USGA Equipment Rules, effective 1 January 2019, Part 2 section 3; Model Local Rule G-10 for 46 in. */
describe('rules', () => {
  it('nothing known, nothing broken', () => {
    expect(ruleBreaches({})).toEqual([]);
  });

  it.each([
    [{ upperInches: 1.75 }, []], // at the limit
    [{ upperInches: 1.751 }, [{ rule: 'crossSection', inches: 1.751 }]],
    [{ lowerInches: 1.8, putter: true }, [{ rule: 'crossSection', inches: 1.8 }]],
    [{ upperInches: 1.76, lowerInches: 1.755 }, [{ rule: 'crossSection', inches: 1.76 }]],
    [{ gripLengthInches: 7 }, []],
    [{ gripLengthInches: 6.99 }, [{ rule: 'gripLength', inches: 6.99 }]],
    [{ clubInches: 18 }, []],
    [{ clubInches: 17.9 }, [{ rule: 'clubShort', inches: 17.9 }]],
    [{ clubInches: 17.9, putter: true }, [{ rule: 'clubShort', inches: 17.9 }]],
    [{ clubInches: 48 }, []],
    [{ clubInches: 47.9 + 0.1 }, []], // a sum that misses 48 in binary
    [{ clubInches: 48.1 }, [{ rule: 'clubLong', inches: 48.1 }]],
    [{ clubInches: 48.1, putter: true }, []], // putters may be longer
    [{ clubInches: 48.1, competition46: true }, [{ rule: 'clubLong', inches: 48.1 }]], // said once
    [{ clubInches: 46.5 }, []],
    [{ clubInches: 46, competition46: true }, []],
    [{ clubInches: 46.5, competition46: true }, [{ rule: 'clubLong46', inches: 46.5 }]],
    [{ clubInches: 46.5, competition46: true, putter: true }, []],
    [{ upperInches: 0.9, lowerInches: 0.9015 }, []], // the same to a calliper
    [{ upperInches: 0.9, lowerInches: 0.903 }, [{ rule: 'reverseTaper', upperInches: 0.9, lowerInches: 0.903 }]],
    // Part 2 section 3 excepts putters from being circular, not from having no bulge
    [
      { upperInches: 0.9, lowerInches: 0.95, putter: true },
      [{ rule: 'reverseTaper', upperInches: 0.9, lowerInches: 0.95 }],
    ],
    [{ lowerInches: 0.95 }, []], // one diameter tells no taper
    [{ upperInches: 0.95 }, []],
  ])('%j', (checked, breaches) => {
    expect(ruleBreaches(checked)).toEqual(breaches);
  });

  it('a limit is not broken by what binary fractions add', () => {
    const noise = 1e-10;
    const within = {
      upperInches: 1.75 + noise,
      lowerInches: 1.7,
      gripLengthInches: 7 - noise,
      clubInches: 48 + noise,
    };
    expect(ruleBreaches(within)).toEqual([]);
    expect(ruleBreaches({ clubInches: 18 - noise })).toEqual([]);
    expect(ruleBreaches({ clubInches: 46 + noise, competition46: true })).toEqual([]);
  });

  it('says every rule that is broken', () => {
    const all = { upperInches: 1.76, lowerInches: 1.8, gripLengthInches: 5, clubInches: 50 };
    expect(ruleBreaches(all).map(({ rule }) => rule)).toEqual([
      'crossSection',
      'gripLength',
      'clubLong',
      'reverseTaper',
    ]);
  });
});
