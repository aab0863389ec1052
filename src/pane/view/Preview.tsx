/** What would be written, before it is: in one sentence, as a plot, as a table, and what waits for a decision. */
import { Button, Link, makeStyles, tokens } from '@fluentui/react-components';
import { useMemo, useRef } from 'react';
import type { Issue, Lesson, SetPlan } from '../../core/index';
import { sayIssue } from '../../words/issues';
import { sayBreach, sayNote } from '../../words/notes';
import { gatherDecisions, isOpen, type Decision } from '../state/decisions';
import { plotOf } from '../state/plot';
import { summarise } from '../state/summary';
import { addedText, DECISIONS, LESSON, namesText, PREVIEW, PROBLEMS, summaryText, TOPICS } from '../words';
import { ClubTable } from './ClubTable';
import { Plot } from './Plot';

const useStyles = makeStyles({
  part: { display: 'flex', flexDirection: 'column', rowGap: '10px' },
  heading: {
    margin: 0,
    fontSize: tokens.fontSizeBase300,
    lineHeight: tokens.lineHeightBase300,
    fontWeight: tokens.fontWeightSemibold,
  },
  summary: { margin: 0, minHeight: '60px' },
  strong: { fontWeight: tokens.fontWeightSemibold },
  quiet: { color: tokens.colorNeutralForeground2 },
  lesson: {
    border: `1px solid ${tokens.colorBrandStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
    padding: '8px 10px',
    display: 'flex',
    flexDirection: 'column',
    rowGap: '6px',
    alignItems: 'flex-start',
  },
  says: { margin: 0 },
  decisions: { margin: 0, padding: 0, listStyleType: 'none', display: 'flex', flexDirection: 'column', rowGap: '8px' },
  topic: { borderLeft: `3px solid ${tokens.colorPaletteMarigoldBorder2}`, paddingLeft: '8px' },
  topicName: { margin: 0, fontSize: 'inherit', lineHeight: 'inherit', fontWeight: tokens.fontWeightSemibold },
  clubs: { color: tokens.colorNeutralForeground2 },
});

function LessonOffer({ lesson, onUse }: { readonly lesson: Lesson; readonly onUse: (lesson: Lesson) => void }) {
  const styles = useStyles();
  const clubs = lesson.appliesTo.length;
  return (
    <div className={styles.lesson}>
      <h2 className={styles.heading}>{LESSON.title(lesson.club)}</h2>
      <p className={styles.says}>
        {LESSON.text(lesson.gripGrams, lesson.balanceInches)} {LESSON.ask(clubs)}
      </p>
      <Button size="small" onClick={() => onUse(lesson)}>
        {LESSON.use(clubs)}
      </Button>
    </div>
  );
}

/** Sentences that differ in their figures alone: past the second one the clubs' names are enough. */
const MOST_ALIKE = 2;
/** Cells that could not be read have each their own trouble; past so many a person looks into the sheet. */
const MOST_CELLS = 12;

function mostOf(topic: Decision['topic']): number {
  return topic === 'issue' ? MOST_CELLS : MOST_ALIKE;
}

/** Clubs stripped alike teach nearly the same; nobody chooses among more. */
const MOST_LESSONS = 3;

function Decisions({ decisions }: { readonly decisions: readonly Decision[] }) {
  const styles = useStyles();
  return (
    <ul className={styles.decisions}>
      {decisions.map(({ topic, sentences }) => (
        <li key={topic} className={styles.topic}>
          <h3 className={styles.topicName}>{TOPICS[topic]}</h3>
          {sentences.slice(0, mostOf(topic)).map(({ text, clubs }) => (
            <p key={text} className={styles.says}>
              <span className={styles.clubs}>{namesText(clubs)}: </span>
              {text}
            </p>
          ))}
          {sentences.length > mostOf(topic) && (
            <p className={styles.says}>
              {DECISIONS.likewise([...new Set(sentences.slice(mostOf(topic)).flatMap(({ clubs }) => clubs))])}
            </p>
          )}
        </li>
      ))}
    </ul>
  );
}

/** What is wrong in Settings and the lists, which no club's row can say. */
function Problems({ sentences }: { readonly sentences: readonly string[] }) {
  const styles = useStyles();
  return (
    <ul className={styles.decisions}>
      {sentences.map((text) => (
        <li key={text} className={styles.topic}>
          {text}
        </li>
      ))}
    </ul>
  );
}

interface PreviewProps {
  readonly plan: SetPlan;
  /** What is wrong outside the clubs. */
  readonly problems: readonly Issue[];
  readonly shown: number;
  readonly open: readonly number[];
  readonly onOpen: (row: number) => void;
  readonly onMore: () => void;
  readonly onLesson: (lesson: Lesson) => void;
}

export function Preview({ plan, problems, shown, open, onOpen, onMore, onLesson }: PreviewProps) {
  const styles = useStyles();
  const list = useRef<HTMLHeadingElement>(null);
  const summary = useMemo(() => summarise(plan), [plan]);
  const decisions = useMemo(() => gatherDecisions(plan, { note: sayNote, breach: sayBreach }), [plan]);
  const wrong = useMemo(() => [...new Set(problems.map(sayIssue))], [problems]);
  const mend = useRef<HTMLHeadingElement>(null);
  const clubs = useMemo(() => plan.clubs.slice(0, shown), [plan, shown]);
  const plot = useMemo(() => plotOf({ clubs }), [clubs]);
  return (
    <section className={styles.part} aria-label={PREVIEW.title}>
      <p className={styles.summary} role="status">
        <span className={styles.strong}>{summaryText(summary)}</span>
        {` · ${addedText(summary)}. `}
        {wrong.length > 0 && (
          <Link as="button" inline onClick={() => mend.current?.focus()}>
            {PREVIEW.mend(wrong.length)}
          </Link>
        )}
        {wrong.length > 0 && decisions.length > 0 && ', '}
        {decisions.length > 0 && (
          <Link as="button" inline onClick={() => list.current?.focus()}>
            {PREVIEW.decide(plan.clubs.filter(isOpen).length)}
          </Link>
        )}
      </p>
      {plan.lessons
        .filter(({ appliesTo }) => appliesTo.length > 0)
        .slice(0, MOST_LESSONS)
        .map((lesson) => (
          <LessonOffer key={lesson.row} lesson={lesson} onUse={onLesson} />
        ))}
      <Plot plot={plot} summary={summary} />
      <ClubTable clubs={clubs} all={plan.clubs.length} open={open} onOpen={onOpen} onMore={onMore} />
      {wrong.length > 0 && (
        <>
          <h2 className={styles.heading} ref={mend} tabIndex={-1}>
            {PROBLEMS.title}
          </h2>
          <Problems sentences={wrong} />
        </>
      )}
      {decisions.length > 0 && (
        <>
          <h2 className={styles.heading} ref={list} tabIndex={-1}>
            {DECISIONS.title}
          </h2>
          <Decisions decisions={decisions} />
        </>
      )}
    </section>
  );
}
