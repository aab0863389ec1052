/**
 * The pane's screens as tabs, in two lines of a narrow pane (what leads to a plan, the work that follows it), with the keys of the WAI-ARIA tabs pattern. Fluent's own tabs
 * bring a twentieth of the whole pane for these lines, and hidden focus marks that a check of access counts as faults.
 */
import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import type { KeyboardEvent } from 'react';
import { SCREEN_LINES, SCREENS, type Screen } from '../state/tools';
import { SCREEN_WORDS, SCREENS_LABEL } from '../words';

const useStyles = makeStyles({
  // Wide spacing of letters may need a further line; Excel's narrowest pane does not.
  line: { display: 'flex', flexWrap: 'wrap', justifyContent: 'space-between', columnGap: '6px' },
  tab: {
    minHeight: '32px',
    minWidth: '24px',
    padding: 0,
    border: 'none',
    borderBottom: '2px solid transparent',
    // A contrast theme draws what is transparent as well, and every tab would look chosen.
    '@media (forced-colors: active)': { borderBottomColor: 'Canvas' },
    background: 'none',
    color: tokens.colorNeutralForeground2,
    font: 'inherit',
    cursor: 'pointer',
    ':hover': { color: tokens.colorNeutralForeground1, borderBottomColor: tokens.colorNeutralStroke1 },
    ':focus-visible': { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: '-2px' },
  },
  chosen: {
    color: tokens.colorNeutralForeground1,
    borderBottomColor: tokens.colorCompoundBrandStroke,
    ':hover': { borderBottomColor: tokens.colorCompoundBrandStroke },
    '@media (forced-colors: active)': { borderBottomColor: 'Highlight' },
  },
});

/** What a tab shows; one panel stands for all of them. */
export const PANEL_ID = 'setwright-panel';
export const tabId = (screen: Screen) => `setwright-tab-${screen}`;

interface NavProps {
  readonly screen: Screen;
  readonly onScreen: (screen: Screen) => void;
}

/** The screen that a key goes to; undefined where it means nothing here. */
function screenAt(key: string, screen: Screen): Screen | undefined {
  const at = SCREENS.indexOf(screen);
  const last = SCREENS.length - 1;
  const to: Readonly<Record<string, number>> = {
    ArrowRight: at === last ? 0 : at + 1,
    ArrowLeft: at === 0 ? last : at - 1,
    Home: 0,
    End: last,
  };
  const next = to[key];
  return next === undefined ? undefined : SCREENS[next];
}

export function Nav({ screen, onScreen }: NavProps) {
  const styles = useStyles();
  const onKey = (event: KeyboardEvent) => {
    const next = screenAt(event.key, screen);
    if (!next) return;
    event.preventDefault();
    onScreen(next);
    document.getElementById(tabId(next))?.focus();
  };
  return (
    <div role="tablist" aria-label={SCREENS_LABEL} onKeyDown={onKey}>
      {SCREEN_LINES.map((line, at) => (
        <div key={at} role="presentation" className={styles.line}>
          {line.map((each) => (
            <button
              key={each}
              type="button"
              role="tab"
              id={tabId(each)}
              aria-selected={each === screen}
              aria-controls={PANEL_ID}
              tabIndex={each === screen ? 0 : -1}
              className={mergeClasses(styles.tab, each === screen && styles.chosen)}
              onClick={() => onScreen(each)}
            >
              {SCREEN_WORDS[each]}
            </button>
          ))}
        </div>
      ))}
    </div>
  );
}
