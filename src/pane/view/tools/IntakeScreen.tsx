/** Over the counter: a job begun with its clubs, its sheet to sign, what the clubs got last time, and who is due for a reminder. */
import { Button, Checkbox, Input, makeStyles, Textarea } from '@fluentui/react-components';
import { useId, useMemo } from 'react';
import { dayOf } from '../../../workbook/days';
import type { LastTime } from '../../../workbook/history';
import { dueReminders } from '../../../workbook/reminders';
import type { Shop } from '../../../workbook/shop';
import {
  dayWords,
  longDay,
  layersWords,
  sayHeld,
  sayIntakeFault,
  sayJobFault,
  sayListFault,
} from '../../../words/intake';
import { shopOf } from '../../state/seen';
import { EMPTY_INTAKE, type IntakeForm } from '../../state/tools';
import type { PaneNow } from '../../state/usePane';
import { FIRST_RUN, TABLE } from '../../words';
import { Choice, FieldLine } from '../fields';
import { DataTable } from './DataTable';
import { beginDeed, intakeDeed, remindersDeed, takeLastDeed } from './intakeDeeds';
import { customersOf, jobSeen, newJobSeen, suggestedJob } from './intakeSeen';
import { INTAKE_WORDS } from './intakeWords';
import { Buttons, Label, Part, Says, Sentences } from './parts';
import type { ToolProps } from './toolProps';

const useStyles = makeStyles({
  input: { minWidth: 0, width: '100%' },
  clubs: { width: '100%', '& > textarea': { minHeight: '64px' } },
  tick: { marginLeft: '-8px' },
});

interface TextLineProps {
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly type?: 'text' | 'date';
  /** Ids of suggestions and of the sentence that says what is wrong. */
  readonly list?: string;
  readonly says?: string | undefined;
  /** What is said is what is wrong; left out: always. */
  readonly isWrong?: boolean;
  readonly onType: (text: string) => void;
}

function TextLine({ label, value, placeholder, type = 'text', list, says, isWrong = true, onType }: TextLineProps) {
  const styles = useStyles();
  const id = useId();
  return (
    <FieldLine label={label} id={id} says={says} saysId={`${id}says`}>
      <Input
        id={id}
        type={type}
        className={styles.input}
        input={{ list }}
        aria-invalid={isWrong && says !== undefined}
        aria-describedby={says === undefined ? undefined : `${id}says`}
        placeholder={placeholder}
        value={value}
        onChange={(_, data) => onType(data.value)}
      />
    </FieldLine>
  );
}

function LastTable({ last, job }: { readonly last: readonly LastTime[]; readonly job: string | null }) {
  return (
    <DataTable
      caption={INTAKE_WORDS.lastCaption(job)}
      headers={[INTAKE_WORDS.club, INTAKE_WORDS.grip, INTAKE_WORDS.layers, INTAKE_WORDS.when]}
      numbers={[2]}
      rows={last.map((each) => ({
        key: each.club,
        cells: [
          each.club,
          each.item,
          layersWords(each) || TABLE.none,
          INTAKE_WORDS.whenOf(each.day, each.job, each.done),
        ],
      }))}
    />
  );
}

interface InShop {
  readonly pane: PaneNow;
  readonly shop: Shop;
  readonly today: number;
}

