/**
 * The worksheet functions, as a cell calls them: check the cells, ask the core, hand back the value or an error with a sentence.
 *
 * This file is also what the metadata generator reads: it takes `unknown` for a value that Excel is to pass on unchecked (a declared
 * number would make Excel answer a bare error before our sentence is reached), follows no alias and no re-export, and shows the text
 * above the first tag as the function's description. IDs never change and arguments are only appended: workbooks hold them.
 * Each function is an error with a sentence where a cell is no good: `#VALUE!` for bad input, `#N/A` where a sound question has no
 * answer. Arguments are inches and grams; on a metric sheet wrap them in CONVERT.
 */
import * as core from '../core/index';
import { sayBreach } from '../words/notes';
import { thousandths } from '../words/readings';
import { assign } from '../workbook/assignment';
import { placeCells } from '../workbook/placeCells';
import { planCells } from '../workbook/planCells';
import { planTables, type TablesIn } from '../workbook/planTables';
import { readSizes } from '../workbook/readSizes';
import { setMinutes as minutesOfSet } from '../workbook/setMinutes';
import { CLUB_KINDS, CLUBS, RATES, SIZES, STOCK, TAPE, WEIGHTS } from '../workbook/schema';
import { answer, cellError } from './cellError';
import * as cell from './cellInput';
import { growthOf } from './growth';
import { lineFrom } from './lineInput';
import { clubTable, listsIn, optionalTable, table } from './tableInput';
import { weighedGrips } from './weighedInput';

/**
 * Mass in grams of one layer of tape laid lengthwise; 1.76 g when nothing is given.
 *
 * @remarks Formula: taped length × strip width × mass per area. Source: geometry; 130 g/m² is from memory, so weigh ten strips.
 * @customfunction TAPEGRAMS
 * @param [tapedInches] How far the tape runs along the shaft, in, 3 to 24; 10.5 if blank.
 * @param [stripInches] Width of the strip, in, 0.25 to 4; 2 if blank.
 * @param [gsm] Mass per area of the tape, g/m², 40 to 600; 130 if blank.
 * @returns Grams.
 * @throws `#VALUE!` for anything but a number in range.
 * @example tapeGrams() //=> 1.7613
 */
export function tapeGrams(tapedInches?: unknown, stripInches?: unknown, gsm?: unknown): number {
  return core.tapeGrams(
    cell.numberOr(tapedInches, core.TAPED_LENGTH.value, 'tapedInches', core.TAPED_LENGTH),
    cell.numberOr(stripInches, core.STRIP_WIDTH.value, 'stripInches', core.RANGES.stripInches),
    cell.numberOr(gsm, core.TAPE_GSM.value, 'gsm', core.RANGES.gsm),
  );
}

/**
 * Mass in grams of a grip and its build-up tape as fitted.
 *
 * @remarks Formula: grip + layers × layer. Source: addition; the strip that holds the grip is counted apart.
 * @customfunction GRIPMASS
 * @param gripGrams Mass of the loose grip, g, 15 to 220.
 * @param layers Build-up layers under it, 0 to 12.
 * @param [layerGrams] Mass of one layer, g, 0.1 to 20; 1.76 if blank.
 * @returns Grams.
 * @throws `#VALUE!` for anything but a number in range.
 * @example gripMass(50, 2) //=> 53.5226
 */
export function gripMass(gripGrams: unknown, layers: unknown, layerGrams?: unknown): number {
  return core.fittedGrams(
    cell.number(gripGrams, 'gripGrams', core.RANGES.gripGrams),
    cell.count(layers, 'layers', core.RANGES.layers),
    cell.optionalNumber(layerGrams, 'layerGrams', core.RANGES.layerGrams),
  );
}

/**
 * Points by which a mass in grams moves the reading: fewer at the grip, more at the head.
 *
 * @remarks Formula: m (x − 14) / P. Source: moments about the fulcrum at 14 in; one point P is 1.75 oz·in.
 * @customfunction MASSPOINTS
 * @param grams Mass put on, g; negative where it is taken off.
 * @param positionInches Where it sits, in from the cap, 0 to 60.
 * @returns Points.
 * @throws `#VALUE!` for anything but a number in range.
 * @example massPoints(5, 4.2) //=> -0.9877
 */
export function massPoints(grams: unknown, positionInches: unknown): number {
  return core.massPoints(
    cell.number(grams, 'grams', core.RANGES.anyGrams),
    cell.number(positionInches, 'positionInches', core.RANGES.positionInches),
  );
}

