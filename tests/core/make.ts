/** Clubs, grips and settings for tests: an invented iron whose old and new grip differ in nothing but 10 g. */
import {
  DEFAULT_SETTINGS,
  DEFAULT_WAYS,
  planSet,
  type Club,
  type ClubPlan,
  type Grip,
  type Note,
  type Result,
  type ShopSettings,
  type Way,
} from '../../src/core/index';

/** One point in g·in: 1.75 oz·in × 28.349523125 g/oz. */
export const P = 49.61166546875;

export function aClub(more: Partial<Club> = {}): Club {
  return {
    row: 1,
    sheetRow: 2,
    job: undefined,
    name: '7 iron',
    kind: 'iron',
    lengthInches: 37,
    buttInches: 0.6,
    taperPerInch: undefined,
    reading: 32,
    massGrams: 420,
    oldItem: 'old',
    oldGripGrams: 50,
    oldMassFrom: 'estimate',
    oldLayers: 0,
    oldBalanceInches: 4.2,
    oldCapInches: 0.125,
    buttWeightGrams: 0,
    buttWeightLeaves: false,
    bareReading: undefined,
    bareGrams: undefined,
    newItem: 'G',
    layers: 0,
    lowerLayers: 0,
    targetInches: undefined,
    hold: undefined,
    target: undefined,
    tolerancePoints: undefined,
    way: undefined,
    lengthChangeInches: 0,
    plugGrams: 0,
    issues: [],
    ...more,
  };
}

export function aGrip(more: Partial<Grip> = {}): Grip {
  return {
    item: 'G',
    description: undefined,
    coreInches: 0.6,
    profile: 'round',
    gripGrams: 60,
    spreadGrams: 2,
    upperInches: 0.9,
    lowerInches: 0.82,
    lengthInches: 10.5,
    balanceInches: 4.2,
    capInches: 0.125,
    onHand: 10,
    ...more,
  };
}

export interface Shop {
  readonly stock?: readonly Grip[];
  readonly ways?: readonly Way[];
  readonly settings?: Partial<ShopSettings>;
}

export function planOf(clubs: readonly Club[], shop: Shop = {}) {
  return planSet({
    clubs,
    stock: shop.stock ?? [aGrip()],
    ways: shop.ways ?? DEFAULT_WAYS,
    settings: { ...DEFAULT_SETTINGS, ...shop.settings },
  });
}

/** The plan of one club with one grip. */
export function planOne(club: Partial<Club> = {}, grip: Partial<Grip> = {}, shop: Shop = {}): ClubPlan {
  const { clubs } = planOf([aClub(club)], { stock: [aGrip(grip)], ...shop });
  const [plan] = clubs;
  if (!plan) throw new Error('a club went in, so a plan comes out');
  return plan;
}

export function noteKinds(plan: ClubPlan): string[] {
  return plan.notes.map(({ note }) => note);
}

export function noteOf<K extends Note['note']>(plan: ClubPlan, kind: K): Extract<Note, { note: K }> | undefined {
  return plan.notes.find((note): note is Extract<Note, { note: K }> => note.note === kind);
}

export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`refused: ${result.issue.code}`);
  return result.value;
}

export function issueOf<T>(result: Result<T>) {
  if (result.ok) throw new Error('expected a refusal');
  return result.issue;
}
