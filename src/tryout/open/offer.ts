/** The button that opens a file, and files dropped on the page: reads, tells, asks, and hands over. */
import type { Otherwise } from '../../workbook/embedded/opened';
import { element } from '../element';
import { openDialog, type OpenDialog } from './dialog';
import type { Found, WhyNotOpened } from './words';
import { OPEN, sayFound, sayKeptValues, sayNotPlaced, sayOtherwise, sayPlacing, sayRefusal, sayUnkept } from './words';

/** How reading a file ended. */
export type Read<Book extends Found> =
  { readonly done: true; readonly book: Book } | { readonly done: false; readonly code: WhyNotOpened };

/** How putting it on the page goes on, and whether it still should. */
export interface Placing {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: { readonly done: number; readonly of: number }) => void;
}

/** What turned out once it stood on the page. */
export interface Placed {
  readonly keptValues: readonly string[];
  readonly otherwise: readonly Otherwise[];
}

interface Offer<Book extends Found> {
  readonly button: HTMLButtonElement;
  /** Says how it goes; read out politely. */
  readonly tell: (sentence: string) => void;
  readonly read: (file: ArrayBuffer) => { readonly end: Promise<Read<Book>>; readonly stop: () => void };
  /** Puts it on the page in place of what stands there. Throws where that cannot be done, undefined where it was stopped: then all is as it was. */
  readonly place: (book: Book, fileName: string, placing: Placing) => Promise<Placed | undefined>;
}

/** As large as a file is read at all; a larger one is not even taken into memory. */
const MOST_BYTES = 25_000_000;

/** Brings the button and dropping to life. */
export function offerOpening<Book extends Found>(offer: Offer<Book>): void {
  const { button, tell } = offer;
  let busy = false;
  const begin = (file: File): void => {
    if (busy) return;
    busy = true;
    void openFile(offer, file).finally(() => {
      busy = false;
    });
  };
  const input = element('input', { type: 'file', accept: '.xlsx,.xlsm', hidden: true, className: 'open-file' });
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (file) begin(file);
    // The same file may be chosen again.
    input.value = '';
  });
  button.after(input);
  button.addEventListener('click', () => input.click());
  takeDrops(begin, tell);
  button.disabled = false;
}

async function openFile<Book extends Found>(offer: Offer<Book>, file: File): Promise<void> {
  const going = new AbortController();
  const left = new Promise<null>((resolve) => going.signal.addEventListener('abort', () => resolve(null)));
  const fileName = file.name;
  const dialog = openDialog(() => going.abort());
  const refuse = (code: WhyNotOpened): void =>
    dialog.show({ fileName, trouble: sayRefusal(code, fileName), leave: OPEN.close });
  if (file.size > MOST_BYTES) return refuse('tooLarge');
  dialog.show({ fileName, progress: OPEN.reading, leave: OPEN.cancel });
  const bytes = await file.arrayBuffer().catch(() => null);
  if (bytes === null) return refuse('broken');
  const reading = offer.read(bytes);
  const read = await Promise.race([reading.end, left]);
  if (read === null) return reading.stop();
  if (!read.done) return refuse(read.code);
  ask(offer, dialog, read.book, fileName, going.signal);
}

/** Tells what was found, and goes on when the person says so. */
function ask<Book extends Found>(
  offer: Offer<Book>,
  dialog: OpenDialog,
  book: Book,
  fileName: string,
  signal: AbortSignal,
): void {
  const press = (): void => {
    dialog.show({ fileName, progress: OPEN.placing, sentences: [OPEN.mayWait], leave: OPEN.cancel });
    // A frame is drawn first, so that the words are seen meanwhile.
    requestAnimationFrame(() => setTimeout(() => void put(offer, dialog, book, fileName, signal)));
  };
  dialog.show({
    fileName,
    sentences: [...sayFound(book), OPEN.original, OPEN.leaving],
    list: { title: OPEN.unkeptTitle, items: sayUnkept(book.unkept) },
    go: { words: OPEN.open, press },
    leave: OPEN.cancel,
  });
}

async function put<Book extends Found>(
  { place, tell }: Offer<Book>,
  dialog: OpenDialog,
  book: Book,
  fileName: string,
  signal: AbortSignal,
): Promise<void> {
  const onProgress: Placing['onProgress'] = ({ done, of }) => dialog.goOn(sayPlacing(done / of), done / of);
  try {
    const placed = await place(book, fileName, { signal, onProgress });
    if (!placed) return;
    const { keptValues, otherwise } = placed;
    tell(OPEN.done);
    if (keptValues.length + otherwise.length === 0) return dialog.close();
    const sentences = sayKeptValues(keptValues);
    dialog.show({ title: OPEN.opened, fileName, sentences, list: sayOtherwise(otherwise), leave: OPEN.close });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    dialog.show({ fileName, trouble: sayNotPlaced(fileName, why), leave: OPEN.close });
  }
}

/** Takes a file that is dropped anywhere on the page; without this the browser would leave the page for it. */
function takeDrops(begin: (file: File) => void, tell: (sentence: string) => void): void {
  const hint = element('p', { className: 'drop-hint', textContent: OPEN.drop, hidden: true });
  document.body.append(hint);
  const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true;
  const over = (event: DragEvent): void => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    event.stopPropagation();
    hint.hidden = false;
  };
  window.addEventListener('dragenter', over, { capture: true });
  window.addEventListener('dragover', over, { capture: true });
  window.addEventListener(
    'dragleave',
    (event) => {
      // Out of the window, not from one element of it to the next.
      if (event.relatedTarget === null) hint.hidden = true;
    },
    { capture: true },
  );
  window.addEventListener(
    'drop',
    (event) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      event.stopPropagation();
      hint.hidden = true;
      const files = [...(event.dataTransfer?.files ?? [])];
      const [file] = files;
      if (files.length > 1) tell(OPEN.several);
      else if (file && !document.querySelector('dialog[open]')) begin(file);
    },
    { capture: true },
  );
}
