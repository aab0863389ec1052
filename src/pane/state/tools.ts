/** What stands in the fields of the screens that help choosing: text until it is asked for, kept while a person looks elsewhere. */
import type { Aim, Count, EvenGroup, SizesDiffer } from '../../core/index';
import type { CounterForm, QuoteForm } from './quoteForm';

/** The pane's screens, in the order a set is worked through. */
export const SCREENS = [
  'plan',
  'hand',
  'compare',
  'even',
  'place',
  'intake',
  'quote',
  'stock',
  'bench',
  'week',
] as const;
export type Screen = (typeof SCREENS)[number];

/** The line of tabs a screen stands in: what leads to a plan, and the work around it. */
export const SCREEN_LINES: readonly (readonly Screen[])[] = [
  ['plan', 'hand', 'compare', 'even', 'place'],
  ['intake', 'quote', 'stock', 'bench', 'week'],
];

/** Screens that lead to a plan. */
export const PLAN_SCREENS: readonly Screen[] = SCREEN_LINES[0] ?? [];

export type LengthUnit = 'in' | 'mm';

export interface HandForm {
  readonly unit: LengthUnit;
  /** Null: as Jobs has it. */
  readonly hand: string | null;
  readonly finger: string | null;
  /** The lower hand measures otherwise than the upper one; null: if Jobs has measures of it. */
  readonly differ: boolean | null;
  readonly lowerHand: string | null;
  readonly lowerFinger: string | null;
  /** Blank: the butt that most clubs have. */
  readonly butt: string;
  readonly fingertips: '' | 'press' | 'touch' | 'gap';
  readonly littleFinger: '' | 'past' | 'short';
  readonly lowerIndex: '' | 'sits' | 'reaches';
  readonly squeezes: boolean;
  readonly errLarger: '0' | '1' | '2';
  readonly pain: boolean;
}

export interface CompareForm {
  readonly profile: '' | 'round' | 'ribbed';
  readonly texture: string;
  readonly core: string;
  readonly mostPrice: string;
  readonly onHandOnly: boolean;
  /** Blank: unbeaten ones first. */
  readonly orderBy: '' | Count;
  /** Items ticked for the shortlist. */
  readonly shortlist: readonly string[];
  readonly solveFrom: 'shortlist' | 'stock';
  readonly aims: readonly [Aim, Aim, Aim];
  readonly sizesDiffer: SizesDiffer;
}

/** Sheet: the group stays as Clubs has it. */
export type EvenBy = 'sheet' | 'own' | 'one' | 'line';

export interface EvenForm {
  readonly by: Readonly<Record<EvenGroup, EvenBy>>;
  /** A reading of the owner's own in place of the median; blank: the median. */
  readonly value: Readonly<Record<EvenGroup, string>>;
}

export interface PlaceForm {
  readonly typed: string;
}

/** A job that is being begun; kept until it stands in Jobs, whichever job is looked at meanwhile. */
export interface IntakeForm {
  readonly customer: string;
  readonly clubs: string;
  readonly hand: '' | 'Right' | 'Left';
  /** As a date field has it, `2026-05-15`. */
  readonly due: string;
  readonly firstTag: string;
  readonly authorisedBy: string;
  /** Blank: the next number. */
  readonly job: string;
  /** What the clubs got last time is taken over. */
  readonly asLast: boolean;
}

export const EMPTY_INTAKE: IntakeForm = {
  customer: '',
  clubs: '',
  hand: '',
  due: '',
  firstTag: '',
  authorisedBy: '',
  job: '',
  asLast: false,
};

/** What is done in one go for the jobs ahead. */
export interface WeekForm {
  /** Jobs that are not ticked: a new one is. */
  readonly leftOut: readonly string[];
  readonly quote: boolean;
  readonly reserve: boolean;
  readonly plan: boolean;
}

/** Something that came, went, was counted or ordered, as far as it is typed. */
export interface StockForm {
  readonly kind: 'arrived' | 'counted' | 'writtenOff' | 'sentBack' | 'broughtBack' | 'ordered' | 'cancelled';
  /** Shelf and item; blank: none chosen. */
  readonly thing: string;
  readonly quantity: string;
  readonly note: string;
  /** Number of the order it belongs to; null: to none; blank: the one that waits longest, or the next number. */
  readonly order: string | null;
}

export interface Tools {
  readonly hand: HandForm;
  readonly compare: CompareForm;
  readonly even: EvenForm;
  readonly place: PlaceForm;
  /** What differs from the screen's own blanks. */
  readonly quote: Partial<QuoteForm>;
  readonly counter: Partial<CounterForm>;
  readonly intake: IntakeForm;
  readonly week: WeekForm;
  readonly stock: StockForm;
}

export const EMPTY_TOOLS: Tools = {
  hand: {
    unit: 'in',
    hand: null,
    finger: null,
    differ: null,
    lowerHand: null,
    lowerFinger: null,
    butt: '',
    fingertips: '',
    littleFinger: '',
    lowerIndex: '',
    squeezes: false,
    errLarger: '0',
    pain: false,
  },
  compare: {
    profile: '',
    texture: '',
    core: '',
    mostPrice: '',
    onHandOnly: false,
    orderBy: '',
    shortlist: [],
    solveFrom: 'stock',
    aims: ['weight', 'deviation', 'price'],
    sizesDiffer: 'never',
  },
  even: { by: { woods: 'sheet', irons: 'sheet', wedges: 'sheet' }, value: { woods: '', irons: '', wedges: '' } },
  place: { typed: '' },
  quote: {},
  counter: {},
  intake: EMPTY_INTAKE,
  week: { leftOut: [], quote: true, reserve: true, plan: true },
  stock: { kind: 'arrived', thing: '', quantity: '', note: '', order: '' },
};

/** Fields that go with the bag on the counter; how grips are compared is the shop's habit and stays. */
export function forAnotherSet(tools: Tools): Tools {
  const { unit } = tools.hand;
  return {
    ...EMPTY_TOOLS,
    hand: { ...EMPTY_TOOLS.hand, unit },
    compare: tools.compare,
    counter: tools.counter,
    intake: tools.intake,
    stock: tools.stock,
    week: tools.week,
  };
}