/**
 * Points by which another grip and other tape move the reading.
 *
 * @remarks Formula: (m₂ (b₂ − 14) − m₁ (b₁ − 14) + (n₂ − n₁) t (L/2 − 14)) / P. Source: moments; a layer t balances at the middle
 * of its length L.
 * @customfunction BALANCECHANGE
 * @param oldGripGrams Mass of the old grip, g, 15 to 220.
 * @param newGripGrams Mass of the new grip, g, 15 to 220.
 * @param [oldLayers] Build-up layers under the old grip, 0 to 12; none if blank.
 * @param [newLayers] Build-up layers under the new grip, 0 to 12; none if blank.
 * @param [oldBalanceInches] Balance point of the old grip, in from its cap, 1.5 to 12; 4.2 if blank.
 * @param [newBalanceInches] Balance point of the new grip, in from its cap, 1.5 to 12; the old one's if blank.
 * @param [layerGrams] Mass of one layer, g, 0.1 to 20; from the taped length if blank.
 * @param [tapedInches] How far the tape runs along the shaft, in, 3 to 24; 10.5 if blank.
 * @returns Points, negative where the club reads lighter.
 * @throws `#VALUE!` for anything but a number in range.
 * @example balanceChange(50, 60) //=> -1.9753
 */
export function balanceChange(
  oldGripGrams: unknown,
  newGripGrams: unknown,
  oldLayers?: unknown,
  newLayers?: unknown,
  oldBalanceInches?: unknown,
  newBalanceInches?: unknown,
  layerGrams?: unknown,
  tapedInches?: unknown,
): number {
  return core.balanceChange({
    oldGripGrams: cell.number(oldGripGrams, 'oldGripGrams', core.RANGES.gripGrams),
    newGripGrams: cell.number(newGripGrams, 'newGripGrams', core.RANGES.gripGrams),
    oldLayers: cell.countOrNone(oldLayers, 'oldLayers', core.RANGES.layers),
    newLayers: cell.countOrNone(newLayers, 'newLayers', core.RANGES.layers),
    oldBalanceInches: cell.optionalNumber(oldBalanceInches, 'oldBalanceInches', core.RANGES.gripBalanceInches),
    newBalanceInches: cell.optionalNumber(newBalanceInches, 'newBalanceInches', core.RANGES.gripBalanceInches),
    layerGrams: cell.optionalNumber(layerGrams, 'layerGrams', core.RANGES.layerGrams),
    tapedInches: cell.optionalNumber(tapedInches, 'tapedInches', core.TAPED_LENGTH),
  });
}

/**
 * Points by which a thicker cap, an extension or a trim in inches moves the reading.
 *
 * @remarks Formula: (body × added + plug × (x − 14)) / P. Source: moments; the body moves away from the fulcrum.
 * @customfunction LENGTHCHANGE
 * @param bodyGrams Mass of the club without grip and tape, g, 100 to 900.
 * @param addedInches How much longer the club gets, in, −6 to 6; negative for a trim.
 * @param [plugGrams] Mass of the extension, g, −40 to 60; negative for the piece cut off; none if blank.
 * @param [plugInches] Where that mass sits, in from the cap, 0 to 60; 1 if blank.
 * @returns Points.
 * @throws `#VALUE!` for anything but a number in range.
 * @example lengthChange(374, 0.125) //=> 0.9423
 */
export function lengthChange(
  bodyGrams: unknown,
  addedInches: unknown,
  plugGrams?: unknown,
  plugInches?: unknown,
): number {
  return core.lengthPoints(
    cell.number(bodyGrams, 'bodyGrams', core.RANGES.bodyGrams),
    cell.number(addedInches, 'addedInches', core.RANGES.addedInches),
    cell.numberOr(plugGrams, 0, 'plugGrams', core.RANGES.plugGrams),
    cell.numberOr(plugInches, core.BUTT_WEIGHT_INCHES, 'plugInches', core.RANGES.positionInches),
  );
}

/**
 * Grams at the head that undo a change in points; negative where they are to be taken away.
 *
 * @remarks Formula: −change × P / (x − 14). Source: moments.
 * @customfunction COMPENSATION
 * @param changePoints How far the reading moved, points.
 * @param clubInches Play length of the club, in, 18 to 52.
 * @param [weightInches] Where the weight goes, in from the cap, 0 to 60; the club's length if blank, about 2 in less for a tip plug.
 * @returns Grams.
 * @throws `#VALUE!` for anything but a number in range; `#N/A` within half an inch of the fulcrum at 14 in.
 * @example compensation(-2, 45) //=> 3.2008
 */
