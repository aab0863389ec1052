/** Lists one below the other, each with what can be done with it. */
import { Button, makeStyles, mergeClasses, tokens } from '@fluentui/react-components';

const useStyles = makeStyles({
  list: { margin: 0, padding: 0, listStyleType: 'none' },
  row: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr) auto',
    alignItems: 'center',
    columnGap: '8px',
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    padding: '6px 0',
  },
  title: { margin: 0, fontWeight: tokens.fontWeightSemibold, overflowWrap: 'anywhere' },
  text: {
    margin: 0,
    color: tokens.colorNeutralForeground2,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
  flagged: { color: tokens.colorPaletteRedForeground1 },
  buttons: { display: 'flex', columnGap: '4px' },
});

export interface ListRow {
  readonly key: string;
  readonly title: string;
  readonly text?: string;
  /** What the text says has to be mended. */
  readonly flagged?: boolean;
  readonly buttons: readonly { readonly says: string; readonly label: string; readonly onPress: () => void }[];
}

export function ListRows({ rows, busy }: { readonly rows: readonly ListRow[]; readonly busy: boolean }) {
  const styles = useStyles();
  return (
    <ul className={styles.list}>
      {rows.map(({ key, title, text, flagged, buttons }) => (
        <li key={key} className={styles.row}>
          <div>
            <p className={styles.title}>{title}</p>
            {text && <p className={mergeClasses(styles.text, flagged && styles.flagged)}>{text}</p>}
          </div>
          <div className={styles.buttons}>
            {buttons.map(({ says, label, onPress }) => (
              <Button key={says} size="small" aria-label={label} disabledFocusable={busy} onClick={onPress}>
                {says}
              </Button>
            ))}
          </div>
        </li>
      ))}
    </ul>
  );
}
