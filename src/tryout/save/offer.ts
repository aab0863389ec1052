/** The button that saves a copy: looks through the workbook, asks, makes the file, hands it to the browser. */
import { askToSave } from './dialog';
import { SAVE, sayNotMade, saySaved, type CopyLosses } from './words';

/** A copy that can be made. */
export interface ReadyCopy {
  readonly losses: CopyLosses;
  readonly fileName: string;
  readonly bytes: () => Promise<Uint8Array>;
}

interface Offer {
  readonly button: HTMLButtonElement;
  /** Says how it goes; read out politely. */
  readonly tell: (sentence: string) => void;
  readonly prepare: () => Promise<ReadyCopy>;
}

/** Brings the button to life. */
export function offerSaving({ button, tell, prepare }: Offer): void {
  let busy = false;
  const press = async (): Promise<void> => {
    tell(SAVE.looking);
    const copy = await prepare().catch(() => null);
    tell(copy ? '' : SAVE.notLoaded);
    if (copy) askToSave({ ...copy, save: () => makeAndHandOver(copy, tell) });
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
  tell: (sentence: string) => void,
): Promise<string | null> {
  try {
    handOver(await bytes(), fileName);
    tell(saySaved(fileName));
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
