/** Numbers as people type them. */

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/**
 * The number that a text plainly is, with a point or a comma and either minus sign; undefined where it is none.
 *
 * @example plainNumber('−3,5') //=> -3.5
 */
export function plainNumber(text: string): number | undefined {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return PLAIN.test(plain) ? Number(plain) : undefined;
}
