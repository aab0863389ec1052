/** Lists in a sentence. */

/** Seven tables fit. */
export const MOST_LISTED = 7;

/** Those that are listed, and how many more there are. */
export function shortened<T>(things: readonly T[]): { readonly shown: readonly T[]; readonly rest: number } {
  const shown = things.length > MOST_LISTED ? things.slice(0, MOST_LISTED - 1) : things;
  return { shown, rest: things.length - shown.length };
}

/** `A1`, `A1 and B2`, `A1, B2 and 5 more`. */
export function listed(things: readonly string[]): string {
  const { shown, rest } = shortened(things);
  if (rest > 0) return `${shown.join(', ')} and ${rest} more`;
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1) ?? ''}`;
}
