/** The quote of a job: what it would be now, its options, issuing it, what was issued before; and a price at the counter. */
import { Button } from '@fluentui/react-components';
import { useId, useMemo } from 'react';
import { moneyNumber, type PlanInput } from '../../../core/index';
import { dayWords } from '../../../words/intake';
import { sayQuoteIssue } from '../../../words/money';
import { sayRegisterIssue } from '../../../words/quoteOutcomes';
import { dayOf } from '../../../workbook/days';
import { placeOfField } from '../../../workbook/issuePlace';
import type { Shop } from '../../../workbook/shop';
import { shopOf } from '../../state/seen';
import { sparingPutters } from '../../state/form';
import { EMPTY_QUOTE, type QuoteForm } from '../../state/quoteForm';
import type { PaneNow } from '../../state/usePane';
import { FIRST_RUN, namesText } from '../../words';
import { Choice, FieldLine } from '../fields';
import { CounterPart } from './CounterPart';
import { GoToCell } from './GoToCell';
import { IssuedPart } from './IssuedPart';
import { OptionsPart } from './OptionsPart';
import { Buttons, Part, Says, Sentences } from './parts';
import { issueDeed, optionsDeed, voidDeed } from './quoteDeeds';
import { Fold } from '../Fold';
import { TextField } from './quoteFields';
import { BlankHead, QuoteLines, ShopOnly } from './QuoteLines';
import {
  issuedSeen,
  MOST_OPTIONS,
  quoteSeen,
  tickedOptions,
  withOption,
  type IssuedSeen,
  type QuoteSeen,
} from './quoteSeen';
import { QUOTE_WORDS } from './quoteWords';
import type { ToolProps } from './toolProps';

interface InQuote {
  readonly seen: QuoteSeen;
  readonly form: QuoteForm;
  readonly onForm: (change: Partial<QuoteForm>) => void;
}

function WhichOne({ seen, onForm }: Pick<InQuote, 'seen' | 'onForm'>) {
  const id = useId();
  if (seen.options.length < 2) return null;
  const names = { clubs: QUOTE_WORDS.ofClubs, plan: QUOTE_WORDS.ofPlan } as const;
  const options = Object.fromEntries(
    seen.options.map(({ key, name }) => [key, key === 'clubs' || key === 'plan' ? names[key] : name]),
  ) as Record<QuoteForm['of'], string>;
  return (
    <FieldLine label={QUOTE_WORDS.of} id={id}>
      <Choice id={id} value={seen.chosen.key} options={options} onChoose={(of) => onForm({ of })} />
    </FieldLine>
  );
}

/** What differs from the sheet for this quote alone. */
function Terms({ seen, form, onForm }: InQuote) {
  const id = useId();
  const lines = seen.made.input?.lines.map(({ description }) => description) ?? [];
  const field = (key: 'discount' | 'gripDiscount' | 'deposit' | 'validDays', label: string, from: string) => (
    <TextField label={label} value={form[key]} placeholder={from} isNumber onType={(text) => onForm({ [key]: text })} />
  );
  return (
    <Fold title={QUOTE_WORDS.thisOnly}>
      {field('discount', QUOTE_WORDS.discount, QUOTE_WORDS.asInJobs)}
      {field('gripDiscount', QUOTE_WORDS.gripDiscount, QUOTE_WORDS.asInJobs)}
      {field('deposit', QUOTE_WORDS.deposit, QUOTE_WORDS.asInSettings)}
      {field('validDays', QUOTE_WORDS.holds, QUOTE_WORDS.asInSettings)}
      <FieldLine label={QUOTE_WORDS.lineOff} id={id}>
        <Choice
          id={id}
          value={lines.includes(form.lineOff) ? form.lineOff : ''}
          options={Object.fromEntries([['', QUOTE_WORDS.noLine], ...lines.map((line) => [line, line])])}
          onChoose={(lineOff) => onForm({ lineOff })}
        />
      </FieldLine>
      {form.lineOff !== '' && (
        <TextField
          label={QUOTE_WORDS.lineOffPercent}
          value={form.lineOffPercent}
          isNumber
          onType={(lineOffPercent) => onForm({ lineOffPercent })}
        />
      )}
      <Says quiet small>
        {QUOTE_WORDS.forGood}
      </Says>
    </Fold>
  );
}

interface IssueProps {
  readonly pane: PaneNow;
  readonly shop: Shop;
  readonly job: string;
  readonly seen: QuoteSeen;
  readonly issued: IssuedSeen;
}

function Issue({ pane, shop, job, seen, issued: { quotes, next, issue } }: IssueProps) {
  const { quote } = seen.made;
  if (!quote) return null;
  if (!next) return issue && <Says flagged>{sayRegisterIssue(issue)}</Says>;
  const { key, name, choices } = seen.chosen;
  const what = { job, choices, option: seen.options.length > 1 && key !== 'plan' ? name : undefined };
  const last = quotes.find(({ isVoid }) => !isVoid);
  const isSame = last?.total === moneyNumber(quote.total) && last.currency.toUpperCase() === quote.total.currency.code;
  return (
    <>
      <BlankHead pane={pane} shop={shop} job={job} />
      <Says quiet small>
        {QUOTE_WORDS.becomes(next.number, next.revision)}
        {isSame && ` ${QUOTE_WORDS.sameTotal}`}
      </Says>
      <Buttons>
        <Button
          appearance={isSame ? 'secondary' : 'primary'}
          disabledFocusable={pane.state.task !== null}
          onClick={() => pane.does.deed(issueDeed({ what, terms: seen.terms, shown: quote.total }))}
        >
          {next.revision > 1 ? QUOTE_WORDS.issueRevision(next.revision, isSame) : QUOTE_WORDS.issue}
        </Button>
      </Buttons>
    </>
  );
}

