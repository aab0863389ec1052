/** What stands in the fields of the quote's screen. */
import type { ClubKind } from '../../core/index';
import type { Choices } from '../../workbook/choices';

/** A way of doing the job that was kept, to be set beside others. */
export interface KeptOption {
  readonly name: string;
  readonly choices: Choices;
  /** What each row of Clubs held when it was kept: choices for single clubs go by rows. */
  readonly clubKeys: ReadonlyMap<number, string>;
}

/** Which of them is quoted: what Clubs has, what is chosen in Plan, or a kept one by its place. */
export type QuoteOf = 'clubs' | 'plan' | `kept ${number}`;

export interface QuoteForm {
  readonly of: QuoteOf;
  /** Per cent; blank: as Jobs has it. */
  readonly discount: string;
  readonly gripDiscount: string;
  /** Per cent; blank: as Jobs or Settings has it. */
  readonly deposit: string;
  /** Blank: as Settings has it. */
  readonly validDays: string;
  /** The line something is taken off, by its description. */
  readonly lineOff: string;
  readonly lineOffPercent: string;
  readonly kept: readonly KeptOption[];
  /** What the next kept option is called; null: as it suggests itself. */
  readonly name: string | null;
}

export const EMPTY_QUOTE: QuoteForm = {
  of: 'clubs',
  discount: '',
  gripDiscount: '',
  deposit: '',
  validDays: '',
  lineOff: '',
  lineOffPercent: '',
  kept: [],
  name: null,
};

export interface CounterForm {
  readonly clubs: string;
  /** Blank: any kind. */
  readonly kind: '' | ClubKind;
  /** Blank: the client brings the grips. */
  readonly item: string;
  readonly layers: string;
  readonly salvage: boolean;
  readonly reading: boolean;
  readonly discount: string;
  readonly customer: string;
}

export const EMPTY_COUNTER: CounterForm = {
  clubs: '',
  kind: '',
  item: '',
  layers: '0',
  salvage: false,
  reading: false,
  discount: '',
  customer: '',
};
