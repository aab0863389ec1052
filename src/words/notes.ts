/** Words of a plan: verdicts, what is known, notes and rules. */
import {
  MOST_LAYERS,
  type Basis,
  type Estimator,
  type Hold,
  type Note,
  type RuleBreach,
  type Verdict,
} from '../core/index';
import { sayIssue } from './issues';
import { countOf, gramsText, readingText, thousandths } from './readings';

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  within: 'Within',
  likely: 'Likely',
  cannotTell: 'Cannot tell',
  out: 'Out',
  notHeld: 'Not held',
  unknown: 'Unknown',
};

export const VERDICT_MEANING: Readonly<Record<Verdict, string>> = {
  within: 'within tolerance by at least its ±',
  likely: 'predicted within tolerance; the ± reaches outside',
  cannotTell: 'predicted outside; the ± reaches inside',
  out: 'outside tolerance by more than its ±',
  notHeld: 'nothing is held for this club',
  unknown: 'too little is known',
};

export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  estimate: 'Estimate',
  weighed: 'Weighed',
  alike: 'Alike',
  bare: 'Bare',
};

export const HOLD_WORDS: Readonly<Record<Hold, string>> = {
  asArrived: 'As it was',
  target: 'Target',
  nothing: 'Nothing',
};

export const ESTIMATOR_WORDS: Readonly<Record<Estimator, string>> = { volume: 'By volume', additive: 'Additive' };

/** One or two sentences for a note. */
export function sayNote(note: Note): string {
  switch (note.note) {
    case 'issue':
      return sayIssue(note.issue);
    case 'noGrip':
      return 'No new grip chosen. Choose one in New grip.';
    case 'ownGrip':
      return 'The client brings the grip, and nothing is known of it: give it a row in Stock and name it in New grip to have reading and mass planned.';
    case 'readingUnknown':
      return 'Its reading as it arrived is not known: put the club on the scale. The change in points and the grams that undo it still hold.';
    case 'heldUnknown':
      return 'Held as it was, but its reading as it arrived is not known. Give a Target reading.';
    case 'massUnknown':
      return 'Club mass is not known, so its change of length or cap is reckoned for a typical club. Weigh it.';
    case 'massContradicts':
      return 'Club mass does not fit the grip that is on it, or the bare mass. Weigh again.';
    case 'oldGripUnknown':
      return 'The old grip’s mass is not known. Give Old grip mass, or strip the club and read it bare.';
    case 'bareMassUnknown':
      return 'Bare mass is not known, so what the cap adds is an estimate. Weigh the stripped club.';
    case 'lengthUnknown':
      return 'Length is not known, so there is no lever for head weight. Give Length.';
    case 'bareContradicts':
      return 'Reading and mass, as it arrived and bare, fit no old grip. Read and weigh again.';
    case 'targetUnknown':
      return 'Hold is Target, but Target reading is blank. Give a reading.';
    case 'looseCore':
      return `Core ${thousandths(note.coreInches)} is loose on a ${thousandths(note.buttInches)} butt and would turn: ${note.layers > MOST_LAYERS ? 'choose another core' : `fit ${countOf(note.layers, 'layer')} or another core`}.`;
    case 'tightCore':
      return `Core ${thousandths(note.coreInches)} on a ${thousandths(note.buttInches)} butt is a tight stretch. Check that it goes on.`;
    case 'overTarget':
      return `Measures ${thousandths(note.inches)} ${note.layers === 0 ? 'without build-up' : `with ${countOf(note.layers, 'layer')}`}, over the target ${thousandths(note.targetInches)}: choose a smaller grip.`;
    case 'tooManyLayers':
      return `Target ${thousandths(note.targetInches)} needs more than ${countOf(note.most, 'layer')}: choose a larger grip.`;
    case 'sizeUnknown':
      return note.targetInches === undefined
        ? 'Size not checked: the butt, or the grip’s core or diameter, is not known.'
        : `Layers for the target ${thousandths(note.targetInches)} cannot be found: the butt, or the grip’s core or diameter, is not known. Measure it, or give Layers.`;
    case 'overLimit':
      return `${gramsText(note.grams)} to add is more than your limit of ${gramsText(note.limitGrams)}. Decide: another grip, another target, or accept it.`;
    case 'offScale':
      return `Reads ${readingText(note.points)}, off the scale (A0 to G9.9). Judge it by the change in points and the mass.`;
    case 'mixedProfiles':
      return `${note.odd === 'round' ? 'Round grip among ribbed' : 'Ribbed grip among round'} ones in the ${note.group}.`;
    case 'stockShort':
      return `Stock is short of ${note.item}: ${note.needed} needed, ${note.onHand} on hand.`;
    case 'duplicateClub':
      return `The same club stands in rows ${rowsText(note.rows)} of Clubs.`;
    case 'taught':
      return `Stripped: its old grip weighed ${gramsText(note.grams)} and balanced at ${note.balanceInches.toFixed(1)} in.`;
  }
}

/** `2, 5 and 9`; of many rows the first few and how many more. */
function rowsText(rows: readonly number[]): string {
  const shown = rows.length > 4 ? rows.slice(0, 3) : rows.slice(0, -1);
  const rest = rows.length - shown.length;
  return `${shown.join(', ')} and ${rest > 1 ? `${rest} more` : String(rows.at(-1))}`;
}

/** What a breach of the rules is, for the Rules column: short, with the limit. */
export function sayBreach(breach: RuleBreach): string {
  switch (breach.rule) {
    case 'crossSection':
      return `Grip ${breach.inches.toFixed(3)} in thick, over 1.75 in`;
    case 'gripLength':
      return `Grip ${breach.inches.toFixed(2)} in long, under 7 in`;
    case 'clubShort':
      return `Club ${breach.inches.toFixed(2)} in, under 18 in`;
    case 'clubLong':
      return `Club ${breach.inches.toFixed(2)} in, over 48 in`;
    case 'clubLong46':
      return `Club ${breach.inches.toFixed(2)} in, over 46 in (local rule)`;
    case 'reverseTaper':
      return `Lower hand ${thousandths(breach.lowerInches)} thicker than upper ${thousandths(breach.upperInches)}: a bulge is not allowed`;
  }
}
