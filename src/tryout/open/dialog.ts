/** The window in which a file is read, told about, and put on the page or not. */
import { element } from '../element';
import { OPEN } from './words';

/** What the window shows at one time. */
export interface Showing {
  readonly title?: string;
  readonly fileName: string;
  readonly sentences?: readonly string[];
  /** What is listed below them; nothing is said where there is nothing in it. */
  readonly list?: { readonly title: string; readonly items: readonly string[] };
  readonly trouble?: string;
  /** Said while something goes on. */
  readonly progress?: string;
  readonly go?: { readonly words: string; readonly press: () => void };
  /** The word of the button that closes the window. */
  readonly leave: string;
}

export interface OpenDialog {
  readonly show: (showing: Showing) => void;
  /** Says how far it is, while something goes on. */
  readonly goOn: (sentence: string, share: number) => void;
  readonly close: () => void;
}

/** Puts an empty window over the page; `left` is called when it goes, by whatever way. */
export function openDialog(left: () => void): OpenDialog {
  const title = element('h2', { id: 'open-title' });
  const content = element('div');
  const dialog = element('dialog', { className: 'save open-window' }, [title, content]);
  dialog.setAttribute('aria-labelledby', title.id);
  // The spreadsheet listens on the page for keys that are typed into nothing.
  for (const kind of ['keydown', 'keypress', 'keyup'])
    dialog.addEventListener(kind, (event) => event.stopPropagation());
  dialog.addEventListener('close', () => {
    dialog.remove();
    left();
  });
  document.body.append(dialog);
  dialog.showModal();
  return {
    close: () => dialog.close(),
    goOn: (sentence, share) => {
      const [status, bar] = [content.querySelector('.open-progress'), content.querySelector('progress')];
      // The same again would be read out again.
      if (status && status.textContent !== sentence) status.textContent = sentence;
      if (bar) bar.value = share;
    },
    show: (showing) => {
      title.textContent = showing.title ?? OPEN.title;
      content.replaceChildren(...parts(showing, () => dialog.close()));
      // A long text is read from its beginning; the buttons stay in sight.
      content.querySelector<HTMLElement>('button')?.focus({ preventScroll: true });
    },
  };
}

function parts(
  { fileName, sentences = [], list: further, trouble, progress, go, leave }: Showing,
  close: () => void,
): Node[] {
  const list = (texts: readonly string[]): HTMLElement =>
    element(
      'ul',
      {},
      texts.map((text) => element('li', { textContent: text })),
    );
  const leaveButton = element('button', { type: 'button', className: 'save-cancel', textContent: leave });
  leaveButton.addEventListener('click', close);
  const goButton = go && element('button', { type: 'button', className: 'save-do', textContent: go.words });
  if (go) goButton?.addEventListener('click', go.press);
  return [
    element('p', { className: 'save-file', textContent: fileName }),
    ...(trouble === undefined ? [] : [alerting(trouble)]),
    ...(progress === undefined ? [] : [going(progress)]),
    ...(sentences.length > 0 ? [list(sentences)] : []),
    ...(further && further.items.length > 0 ? [element('p', { textContent: further.title }), list(further.items)] : []),
    element('div', { className: 'save-buttons' }, [...(goButton ? [goButton] : []), leaveButton]),
  ];
}

function alerting(text: string): HTMLElement {
  const trouble = element('p', { className: 'save-trouble', textContent: text });
  trouble.setAttribute('role', 'alert');
  return trouble;
}

function going(text: string): HTMLElement {
  const status = element('p', { className: 'open-progress', textContent: text });
  status.setAttribute('role', 'status');
  const bar = element('progress');
  bar.setAttribute('aria-hidden', 'true');
  return element('div', {}, [status, bar]);
}
