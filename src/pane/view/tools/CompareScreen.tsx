/** Every grip of Stock on the whole set: what each does, which no other beats, and the best for each club. */
import { Button, Checkbox, Input, makeStyles, ProgressBar } from '@fluentui/react-components';
import { useCallback, useId, useMemo, useState } from 'react';
import { compareSteps, holdOf, type Comparison, type PlanInput, type Tried } from '../../../core/index';
import { COUNT_WORDS } from '../../../words/choose';
import { notTriedLines } from '../../../words/compareHead';
import { thousandths } from '../../../words/readings';
import { aboutText } from '../../compareText';
import { comparePlot, filterChoices, ordered, readFilters, takenOf, takenOfSolved } from '../../state/compareModel';
import { PART, plannedRows } from '../../state/paneState';
import type { CompareForm } from '../../state/tools';
import { useLong } from '../../state/useLong';
import { COMPARE_WORDS } from '../../toolWords';
import { WHAT } from '../../words';
import { Choice, FieldLine } from '../fields';
import { compareDeed } from './compareDeed';
import { ComparePlot } from './ComparePlot';
import { CompareTable } from './CompareTable';
import { Buttons, Part, Says, Sentences } from './parts';
import { SolvePart } from './SolvePart';
import type { ToolProps } from './toolProps';
import { Fold } from '../Fold';

const useStyles = makeStyles({
  input: { minWidth: 0, width: '100%' },
  tick: { marginLeft: '82px' },
});

type OnForm = (change: Partial<CompareForm>) => void;

function Narrow({
  input,
  form,
  priceFault,
  onForm,
}: {
  readonly input: PlanInput;
  readonly form: CompareForm;
  readonly priceFault: boolean;
  readonly onForm: OnForm;
}) {
  const styles = useStyles();
  const id = useId();
  const { textures, cores } = useMemo(() => filterChoices(input), [input.stock]);
  const any = [['', COMPARE_WORDS.any]] as const;
  return (
    <Fold title={COMPARE_WORDS.narrow}>
      <FieldLine label={COMPARE_WORDS.profile} id={`${id}p`}>
        <Choice
          id={`${id}p`}
          value={form.profile}
          options={COMPARE_WORDS.profiles}
          onChoose={(profile) => onForm({ profile })}
        />
      </FieldLine>
      {textures.length > 0 && (
        <FieldLine label={COMPARE_WORDS.texture} id={`${id}t`}>
          <Choice
            id={`${id}t`}
            value={form.texture}
            options={Object.fromEntries([...any, ...textures.map((each) => [each, each] as const)])}
            onChoose={(texture) => onForm({ texture })}
          />
        </FieldLine>
      )}
      <FieldLine label={COMPARE_WORDS.core} id={`${id}c`}>
        <Choice
          id={`${id}c`}
          value={form.core}
          options={Object.fromEntries([
            ...any,
            ...cores.map((each) => [String(each), `${thousandths(each)} in`] as const),
          ])}
          onChoose={(core) => onForm({ core })}
        />
      </FieldLine>
      <FieldLine
        label={COMPARE_WORDS.mostPrice}
        id={`${id}m`}
        says={priceFault ? COMPARE_WORDS.priceFault : undefined}
        saysId={`${id}says`}
      >
        <Input
          id={`${id}m`}
          className={styles.input}
          inputMode="decimal"
          aria-invalid={priceFault}
          aria-describedby={priceFault ? `${id}says` : undefined}
          placeholder={COMPARE_WORDS.any}
          value={form.mostPrice}
          onChange={(_, { value }) => onForm({ mostPrice: value })}
        />
      </FieldLine>
      <Checkbox
        className={styles.tick}
        label={COMPARE_WORDS.onHandOnly}
        checked={form.onHandOnly}
        onChange={(_, { checked }) => onForm({ onHandOnly: checked === true })}
      />
    </Fold>
  );
}

const ORDERS: Readonly<Record<CompareForm['orderBy'], string>> = {
  '': COMPARE_WORDS.unbeatenFirst,
  ...COUNT_WORDS,
};

function NotTried({ comparison }: { readonly comparison: Comparison }) {
  const { notTried } = comparison;
  if (!notTried.length) return null;
  return (
    <Fold title={COMPARE_WORDS.notTried(notTried.length)}>
      <Sentences texts={notTriedLines(comparison)} />
    </Fold>
  );
}

function whyNone({ notTried }: Comparison, { stock }: PlanInput): string {
  if (!stock.length) return WHAT.noStock;
  return notTried.every(({ why }) => why === 'filtered') ? COMPARE_WORDS.allNarrowed : COMPARE_WORDS.noneTried;
}

