import { describe, expect, it } from 'vitest';
import {
  DEFAULT_SETTINGS,
  DEFAULT_WAYS,
  type Club,
  type Note,
  type ShopSettings,
  type Way,
} from '../../../src/core/index';
import { remedyFor, remedyPoints } from '../../../src/core/plan/remedy';
import { aClub, noteKinds, P, planOne } from '../make';

interface Asked {
  readonly points: number;
  readonly tolerance?: number;
  readonly length?: number | undefined;
  readonly club?: Partial<Club>;
  readonly ways?: readonly Way[];
  readonly settings?: Partial<ShopSettings>;
}

function ask({ points, tolerance = 1, club, ways = DEFAULT_WAYS, settings, ...rest }: Asked) {
  const notes: Note[] = [];
  const lengthInches = 'length' in rest ? rest.length : 37;
  const byName = new Map(ways.map((way) => [way.name.toLowerCase(), way]));
  const gap = { points, tolerancePoints: tolerance, lengthInches };
  const remedy = remedyFor(gap, aClub(club), byName, { ...DEFAULT_SETTINGS, ...settings }, notes);
  return { remedy, notes };
}

/** Points that so many grams move at the head of a 37 in club. */
const head = (grams: number): number => (grams * 23) / P;

describe('a reading too light', () => {
  it('gets lead tape at the play length, to the nearest half gram', () => {
    const { remedy, notes } = ask({ points: head(4.2) });
    expect(remedy).toEqual({
      exactGrams: expect.closeTo(4.2, 9),
      grams: 4,
      way: 'Lead tape',
      end: 'head',
      inches: 37,
      gripOff: false,
      none: undefined,
      overLimit: false,
    });
    expect(notes).toEqual([]);
    expect(ask({ points: head(4.3) }).remedy?.grams).toBe(4.5);
  });

  it('a tip plug sits 2 in up the shaft, takes 9 % more, in whole grams, and goes in while the grip is off', () => {
    const { remedy } = ask({ points: head(4.2), club: { way: 'tip PLUG' } });
    expect(remedy).toMatchObject({ way: 'Tip plug', inches: 35, grams: 5, gripOff: true, end: 'head' });
    expect(remedy?.exactGrams).toBeCloseTo((4.2 * 23) / 21, 9); // 4.6
  });

  it('takes the shop’s usual head way when the club asks for one at the butt', () => {
    expect(ask({ points: head(4), club: { way: 'Butt plug' } }).remedy?.way).toBe('Lead tape');
    expect(ask({ points: head(4), settings: { headWay: 'HEAD screw' } }).remedy?.way).toBe('Head screw');
  });

  it('without a length has no lever, which is noted where weight is wanted', () => {
    expect(ask({ points: 2, length: undefined })).toEqual({ remedy: undefined, notes: [{ note: 'lengthUnknown' }] });
    expect(ask({ points: 1, length: undefined })).toEqual({ remedy: undefined, notes: [] });
    const always = { putRight: 'always' } as const;
    expect(ask({ points: 0.5, length: undefined, settings: always }).notes).toEqual([{ note: 'lengthUnknown' }]);
    expect(ask({ points: 0, length: undefined, settings: always }).notes).toEqual([]);
  });

  it('has no remedy at a place at or past the fulcrum, and says where that stands', () => {
    const far: Way = { name: 'Far plug', end: 'head', inches: 20, stepGrams: 1, gripOff: true, limitGrams: undefined };
    const ways = [far, ...DEFAULT_WAYS];
    for (const length of [30, 34, 34.4]) {
      const { remedy, notes } = ask({ points: 3, length, ways, club: { way: 'Far plug' } });
      expect(remedy).toBeUndefined();
      expect(notes).toEqual([
        {
          note: 'issue',
          issue: {
            code: 'contradiction',
            field: 'Weights, Far plug',
            got: 20,
            expected: '20 in from the head is at or past the fulcrum, where no weight puts this club right',
          },
        },
      ]);
      const small = ask({ points: 0.5, length, ways, club: { way: 'Far plug' } });
      expect(small).toEqual({ remedy: undefined, notes: [] }); // nothing would be added anyway
    }
    expect(ask({ points: 3, length: 40, ways, club: { way: 'Far plug' } }).remedy?.grams).toBeGreaterThan(0);
  });
});

describe('a reading too heavy', () => {
  it('gets a butt plug 1 in from the cap: 3.8 g a point', () => {
    const { remedy, notes } = ask({ points: -2 });
    expect(remedy).toMatchObject({
      way: 'Butt plug',
      end: 'butt',
      inches: 1,
      grams: 8,
      gripOff: true,
      overLimit: false,
    });
    expect(remedy?.exactGrams).toBeCloseTo((2 * P) / 13, 9); // 7.63
    expect(notes).toEqual([]);
  });

  it('needs no length, has no limit of the head’s, and takes a way of its own', () => {
    const own: Way = {
      name: 'Cap weight',
      end: 'butt',
      inches: 0,
      stepGrams: 2,
      gripOff: false,
      limitGrams: undefined,
    };
    const { remedy, notes } = ask({ points: -4, length: undefined, club: { way: 'cap weight' }, ways: [own] });
    expect(remedy).toMatchObject({ way: 'Cap weight', grams: 14, overLimit: false }); // 4 × 49.61 / 14 = 14.2
    expect(notes).toEqual([]);
  });

  it('a head way asked for does not serve; the shop’s usual butt way does', () => {
    expect(ask({ points: -3, club: { way: 'Tip plug' } }).remedy?.way).toBe('Butt plug');
  });

  it('past the fulcrum it would make things worse', () => {
    const deep: Way = {
      name: 'Butt plug',
      end: 'butt',
      inches: 16,
      stepGrams: 1,
      gripOff: true,
      limitGrams: undefined,
    };
    const { remedy, notes } = ask({ points: -3, ways: [deep] });
    expect(remedy).toBeUndefined();
    expect(notes[0]).toMatchObject({ note: 'issue', issue: { code: 'contradiction' } });
  });
});

