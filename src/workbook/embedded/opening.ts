/** A workbook file read for the page. What reads it is large and comes in when a file is first opened, into a worker of its own. */
import type { Progress } from '../../core/index';
import { nextTurn } from '../pace';
import type { OpenedBook } from './open/book';
import type { RefusalCode } from './open/refusal';
import type { Answer } from './open/worker';
import { openedFile, type Otherwise } from './opened';
import type { OpenedContent, Spreadsheet } from './spreadsheet';

/** How reading ended. */
export type Read =
  | { readonly done: true; readonly book: OpenedBook }
  | { readonly done: false; readonly code: RefusalCode | 'notLoaded'; readonly said: string };

/** A file that is being read. */
export interface Reading {
  readonly end: Promise<Read>;
  /** Ends it; nothing comes of it then. */
  readonly stop: () => void;
}

/** Begins to read a file. */
export function startReading(file: ArrayBuffer): Reading {
  const worker = new Worker(new URL('./open/worker.ts', import.meta.url));
  const end = new Promise<Read>((resolve) => {
    worker.onmessage = ({ data }: MessageEvent<Answer>) =>
      resolve('book' in data ? { done: true, book: data.book } : { done: false, ...data.refused });
    worker.onerror = (event) => {
      event.preventDefault();
      resolve({ done: false, code: 'notLoaded', said: event.message ?? '' });
    };
  });
  worker.postMessage(file, [file]);
  return { end: end.finally(() => worker.terminate()), stop: () => worker.terminate() };
}

/** How putting a file on the page goes on, and whether it still should. */
export interface Placing {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** What turned out once everything was calculated: cells that keep the file's values, and cells that come out otherwise. */
export interface Reviewed {
  readonly keptValues: readonly string[];
  readonly otherwise: readonly Otherwise[];
}

/** Of the whole way, where the cells are made and where they are shown, by the time that it takes with 40,000 formulas. */
const MADE = 0.1;
const SHOWN = 0.2;

/**
 * Makes a spreadsheet of a file and calculates it. Throws when the part that makes it cannot be loaded; nothing is left of it then.
 *
 * @returns undefined where it was stopped: nothing is left of it either
 */
export async function placed(
  book: OpenedBook,
  make: (content: OpenedContent) => Promise<Spreadsheet>,
  { signal, onProgress }: Placing,
): Promise<{ readonly spreadsheet: Spreadsheet; readonly found: Reviewed } | undefined> {
  const [{ openedContent }, { reviewFormulas }] = await Promise.all([
    import(/* webpackChunkName: "open" */ './open/complete'),
    import(/* webpackChunkName: "open" */ './open/review'),
  ]);
  const within = partsOf(onProgress);
  const making = within(0, MADE);
  const cells = book.sheets.reduce((sum, sheet) => sum + sheet.cells.rows.length, 0);
  const content = await openedContent(book, async (done) => {
    making({ done, of: cells });
    await nextTurn();
  });
  if (signal.aborted) return undefined;
  const spreadsheet = await make(content);
  try {
    await spreadsheet.ready;
    if (!signal.aborted) await reviewFormulas(spreadsheet, { signal, onProgress: within(SHOWN, 1) });
  } catch (error) {
    spreadsheet.dispose();
    throw error;
  }
  if (!signal.aborted) return { spreadsheet, found: openedFile(spreadsheet) ?? { keptValues: [], otherwise: [] } };
  spreadsheet.dispose();
  return undefined;
}

/** Tells of parts of the way as of the whole, and never less than was told before. */
function partsOf(onProgress: Placing['onProgress']) {
  let furthest = 0;
  return (from: number, to: number): Placing['onProgress'] =>
    ({ done, of }) => {
      furthest = Math.max(furthest, from + (to - from) * (done / of));
      onProgress({ done: furthest, of: 1 });
    };
}
