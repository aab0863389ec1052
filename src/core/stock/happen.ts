/** What happens to a thing on the shelf apart from any job. */
import { fail, ok, type Result } from '../result';
import { lessOf, sumOf } from './quantity';
import type { Movement, Stocked } from './types';

/** `sentBack`: to its supplier; `broughtBack`: by a client. */
export type HappeningKind = 'arrived' | 'sentBack' | 'broughtBack' | 'writtenOff' | 'counted';

export interface Happening {
  readonly kind: HappeningKind;
  /** What came or went, above 0; of a count, what is there. */
  readonly quantity: number;
}

export interface Happened {
  /** undefined: it is not counted, and stays so. */
  readonly onHand: number | undefined;
  readonly movement: Movement;
}

const SIGNS: Readonly<Record<Exclude<HappeningKind, 'counted'>, 1 | -1>> = {
  arrived: 1,
  broughtBack: 1,
  sentBack: -1,
  writtenOff: -1,
};

/**
 * One thing after something came, went or was counted. A count takes the place of what was on hand, and its row says by how
 * much it differs.
 *
 * @param isOrdered it came on an order: then also what is not counted may come, since the order waits for it
 * @returns outOfRange where more would go than there is, or nothing came; notWhole for parts of grips
 */
export function happenTo(stocked: Stocked, { kind, quantity }: Happening, isOrdered = false): Result<Happened> {
  const { onHand, shelf, item } = stocked;
  const row = (by: number): Movement => ({ kind, job: '', club: '', shelf, item, quantity: by, round: 1 });
  const wrong = quantityIssue(stocked, quantity, kind === 'counted' ? 0 : undefined);
  if (wrong) return fail(wrong);
  if (kind === 'counted') return ok({ onHand: quantity, movement: row(lessOf(quantity, onHand ?? 0)) });
  if (onHand === undefined) {
    if (isOrdered) return ok({ onHand, movement: row(quantity) });
    return fail({ code: 'blank', field: `On hand of ${item}`, expected: 'a count first' });
  }
  const after = sumOf([onHand, SIGNS[kind] * quantity]);
  if (after < 0) {
    return fail({
      code: 'outOfRange',
      field: 'Quantity',
      got: quantity,
      expected: `no more than the ${onHand} on hand`,
    });
  }
  return ok({ onHand: after, movement: row(quantity) });
}

/** What is wrong with a quantity of a thing, if anything. @param least what it may be at the least; undefined: anything above 0 */
export function quantityIssue({ shelf }: Pick<Stocked, 'shelf'>, quantity: number, least: number | undefined) {
  if (least === undefined ? quantity <= 0 : quantity < least) {
    const expected = least === undefined ? 'more than 0' : `${least} or more`;
    return { code: 'outOfRange', field: 'Quantity', got: quantity, expected } as const;
  }
  if (shelf === 'grip' && !Number.isInteger(quantity)) {
    return { code: 'notWhole', field: 'Quantity', got: quantity, expected: 'grips come in pieces' } as const;
  }
  return undefined;
}
