import { describe, expect, it } from 'vitest';
import type { Club, ClubPlan } from '../../../src/core/index';
import { aClub, aGrip, noteKinds, noteOf, planOf } from '../make';

const round = aGrip({ item: 'round' });
const ribbed = aGrip({ item: 'ribbed', profile: 'ribbed' });
const stock = [round, ribbed, aGrip({ item: 'plain', profile: undefined })];

/** Clubs by kind and item; each has a name of its own. */
function bag(...clubs: [Club['kind'], string, Partial<Club>?][]): ClubPlan[] {
  const made = clubs.map(([kind, newItem, more], at) =>
    aClub({ kind, newItem, row: at + 1, sheetRow: at + 2, name: `club ${at}`, hold: 'nothing', ...more }),
  );
  return [...planOf(made, { stock }).clubs];
}

const oddOnes = (plans: readonly ClubPlan[]) =>
  plans.flatMap((plan, at) => (noteOf(plan, 'mixedProfiles') ? [at] : []));

describe('profiles', () => {
  it('the fewer in a group are the odd ones', () => {
    const plans = bag(['iron', 'round'], ['wedge', 'ribbed'], ['iron', 'round']);
    expect(oddOnes(plans)).toEqual([1]);
    expect(noteOf(plans[1]!, 'mixedProfiles')).toEqual({ note: 'mixedProfiles', group: 'irons', odd: 'ribbed' });
    const other = bag(['driver', 'ribbed'], ['wood', 'ribbed'], ['hybrid', 'round']);
    expect(noteOf(other[2]!, 'mixedProfiles')).toEqual({ note: 'mixedProfiles', group: 'woods', odd: 'round' });
    expect(oddOnes(other)).toEqual([2]);
  });

  it('of equally many, the ribbed', () => {
    expect(oddOnes(bag(['iron', 'ribbed'], ['iron', 'round']))).toEqual([0]);
  });

  it('round woods and ribbed irons are nothing odd, nor are putters, juniors, kinds and profiles unknown', () => {
    expect(oddOnes(bag(['driver', 'round'], ['wood', 'round'], ['iron', 'ribbed'], ['wedge', 'ribbed']))).toEqual([]);
    expect(oddOnes(bag(['putter', 'round'], ['putter', 'ribbed'], ['junior', 'ribbed'], ['junior', 'round']))).toEqual(
      [],
    );
    expect(oddOnes(bag([undefined, 'round'], [undefined, 'ribbed'], ['iron', 'ribbed'], ['iron', 'plain']))).toEqual(
      [],
    );
    expect(oddOnes(bag(['iron', 'round'], ['iron', 'nobody stocks it']))).toEqual([]);
  });

  it('bags are looked at one by one', () => {
    expect(oddOnes(bag(['iron', 'round', { job: 'A' }], ['iron', 'ribbed', { job: 'B' }]))).toEqual([]);
    expect(oddOnes(bag(['iron', 'round', { job: 'A' }], ['iron', 'ribbed', { job: 'a' }]))).toEqual([1]);
  });
});

describe('stock', () => {
  const few = [
    aGrip({ onHand: 2 }),
    aGrip({ item: 'uncounted', onHand: undefined }),
    aGrip({ item: 'none', onHand: 0 }),
  ];
  const clubs = (...items: string[]) =>
    items.map((newItem, at) => aClub({ newItem, row: at + 1, name: `club ${at}`, job: String(at % 2) }));

  it('serves clubs in their order, over all bags; those that come too late are told', () => {
    const plan = planOf(clubs('G', 'uncounted', 'G', 'g', 'G', 'uncounted', 'uncounted'), { stock: few });
    const short = plan.clubs.map((club) => noteOf(club, 'stockShort'));
    expect(short.map(Boolean)).toEqual([false, false, false, true, true, false, false]);
    expect(short[3]).toEqual({ note: 'stockShort', item: 'G', needed: 4, onHand: 2 });
    expect(plan.needed).toEqual(
      new Map([
        ['G', 4],
        ['uncounted', 3],
      ]),
    );
  });

  it('none on hand is short at once, exactly enough is not', () => {
    expect(noteKinds(planOf(clubs('none'), { stock: few }).clubs[0]!)).toContain('stockShort');
    expect(planOf(clubs('G', 'G'), { stock: few }).clubs.flatMap(noteKinds)).not.toContain('stockShort');
  });

  it('of an item listed twice the first counts, whatever its case', () => {
    const twice = [aGrip({ item: 'g', gripGrams: 60 }), aGrip({ item: 'G', gripGrams: 90 })];
    expect(planOf(clubs('G'), { stock: twice }).clubs[0]?.fittedAfterGrams).toBe(60);
  });
});

describe('the same club twice', () => {
  const rowsOf = (clubs: Club[]) => planOf(clubs).clubs.map((club) => noteOf(club, 'duplicateClub')?.rows);
  const club = (name: string, sheetRow: number, job?: string) => aClub({ name, sheetRow, job });

  it('is told on each, with all rows of the sheet', () => {
    expect(rowsOf([club('7 iron', 5), club('8 iron', 6), club('7 IRON', 7), club('7 iron', 9)])).toEqual([
      [5, 7, 9],
      undefined,
      [5, 7, 9],
      [5, 7, 9],
    ]);
  });

  it('but not across bags', () => {
    expect(rowsOf([club('7 iron', 5, 'A'), club('7 iron', 6, 'B'), club('7 iron', 7, 'b')])).toEqual([
      undefined,
      [6, 7],
      [6, 7],
    ]);
  });
});

describe('a set', () => {
  it('of no clubs is an empty plan', () => {
    expect(planOf([])).toEqual({ clubs: [], lessons: [], needed: new Map() });
  });

  it('is planned in its order, and one bad club leaves the others alone', () => {
    const { clubs } = planOf([
      aClub({ name: 'a', newItem: undefined }),
      aClub({ name: 'b', row: 2 }),
      aClub({ name: 'c', row: 3, newItem: 'ghost' }),
    ]);
    expect(clubs.map(({ name, row }) => [name, row])).toEqual([
      ['a', 1],
      ['b', 2],
      ['c', 3],
    ]);
    expect(clubs[1]?.verdict).toBe('out');
  });

  it('what was taught is said before what the set shows, and what the club shows last', () => {
    const stripped = { bareReading: 44, bareGrams: 368, reading: 34, massGrams: 421.8 };
    const { clubs } = planOf([aClub(stripped), aClub({ row: 2, buttInches: 0.58 })], { stock: [aGrip({ onHand: 0 })] });
    expect(noteKinds(clubs[0]!)).toEqual(['taught', 'duplicateClub', 'stockShort']);
    expect(noteKinds(clubs[1]!)).toEqual(['duplicateClub', 'stockShort', 'looseCore']);
  });
});