function NewJob({ pane, shop, today }: InShop) {
  const styles = useStyles();
  const id = useId();
  const { state, send, does } = pane;
  const form = state.tools.intake;
  const seen = useMemo(() => newJobSeen(shop, form, today), [shop, form, today]);
  const customers = useMemo(() => customersOf(shop), [shop]);
  const next = useMemo(() => suggestedJob(shop), [shop]);
  const change = (made: Partial<IntakeForm>) => send({ on: 'tool', tool: 'intake', change: made });
  const names = seen.list.clubs.map(({ name }) => name);
  const begun = (job: string) => {
    change(EMPTY_INTAKE);
    send({ on: 'who', who: { by: 'job', job } });
  };
  const { request, fault } = seen;
  return (
    <Part title={INTAKE_WORDS.newJob}>
      <TextLine
        label={INTAKE_WORDS.customer}
        value={form.customer}
        list={`${id}customers`}
        onType={(customer) => change({ customer })}
      />
      <datalist id={`${id}customers`}>
        {customers.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
      <Label of={`${id}clubs`}>{INTAKE_WORDS.clubs}</Label>
      <Textarea
        id={`${id}clubs`}
        className={styles.clubs}
        resize="vertical"
        placeholder={INTAKE_WORDS.clubsExample}
        aria-invalid={seen.list.faults.length > 0}
        aria-describedby={`${id}read`}
        value={form.clubs}
        onChange={(_, { value }) => change({ clubs: value })}
      />
      <div id={`${id}read`} role="status">
        <Says quiet small>
          {names.length > 0 ? INTAKE_WORDS.read(names) : INTAKE_WORDS.none}
        </Says>
        <Sentences texts={seen.list.faults.map(sayListFault)} flagged />
      </div>
      {seen.last.length > 0 && (
        <>
          <LastTable last={seen.last} job={null} />
          <Checkbox
            className={styles.tick}
            label={INTAKE_WORDS.asLast}
            checked={form.asLast}
            onChange={(_, { checked }) => change({ asLast: checked === true })}
          />
        </>
      )}
      <FieldLine label={INTAKE_WORDS.hand} id={`${id}hand`}>
        <Choice id={`${id}hand`} value={form.hand} options={INTAKE_WORDS.hands} onChoose={(hand) => change({ hand })} />
      </FieldLine>
      <TextLine
        label={INTAKE_WORDS.due}
        type="date"
        value={form.due}
        says={seen.dueFault ? INTAKE_WORDS.dueFault : seen.request?.due ? longDay(seen.request.due) : undefined}
        isWrong={seen.dueFault}
        onType={(due) => change({ due })}
      />
      <TextLine
        label={INTAKE_WORDS.firstTag}
        value={form.firstTag}
        placeholder={INTAKE_WORDS.tagExample}
        onType={(firstTag) => change({ firstTag })}
      />
      <TextLine
        label={INTAKE_WORDS.authorised}
        value={form.authorisedBy}
        placeholder={INTAKE_WORDS.authorisedExample}
        onType={(authorisedBy) => change({ authorisedBy })}
      />
      <TextLine label={INTAKE_WORDS.job} value={form.job} placeholder={next} onType={(job) => change({ job })} />
      <Says live flagged>
        {fault && !seen.untouched && sayJobFault(fault)}
      </Says>
      <Buttons>
        <Button
          appearance="primary"
          disabledFocusable={state.task !== null || !request || seen.untouched}
          onClick={() => request && does.deed(beginDeed(request, begun))}
        >
          {INTAKE_WORDS.begin}
        </Button>
      </Buttons>
    </Part>
  );
}

function ThisJob({ pane, shop, job }: Omit<InShop, 'today'> & { readonly job: string }) {
  const { state, does } = pane;
  const seen = useMemo(() => jobSeen(shop, job), [shop, job]);
  const busy = state.task !== null;
  const { fault, last, customer } = seen;
  return (
    <Part title={INTAKE_WORDS.ofJob(job)} ruled>
      <Says quiet small>
        {INTAKE_WORDS.sheetHow}
      </Says>
      {fault && <Says flagged>{sayIntakeFault(fault)}</Says>}
      <Buttons>
        <Button disabledFocusable={busy} onClick={() => does.deed(intakeDeed(job))}>
          {INTAKE_WORDS.sheet}
        </Button>
      </Buttons>
      <Part title={INTAKE_WORDS.lastTitle}>
        {last.length === 0 ? (
          <Says quiet>{customer === '' ? INTAKE_WORDS.noCustomer : INTAKE_WORDS.unknown}</Says>
        ) : (
          <>
            <LastTable last={last} job={job} />
            <Buttons>
              <Button disabledFocusable={busy} onClick={() => does.deed(takeLastDeed(job))}>
                {INTAKE_WORDS.take}
              </Button>
            </Buttons>
          </>
        )}
      </Part>
    </Part>
  );
}

function DueReminders({ pane, shop, today }: InShop) {
  const { state, does } = pane;
  const { due, months, undated, held } = useMemo(() => dueReminders(shop.tables, today), [shop, today]);
  return (
    <Part title={INTAKE_WORDS.reminders} ruled>
      <Says quiet small>
        {INTAKE_WORDS.remindersFrom(months)}
      </Says>
      {due.length === 0 ? (
        <Says>{INTAKE_WORDS.nobody}</Says>
      ) : (
        <>
          <DataTable
            caption={INTAKE_WORDS.remindersCaption}
            headers={[INTAKE_WORDS.customer, INTAKE_WORDS.closed, INTAKE_WORDS.dueSince]}
            numbers={[]}
            rows={due.map((each) => ({
              key: each.job,
              cells: [each.customer, dayWords(each.closed), dayWords(each.due)],
            }))}
          />
          <Buttons>
            <Button disabledFocusable={state.task !== null} onClick={() => does.deed(remindersDeed(today))}>
              {INTAKE_WORDS.fillReminders}
            </Button>
          </Buttons>
        </>
      )}
      {held.length > 0 && <Says flagged>{sayHeld(held)}</Says>}
      {undated.length > 0 && (
        <Says quiet small>
          {INTAKE_WORDS.undated(undated)}
        </Says>
      )}
    </Part>
  );
}

export function IntakeScreen({ pane, obstacle }: ToolProps) {
  const { state, does } = pane;
  const { who, shop: seen, lost } = state;
  const today = dayOf(new Date());
  if (!seen || lost) return obstacle;
  const missing = seen.missing.filter((table) => table === 'Jobs' || table === 'Clubs');
  if (missing.length > 0) {
    return (
      <>
        <Says quiet>{INTAKE_WORDS.noTable(missing)}</Says>
        <Buttons>
          <Button disabledFocusable={state.task !== null} onClick={does.setUp}>
            {FIRST_RUN.setUp}
          </Button>
        </Buttons>
      </>
    );
  }
  const shop = shopOf(seen);
  const job = who.by === 'job' ? who.job : '';
  const all = { pane, shop, today };
  return (
    <>
      <NewJob {...all} />
      {job === '' ? <Says quiet>{INTAKE_WORDS.chooseJob}</Says> : <ThisJob pane={pane} shop={shop} job={job} />}
      <DueReminders {...all} />
    </>
  );
}
