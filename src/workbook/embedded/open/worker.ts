/** Reads a file away from the page, so that the page stays alive. */
import type { OpenedBook } from './book';
import { readBook } from './read';
import { Refusal, type RefusalCode } from './refusal';

/** What comes back for a file. */
export type Answer =
  { readonly book: OpenedBook } | { readonly refused: { readonly code: RefusalCode; readonly said: string } };

/** What a worker's own scope has of all that a page's has. */
interface Scope {
  onmessage: ((event: MessageEvent<ArrayBuffer>) => void) | null;
  postMessage(answer: Answer, transfer: Transferable[]): void;
}

const scope = self as unknown as Scope;

scope.onmessage = (event) => {
  readBook(new Uint8Array(event.data)).then(
    (book) => scope.postMessage({ book }, columnsOf(book)),
    (error: unknown) => {
      const { code, said } = error instanceof Refusal ? error : new Refusal('broken', String(error));
      scope.postMessage({ refused: { code, said } }, []);
    },
  );
};

/** Columns of numbers are handed over, not copied. */
function columnsOf({ sheets }: OpenedBook): Transferable[] {
  return sheets.flatMap(({ cells }) => [
    cells.rows.buffer,
    cells.columns.buffer,
    cells.kinds.buffer,
    cells.values.buffer,
    cells.styles.buffer,
  ]);
}
