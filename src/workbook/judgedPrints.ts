/**
 * Which cells of Checkin hold what judging wrote. A short print of each is kept in the workbook, with the club it belongs to, so that a
 * table may be sorted; a cell whose print is not among them is a person's, whatever column it stands in.
 */
import { folded } from './headings';
import { rowPrints } from './planOwners';
import type { Seen } from './port';

export const JUDGED_KEY = 'setwright.judged';

/** Prints of what was written, by job. */
export type JudgedPrints = Readonly<Record<string, readonly string[]>>;

/** A cell that judging writes, and what stands in it. */
export interface JudgedCell {
  readonly club: string;
  readonly round: number;
  readonly key: string;
  readonly value: Seen;
}

export function printOf({ club, round, key, value }: JudgedCell): string {
  return rowPrints([[folded(club), round, key, value]])[0] ?? '';
}

/** What was kept; nothing where the text is not ours. */
export function keptPrints(text: string | null): JudgedPrints {
  if (!text) return {};
  try {
    const kept: unknown = JSON.parse(text);
    if (typeof kept !== 'object' || kept === null || Array.isArray(kept)) return {};
    return Object.fromEntries(
      Object.entries(kept).filter((entry): entry is [string, string[]] => Array.isArray(entry[1])),
    );
  } catch (error) {
    if (error instanceof SyntaxError) return {};
    throw error;
  }
}

/** What to keep: the job's prints anew, and those of other jobs as long as Checkin has rows of theirs. */
export function keepPrints(
  kept: JudgedPrints,
  job: string,
  prints: readonly string[],
  jobsThere: readonly string[],
): string {
  const there = new Set(jobsThere.map(folded));
  const others = Object.entries(kept).filter(([name]) => name !== folded(job) && there.has(name));
  return JSON.stringify(Object.fromEntries([...others, [folded(job), [...new Set(prints)]]]));
}
