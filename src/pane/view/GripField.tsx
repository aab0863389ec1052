/** The grip to fit: typed letters narrow Stock down, by item, description, size or core. */
import { Combobox, makeStyles, Option, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { GripSeen } from '../state/work';
import { findGrips } from '../state/findGrips';
import { WHAT } from '../words';

const useStyles = makeStyles({
  field: { minWidth: 0, width: '100%' },
  input: { minWidth: 0, textOverflow: 'ellipsis' },
  option: { display: 'block', minWidth: 0 },
  name: { display: 'block', overflowWrap: 'anywhere' },
  detail: { display: 'block', fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground2 },
  list: { maxHeight: '50vh' },
});

/** `Option` wants a value that is not blank. */
const SHEET = ' ';

interface GripFieldProps {
  readonly id: string;
  readonly grips: readonly GripSeen[];
  readonly item: string;
  /** What no item stands for; left out: as in the sheet. */
  readonly blank?: string;
  readonly onChoose: (item: string) => void;
}

export function GripField({ id, grips, item, blank = WHAT.asInSheet, onChoose }: GripFieldProps) {
  const styles = useStyles();
  const [typed, setTyped] = useState<string | null>(null);
  const chosen = grips.find((grip) => grip.item === item);
  const { found, more } = findGrips(grips, typed ?? '');
  return (
    <Combobox
      id={id}
      className={styles.field}
      input={{ className: styles.input }}
      // The arrow keys open the list: the arrow need not be a stop of its own.
      expandIcon={{ tabIndex: -1 }}
      listbox={{ className: styles.list }}
      value={typed ?? (chosen ? WHAT.gripName(chosen) : blank)}
      selectedOptions={[item || SHEET]}
      onFocus={(event) => event.target.select()}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={() => setTyped(null)}
      onOptionSelect={(_, { optionValue }) => {
        // Typing tells that the old choice no longer fits what is typed; the choice stays until another is made.
        if (optionValue === undefined) return;
        setTyped(null);
        onChoose(optionValue.trim());
      }}
    >
      {!typed && (
        <Option value={SHEET} text={blank}>
          {blank}
        </Option>
      )}
      {found.map((grip) => (
        <Option key={grip.item} value={grip.item} text={WHAT.gripName(grip)}>
          <span className={styles.option}>
            <span className={styles.name}>{WHAT.gripName(grip)}</span>
            <span className={styles.detail}>{WHAT.gripDetail(grip)}</span>
          </span>
        </Option>
      ))}
      {more > 0 && (
        <Option value="more" disabled text={WHAT.moreGrips(more)}>
          {WHAT.moreGrips(more)}
        </Option>
      )}
      {typed && !found.length && (
        <Option value="none" disabled text={WHAT.noGrip}>
          {WHAT.noGrip}
        </Option>
      )}
    </Combobox>
  );
}
