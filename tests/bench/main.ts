/** npm run bench: ratios from one run, never times to be held to: they differ from machine to machine. */
import { planSet } from '../../src/core/index';
import type { Matrix } from '../../src/workbook/records';
import { planCells } from '../../src/workbook/planCells';
import { planTables } from '../../src/workbook/planTables';
import { bareInput, bareOutput, barePlan } from './barePlan';
import { benchChoose } from './choose';
import { alike, clubTable, stockTable } from './clubs';
import { figures, median, medians, printTable } from './measure';
import { benchJobs } from './jobs';
import { benchConnect } from './connect';
import { benchLarge } from './large';
import { benchPlace } from './place';
import { benchReminders } from './reminders';
import { benchScalars } from './scalars';
import { FORMULAS_A_CLUB, timeSheet } from './sheetPlan';

const LARGE = 10_000;

/** Clubs for which the sheet is measured, and how often: enough to tell a cost per club, few enough to wait for. */
const SHEETS = [
  { count: 200, runs: 3 },
  { count: 1000, runs: 1 },
];

function planned(clubs: Matrix) {
  const result = planTables({ clubs, stock: stockTable() });
  if (!result.ok) throw new Error(result.issue.code);
  return result.value;
}

interface Times {
  /** Microseconds a club. */
  readonly bare: number;
  readonly core: number;
  readonly tables: number;
}

function benchPlan(count: number): Times {
  const clubs = clubTable(count);
  const stock = stockTable();
  const { input, plan, problems } = planned(clubs);
  const bareIn = bareInput(input);
  const bareOut = bareOutput(count);
  // a small set is planned many times over, or the clock would not see it
  const times = Math.max(1, Math.round(5000 / count));
  const often = (run: () => unknown) => () => {
    for (let time = 0; time < times; time += 1) run();
  };
  const results = medians([
    { name: 'bare loop', run: often(() => barePlan(bareIn, bareOut)) },
    { name: 'planSet', run: often(() => planSet(input)) },
    { name: 'planTables', run: often(() => planTables({ clubs, stock })) },
    { name: 'planCells', run: often(() => planCells(plan, problems)) },
  ]);
  const perClub = (name: string): number => ((results.get(name) ?? NaN) * 1000) / times / count;
  printTable(
    `A plan of ${count} clubs`,
    ['', 'ms', 'µs a club', 'to the bare loop'],
    [...results.keys()].map((name) => [
      name,
      figures((perClub(name) * count) / 1000),
      figures(perClub(name)),
      `× ${figures(perClub(name) / perClub('bare loop'))}`,
    ]),
  );
  return { bare: perClub('bare loop'), core: perClub('planSet'), tables: perClub('planTables') };
}

/** Only clubs that plain formulas can plan: held as they were, on an estimate, layers given. */
async function benchSheet(times: Times): Promise<void> {
  const rows: string[][] = [];
  for (const { count, runs: most } of SHEETS) {
    const { input, plan } = planned(alike(count));
    const runs: number[] = [];
    for (let run = 0; run < most; run += 1) runs.push(await timeSheet(input, plan));
    const perClub = (median(runs) * 1000) / count;
    const ratio = (own: number): string => `× ${figures(perClub / own)}`;
    rows.push([`${count} clubs`, figures(median(runs)), figures(perClub), ratio(times.core), ratio(times.tables)]);
  }
  printTable(
    `The same plan as ${FORMULAS_A_CLUB} plain formulas a club in the embedded engine: fill and calculate,\n` +
      `median of three runs, one for the larger; scaled by club and set against planSet and planTables on ${LARGE} clubs`,
    ['', 'ms', 'µs a club', 'to planSet', 'to planTables'],
    rows,
  );
}

/** By the word that asks for it alone. */
const PARTS: Readonly<Record<string, () => void | Promise<void>>> = {
  scalars: benchScalars,
  choose: benchChoose,
  place: benchPlace,
  jobs: benchJobs,
  reminders: benchReminders,
  connect: benchConnect,
  large: benchLarge,
  plan: async () => {
    benchPlan(13);
    await benchSheet(benchPlan(LARGE));
  },
};

const asked = process.argv.slice(2);
const unknown = asked.filter((word) => !(word in PARTS));
if (unknown.length > 0) throw new Error(`no part ${unknown.join(', ')}; there are ${Object.keys(PARTS).join(', ')}`);
for (const [name, run] of Object.entries(PARTS)) if (asked.length === 0 || asked.includes(name)) await run();
