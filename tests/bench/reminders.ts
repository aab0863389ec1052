/** Who is due for a reminder in a shop that kept its jobs for years, set against one reading of its Clubs. */
import { dueReminders } from '../../src/workbook/reminders';
import type { Seen, TableSeen } from '../../src/workbook/port';
import { CLUBS, JOBS, TABLES, type TableSchema } from '../../src/workbook/schema';
import type { ShopTables } from '../../src/workbook/shop';
import { tableRows } from '../../src/workbook/shopRows';
import { figures, medians, printTable } from './measure';

const CLUBS_A_JOB = 14;
const TODAY = 46000;

function table({ name, columns }: TableSchema, rows: readonly Readonly<Record<string, Seen>>[]): TableSeen {
  const at = { sheet: name, row: 0, column: 0, rows: rows.length + 1, columns: columns.length };
  return {
    name,
    at,
    headers: columns.map(({ header }) => header),
    rows: rows.map((row) => columns.map(({ key }) => row[key] ?? null)),
    protected: false,
    filtered: false,
  };
}

/** Every job is of a customer of its own, and closed long ago: the most that can be due. */
function shop(jobs: number): ShopTables {
  const names = Array.from({ length: jobs }, (_, at) => `J-${at}`);
  const tables: Partial<Record<string, TableSeen>> = {
    Jobs: table(
      JOBS,
      names.map((job, at) => ({ job, customer: `Customer ${at}`, status: 'Done', closed: TODAY - 400 - at })),
    ),
    Clubs: table(
      CLUBS,
      names.flatMap((job) =>
        Array.from({ length: CLUBS_A_JOB }, (_, at) => ({ job, club: `${at}`, kind: 'Iron', newItem: 'A', layers: 1 })),
      ),
    ),
  };
  return Object.fromEntries(TABLES.map(({ name }) => [name, tables[name] ?? null])) as unknown as ShopTables;
}

export function benchReminders(): void {
  const rows = [200, 600].map((jobs) => {
    const tables = shop(jobs);
    const results = medians(
      [
        { name: 'read', run: () => tableRows(tables, CLUBS) },
        {
          name: 'due',
          run: () => {
            if (dueReminders(tables, TODAY).due.length !== jobs) throw new Error('not all are due');
          },
        },
      ],
      7,
    );
    const [read = NaN, due = NaN] = [results.get('read'), results.get('due')];
    return [`${jobs} closed jobs`, figures(read), figures(due), `× ${figures(due / read)}`];
  });
  printTable(
    `Reminders over jobs of ${CLUBS_A_JOB} clubs`,
    ['', 'ms to read Clubs', 'ms for all reminders', 'to one reading'],
    rows,
  );
}
