/** The job at the bench: its ticket, its check-in until it is closed, what goes back with the clubs, and a redo. */
import { Button } from '@fluentui/react-components';
import { useMemo, type ReactNode } from 'react';
import { cautionsFor } from '../../../core/index';
import { CAUTIONS_FOOT, sayCaution, sayMissingMinutes, sayPilot, TICKET_WORDS } from '../../../words/bench';
import { sayIssue } from '../../../words/issues';
import type { Deed } from '../../state/deed';
import { shopOf } from '../../state/seen';
import { FIRST_RUN } from '../../words';
import { Checked } from './BenchCheckIn';
import { closeDeed, judgeDeed, labelsDeed, redoDeed, slipDeed, startDeed, ticketDeed } from './benchDeeds';
import { BenchRedo } from './BenchRedo';
import { benchSeen, type BenchSeen } from './benchSeen';
import { BENCH_WORDS } from './benchWords';
import { CalibratePart } from './CalibratePart';
import { Buttons, Part, Says, Sentences } from './parts';
import type { ToolProps } from './toolProps';

function TicketPart({ seen, busy, onFill }: { seen: BenchSeen; busy: boolean; onFill: () => void }) {
  const { ticket, problems, round } = seen;
  const first = ticket.clubs.find(({ pilot }) => pilot);
  const missing = sayMissingMinutes(ticket.minutes.missing);
  const unplanned = ticket.unplanned.map(({ name, issues }) => TICKET_WORDS.unplanned(name, issues));
  return (
    <Part title={BENCH_WORDS.title}>
      <Says quiet small>
        {BENCH_WORDS.how}
      </Says>
      {ticket.isAgain && (
        <Says flagged>
          {BENCH_WORDS.again(
            round,
            ticket.clubs.map(({ name }) => name),
          )}
        </Says>
      )}
      <Says>{BENCH_WORDS.minutes(ticket.minutes.total)}</Says>
      {first && ticket.pilot && <Says>{sayPilot(first.name, ticket.pilot.why)}</Says>}
      <Sentences texts={[...unplanned, ...(missing ? [missing] : []), ...problems.map(sayIssue)]} flagged />
      <Buttons>
        <Button appearance="primary" disabledFocusable={busy} onClick={onFill}>
          {BENCH_WORDS.ticket}
        </Button>
      </Buttons>
    </Part>
  );
}

/** Last of all: it is printed on the ticket as well. */
function Cautions({ ticket }: Pick<BenchSeen, 'ticket'>) {
  const cautions = cautionsFor(ticket).map((caution) => sayCaution(caution, ticket.clubs.length));
  if (cautions.length === 0) return null;
  return (
    <Part title={BENCH_WORDS.mind} ruled>
      <Sentences texts={[...cautions, CAUTIONS_FOOT]} />
    </Part>
  );
}

/** A button that does a deed. */
type Act = (deed: Deed, says: string) => ReactNode;

function CheckInPart({ seen, job, act }: { readonly seen: BenchSeen; readonly job: string; readonly act: Act }) {
  const { checkIn, checked, unjudged, isDone, round } = seen;
  return (
    <>
      {isDone ? (
        <Says>{BENCH_WORDS.isClosed}</Says>
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
        </>
      )}
      {checkIn && !isDone && (
        <Says flagged={unjudged > 0} quiet={unjudged === 0} small>
          {unjudged > 0 ? BENCH_WORDS.unjudged : BENCH_WORDS.allJudged}
        </Says>
      )}
      {checkIn && <Checked checkIn={checkIn} clubs={checked} isDone={isDone} round={round} />}
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
  const act: Act = (deed, says) => (
    <Button disabledFocusable={busy} onClick={() => does.deed(deed)}>
      {says}
    </Button>
  );
  const hasTable = !shop?.missing.includes('Checkin');
  return (
    <>
      <TicketPart seen={seen} busy={busy} onFill={() => does.deed(ticketDeed(job))} />
      <Part title={BENCH_WORDS.checkTitle} ruled>
        {hasTable ? (
          <CheckInPart seen={seen} job={job} act={act} />
        ) : (
          <>
            <Says quiet>{BENCH_WORDS.noTable}</Says>
            <Buttons>
              <Button disabledFocusable={busy} onClick={does.setUp}>
                {FIRST_RUN.setUp}
              </Button>
            </Buttons>
          </>
        )}
      </Part>
      <Part title={BENCH_WORDS.backTitle} ruled>
        <Says quiet small>
          {BENCH_WORDS.backHow}
        </Says>
        <Buttons>
          {act(labelsDeed(job), BENCH_WORDS.labels)}
          {act(slipDeed(job), BENCH_WORDS.slip)}
        </Buttons>
      </Part>
      {seen.isDone && hasTable && (
        <BenchRedo
          key={job}
          clubs={seen.checkIn?.clubs.map(({ name }) => name) ?? seen.ticket.clubs.map(({ name }) => name)}
          busy={busy}
          onBegin={(clubs) => does.deed(redoDeed(job, clubs))}
        />
      )}
      <Cautions ticket={seen.ticket} />
      <CalibratePart pane={pane} />
    </>
  );
}
