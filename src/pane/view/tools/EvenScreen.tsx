/** Evening out a set: what each group is to read, what stands out of it, and what becomes of the set. */
import { Button, Input, makeStyles } from '@fluentui/react-components';
import { useId, useMemo } from 'react';
import type { EvenCost, EvenGroup } from '../../../core/index';
import { EVEN_GROUP_WORDS, sayEvenTarget, sayStandsOut, sayUnread } from '../../../words/place';
import { readingText } from '../../../words/readings';
import { evenModel, type EvenGroupModel } from '../../state/evenModel';
import { plotOf } from '../../state/plot';
import { summarise } from '../../state/summary';
import type { EvenForm } from '../../state/tools';
import { EVEN_WORDS } from '../../toolWords';
import { addedText, numberText, summaryText, TABLE } from '../../words';
import { Choice, FieldLine, Pair } from '../fields';
import { Plot } from '../Plot';
import { DataTable } from './DataTable';
import { Buttons, Part, Says, Sentences } from './parts';
import type { ToolProps } from './toolProps';

const useStyles = makeStyles({ value: { minWidth: 0, width: '100%' } });

interface GroupProps {
  readonly model: EvenGroupModel;
  /** Several bags are evened out, each for itself. */
  readonly manyBags: boolean;
  readonly form: EvenForm;
  readonly faulty: boolean;
  readonly onEven: (change: Partial<EvenForm>) => void;
}

function headOf({ even, low, high }: EvenGroupModel, manyBags: boolean): string {
  const name = [manyBags ? even.job : undefined, EVEN_GROUP_WORDS[even.group]].filter(Boolean).join(', ');
  if (low === undefined || high === undefined) return EVEN_WORDS.unread(name);
  return EVEN_WORDS.group(name, even.clubs.length, readingText(low), readingText(high));
}

/** What each choice would take, side by side; the sentence that says why one cannot be had goes below. */
function Costs({ costs, name }: { readonly costs: readonly EvenCost[]; readonly name: string }) {
  const grams = ({ issue, headGrams, buttGrams }: EvenCost) => (issue ? TABLE.none : numberText(headGrams + buttGrams));
  const off = ({ issue, largestGap }: EvenCost) =>
    issue || largestGap === undefined ? TABLE.none : numberText(largestGap);
  const heavy = ({ issue, tooHeavy }: EvenCost) => (issue || !tooHeavy ? TABLE.none : tooHeavy);
  return (
    <DataTable
      caption={EVEN_WORDS.costs(name)}
      headers={['', EVEN_WORDS.add, EVEN_WORDS.mostOff, EVEN_WORDS.tooHeavy]}
      numbers={[1, 2, 3]}
      rows={costs.map((cost) => ({
        key: cost.choice,
        cells: [EVEN_WORDS.options[cost.choice], grams(cost), off(cost), heavy(cost)],
      }))}
    />
  );
}

function GroupFields({ model, manyBags, form, faulty, onEven }: GroupProps) {
  const styles = useStyles();
  const id = useId();
  const { even, costs } = model;
  const { group } = even;
  const by = form.by[group];
  const choice = (
    <Choice
      id={id}
      value={by}
      options={EVEN_WORDS.options}
      onChoose={(next) => onEven({ by: { ...form.by, [group]: next } })}
    />
  );
  const middle = even.one === undefined ? '' : readingText(even.one);
  return (
    <Part title={headOf(model, manyBags)} ruled>
      <FieldLine
        label={EVEN_WORDS.value}
        id={id}
        says={by === 'one' && faulty ? EVEN_WORDS.notReading : undefined}
        saysId={`${id}says`}
      >
        {by === 'one' ? (
          <Pair>
            {choice}
            <Input
              className={styles.value}
              aria-label={EVEN_WORDS.ownValue(EVEN_GROUP_WORDS[group])}
              aria-invalid={faulty}
              aria-describedby={faulty ? `${id}says` : undefined}
              placeholder={middle}
              value={form.value[group]}
              onChange={(_, { value }) => onEven({ value: { ...form.value, [group]: value } })}
            />
          </Pair>
        ) : (
          choice
        )}
      </FieldLine>
      <Says live>{by !== 'sheet' && sayEvenTarget(even)}</Says>
      <Sentences
        texts={[...even.standsOut.map((each) => sayStandsOut(each, even.choice)), ...even.unread.map(sayUnread)]}
        flagged
      />
      <Costs costs={costs} name={EVEN_GROUP_WORDS[group]} />
    </Part>
  );
}

export function EvenScreen({ pane }: ToolProps) {
  const { state, send, concerned } = pane;
  const form = state.tools.even;
  const model = useMemo(() => concerned && evenModel(concerned, form), [concerned, form]);
  const plot = useMemo(() => model && plotOf(model.plan), [model]);
  if (!model || !plot) return null;
  if (!model.groups.length) return <Says quiet>{EVEN_WORDS.none}</Says>;
  const summary = summarise(model.plan);
  const bags = new Set(model.groups.map(({ even }) => even.job));
  const seen = new Set<EvenGroup>();
  return (
    <>
      <Part title={EVEN_WORDS.title}>
        <Says quiet small>
          {EVEN_WORDS.how}
        </Says>
      </Part>
      {model.groups.map((group) => {
        const first = !seen.has(group.even.group);
        seen.add(group.even.group);
        return (
          <GroupFields
            key={`${group.even.job ?? ''}/${group.even.group}`}
            model={group}
            manyBags={bags.size > 1}
            form={form}
            faulty={first && model.faults.includes(group.even.group)}
            onEven={(change) => send({ on: 'tool', tool: 'even', change })}
          />
        );
      })}
      <Part title={EVEN_WORDS.result} ruled>
        <Says live>{model.taken.size > 0 && `${summaryText(summary)} · ${addedText(summary)}.`}</Says>
        {model.taken.size > 0 ? (
          <>
            <Plot plot={plot} summary={summary} />
            <Buttons>
              <Button appearance="primary" onClick={() => send({ on: 'take', from: 'even', perClub: model.taken })}>
                {EVEN_WORDS.take}
              </Button>
            </Buttons>
          </>
        ) : (
          <Says quiet>{EVEN_WORDS.nothing}</Says>
        )}
      </Part>
    </>
  );
}
