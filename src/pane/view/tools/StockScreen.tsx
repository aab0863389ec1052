/** What is on the shelves against what open jobs need: reserving, ordering, picking, and what else happens to it. */
import { Button, ProgressBar } from '@fluentui/react-components';
import { useCallback } from 'react';
import { sayIssue } from '../../../words/issues';
import { sayStranded } from '../../../words/stock';
import { shopOf } from '../../state/seen';
import { useLong } from '../../state/useLong';
import type { PaneNow } from '../../state/usePane';
import { FIRST_RUN } from '../../words';
import { DataTable } from './DataTable';
import { Buttons, Part, Says, Sentences } from './parts';
import { orderDeed, pickDeed, releaseDeed, reserveDeed, useDeed } from './stockDeeds';
import { StockMove } from './StockMove';
import { Act, Placed, ToOrder } from './StockOrders';
import { jobOf, stockSeenSteps, type StockScreenSeen } from './stockSeen';
import { STOCK_WORDS } from './stockWords';
import type { ToolProps } from './toolProps';

interface InStock {
  readonly pane: PaneNow;
  readonly seen: StockScreenSeen;
  /** The job chosen above, if one is. */
  readonly job: string | null;
}

function Needs({ seen }: Pick<InStock, 'seen'>) {
  const { rows, lacks, waits, low } = seen;
  const { caption, item, needed, onHand, free, left, onOrder } = STOCK_WORDS;
  if (rows.length === 0) return <Says quiet>{STOCK_WORDS.nothingNeeded}</Says>;
  return (
    <>
      <Sentences texts={lacks} flagged />
      {lacks.length === 0 && <Says>{waits.length > 0 ? STOCK_WORDS.allComing : STOCK_WORDS.allThere}</Says>}
      <Sentences texts={waits} />
      {low > 0 && <Says>{STOCK_WORDS.low(low)}</Says>}
      <DataTable
        caption={caption}
        headers={[item, needed, onHand, free, left, onOrder]}
        numbers={[1, 2, 3, 4, 5]}
        rows={rows}
        crowded
      />
    </>
  );
}

function Reserving({ pane, seen, job }: InStock) {
  const { missing = [] } = pane.state.shop ?? {};
  const { needs, holds } = jobOf(seen, job);
  if (missing.includes('Movements')) {
    return (
      <>
        <Says quiet>{STOCK_WORDS.noTable}</Says>
        <Buttons>
          <Button disabledFocusable={pane.state.task !== null} onClick={pane.does.setUp}>
            {FIRST_RUN.setUp}
          </Button>
        </Buttons>
      </>
    );
  }
  return (
    <Buttons>
      {job !== null && needs && <Act pane={pane} deed={reserveDeed([job])} says={STOCK_WORDS.reserve(job)} primary />}
      <Act pane={pane} deed={reserveDeed(null)} says={STOCK_WORDS.reserveAll} primary={!needs} />
      {job !== null && holds && <Act pane={pane} deed={releaseDeed([job])} says={STOCK_WORDS.release(job)} />}
      {job !== null && needs && <Act pane={pane} deed={useDeed(job)} says={STOCK_WORDS.use(job)} />}
    </Buttons>
  );
}

function Stranded({ pane, seen }: Pick<InStock, 'pane' | 'seen'>) {
  const { stranded } = seen.state;
  if (stranded.length === 0) return null;
  return (
    <Part title={STOCK_WORDS.stranded} ruled>
      <Sentences texts={stranded.map(sayStranded)} flagged />
      <Buttons>
        <Act pane={pane} deed={releaseDeed(null)} says={STOCK_WORDS.releaseIdle} />
      </Buttons>
    </Part>
  );
}

export function StockScreen({ pane, obstacle }: ToolProps) {
  const { who, shop, lost } = pane.state;
  const job = who.by === 'job' ? who.job : null;
  const begin = useCallback(() => stockSeenSteps(shopOf(shop as NonNullable<typeof shop>)), [shop]);
  const { answer, settled, progress } = useLong(shop && !lost ? begin : null);
  if (!shop || lost) return obstacle;
  const hasLedger = !shop.missing.includes('Movements');
  return (
    <>
      {!settled && progress && (
        <ProgressBar
          aria-label={STOCK_WORDS.working(progress.done, progress.of)}
          max={progress.of || 1}
          value={progress.done}
        />
      )}
      {answer && !answer.ok && <Says flagged>{sayIssue(answer.issue)}</Says>}
      {answer?.ok && <Shelves pane={pane} seen={answer.value} job={job} />}
      {hasLedger && <StockMove pane={pane} shop={shopOf(shop)} orders={answer?.ok ? answer.value.placed : []} />}
    </>
  );
}

/** What the tables say, as they were when it was last worked out. */
function Shelves(parts: InStock) {
  const { pane, seen, job } = parts;
  const hasLedger = !pane.state.shop?.missing.includes('Movements');
  return (
    <>
      <Part title={STOCK_WORDS.title}>
        <Says quiet small>
          {STOCK_WORDS.how}
        </Says>
        <Needs {...parts} />
        <Sentences texts={seen.problems.map(sayIssue)} flagged />
        <Reserving {...parts} />
      </Part>
      <Stranded {...parts} />
      {hasLedger && <ToOrder pane={pane} orders={seen.orders} />}
      {hasLedger && <Placed pane={pane} placed={seen.placed} />}
      <Part title={STOCK_WORDS.sheets} ruled>
        <Buttons>
          <Act pane={pane} deed={orderDeed()} says={STOCK_WORDS.order} />
          <Act pane={pane} deed={pickDeed(null)} says={STOCK_WORDS.pick} />
          {job !== null && jobOf(seen, job).needs && (
            <Act pane={pane} deed={pickDeed([job])} says={STOCK_WORDS.pickJob(job)} />
          )}
        </Buttons>
      </Part>
    </>
  );
}
