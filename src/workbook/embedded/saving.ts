/**
 * A copy of the workbook as a file. What describes it comes in when it is first asked for; what knows the format of files and makes
 * one does so in a worker of its own.
 */
import type { Progress } from '../../core/index';
import { nextTurn, paced, SLICE_MS, type GoOn } from '../pace';
import type { Copy, Losses } from './save/copy';
import type { Parcel } from './save/parcels';
import type { Made } from './save/worker';
import type { Spreadsheet } from './spreadsheet';

/** A copy that can be made. */
export interface Prepared {
  /** What it will not hold as the workbook does. */
  readonly losses: Losses;
  /** The bytes of the .xlsx file; undefined where it was stopped. */
  readonly bytes: (signal: AbortSignal) => Promise<Uint8Array | undefined>;
}

/** How looking through the workbook goes on, and whether it still should. */
export interface Looking {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/**
 * Looks through the workbook as it is now, which must not be changed meanwhile. Throws when the part that makes files cannot be loaded.
 *
 * @returns undefined where it was stopped
 */
export async function prepareCopy(
  spreadsheet: Spreadsheet,
  { signal, onProgress }: Looking,
): Promise<Prepared | undefined> {
  const [{ copySteps }, { parcelsOf }] = await Promise.all([
    import(/* webpackChunkName: "save" */ './save/copy'),
    import(/* webpackChunkName: "save" */ './save/parcels'),
  ]);
  await spreadsheet.settled();
  const copy = await paced(copySteps(spreadsheet), resting(signal, onProgress));
  if (!copy) return undefined;
  const { workbook, losses } = copy;
  return { losses, bytes: (stop) => madeElsewhere(workbook, parcelsOf, stop) };
}

/** Rests whenever a slice of time is used up. */
function resting(signal: AbortSignal, onProgress?: (progress: Progress) => void): GoOn {
  let start = performance.now();
  return async (progress) => {
    if (performance.now() - start >= SLICE_MS) {
      onProgress?.(progress);
      await nextTurn();
      start = performance.now();
    }
    return !signal.aborted;
  };
}

/** Has a worker make the file. Throws what is said against the workbook, or that the worker could not be loaded. */
async function madeElsewhere(
  workbook: Copy['workbook'],
  parcelsOf: (workbook: Copy['workbook']) => Generator<Parcel>,
  signal: AbortSignal,
): Promise<Uint8Array | undefined> {
  const worker = new Worker(new URL('./save/worker.ts', import.meta.url));
  const end = new Promise<Uint8Array | undefined>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Made>) =>
      'bytes' in data ? resolve(data.bytes) : reject(new Error(data.said));
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error(event.message ?? ''));
    };
    signal.addEventListener('abort', () => resolve(undefined));
  });
  // What fails while parcels are still on their way is said below.
  end.catch(() => undefined);
  const goOn = resting(signal);
  try {
    for (const parcel of parcelsOf(workbook)) {
      if (!(await goOn({ done: 0, of: 1 }))) return undefined;
      worker.postMessage(parcel);
    }
    return await end;
  } finally {
    worker.terminate();
  }
}
