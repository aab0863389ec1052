/** The ticket that goes to the bench with a job. */
import { exactSum, PER_GRAM, PER_INCH } from '../choose/exact';
import { massFrom, newFitted } from '../plan/oldGrip';
import { groupedBy } from '../plan/together';
import type { Club, ClubPlan, PlanInput, SetPlan } from '../plan/types';
import { expectedOf, shelfOf, type Shelf } from './expected';
import { benchMinutes, type TimedClub } from './minutes';
import { isGripped, pilotOf, unplannable } from './pilot';
import type {
  BenchAsk,
  BenchHabits,
  BenchTicket,
  ClubBench,
  Consumables,
  TicketClub,
  TicketTape,
  TakeOff,
  TicketWeight,
} from './types';

/** A gripped club with what the plan was made from. */
interface Piece extends TimedClub {
  readonly club: Club;
  readonly bench: ClubBench;
  readonly isAgain: boolean;
  /** How the old grip came off or will: what the bench took off ahead of the others, to read the club bare, belongs to the job too. */
  readonly timedOff: TakeOff;
}

/**
 * The bench ticket of a planned job: the pilot club first, the rest in the order of the sheet. Of clubs that are done again, weight and
 * length are as the first time left them, and the grip that comes off is the one that was fitted then.
 *
 * @param plan the set as planned
 * @param input what it was planned from; inches, grams, points
 * @param ask how the bench works, what the plan does not say of single clubs, and the minutes in Rates and Weights
 * @returns what to do to each club, what it is to read and weigh, what the job uses up, and how long it takes
 */
export function benchTicket(plan: SetPlan, input: PlanInput, ask: BenchAsk): BenchTicket {
  const { habits } = ask;
  const isAgain = ask.again !== undefined;
  const pilot = isAgain ? undefined : pilotOf(plan);
  const pieces = inBenchOrder(piecesOf(plan, input, ask), pilot?.row);
  const { byRow, job, missing } = benchMinutes(pieces.map(timed), ask.rates, ask.ways);
  const shelf = shelfOf(input);
  const clubs = pieces.map((piece, at) => ({
    ...ticketClub(piece, shelf, habits),
    order: at + 1,
    pilot: piece.plan.row === pilot?.row,
    minutes: byRow.get(piece.plan.row) ?? 0,
  }));
  const minutes = exactSum(
    clubs.map((club) => club.minutes),
    PER_GRAM,
  );
  return {
    habits,
    isAgain,
    clubs,
    pilot,
    left: isAgain
      ? []
      : plan.clubs
          .filter((club) => !isGripped(club) && club.item === undefined)
          .map(({ row, name }) => ({ row, name })),
    unplanned: isAgain ? [] : unplannable(plan),
    grips: gripsOf(clubs.filter(({ ownGrip }) => !ownGrip).sort((one, other) => one.row - other.row)),
    consumables: consumablesOf(clubs),
    minutes: { clubs: minutes, job, total: exactSum([minutes, job], PER_GRAM), missing },
  };
}

function gripsOf(clubs: readonly { readonly item: string }[]): BenchTicket['grips'] {
  const groups = [...groupedBy(clubs, ({ item }) => item.toLowerCase()).values()];
  return groups.flatMap((group) => (group[0] ? [{ item: group[0].item, pieces: group.length }] : []));
}

function piecesOf(plan: SetPlan, input: PlanInput, { habits, clubs, again }: BenchAsk): Piece[] {
  const byRow = new Map(input.clubs.map((club) => [club.row, club]));
  return plan.clubs.flatMap((planned) => {
    const club = byRow.get(planned.row);
    if (!club || !isGripped(planned) || again?.has(planned.row) === false) return [];
    const bench = clubs?.get(planned.row) ?? {};
    const isAgain = again !== undefined;
    const charged = bench.takeOff ?? habits.takeOff;
    const first = bench.takeOff ?? (isOff(club) ? 'none' : habits.takeOff);
    const lengthChanged = !isAgain && club.lengthChangeInches !== 0;
    const takeOff = isAgain ? habits.takeOff : first;
    const timedOff = isAgain ? takeOff : charged;
    const ownGrip = bench.ownGrip === true || planned.ownGrip === true;
    return [{ plan: planned, club, bench, takeOff, timedOff, lengthChanged, ownGrip, isAgain }];
  });
}

/** Weight that is on already takes no time. */
function timed({ plan, timedOff: takeOff, lengthChanged, isAgain, ownGrip }: Piece): TimedClub {
  return { plan: isAgain ? { ...plan, remedy: undefined } : plan, takeOff, lengthChanged, ownGrip };
}

/** A club that was read bare, or whose own old grip was weighed, has it off already. */
function isOff(club: Club): boolean {
  return club.bareReading !== undefined || massFrom(club) === 'weighed';
}

