import type { ReactElement } from 'react';
import type { PaneNow } from '../../state/usePane';

/** What a screen that helps choosing is given. */
export interface ToolProps {
  readonly pane: PaneNow;
  /** What keeps the clubs from being planned; a hand can be measured all the same. */
  readonly obstacle: ReactElement | null;
}
