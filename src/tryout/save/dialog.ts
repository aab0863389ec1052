/** The window in which a person learns what a copy keeps, and saves it. */
import { element } from '../element';
import { SAVE, sayFile, sayLosses, sayMissing, sayOddNames, type CopyLosses } from './words';

export interface Asked {
  readonly losses: CopyLosses;
  readonly fileName: string;
  /** Makes the file and hands it over; answers why it could not, null when it could. */
  readonly save: () => Promise<string | null>;
}

/** Shows it over the page and puts the keyboard into it; it goes when the file is made or the person cancels. */
export function askToSave({ losses, fileName, save }: Asked): void {
  const oddNames = sayOddNames(losses);
  const title = element('h2', { id: 'save-title', textContent: SAVE.title });
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
  const progress = element('p', { className: 'save-progress' });
  progress.setAttribute('role', 'status');
  const saveButton = element('button', { type: 'button', className: 'save-do', textContent: SAVE.save });
  saveButton.disabled = oddNames !== null;
  const cancelButton = element('button', { type: 'button', className: 'save-cancel', textContent: SAVE.cancel });
  const dialog = element('dialog', { className: 'save' }, [
    title,
    element('p', { textContent: SAVE.about }),
    element(
      'ul',
      {},
      sentences.map((sentence) => element('li', { textContent: sentence })),
    ),
    element('p', { className: 'save-file', textContent: sayFile(fileName) }),
    trouble,
    progress,
    element('div', { className: 'save-buttons' }, [saveButton, cancelButton]),
  ]);
  dialog.setAttribute('aria-labelledby', title.id);
  // The spreadsheet listens on the page for keys that are typed into nothing.
  for (const kind of ['keydown', 'keypress', 'keyup'])
    dialog.addEventListener(kind, (event) => event.stopPropagation());
  cancelButton.addEventListener('click', () => dialog.close());
  dialog.addEventListener('close', () => dialog.remove());
  saveButton.addEventListener('click', () => {
    if (dialog.ariaBusy === 'true') return;
    dialog.ariaBusy = 'true';
    trouble.textContent = '';
    progress.textContent = SAVE.making;
    // A frame is drawn first, so that the words are seen while the file is made.
    requestAnimationFrame(() => {
      void save().then((why) => {
        dialog.ariaBusy = 'false';
        progress.textContent = '';
        trouble.textContent = why ?? '';
        if (why === null) dialog.close();
      });
    });
  });
  document.body.append(dialog);
  dialog.showModal();
}
