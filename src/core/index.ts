/** The only door to the core. */
export * from './units';
export * from './constants';
export * from './result';
export * from './number';
export * from './decimal';
export * from './money';
export * from './balance/reading';
export * from './balance/moment';
export * from './balance/change';
export * from './balance/compensation';
export * from './balance/inertia';
export * from './grip/mass';
export * from './fit/diameter';
export * from './fit/layers';
export * from './fit/hand';
export * from './fit/mistakenUnit';
export * from './fit/sample';
export * from './rules/check';
export * from './plan/types';
export * from './choose/types';
export type { WeighedGrip } from './choose/weighedGroups';
export * from './choose/place';
export * from './choose/fitLine';
export * from './choose/even';
export * from './choose/reaching';
export * from './plan/defaults';
export { knownBy, planSet, planSetSteps } from './plan/planSet';
export { fittedSeatInches, layersFor, measuresOn } from './plan/size';
export { holdOf } from './plan/planClub';
export { candidatesOf } from './choose/candidates';
export { compareGrips, compareSteps, plansOfTried } from './choose/compare';
export { drained } from './choose/steps';
export { groupedBy } from './plan/together';
export { countOfTried } from './choose/counts';
export { solveSet, solveSteps } from './choose/solve';
export * from './quote/types';
export { quoteIssues, quoteOf } from './quote/quote';
export { readPercent, saidPercent } from './quote/percent';
export { lineTax, type LineTax, type LineTaxRequest } from './quote/tax';
export { linesFromPlan, type LinesOptions, type PlannedLines } from './quote/fromPlan';
export { mergeLines, minutesOf, type Minutes } from './quote/merge';
export { counterQuote, type CounterGrips, type CounterQuote, type CounterRequest } from './quote/counter';
export { compareQuotes, type NamedQuote, type QuoteComparison, type QuoteRow } from './quote/compare';
export * from './calibrate/types';
export { calibrate } from './calibrate/calibrate';
export { illegal, legalRange, type LegalRange } from './calibrate/legal';
export * from './calibrate/scaleCheck';
export { finishedClub, type Measurements } from './calibrate/fromCheckIn';
export * from './bench/types';
export { DEFAULT_HABITS } from './bench/habits';
export { benchTicket, isLead } from './bench/ticket';
export { isGripped, pilotOf } from './bench/pilot';
export { cautionsFor } from './bench/cautions';
export { canClose, checkIn } from './bench/checkIn';
export { fittedSet, type FittedSet } from './bench/asFitted';
export * from './stock/types';
export { needsOf, type NeedsAsked } from './stock/needs';
export { entriesOf } from './stock/ledger';
export { stillNeeded, stockState, stockStateSteps, type StockAsked } from './stock/state';
export { releaseFor, reserveFor, takeFor } from './stock/reserve';
export { happenTo, quantityIssue, type Happening, type HappeningKind } from './stock/happen';
export {
  cancelRows,
  nextOrder,
  onOrderOf,
  openOrders,
  orderRows,
  placedOrders,
  sharesOf,
  type Share,
} from './stock/placed';
export { exactSum, PER_MONEY } from './choose/exact';
export { costOfPack, orderOf, pickList } from './stock/order';
