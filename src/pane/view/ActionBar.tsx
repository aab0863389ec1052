/** What can be done with the plan, in sight wherever a plan is made, and it says beforehand what it will write; elsewhere only taking back. */
import { Button, makeStyles, tokens } from '@fluentui/react-components';
import type { Choices } from '../../workbook/choices';
import type { Where } from '../state/work';
import { ACTIONS, placeText, willWriteText } from '../words';
import { Choice } from './fields';
import { TINY } from './narrow';
import { Unbroken } from './Unbroken';

const useStyles = makeStyles({
  says: {
    margin: 0,
    minHeight: '32px',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
  fill: {
    display: 'grid',
    gridTemplateColumns: 'auto minmax(0, 1fr)',
    gap: '6px 8px',
    [TINY]: { gridTemplateColumns: 'minmax(0, 1fr)' },
  },
  main: { minWidth: '104px' },
  others: { display: 'flex', justifyContent: 'space-between', columnGap: '8px' },
  undo: { display: 'flex', justifyContent: 'flex-end' },
  named: { overflowWrap: 'anywhere', textAlign: 'right' },
  other: { paddingLeft: '4px', paddingRight: '4px', minWidth: 0, fontWeight: tokens.fontWeightRegular },
});

interface ActionProps {
  /** Whether the screen leads to a plan. */
  readonly planning: boolean;
  readonly clubs: number;
  /** How many of them the choices go to. */
  readonly chosen: number;
  readonly choices: Choices;
  readonly where: Where;
  readonly planSheet: string;
  readonly busy: boolean;
  /** What *Undo* takes back, as far as it is known; null: nothing. */
  readonly undoes: string | null | undefined;
  readonly onWhere: (where: Where) => void;
  readonly onFill: () => void;
  readonly onFreeze: () => void;
  readonly onUndo: () => void;
}

export function ActionBar({
  planning,
  clubs,
  chosen,
  choices,
  where,
  planSheet,
  busy,
  undoes,
  onWhere,
  onFill,
  onFreeze,
  onUndo,
}: ActionProps) {
  const styles = useStyles();
  const places: Record<Where, string> = { planSheet: ACTIONS.planSheet, openSheet: ACTIONS.openSheet };
  const undo = (
    <Button
      className={styles.other}
      size="small"
      appearance="transparent"
      disabledFocusable={busy || undoes === null}
      onClick={onUndo}
    >
      <span className={styles.named}>{ACTIONS.undo(undoes)}</span>
    </Button>
  );
  if (!planning) return <div className={styles.undo}>{undo}</div>;
  return (
    <>
      <p className={styles.says}>
        <Unbroken text={clubs ? willWriteText(choices, chosen, placeText(where, planSheet)) : ACTIONS.nothing} />
      </p>
      <div className={styles.fill}>
        <Button className={styles.main} appearance="primary" disabledFocusable={busy || !clubs} onClick={onFill}>
          {ACTIONS.fill}
        </Button>
        <Choice label={ACTIONS.where} value={where} options={places} onChoose={onWhere} />
      </div>
      <div className={styles.others}>
        <Button
          className={styles.other}
          size="small"
          appearance="transparent"
          disabledFocusable={busy}
          onClick={onFreeze}
        >
          {ACTIONS.freeze}
        </Button>
        {undo}
      </div>
    </>
  );
}
