/** A workbook file read for the page. What reads it is large and comes in when a file is first opened, into a worker of its own. */
import type { OpenedBook } from './open/book';
import type { RefusalCode } from './open/refusal';
import type { Answer } from './open/worker';
import { openedFile } from './opened';
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

/** What the file puts into a spreadsheet. Throws when the part that makes it cannot be loaded. */
export async function contentFor(book: OpenedBook): Promise<OpenedContent> {
  const { openedContent } = await import(/* webpackChunkName: "open" */ './open/complete');
  return openedContent(book, () => new Promise((resolve) => setTimeout(resolve)));
}

/** What turned out once everything was calculated: cells that keep the file's values, and cells that come out otherwise. */
export async function reviewed(
  spreadsheet: Spreadsheet,
): Promise<{ readonly keptValues: readonly string[]; readonly otherwise: readonly string[] }> {
  const { reviewFormulas } = await import(/* webpackChunkName: "open" */ './open/review');
  await reviewFormulas(spreadsheet);
  return openedFile(spreadsheet) ?? { keptValues: [], otherwise: [] };
}
