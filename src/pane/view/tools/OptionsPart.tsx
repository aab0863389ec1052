/** Ways of doing one job, kept from Plan and Compare and priced beside each other. */
import { Button } from '@fluentui/react-components';
import type { Choices } from '../../../workbook/choices';
import { decides } from '../../../workbook/quoteScope';
import { alikeLines, comparisonCells } from '../../../words/money';
import type { QuoteForm } from '../../state/quoteForm';
import { DataTable } from './DataTable';
import { TextField } from './quoteFields';
import { holds, MOST_KEPT, MOST_OPTIONS, suggestedName, withOption, type QuoteSeen } from './quoteSeen';
import { QUOTE_WORDS } from './quoteWords';
import { Buttons, Part, Says, Sentences } from './parts';

interface OptionsProps {
  readonly seen: QuoteSeen;
  readonly form: QuoteForm;
  readonly inPlan: Choices;
  readonly clubKeys: ReadonlyMap<number, string>;
  /** Whether grips are ticked in Compare that can be kept. */
  readonly ticked: boolean;
  readonly busy: boolean;
  readonly onForm: (change: Partial<QuoteForm>) => void;
  readonly onKeepTicked: () => void;
  readonly onWrite: () => void;
}

function Kept({ form, clubKeys, onForm }: Pick<OptionsProps, 'form' | 'clubKeys' | 'onForm'>) {
  const drop = (at: number) => onForm({ kept: form.kept.filter((_, each) => each !== at), of: 'clubs' });
  const moved = form.kept.filter((option) => !holds(option, clubKeys)).map(({ name }) => QUOTE_WORDS.moved(name));
  return (
    <>
      <Sentences texts={moved} flagged />
      <Buttons>
        {form.kept.map(({ name }, at) => (
          <Button key={name} size="small" aria-label={QUOTE_WORDS.dropIt(name)} onClick={() => drop(at)}>
            {QUOTE_WORDS.dropIt(name)}
          </Button>
        ))}
      </Buttons>
    </>
  );
}

export function OptionsPart(props: OptionsProps) {
  const { seen, form, inPlan, clubKeys, ticked, busy, onForm, onKeepTicked, onWrite } = props;
  const room = form.kept.length < MOST_KEPT;
  const keeps = decides(inPlan) && room;
  const name = form.name ?? suggestedName(inPlan);
  const beside = seen.options.slice(0, MOST_OPTIONS);
  return (
    <Part title={QUOTE_WORDS.options} ruled>
      <Says quiet small>
        {QUOTE_WORDS.optionsHow}
      </Says>
      {keeps && <TextField label={QUOTE_WORDS.name} value={name} onType={(text) => onForm({ name: text })} />}
      <Buttons>
        {keeps && (
          <Button
            size="small"
            onClick={() => {
              const option = { name: name.trim() || suggestedName(inPlan), choices: inPlan, clubKeys };
              onForm({ kept: withOption(form.kept, option), name: null });
            }}
          >
            {QUOTE_WORDS.keep}
          </Button>
        )}
        {ticked && room && (
          <Button size="small" onClick={onKeepTicked}>
            {QUOTE_WORDS.keepTicked}
          </Button>
        )}
      </Buttons>
      {!room && <Says quiet>{QUOTE_WORDS.full}</Says>}
      {form.kept.length > 0 && <Kept form={form} clubKeys={clubKeys} onForm={onForm} />}
      {seen.compared && (
        <>
          <DataTable
            caption={QUOTE_WORDS.optionsTable}
            headers={[
              QUOTE_WORDS.option,
              `${QUOTE_WORDS.total}, ${seen.compared.currency.code}`,
              QUOTE_WORDS.moreOrLess,
            ]}
            numbers={[1, 2]}
            rows={comparisonCells(seen.compared).map((cells, key) => ({ key, cells }))}
          />
          <Sentences texts={alikeLines(seen.compared)} flagged />
          <Says quiet small>
            {QUOTE_WORDS.chooseAbove}
          </Says>
          <Buttons>
            <Button disabledFocusable={busy} onClick={onWrite}>
              {QUOTE_WORDS.fillOptions}
            </Button>
          </Buttons>
        </>
      )}
      {!seen.compared && beside.length > 1 && <Says flagged>{QUOTE_WORDS.optionsNot}</Says>}
    </Part>
  );
}
