/** The details of one club as pairs of a name and a text, in the order of the bench. */
import type { ClubPlan, Diameter, Estimator } from '../../core/index';
import { BASIS_WORDS, ESTIMATOR_WORDS, sayBreach, sayNote } from '../../words/notes';
import { gramsText, readingText } from '../../words/readings';
import { saySpread } from '../../words/spread';
import { DETAIL, HELD, numberText, SHIFTS, signedText, verdictWord } from '../words';

export type DetailPair = readonly [name: string, text: string];

/** By the estimator that Settings names; where it matters which, with what both give. */
function sizeText({ inches, lowInches, highInches }: Diameter, growth: Estimator): string {
  const both = `${lowInches.toFixed(3)} to ${highInches.toFixed(3)} by both`;
  const by = `${ESTIMATOR_WORDS[growth].toLowerCase()}, as in Settings`;
  const range = highInches - lowInches >= 0.0005 ? ` (${by}; ${both})` : '';
  return `${inches.toFixed(3)} in${range}`;
}

function massText(before: number | undefined, after: number | undefined): string | undefined {
  if (after === undefined) return before === undefined ? undefined : `${numberText(before)} g now`;
  if (before === undefined) return `${numberText(after)} g`;
  return `${numberText(before)} → ${numberText(after)} g (${signedText(after - before)})`;
}

function readingsText({ readingBefore, readingAfter }: ClubPlan): string | undefined {
  if (readingAfter === undefined) return readingBefore === undefined ? undefined : readingText(readingBefore);
  return readingBefore === undefined
    ? readingText(readingAfter)
    : `${readingText(readingBefore)} → ${readingText(readingAfter)}`;
}

/** What moves the whole club tells in its inertia even where the reading hardly shows it. */
const FAR_OFF: ReadonlySet<keyof typeof SHIFTS> = new Set(['cap', 'length'] as const);

function shiftText(club: ClubPlan): string | undefined {
  const { shift } = club;
  if (!shift) return undefined;
  const parts = (Object.keys(SHIFTS) as (keyof typeof SHIFTS)[])
    .filter((part) => Math.abs(shift[part]) >= (FAR_OFF.has(part) ? 0.005 : 0.05))
    .map((part) => `${SHIFTS[part]} ${signedText(shift[part], Math.abs(shift[part]) < 0.05 ? 2 : 1)}`);
  return `${signedText(shift.total)} pt${parts.length > 1 ? `: ${parts.join(', ')}` : ''}`;
}

function heldText(club: ClubPlan): string {
  if (club.hold === 'nothing') return HELD.nothing;
  const reading =
    club.heldReading === undefined
      ? 'not known'
      : `${readingText(club.heldReading)} ± ${numberText(club.tolerancePoints)} pt`;
  return `${HELD[club.hold]}, ${reading}`;
}

function remedyText({ remedy }: ClubPlan): string | undefined {
  if (!remedy) return undefined;
  if (remedy.none === 'withinTolerance') return 'none: within tolerance';
  if (remedy.none === 'belowLeast') return `none: ${gramsText(remedy.exactGrams)} is less than your least`;
  const off = remedy.gripOff ? ', while the grip is off' : '';
  return `${gramsText(remedy.grams)}, ${remedy.way}, ${numberText(remedy.inches)} in from the butt${off}`;
}

function spreadText(club: ClubPlan): string | undefined {
  const word = verdictWord(club.verdict).toLowerCase();
  if (club.spreadPoints === undefined) return `${word} with the grip alone`;
  const causes = club.spreadParts && saySpread(club.spreadParts);
  return `${word} with the grip alone, ± ${numberText(club.spreadPoints)} pt${causes ? `: ${causes}` : ''}`;
}

/** Pairs whose text is known; notes come apart, from `notesOf`. */
export function detailsOf(club: ClubPlan): readonly DetailPair[] {
  const pairs: readonly (readonly [string, string | undefined])[] = [
    [DETAIL.grip_, club.grip?.description ? `${club.item} · ${club.grip.description}` : club.item],
    [DETAIL.reading, readingsText(club)],
    [DETAIL.held, heldText(club)],
    [DETAIL.spread, spreadText(club)],
    [DETAIL.basis, club.basis && BASIS_WORDS[club.basis]],
    [DETAIL.add, remedyText(club)],
    [DETAIL.shift, shiftText(club)],
    [DETAIL.size, club.upper && sizeText(club.upper, club.growth)],
    [DETAIL.lower, club.lower && sizeText(club.lower, club.growth)],
    [DETAIL.grip, massText(club.fittedBeforeGrams, club.fittedAfterGrams)],
    [DETAIL.club, massText(club.massBeforeGrams, club.massAfterGrams)],
    [DETAIL.inertia, club.inertiaChange === undefined ? undefined : `${signedText(club.inertiaChange)} kg·cm²`],
    [DETAIL.tape, club.tapeInches ? `${numberText(club.tapeInches)} in of build-up` : undefined],
  ];
  return pairs.filter((pair): pair is DetailPair => pair[1] !== undefined && pair[1] !== '');
}

/** Notes and broken rules of one club, as sentences. */
export function notesOf(club: ClubPlan): readonly string[] {
  return [...club.notes.map(sayNote), ...club.breaches.map(sayBreach)];
}
