/** A label and what it labels on one line, so that a whole set of choices fits a narrow pane. */
import { Dropdown, makeStyles, Option, tokens } from '@fluentui/react-components';
import { useId, type ReactNode } from 'react';
import { TINY } from './narrow';
import { useOwn } from './own';

/** A pane of the usual width, enlarged to twice its size: a label stands above its field. */
const useStyles = makeStyles({
  line: {
    display: 'grid',
    gridTemplateColumns: '82px minmax(0, 1fr)',
    alignItems: 'center',
    columnGap: '8px',
    minHeight: '32px',
    [TINY]: { gridTemplateColumns: 'minmax(0, 1fr)' },
  },
  label: { color: tokens.colorNeutralForeground2 },
  says: {
    gridColumn: '2',
    [TINY]: { gridColumn: '1' },
    margin: '2px 0 0',
    // Always there, so that what comes into it is read out.
    ':empty': { margin: 0 },
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
  pair: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr) 84px',
    columnGap: '8px',
    [TINY]: { gridTemplateColumns: 'minmax(0, 1fr)' },
  },
  whole: { gridTemplateColumns: 'minmax(0, 1fr)' },
  choice: { minWidth: 0, width: '100%' },
  list: { maxHeight: '60vh' },
});

interface LineProps {
  readonly label: string;
  readonly id: string;
  /** What the field wants, while it holds something else. */
  readonly says?: string | undefined;
  readonly saysId?: string;
  readonly children: ReactNode;
}

export function FieldLine({ label, id, says, saysId, children }: LineProps) {
  const styles = useStyles();
  return (
    <div className={styles.line}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      {children}
      <p id={saysId} className={styles.says} role="status">
        {useOwn(says ?? '')}
      </p>
    </div>
  );
}

/** A field and the number that goes with its choice, side by side. */
export function Pair({ children }: { readonly children: ReactNode }) {
  return <div className={useStyles().pair}>{children}</div>;
}

interface ChoiceProps<Value extends string> {
  readonly id?: string;
  readonly label?: string;
  readonly value: Value;
  readonly options: Readonly<Record<Value, string>>;
  readonly onChoose: (value: Value) => void;
  readonly size?: 'small' | 'medium';
}

/** One of a few fixed words. */
export function Choice<Value extends string>({ id, label, value, options, onChoose, size }: ChoiceProps<Value>) {
  const styles = useStyles();
  const own = useId();
  return (
    <Dropdown
      id={id ?? own}
      aria-label={label}
      className={styles.choice}
      listbox={{ className: styles.list }}
      size={size}
      value={options[value]}
      selectedOptions={[value]}
      onOptionSelect={(_, { optionValue }) => onChoose(optionValue as Value)}
    >
      {(Object.keys(options) as Value[]).map((key) => (
        <Option key={key} value={key}>
          {options[key]}
        </Option>
      ))}
    </Dropdown>
  );
}
