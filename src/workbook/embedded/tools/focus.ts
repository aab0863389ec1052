/**
 * Leaves the keyboard where a person has it. The spreadsheet takes it into the cells whenever one of them changes: as the page comes up,
 * and in the middle of what is done in the pane. It has to get it, or it would not take in what is typed later; so it is given back.
 */

/** Marks an element whose spreadsheet has the keyboard, or may take it. */
const HERE = 'data-keys-here';
const GUARDED = 'data-keys';

/** Lets the spreadsheet inside take the keyboard into its cells. */
export function letIn(inside: HTMLElement | null): void {
  inside?.closest(`[${GUARDED}]`)?.setAttribute(HERE, '');
}

/** Gives the keyboard back to what had it; to the top of the page where nothing did. */
function giveBack(to: EventTarget | null): void {
  if (to instanceof HTMLElement && to.isConnected) return to.focus({ preventScroll: true });
  // Tab goes on from where the last focus was, even if that is gone.
  const top = document.createElement('span');
  top.tabIndex = -1;
  document.body.prepend(top);
  top.focus({ preventScroll: true });
  top.remove();
}

/** Keeps the cells of the spreadsheet in the element from keeping the keyboard, unless it is there already, or was asked or brought in. */
export function guardFocus(container: HTMLElement): void {
  const page = container.closest('body > *');
  container.setAttribute(GUARDED, '');
  container.addEventListener('pointerdown', () => letIn(container), { capture: true });
  let byTab = false;
  const watchTab = ({ key }: KeyboardEvent): void => {
    if (key !== 'Tab') return;
    byTab = true;
    setTimeout(() => {
      byTab = false;
    });
  };
  const follow = ({ target, relatedTarget }: FocusEvent): void => {
    if (!container.isConnected) return stop();
    if (!(target instanceof HTMLElement)) return;
    const [isInside, isOver] = [container.contains(target), !page?.contains(target)];
    // The field of the formula bar lies over the page.
    const isTaken = target.isContentEditable && (isInside || isOver) && !byTab && !container.hasAttribute(HERE);
    // The spreadsheet hears of its focus first.
    if (isTaken) queueMicrotask(() => document.activeElement === target && giveBack(relatedTarget));
    else if (isInside) letIn(container);
    // A list that lies over the page is neither here nor there.
    else if (!isOver) container.removeAttribute(HERE);
  };
  const stop = (): void => {
    document.removeEventListener('focusin', follow);
    window.removeEventListener('keydown', watchTab, { capture: true });
  };
  document.addEventListener('focusin', follow);
  window.addEventListener('keydown', watchTab, { capture: true });
}
