/** A price at the counter: so many clubs, and at once what they cost. */
import { Button, Checkbox, makeStyles } from '@fluentui/react-components';
import { useId, useMemo } from 'react';
import { moneyText, sayQuoteIssue } from '../../../words/money';
import type { Shop } from '../../../workbook/shop';
import { shopOf } from '../../state/seen';
import { EMPTY_COUNTER, type CounterForm } from '../../state/quoteForm';
import type { PaneNow } from '../../state/usePane';
import { Choice, FieldLine } from '../fields';
import { GripField } from '../GripField';
import { Buttons, Says, Sentences } from './parts';
import { issueDeed } from './quoteDeeds';
import { Fold } from '../Fold';
import { TextField } from './quoteFields';
import { BlankHead, QuoteLines } from './QuoteLines';
import { counterSeen, issuedSeen, type CounterSeen } from './quoteSeen';
import { KIND_OPTIONS, QUOTE_WORDS } from './quoteWords';

const useStyles = makeStyles({ tick: { marginLeft: '-8px' } });

interface InCounter {
  readonly pane: PaneNow;
  readonly form: CounterForm;
  readonly onForm: (change: Partial<CounterForm>) => void;
}

function Fields({ pane, form, onForm }: InCounter) {
  const styles = useStyles();
  const id = useId();
  return (
    <>
      <TextField label={QUOTE_WORDS.clubs} value={form.clubs} isNumber onType={(clubs) => onForm({ clubs })} />
      <FieldLine label={QUOTE_WORDS.grip} id={`${id}grip`}>
        <GripField
          id={`${id}grip`}
          grips={pane.state.shop?.grips ?? []}
          item={form.item}
          blank={QUOTE_WORDS.broughtAlong}
          onChoose={(item) => onForm({ item })}
        />
      </FieldLine>
      <FieldLine label={QUOTE_WORDS.kind} id={`${id}kind`}>
        <Choice id={`${id}kind`} value={form.kind} options={KIND_OPTIONS} onChoose={(kind) => onForm({ kind })} />
      </FieldLine>
      <TextField label={QUOTE_WORDS.layers} value={form.layers} isNumber onType={(layers) => onForm({ layers })} />
      <Checkbox
        className={styles.tick}
        label={QUOTE_WORDS.salvage}
        checked={form.salvage}
        onChange={(_, { checked }) => onForm({ salvage: checked === true })}
      />
      <Checkbox
        className={styles.tick}
        label={QUOTE_WORDS.reading}
        checked={form.reading}
        onChange={(_, { checked }) => onForm({ reading: checked === true })}
      />
      <TextField
        label={QUOTE_WORDS.counterDiscount}
        value={form.discount}
        isNumber
        onType={(discount) => onForm({ discount })}
      />
    </>
  );
}

interface PriceProps {
  readonly pane: PaneNow;
  readonly shop: Shop;
  readonly seen: CounterSeen;
  readonly form: CounterForm;
  readonly onForm: (change: Partial<CounterForm>) => void;
}

function Price({ pane, shop, seen, form, onForm }: PriceProps) {
  const { quote, perClub } = seen.made;
  const next = useMemo(() => issuedSeen(shop, '')?.next, [shop]);
  const more = quote?.prices === 'withTax' ? QUOTE_WORDS.perClubWithTax : QUOTE_WORDS.perClub;
  const what = { counter: seen.asked, customer: form.customer };
  return (
    <>
      {quote && perClub && <Says quiet>{more(moneyText(perClub))}</Says>}
      {quote && <QuoteLines quote={quote} caption={QUOTE_WORDS.counterLines} />}
      {quote && next && (
        <>
          <TextField label={QUOTE_WORDS.customer} value={form.customer} onType={(customer) => onForm({ customer })} />
          <BlankHead pane={pane} shop={shop} job={null} customer={form.customer} />
          <Says quiet small>
            {QUOTE_WORDS.becomes(next.number, next.revision)}
          </Says>
          <Buttons>
            <Button
              disabledFocusable={pane.state.task !== null}
              onClick={() => pane.does.deed(issueDeed({ what, terms: seen.terms, shown: quote.total }))}
            >
              {QUOTE_WORDS.issueCounter}
            </Button>
          </Buttons>
        </>
      )}
    </>
  );
}

export function CounterPart({ pane, today }: { readonly pane: PaneNow; readonly today: number }) {
  const { state, send } = pane;
  const form: CounterForm = { ...EMPTY_COUNTER, ...state.tools.counter };
  const shop = state.shop && shopOf(state.shop);
  const seen = useMemo(() => shop && counterSeen(shop, form, today), [shop, state.tools.counter, today]);
  const onForm = (change: Partial<CounterForm>) => send({ on: 'tool', tool: 'counter', change });
  return (
    <Fold title={QUOTE_WORDS.counter} open={form.clubs !== ''}>
      <Says quiet small>
        {QUOTE_WORDS.counterHow}
      </Says>
      <Fields pane={pane} form={form} onForm={onForm} />
      <Says live>{seen?.made.quote && QUOTE_WORDS.totalOf(seen.asked.clubs, moneyText(seen.made.quote.total))}</Says>
      <div role="status">
        <Sentences texts={seen && !seen.made.quote ? seen.made.issues.map(sayQuoteIssue) : []} flagged />
      </div>
      {shop && seen && <Price pane={pane} shop={shop} seen={seen} form={form} onForm={onForm} />}
    </Fold>
  );
}
