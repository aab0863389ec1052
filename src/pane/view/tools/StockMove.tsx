/** What came, went, was counted or ordered, typed in a few fields. */
import { Button, Combobox, Input, makeStyles, Option } from '@fluentui/react-components';
import { useId, useMemo, useState } from 'react';
import type { PlacedOrder } from '../../../core/index';
import { folded } from '../../../workbook/headings';
import type { Shop } from '../../../workbook/shop';
import type { StockForm } from '../../state/tools';
import type { PaneNow } from '../../state/usePane';
import { Choice, FieldLine } from '../fields';
import { Buttons, Part, Says } from './parts';
import { moveDeed, thingDeed } from './stockDeeds';
import { countables, type Countable } from './stockSeen';
import { quantityText } from '../../../words/stock';
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

interface StockMoveProps {
  readonly pane: PaneNow;
  readonly shop: Shop;
  /** Orders of which something is still to come. */
  readonly orders: readonly PlacedOrder[];
}

interface OrderFieldProps extends Pick<StockMoveProps, 'orders'> {
  readonly form: StockForm;
  readonly chosen: Countable | undefined;
  readonly onChange: (order: string | null) => void;
}

const BY_ITSELF = 'any';
const NONE = 'none';

/** Which order it belongs to, where that may be asked: of what is ordered a number, of what came one of those that wait for it. */
function OrderField({ form, chosen, orders, onChange }: OrderFieldProps) {
  const styles = useStyles();
  const id = useId();
  const { kind, order } = form;
  if (kind === 'ordered') {
    return (
      <FieldLine label={STOCK_WORDS.orderNo} id={id}>
        <Input
          id={id}
          className={styles.field}
          placeholder={STOCK_WORDS.nextNumber}
          value={order ?? ''}
          onChange={(_, { value }) => onChange(value)}
        />
      </FieldLine>
    );
  }
  const waiting = chosen && kind !== 'counted' ? waitingFor(orders, chosen) : {};
  if ((kind !== 'arrived' && kind !== 'cancelled') || Object.keys(waiting).length === 0) return null;
  const options: Readonly<Record<string, string>> = {
    [BY_ITSELF]: STOCK_WORDS.anyOrder,
    ...waiting,
    ...(kind === 'arrived' ? { [NONE]: STOCK_WORDS.noOrder } : {}),
  };
  const value = order === null ? NONE : order === '' ? BY_ITSELF : keyOf(order);
  return (
    <FieldLine label={STOCK_WORDS.whichOrder} id={id}>
      <Choice
        id={id}
        value={value in options ? value : BY_ITSELF}
        options={options}
        onChoose={(key) => onChange(key === NONE ? null : key === BY_ITSELF ? '' : key.slice(KEY.length))}
      />
    </FieldLine>
  );
}

/** Keys that are numbers alone would be put first. */
const KEY = 'order ';

function keyOf(order: string): string {
  return `${KEY}${order}`;
}

/** Orders that wait for a thing, each with how much of it is to come. */
function waitingFor(orders: readonly PlacedOrder[], { shelf, item }: Countable): Readonly<Record<string, string>> {
  const found = orders.flatMap(({ order, lines }) => {
    const line = lines.find((each) => each.shelf === shelf && folded(each.item) === folded(item));
    const toCome = line ? line.outstanding : 0;
    return toCome > 0 ? [[keyOf(order), STOCK_WORDS.ofOrder(order, quantityText(shelf, toCome))] as const] : [];
  });
  return Object.fromEntries(found);
}

export function StockMove({ pane, shop, orders }: StockMoveProps) {
  const styles = useStyles();
  const { state, does, send } = pane;
  const form = state.tools.stock;
  const change = (part: Partial<StockForm>) => send({ on: 'tool', tool: 'stock', change: part });
  const [kindId, thingId, quantityId, noteId] = [useId(), useId(), useId(), useId()];
  const things = useMemo(() => countables(shop), [shop]);
  const chosen = things.find(({ key }) => key === form.thing);
  const ready = chosen !== undefined && form.quantity.trim() !== '';
  const enter = () => {
    if (!chosen || !ready) return;
    const { shelf, item } = chosen;
    const { kind, quantity, note, order } = form;
    const entered = () => change({ quantity: '', note: '', order: '' });
    const asked = { shelf, item, quantity, note };
    const isOrder = kind === 'ordered' || kind === 'cancelled';
    const typed = order === null || order === '' ? undefined : order;
    does.deed(
      isOrder
        ? thingDeed({ ...asked, kind, order: typed }, entered)
        : moveDeed({ ...asked, kind, order: order === null ? null : typed }, entered),
    );
  };
  return (
    <Part title={STOCK_WORDS.move} ruled>
      <FieldLine label={STOCK_WORDS.what} id={kindId}>
        <Choice
          id={kindId}
          value={form.kind}
          options={STOCK_WORDS.kinds}
          onChoose={(kind) => change({ kind, order: '' })}
        />
      </FieldLine>
      <FieldLine label={STOCK_WORDS.which} id={thingId}>
        <ThingField id={thingId} things={things} chosen={chosen} onChoose={(thing) => change({ thing, order: '' })} />
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
      <OrderField form={form} chosen={chosen} orders={orders} onChange={(order) => change({ order })} />
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
