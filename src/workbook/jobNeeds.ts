/** What jobs take from the shelves: as planned until their check-in is begun, from then on as fitted. Pure. */
import { benchTicket, fittedSet, needsOf, ok } from '../core/index';
import type { BenchAsk, JobNeeds, MeasuredClub, PlanInput, Progress, Result, SetPlan, TicketClub } from '../core/index';
import { checkInsOf, measuredRows, planJob } from './benchJob';
import { folded } from './headings';
import type { OpenJob } from './openJobs';
import { readBench } from './readBench';
import { settingValues } from './readSettings';
import type { Row } from './records';
import { redoRows, redosOf } from './rounds';
import { matrixOf, type ShopTables } from './shop';
import { jobRows } from './shopRows';

/** Everything about needs that is read once for all jobs. */
interface Reading {
  readonly ownGrips: ReadonlySet<number>;
  readonly buildUpTape: string;
  readonly twoWayTape: string;
  readonly checkIns: ReadonlyMap<string, readonly Row[]>;
  readonly ask: BenchAsk;
}

function readingOf(tables: ShopTables): Reading {
  const { ask } = readBench(tables);
  const settings = settingValues(tables.Settings && matrixOf(tables.Settings));
  const name = (key: 'buildUpTape' | 'twoWayTape', usual: string): string => {
    const value = settings.ok ? settings.value.values.get(key) : undefined;
    return typeof value === 'string' ? value : usual;
  };
  return {
    ownGrips: new Set([...(ask.clubs ?? [])].flatMap(([row, { ownGrip }]) => (ownGrip ? [row] : []))),
    buildUpTape: name('buildUpTape', 'Build-up tape'),
    twoWayTape: name('twoWayTape', 'Two-way tape'),
    checkIns: checkInsOf(tables),
    ask,
  };
}

/** What open jobs need, in their order, a step for each. */
export function* openNeedsSteps(tables: ShopTables, open: readonly OpenJob[]): Generator<Progress, JobNeeds[]> {
  const reading = readingOf(tables);
  yield { done: 0, of: open.length };
  const redos = redosOf(tables);
  const needs: JobNeeds[] = [];
  for (const [at, { job, due, round, ticket, planned }] of open.entries()) {
    yield { done: at, of: open.length };
    const rows = reading.checkIns.get(folded(job));
    const redo = redos.get(folded(job));
    const again = redo && redoRows(planned.plan, redo);
    const clubs = rows ? fittedClubs(planned, rows, { ...reading.ask, again }) : ticket.clubs;
    needs.push(needsOf({ ...reading, job, due, round, clubs }));
  }
  return needs;
}

/** What one job needs, done or not; null where Clubs has none of its clubs. */
export function needsOfJob(tables: ShopTables, job: string): Result<JobNeeds> | null {
  const planned = planJob(tables, job);
  if (!planned?.ok) return planned;
  const reading = readingOf(tables);
  const redo = redosOf(tables).get(folded(job));
  const again = redo && redoRows(planned.value.plan, redo);
  const rows = reading.checkIns.get(folded(job)) ?? [];
  const clubs = fittedClubs(planned.value, rows, { ...reading.ask, again });
  const due = jobRows(tables).find((each) => folded(each.job) === folded(job))?.due;
  return ok(needsOf({ ...reading, job, due, round: redo?.number ?? 1, clubs }));
}

interface PlannedSet {
  readonly plan: SetPlan;
  readonly input: PlanInput;
}

/** The clubs of a bench ticket with grip, layers and weight as Checkin has them. */
function fittedClubs({ plan, input }: PlannedSet, rows: readonly Row[], ask: BenchAsk): readonly TicketClub[] {
  const fitted = fittedSet(plan, input, measuredRows(rows));
  const known = new Set(input.stock.map(({ item }) => folded(item)));
  return benchTicket(fitted.plan, fitted.input, ask).clubs.map((club) => {
    const said = fitted.said.get(club.row);
    // A grip that Stock does not list is missing there, and no other is taken in its place.
    const item = said?.item !== undefined && !known.has(folded(said.item)) ? said.item : club.item;
    return { ...club, item, weight: weightTaken(club, said) };
  });
}

/** Of a club that is done once more only what went on this time. */
function weightTaken({ weight }: TicketClub, said: MeasuredClub | undefined): TicketClub['weight'] {
  if (!weight || said?.newGrams === undefined) return weight;
  return said.newGrams > 0 ? { ...weight, grams: said.newGrams, when: 'gripOff' } : undefined;
}