function inBenchOrder(pieces: readonly Piece[], pilotRow: number | undefined): readonly Piece[] {
  const isPilot = ({ plan }: Piece): boolean => plan.row === pilotRow;
  return [...pieces.filter(isPilot), ...pieces.filter((piece) => !isPilot(piece))];
}

function ticketClub(piece: Piece, shelf: Shelf, habits: BenchHabits): Omit<TicketClub, 'order' | 'pilot' | 'minutes'> {
  const { plan, club, bench, takeOff, isAgain } = piece;
  return {
    row: plan.row,
    name: plan.name,
    kind: plan.kind,
    item: plan.item ?? '',
    ownGrip: piece.ownGrip,
    takeOff,
    buttWeight: isAgain ? undefined : buttWeightOf(club),
    tape: tapeOf(plan, club, shelf),
    align: { rib: ribOf(plan.grip, bench.rib), logo: bench.logo, hand: bench.hand },
    shaft: bench.shaft,
    tag: bench.tag,
    damage: bench.damage,
    lengthChangeInches: isAgain ? 0 : club.lengthChangeInches,
    plugGrams: isAgain ? 0 : club.plugGrams,
    lengthAfterInches: plan.lengthAfterInches,
    weight: weightOf(plan, habits, isAgain),
    hold: plan.hold,
    heldReading: plan.heldReading,
    tolerancePoints: plan.tolerancePoints,
    expected: expectedOf(plan, club, shelf),
    measure: {
      before: club.reading === undefined || club.massGrams === undefined,
      bare: club.bareReading === undefined || club.bareGrams === undefined,
    },
    solventMl: solventOf(plan, takeOff, habits),
    breaches: plan.breaches,
  };
}

function tapeOf(plan: ClubPlan, club: Club, { settings }: Shelf): TicketTape {
  const stripInches = plan.grip ? newFitted(plan.grip, plan.layers, settings).tapedInches : settings.tapedInches;
  const startInches = settings.lowerTapeStartInches;
  const run = Math.max(0, stripInches - startInches);
  return {
    layers: plan.layers,
    stripInches,
    lowerLayers: club.lowerLayers,
    lower: club.lowerLayers > 0 && run > 0 ? { startInches, stripInches: run } : undefined,
    totalInches: plan.tapeInches,
    twoWayInches: plan.twoWayInches,
  };
}

function weightOf({ remedy }: ClubPlan, habits: BenchHabits, isAgain: boolean): TicketWeight | undefined {
  if (!remedy || remedy.grams <= 0) return undefined;
  const { grams, way, end, inches, gripOff, overLimit } = remedy;
  const when = isAgain ? 'onAlready' : gripOff ? 'gripOff' : 'gripOn';
  return { grams, way, end, inches, when, overLimit, lead: isLead(way, habits) };
}

function buttWeightOf({ buttWeightGrams: grams, buttWeightLeaves: leaves }: Club): TicketClub['buttWeight'] {
  return grams > 0 ? { grams, leaves } : undefined;
}

/** Whether a grip that nobody listed has a rib, the bench sees. */
function ribOf(grip: ClubPlan['grip'], wanted: ClubBench['rib']): TicketClub['align']['rib'] {
  if (!grip) return wanted === 'none' ? undefined : wanted;
  if (grip.profile !== 'ribbed') return wanted === undefined || wanted === 'none' ? undefined : 'lacking';
  return wanted === 'none' ? 'unwanted' : (wanted ?? 'under');
}

/** Whether a way of weighting is lead: as the shop says, else by its name. */
export function isLead(way: string, { leadWays }: Pick<BenchHabits, 'leadWays'>): boolean {
  if (!leadWays) return /\blead\b/i.test(way);
  return leadWays.some((name) => name.toLowerCase() === way.toLowerCase());
}

/** Sliding on needs it only over two-way tape that solvent activates; taking off whole needs it where no air is used. */
function solventOf(plan: ClubPlan, takeOff: TicketClub['takeOff'], habits: BenchHabits): number {
  const on = habits.activator === 'solvent' && plan.twoWayInches > 0 ? habits.solventMl : 0;
  const off = takeOff === 'salvage' && habits.salvageWith === 'solvent' ? habits.salvageMl : 0;
  return on + off;
}

function consumablesOf(clubs: readonly TicketClub[]): Consumables {
  const weights = clubs.flatMap(({ weight }) => (weight && weight.when !== 'onAlready' ? [weight] : []));
  return {
    buildUpInches: exactSum(
      clubs.map(({ tape }) => tape.totalInches),
      PER_INCH,
    ),
    twoWayInches: exactSum(
      clubs.map(({ tape }) => tape.twoWayInches),
      PER_INCH,
    ),
    solventMl: exactSum(
      clubs.map(({ solventMl }) => solventMl),
      PER_GRAM,
    ),
    weights: [...groupedBy(weights, ({ way }) => way)].map(([way, list]) => ({
      way,
      grams: exactSum(
        list.map(({ grams }) => grams),
        PER_GRAM,
      ),
      clubs: list.length,
    })),
  };
}
