/** What is to be ordered, and what is on order. */
import { Button, makeStyles } from '@fluentui/react-components';
import { useId, useState } from 'react';
import type { PlacedOrder, SupplierOrder } from '../../../core/index';
import { orderName } from '../../../words/stock';
import type { Deed } from '../../state/deed';
import type { PaneNow } from '../../state/usePane';
import { Choice, FieldLine } from '../fields';
import { DataTable } from './DataTable';
import { Buttons, Part, Says } from './parts';
import { cancelDeed, placeDeed, takeInDeed } from './stockDeeds';
import { orderCells, orderChoice, placedCells, STOCK_WORDS } from './stockWords';

const useStyles = makeStyles({
  order: { display: 'flex', flexDirection: 'column', rowGap: '4px', marginBottom: '6px' },
});

export function Act({ pane, deed, says, primary }: { pane: PaneNow; deed: Deed; says: string; primary?: boolean }) {
  const { state, does } = pane;
  return (
    <Button
      appearance={primary ? 'primary' : 'secondary'}
      disabledFocusable={state.task !== null}
      onClick={() => does.deed(deed)}
    >
      {says}
    </Button>
  );
}

/** By supplier, each with what to press once it has been sent off. */
export function ToOrder({ pane, orders }: { readonly pane: PaneNow; readonly orders: readonly SupplierOrder[] }) {
  const styles = useStyles();
  return (
    <Part title={STOCK_WORDS.toOrder} ruled>
      <Says quiet small>
        {orders.length > 0 ? STOCK_WORDS.toOrderHow : STOCK_WORDS.nothingToOrder}
      </Says>
      {orders.map((order) => (
        <section key={order.supplier} className={styles.order} aria-label={order.supplier || STOCK_WORDS.noSupplier}>
          <Says>{order.supplier || STOCK_WORDS.noSupplier}</Says>
          <DataTable
            caption={STOCK_WORDS.ordered(order.supplier)}
            headers={[STOCK_WORDS.which, STOCK_WORDS.packs, STOCK_WORDS.toOrder]}
            numbers={[1, 2]}
            rows={orderCells(order).map((cells, key) => ({ key, cells }))}
          />
          <Buttons>
            <Act pane={pane} deed={placeDeed(order)} says={STOCK_WORDS.ordered(order.supplier)} />
          </Buttons>
        </section>
      ))}
    </Part>
  );
}

/** One of the orders of which something is still to come. */
export function Placed({ pane, placed }: { readonly pane: PaneNow; readonly placed: readonly PlacedOrder[] }) {
  const [chosen, choose] = useState('');
  const id = useId();
  const order = placed.find((each) => keyOf(each) === chosen) ?? placed[0];
  if (!order) {
    return (
      <Part title={STOCK_WORDS.placed} ruled>
        <Says quiet small>
          {STOCK_WORDS.nothingPlaced}
        </Says>
      </Part>
    );
  }
  const options = Object.fromEntries(placed.map((each) => [keyOf(each), orderChoice(each)]));
  const { placedCaption, which, pieces, arrivedSoFar, toCome } = STOCK_WORDS;
  return (
    <Part title={STOCK_WORDS.placed} ruled>
      {placed.length > 1 && (
        <FieldLine label={STOCK_WORDS.whichOrder} id={id}>
          <Choice id={id} value={keyOf(order)} options={options} onChoose={choose} />
        </FieldLine>
      )}
      <Says>{orderName(order)}</Says>
      <DataTable
        caption={placedCaption}
        headers={[which, pieces, arrivedSoFar, toCome]}
        numbers={[1, 2, 3]}
        rows={order.lines.map((line) => ({ key: `${line.shelf} ${line.item}`, cells: placedCells(line) }))}
      />
      <Buttons>
        <Act pane={pane} deed={takeInDeed(order.order)} says={STOCK_WORDS.allArrived} />
        <Act pane={pane} deed={cancelDeed(order.order)} says={STOCK_WORDS.cancelRest} />
      </Buttons>
      <Says quiet small>
        {STOCK_WORDS.partHow}
      </Says>
    </Part>
  );
}

/** A key that is a number alone would be put first. */
function keyOf({ order }: PlacedOrder): string {
  return `order ${order}`;
}