export function compensation(changePoints: unknown, clubInches: unknown, weightInches?: unknown): number {
  const change = cell.number(changePoints, 'changePoints', core.RANGES.points);
  const length = cell.number(clubInches, 'clubInches', core.RANGES.clubInches);
  return answer(
    core.compensationGrams(change, cell.numberOr(weightInches, length, 'weightInches', core.RANGES.positionInches)),
  );
}

/**
 * Grams in the butt that undo a reading that rose by some points.
 *
 * @remarks Formula: change × P / (14 − x). Source: moments. It changes the number on the scale, not the feel of the head.
 * @customfunction COUNTERWEIGHT
 * @param changePoints How far the reading rose, points.
 * @param [weightInches] Where the weight sits, in from the cap, 0 to 60; 1 if blank.
 * @returns Grams.
 * @throws `#VALUE!` for anything but a number in range; `#N/A` within half an inch of the fulcrum at 14 in.
 * @example counterweight(1) //=> 3.8163
 */
export function counterweight(changePoints: unknown, weightInches?: unknown): number {
  return answer(
    core.counterweightGrams(
      cell.number(changePoints, 'changePoints', core.RANGES.points),
      cell.numberOr(weightInches, core.BUTT_WEIGHT_INCHES, 'weightInches', core.RANGES.positionInches),
    ),
  );
}

/**
 * Swing weight of a club from its mass in grams and its balance point in inches.
 *
 * @remarks Formula: m (b − 14) / P − 92 points above A0. Source: moments; D0 is 213.5 oz·in.
 * @customfunction SWINGWEIGHT
 * @param totalGrams Mass of the whole club, g, 150 to 1000.
 * @param balanceInches Balance point of the whole club, in from the cap, 14 to 45.
 * @returns A reading such as D2.4.
 * @throws `#VALUE!` for anything but a number in range; `#N/A` with the points where the club is off the scale.
 * @example swingWeight(460, 27.21) //=> 'D0.5'
 */
export function swingWeight(totalGrams: unknown, balanceInches: unknown): string {
  const points = core.clubPoints(
    cell.number(totalGrams, 'totalGrams', core.RANGES.clubGrams),
    cell.number(balanceInches, 'balanceInches', core.RANGES.clubBalanceInches),
  );
  return answer(core.formatReading(points));
}

/**
 * Points above A0 of a swing weight reading, ten points to a letter.
 *
 * @remarks Formula: ten times the letter's place from A, plus the number. Source: common practice.
 * @customfunction TOPOINTS
 * @param reading A reading such as D2, d3 or D3,5; a number other than 0 is taken as points already.
 * @returns Points.
 * @throws `#VALUE!` for anything but a reading.
 * @example toPoints('D3') //=> 33
 */
export function toPoints(reading: unknown): number {
  return cell.reading(reading, 'reading');
}

/**
 * Swing weight reading of some points above A0.
 *
 * @remarks Formula: rounded first, then ten points to a letter. Source: common practice.
 * @customfunction TOREADING
 * @param points Points above A0, 0 to 69.9.
 * @param [decimals] Digits after the point, 0 to 4; one if blank.
 * @returns A reading such as D2.4.
 * @throws `#VALUE!` for anything but a number; `#N/A` with the points where they are off the scale.
 * @example toReading(39.96) //=> 'E0.0'
 */
export function toReading(points: unknown, decimals?: unknown): string {
  return answer(
    core.formatReading(cell.number(points, 'points', core.RANGES.points), cell.decimals(decimals, 'decimals')),
  );
}

/**
 * Swing weight reading after a change in points.
 *
 * @remarks Formula: points of the reading, plus the change, as a reading. Source: addition.
 * @customfunction SHIFTREADING
 * @param reading A reading such as D2; a number other than 0 is taken as points above A0.
 * @param changePoints How far it moves, points.
 * @param [decimals] Digits after the point, 0 to 4; one if blank.
 * @returns A reading such as D0.4.
 * @throws `#VALUE!` for anything but a reading and a number; `#N/A` with the points where the result is off the scale.
 * @example shiftReading('D2', -1.6) //=> 'D0.4'
 */
