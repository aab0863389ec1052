/** Leaving the page while a workbook of one's own has something in it that no file has: the browser asks first. */

/** What was changed in an opened workbook since it was opened or saved last. */
export interface Unsaved {
  readonly changed: () => void;
  readonly none: () => void;
}

/** Has the browser ask before the page is left with changes; its words are the browser's own. */
export function askBeforeLeaving(): Unsaved {
  // Only while there is something to ask: a page that listens may not be kept by the browser for going back.
  const ask = (event: BeforeUnloadEvent): void => event.preventDefault();
  return {
    changed: () => window.addEventListener('beforeunload', ask),
    none: () => window.removeEventListener('beforeunload', ask),
  };
}
