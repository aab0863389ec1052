/** Words about a hand and the size it starts from: why a size moves, and what to do where it cannot. */
import type { Move, MoveCode, Reached, StartSize } from '../core/index';
import { countOf, thousandths } from './readings';

/** Stands beside every size that comes from a hand. */
export const STARTING_POINT =
  'A starting point: no standard says which size fits a hand. Try a sample grip of it, and let the player’s hands decide.';

/** Stands beside every size too, whether pain was named or not. */
export const CLINICIAN =
  'Pain in the hand, wrist or elbow is for a clinician. This sizes grips; it treats nobody, and no size is a remedy.';

type Sayer = (layers: string, move: Move) => string;

const SENTENCES: Readonly<Record<MoveCode, Sayer>> = {
  press: (layers) => `${layers} more: the fingertips press into the palm, so the grip is too small.`,
  gap: (layers) => `${layers} fewer: a clear gap between fingertips and palm, so the grip is too large.`,
  short: (layers) =>
    `${layers} fewer: the little finger does not wrap past the grip’s centre line, so there is too much grip for it.`,
  contradict: () =>
    'Nothing moved: fingertips that press say too small, a little finger that falls short says too large. Look at both again on the sample grip.',
  squeeze: () =>
    'Nothing moved: a grip too small and one too large both make a player squeeze. Go by the fingertips and the little finger.',
  errLarger: (layers) =>
    `${layers} more: between two sizes the larger is the better guess, by a layer or two and not by a moulded size.`,
  lowerLarger: (layers) => `${layers} more under the lower hand: by its own measures it starts from a larger size.`,
  lowerMost: (layers, { wanted = 0 }) =>
    `${layers} more under the lower hand, not the ${wanted} that its measures ask for: so many would turn the taper round. Measure both hands again, or choose a grip with less taper.`,
  lowerSmaller: (_, { wanted = 0 }) =>
    `Nothing moved: by its own measures the lower hand starts ${countOf(wanted, 'layer')} smaller, and tape cannot make a grip smaller there. A grip with more taper does.`,
  reachFewer: (layers) => `${layers} fewer under the lower hand: its index finger has to reach round the grip.`,
  reachSmaller: (layers) =>
    `${layers} fewer: the lower hand’s index finger has to reach, and there is no extra tape under that hand to leave out. A grip with more taper does it for that hand alone.`,
  reachTaper: () =>
    'Nothing moved: the lower hand’s index finger has to reach, but the upper hand, which is fitted first, wants more. A grip with more taper serves both.',
  pain: () =>
    'Nothing moved for the pain: no size answers it. Send the player to a clinician before grips are changed for it.',
};

/** Why a size moves by so much, or why an answer does not move it. */
export function sayMove(move: Move): string {
  return SENTENCES[move.code](countOf(Math.abs(move.layers), 'layer'), move);
}

/** What to know about a starting size beside its number: the guide did not reach so far, or hand and finger ask for different sizes. */
export function sayStart(start: StartSize): string[] {
  const said: string[] = [];
  for (const { measure, end } of start.beyond) {
    const [than, row] = end === 'below' ? ['shorter', 'smallest'] : ['longer', 'largest'];
    const held =
      start.byFingerInches === undefined ? `the ${row} size there counts` : `its half of the size is the ${row} there`;
    said.push(`This ${measure} is ${than} than any in Sizes: ${held}. Add a row to Sizes if you fit such hands.`);
  }
  if (start.disagree && start.byFingerInches !== undefined) {
    said.push(
      `By hand length ${thousandths(start.byHandInches)}, by middle finger ${thousandths(start.byFingerInches)}: more than a layer apart, and the size is half-way. Measure both again.`,
    );
  }
  return said;
}

/** Why no grip of the stock reaches a size, and what to do; undefined where some does. */
export function sayNoneReaching(reached: Reached, targetInches: number): string | undefined {
  const { why, nearest } = reached;
  if (why === undefined) return undefined;
  if (why === 'noStock') return 'Stock lists no grips. Add the ones you keep, with core, mass and diameters.';
  const target = thousandths(targetInches);
  if (!nearest) {
    return `No grip of Stock can be tried for ${target}: each is made for other clubs, too tight on this butt, or lacks its core or diameter.`;
  }
  const { grip, layers, upper, errorInches } = nearest;
  const off = `${thousandths(Math.abs(errorInches))} too ${errorInches < 0 ? 'small' : 'large'}`;
  return `No grip of Stock reaches ${target}. ${grip.item} with ${countOf(layers, 'layer')} comes nearest: ${thousandths(upper.inches)}, ${off}.`;
}
