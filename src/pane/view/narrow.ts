/**
 * How narrow the pane is, for rules of its looks: asked of the pane itself, since on the try-out page it is one column of a wide
 * window. The pane's outermost element is the container. A browser too old for this shows the pane as if it were wide. The styles'
 * compiler runs this file as it stands: no types in it.
 */

/** About as narrow as Excel makes a pane. */
export const NARROW = '@container pane (max-width: 360px)';

/** Much enlarged: hardly a word beside another. */
export const TINY = '@container pane (max-width: 239px)';
