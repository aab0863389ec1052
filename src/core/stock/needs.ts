/** What a job takes from the shelves, by its bench ticket. */
import type { TicketClub } from '../bench/types';
import { exactSum, PER_GRAM, PER_INCH } from '../choose/exact';
import { groupedBy } from '../plan/together';
import { sameWord, sumOf } from './quantity';
import type { JobNeeds, Need } from './types';

const INCHES_PER_YARD = 36;

export interface NeedsAsked {
  readonly job: string;
  readonly due: number | undefined;
  readonly round: number;
  readonly clubs: readonly TicketClub[];
  /** Rows of clubs whose grip the client brings. */
  readonly ownGrips: ReadonlySet<number>;
  /** Which tape is in use for what. */
  readonly buildUpTape: string;
  readonly twoWayTape: string;
}

/**
 * What a job needs: a grip for each club unless the client brings it, tape in yards (to a thousandth, about a millimetre) and weight
 * in grams for the job as a whole, strips, and solvent in millilitres. Weight that is on already from the first time is not needed again.
 */
export function needsOf(asked: NeedsAsked): JobNeeds {
  const { job, due, round, clubs, ownGrips } = asked;
  const bought = clubs.filter(({ row, item }) => item !== '' && !ownGrips.has(row));
  const solventMl = exactSum(
    clubs.map((club) => club.solventMl),
    PER_GRAM,
  );
  return {
    job,
    due,
    round,
    needs: [...gripNeeds(bought), ...tapeNeeds(asked), ...weightNeeds(clubs), ...solventNeed(solventMl)],
    twoWayStrips: clubs.filter(({ tape }) => tape.twoWayInches > 0).length,
  };
}

/** What the ledger calls it: a can is of one kind or another, and no table lists it. */
export const SOLVENT = 'Solvent';

/** None where water or air does it. */
function solventNeed(quantity: number): Need[] {
  return quantity > 0 ? [{ shelf: 'solvent', item: SOLVENT, club: '', quantity }] : [];
}

function gripNeeds(clubs: readonly TicketClub[]): Need[] {
  const groups = groupedBy(clubs, ({ name, item }) => `${sameWord(name)}\n${sameWord(item)}`);
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first ? [{ shelf: 'grip' as const, item: first.item, club: first.name, quantity: group.length }] : [];
  });
}

function tapeNeeds({ clubs, buildUpTape, twoWayTape }: NeedsAsked): Need[] {
  const inches = (lengths: readonly number[]): number => exactSum(lengths, PER_INCH);
  const tapes = [
    { item: buildUpTape, inches: inches(clubs.map(({ tape }) => tape.totalInches)) },
    { item: twoWayTape, inches: inches(clubs.map(({ tape }) => tape.twoWayInches)) },
  ];
  // One tape may serve for both.
  return [...groupedBy(tapes, ({ item }) => sameWord(item)).values()].flatMap((group) => {
    const quantity = sumOf([inches(group.map((tape) => tape.inches)) / INCHES_PER_YARD]);
    return quantity > 0 ? [{ shelf: 'tape' as const, item: group[0]?.item ?? '', club: '', quantity }] : [];
  });
}

function weightNeeds(clubs: readonly TicketClub[]): Need[] {
  const weights = clubs.flatMap(({ weight }) => (weight && weight.when !== 'onAlready' ? [weight] : []));
  return [...groupedBy(weights, ({ way }) => sameWord(way)).values()].map((group) => ({
    shelf: 'weight' as const,
    item: group[0]?.way ?? '',
    club: '',
    quantity: sumOf(group.map(({ grams }) => grams)),
  }));
}