export function shiftReading(reading: unknown, changePoints: unknown, decimals?: unknown): string {
  const points = cell.reading(reading, 'reading') + cell.number(changePoints, 'changePoints', core.RANGES.points);
  return answer(core.formatReading(points, cell.decimals(decimals, 'decimals')));
}

/**
 * Swing weight reading of a bare club once a grip of some grams is on.
 *
 * @remarks Formula: bare reading plus m (x − 14) / P for grip, layers and strip, plus bare mass × cap / P. Source: moments; nothing
 * about the old grip is needed. Tape balances at 5.25 in.
 * @customfunction FITTEDREADING
 * @param bareReading Reading of the club without grip and tape, such as E4; a number other than 0 is taken as points above A0.
 * @param gripGrams Mass of the loose grip, g, 15 to 220.
 * @param layers Build-up layers under it, 0 to 12.
 * @param [gripBalanceInches] Balance point of the grip, in from its cap, 1.5 to 12; 4.2 if blank.
 * @param [layerGrams] Mass of one layer, g, 0.1 to 20; 1.76 if blank.
 * @param [twoWayGrams] Mass of the two-way strip that holds the grip, g, about 1.8; none if blank.
 * @param [capInches] Thickness of the cap, in, 0 to 1, by which the club gets longer; not counted if blank.
 * @param [bareGrams] Mass of the bare club, g, 100 to 900; needed where the cap is counted.
 * @returns A reading such as D2.4.
 * @throws `#VALUE!` for bad input; `#N/A` with the points where the result is off the scale.
 * @example fittedReading('E4', 50, 0) //=> 'D4.1'
 */
export function fittedReading(
  bareReading: unknown,
  gripGrams: unknown,
  layers: unknown,
  gripBalanceInches?: unknown,
  layerGrams?: unknown,
  twoWayGrams?: unknown,
  capInches?: unknown,
  bareGrams?: unknown,
): string {
  const grip = cell.number(gripGrams, 'gripGrams', core.RANGES.gripGrams);
  const tape =
    cell.count(layers, 'layers', core.RANGES.layers) *
      cell.numberOr(layerGrams, core.tapeGrams(), 'layerGrams', core.RANGES.layerGrams) +
    cell.numberOr(twoWayGrams, 0, 'twoWayGrams', core.RANGES.layerGrams);
  const cap = cell.numberOr(capInches, 0, 'capInches', core.RANGES.capInches);
  const body = cap === 0 ? 0 : cell.number(bareGrams, 'bareGrams', core.RANGES.bodyGrams);
  const points =
    cell.reading(bareReading, 'bareReading') +
    core.massPoints(
      grip,
      cell.numberOr(gripBalanceInches, core.GRIP_BALANCE.value, 'gripBalanceInches', core.GRIP_BALANCE),
    ) +
    core.massPoints(tape, core.TAPED_LENGTH.value / 2) +
    core.lengthPoints(body, cap);
  return answer(core.formatReading(points));
}

/**
 * Outside diameter in inches of a grip on a butt, at the gauge point 2 in below the cap.
 *
 * @remarks Formula: √((D² − d²)/λ + s²) by volume, √((D² − d²)/λ + d²) + (s − d) additive, on a seat s = butt + .010 a layer.
 * Source: volume of a tube; D. Eagar, "Grip Sizing", 2009.
 * @customfunction OUTSIDEDIAMETER
 * @param gripInches Outside diameter of the grip on a butt of its own core size, in, 0.6 to 2.5.
 * @param coreInches Core size of the grip, in, 0.5 to 0.75.
 * @param buttInches Diameter of the bare butt, in, 0.45 to 0.75.
 * @param [layers] Build-up layers, 0 to 12; none if blank.
 * @param [stretch] Length as fitted over its own length, 0.8 to 1.3; 1 if blank.
 * @param [growth] 1: additive, the high estimate; blank: by volume, the low one.
 * @returns Inches.
 * @throws `#VALUE!` for bad input; `#N/A` with the layers that fill it where the core is loose on the seat.
 * @example outsideDiameter(0.9, 0.58, 0.6) //=> 0.913
 */
