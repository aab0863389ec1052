/** Size from the hand: its measures, what it shows on a sample grip, and what in Stock reaches the target. */
import { Button, Checkbox, Link, makeStyles, tokens } from '@fluentui/react-components';
import { useId, useMemo } from 'react';
import {
  reaching,
  DEFAULT_SETTINGS,
  layerOutside,
  type Club,
  type Issue,
  type PlanInput,
  type Reaching,
} from '../../../core/index';
import { CLINICIAN, sayMove, sayNoneReaching, sayStart, STARTING_POINT } from '../../../words/hand';
import { sayIssue } from '../../../words/issues';
import { gramsText, thousandths } from '../../../words/readings';
import { handModel, lengthText, toKeep, type HandModel, type MeasureField } from '../../state/handModel';
import type { HandForm } from '../../state/tools';
import { HAND_WORDS, measureFaultText } from '../../toolWords';
import { counted } from '../../words';
import { Choice, FieldLine } from '../fields';
import { handDeed } from './handDeed';
import { Buttons, Measure, Measures, Part, Says, Sentences } from './parts';
import type { ToolProps } from './toolProps';

const useStyles = makeStyles({
  size: {
    margin: 0,
    fontSize: tokens.fontSizeBase500,
    lineHeight: tokens.lineHeightBase500,
    fontWeight: tokens.fontWeightSemibold,
  },
  lower: {
    display: 'block',
    fontSize: tokens.fontSizeBase300,
    lineHeight: tokens.lineHeightBase300,
    fontWeight: tokens.fontWeightRegular,
  },
  list: { margin: 0, padding: 0, listStyleType: 'none' },
  grip: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr) auto',
    alignItems: 'center',
    columnGap: '8px',
    padding: '4px 0',
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  name: { display: 'block', overflowWrap: 'anywhere' },
  detail: {
    display: 'block',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
  tick: { marginLeft: '-8px' },
});

/** Combinations shown; the sheet and Compare hold the rest. */
const MOST = 6;

type OnHand = (change: Partial<HandForm>) => void;

function MeasureLine({
  model,
  form,
  fields,
  labels,
  onHand,
}: {
  readonly model: HandModel;
  readonly form: HandForm;
  readonly fields: readonly MeasureField[];
  readonly labels: readonly string[];
  readonly onHand: OnHand;
}) {
  const id = useId();
  return (
    <>
      <Measures>
        {fields.map((field, at) => (
          <Measure
            key={field}
            label={labels[at] ?? ''}
            unit={form.unit}
            value={model.measures[field].text}
            faulty={Boolean(model.measures[field].fault)}
            saysId={`${id}${field}`}
            onType={(text) => onHand({ [field]: text })}
          />
        ))}
      </Measures>
      {fields.map((field, at) => {
        const { fault } = model.measures[field];
        return (
          <Says key={field} id={`${id}${field}`} small live flagged>
            {fault && `${labels[at] ?? ''}: ${measureFaultText(fault, form.unit)} `}
            {fault?.fault === 'unit' && (
              <Link as="button" inline onClick={() => onHand({ [field]: lengthText(fault.inches, form.unit) })}>
                {form.unit === 'in' ? HAND_WORDS.useInches(fault.inches) : HAND_WORDS.useMillimetres(fault.inches)}
              </Link>
            )}
          </Says>
        );
      })}
    </>
  );
}

function HandFields({
  model,
  form,
  onHand,
}: {
  readonly model: HandModel;
  readonly form: HandForm;
  readonly onHand: OnHand;
}) {
  const styles = useStyles();
  const id = useId();
  const toUnit = (unit: HandForm['unit']) => {
    // What was typed is meant in the unit it was typed in: it is shown in the new one.
    const typed = (['hand', 'finger', 'lowerHand', 'lowerFinger'] as const).flatMap((field) => {
      const { inches } = model.measures[field];
      return form[field] === null || inches === undefined ? [] : [[field, lengthText(inches, unit)] as const];
    });
    onHand({ unit, ...Object.fromEntries(typed) });
  };
  return (
    <Part title={HAND_WORDS.title}>
      <Says quiet small>
        {HAND_WORDS.how}
      </Says>
      <FieldLine label={HAND_WORDS.unit} id={id}>
        <Choice id={id} value={form.unit} options={HAND_WORDS.units} onChoose={toUnit} />
      </FieldLine>
      <MeasureLine
        model={model}
        form={form}
        fields={['hand', 'finger']}
        labels={[HAND_WORDS.hand, HAND_WORDS.finger]}
        onHand={onHand}
      />
      <Checkbox
        className={styles.tick}
        label={HAND_WORDS.differ}
        checked={model.differ}
        onChange={(_, { checked }) => onHand({ differ: checked === true })}
      />
      {model.differ && (
        <MeasureLine
          model={model}
          form={form}
          fields={['lowerHand', 'lowerFinger']}
          labels={[HAND_WORDS.lowerHand, HAND_WORDS.lowerFinger]}
          onHand={onHand}
        />
      )}
    </Part>
  );
}

