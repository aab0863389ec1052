/** The task pane, the same on every page: it knows a workbook only by its port. */
import { Button, FluentProvider, Link, makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { lazy, Suspense, useEffect, useMemo, useRef } from 'react';
import { connecting } from '../../workbook/connecting';
import type { WorkbookPort } from '../../workbook/port';
import { PLAN_SCREENS } from '../state/tools';
import { usePane, type PaneNow } from '../state/usePane';
import type { Work } from '../state/work';
import { plannedRows } from '../state/paneState';
import { THEMES, wearTheme, type ThemeName } from '../theme';
import { workOn } from '../workOn';
import { COMMON } from '../words';
import { ActionBar } from './ActionBar';
import { FirstRun } from './FirstRun';
import { useKeptFocus } from './keepFocus';
import { Missing } from './Missing';
import { Own, ownOf } from './own';
import { StatusArea } from './StatusArea';

const LOW = '@media (max-height: 360px)';

const useStyles = makeStyles({
  pane: {
    display: 'flex',
    flexDirection: 'column',
    height: '100%',
    minHeight: 0,
    minWidth: 0,
    // Asked by narrow.ts.
    containerType: 'inline-size',
    containerName: 'pane',
    backgroundColor: tokens.colorNeutralBackground1,
    color: tokens.colorNeutralForeground1,
    fontFamily: tokens.fontFamilyBase,
    fontSize: tokens.fontSizeBase300,
    lineHeight: tokens.lineHeightBase300,
    overflowWrap: 'break-word',
    // Much enlarged there is no room for a foot that stays: all scrolls.
    [LOW]: { display: 'block', overflowY: 'auto' },
  },
  body: {
    flexGrow: 1,
    minHeight: 0,
    overflowY: 'auto',
    // At 320 px nothing is wider; below that, much enlarged, it can be reached all the same.
    overflowX: 'auto',
    // Words for screen readers alone are placed absolutely: here, so that they cannot make the page itself longer.
    position: 'relative',
    padding: '10px 12px 16px',
    scrollbarGutter: 'stable',
    scrollbarWidth: 'thin',
    [LOW]: { overflowY: 'visible' },
  },
  foot: {
    flexShrink: 0,
    display: 'flex',
    flexDirection: 'column',
    rowGap: '6px',
    padding: '8px 12px 6px',
    borderTop: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground2,
  },
  footBare: { borderTopColor: 'transparent', backgroundColor: tokens.colorNeutralBackground1 },
  help: {
    marginTop: '16px',
    fontSize: tokens.fontSizeBase200,
    display: 'flex',
    minHeight: '24px',
    alignItems: 'center',
  },
  heading: { position: 'absolute', width: '1px', height: '1px', overflow: 'hidden', clip: 'rect(0 0 0 0)', margin: 0 },
  waiting: { color: tokens.colorNeutralForeground2, margin: 0 },
});

/** What shows a plan comes while the workbook is being read: nothing of it is needed before. */
const planParts = () => import('./PlanScreen').then((made) => ({ default: made.PlanScreen }));
const PlanScreen = lazy(planParts);
const ListsScreen = lazy(() => import('./tools/ListsScreen').then((made) => ({ default: made.ListsScreen })));

function Screen({ pane }: { readonly pane: PaneNow }) {
  const styles = useStyles();
  const { state, send, does } = pane;
  const toLists = () => send({ on: 'screen', screen: 'lists' });
  // Where there is nothing to plan yet, or nothing can be read, lists of one's own can be connected all the same.
  if (state.screen === 'lists' && (state.stage === 'failed' || state.stage === 'firstRun')) {
    return (
      <Suspense
        fallback={
          <p className={styles.waiting} aria-busy>
            {COMMON.opening}
          </p>
        }
      >
        <ListsScreen pane={pane} />
      </Suspense>
    );
  }
  switch (state.stage) {
    case 'loading':
      return <p className={styles.waiting}>{COMMON.loading}</p>;
    case 'failed':
      return (
        <Missing title={COMMON.unread} text={COMMON.unreadText} button={{ says: COMMON.again, onPress: does.look }}>
          <Button onClick={toLists}>{COMMON.lists}</Button>
        </Missing>
      );
    case 'firstRun':
      return (
        <FirstRun
          skipped={state.skipped}
          busy={state.task !== null}
          onSetUp={does.setUp}
          onLists={toLists}
          onSkip={() => send({ on: 'skip' })}
        />
      );
    case 'plan':
      return (
        <Suspense
          fallback={
            <p className={styles.waiting} aria-busy>
              {COMMON.loading}
            </p>
          }
        >
          <PlanScreen pane={pane} />
        </Suspense>
      );
  }
}

/** How many clubs get what is chosen: all but spared putters, or only those with choices of their own. */
function chosenClubs({ state, putters, read }: PaneNow, clubs: number): number {
  const forAll = Object.keys(read.choices).some((key) => key !== 'perClub');
  if (!forAll) return read.choices.perClub?.size ?? clubs;
  return state.form.puttersToo ? clubs : clubs - putters;
}

function Foot({ pane, work }: { readonly pane: PaneNow; readonly work: Work }) {
  const styles = useStyles();
  const { state, send, does, read, preview, slowTask } = pane;
  const rows = plannedRows(state);
  const clubs = preview?.ok ? preview.value.plan.clubs.length : 0;
  const acts = state.stage === 'plan' && state.shop;
  // Whose clubs they are is looked for in all of Clubs: not at every letter that is typed.
  const planSheet = useMemo(
    () => (acts ? work.planSheetOf(acts, state.who, rows) : ''),
    [work, acts, state.who, state.selection],
  );
  return (
    <div
      className={mergeClasses(styles.foot, !acts && styles.footBare)}
      onKeyDown={({ key, defaultPrevented }) => {
        if (key === 'Escape' && !defaultPrevented) send({ on: 'dismiss' });
      }}
    >
      <StatusArea
        slowTask={slowTask}
        doing={state.doing}
        outcome={state.outcome}
        onWriteOver={does.writeOver}
        onMend={does.mend}
        onDismiss={() => send({ on: 'dismiss' })}
        onStop={does.stop}
      />
      {acts && (
        <ActionBar
          planning={PLAN_SCREENS.includes(state.screen)}
          clubs={clubs}
          chosen={chosenClubs(pane, clubs)}
          choices={read.choices}
          where={state.where}
          planSheet={planSheet}
          busy={state.task !== null}
          onWhere={(where) => send({ on: 'where', where })}
          onFill={does.fill}
          onFreeze={does.freeze}
          undoes={state.shop?.undo}
          onUndo={does.undo}
        />
      )}
    </div>
  );
}

export interface PaneProps {
  readonly port: WorkbookPort;
  readonly theme: ThemeName;
  /** The help’s start; each tab has a page of its own in the folder beside it. */
  readonly helpUrl: string;
  /** The page's title, for a page that shows nothing else; read out, not shown, as the host shows it already. */
  readonly heading?: string;
}

const helpOf = (start: string, screen: string): string => start.replace(/\.html$/, `/tabs/${screen}.html`);

/** Not a class: the provider gives its classes to the layer that lists open in, which would then cover the pane. */
const FILL = { height: '100%' };

/** The pane on whatever does its work; tests hand in their own. */
export function PaneOn({ work, theme, helpUrl, heading }: Omit<PaneProps, 'port'> & { readonly work: Work }) {
  const styles = useStyles();
  const pane = usePane(work);
  useEffect(() => wearTheme(theme), [theme]);
  // What fails to load now is tried again, and said, when it is shown.
  useEffect(() => void planParts().catch(() => undefined), []);
  const body = useRef<HTMLDivElement>(null);
  const main = useRef<HTMLElement>(null);
  useKeptFocus(main);
  const { screen, shop } = pane.state;
  const own = useMemo(() => ownOf(shop), [shop]);
  // Another screen begins at its top, wherever the last one was left.
  useEffect(() => {
    body.current?.scrollTo(0, 0);
  }, [screen]);
  return (
    <FluentProvider theme={THEMES[theme]} style={FILL}>
      <Own.Provider value={own}>
        <main className={styles.pane} ref={main}>
          {heading && <h1 className={styles.heading}>{heading}</h1>}
          <div className={styles.body} ref={body}>
            <Screen pane={pane} />
            <Link className={styles.help} href={helpOf(helpUrl, screen)} target="_blank" rel="noreferrer">
              {COMMON.help}
            </Link>
          </div>
          <Foot pane={pane} work={work} />
        </main>
      </Own.Provider>
    </FluentProvider>
  );
}

/** The pane on a workbook. */
export function Pane({ port, ...rest }: PaneProps) {
  const work = useMemo(() => workOn(connecting(port)), [port]);
  return <PaneOn work={work} {...rest} />;
}