describe('why nothing is added', () => {
  it('within tolerance, its border included', () => {
    expect(ask({ points: 1 }).remedy).toMatchObject({ grams: 0, none: 'withinTolerance' });
    expect(ask({ points: -1 }).remedy).toMatchObject({ grams: 0, none: 'withinTolerance' });
    expect(ask({ points: 1.001 }).remedy).toMatchObject({ none: undefined, grams: 2 });
    expect(ask({ points: 0.1 + 0.2, tolerance: 0.3 }).remedy?.none).toBe('withinTolerance');
    expect(ask({ points: 0 }).remedy).toMatchObject({ exactGrams: 0, grams: 0, end: 'head', none: 'withinTolerance' });
  });

  it('a shop that puts right whatever a step helps adds within tolerance too', () => {
    const always = { putRight: 'always' } as const;
    expect(ask({ points: head(1.8), settings: always }).remedy).toMatchObject({ grams: 2, none: undefined });
    expect(ask({ points: head(0.7), settings: always }).remedy).toMatchObject({ grams: 0, none: 'withinTolerance' });
  });

  it('less than the least that is worth adding (1 g, practice)', () => {
    const tight = { tolerance: 0.2 };
    expect(ask({ points: head(0.7), ...tight }).remedy).toMatchObject({ grams: 0, none: 'belowLeast' }); // ½ g
    expect(ask({ points: head(0.8), ...tight }).remedy).toMatchObject({ grams: 1, none: undefined });
    expect(ask({ points: head(1.8), ...tight, settings: { leastGrams: 2.5 } }).remedy?.none).toBe('belowLeast');
    expect(ask({ points: head(2.4), ...tight, settings: { leastGrams: 2.5 } }).remedy?.grams).toBe(2.5);
  });

  it('less than half a step, even where everything is worth adding', () => {
    const { remedy } = ask({ points: head(0.4), tolerance: 0.1, settings: { leastGrams: 0, headWay: 'Head screw' } });
    expect(remedy).toMatchObject({ grams: 0, none: 'belowLeast' });
  });

  it('steps of tenths stay tenths', () => {
    const fine: Way = {
      name: 'Lead tape',
      end: 'head',
      inches: 0,
      stepGrams: 0.1,
      gripOff: false,
      limitGrams: undefined,
    };
    expect(ask({ points: head(2.31), ways: [fine] }).remedy?.grams).toBe(2.3); // 23 × 0.1 is 2.3000000000000003
  });
});

describe('limits', () => {
  it('the shop’s at the head: at it is not over it', () => {
    expect(ask({ points: head(8) })).toMatchObject({ remedy: { grams: 8, overLimit: false }, notes: [] });
    expect(ask({ points: head(8.5) })).toMatchObject({
      remedy: { grams: 8.5, overLimit: true },
      notes: [{ note: 'overLimit', grams: 8.5, limitGrams: 8 }],
    });
  });

  it('the way’s own goes first, at either end', () => {
    const ways = DEFAULT_WAYS.map((way) => ({ ...way, limitGrams: 5 }));
    expect(ask({ points: head(6), ways }).notes).toEqual([{ note: 'overLimit', grams: 6, limitGrams: 5 }]);
    expect(ask({ points: -2, ways }).notes).toEqual([{ note: 'overLimit', grams: 8, limitGrams: 5 }]);
  });

  it('nothing added is never over', () => {
    expect(ask({ points: 0.5, settings: { headLimitGrams: 0 } }).remedy?.overLimit).toBe(false);
  });
});

describe('ways that Weights does not list', () => {
  const unknown = (field: string, got: string) => ({ note: 'issue', issue: { code: 'unknownWay', field, got } });

  it('the club’s: told, and the usual one is taken', () => {
    const { remedy, notes } = ask({ points: 2, club: { way: 'Glue' } });
    expect(remedy?.way).toBe('Lead tape');
    expect(notes).toEqual([unknown('Weighting', 'Glue')]);
  });

  it('the shop’s: told, and there is no remedy', () => {
    expect(ask({ points: 2, ways: [] })).toEqual({
      remedy: undefined,
      notes: [unknown('Head weighting', 'Lead tape')],
    });
    expect(ask({ points: -2, ways: [] })).toEqual({
      remedy: undefined,
      notes: [unknown('Butt weighting', 'Butt plug')],
    });
  });

  it('a club with such a way is planned but for its weight', () => {
    const plan = planOne({}, {}, { ways: [] });
    expect(plan.remedy).toBeUndefined();
    expect(plan.readingAfter).toBe(plan.readingGripped);
    expect(plan.verdictAfter).toBe(plan.verdict);
    expect(noteKinds(plan)).toEqual(['issue']);
  });
});

describe('what a remedy moves', () => {
  it('its grams times their distance from the fulcrum', () => {
    expect(remedyPoints(ask({ points: head(4) }).remedy)).toBeCloseTo(head(4), 10);
    expect(remedyPoints(ask({ points: -2 }).remedy)).toBeCloseTo((8 * -13) / P, 10);
    expect(remedyPoints(undefined)).toBe(0);
  });
});