export function outsideDiameter(
  gripInches: unknown,
  coreInches: unknown,
  buttInches: unknown,
  layers?: unknown,
  stretch?: unknown,
  growth?: unknown,
): number {
  const counted = cell.countOrNone(layers, 'layers', core.RANGES.layers);
  const seating = {
    gripInches: cell.number(gripInches, 'gripInches', core.RANGES.diameterInches),
    coreInches: cell.number(coreInches, 'coreInches', core.RANGES.coreInches),
    seatInches: core.seatInches(cell.number(buttInches, 'buttInches', core.RANGES.buttInches), counted),
    stretch: cell.numberOr(stretch, 1, 'stretch', core.RANGES.stretch),
  };
  return answer(core.outsideDiameter(growthOf(growth), seating, counted));
}

/**
 * Whole layers of build-up tape that bring a grip nearest to an outside diameter in inches.
 *
 * @remarks Formula: the nearest of OUTSIDEDIAMETER over 0 to 12 layers, never fewer than fill the core; of two equally near, the
 * larger. Source: common practice.
 * @customfunction TAPELAYERS
 * @param gripInches Outside diameter of the grip on a butt of its own core size, in, 0.6 to 2.5.
 * @param coreInches Core size of the grip, in, 0.5 to 0.75.
 * @param buttInches Diameter of the bare butt, in, 0.45 to 0.75.
 * @param targetInches Outside diameter wanted, in, 0.6 to 2.5.
 * @param [growth] 1: additive, the high estimate; blank: by volume, the low one.
 * @returns Layers.
 * @throws `#VALUE!` for bad input; `#N/A` where the fewest layers measure more than the target, or twelve less.
 * @example tapeLayers(0.9, 0.6, 0.6, 0.92, 1) //=> 2
 */
export function tapeLayers(
  gripInches: unknown,
  coreInches: unknown,
  buttInches: unknown,
  targetInches: unknown,
  growth?: unknown,
): number {
  const target = cell.number(targetInches, 'targetInches', core.RANGES.diameterInches);
  const found = answer(
    core.nearestLayers({
      gripInches: cell.number(gripInches, 'gripInches', core.RANGES.diameterInches),
      coreInches: cell.number(coreInches, 'coreInches', core.RANGES.coreInches),
      buttInches: cell.number(buttInches, 'buttInches', core.RANGES.buttInches),
      targetInches: target,
      growth: growthOf(growth),
    }),
  );
  if (found.over)
    throw cellError({
      code: 'overTarget',
      field: 'targetInches',
      got: found.inches,
      detail: found.layers,
      expected: thousandths(target),
    });
  return found.layers;
}

/**
 * Outside diameter in inches that a hand starts from, 2 in below the cap; a starting point, which a sample grip corrects.
 *
 * @remarks Formula: linear between the rows of the guide by hand length and by finger, the mean of both; held at its ends.
 * Source: common practice; there is no standard. Pain in a hand is for a clinician.
 * @customfunction TARGETDIAMETER
 * @param handInches Hand from the wrist crease to the tip of the middle finger, in, 5 to 10.
 * @param [fingerInches] Middle finger from its crease at the palm, in, 2 to 5; hand length alone counts if blank.
 * @param [guide] Sizes with its header row, such as Sizes[#All]; the usual guide if blank.
 * @returns Inches.
 * @throws `#VALUE!` for bad input, millimetres and centimetres among it, and for a row of the guide that cannot be used.
 * @example targetDiameter(7.6, 3.2) //=> 0.9
 */
export function targetDiameter(handInches: unknown, fingerInches?: unknown, guide?: unknown[][]): number {
  const handLength = cell.measured(handInches, 'handInches', core.RANGES.handInches);
  const finger = cell.optionalMeasured(fingerInches, 'fingerInches', core.RANGES.fingerInches);
  const sizes = answer(readSizes(optionalTable(guide, SIZES)));
  const [problem] = sizes.problems; // one number has no place for a note
  if (problem) throw cellError(problem);
  return answer(core.startDiameter(sizes.guide, { handInches: handLength, fingerInches: finger })).inches;
}

/**
 * Inertia about the butt, in kg·cm², that a mass in grams adds.
 *
 * @remarks Formula: m x². Source: definition; 1 g·in² is 0.0064516 kg·cm².
 * @customfunction INERTIACHANGE
 * @param grams Mass put on, g; negative where it is taken off.
 * @param positionInches Where it sits, in from the cap, 0 to 60.
 * @returns kg·cm².
 * @throws `#VALUE!` for anything but a number in range.
 * @example inertiaChange(10, 4.2) //=> 1.1381
 */
