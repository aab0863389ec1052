/** How the keyboard goes from part to part of the page: links at its top, and F6, as in Office. */
import { element } from './element';
import { TRYOUT } from './words';

export interface Turns {
  /** Lets F6 take the keyboard round: in a sheet Tab only ever moves from cell to cell. */
  readonly take: (focusSheet: () => void) => void;
}

/** What the keyboard goes round. */
export interface Parts {
  readonly top: HTMLElement;
  readonly pane: HTMLElement;
  readonly sheet: HTMLElement;
  /** On a narrow page only one of sheet and pane is on screen: this shows the other. */
  readonly switchButton: HTMLButtonElement;
}

const STOPS = 'button, select, input, a[href], [tabindex="0"]';

const isShown = (part: HTMLElement): boolean => part.checkVisibility({ visibilityProperty: true });

/** The first of a part that takes keys; a link past it all is none. */
function focusIn(part: HTMLElement): void {
  [...part.querySelectorAll<HTMLElement>(STOPS)]
    .find((each) => !each.matches('.skip, :disabled') && isShown(each))
    ?.focus();
}

/** Links that are seen while they have the focus, for the top of the page. */
export function skipLinks(): {
  readonly links: HTMLElement;
  readonly toPane: HTMLElement;
  readonly toCells: HTMLElement;
} {
  const toCells = element('a', { className: 'skip', href: '#workbook', textContent: TRYOUT.skipToCells });
  const toPane = element('a', { className: 'skip', href: '#pane', textContent: TRYOUT.skipToPane });
  return { links: element('div', { className: 'skips' }, [toCells, toPane]), toPane, toCells };
}

/** Brings links and F6 to life; the cells can be gone to once it is known how. */
export function turnsOf(parts: Parts, { toPane, toCells }: ReturnType<typeof skipLinks>): Turns {
  const { top, pane, sheet, switchButton } = parts;
  let focusSheet = (): void => undefined;
  const bringUp = (part: HTMLElement): void => {
    if (!isShown(part)) switchButton.click();
  };
  const goToPane = (): void => {
    bringUp(pane);
    focusIn(pane);
  };
  const goToCells = (): void => {
    bringUp(sheet);
    focusSheet();
  };
  const follow = (link: HTMLElement, go: () => void): void =>
    link.addEventListener('click', (event) => {
      event.preventDefault();
      go();
    });
  follow(toPane, goToPane);
  follow(toCells, goToCells);
  const turn = (event: KeyboardEvent): void => {
    if (event.key !== 'F6' || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    // A window over the page keeps the keyboard.
    if (document.querySelector('dialog[open]')) return;
    const ways = [goToCells, goToPane, () => focusIn(top)];
    const now = document.activeElement;
    const here = pane.contains(now) ? 1 : top.contains(now) ? 2 : 0;
    ways[(here + (event.shiftKey ? 2 : 1)) % ways.length]?.();
  };
  return {
    take: (focus) => {
      focusSheet = focus;
      // Before the spreadsheet hears of the key.
      window.addEventListener('keydown', turn, { capture: true });
    },
  };
}
