/** What a hand shows on a sample grip, and how that moves the size it started from. */
import { MOST_LOWER_LAYERS, SAMPLE_LAYERS } from '../constants';
import type { StartSize } from './hand';

/** What was seen on the sample grip; undefined: not looked at. */
export interface SampleAnswers {
  /** Fingertips of the upper hand against its palm. */
  readonly fingertips?: 'press' | 'touch' | 'gap' | undefined;
  /** Whether the little finger of the upper hand wraps past the grip's centre line. */
  readonly littleFinger?: 'past' | 'short' | undefined;
  /** Whether the lower hand's index finger sits round the grip or has to reach. */
  readonly lowerIndex?: 'sits' | 'reaches' | undefined;
  readonly squeezes?: boolean | undefined;
  /** Layers by which to err larger between two sizes. */
  readonly errLarger: 0 | 1 | 2;
  readonly pain: boolean;
}

/** Why a size moves, or why it does not; sentences in `src/words/hand.ts`. */
export type MoveCode =
  /** fingertips press into the palm */
  | 'press'
  /** fingertips stay clear of the palm */
  | 'gap'
  /** the little finger does not pass the centre line */
  | 'short'
  /** fingertips say too small, the little finger too large: neither counts */
  | 'contradict'
  /** squeezing comes of too small as well as of too large */
  | 'squeeze'
  | 'errLarger'
  /** the lower hand starts from a larger size than the upper */
  | 'lowerLarger'
  /** so much larger that some of it is left out */
  | 'lowerMost'
  /** the lower hand starts from a smaller size, which tape cannot make */
  | 'lowerSmaller'
  /** the lower index finger reaches: a layer fewer under the lower hand */
  | 'reachFewer'
  /** the same where there is none to leave out: the whole grip is smaller */
  | 'reachSmaller'
  /** the same where the upper hand wants more: only another taper serves both */
  | 'reachTaper'
  /** for a clinician; no size answers it */
  | 'pain';

/** One reason with what it moves. */
export interface Move {
  readonly code: MoveCode;
  /** Which size it moves: of the whole grip, or what is added under the lower hand. */
  readonly hand: 'upper' | 'lower';
  /** Whole layers; 0 where nothing moves. */
  readonly layers: number;
  /** Whole layers between the sizes of both hands, where tape does not make them all. */
  readonly wanted?: number;
}

/** The size to fit; the layers of its moves add up to `layersMoved` and `lowerLayers`. */
export interface HandTarget {
  readonly startInches: number;
  /** Outside diameter under the upper hand. */
  readonly targetInches: number;
  readonly layersMoved: number;
  /** Extra layers under the lower hand, 0 or more. */
  readonly lowerLayers: number;
  readonly moves: readonly Move[];
}

/**
 * Moves a starting size by what a sample grip showed: the upper hand first, then the lower.
 *
 * Formula: `target = start + layers × layer`; layers by {@link SAMPLE_LAYERS}. Source: *practice*.
 *
 * @param start size of the upper hand
 * @param lower size of the lower hand by its own measures; undefined: both hands are alike
 * @param layerInches what one layer adds outside, in inches ({@link layerOutside})
 * @returns the target with a reason for every move, and for every answer that could not move it
 */
export function fromSample(
  start: StartSize,
  lower: StartSize | undefined,
  answers: SampleAnswers,
  layerInches: number,
): HandTarget {
  const upperMoves = movesOfUpper(answers);
  const lowerMoves = movesOfLower(lower ? Math.round((lower.inches - start.inches) / layerInches) : 0);
  const reach = answers.lowerIndex === 'reaches' ? [reachMove(answers, layersOf(lowerMoves, 'lower'))] : [];
  const pain = answers.pain ? [still('pain', 'upper')] : [];
  const moves = [...upperMoves, ...lowerMoves, ...reach, ...pain];
  const layersMoved = layersOf(moves, 'upper');
  return {
    startInches: start.inches,
    targetInches: start.inches + layersMoved * layerInches,
    layersMoved,
    lowerLayers: layersOf(moves, 'lower'),
    moves,
  };
}

function layersOf(moves: readonly Move[], hand: Move['hand']): number {
  return moves.reduce((sum, move) => (move.hand === hand ? sum + move.layers : sum), 0);
}

function still(code: MoveCode, hand: Move['hand'], wanted?: number): Move {
  return wanted === undefined ? { code, hand, layers: 0 } : { code, hand, layers: 0, wanted };
}

function movesOfUpper({ fingertips, littleFinger, squeezes, errLarger }: SampleAnswers): Move[] {
  const moves: Move[] = [];
  const short = littleFinger === 'short';
  if (fingertips === 'press' && short) moves.push(still('contradict', 'upper'));
  else {
    if (fingertips === 'press') moves.push({ code: 'press', hand: 'upper', layers: SAMPLE_LAYERS.press });
    if (fingertips === 'gap') moves.push({ code: 'gap', hand: 'upper', layers: SAMPLE_LAYERS.gap });
    if (short) moves.push({ code: 'short', hand: 'upper', layers: SAMPLE_LAYERS.short });
  }
  if (squeezes) moves.push(still('squeeze', 'upper'));
  if (errLarger > 0) moves.push({ code: 'errLarger', hand: 'upper', layers: errLarger });
  return moves;
}

/** Tape adds and never takes away, so a smaller lower hand is only told. */
function movesOfLower(layers: number): Move[] {
  if (layers > MOST_LOWER_LAYERS) {
    return [{ code: 'lowerMost', hand: 'lower', layers: MOST_LOWER_LAYERS, wanted: layers }];
  }
  if (layers > 0) return [{ code: 'lowerLarger', hand: 'lower', layers }];
  return layers < 0 ? [still('lowerSmaller', 'lower', -layers)] : [];
}

/** The upper hand is fitted first: a reach of the lower one makes the whole grip smaller only where the upper does not want it larger. */
function reachMove({ fingertips }: SampleAnswers, lowerLayers: number): Move {
  if (lowerLayers > 0) return { code: 'reachFewer', hand: 'lower', layers: SAMPLE_LAYERS.reach };
  if (fingertips === 'press') return still('reachTaper', 'lower');
  return { code: 'reachSmaller', hand: 'upper', layers: SAMPLE_LAYERS.reach };
}
