/** The window in which the workbook is looked through, and a person learns what a copy keeps, and saves it. */
import { element } from '../element';
import { SAVE, sayFile, sayLosses, sayMissing, sayOddNames, type CopyLosses } from './words';

export interface Asked {
  readonly losses: CopyLosses;
  readonly fileName: string;
  /** Makes the file and hands it over; answers why it could not, null when it could. */
  readonly save: () => Promise<string | null>;
}

export interface SaveDialog {
  /** Aborted once the window goes, by whatever way. */
  readonly signal: AbortSignal;
  /** Says how far looking through the workbook is. */
  readonly look: (sentence: string) => void;
  readonly ask: (asked: Asked) => void;
  readonly close: () => void;
}

/** Puts the window over the page, so that nothing is changed while the workbook is looked through, and the keyboard into it. */
export function saveDialog(): SaveDialog {
  const title = element('h2', { id: 'save-title', textContent: SAVE.title });
  const about = element('div');
  const progress = element('p', { className: 'save-progress' });
  progress.setAttribute('role', 'status');
  const buttons = element('div', { className: 'save-buttons' });
  const cancel = element('button', { type: 'button', className: 'save-cancel', textContent: SAVE.cancel });
  buttons.append(cancel);
  const dialog = element('dialog', { className: 'save' }, [title, about, progress, buttons]);
  dialog.setAttribute('aria-labelledby', title.id);
  // The spreadsheet listens on the page for keys that are typed into nothing.
  for (const kind of ['keydown', 'keypress', 'keyup'])
    dialog.addEventListener(kind, (event) => event.stopPropagation());
  const going = new AbortController();
  cancel.addEventListener('click', () => dialog.close());
  dialog.addEventListener('close', () => {
    going.abort();
    dialog.remove();
  });
  document.body.append(dialog);
  dialog.showModal();
  return {
    signal: going.signal,
    look: (sentence) => {
      progress.textContent = sentence;
    },
    ask: (asked) => {
      const { parts, save } = question(asked, dialog, progress);
      progress.textContent = '';
      about.replaceChildren(...parts);
      buttons.prepend(save);
      if (!save.disabled) save.focus({ preventScroll: true });
    },
    close: () => dialog.close(),
  };
}

/** What a copy keeps and does not, and the button that makes it. */
function question({ losses, fileName, save }: Asked, dialog: HTMLDialogElement, progress: HTMLElement) {
  const oddNames = sayOddNames(losses);
  const missing = sayMissing(losses);
  const sentences = [
    ...(missing === null ? [] : [missing]),
    ...sayLosses(losses),
    SAVE.kept,
    SAVE.remembered,
    SAVE.forgotten,
  ];
  const trouble = element('p', { className: 'save-trouble', textContent: oddNames ?? '' });
  trouble.setAttribute('role', 'alert');
  const saveButton = element('button', { type: 'button', className: 'save-do', textContent: SAVE.save });
  saveButton.disabled = oddNames !== null;
  saveButton.addEventListener('click', () => {
    if (dialog.ariaBusy === 'true') return;
    dialog.ariaBusy = 'true';
    trouble.textContent = '';
    progress.textContent = SAVE.making;
    void save().then((why) => {
      dialog.ariaBusy = 'false';
      progress.textContent = '';
      trouble.textContent = why ?? '';
      if (why === null) dialog.close();
    });
  });
  const list = element(
    'ul',
    {},
    sentences.map((sentence) => element('li', { textContent: sentence })),
  );
  const parts = [
    element('p', { textContent: SAVE.about }),
    list,
    element('p', { className: 'save-file', textContent: sayFile(fileName) }),
    trouble,
  ];
  return { parts, save: saveButton };
}
