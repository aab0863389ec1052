/** Whose clubs are planned: a job, or the rows of Clubs that are selected in the sheet. */
import { Dropdown, makeStyles, Option, tokens } from '@fluentui/react-components';
import { useId } from 'react';
import type { ShopSeen, Who } from '../state/work';
import { WHO } from '../words';
import { FieldLine } from './fields';

const useStyles = makeStyles({
  field: { minWidth: 0, width: '100%' },
  list: { maxHeight: '60vh' },
  option: { display: 'block', minWidth: 0 },
  name: { display: 'block', overflowWrap: 'anywhere' },
  detail: { display: 'block', fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground2 },
});

const SELECTION = 'selection';
const keyOf = (who: Who) => (who.by === 'selection' ? SELECTION : `job:${who.job}`);

interface WhoProps {
  readonly shop: ShopSeen;
  readonly who: Who;
  readonly selected: number;
  readonly onWho: (who: Who) => void;
}

export function WhoField({ shop, who, selected, onWho }: WhoProps) {
  const styles = useStyles();
  const id = useId();
  const job = who.by === 'job' ? shop.jobs.find((each) => each.job === who.job) : undefined;
  const shown = who.by === 'selection' ? WHO.selection : job ? WHO.job(job) : WHO.none;
  return (
    <FieldLine label={WHO.label} id={id} says={who.by === 'selection' ? WHO.selectionNow(selected) : undefined}>
      <Dropdown
        id={id}
        className={styles.field}
        listbox={{ className: styles.list }}
        value={shown}
        selectedOptions={[keyOf(who)]}
        onOptionSelect={(_, { optionValue = '' }) =>
          onWho(optionValue === SELECTION ? { by: 'selection' } : { by: 'job', job: optionValue.slice('job:'.length) })
        }
      >
        {shop.jobs.map((each) => (
          <Option key={each.job} value={`job:${each.job}`} text={WHO.job(each)}>
            <span className={styles.option}>
              <span className={styles.name}>{WHO.job(each)}</span>
              <span className={styles.detail}>{WHO.jobDetail(each)}</span>
            </span>
          </Option>
        ))}
        <Option value={SELECTION}>{WHO.selection}</Option>
      </Dropdown>
    </FieldLine>
  );
}
