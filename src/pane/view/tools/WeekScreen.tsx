/** The work ahead: open jobs by the week they are due in, and many of them done in one go. */
import { Button, Checkbox, makeStyles, ProgressBar, tokens } from '@fluentui/react-components';
import { useCallback } from 'react';
import { moneyNumber } from '../../../core/index';
import { dayOf } from '../../../workbook/days';
import { weekSteps, type Week, type WeekJob, type WeekPart } from '../../../workbook/week';
import { sayIssue } from '../../../words/issues';
import { shopOf } from '../../state/seen';
import type { WeekForm } from '../../state/tools';
import { useLong } from '../../state/useLong';
import type { PaneNow } from '../../state/usePane';
import { Buttons, Part, Says, Sentences } from './parts';
import type { ToolProps } from './toolProps';
import { batchDeed, weekDeed } from './weekDeeds';
import { jobLine, partHeading, quoteLine, shortLine, WEEK_WORDS } from './weekWords';
import { Unbroken } from '../Unbroken';

const useStyles = makeStyles({
  list: { margin: 0, padding: 0, listStyleType: 'none' },
  heading: {
    margin: '8px 0 2px',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    fontWeight: tokens.fontWeightSemibold,
    color: tokens.colorNeutralForeground2,
  },
  job: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr) auto',
    alignItems: 'center',
    columnGap: '4px',
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    padding: '2px 0 6px',
  },
  tick: { marginLeft: '-8px', minWidth: 0, overflowWrap: 'anywhere' },
  facts: {
    gridColumn: '1 / -1',
    margin: '0 0 0 24px',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
  short: { color: tokens.colorPaletteRedForeground1 },
  ticks: { display: 'flex', flexDirection: 'column' },
});

interface JobRowProps {
  readonly job: WeekJob;
  readonly ticked: boolean;
  readonly onTick: (ticked: boolean) => void;
  readonly onLook: () => void;
}

function JobRow({ job, ticked, onTick, onLook }: JobRowProps) {
  const styles = useStyles();
  const { now, issued } = job.money;
  const differs = now !== undefined && issued?.total !== undefined && issued.total !== moneyNumber(now);
  const short = shortLine(job);
  return (
    <li className={styles.job}>
      <Checkbox
        className={styles.tick}
        label={job.customer === '' ? job.job : `${job.job}, ${job.customer}`}
        checked={ticked}
        onChange={(_, { checked }) => onTick(checked === true)}
      />
      <Button size="small" appearance="subtle" aria-label={WEEK_WORDS.lookAt(job.job)} onClick={onLook}>
        {WEEK_WORDS.look}
      </Button>
      <p className={styles.facts}>
        <Unbroken text={jobLine(job)} />
        <br />
        {quoteLine(job, differs)}
        {short && (
          <>
            <br />
            <span className={styles.short}>{short}</span>
          </>
        )}
      </p>
    </li>
  );
}

interface WeekListProps {
  readonly week: Week;
  readonly isTicked: (job: string) => boolean;
  readonly onTick: (job: string, ticked: boolean) => void;
  readonly onLook: (job: string) => void;
}

function WeekList({ week, isTicked, onTick, onLook }: WeekListProps) {
  const styles = useStyles();
  return week.parts.map((part: WeekPart) => (
    <section key={`${part.when} ${part.monday ?? ''}`} aria-label={partHeading(part)}>
      <h3 className={styles.heading}>
        <Unbroken text={partHeading(part)} />
      </h3>
      <ul className={styles.list}>
        {part.jobs.map((job) => (
          <JobRow
            key={job.job}
            job={job}
            ticked={isTicked(job.job)}
            onTick={(ticked) => onTick(job.job, ticked)}
            onLook={() => onLook(job.job)}
          />
        ))}
      </ul>
    </section>
  ));
}

interface BatchProps {
  readonly pane: PaneNow;
  readonly jobs: readonly string[];
  readonly today: number;
}

const STEPS = ['quote', 'reserve', 'plan'] as const;

