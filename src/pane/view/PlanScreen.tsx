/** What stands under the tabs: the plan, or a screen that helps choosing for it, or what stands in the way. */
import { makeStyles, tokens } from '@fluentui/react-components';
import { lazy, Suspense } from 'react';
import { TABLES } from '../../workbook/schema';
import { sayIssue } from '../../words/issues';
import { plannedRows } from '../state/paneState';
import type { PaneNow } from '../state/usePane';
import { COMMON, EMPTY, FIRST_RUN, nothingToPlan, WHAT } from '../words';
import { Missing } from './Missing';
import { Nav, PANEL_ID, tabId } from './Nav';
import { Preview } from './Preview';
import { WhatFields } from './WhatFields';
import { WhoField } from './WhoField';

/** Loaded when first looked at: a pane that only plans need not wait for it. */
const ToolScreen = lazy(() => import('./tools/ToolScreen').then((made) => ({ default: made.ToolScreen })));

/** Loaded only where another version set the workbook up. */
const UpToDate = lazy(() => import('./tools/UpToDate').then((made) => ({ default: made.UpToDate })));

/** Tables that the screens which need them ask for. */
const ASKED_FOR_LATER = new Set(TABLES.flatMap(({ name, later }) => (later ? [name] : [])));

const useStyles = makeStyles({
  screen: { display: 'flex', flexDirection: 'column', rowGap: '6px' },
  panel: { display: 'flex', flexDirection: 'column', rowGap: '6px', minWidth: 0, paddingTop: '6px' },
  preview: { borderTop: `1px solid ${tokens.colorNeutralStroke2}`, marginTop: '4px', paddingTop: '10px' },
  fault: { margin: 0, color: tokens.colorNeutralForeground2 },
});

/** What keeps the pane from planning anything, if something does. */
export function obstacleOf({ state, send, does, preview }: PaneNow): React.ReactElement | null {
  const { shop, who, lost } = state;
  if (!shop) return null;
  if (lost) {
    const button = { says: COMMON.lists, onPress: () => send({ on: 'screen', screen: 'lists' }) };
    return <Missing title={EMPTY.cannot} text={EMPTY.lost} button={button} />;
  }
  const setUp = { says: FIRST_RUN.setUp, onPress: does.setUp };
  const needed = shop.missing.filter((table) => table === 'Clubs' || table === 'Jobs');
  if (needed.includes('Clubs'))
    return <Missing title={EMPTY.missing(needed)} text={EMPTY.missingText} button={setUp} />;
  const [fault] = shop.faults;
  if (fault) return <Missing title={EMPTY.cannot} text={sayIssue(fault)} />;
  if ((who.by === 'job' && !shop.jobs.length) || !plannedRows(state).length)
    return <Missing {...nothingToPlan(who, shop)} />;
  if (!preview) return <p aria-busy>{COMMON.planning}</p>;
  return preview.ok ? null : <Missing title={EMPTY.cannot} text={sayIssue(preview.issue)} />;
}

function PlanPart({ pane }: { readonly pane: PaneNow }) {
  const styles = useStyles();
  const { state, send, does, read, preview } = pane;
  const { shop } = state;
  if (!shop) return null;
  return (
    <>
      <section aria-label={WHAT.title} hidden={shop.missing.includes('Clubs')}>
        <WhatFields
          shop={shop}
          form={state.form}
          faults={read.faults}
          putters={pane.putters}
          onForm={(change) => send({ on: 'form', change })}
        />
      </section>
      <div className={styles.preview}>
        {preview?.ok && plannedRows(state).length ? (
          <Preview
            plan={preview.value.plan}
            problems={preview.value.problems}
            shown={state.shown}
            open={state.open}
            onOpen={(row) => send({ on: 'open', row })}
            onMore={() => send({ on: 'more' })}
            onLesson={does.lesson}
          />
        ) : (
          obstacleOf(pane)
        )}
      </div>
    </>
  );
}

export function PlanScreen({ pane }: { readonly pane: PaneNow }) {
  const styles = useStyles();
  const { state, send } = pane;
  const { shop, screen } = state;
  if (!shop) return null;
  const lacking = shop.missing.filter((table) => table !== 'Clubs' && !ASKED_FOR_LATER.has(table));
  return (
    <div className={styles.screen}>
      <WhoField
        shop={shop}
        who={state.who}
        selected={state.selection?.length ?? 0}
        onWho={(who) => send({ on: 'who', who })}
      />
      {shop.age !== 'same' && (
        <Suspense>
          <UpToDate pane={pane} />
        </Suspense>
      )}
      <Nav screen={screen} onScreen={(next) => send({ on: 'screen', screen: next })} />
      <div id={PANEL_ID} role="tabpanel" aria-labelledby={tabId(screen)} className={styles.panel}>
        {lacking.length > 0 && screen !== 'lists' && !shop.missing.includes('Clubs') && (
          <p className={styles.fault}>
            {EMPTY.missing(lacking)}. {EMPTY.missingHint}
          </p>
        )}
        {screen !== 'lists' &&
          shop.goingOn.map(([table, rows]) => (
            <p key={table} className={styles.fault}>
              {EMPTY.goingOn(table, rows)}
            </p>
          ))}
        {screen === 'plan' ? (
          <PlanPart pane={pane} />
        ) : (
          <Suspense fallback={<p className={styles.fault}>{COMMON.opening}</p>}>
            <ToolScreen pane={pane} obstacle={obstacleOf(pane)} />
          </Suspense>
        )}
      </div>
    </div>
  );
}
