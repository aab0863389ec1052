/**
 * Where plans stand in the workbook.
 *
 * A place is a defined name, so that it survives inserted rows and renamed sheets; which job it holds is kept in the
 * workbook's settings. Which of its cells are ours is told by `planOwners.ts`.
 */
import type { Block, NameSeen } from './port';

/** Version of what we keep in a workbook. */
export const SCHEMA_VERSION = 1;

/** Which tables, columns and settings a workbook has: `layoutSteps.ts` says what each layout brought. */
export const LAYOUT = 5;

/** Keys of the workbook's settings. */
export const PLANS_KEY = 'setwright.plans';
/** The places as they were before the last fill, for taking it back. */
export const PLANS_BEFORE_KEY = 'setwright.plansBefore';
export const LAST_FILL_KEY = 'setwright.lastFill';

const NAME_STEM = 'Setwright_Plan_';

/** What is kept of a plan. */
export interface PlanEntry {
  /** The defined name of its place. */
  readonly name: string;
  /** Which plan it is: `job:1042`, `part:1042` for some clubs of a job, `mixed` for clubs of several. */
  readonly key: string;
  readonly job: string | null;
  /** Whether we made the sheet for it. */
  readonly ownSheet: boolean;
  readonly cellPrints: readonly string[];
  readonly rowPrints: readonly string[];
}

/** A plan that stands in the workbook. */
export interface PlanPlace extends PlanEntry {
  readonly block: Block;
}

interface Kept {
  readonly schema: number;
  /** Layout of the tables; null in a workbook of a version that did not write it down. */
  readonly layout: number | null;
  readonly plans: readonly PlanEntry[];
}

/** What is to be kept of all plans, as text; a workbook of which no layout is known is from now on of the first. */
export function keepPlans(plans: readonly PlanEntry[], layout: number | null): string {
  const bare = plans.map(({ name, key, job, ownSheet, cellPrints, rowPrints }) => {
    return { name, key, job, ownSheet, cellPrints, rowPrints };
  });
  return JSON.stringify({ schema: SCHEMA_VERSION, layout: layout ?? 1, plans: bare } satisfies Kept);
}

/** What was kept; nothing when the text is not ours, since plans can be found by their names again only with it. */
export function keptPlans(text: string | null): Kept | null {
  if (text === null) return null;
  try {
    const kept: unknown = JSON.parse(text);
    if (!isKept(kept)) return null;
    const { schema, layout, plans } = kept;
    return { schema, layout: typeof layout === 'number' ? layout : null, plans: plans.filter(isEntry) };
  } catch {
    return null;
  }
}

function isKept(value: unknown): value is Kept {
  const kept = value as Partial<Kept> | null;
  return typeof kept === 'object' && kept !== null && typeof kept.schema === 'number' && Array.isArray(kept.plans);
}

function isEntry(value: unknown): value is PlanEntry {
  const entry = value as Partial<PlanEntry> | null;
  return (
    typeof entry === 'object' &&
    entry !== null &&
    typeof entry.name === 'string' &&
    typeof entry.key === 'string' &&
    Array.isArray(entry.cellPrints) &&
    Array.isArray(entry.rowPrints)
  );
}

/** The places that still exist. */
export function standing(entries: readonly PlanEntry[], names: readonly NameSeen[]): PlanPlace[] {
  return entries.flatMap((entry) => {
    const block = names.find((seen) => seen.name === entry.name)?.at;
    return block ? [{ ...entry, block }] : [];
  });
}

/** A defined name that no plan has, and that the workbook does not use for something we know nothing of. */
export function freeName(entries: readonly PlanEntry[], inUse: readonly string[]): string {
  const taken = new Set([...entries.map(({ name }) => name), ...inUse]);
  let number = 1;
  while (taken.has(`${NAME_STEM}${number}`)) number += 1;
  return `${NAME_STEM}${number}`;
}