function Batch({ pane, jobs, today }: BatchProps) {
  const styles = useStyles();
  const { state, send, does } = pane;
  const form = state.tools.week;
  const { quote, reserve, plan } = form;
  const nothing = jobs.length === 0 || !(quote || reserve || plan);
  return (
    <Part title={WEEK_WORDS.batchTitle} ruled>
      <Says quiet small>
        {WEEK_WORDS.batchHow}
      </Says>
      <div className={styles.ticks}>
        {STEPS.map((step) => (
          <Checkbox
            key={step}
            className={styles.tick}
            label={WEEK_WORDS[step]}
            checked={form[step]}
            onChange={(_, { checked }) => send({ on: 'tool', tool: 'week', change: { [step]: checked === true } })}
          />
        ))}
      </div>
      <Buttons>
        <Button
          appearance="primary"
          disabledFocusable={state.task !== null || nothing}
          onClick={() => does.deed(batchDeed({ jobs, quote, reserve, plan, today }))}
        >
          {WEEK_WORDS.run(jobs.length)}
        </Button>
      </Buttons>
    </Part>
  );
}

function Ahead({ pane, week, today }: { readonly pane: PaneNow; readonly week: Week; readonly today: number }) {
  const { state, send, does } = pane;
  const { leftOut } = state.tools.week;
  const change = (made: Partial<WeekForm>) => send({ on: 'tool', tool: 'week', change: made });
  const all = week.parts.flatMap(({ jobs }) => jobs.map(({ job }) => job));
  const ticked = all.filter((job) => !leftOut.includes(job));
  const onTick = (job: string, isIn: boolean) =>
    change({ leftOut: isIn ? leftOut.filter((each) => each !== job) : [...leftOut, job] });
  if (all.length === 0) return <Says quiet>{WEEK_WORDS.none}</Says>;
  return (
    <>
      <Sentences texts={week.problems.map(sayIssue)} flagged />
      <WeekList
        week={week}
        isTicked={(job) => !leftOut.includes(job)}
        onTick={onTick}
        onLook={(job) => {
          send({ on: 'who', who: { by: 'job', job } });
          send({ on: 'screen', screen: 'plan' });
        }}
      />
      {week.bare.length > 0 && (
        <Says quiet small>
          {WEEK_WORDS.bare(week.bare)}
        </Says>
      )}
      <Buttons>
        <Button disabledFocusable={state.task !== null} onClick={() => does.deed(weekDeed(today))}>
          {WEEK_WORDS.sheet}
        </Button>
        {all.length > 1 && (
          <Button appearance="subtle" onClick={() => change({ leftOut: ticked.length > 0 ? all : [] })}>
            {ticked.length > 0 ? WEEK_WORDS.no : WEEK_WORDS.all}
          </Button>
        )}
      </Buttons>
      <Batch pane={pane} jobs={ticked} today={today} />
    </>
  );
}

export function WeekScreen({ pane, obstacle }: ToolProps) {
  const { shop: seen, lost } = pane.state;
  const today = dayOf(new Date());
  const begin = useCallback(
    () => weekSteps({ tables: shopOf(seen as NonNullable<typeof seen>).tables, today }),
    [seen, today],
  );
  const { answer, settled, progress } = useLong(seen && !lost && !seen.missing.includes('Clubs') ? begin : null);
  if (!seen || lost || seen.missing.includes('Clubs')) return obstacle;
  return (
    <Part title={WEEK_WORDS.title}>
      <Says quiet small>
        {WEEK_WORDS.how}
      </Says>
      {!settled && progress && (
        <ProgressBar
          aria-label={WEEK_WORDS.working(progress.done, progress.of)}
          max={progress.of || 1}
          value={progress.done}
        />
      )}
      <Says live>{answer?.ok && answer.value.jobs > 0 && WEEK_WORDS.sum(answer.value.jobs, answer.value.minutes)}</Says>
      <Says live flagged>
        {answer && !answer.ok && sayIssue(answer.issue)}
      </Says>
      {answer?.ok && <Ahead pane={pane} week={answer.value} today={today} />}
    </Part>
  );
}