function SampleFields({ form, onHand }: { readonly form: HandForm; readonly onHand: OnHand }) {
  const styles = useStyles();
  const id = useId();
  return (
    <Part title={HAND_WORDS.sampleTitle} ruled>
      <Says quiet small>
        {HAND_WORDS.sampleHow}
      </Says>
      <FieldLine label={HAND_WORDS.fingertips} id={`${id}f`}>
        <Choice
          id={`${id}f`}
          value={form.fingertips}
          options={HAND_WORDS.fingertipsOptions}
          onChoose={(fingertips) => onHand({ fingertips })}
        />
      </FieldLine>
      <FieldLine label={HAND_WORDS.littleFinger} id={`${id}l`}>
        <Choice
          id={`${id}l`}
          value={form.littleFinger}
          options={HAND_WORDS.littleFingerOptions}
          onChoose={(littleFinger) => onHand({ littleFinger })}
        />
      </FieldLine>
      <FieldLine label={HAND_WORDS.lowerIndex} id={`${id}i`}>
        <Choice
          id={`${id}i`}
          value={form.lowerIndex}
          options={HAND_WORDS.lowerIndexOptions}
          onChoose={(lowerIndex) => onHand({ lowerIndex })}
        />
      </FieldLine>
      <FieldLine label={HAND_WORDS.errLarger} id={`${id}e`}>
        <Choice
          id={`${id}e`}
          value={form.errLarger}
          options={HAND_WORDS.errLargerOptions}
          onChoose={(errLarger) => onHand({ errLarger })}
        />
      </FieldLine>
      <div>
        <Checkbox
          className={styles.tick}
          label={HAND_WORDS.squeezes}
          checked={form.squeezes}
          onChange={(_, { checked }) => onHand({ squeezes: checked === true })}
        />
        <Checkbox
          className={styles.tick}
          label={HAND_WORDS.pain}
          checked={form.pain}
          onChange={(_, { checked }) => onHand({ pain: checked === true })}
        />
      </div>
    </Part>
  );
}

