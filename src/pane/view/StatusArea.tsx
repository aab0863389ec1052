/** What came of the last thing asked, said once to everybody; stays until it is closed or something else is asked. */
import { Button, makeStyles, mergeClasses, ProgressBar, tokens } from '@fluentui/react-components';
import type { Doing, Task } from '../state/paneState';
import type { Outcome } from '../state/work';
import { ACTIONS, COMMON, TASKS } from '../words';
import { Cross } from './glyphs';
import { Unbroken } from './Unbroken';

const useStyles = makeStyles({
  box: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr) 24px',
    columnGap: '8px',
    padding: '8px 8px 8px 10px',
    borderLeft: `3px solid ${tokens.colorBrandStroke1}`,
    backgroundColor: tokens.colorNeutralBackground3,
    maxHeight: '34vh',
    overflowY: 'auto',
  },
  bad: { borderLeftColor: tokens.colorPaletteRedBorder2 },
  ask: { borderLeftColor: tokens.colorPaletteMarigoldBorder2 },
  title: { margin: 0, fontWeight: tokens.fontWeightSemibold },
  text: { margin: '2px 0 0' },
  list: { margin: '4px 0 0', paddingLeft: '18px', overflowWrap: 'anywhere' },
  close: { minWidth: '24px', width: '24px', height: '24px', padding: 0 },
  buttons: { display: 'flex', columnGap: '8px', marginTop: '8px' },
  working: { padding: '6px 0' },
});

/** Lists longer than this are read by nobody; the first cells tell where to look. */
const MOST = 12;

function Cells({ cells }: { readonly cells: readonly string[] }) {
  const styles = useStyles();
  if (!cells.length) return null;
  return (
    <ul className={styles.list}>
      {cells.slice(0, MOST).map((cell) => (
        <li key={cell}>
          <Unbroken text={cell} />
        </li>
      ))}
      {cells.length > MOST && <li>{ACTIONS.andMore(cells.length - MOST)}</li>}
    </ul>
  );
}

interface StatusProps {
  /** Set half a second after the task began. */
  readonly slowTask: Task | null;
  /** What a screen's own deed says of itself while it runs. */
  readonly doing: Doing | null;
  readonly outcome: Outcome | null;
  readonly onWriteOver: () => void;
  readonly onMend: () => void;
  readonly onDismiss: () => void;
  readonly onStop: () => void;
}

function Said({
  outcome,
  onWriteOver,
  onMend,
  onDismiss,
}: Pick<StatusProps, 'onWriteOver' | 'onMend' | 'onDismiss'> & { readonly outcome: Outcome }) {
  const styles = useStyles();
  const occupied = outcome.kind === 'occupied';
  const tone = outcome.kind === 'failed' ? styles.bad : occupied || outcome.partly ? styles.ask : undefined;
  return (
    <div className={mergeClasses(styles.box, tone)}>
      <div>
        <p className={styles.title}>
          <Unbroken text={occupied ? ACTIONS.occupied : outcome.title} />
        </p>
        <p className={styles.text}>
          <Unbroken text={occupied ? ACTIONS.occupiedText(outcome.cells.length) : outcome.text} />
        </p>
        <Cells cells={occupied ? outcome.cells : outcome.list} />
        {occupied && (
          <div className={styles.buttons}>
            <Button size="small" onClick={onWriteOver}>
              {ACTIONS.writeOver}
            </Button>
            <Button size="small" appearance="subtle" onClick={onDismiss}>
              {ACTIONS.keep}
            </Button>
          </div>
        )}
        {outcome.kind === 'failed' && outcome.mend && (
          <div className={styles.buttons}>
            <Button size="small" onClick={onMend}>
              {outcome.mend.says}
            </Button>
          </div>
        )}
      </div>
      <Button
        appearance="subtle"
        className={styles.close}
        icon={<Cross />}
        aria-label={COMMON.dismiss}
        onClick={onDismiss}
      />
    </div>
  );
}

export function StatusArea({ slowTask, doing, outcome, onWriteOver, onMend, onDismiss, onStop }: StatusProps) {
  const styles = useStyles();
  const text = slowTask === 'deed' || slowTask === null ? (doing?.text ?? '') : TASKS[slowTask];
  return (
    <div role="status" aria-live="polite" aria-label={COMMON.status}>
      {slowTask && (
        <div className={styles.working}>
          <span>{text}</span>
          <ProgressBar aria-label={text} />
          {doing?.canStop && (
            <div className={styles.buttons}>
              <Button size="small" onClick={onStop}>
                {ACTIONS.stop}
              </Button>
            </div>
          )}
        </div>
      )}
      {!slowTask && outcome && (
        <Said outcome={outcome} onWriteOver={onWriteOver} onMend={onMend} onDismiss={onDismiss} />
      )}
    </div>
  );
}
