/** The job at the bench: its ticket, and its check-in until it is closed. */
import { Button } from '@fluentui/react-components';
import { useMemo } from 'react';
import { cautionsFor, type CheckIn } from '../../../core/index';
import {
  CAUTIONS_FOOT,
  nextText,
  sayCaution,
  sayClosing,
  sayMissingMinutes,
  sayPilot,
  sayWait,
  STATE_WORDS,
} from '../../../words/bench';
import { sayIssue } from '../../../words/issues';
import { canClose } from '../../../core/index';
import { shopOf, type Deed } from '../../state/deed';
import { FIRST_RUN, signedText, TABLE } from '../../words';
import { closeDeed, judgeDeed, startDeed, ticketDeed } from './benchDeeds';
import { benchSeen, type BenchSeen } from './benchSeen';
import { BENCH_WORDS } from './benchWords';
import { DataTable } from './DataTable';
import { Buttons, Part, Says, Sentences } from './parts';
import type { ToolProps } from './toolProps';

function TicketPart({ seen, busy, onFill }: { seen: BenchSeen; busy: boolean; onFill: () => void }) {
  const { ticket, problems } = seen;
  const first = ticket.clubs.find(({ pilot }) => pilot);
  const missing = sayMissingMinutes(ticket.minutes.missing);
  const cautions = cautionsFor(ticket).map((caution) => sayCaution(caution, ticket.clubs.length));
  return (
    <Part title={BENCH_WORDS.title}>
      <Says quiet small>
        {BENCH_WORDS.how}
      </Says>
      <Says>{BENCH_WORDS.minutes(ticket.minutes.total)}</Says>
      {first && ticket.pilot && <Says>{sayPilot(first.name, ticket.pilot.why)}</Says>}
      <Sentences texts={[...(missing ? [missing] : []), ...problems.map(sayIssue)]} flagged />
      <Buttons>
        <Button appearance="primary" disabledFocusable={busy} onClick={onFill}>
          {BENCH_WORDS.ticket}
        </Button>
      </Buttons>
      {cautions.length > 0 && (
        <Part title={BENCH_WORDS.mind} ruled>
          <Sentences texts={[...cautions, CAUTIONS_FOOT]} />
        </Part>
      )}
    </Part>
  );
}

function Judged({ checkIn }: { readonly checkIn: CheckIn }) {
  const wait = sayWait(checkIn);
  return (
    <>
      {wait && <Says flagged>{wait}</Says>}
      <DataTable
        caption={BENCH_WORDS.judged}
        headers={[BENCH_WORDS.club, BENCH_WORDS.standing, BENCH_WORDS.off, BENCH_WORDS.next]}
        numbers={[2]}
        rows={checkIn.clubs.map(({ row, name, state, off, next, issues }) => ({
          key: row,
          cells: [
            name,
            STATE_WORDS[state],
            off.reading ? signedText(off.reading.by) : TABLE.none,
            nextText(next, issues) || TABLE.none,
          ],
        }))}
      />
      <Says>{sayClosing(canClose(checkIn))}</Says>
    </>
  );
}

export function BenchScreen({ pane, obstacle }: ToolProps) {
  const { state, does } = pane;
  const { who, shop } = state;
  const job = who.by === 'job' ? who.job : null;
  const seen = useMemo(() => (job === null || !shop ? null : benchSeen(shopOf(shop), job)), [shop, job]);
  const busy = state.task !== null;
  if (obstacle) return obstacle;
  if (job === null || !seen) return <Says quiet>{BENCH_WORDS.chooseJob}</Says>;
  const { checkIn } = seen;
  const act = (deed: Deed, says: string) => (
    <Button disabledFocusable={busy} onClick={() => does.deed(deed)}>
      {says}
    </Button>
  );
  return (
    <>
      <TicketPart seen={seen} busy={busy} onFill={() => does.deed(ticketDeed(job))} />
      <Part title={BENCH_WORDS.checkTitle} ruled>
        {shop?.missing.includes('Checkin') ? (
          <>
            <Says quiet>{BENCH_WORDS.noTable}</Says>
            <Buttons>
              <Button disabledFocusable={busy} onClick={does.setUp}>
                {FIRST_RUN.setUp}
              </Button>
            </Buttons>
          </>
        ) : (
          <>
            <Says quiet small>
              {BENCH_WORDS.checkHow}
            </Says>
            <Buttons>
              {act(startDeed(job), BENCH_WORDS.start)}
              {checkIn && act(judgeDeed(job), BENCH_WORDS.judge)}
              {checkIn && act(closeDeed(job), BENCH_WORDS.close)}
            </Buttons>
            {checkIn && <Judged checkIn={checkIn} />}
          </>
        )}
      </Part>
    </>
  );
}
