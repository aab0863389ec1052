/** Keeps the keyboard's place: what goes away under the focus hands it on, so that nobody begins anew at the top of the page. */
import { useEffect, type RefObject } from 'react';

const STOPS = 'button, summary, input, textarea, a[href], [role=combobox], [tabindex="0"]';

const stays = (each: HTMLElement) => each.isConnected && each.checkVisibility();
const isThere = (each: HTMLElement) => stays(each) && each.tabIndex >= 0;

/** What stands for a screen: its tab, or where there are no tabs its heading. */
function topOf(element: HTMLElement): HTMLElement | null {
  const tab = element.querySelector<HTMLElement>('[role=tab][aria-selected=true]');
  const top = tab ?? element.querySelector('h2');
  // A heading is no stop of Tab; it takes the focus all the same.
  if (top && !tab) top.tabIndex = -1;
  return top;
}

/**
 * Who takes the focus of something that went: the next stop that stood in the same part, or the one before it; where the whole
 * screen went, what stands for the new one.
 */
function heir(stops: readonly HTMLElement[], gone: HTMLElement, around: readonly Element[], top: HTMLElement | null) {
  const at = stops.indexOf(gone);
  const inOrder = [...stops.slice(at + 1), ...stops.slice(0, Math.max(at, 0)).reverse()].filter(isThere);
  for (const part of around) {
    const near = part.isConnected && inOrder.find((each) => part.contains(each));
    // Wider than the screen lie only the tabs themselves and what has no tab.
    if (near && !(top && part.contains(top))) return near;
  }
  return top ?? inOrder[0];
}

function partsAround(element: Element, within: Element): Element[] {
  const parts: Element[] = [];
  for (let part = element.parentElement; part && part !== within; part = part.parentElement) parts.push(part);
  return parts;
}

/** Watches over the focus inside an element. */
export function useKeptFocus(within: RefObject<HTMLElement>): void {
  useEffect(() => {
    const element = within.current;
    if (!element) return undefined;
    let focused: HTMLElement | null = null;
    let stops: HTMLElement[] = [];
    let around: Element[] = [];
    const see = () => {
      const now = document.activeElement;
      if (!(now instanceof HTMLElement) || !element.contains(now)) return;
      focused = now;
      stops = [...element.querySelectorAll<HTMLElement>(STOPS)];
      around = partsAround(now, element);
    };
    const leave = () =>
      // A press beside everything takes the focus off, too; what goes later has not lost it. What goes now is gone in a moment.
      queueMicrotask(() => {
        if (document.activeElement === document.body && focused && stays(focused)) focused = null;
      });
    const watch = new MutationObserver(() => {
      if (document.activeElement !== document.body) return see();
      if (!focused || stays(focused)) return undefined;
      const top = topOf(element);
      // A screen that is on its way brings its tab or heading along.
      if (!top && element.querySelector('[aria-busy=true]')) return undefined;
      const gone = focused;
      focused = null;
      heir(stops, gone, around, top)?.focus();
      return undefined;
    });
    element.addEventListener('focusin', see);
    element.addEventListener('focusout', leave);
    watch.observe(element, { childList: true, subtree: true });
    return () => {
      watch.disconnect();
      element.removeEventListener('focusin', see);
      element.removeEventListener('focusout', leave);
    };
  }, [within]);
}