export function inertiaChange(grams: unknown, positionInches: unknown): number {
  return core.massInertia(
    cell.number(grams, 'grams', core.RANGES.anyGrams),
    cell.number(positionInches, 'positionInches', core.RANGES.positionInches),
  );
}

/** A club that breaks the rules on length must be let in to be told so. */
const lengthToCheck = { low: 5, high: 100, unit: 'in' };

/**
 * OK, or which rules on grips and length in inches a club breaks; it warns, and a committee or the ruling body decides.
 *
 * @remarks Formula: grip at most 1.75 in thick and at least 7 in long, club at least 18 in and, but for putters, at most 48 in.
 * Source: R&A / USGA Equipment Rules, effective 1 January 2019, Part 2 section 3, and the length of clubs.
 * @customfunction RULECHECK
 * @param gripInches Largest outside diameter of the grip, in, 0.6 to 2.5.
 * @param gripLengthInches Length of the grip, in, 3 to 24.
 * @param clubInches Play length of the club, in.
 * @param [kind] Kind of club: Driver, Wood, Hybrid, Iron, Wedge, Putter or Junior; a putter may be longer than 48 in.
 * @returns OK, or what breaks which limit.
 * @throws `#VALUE!` for bad input.
 * @example ruleCheck(1.0, 10.5, 45) //=> 'OK'
 */
export function ruleCheck(gripInches: unknown, gripLengthInches: unknown, clubInches: unknown, kind?: unknown): string {
  const breaches = core.ruleBreaches({
    upperInches: cell.number(gripInches, 'gripInches', core.RANGES.diameterInches),
    gripLengthInches: cell.number(gripLengthInches, 'gripLengthInches', core.RANGES.gripLengthInches),
    clubInches: cell.number(clubInches, 'clubInches', lengthToCheck),
    putter: cell.optionalChoice(kind, 'kind', CLUB_KINDS) === 'Putter',
  });
  return breaches.map(sayBreach).join('; ') || 'OK';
}

/**
 * Plan for a whole set in grams, inches and points: a header row, then a row for each club.
 *
 * @remarks Formulas: those of the single functions, and what puts each club right. Source: as for these; moments. What cannot be read
 * in a row is noted in that row and the rest is planned. Notes count rows from the header row, which is 1.
 * @customfunction SETPLAN
 * @param clubs Clubs with their header row, such as Clubs[#All].
 * @param [stock] Stock with its header row; without it no new grip is known.
 * @param [settings] Settings with their header row; the usual ones if blank.
 * @param [weights] Weights with their header row: the ways of putting weight on; the usual ones if blank.
 * @param [tape] Tape with its header row; the usual tapes if blank.
 * @param [job] Which job to plan; every row of clubs if blank.
 * @param [headings] Headings with its header row, where lists of your own are connected; leave it out where none is.
 * @returns A header row and a row for each club.
 * @throws `#VALUE!` where a column that is needed is missing; `#N/A` where there is no club to plan.
 * @example setPlan([['Club', 'New grip'], ['7 iron', 'R1']], [['Item', 'Core (in)', 'Mass (g)'], ['R1', 0.6, 50]]) //=> two rows
 */
export function setPlan(
  clubs: unknown[][],
  stock?: unknown[][],
  settings?: unknown[][],
  weights?: unknown[][],
  tape?: unknown[][],
  job?: unknown,
  headings?: unknown[][],
): unknown[][] {
  const lists = listsIn(headings);
  return plannedCells({
    clubs: table(clubs, 'clubs', CLUBS, lists),
    stock: optionalTable(stock, STOCK, lists),
    settings: optionalTable(settings, null),
    weights: optionalTable(weights, WEIGHTS, lists),
    tape: optionalTable(tape, TAPE, lists),
    job: cell.optionalText(job, 'job') ?? null,
  });
}

