/** What came, was spoiled or was counted, typed in a few fields. */
import { Button, Combobox, Input, makeStyles, Option } from '@fluentui/react-components';
import { useId, useState } from 'react';
import type { Shop } from '../../../workbook/shop';
import type { StockForm } from '../../state/tools';
import type { PaneNow } from '../../state/usePane';
import { Choice, FieldLine } from '../fields';
import { Buttons, Part, Says } from './parts';
import { moveDeed } from './stockDeeds';
import { countables, type Countable } from './stockSeen';
import { STOCK_WORDS } from './stockWords';

const useStyles = makeStyles({
  field: { minWidth: 0, width: '100%' },
  input: { minWidth: 0, textOverflow: 'ellipsis' },
  list: { maxHeight: '50vh' },
});

interface ThingFieldProps {
  readonly id: string;
  readonly things: readonly Countable[];
  readonly chosen: Countable | undefined;
  readonly onChoose: (key: string) => void;
}

/** Typed letters narrow the shelves down. */
function ThingField({ id, things, chosen, onChoose }: ThingFieldProps) {
  const styles = useStyles();
  const [typed, setTyped] = useState<string | null>(null);
  const wanted = (typed ?? '').trim().toLowerCase();
  return (
    <Combobox
      id={id}
      className={styles.field}
      input={{ className: styles.input }}
      expandIcon={{ tabIndex: -1 }}
      listbox={{ className: styles.list }}
      placeholder={STOCK_WORDS.chooseItem}
      value={typed ?? chosen?.text ?? ''}
      selectedOptions={chosen ? [chosen.key] : []}
      onFocus={(event) => event.target.select()}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={() => setTyped(null)}
      onOptionSelect={(_, { optionValue }) => {
        if (optionValue === undefined) return;
        setTyped(null);
        onChoose(optionValue);
      }}
    >
      {things
        .filter(({ text }) => text.toLowerCase().includes(wanted))
        .map(({ key, text }) => (
          <Option key={key} value={key} text={text}>
            {text}
          </Option>
        ))}
    </Combobox>
  );
}

export function StockMove({ pane, shop }: { readonly pane: PaneNow; readonly shop: Shop }) {
  const styles = useStyles();
  const { state, does, send } = pane;
  const form = state.tools.stock;
  const change = (part: Partial<StockForm>) => send({ on: 'tool', tool: 'stock', change: part });
  const [kindId, thingId, quantityId, noteId] = [useId(), useId(), useId(), useId()];
  const things = countables(shop);
  const chosen = things.find(({ key }) => key === form.thing);
  const ready = chosen !== undefined && form.quantity.trim() !== '';
  const enter = () => {
    if (!chosen || !ready) return;
    const { shelf, item } = chosen;
    const { kind, quantity, note } = form;
    does.deed(moveDeed({ shelf, item, kind, quantity, note }, () => change({ quantity: '', note: '' })));
  };
  return (
    <Part title={STOCK_WORDS.move} ruled>
      <FieldLine label={STOCK_WORDS.what} id={kindId}>
        <Choice id={kindId} value={form.kind} options={STOCK_WORDS.kinds} onChoose={(kind) => change({ kind })} />
      </FieldLine>
      <FieldLine label={STOCK_WORDS.which} id={thingId}>
        <ThingField id={thingId} things={things} chosen={chosen} onChoose={(thing) => change({ thing })} />
      </FieldLine>
      <FieldLine label={form.kind === 'counted' ? STOCK_WORDS.found : STOCK_WORDS.quantity} id={quantityId}>
        <Input
          id={quantityId}
          className={styles.field}
          inputMode="decimal"
          contentAfter={STOCK_WORDS.units[chosen?.shelf ?? 'grip']}
          value={form.quantity}
          onChange={(_, { value }) => change({ quantity: value })}
        />
      </FieldLine>
      <FieldLine label={STOCK_WORDS.note} id={noteId}>
        <Input
          id={noteId}
          className={styles.field}
          placeholder={STOCK_WORDS.noteExample}
          value={form.note}
          onChange={(_, { value }) => change({ note: value })}
        />
      </FieldLine>
      <Buttons>
        <Button disabledFocusable={state.task !== null || !ready} onClick={enter}>
          {STOCK_WORDS.enter}
        </Button>
      </Buttons>
      {!ready && (
        <Says quiet small>
          {STOCK_WORDS.chooseFirst}
        </Says>
      )}
    </Part>
  );
}