interface ResultProps {
  readonly comparison: Comparison;
  /** Whether it is of the clubs as they are now. */
  readonly settled: boolean;
  readonly input: PlanInput;
  readonly form: CompareForm;
  readonly onForm: OnForm;
  readonly onFit: (tried: Tried) => void;
}

function Result({ comparison, settled, input, form, onForm, onFit }: ResultProps) {
  const id = useId();
  const [looked, setLooked] = useState<string | null>(null);
  const [shown, setShown] = useState(PART);
  const list = useMemo(() => ordered(comparison.tried, form.orderBy), [comparison, form.orderBy]);
  const plot = useMemo(() => comparePlot(comparison.tried, input), [comparison, input]);
  if (!list.length) {
    return (
      <>
        <Says flagged>{whyNone(comparison, input)}</Says>
        <Sentences texts={notTriedLines(comparison)} />
      </>
    );
  }
  return (
    <>
      {plot.xIs === 'mass' && <Says flagged>{COMPARE_WORDS.noTarget}</Says>}
      <ComparePlot plot={plot} looked={looked} />
      <FieldLine label={COMPARE_WORDS.orderBy} id={id}>
        <Choice id={id} value={form.orderBy} options={ORDERS} onChoose={(orderBy) => onForm({ orderBy })} />
      </FieldLine>
      <CompareTable
        tried={list.slice(0, shown)}
        shortlist={form.shortlist}
        looked={looked}
        settled={settled}
        onTick={(key, ticked) =>
          onForm({
            shortlist: ticked ? [...form.shortlist, key] : form.shortlist.filter((each) => each !== key),
            solveFrom: ticked ? 'shortlist' : form.solveFrom,
          })
        }
        onOpen={(key) => setLooked(looked === key ? null : key)}
        onFit={onFit}
      />
      {shown < list.length && (
        <Buttons>
          <Says quiet>{COMPARE_WORDS.more(shown, list.length)}</Says>
          <Button size="small" onClick={() => setShown(shown + PART)}>
            {COMPARE_WORDS.moreButton}
          </Button>
        </Buttons>
      )}
      <Says quiet small>
        {COMPARE_WORDS.unbeatenMeaning}
      </Says>
      <NotTried comparison={comparison} />
    </>
  );
}

export function CompareScreen({ pane }: ToolProps) {
  const { state, send, does, concerned } = pane;
  const form = state.tools.compare;
  const { profile, texture, core, mostPrice, onHandOnly } = form;
  const read = useMemo(() => readFilters(form), [profile, texture, core, mostPrice, onHandOnly]);
  const begin = useCallback(() => compareSteps(concerned as PlanInput, read.filters), [concerned, read]);
  const { answer, settled, progress } = useLong(concerned ? begin : null);
  if (!concerned) return null;
  const onForm: OnForm = (change) => send({ on: 'tool', tool: 'compare', change });
  const about = aboutText(concerned, holdOf);
  return (
    <>
      <Part title={COMPARE_WORDS.title}>
        <Says quiet small live>
          {about}
        </Says>
        <Narrow input={concerned} form={form} priceFault={read.priceFault} onForm={onForm} />
        {answer && (
          <Result
            comparison={answer}
            settled={settled}
            input={concerned}
            form={form}
            onForm={onForm}
            onFit={(tried) => send({ on: 'take', from: 'compare', ...takenOf(tried, concerned, state.form) })}
          />
        )}
        <Says live quiet small>
          {answer && settled && answer.tried.length > 0 && COMPARE_WORDS.found(answer.tried)}
        </Says>
        {!settled && (
          <ProgressBar
            aria-label={COMPARE_WORDS.working(progress?.done ?? 0, progress?.of ?? 1)}
            max={progress?.of ?? 1}
            value={progress?.done ?? 0}
          />
        )}
        {answer && answer.tried.length > 0 && (
          <Buttons>
            <Button
              disabledFocusable={state.task !== null || !settled}
              onClick={() =>
                does.deed(compareDeed({ who: state.who, rows: plannedRows(state), comparison: answer, about }))
              }
            >
              {COMPARE_WORDS.fill}
            </Button>
          </Buttons>
        )}
      </Part>
      {answer && concerned.stock.length > 0 && (
        <SolvePart
          input={concerned}
          settling={pane.settling}
          tried={answer.tried}
          form={form}
          onForm={onForm}
          onTake={(solved) => send({ on: 'take', from: 'compare', perClub: takenOfSolved(solved, concerned) })}
        />
      )}
    </>
  );
}
