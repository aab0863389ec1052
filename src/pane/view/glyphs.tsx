/** The few signs that the pane needs besides words; each is drawn here. */
import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';

const useStyles = makeStyles({
  sign: { flexShrink: 0 },
  chevron: {
    transitionProperty: 'transform',
    transitionDuration: tokens.durationFaster,
  },
  down: { transform: 'rotate(90deg)' },
  flag: { color: tokens.colorPaletteMarigoldForeground2, '@media (forced-colors: active)': { color: 'CanvasText' } },
});

export function Chevron({ down }: { readonly down: boolean }) {
  const styles = useStyles();
  return (
    <svg
      className={mergeClasses(styles.sign, styles.chevron, down && styles.down)}
      width="12"
      height="12"
      viewBox="0 0 12 12"
      aria-hidden="true"
      focusable="false"
    >
      <path
        d="M4.5 2.5 8 6 4.5 9.5"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.3"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}

/** Stands at a club that waits for a person. */
export function Flag({ label }: { readonly label: string }) {
  const styles = useStyles();
  return (
    <svg
      className={mergeClasses(styles.sign, styles.flag)}
      width="8"
      height="14"
      viewBox="0 0 8 14"
      role="img"
      aria-label={label}
      focusable="false"
    >
      <path d="M4 1.5v7M4 12v.3" stroke="currentColor" strokeWidth="2.2" strokeLinecap="round" fill="none" />
    </svg>
  );
}

export function Cross() {
  return (
    <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true" focusable="false">
      <path d="m2.5 2.5 7 7m0-7-7 7" stroke="currentColor" strokeWidth="1.3" strokeLinecap="round" />
    </svg>
  );
}
