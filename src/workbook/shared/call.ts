import type { Argument, Call } from '../port';

/** The name in front of every function of ours. */
export const functionNamespace = 'REGRIP';

/** Longest text that a formula may hold in quotes. */
const longestText = 255;

/**
 * The formula that makes a call; `refer` writes a table or a block the way the workbook wants it.
 *
 * @example callText({ call: 'GRIPMASS', args: [{ literal: 50 }, null, { literal: 'a "b"' }, null] }, refer) //=> '=REGRIP.GRIPMASS(50,,"a ""b""")'
 */
export function callText(
  { call, args }: Call,
  refer: (argument: Extract<Argument, { table: string } | { block: unknown } | { name: string }>) => string,
): string {
  const written = args.map((argument) => {
    if (argument === null) return '';
    return 'literal' in argument ? literal(argument.literal) : refer(argument);
  });
  while (written.at(-1) === '') written.pop();
  return `=${functionNamespace}.${call}(${written.join(',')})`;
}

/** A text or number as a formula wants it; long texts are joined from pieces. @example literal('a "b"') //=> '"a ""b"""' */
export function literal(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const pieces: string[] = [];
  for (let from = 0; from === 0 || from < value.length; from += longestText) {
    pieces.push(`"${value.slice(from, from + longestText).replaceAll('"', '""')}"`);
  }
  return pieces.join('&');
}
