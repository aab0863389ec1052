import { describe, expect, it } from 'vitest';
import { calibrate, DEFAULT_SETTINGS, scaleCheck, type Offer } from '../../src/core/index';
import { offerName, sayOffer, sayScale, sayUntold, sayUnusable } from '../../src/words/calibrate';
import { valueOf } from '../core/make';

const OFFER: Offer = {
  field: 'balanceInches',
  item: 'TB-S60',
  now: 4.2,
  suggested: 4.512,
  low: 4.38,
  high: 4.644,
  confidence: 0.95,
  pairs: 12,
  errorBefore: 0.34,
  errorAfter: 0.14,
  errorUnit: 'points',
  agrees: false,
  flagged: [],
  withoutFlagged: undefined,
};

describe('an offer', () => {
  it('says what was found, how sure it is, what is set, and what it changes', () => {
    expect(sayOffer(OFFER)).toBe(
      'Balance point of TB-S60: 4.51 in from 12 clubs (95 % between 4.38 and 4.64). Set now: 4.20 in, which does not agree. ' +
        'A club is usually predicted 0.34 points off now, 0.14 with this (root mean square, each from the others).',
    );
  });

  it('that agrees gives no reason to change', () => {
    expect(sayOffer({ ...OFFER, now: 4.5, agrees: true })).toMatch(/which agrees; there is no reason to change it/);
  });

  it('names what is far off, and what it would be without', () => {
    const one = { ...OFFER, flagged: [{ club: 'PW', off: -2.25 }], withoutFlagged: 4.4 };
    expect(sayOffer(one)).toMatch(/counted all the same: PW \(−2\.3 points\); without it 4\.40 in\. Look/);
    const two = { ...one, flagged: [...one.flagged, { club: 'SW', off: 3 }] };
    expect(sayOffer(two)).toMatch(/PW \(−2\.3 points\), SW \(\+3\.0 points\); without them 4\.40 in/);
    expect(sayOffer({ ...one, withoutFlagged: undefined })).toMatch(/too few are left/);
  });

  it('of the layer and of all grips', () => {
    const layer = {
      ...OFFER,
      field: 'layerGrams',
      item: undefined,
      suggested: 1.9,
      low: 1.7,
      high: 2.1,
      now: 1.76,
      errorUnit: 'g',
    } as const;
    expect(sayOffer(layer)).toMatch(
      /^One layer of build-up tape: 1\.90 g from 12 clubs \(95 % between 1\.70 and 2\.10\)/,
    );
    expect(sayOffer({ ...layer, errorBefore: undefined })).not.toMatch(/usually/);
    expect(offerName({ field: 'balanceRatio', item: undefined })).toBe(
      'Balance point of all grips, as a part of their length',
    );
    expect(sayOffer({ ...layer, field: 'balanceRatio', suggested: 0.4297 })).toMatch(/: 0\.430 from/);
  });
});

it('what cannot be told, and what was left out', () => {
  expect(sayUntold(calibrate({ finished: [], stock: [], settings: DEFAULT_SETTINGS }))).toEqual([
    'Layer mass: 0 check-ins so far, too few to tell. It takes at least 5.',
  ]);
  expect(
    sayUnusable({ club: 'PW', issue: { code: 'blank', field: 'Cap of A', expected: 'its thickness in Stock' } }),
  ).toBe('PW is left out: Cap of A is blank. Give its thickness in Stock.');
});

describe('the scale', () => {
  const weekly = (points: (week: number) => number, days = 7) =>
    valueOf(
      scaleCheck(
        Array.from({ length: 10 }, (_, week) => ({ day: week * days, points: points(week) })),
        { accepted: 32, divisionPoints: 0.1 },
      ),
    );

  it.each([
    [weekly(() => 32), /^10 readings of the reference club.*no drift and no offset/],
    [weekly(() => 32, 0), /no offset; for a drift read it on at least three days/],
    [weekly(() => 33), /: the scale reads \+1\.0 pt \(\+1\.0 to \+1\.0\) off\. Set it right/],
    [weekly((week) => 32 - week / 9), /: the scale drifted by −1\.0 pt .* and reads −1\.0 pt .* off by now\./],
  ])('%#', (check, said) => expect(sayScale(check)).toMatch(said));
});
