/**
 * Leaves the keyboard where a person has it. The spreadsheet takes it into the cells whenever one of them changes: as the page comes up,
 * and in the middle of what is done in the pane.
 */

/** Marks an element whose spreadsheet has the keyboard, or may take it. */
const HERE = 'data-keys-here';
const GUARDED = 'data-keys';

/** Lets the spreadsheet inside take the keyboard into its cells. */
export function letIn(inside: HTMLElement | null | undefined): void {
  inside?.closest(`[${GUARDED}]`)?.setAttribute(HERE, '');
}

/**
 * Keeps the cells of the spreadsheet that comes into the element from taking the keyboard, unless it is there already or was asked in.
 * Nothing in it takes the keyboard at all until what comes back is called.
 */
export function guardFocus(container: HTMLElement): () => void {
  const guarded = new WeakSet<HTMLElement>();
  const page = container.closest('body > *');
  container.setAttribute(GUARDED, '');
  // The cells take it as soon as they exist, before anything can be told to them.
  container.inert = true;
  const guard = (): void => {
    for (const editor of container.querySelectorAll<HTMLElement>('[contenteditable]')) {
      if (guarded.has(editor)) continue;
      guarded.add(editor);
      editor.focus = (options) => {
        if (container.hasAttribute(HERE)) HTMLElement.prototype.focus.call(editor, options);
      };
    }
  };
  new MutationObserver(guard).observe(container, { childList: true, subtree: true });
  container.addEventListener('pointerdown', () => letIn(container), { capture: true });
  const follow = ({ target }: FocusEvent): void => {
    if (!container.isConnected) document.removeEventListener('focusin', follow);
    if (!(target instanceof Element)) return;
    if (container.contains(target)) letIn(container);
    // What lies over the page, a list or the field of the formula bar, is neither here nor there.
    else if (page?.contains(target)) container.removeAttribute(HERE);
  };
  document.addEventListener('focusin', follow);
  return () => {
    container.inert = false;
  };
}
