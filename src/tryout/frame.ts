/** The page's frame, on screen before anything heavy is loaded; nothing in it moves when the rest comes in. */
import { TRYOUT } from './words';

export interface Frame {
  /** Where the spreadsheet goes. */
  readonly sheet: HTMLElement;
  /** Where the pane goes. */
  readonly pane: HTMLElement;
  readonly themeButton: HTMLButtonElement;
  /** Says why the selected cell shows an error; read out politely. */
  say(sentence: string): void;
  /** Takes the loading signs off the sheet. */
  sheetIsThere(): void;
  failed(): void;
}

/** Draws the frame into an element. */
export function drawFrame(root: HTMLElement): Frame {
  const sheet = element('div', { className: 'sheet' });
  const sheetWaiting = waiting('sheet-waiting', TRYOUT.comingSheet, 'sheet-cells');
  const pane = element('div', { className: 'pane' }, [waiting('pane-waiting', TRYOUT.comingPane, 'pane-lines')]);
  const status = element('p', { className: 'loading', role: 'status', textContent: TRYOUT.loading });
  const strip = element('p', { className: 'strip' });
  strip.setAttribute('aria-live', 'polite');
  const themeButton = element('button', { className: 'theme', type: 'button' });
  const switchButton = element('button', { className: 'switch', type: 'button', textContent: TRYOUT.showPane });
  const body = element('div', { className: 'body' }, [
    labelled('section', 'left', TRYOUT.sheetLabel, [
      element('div', { className: 'sheet-place' }, [sheet, sheetWaiting]),
      strip,
    ]),
    labelled('section', 'right', TRYOUT.paneLabel, [pane]),
  ]);
  switchButton.addEventListener('click', () => {
    const paneShown = body.classList.toggle('pane-first');
    switchButton.textContent = paneShown ? TRYOUT.showSheet : TRYOUT.showPane;
  });
  root.replaceChildren(header(status, switchButton, themeButton), body);
  return {
    sheet,
    pane,
    themeButton,
    say: (sentence) => {
      strip.textContent = sentence;
    },
    sheetIsThere: () => {
      sheetWaiting.remove();
      status.textContent = '';
    },
    failed: () => {
      status.textContent = TRYOUT.failed;
    },
  };
}

function header(status: HTMLElement, ...buttons: HTMLElement[]): HTMLElement {
  const help = element('a', {
    className: 'help',
    href: TRYOUT.helpUrl,
    target: '_blank',
    rel: 'noreferrer',
    textContent: TRYOUT.help,
  });
  const about = element('p', { className: 'about', textContent: TRYOUT.about });
  return element('header', { className: 'top' }, [
    element('h1', { className: 'name', textContent: TRYOUT.name }),
    about,
    status,
    help,
    ...buttons,
  ]);
}

function waiting(className: string, sentence: string, drawing: string): HTMLElement {
  const picture = element('div', { className: drawing });
  picture.setAttribute('aria-hidden', 'true');
  return element('div', { className: `waiting ${className}` }, [element('p', { textContent: sentence }), picture]);
}

function labelled(tag: 'section', className: string, label: string, children: readonly Node[]): HTMLElement {
  const made = element(tag, { className }, children);
  made.setAttribute('aria-label', label);
  return made;
}

function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]>,
  children: readonly Node[] = [],
): HTMLElementTagNameMap[Tag] {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...children);
  return made;
}
