/** Fields of the quote's screen. */
import { Input, makeStyles } from '@fluentui/react-components';
import { useId } from 'react';
import { FieldLine } from '../fields';

const useStyles = makeStyles({
  input: { minWidth: 0, width: '100%' },
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
