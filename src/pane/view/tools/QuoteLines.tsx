/** The lines of a quote and what they come to, and beneath what only the shop is to see. */
import { makeStyles, tokens } from '@fluentui/react-components';
import { moneyDecimal, type Minutes, type Quote, type QuotedLine } from '../../../core/index';
import { amountText, quantityText, sayMargin, sayQuoteNote, sumTexts } from '../../../words/money';
import type { Shop } from '../../../workbook/shop';
import type { PaneNow } from '../../state/usePane';
import { namesText } from '../../words';
import { DataTable } from './DataTable';
import { GoToCell } from './GoToCell';
import { Part, Says, Sentences } from './parts';
import { blankHead, placeOfHead } from './quoteSeen';
import { QUOTE_WORDS } from './quoteWords';
import { Unbroken } from '../Unbroken';

const useStyles = makeStyles({
  count: { display: 'block', color: tokens.colorNeutralForeground2 },
  total: { fontWeight: tokens.fontWeightSemibold },
});

interface BlankHeadProps {
  readonly pane: PaneNow;
  readonly shop: Shop;
  readonly job: string | null;
  /** As it was typed; left out where Jobs says it. */
  readonly customer?: string;
}

/** What the page to be issued leaves blank at its head. */
export function BlankHead({ pane, shop, job, customer }: BlankHeadProps) {
  const blank = blankHead(shop, job, customer);
  if (blank.length === 0) return null;
  const places = blank.flatMap((key) => placeOfHead(shop, key, job) ?? []);
  return (
    <Says flagged>
      <Unbroken text={QUOTE_WORDS.blankAtHead(blank.map((key) => QUOTE_WORDS.blankHead[key]))} />
      {places.map((at) => (
        <GoToCell key={at.sheet} pane={pane} at={at} />
      ))}
    </Says>
  );
}

/** `84.50`, less what is taken off the line by itself. */
function amountOf({ full, lineDiscount }: QuotedLine): string {
  return lineDiscount.minor === 0n ? moneyDecimal(full) : `${moneyDecimal(full)} − ${moneyDecimal(lineDiscount)}`;
}

interface LinesProps {
  readonly quote: Quote;
  readonly caption: string;
}

export function QuoteLines({ quote, caption }: LinesProps) {
  const styles = useStyles();
  const lines = quote.lines.map((line, at) => ({
    key: `line ${at}`,
    cells: [
      <>
        <Unbroken text={line.description} />
        <span className={styles.count}>{quantityText(line, quote)}</span>
      </>,
      amountOf(line),
    ],
  }));
  const sums = sumTexts(quote).map(({ label, money, isTotal }) => ({
    key: `sum ${label}`,
    cells: isTotal
      ? [
          <span key="label" className={styles.total}>
            {label}
          </span>,
          <span key="amount" className={styles.total}>
            {amountText(money)}
          </span>,
        ]
      : [<Unbroken key="label" text={label} />, amountText(money)],
  }));
  return (
    <>
      <DataTable
        caption={caption}
        headers={[QUOTE_WORDS.line, `${QUOTE_WORDS.amount}, ${quote.currency.code}`]}
        numbers={[1]}
        rows={[...lines, ...sums]}
      />
      <Sentences texts={quote.notes.map(sayQuoteNote)} flagged />
    </>
  );
}

interface ShopOnlyProps {
  readonly quote: Quote;
  readonly minutes: Minutes;
}

export function ShopOnly({ quote, minutes }: ShopOnlyProps) {
  return (
    <Part title={QUOTE_WORDS.shopOnly} ruled>
      <Says>{sayMargin(quote)}</Says>
      <Says>{QUOTE_WORDS.minutes(minutes.minutes)}</Says>
      {minutes.missing.length > 0 && <Says flagged>{QUOTE_WORDS.minutesMissing(namesText(minutes.missing))}</Says>}
      <Says quiet small>
        {QUOTE_WORDS.shopOnlyHow}
      </Says>
    </Part>
  );
}
