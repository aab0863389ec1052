/** Words of the bench ticket and the check-in: cautions, the pilot, what to do next, whether a job may be closed. */
import {
  roundTo,
  type BenchTicket,
  type Caution,
  type CautionCode,
  type CheckedClub,
  type CheckIn,
  type Closing,
  type Issue,
  type NextStep,
  type Off,
  type PilotWhy,
  type Predicted,
  type Solvent,
  type TakeOff,
  type TicketClub,
  type TicketWeight,
} from '../core/index';
import { sayIssue } from './issues';
import { listed } from './listed';
import { countOf, gramsText, readingText, signed } from './readings';

/* ---------------------------------------------------------------- cautions */

/** Flash points from the NIOSH Pocket Guide to Chemical Hazards: Stoddard solvent (mineral spirits), isopropyl alcohol (53 °F). */
const FLASH: Readonly<Record<Solvent, string>> = {
  mineralSpirits: 'mineral spirits flash at about 40 °C',
  isopropylAlcohol: 'isopropyl alcohol flashes at about 12 °C',
};

/**
 * Means over a shift in the air one breathes. OSHA: 29 CFR 1910.1000 Table Z-1 (Stoddard solvent 500 ppm, isopropyl alcohol 400 ppm);
 * NIOSH's recommended limit for Stoddard solvent as on OSHA's page of it (350 mg/m³).
 */
const AIR_LIMIT: Readonly<Record<Solvent, string>> = {
  mineralSpirits: 'mineral spirits 500 ppm (NIOSH recommends 350 mg/m³)',
  isopropylAlcohol: 'isopropyl alcohol 400 ppm',
};

/** What is known of the solvent in use, or of each where the shop does not say which. */
function ofSolvent(texts: Readonly<Record<Solvent, string>>, solvent: Solvent | undefined): string {
  return solvent ? texts[solvent] : Object.values(texts).join(', ');
}

/**
 * The 30 psi are those of 29 CFR 1910.242(b), which speaks of air used for cleaning. Lead in the air: 50 µg/m³ over eight hours, both by OSHA
 * (29 CFR 1910.1025) and as NIOSH recommends.
 */
const CAUTIONS: Readonly<Record<CautionCode, (caution: Caution) => string>> = {
  solvent: ({ solvent }) =>
    `Solvent is flammable: ${ofSolvent(FLASH, solvent)} (NIOSH Pocket Guide); the safety data sheet of the can rules. No flame or spark, ventilate, wear gloves. Most in the air over a shift: ${ofSolvent(AIR_LIMIT, solvent)} (OSHA, 29 CFR 1910.1000 Table Z-1).`,
  air: () =>
    'Compressed air: wear eye protection. For cleaning it must be under 30 psi, with chips guarded against (29 CFR 1910.242(b)).',
  hookKnife: () => 'Hook knife: cut away from the hand, and never into graphite.',
  graphiteDust: () => 'Cutting a graphite shaft: wear a dust mask, and do not blow the dust about.',
  lead: () =>
    'Lead is toxic: wash your hands after it, keep it from children, dispose of what is left as hazardous waste. Do not sand or heat it: most in the air over a shift is 50 µg/m³ (OSHA, 29 CFR 1910.1025; NIOSH recommends the same).',
};

/** Stands below every list of cautions. */
export const CAUTIONS_FOOT = 'Local codes and the maker’s instructions come first.';

/** A caution; where it is not for every club of the ticket, with those it is for. */
export function sayCaution(caution: Caution, clubs: number): string {
  const sentence = CAUTIONS[caution.code](caution);
  return caution.clubs.length === clubs ? sentence : `${sentence} (${listed(caution.clubs)})`;
}

/* ---------------------------------------------------------------- ticket */

const PILOT: Readonly<Record<PilotWhy, string>> = {
  taught: 'it was stripped and showed what its old grip was, so its prediction is the surest',
  stripped: 'it was read bare already',
  median: 'its reading changes as most of the set’s do',
  first: 'it is the first with the grip that most clubs get',
  only: 'there is no other',
};

/** Why a club is fitted first. */
export function sayPilot(name: string, why: PilotWhy): string {
  const reason = PILOT[why];
  return why === 'only' ? `${name} is the only club.` : `Fit ${name} first and accept it before the rest: ${reason}.`;
}

export const TAKE_OFF_WORDS: Readonly<Record<TakeOff, string>> = {
  salvage: 'Take off whole',
  cutOff: 'Cut off',
  none: 'Off already',
};

const RIB_WORDS: Readonly<Record<NonNullable<TicketClub['align']['rib']>, string>> = {
  under: 'rib under, at 6 o’clock',
  five: 'rib at 5 o’clock',
  seven: 'rib at 7 o’clock',
  unwanted: 'no rib is wanted, and this grip has one: ask',
  lacking: 'a rib is wanted, and this grip has none: ask',
};

