/** Fields and folds of the quote's screen. */
import { Input, makeStyles, tokens } from '@fluentui/react-components';
import { useId, useState, type ReactNode } from 'react';
import { FieldLine } from '../fields';

const useStyles = makeStyles({
  input: { minWidth: 0, width: '100%' },
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
  folded: { display: 'flex', flexDirection: 'column', rowGap: '6px', paddingTop: '4px' },
});

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly isNumber?: boolean;
  readonly onType: (text: string) => void;
}

/** A label and a field on one line. */
export function TextField({ label, value, placeholder, isNumber = false, onType }: TextFieldProps) {
  const styles = useStyles();
  const id = useId();
  return (
    <FieldLine label={label} id={id}>
      <Input
        id={id}
        className={styles.input}
        inputMode={isNumber ? 'decimal' : 'text'}
        placeholder={placeholder}
        value={value}
        onChange={(_, data) => onType(data.value)}
      />
    </FieldLine>
  );
}

interface FoldProps {
  readonly title: string;
  /** Whether it begins open; from then on it is the person's. */
  readonly open?: boolean;
  readonly children: ReactNode;
}

/** What is seldom needed, behind a line of text. */
export function Fold({ title, open = false, children }: FoldProps) {
  const styles = useStyles();
  const [begins] = useState(open);
  return (
    <details className={styles.fold} open={begins}>
      <summary>{title}</summary>
      <div className={styles.folded}>{children}</div>
    </details>
  );
}
