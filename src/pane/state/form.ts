/**
 * What a person has chosen to fit, as it stands in the fields: text until it is asked for, so that half a number can be typed.
 */
import { plainNumber } from '../../core/index';
import type { Choices, ClubChoices } from '../../workbook/choices';
import type { Screen } from './tools';

export const AS_IN_SHEET = 'sheet';

export type SizeBy = typeof AS_IN_SHEET | 'layers' | 'diameter';
export type HoldBy = typeof AS_IN_SHEET | 'asArrived' | 'target' | 'nothing';

export interface Form {
  /** An item of Stock; blank: as in the sheet. */
  readonly item: string;
  readonly sizeBy: SizeBy;
  readonly layers: string;
  readonly diameter: string;
  readonly holdBy: HoldBy;
  readonly target: string;
  /** Points; blank: as in the sheet. */
  readonly tolerance: string;
  /** A way of weighting; blank: as in the sheet. */
  readonly weighting: string;
  /** What is chosen goes to a putter beside other clubs as well. */
  readonly puttersToo: boolean;
  /** Further layers under the lower hand; blank: as in the sheet. */
  readonly lowerLayers: string;
  /** What was taken over for single clubs; it beats what is chosen for all of them. */
  readonly perClub: PerClub | null;
}

/** Choices that a screen found for single clubs. */
export interface PerClub {
  /** By body row of Clubs, from 1. */
  readonly entries: ReadonlyMap<number, ClubChoices>;
  /** The screens they come from, each once. */
  readonly from: readonly Screen[];
}

export const EMPTY_FORM: Form = {
  item: '',
  sizeBy: AS_IN_SHEET,
  layers: '0',
  diameter: '',
  holdBy: AS_IN_SHEET,
  target: '',
  tolerance: '',
  weighting: '',
  puttersToo: false,
  lowerLayers: '',
  perClub: null,
};

/** What each field decides: a later decision for all clubs takes these back from single ones. */
const DECIDES = {
  item: ['newItem', 'newMass', 'layers'],
  sizeBy: ['layers', 'targetDiameter'],
  holdBy: ['hold', 'target'],
  lowerLayers: ['lowerLayers'],
} as const satisfies Partial<Record<keyof Form, readonly (keyof ClubChoices)[]>>;

type Decider = keyof typeof DECIDES;
const DECIDERS = Object.keys(DECIDES) as Decider[];

/** The form after a field changed: what was just decided for all clubs no longer differs by club. */
export function changedForm(form: Form, change: Partial<Form>): Form {
  const next = { ...form, ...change };
  const undone = DECIDERS.filter((field) => next[field] !== EMPTY_FORM[field] && isDecidedAnew(field, next, change));
  if (!undone.length || !next.perClub) return next;
  return { ...next, perClub: without(next.perClub, new Set(undone.flatMap((field) => DECIDES[field]))) };
}

/** A number beside a choice decides as the choice does. */
function isDecidedAnew(field: Decider, { sizeBy, holdBy }: Form, change: Partial<Form>): boolean {
  if (field in change) return true;
  if (field === 'sizeBy') return sizeBy !== AS_IN_SHEET && sizeBy in change;
  return field === 'holdBy' && holdBy === 'target' && 'target' in change;
}

function without({ entries, from }: PerClub, keys: ReadonlySet<keyof ClubChoices>): PerClub | null {
  const left = new Map<number, ClubChoices>();
  for (const [row, choices] of entries) {
    const kept = Object.entries(choices).filter(([key]) => !keys.has(key as keyof ClubChoices));
    if (kept.length) left.set(row, Object.fromEntries(kept));
  }
  return left.size ? { entries: left, from } : null;
}

/**
 * The form once a screen's choices for single clubs are taken over. A field whose decision every club now has for itself goes back
 * to the sheet; one that still decides for some of them stays.
 *
 * @param rows the clubs that the fields decide for
 */
export function withPerClub(
  form: Form,
  taken: ReadonlyMap<number, ClubChoices>,
  from: Screen,
  rows: readonly number[],
): Form {
  const entries = new Map(form.perClub?.entries);
  for (const [row, choices] of taken) entries.set(row, { ...entries.get(row), ...choices });
  const all = (keys: readonly (keyof ClubChoices)[]) =>
    rows.every((row) => keys.every((key) => entries.get(row)?.[key] !== undefined));
  const leads: Readonly<Record<Decider, readonly (keyof ClubChoices)[]>> = {
    item: ['newItem'],
    sizeBy: form.sizeBy === 'diameter' ? ['targetDiameter', 'layers'] : ['layers'],
    holdBy: ['hold', 'target'],
    lowerLayers: ['lowerLayers'],
  };
  const cleared = DECIDERS.filter((field) => form[field] !== EMPTY_FORM[field] && all(leads[field]));
  if (form.sizeBy === 'layers' && cleared.includes('sizeBy')) {
    // The field also kept the sheet's target diameters from counting, and layers of 0 beside one would be found anew.
    for (const row of rows) entries.set(row, { targetDiameter: null, ...entries.get(row) });
  }
  const blanks = Object.fromEntries(cleared.map((field) => [field, EMPTY_FORM[field]]));
  const screens = [...new Set([...(form.perClub?.from ?? []), from])];
  return { ...form, ...blanks, perClub: { entries, from: screens } };
}

