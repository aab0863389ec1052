/** Before anything was set up: what it is for, in two lines, and the one button that starts it. */
import { Button, makeStyles, tokens } from '@fluentui/react-components';
import { FIRST_RUN } from '../words';

const useStyles = makeStyles({
  screen: { display: 'flex', flexDirection: 'column', alignItems: 'flex-start', rowGap: '12px', paddingTop: '8px' },
  title: {
    margin: 0,
    fontSize: tokens.fontSizeBase500,
    lineHeight: tokens.lineHeightBase500,
    fontWeight: tokens.fontWeightSemibold,
  },
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground2 },
  buttons: { display: 'flex', flexWrap: 'wrap', columnGap: '8px', rowGap: '8px' },
});

interface FirstRunProps {
  readonly skipped: boolean;
  readonly busy: boolean;
  readonly onSetUp: () => void;
  readonly onLists: () => void;
  readonly onSkip: () => void;
}

export function FirstRun({ skipped, busy, onSetUp, onLists, onSkip }: FirstRunProps) {
  const styles = useStyles();
  return (
    <div className={styles.screen}>
      <h2 className={styles.title}>{FIRST_RUN.title}</h2>
      {skipped ? (
        <p className={styles.text}>{FIRST_RUN.skipped}</p>
      ) : (
        <>
          <p className={styles.text}>{FIRST_RUN.what}</p>
          <p className={styles.quiet}>{FIRST_RUN.makes}</p>
        </>
      )}
      <div className={styles.buttons}>
        <Button appearance={skipped ? 'secondary' : 'primary'} disabledFocusable={busy} onClick={onSetUp}>
          {FIRST_RUN.setUp}
        </Button>
        <Button disabledFocusable={busy} onClick={onLists}>
          {FIRST_RUN.ownLists}
        </Button>
        {!skipped && (
          <Button appearance="subtle" onClick={onSkip}>
            {FIRST_RUN.notNow}
          </Button>
        )}
      </div>
    </div>
  );
}
