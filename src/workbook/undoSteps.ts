/**
 * Which fills can be taken back, the oldest first: a short list in the workbook's settings. What each did stands under a key of its
 * own, one of a few that are used in turn, so that it never grows beyond them.
 */

/** Key of the list. */
export const STEPS_KEY = 'setwright.undo';

/** More fills than this are not kept: whoever wants to go back further has the file of yesterday. */
export const MOST_STEPS = 10;

/**
 * About so many characters are kept of all of them. Settings are saved with the file and loaded with it; Office gives an add-in's
 * settings 2 MB (from memory), and the newest fill is kept whatever its size, as it was when it was the only one.
 */
export const MOST_CHARACTERS = 1_000_000;

/** A fill that can be taken back. */
export interface UndoStep {
  /** From 0; which of the keys it is kept under. */
  readonly slot: number;
  /** What it is called. */
  readonly label: string;
  /** About how many characters it takes. */
  readonly size: number;
  /** As long as it was not written to its end: what was written of it can be taken back. */
  readonly begun?: true;
}

/** Where the receipt of a step is kept. */
export function receiptKeyOf({ slot }: Pick<UndoStep, 'slot'>): string {
  return `${STEPS_KEY}.${slot}`;
}

/** Where is kept how places of pages were before a step. */
export function placesKeyOf({ slot }: Pick<UndoStep, 'slot'>): string {
  return `${STEPS_KEY}.${slot}.places`;
}

/** The list as it was kept; none where there is none, or something else stands there. */
export function stepsIn(text: string | null): readonly UndoStep[] {
  try {
    const steps: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(steps) ? steps.filter(isStep) : [];
  } catch {
    return [];
  }
}

function isStep(value: unknown): value is UndoStep {
  const { slot, label, size } = (value ?? {}) as Partial<UndoStep>;
  return Number.isInteger(slot) && typeof label === 'string' && typeof size === 'number';
}

/** The list with a step more, and the steps that have to go for it, the oldest first. */
export function withStep(
  steps: readonly UndoStep[],
  { label, size }: Omit<UndoStep, 'slot'>,
): { readonly steps: readonly UndoStep[]; readonly step: UndoStep; readonly dropped: readonly UndoStep[] } {
  let kept = steps;
  const tooMuch = (): boolean =>
    kept.length >= MOST_STEPS || kept.reduce((sum, each) => sum + each.size, size) > MOST_CHARACTERS;
  while (kept.length > 0 && tooMuch()) kept = kept.slice(1);
  const taken = new Set(kept.map(({ slot }) => slot));
  const slot = Array.from({ length: MOST_STEPS }, (_, at) => at).find((at) => !taken.has(at)) ?? 0;
  const step = { slot, label, size };
  return { steps: [...kept, step], step, dropped: steps.slice(0, steps.length - kept.length) };
}