/**
 * Choices for single clubs once the sheet has changed: they go along with their club. Where it cannot be told any more which club
 * that is, they are dropped: another one must not get them.
 *
 * @param before names of the clubs by row when the choices were made; `now`: as they are
 */
export function followed(
  perClub: PerClub,
  before: ReadonlyMap<number, string>,
  now: ReadonlyMap<number, string>,
): PerClub | null {
  const rows = [...perClub.entries.keys()];
  if (rows.every((row) => before.get(row) === now.get(row))) return perClub;
  const only = (clubs: ReadonlyMap<number, string>, wanted: string | undefined) => {
    const found = [...clubs].filter(([, key]) => key === wanted);
    return found.length === 1 ? found[0]?.[0] : undefined;
  };
  const entries = new Map<number, ClubChoices>();
  for (const [row, choices] of perClub.entries) {
    const to = only(before, before.get(row)) === row ? only(now, before.get(row)) : undefined;
    if (to !== undefined) entries.set(to, choices);
  }
  return entries.size ? { ...perClub, entries } : null;
}

/** Whether grip or size were taken over for single clubs. */
export function fitsByClub({ perClub }: Form): boolean {
  const keys = new Set<string>([...DECIDES.item, ...DECIDES.sizeBy]);
  return [...(perClub?.entries.values() ?? [])].some((choices) => Object.keys(choices).some((key) => keys.has(key)));
}

export type FormField = 'layers' | 'lowerLayers' | 'diameter' | 'target' | 'tolerance';
export type FieldFault = 'blank' | 'notNumber' | 'notWhole' | 'outOfRange' | 'notReading';

export interface FormRead {
  /** Fields with a fault are left as in the sheet. */
  readonly choices: Choices;
  readonly faults: Partial<Record<FormField, FieldFault>>;
}

/** The ends of what each field accepts; the same as its column in Clubs. */
export const FIELD_RANGES = {
  layers: { low: 0, high: 12 },
  lowerLayers: { low: 0, high: 12 },
  diameter: { low: 0.7, high: 1.8 },
  tolerance: { low: 0.1, high: 10 },
} as const;

const HOLD_WORDS = { asArrived: 'As it was', target: 'Target', nothing: 'Nothing' } as const;

function faultOf(text: string, field: keyof typeof FIELD_RANGES): FieldFault | undefined {
  if (text.trim() === '') return 'blank';
  const number = plainNumber(text);
  if (number === undefined) return 'notNumber';
  if (field !== 'diameter' && field !== 'tolerance' && !Number.isInteger(number)) return 'notWhole';
  const { low, high } = FIELD_RANGES[field];
  return number < low || number > high ? 'outOfRange' : undefined;
}

/** The choices for clubs of which `putters` are putters among others: they keep what the sheet says unless asked for. */
export function sparingPutters(choices: Choices, form: Form, putters: number): Choices {
  const forAll = Object.keys(choices).some((key) => key !== 'perClub');
  const spared = putters > 0 && !form.puttersToo && forAll;
  return spared ? { ...choices, exceptPutters: true } : choices;
}

/**
 * Reads the fields. `isReading` judges a swing weight, because that grammar belongs to the core.
 *
 * A target that is still blank is no fault: the targets in the sheet stay.
 */
export function readForm(form: Form, isReading: (text: string) => boolean): FormRead {
  const faults: Partial<Record<FormField, FieldFault>> = {};
  const choices: { -readonly [K in keyof Choices]: Choices[K] } = {};
  if (form.item) choices.newItem = form.item;
  if (form.sizeBy === 'layers') {
    const fault = faultOf(form.layers, 'layers');
    if (fault) faults.layers = fault;
    else {
      // Beside a target diameter no layers would mean "find them": a number that was chosen must count as it stands.
      choices.layers = plainNumber(form.layers);
      choices.targetDiameter = null;
    }
  }
  if (form.sizeBy === 'diameter') {
    const fault = faultOf(form.diameter, 'diameter');
    if (fault) faults.diameter = fault;
    else {
      // Layers must be blank for a target diameter to count.
      choices.layers = null;
      choices.targetDiameter = plainNumber(form.diameter);
    }
  }
  if (form.holdBy === 'target' && form.target.trim() !== '') {
    if (isReading(form.target)) choices.target = form.target.trim();
    else faults.target = 'notReading';
  }
  if (form.holdBy !== AS_IN_SHEET && !faults.target) choices.hold = HOLD_WORDS[form.holdBy];
  if (form.tolerance.trim() !== '') {
    const fault = faultOf(form.tolerance, 'tolerance');
    if (fault) faults.tolerance = fault;
    else choices.tolerance = plainNumber(form.tolerance);
  }
  if (form.lowerLayers.trim() !== '') {
    const fault = faultOf(form.lowerLayers, 'lowerLayers');
    if (fault) faults.lowerLayers = fault;
    else choices.lowerLayers = plainNumber(form.lowerLayers);
  }
  if (form.weighting) choices.weighting = form.weighting;
  if (form.perClub) choices.perClub = form.perClub.entries;
  return { choices, faults };
}