/** `Rib under, at 6 o’clock; logo up; right hand`; nothing where there is nothing to mind. */
export function sayAlign({ rib, logo, hand }: TicketClub['align']): string {
  const parts = [
    ...(rib ? [RIB_WORDS[rib]] : []),
    ...(logo ? [`logo ${logo}`] : []),
    ...(hand ? [`${hand} hand`] : []),
  ];
  const text = parts.join('; ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `2 layers of 10.5 in; 1 under the lower hand from 5 in, 5.5 in each; two-way 10.5 in`; `No build-up` where there is none. */
export function sayTape({ layers, stripInches, lowerLayers, lower, twoWayInches }: TicketClub['tape']): string {
  const full = layers > 0 ? [`${countOf(layers, 'layer')} of ${inchesText(stripInches)}`] : [];
  const under = lower
    ? [
        `${lowerLayers} under the lower hand from ${inchesText(lower.startInches)}, ${inchesText(lower.stripInches)} each`,
      ]
    : [];
  const buildUp = [...full, ...under];
  const twoWay = twoWayInches > 0 ? [`two-way ${inchesText(twoWayInches)}`] : ['no two-way'];
  return [...(buildUp.length > 0 ? buildUp : ['No build-up']), ...twoWay].join('; ');
}

const WHEN_WORDS: Readonly<Record<TicketWeight['when'], string>> = {
  gripOff: 'before the grip',
  gripOn: 'after the grip',
  onAlready: 'on already',
};

/** `3.5 g Lead tape, head, 45.3 in from the butt; after the grip`. */
export function sayWeight({ grams, way, end, inches, when }: TicketWeight): string {
  return `${gramsText(grams)} ${way}, ${end}, ${inchesText(inches, 1)} from the butt; ${WHEN_WORDS[when]}`;
}

/** `D2.4 ± 0.3`. */
export function predictedReading({ value, spread }: Predicted): string {
  return `${readingText(value)} ± ${spread.toFixed(1)}`;
}

/** `418.2 ± 2.1 g`. */
export function predictedGrams({ value, spread }: Predicted): string {
  return `${value.toFixed(1)} ± ${spread.toFixed(1)} g`;
}

/** Works whose minutes are not known; undefined where all are. */
export function sayMissingMinutes(missing: readonly string[]): string | undefined {
  if (missing.length === 0) return undefined;
  return `No minutes for ${listed(missing)}: give them in Rates or Weights. Counted as none.`;
}

function inchesText(inches: number, decimals = 2): string {
  return `${roundTo(inches, decimals)} in`;
}

export const TICKET_WORDS = {
  title: 'Bench ticket',
  titleAgain: 'Bench ticket: redo under warranty, nothing is charged',
  isFirst: '(first)',
  tag: (tag: string) => `(tag ${tag})`,
  before: 'Before: reads, weighs',
  bare: 'Bare: reads, weighs',
  after: 'After: reads, weighs',
  job: 'Job',
  customer: 'Customer',
  due: 'Due',
  firstClub: 'First',
  minutes: 'Minutes',
  minutesOf: (total: number, job: number) =>
    job > 0 ? `${roundTo(total, 1)}, of which ${roundTo(job, 1)} for the job as a whole` : String(roundTo(total, 1)),
  buttWeight: (grams: number, leaves: boolean) =>
    `butt weight of ${gramsText(grams)} ${leaves ? 'goes with it' : 'stays in'}`,
  length: (inches: number) => `${inches > 0 ? 'extend' : 'trim'} ${inchesText(Math.abs(inches))}`,
  left: (names: readonly string[]) => `No grip chosen, left as they are: ${listed(names)}.`,
  unplanned: (name: string, issues: readonly Issue[]) => `${name} is not planned: ${issues.map(sayIssue).join(' ')}`,
  damaged: (seen: readonly string[]) => `Seen when it came in: ${seen.join('; ')}.`,
  cautions: 'Mind',
} as const;

/** What a job uses up, a line each. */
export function usedUpLines({ grips, consumables }: Pick<BenchTicket, 'grips' | 'consumables'>): string[] {
  const { buildUpInches, twoWayInches, solventMl, weights } = consumables;
  const tape = [
    ...(buildUpInches > 0 ? [`build-up tape ${inchesText(buildUpInches, 1)}`] : []),
    ...(twoWayInches > 0 ? [`two-way tape ${inchesText(twoWayInches, 1)}`] : []),
    ...(solventMl > 0 ? [`solvent ${roundTo(solventMl, 0)} ml`] : []),
    ...weights.map(({ way, grams, clubs }) => `${way} ${gramsText(grams)} on ${countOf(clubs, 'club')}`),
  ];
  const line = tape.join('; ');
  return [
    `Grips: ${grips.map(({ item, pieces }) => `${pieces} × ${item}`).join(', ')}.`,
    ...(line ? [`${line.charAt(0).toUpperCase()}${line.slice(1)}.`] : []),
  ];
}

/* ---------------------------------------------------------------- check-in */

/** What is wrong with a row, then what to do about its club, in one cell. */
export function nextText(steps: readonly NextStep[], wrong: readonly Issue[]): string {
  return [...wrong.map(sayIssue), ...steps.map((step, at) => (at > 0 ? sayThen(step) : sayNext(step)))].join(' ');
}

/** A step that comes after another one: weight is moved only where what was looked at first was not it. */
function sayThen(step: NextStep): string {
  const text = sayNext(step);
  if (step.step !== 'add' && step.step !== 'takeAway') return text;
  return `If that was not it: ${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}

/** What is wrong with a club's row and what to do about the club; where nothing is left to do but to decide, that. */
export function clubNext(club: Pick<CheckedClub, 'next' | 'state' | 'verdict'>, wrong: readonly Issue[]): string {
  const text = nextText(club.next, wrong);
  if (text !== '' || club.state !== 'open') return text;
  if (club.verdict === 'out') {
    return 'It is out of tolerance, and none of your weights puts it right: waive it with a reason.';
  }
  return club.verdict === 'unknown'
    ? 'What it is to read is not known: accept it, or waive it with a reason.'
    : 'The ± of the scale leaves it open whether it is within its tolerance: accept it, or waive it with a reason.';
}

export const STATE_WORDS: Readonly<Record<CheckedClub['state'], string>> = {
  open: 'Open',
  accepted: 'Accepted',
  waived: 'Waived',
};

/** `0.6 pt more than predicted (± 0.4)`. */
export function sayOff({ by, spread, surprising }: Off, unit: 'pt' | 'g'): string {
  if (!surprising) return `as predicted (± ${spread.toFixed(1)} ${unit})`;
  return `${Math.abs(by).toFixed(1)} ${unit} ${by > 0 ? 'more' : 'less'} than predicted (± ${spread.toFixed(1)})`;
}

/** What to do next about a club. */
export function sayNext(step: NextStep): string {
  switch (step.step) {
    case 'measure':
      return `${step.reading && step.mass ? 'Read and weigh' : step.reading ? 'Read' : 'Weigh'} the finished club.`;
    case 'replan':
      return 'Bare it is not what the plan took it for: its old grip was another. Put the bare reading and mass in Clubs and plan it again before weight goes on.';
    case 'seatGrip':
      return `Reads ${signed(step.points, 1)} pt, and its mass is right: it may be ${sixteenths(step.inches)} too long. See that the grip is pushed home and has not slipped.`;
    case 'readAgain':
      return `Reads ${signed(step.points, 1)} pt off: level the scale, seat the club against its stop and read again.`;
    case 'checkGrip':
      return `${heavier(step.grams)} at the grip: check item, layers and strip, and ${step.grams > 0 ? 'whether the solvent has dried' : 'whether a butt weight was left out'}.`;
    case 'checkWeight':
      return `${heavier(step.grams)} at the head: check the weight that was put on.`;
    case 'weighAgain':
      return `${heavier(step.grams)}, and the reading does not say where: weigh and read again.`;
    case 'add':
      return `Add ${gramsText(step.grams)}, ${step.way}, ${inchesText(step.inches, 1)} from the butt. ${WEIGHT_ON}`;
    case 'takeAway':
      return `Take ${gramsText(step.grams)} of ${step.way} off again, ${inchesText(step.inches, 1)} from the butt. ${WEIGHT_ON}`;
    case 'gripOffNeeded':
      return `${gramsText(step.grams)} of ${step.way} would have to ${step.takeAway ? 'come out' : 'go in'}, with the grip off. Take the grip off, choose another way of weighting, or waive the club with a reason.`;
  }
}

/** What is on by now is what the next judging goes by. */
const WEIGHT_ON = 'Then correct Weight on and Weight at in Checkin, and read and weigh again.';

function heavier(grams: number): string {
  return `${gramsText(Math.abs(grams))} ${grams > 0 ? 'too heavy' : 'too light'}`;
}

/** What a club rule shows: `3/16 in`, `1 1/4 in`; `less than 1/16 in`. */
function sixteenths(inches: number): string {
  const all = Math.round(inches * 16);
  if (all < 1) return 'less than 1/16 in';
  const whole = Math.floor(all / 16);
  let part = all % 16;
  let of = 16;
  while (part > 0 && part % 2 === 0) {
    part /= 2;
    of /= 2;
  }
  return `${[...(whole > 0 ? [String(whole)] : []), ...(part > 0 ? [`${part}/${of}`] : [])].join(' ')} in`;
}

/** Stands beside the other clubs while the pilot is open; undefined once it is accepted. */
export function sayWait({ waitForPilot, pilot, clubs }: CheckIn): string | undefined {
  const name = clubs.find(({ row }) => row === pilot?.row)?.name;
  if (!waitForPilot || name === undefined || clubs.length === 1) return undefined;
  return `Accept ${name} before the rest are fitted.`;
}

/** Whether a job may be closed, and what stands against it. */
export function sayClosing({ closes, open, issues }: Closing): string {
  if (closes) return 'Every club is accepted or waived: the job can be closed.';
  const parts = [
    ...(open.length > 0 ? [`Still open: ${listed(open.map(({ name }) => name))}.`] : []),
    ...issues.map(sayIssue),
  ];
  return parts.length > 0 ? parts.join(' ') : 'No club of this job gets a grip, so there is nothing to close.';
}