/** Butts of the set, the most frequent first. */
function buttsOf(clubs: readonly Club[]): readonly (readonly [butt: number, clubs: number])[] {
  const counts = new Map<number, number>();
  for (const { buttInches } of clubs) {
    if (buttInches !== undefined) counts.set(buttInches, (counts.get(buttInches) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
}

function detailOf({ layers, upper, fittedGrams, grip }: Reaching): string {
  const range =
    thousandths(upper.lowInches) === thousandths(upper.highInches)
      ? ''
      : ` (${thousandths(upper.lowInches)}–${thousandths(upper.highInches)})`;
  const mass = fittedGrams === undefined ? '' : ` · ${gramsText(fittedGrams)}`;
  const none = grip.onHand === 0 ? ` · ${HAND_WORDS.noneOnHand}` : '';
  return `${grip.size ? `${grip.size} · ` : ''}${counted(layers, 'layer')} · ${thousandths(upper.inches)}${range}${mass}${none}`;
}

function ReachList({
  found,
  targetInches,
  onFit,
}: {
  readonly found: readonly Reaching[];
  readonly targetInches: number;
  readonly onFit: (reaching: Reaching, targetInches: number) => void;
}) {
  const styles = useStyles();
  return (
    <ul className={styles.list}>
      {found.map((each) => (
        <li key={each.grip.item} className={styles.grip}>
          <span>
            <span className={styles.name}>{[each.grip.item, each.grip.description].filter(Boolean).join(' · ')}</span>
            <span className={styles.detail}>{detailOf(each)}</span>
          </span>
          <Button
            size="small"
            aria-label={`${HAND_WORDS.fit}: ${each.grip.item}`}
            onClick={() => onFit(each, targetInches)}
          >
            {HAND_WORDS.fit}
          </Button>
        </li>
      ))}
    </ul>
  );
}

function Reach({
  input,
  form,
  targetInches,
  lowerLayers,
  onHand,
  onFit,
}: {
  readonly input: PlanInput;
  readonly form: HandForm;
  readonly targetInches: number;
  readonly lowerLayers: number;
  readonly onHand: OnHand;
  readonly onFit: (reaching: Reaching, targetInches: number) => void;
}) {
  const id = useId();
  const butts = useMemo(() => buttsOf(input.clubs), [input]);
  const chosen = butts.find(([butt]) => String(butt) === form.butt) ?? butts[0];
  const answer = useMemo(
    () =>
      chosen &&
      reaching({
        targetInches,
        buttInches: chosen[0],
        lowerLayers,
        kind: input.clubs.find(({ buttInches }) => buttInches === chosen[0])?.kind,
        stock: input.stock,
        settings: input.settings,
      }),
    [input, chosen?.[0], targetInches, lowerLayers],
  );
  if (!chosen || !answer) return <Says quiet>{HAND_WORDS.noButt}</Says>;
  const options = Object.fromEntries(butts.map(([butt, clubs]) => [String(butt), HAND_WORDS.buttOption(butt, clubs)]));
  return (
    <Part title={HAND_WORDS.reachTitle} ruled>
      {butts.length > 1 && (
        <FieldLine label={HAND_WORDS.butt} id={id}>
          <Choice id={id} value={String(chosen[0])} options={options} onChoose={(butt) => onHand({ butt })} />
        </FieldLine>
      )}
      {answer.found.length > 0 ? (
        <ReachList found={answer.found.slice(0, MOST)} targetInches={targetInches} onFit={onFit} />
      ) : (
        <>
          <Says flagged>{sayNoneReaching(answer, targetInches)}</Says>
          {answer.nearest && <ReachList found={[answer.nearest]} targetInches={targetInches} onFit={onFit} />}
        </>
      )}
      {answer.found.length > MOST && <Says quiet>{HAND_WORDS.more(answer.found.length - MOST)}</Says>}
    </Part>
  );
}

/** An issue of the hand in the words of its fields here. */
function issueText(issue: Issue): string {
  const names: Readonly<Record<string, string>> = {
    handInches: HAND_WORDS.hand,
    fingerInches: HAND_WORDS.finger,
    guide: HAND_WORDS.guide,
  };
  return sayIssue({ ...issue, field: names[issue.field] ?? issue.field });
}

export function HandScreen({ pane, obstacle }: ToolProps) {
  const styles = useStyles();
  const { state, send, does, concerned } = pane;
  const { shop, who } = state;
  const form = state.tools.hand;
  const job = who.by === 'job' ? shop?.jobs.find((each) => each.job === who.job) : undefined;
  const { growth, buildUp } = concerned?.settings ?? DEFAULT_SETTINGS;
  const layerInches = layerOutside(growth, buildUp.thicknessInches);
  const model = useMemo(
    () => handModel(form, job?.hand, shop?.guide ?? [], layerInches),
    [form, job, shop, layerInches],
  );
  const onHand: OnHand = (change) => send({ on: 'tool', tool: 'hand', change });
  const { target, start } = model;
  const diameter = target && target.targetInches.toFixed(3);
  const size = diameter && {
    sizeBy: 'diameter' as const,
    diameter,
    lowerLayers: target.lowerLayers ? String(target.lowerLayers) : '',
  };
  return (
    <>
      <HandFields model={model} form={form} onHand={onHand} />
      <Says flagged live>
        {model.issue && issueText(model.issue)}
      </Says>
      {(shop?.guideProblems.length ?? 0) > 0 && (
        <Part title={HAND_WORDS.guideProblems}>
          <Sentences texts={shop?.guideProblems.map(sayIssue) ?? []} flagged />
        </Part>
      )}
      <Says live>{target && start && HAND_WORDS.start(thousandths(start.inches))}</Says>
      {!target || !start || !diameter || !size ? (
        !model.issue && <Says quiet>{HAND_WORDS.measureFirst}</Says>
      ) : (
        <>
          <Sentences texts={sayStart(start)} flagged />
          <SampleFields form={form} onHand={onHand} />
          <Part title={HAND_WORDS.target} ruled>
            <p className={styles.size} role="status">
              {thousandths(target.targetInches)} in
              {target.lowerLayers > 0 && (
                <span className={styles.lower}> {HAND_WORDS.lowerLayers(target.lowerLayers)}</span>
              )}
            </p>
            <Sentences texts={target.moves.map(sayMove)} />
            <Says quiet small>
              {STARTING_POINT} {CLINICIAN}
            </Says>
            {!obstacle && (
              <Buttons>
                <Button
                  appearance="primary"
                  onClick={() => send({ on: 'take', from: 'hand', form: size, then: 'compare' })}
                >
                  {HAND_WORDS.compare(thousandths(target.targetInches))}
                </Button>
                <Button onClick={() => send({ on: 'take', from: 'hand', form: size })}>
                  {HAND_WORDS.plan(thousandths(target.targetInches))}
                </Button>
              </Buttons>
            )}
            {job && model.unkept && (
              <Buttons>
                <Button
                  size="small"
                  disabledFocusable={state.task !== null}
                  onClick={() => does.deed(handDeed(job.job, toKeep(model)))}
                >
                  {HAND_WORDS.keep}
                </Button>
              </Buttons>
            )}
          </Part>
          {concerned && !obstacle && (
            <Reach
              input={concerned}
              form={form}
              targetInches={target.targetInches}
              lowerLayers={target.lowerLayers}
              onHand={onHand}
              onFit={({ grip }) => send({ on: 'take', from: 'hand', form: { ...size, item: grip.item } })}
            />
          )}
        </>
      )}
    </>
  );
}