/** What keeps the job from being quoted or issued, and the way on. */
function Mend({ pane, shop, seen }: Pick<IssueProps, 'pane' | 'shop' | 'seen'>) {
  const missing =
    pane.state.shop?.missing.filter((name) => ['Rates', 'Taxes', 'Quotes', 'Settings'].includes(name)) ?? [];
  const { issues } = seen.made;
  const places = new Map(
    issues.map((issue) => [sayQuoteIssue(issue), placeOfField(issue.field, shop.tables)] as const),
  );
  const goTo = (text: string) => {
    const at = places.get(text);
    return at && <GoToCell pane={pane} at={at} />;
  };
  if (issues.length === 0 && missing.length === 0) return null;
  return (
    <Part title={QUOTE_WORDS.mend}>
      {missing.length > 0 && (
        <>
          <Says flagged>{QUOTE_WORDS.noTables(namesText(missing))}</Says>
          <Buttons>
            <Button disabledFocusable={pane.state.task !== null} onClick={pane.does.setUp}>
              {FIRST_RUN.setUp}
            </Button>
          </Buttons>
        </>
      )}
      <Sentences texts={[...places.keys()]} flagged after={goTo} />
    </Part>
  );
}

interface OfJob {
  readonly pane: PaneNow;
  readonly shop: Shop;
  readonly job: string;
  readonly today: number;
}

function JobPart({ pane, shop, job, today }: OfJob) {
  const { state, send, does, read, putters, concerned } = pane;
  const form: QuoteForm = { ...EMPTY_QUOTE, ...state.tools.quote };
  const clubKeys = state.shop?.clubKeys ?? NO_KEYS;
  const inPlan = useMemo(() => sparingPutters(read.choices, state.form, putters), [read, state.form, putters]);
  const seen = useMemo(
    () => quoteSeen(shop, job, form, inPlan, clubKeys, today),
    [shop, job, state.tools.quote, inPlan, clubKeys, today],
  );
  const issued = useMemo(() => issuedSeen(shop, job), [shop, job]);
  const onForm = (change: Partial<QuoteForm>) => send({ on: 'tool', tool: 'quote', change });
  const { quote, minutes, uncharged, notTakenOff } = seen.made;
  const due = shop.jobs.find((each) => each.job === job)?.due ?? null;
  const keepTicked = (input: PlanInput) => {
    const ticked = tickedOptions(state, input, putters).map((option) => ({ ...option, clubKeys }));
    onForm({ kept: ticked.reduce(withOption, form.kept) });
  };
  return (
    <>
      <Part title={QUOTE_WORDS.title}>
        <WhichOne seen={seen} onForm={onForm} />
        <Mend pane={pane} shop={shop} seen={seen} />
        {quote && <QuoteLines quote={quote} caption={QUOTE_WORDS.lines} />}
        {due !== null && due < today && (
          <Says quiet small>
            {QUOTE_WORDS.duePast(dayWords(due))}
          </Says>
        )}
        {uncharged.length > 0 && <Says flagged>{QUOTE_WORDS.uncharged(namesText(uncharged))}</Says>}
        {notTakenOff.length > 0 && <Says flagged>{QUOTE_WORDS.notTakenOff(namesText(notTakenOff))}</Says>}
        <Terms seen={seen} form={form} onForm={onForm} />
        {issued && <Issue pane={pane} shop={shop} job={job} seen={seen} issued={issued} />}
        {quote && <ShopOnly quote={quote} minutes={minutes} />}
      </Part>
      {issued && (
        <IssuedPart quotes={issued.quotes} busy={state.task !== null} onVoid={(each) => does.deed(voidDeed(each))} />
      )}
      <OptionsPart
        seen={seen}
        form={form}
        inPlan={inPlan}
        clubKeys={clubKeys}
        ticked={concerned !== null && state.tools.compare.shortlist.length > 0}
        busy={state.task !== null}
        onForm={onForm}
        onKeepTicked={() => concerned && keepTicked(concerned)}
        onWrite={() => does.deed(optionsDeed(job, seen.terms, seen.options.slice(0, MOST_OPTIONS)))}
      />
    </>
  );
}

const NO_KEYS: ReadonlyMap<number, string> = new Map();

export function QuoteScreen({ pane, obstacle }: ToolProps) {
  const { who, shop } = pane.state;
  const today = dayOf(new Date());
  const job = who.by === 'job' ? who.job : null;
  return (
    <>
      {obstacle ??
        (job === null || !shop ? (
          <Says quiet>{QUOTE_WORDS.chooseJob}</Says>
        ) : (
          <JobPart pane={pane} shop={shopOf(shop)} job={job} today={today} />
        ))}
      <Part ruled>
        <CounterPart pane={pane} today={today} />
      </Part>
    </>
  );
}
