/** The only door to the core. */
export * from './units';
export * from './constants';
export * from './result';
export * from './number';
export * from './balance/reading';
export * from './balance/moment';
export * from './balance/change';
export * from './balance/compensation';
export * from './balance/inertia';
export * from './grip/mass';
export * from './fit/diameter';
export * from './fit/layers';
export * from './rules/check';
export * from './plan/types';
export * from './plan/defaults';
export { planSet } from './plan/planSet';
export { holdOf } from './plan/planClub';
