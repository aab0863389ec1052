/** Words that tables offer as choices about money; apart from the sentences, since every table needs them. */
import type { RateUse, Rounding, RoundingRule } from '../core/index';

/** When a work of Rates is charged, as a choice in the sheet. */
export const RATE_USE_WORDS: Readonly<Record<RateUse, string>> = {
  fitting: 'Fitting a grip',
  ownGrip: 'Fitting a client’s own grip',
  buildUp: 'Build-up tape',
  salvage: 'Old grip taken off whole',
  disposal: 'Old grip cut off',
  reading: 'Weighing and reading',
  weight: 'Weight added',
  rebalancing: 'Putting a reading right',
  length: 'Length change',
  everyClub: 'Every club',
  everyJob: 'Every job',
};

export const ROUNDING_WORDS: Readonly<Record<RoundingRule, string>> = {
  halfUp: 'Half up',
  halfEven: 'Half to even',
  down: 'Tax down',
};

export const ROUNDED_AT_WORDS: Readonly<Record<Rounding['at'], string>> = {
  line: 'Each line',
  quote: 'The whole quote',
};

/** Stands beside every choice of tax or rounding. */
export const TAX_ADVICE = 'What tax is due and how it is rounded differs by place: ask your adviser.';
