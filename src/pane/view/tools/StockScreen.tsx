/** What is on the shelves against what open jobs need: reserving, ordering, picking, and what else happens to it. */
import { Button } from '@fluentui/react-components';
import { useMemo } from 'react';
import { sayIssue } from '../../../words/issues';
import { sayStranded } from '../../../words/stock';
import type { Deed } from '../../state/deed';
import { shopOf } from '../../state/seen';
import type { PaneNow } from '../../state/usePane';
import { FIRST_RUN } from '../../words';
import { DataTable } from './DataTable';
import { Buttons, Part, Says, Sentences } from './parts';
import { orderDeed, pickDeed, releaseDeed, reserveDeed, useDeed } from './stockDeeds';
import { StockMove } from './StockMove';
import { stockSeen, type StockScreenSeen } from './stockSeen';
import { STOCK_WORDS } from './stockWords';
import type { ToolProps } from './toolProps';

interface InStock {
  readonly pane: PaneNow;
  readonly seen: StockScreenSeen;
  /** The job chosen above, if one is. */
  readonly job: string | null;
}

function Act({ pane, deed, says, primary }: { pane: PaneNow; deed: Deed; says: string; primary?: boolean }) {
  const { state, does } = pane;
  return (
    <Button
      appearance={primary ? 'primary' : 'secondary'}
      disabledFocusable={state.task !== null}
      onClick={() => does.deed(deed)}
    >
      {says}
    </Button>
  );
}

function Needs({ seen }: Pick<InStock, 'seen'>) {
  const { rows, lacks, low } = seen;
  const { caption, item, needed, onHand, free, left } = STOCK_WORDS;
  if (rows.length === 0) return <Says quiet>{STOCK_WORDS.nothingNeeded}</Says>;
  return (
    <>
      <Sentences texts={lacks} flagged />
      {lacks.length === 0 && <Says>{STOCK_WORDS.allThere}</Says>}
      {low > 0 && <Says>{STOCK_WORDS.low(low)}</Says>}
      <DataTable caption={caption} headers={[item, needed, onHand, free, left]} numbers={[1, 2, 3, 4]} rows={rows} />
    </>
  );
}

function Reserving({ pane, seen, job }: InStock) {
  const { missing = [] } = pane.state.shop ?? {};
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
      {job !== null && seen.job.needs && (
        <Act pane={pane} deed={reserveDeed([job])} says={STOCK_WORDS.reserve(job)} primary />
      )}
      <Act pane={pane} deed={reserveDeed(null)} says={STOCK_WORDS.reserveAll} primary={!seen.job.needs} />
      {job !== null && seen.job.holds && <Act pane={pane} deed={releaseDeed([job])} says={STOCK_WORDS.release(job)} />}
      {job !== null && seen.job.needs && <Act pane={pane} deed={useDeed(job)} says={STOCK_WORDS.use(job)} />}
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
  const { who, shop } = pane.state;
  const job = who.by === 'job' ? who.job : null;
  const seen = useMemo(() => (shop ? stockSeen(shopOf(shop), job) : null), [shop, job]);
  if (!shop || !seen) return obstacle;
  if (!seen.ok) return <Says flagged>{sayIssue(seen.issue)}</Says>;
  const parts = { pane, seen: seen.value, job };
  const { problems } = seen.value;
  return (
    <>
      <Part title={STOCK_WORDS.title}>
        <Says quiet small>
          {STOCK_WORDS.how}
        </Says>
        <Needs {...parts} />
        <Sentences texts={problems.map(sayIssue)} flagged />
        <Reserving {...parts} />
      </Part>
      <Stranded {...parts} />
      <Part title={STOCK_WORDS.sheets} ruled>
        <Buttons>
          <Act pane={pane} deed={orderDeed()} says={STOCK_WORDS.order} />
          <Act pane={pane} deed={pickDeed(null)} says={STOCK_WORDS.pick} />
          {job !== null && seen.value.job.needs && (
            <Act pane={pane} deed={pickDeed([job])} says={STOCK_WORDS.pickJob(job)} />
          )}
        </Buttons>
      </Part>
      {!shop.missing.includes('Movements') && <StockMove pane={pane} shop={shopOf(shop)} />}
    </>
  );
}
