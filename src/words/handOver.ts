/** Words of what goes back to the customer with the clubs: labels and the pick-up slip. */
import type { CheckedClub, ClubPlan, Predicted } from '../core/index';
import { predictedReading } from './bench';
import { countOf, readingText } from './readings';

/** The item; of a grip that the client brings, that it is theirs. */
export function gripName({ item, ownGrip }: Pick<ClubPlan, 'item' | 'ownGrip'>): string {
  return [item, ownGrip ? 'client’s own' : undefined].filter(Boolean).join(', ');
}

/** `TB-S60, 2 layers`; the layers under the lower hand apart. */
export function gripText(plan: Pick<ClubPlan, 'item' | 'ownGrip' | 'layers' | 'lowerLayers'>): string {
  const { layers, lowerLayers } = plan;
  const lower = lowerLayers > 0 ? `, ${lowerLayers} more under the lower hand` : '';
  return `${gripName(plan)}, ${layers > 0 ? countOf(layers, 'layer') : 'no build-up'}${lower}`;
}

/** What was measured where it was, else what was predicted; undefined where neither is known. */
export function readsText(measured: number | undefined, predicted: Predicted | undefined): string | undefined {
  if (measured !== undefined) return `Reads ${readingText(measured)}`;
  return predicted && `To read ${predictedReading(predicted)}`;
}

export const LABEL_WORDS = {
  job: (job: string, customer: string) => (customer ? `Job ${job}, ${customer}` : `Job ${job}`),
} as const;

export const SLIP_WORDS = {
  title: 'Pick-up slip',
  titleAgain: 'Pick-up slip: redo under warranty, nothing is charged',
  job: 'Job',
  customer: 'Customer',
  club: 'Club',
  grip: 'New grip',
  layers: 'Layers',
  reads: 'Reads',
  weighs: 'Weighs (g)',
  note: 'Note',
  notRead: 'not read',
  oldGrips: (clubs: readonly string[]) => `Old grips taken off whole, to go back with the clubs: ${clubs.join(', ')}.`,
  care: 'Care',
  received: 'Clubs received, name and date:',
} as const;

/** How a club stands, for the person it belongs to; the shop’s own reasons stay with the shop. */
export function sayHandedOver({ state, verdict }: Pick<CheckedClub, 'state' | 'verdict'>): string | null {
  if (state === 'open') return 'not accepted yet';
  return state === 'waived' && verdict === 'out' ? 'outside the tolerance, as agreed' : null;
}

export interface Care {
  readonly cureHours: number;
  readonly remindMonths: number;
  /** Lead was put on a club. */
  readonly hasLead: boolean;
}

/**
 * What to know about new grips. Hours, washing and wear: common practice, no source. Pain is a clinician’s: what is sized here treats nobody.
 */
export function careLines({ cureHours, remindMonths, hasLead }: Care): string[] {
  return [
    ...(cureHours > 0 ? [`Let the grips cure for ${countOf(cureHours, 'hour')} before you play.`] : []),
    'Wash them with warm water, mild soap and a soft brush, rinse and dry; no solvent. Keep them out of a hot car.',
    `Grips that are shiny, hard or cracked are worn: with regular play look again after ${countOf(remindMonths, 'month')}.`,
    ...(hasLead
      ? ['There is lead tape on these clubs: wash your hands after touching it, and keep it from children.']
      : []),
    'Pain in a hand or an elbow is for a clinician: a grip is sized, it treats nobody.',
    'Hours, washing and wear go by common practice; the maker’s instructions come first.',
  ];
}
