/** What is seldom needed, behind a line of text. */
import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { useState, type ReactNode } from 'react';

const useStyles = makeStyles({
  fold: {
    '& > summary': {
      minHeight: '28px',
      display: 'flex',
      alignItems: 'center',
      cursor: 'pointer',
      color: tokens.colorBrandForegroundLink,
      borderRadius: tokens.borderRadiusSmall,
    },
    '& > summary:focus-visible': { outline: `2px solid ${tokens.colorStrokeFocus2}` },
    '& > summary::before': { content: '"+"', width: '16px', flexShrink: 0 },
    '&[open] > summary::before': { content: '"−"' },
  },
  ruled: { borderTop: `1px solid ${tokens.colorNeutralStroke2}`, marginTop: '6px', paddingTop: '6px' },
  folded: { display: 'flex', flexDirection: 'column', rowGap: '6px', paddingTop: '4px' },
});

interface FoldProps {
  readonly title: string;
  /** Whether it begins open; from then on it is the person's. */
  readonly open?: boolean;
  /** A line above it sets it off from what stands before. */
  readonly ruled?: boolean;
  /** Told when it is unfolded, and when it is folded again. */
  readonly onFold?: (open: boolean) => void;
  readonly children: ReactNode;
}

export function Fold({ title, open = false, ruled = false, onFold, children }: FoldProps) {
  const styles = useStyles();
  const [begins] = useState(open);
  return (
    <details
      className={mergeClasses(styles.fold, ruled && styles.ruled)}
      open={begins}
      onToggle={({ currentTarget }) => onFold?.(currentTarget.open)}
    >
      <summary>{title}</summary>
      <div className={styles.folded}>{children}</div>
    </details>
  );
}