/**
 * Plan for one club in grams, inches and points: the row that SETPLAN gives it, for use beside a table.
 *
 * @remarks Formulas: those of SETPLAN. Source: as for SETPLAN. What only the whole set shows (mixed profiles, a club twice, stock for several) is not noted,
 * and notes count the club as row 2.
 * @customfunction CLUBPLAN
 * @param club The cells of one club, as wide as the header row.
 * @param header The header row of the clubs, such as Clubs[#Headers].
 * @param [stock] Stock with its header row; without it no new grip is known.
 * @param [settings] Settings with their header row; the usual ones if blank.
 * @param [weights] Weights with their header row: the ways of putting weight on; the usual ones if blank.
 * @param [tape] Tape with its header row; the usual tapes if blank.
 * @param [headings] Headings with its header row, where lists of your own are connected; leave it out where none is.
 * @returns One row.
 * @throws `#VALUE!` where a column that is needed is missing or club and header differ in width; `#N/A` where the club is blank.
 * @example clubPlan([['7 iron', 'R1']], [['Club', 'New grip']], [['Item', 'Core (in)', 'Mass (g)'], ['R1', 0.6, 50]]) //=> one row
 */
export function clubPlan(
  club: unknown[][],
  header: unknown[][],
  stock?: unknown[][],
  settings?: unknown[][],
  weights?: unknown[][],
  tape?: unknown[][],
  headings?: unknown[][],
): unknown[][] {
  const lists = listsIn(headings);
  const rows = plannedCells({
    clubs: clubTable(club, header, lists),
    stock: optionalTable(stock, STOCK, lists),
    settings: optionalTable(settings, null),
    weights: optionalTable(weights, WEIGHTS, lists),
    tape: optionalTable(tape, TAPE, lists),
  });
  return rows.slice(1);
}

/**
 * Which of some weighed grips goes on which club, masses in grams, so that readings land closest to what is held.
 *
 * @remarks Formula: the least sum of squared gaps between what is held and the reading with that very grip. Source: the linear
 * assignment problem. A grip without an item is taken for the one that the clubs get; clubs for which none is left are planned with
 * the mass in Stock.
 * @customfunction PLACEGRIPS
 * @param weighedGrams Masses of the loose grips, g, 15 to 220: a column, a row, or two columns with the item before the mass.
 * @param clubs Clubs with their header row, such as Clubs[#All].
 * @param [stock] Stock with its header row; without it no new grip is known.
 * @param [settings] Settings with their header row; the usual ones if blank.
 * @param [weights] Weights with their header row: the ways of putting weight on; the usual ones if blank.
 * @param [tape] Tape with its header row; the usual tapes if blank.
 * @param [job] Which job's clubs to place them on; every row of clubs if blank.
 * @param [headings] Headings with its header row, where lists of your own are connected; leave it out where none is.
 * @returns A header row and a row for each club: its grip by the place in weighedGrams, the reading, and the points still missing.
 * @throws `#VALUE!` for a mass or item that is none; `#N/A` where there is nothing to place, or no club for it.
 * @example placeGrips([[52], [49]], [['Club', 'New grip'], ['7 iron', 'R1']], [['Item', 'Core (in)', 'Mass (g)'], ['R1', 0.6, 50]]) //=> two rows
 */
export function placeGrips(
  weighedGrams: unknown[][],
  clubs: unknown[][],
  stock?: unknown[][],
  settings?: unknown[][],
  weights?: unknown[][],
  tape?: unknown[][],
  job?: unknown,
  headings?: unknown[][],
): unknown[][] {
  const lists = listsIn(headings);
  const weighed = weighedGrips(weighedGrams, 'weighedGrams');
  const { input, problems } = answer(
    planTables({
      clubs: table(clubs, 'clubs', CLUBS, lists),
      stock: optionalTable(stock, STOCK, lists),
      settings: optionalTable(settings, null),
      weights: optionalTable(weights, WEIGHTS, lists),
      tape: optionalTable(tape, TAPE, lists),
      job: cell.optionalText(job, 'job') ?? null,
    }),
  );
  return placeCells(answer(core.placeGrips(input, weighed, assign)), problems);
}

/**
 * Tax on one line, in whole smallest units of the currency: 13 at 6.50 and 20 % is 16.90.
 *
 * @remarks Formula: quantity × price × r / 100, or × r / (100 + r) where the price has the tax in it; the line is rounded before it is taxed.
 * Source of the choice of rounding: Streamlined Sales and Use Tax Agreement, s. 324; HMRC, VATREC12010 and VATREC12030.
 * @customfunction LINETAX
 * @param quantity How many.
 * @param price Price of one.
 * @param taxPercent Tax in per cent, 0 to 100: 20, or "20 %" as text. A number between 0 and 1 is refused: a cell typed as 20 % holds 0.2.
 * @param [included] Yes where the price has the tax in it; No, or blank: the tax is added.
 * @param [currency] Code of ISO 4217, for its decimals; two decimals if blank.
 * @param [rounding] Half up, Half to even or Tax down; half up if blank. Which one is allowed differs by place: ask your adviser.
 * @returns The tax.
 * @throws `#VALUE!` for bad input.
 * @example lineTax(13, 6.5, 20) //=> 16.9
 */
