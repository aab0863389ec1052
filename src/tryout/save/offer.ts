/** The button that saves a copy: looks through the workbook, asks, makes the file, hands it to the browser. */
import { saveDialog } from './dialog';
import { SAVE, sayLooked, sayNotMade, saySaved, type CopyLosses } from './words';

/** A copy that can be made. */
export interface ReadyCopy {
  readonly losses: CopyLosses;
  readonly fileName: string;
  /** Undefined where it was stopped. */
  readonly bytes: (signal: AbortSignal) => Promise<Uint8Array | undefined>;
}

/** How looking through the workbook goes on, and whether it still should. */
export interface Looking {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: { readonly done: number; readonly of: number }) => void;
}

interface Offer {
  readonly button: HTMLButtonElement;
  /** Says how it goes; read out politely. */
  readonly tell: (sentence: string) => void;
  /** Told once the file was handed over. */
  readonly saved: () => void;
  /** Undefined where it was stopped. */
  readonly prepare: (looking: Looking) => Promise<ReadyCopy | undefined>;
}

/** Brings the button to life. */
export function offerSaving({ button, tell, saved, prepare }: Offer): void {
  let busy = false;
  const done = (sentence: string): void => {
    saved();
    tell(sentence);
  };
  const press = async (): Promise<void> => {
    const dialog = saveDialog();
    const { signal } = dialog;
    dialog.look(SAVE.looking);
    try {
      const copy = await prepare({ signal, onProgress: ({ done, of }) => dialog.look(sayLooked(done / of)) });
      if (copy && !signal.aborted) dialog.ask({ ...copy, save: () => makeAndHandOver(copy, signal, done) });
    } catch {
      dialog.close();
      tell(SAVE.notLoaded);
    }
  };
  button.addEventListener('click', () => {
    if (busy) return;
    busy = true;
    void press().finally(() => {
      busy = false;
    });
  });
  button.disabled = false;
}

async function makeAndHandOver(
  { fileName, bytes }: ReadyCopy,
  signal: AbortSignal,
  tell: (sentence: string) => void,
): Promise<string | null> {
  try {
    const asOf = new Date();
    const made = await bytes(signal);
    if (!made) return null;
    handOver(made, fileName);
    tell(saySaved(fileName, asOf));
    return null;
  } catch (error) {
    return sayNotMade(error instanceof Error ? error.message : String(error));
  }
}

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
/** Long enough for any browser to have taken the file. */
const KEPT_MS = 60_000;

function handOver(bytes: Uint8Array, fileName: string): void {
  const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: XLSX }));
  const link = Object.assign(document.createElement('a'), { href: address, download: fileName });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
}
