/** The page's frame, on screen before anything heavy is loaded; nothing in it moves when the rest comes in. */
import { element } from './element';
import { skipLinks, turnsOf } from './turns';
import { TRYOUT } from './words';

export interface Frame {
  /** Where the spreadsheet goes. */
  readonly sheet: HTMLElement;
  /** A place for another spreadsheet, as large and not yet seen: `show` puts it where the one before was, `drop` takes it away again. */
  nextSheet(): NextSheet;
  /** Says what stands on the page. */
  about(sentence: { readonly file: string; readonly rest: string }): void;
  /** Where the pane goes. */
  readonly pane: HTMLElement;
  readonly themeButton: HTMLButtonElement;
  /** Pressed by nobody until it is enabled. */
  readonly saveButton: HTMLButtonElement;
  /** The same. */
  readonly openButton: HTMLButtonElement;
  /** Says why the selected cell shows an error, null when it does not; read out politely. */
  say(sentence: string | null): void;
  /** Says how something goes that was asked for; read out politely. */
  tell(sentence: string): void;
  /** Lets the keyboard go to the cells, which `focusSheet` does. */
  takeTurns(focusSheet: () => void): void;
  /** Says that the pane can be used and the sheet is still on its way. */
  paneIsThere(): void;
  /** Takes the loading signs off the sheet. */
  sheetIsThere(): void;
  /** Says what could not be loaded, in the places that stay empty too. */
  failed(): void;
}

export interface NextSheet {
  readonly place: HTMLElement;
  readonly show: () => void;
  readonly drop: () => void;
}

/** Draws the frame into an element. */
export function drawFrame(root: HTMLElement): Frame {
  const sheet = element('div', { className: 'sheet' });
  const sheetWaiting = waiting('sheet-waiting', TRYOUT.comingSheet, 'sheet-cells');
  const paneWaiting = waiting('pane-waiting', TRYOUT.comingPane, 'pane-lines');
  // As the pane will be, so that its place is known from the start.
  const pane = element('div', { className: 'pane', id: 'pane' }, [element('main', {}, [paneWaiting])]);
  const status = element('p', { className: 'loading', role: 'status', textContent: TRYOUT.loading });
  const strip = element('p', { className: 'strip', textContent: TRYOUT.noError });
  strip.setAttribute('aria-live', 'polite');
  const themeButton = element('button', { className: 'theme', type: 'button' });
  const saveButton = element('button', {
    className: 'save-button',
    type: 'button',
    textContent: TRYOUT.save,
    disabled: true,
  });
  const openButton = element('button', {
    className: 'open-button',
    type: 'button',
    textContent: TRYOUT.open,
    disabled: true,
  });
  const about = element('p', { className: 'about', textContent: TRYOUT.about });
  const sheetPlace = element('div', { className: 'sheet-place', id: 'workbook' }, [sheet, sheetWaiting]);
  const switchButton = element('button', { className: 'switch', type: 'button', textContent: TRYOUT.showPane });
  const body = element('div', { className: 'body' }, [
    labelledSection('left', TRYOUT.sheetLabel, [sheetPlace, strip]),
    // No landmark of its own: what comes into it brings one.
    element('div', { className: 'right' }, [pane]),
  ]);
  switchButton.addEventListener('click', () => {
    const paneShown = body.classList.toggle('pane-first');
    switchButton.textContent = paneShown ? TRYOUT.showSheet : TRYOUT.showPane;
  });
  const skips = skipLinks();
  const top = header(skips.links, about, status, switchButton, openButton, saveButton, themeButton);
  const turns = turnsOf({ top, pane, sheet: sheetPlace, switchButton }, skips);
  root.replaceChildren(top, body);
  let paneThere = false;
  return {
    sheet,
    pane,
    themeButton,
    saveButton,
    openButton,
    nextSheet: () => nextSheet(sheetPlace),
    about: ({ file, rest }) => {
      const parts = [
        element('span', { className: 'about-file', textContent: file, title: file }),
        element('span', { className: 'about-rest', textContent: rest }),
      ];
      about.replaceChildren(...parts);
      about.classList.add('about-opened');
    },
    tell: (sentence) => {
      status.textContent = sentence;
    },
    say: (sentence) => {
      strip.textContent = sentence ?? TRYOUT.noError;
      strip.classList.toggle('strip-error', sentence !== null);
    },
    takeTurns: turns.take,
    paneIsThere: () => {
      paneThere = true;
      status.textContent = TRYOUT.loadingSheet;
    },
    sheetIsThere: () => {
      sheetWaiting.remove();
      top.classList.remove('top-loading');
      status.textContent = '';
    },
    failed: () => {
      const sentence = paneThere ? TRYOUT.sheetFailed : TRYOUT.failed;
      status.textContent = sentence;
      for (const each of paneThere ? [sheetWaiting] : [sheetWaiting, paneWaiting])
        each.replaceChildren(element('p', { textContent: sentence }));
    },
  };
}

function nextSheet(sheetPlace: HTMLElement): NextSheet {
  const place = element('div', { className: 'sheet sheet-next' });
  const before = [...sheetPlace.children];
  sheetPlace.append(place);
  return {
    place,
    show: () => {
      for (const old of before) old.remove();
      place.classList.remove('sheet-next');
    },
    drop: () => place.remove(),
  };
}

function header(skips: HTMLElement, about: HTMLElement, status: HTMLElement, ...buttons: HTMLElement[]): HTMLElement {
  const help = element('a', {
    className: 'help',
    href: TRYOUT.helpUrl,
    target: '_blank',
    rel: 'noreferrer',
    textContent: TRYOUT.help,
  });
  return element('header', { className: 'top top-loading' }, [
    skips,
    element('h1', { className: 'name', textContent: TRYOUT.name }),
    element('div', { className: 'says' }, [about, status]),
    help,
    ...buttons,
  ]);
}

function waiting(className: string, sentence: string, drawing: string): HTMLElement {
  const picture = element('div', { className: drawing });
  picture.setAttribute('aria-hidden', 'true');
  return element('div', { className: `waiting ${className}` }, [element('p', { textContent: sentence }), picture]);
}

function labelledSection(className: string, label: string, children: readonly Node[]): HTMLElement {
  const made = element('section', { className }, children);
  made.setAttribute('aria-label', label);
  return made;
}