export function lineTax(
  quantity: unknown,
  price: unknown,
  taxPercent: unknown,
  included?: unknown,
  currency?: unknown,
  rounding?: unknown,
): number {
  const line = answer(core.lineTax(lineFrom({ quantity, price, taxPercent, included, currency, rounding })));
  return core.moneyNumber(line.tax);
}

/**
 * What one line comes to with its tax, in whole smallest units of the currency: 13 at 6.50 and 20 % is 101.40.
 *
 * @remarks Formula: quantity × price, rounded, and the tax of LINETAX; where the price has the tax in it, quantity × price alone.
 * Source of the choice of rounding: as for LINETAX.
 * @customfunction LINETOTAL
 * @param quantity How many.
 * @param price Price of one.
 * @param taxPercent Tax in per cent, 0 to 100: 20, or "20 %" as text. A number between 0 and 1 is refused: a cell typed as 20 % holds 0.2.
 * @param [included] Yes where the price has the tax in it; No, or blank: the tax is added.
 * @param [currency] Code of ISO 4217, for its decimals; two decimals if blank.
 * @param [rounding] Half up, Half to even or Tax down; half up if blank. Which one is allowed differs by place: ask your adviser.
 * @returns What is to be paid.
 * @throws `#VALUE!` for bad input.
 * @example lineTotal(13, 6.5, 20) //=> 101.4
 */
export function lineTotal(
  quantity: unknown,
  price: unknown,
  taxPercent: unknown,
  included?: unknown,
  currency?: unknown,
  rounding?: unknown,
): number {
  const line = answer(core.lineTax(lineFrom({ quantity, price, taxPercent, included, currency, rounding })));
  return core.moneyNumber(line.gross);
}

/**
 * Bench time for a whole set, min, by the minutes that Rates and Weights give for the work.
 *
 * @remarks Formula: minutes of one × how many, over all work that the plan of SETPLAN asks for, counted as a quote counts it: fitting,
 * layers beyond those that a fitting includes, old grips taken off, weighing and reading, weight and putting readings right, length
 * changes, and what every club or job has. Source: addition; the minutes are the shop's own. Work without minutes counts as none.
 * @customfunction SETMINUTES
 * @param clubs Clubs with their header row, such as Clubs[#All].
 * @param rates Rates with their header row, such as Rates[#All].
 * @param [stock] Stock with its header row; without it no new grip is known, and only its fitting counts.
 * @param [settings] Settings with their header row; the usual ones if blank.
 * @param [weights] Weights with their header row: the ways of putting weight on; the usual ones if blank.
 * @param [tape] Tape with its header row; the usual tapes if blank.
 * @param [job] Which job; every row of clubs if blank.
 * @param [headings] Headings with its header row, where lists of your own are connected; leave it out where none is.
 * @returns Minutes.
 * @throws `#VALUE!` where a column that is needed is missing, a cell of Rates cannot be read, or work that is done has no row there; `#N/A`
 * where there is no club.
 * @example setMinutes([['Club', 'New grip'], ['7 iron', 'R1'], ['8 iron', 'R1']], [['Work', 'Per', 'Minutes'], ['Fit a grip', 'Club', 8]]) //=> 16
 */
export function setMinutes(
  clubs: unknown[][],
  rates: unknown[][],
  stock?: unknown[][],
  settings?: unknown[][],
  weights?: unknown[][],
  tape?: unknown[][],
  job?: unknown,
  headings?: unknown[][],
): number {
  const lists = listsIn(headings);
  const tables = {
    clubs: table(clubs, 'clubs', CLUBS, lists),
    stock: optionalTable(stock, STOCK, lists),
    settings: optionalTable(settings, null),
    weights: optionalTable(weights, WEIGHTS, lists),
    tape: optionalTable(tape, TAPE, lists),
    job: cell.optionalText(job, 'job') ?? null,
  };
  return answer(minutesOfSet(tables, table(rates, 'rates', RATES, lists)));
}

function plannedCells(tables: TablesIn): unknown[][] {
  const { plan, problems } = answer(planTables(tables));
  return planCells(plan, problems);
}
