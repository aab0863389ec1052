/** A verdict as a small drawing and a word: two posts are the tolerance, the dot is where the club ends up. */
import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import type { Verdict } from '../../core/index';
import { verdictWord } from '../words';

const useStyles = makeStyles({
  mark: { display: 'inline-block', verticalAlign: '-3px', flexShrink: 0, overflow: 'visible' },
  within: { color: tokens.colorPaletteGreenForeground1 },
  likely: { color: tokens.colorPaletteTealForeground2 },
  cannotTell: { color: tokens.colorPaletteMarigoldForeground2 },
  out: { color: tokens.colorPaletteRedForeground1 },
  quiet: { color: tokens.colorNeutralForeground3 },
  word: {
    display: 'inline-flex',
    alignItems: 'center',
    columnGap: '3px',
    verticalAlign: 'middle',
    whiteSpace: 'nowrap',
  },
  text: { color: tokens.colorNeutralForeground1 },
  forced: { '@media (forced-colors: active)': { color: 'CanvasText' } },
});

/** Colour class of a verdict, for marks drawn elsewhere. */
export function useVerdictColour(verdict: Verdict): string {
  const styles = useStyles();
  const colour = verdict === 'notHeld' || verdict === 'unknown' ? styles.quiet : styles[verdict];
  return mergeClasses(colour, styles.forced);
}

function Posts() {
  return <path d="M5 2.5v11M15 2.5v11" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" fill="none" />;
}

const DRAWINGS: Record<Verdict, JSX.Element> = {
  within: (
    <>
      <Posts />
      <circle cx="10" cy="8" r="3" fill="currentColor" />
    </>
  ),
  likely: (
    <>
      <Posts />
      <path d="M8.5 8h10" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" />
      <circle cx="11.8" cy="8" r="2.6" fill="currentColor" />
    </>
  ),
  cannotTell: (
    <>
      <Posts />
      <path d="M1 8h18" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" strokeDasharray="2.2 2.4" />
    </>
  ),
  out: (
    <>
      <path d="M2 2.5v11M11 2.5v11" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" fill="none" />
      <circle cx="16.5" cy="8" r="3" fill="currentColor" />
    </>
  ),
  notHeld: <circle cx="10" cy="8" r="2.4" fill="none" stroke="currentColor" strokeWidth="1.5" />,
  unknown: (
    <path
      d="M7.4 5.6a2.6 2.6 0 1 1 3.9 2.3c-.9.5-1.3 1-1.3 2M10 12.8v.2"
      stroke="currentColor"
      strokeWidth="1.7"
      strokeLinecap="round"
      fill="none"
    />
  ),
};

/** The drawing alone; whoever uses it says the word beside it or in its name. */
export function VerdictMark({ verdict }: { readonly verdict: Verdict }) {
  const styles = useStyles();
  return (
    <svg
      className={mergeClasses(styles.mark, useVerdictColour(verdict))}
      width="19"
      height="15"
      viewBox="0 0 20 16"
      aria-hidden="true"
      focusable="false"
    >
      {DRAWINGS[verdict]}
    </svg>
  );
}

export function VerdictWord({ verdict }: { readonly verdict: Verdict }) {
  const styles = useStyles();
  return (
    <span className={styles.word}>
      <VerdictMark verdict={verdict} />
      <span className={styles.text}>{verdictWord(verdict)}</span>
    </span>
  );
}
