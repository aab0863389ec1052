/** Taking over into Clubs what a job's clubs got last time. */
import { writeClubs } from './clubCells';
import { columnsAt, folded } from './headings';
import { lastTimes, type LastTime } from './history';
import type { LastDone } from './intakeOutcomes';
import type { InTheWay } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { TableSeen, WorkbookPort } from './port';
import { CLUBS, columnOf, JOBS } from './schema';
import { isBlankCell, shopTables, tableQueries, type ShopTables } from './shop';
import { clubRows, jobRows, textOf } from './shopRows';
import type { TableCell } from './tableCell';
import { askFirst, blockOfCell, changedCells } from './tableCells';

/** What is known of a job's clubs from before, each with its body row in Clubs. */
export function lastOfJob(
  tables: ShopTables,
  job: string,
): readonly { readonly row: number; readonly last: LastTime }[] {
  const customer = jobRows(tables).find((each) => folded(each.job) === folded(job))?.customer ?? '';
  const rows = clubRows(tables, job);
  const found = lastTimes(tables, { customer, clubs: rows.map((row) => textOf(row, 'club')), besides: job });
  return rows.flatMap((row) => {
    const last = found.find(({ club }) => folded(club) === folded(textOf(row, 'club')));
    return last ? [{ row: row.row, last }] : [];
  });
}

/** Writes last time's grip and layers beside each club; what a person put there is replaced only when they agreed. */
export async function takeLast(port: WorkbookPort, job: string, agreed: InTheWay | null = null): Promise<LastDone> {
  return politely(async (): Promise<LastDone> => {
    const tables = shopTables(await port.read(tableQueries()));
    const { Jobs, Clubs: clubs } = tables;
    if (!Jobs) return { done: false, reason: 'tableMissing', table: JOBS.name };
    if (!clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    const at = columnsAt(CLUBS, clubs.headers);
    const lacking = (['newItem', 'layers'] as const).filter((key) => at(key) < 0);
    if (lacking.length > 0) {
      const headers = lacking.map((key) => columnOf(CLUBS, key).header);
      return { done: false, reason: 'columnMissing', table: CLUBS.name, headers };
    }
    const known = lastOfJob(tables, job);
    if (known.length === 0) return { done: false, reason: 'nothingKnown', job };
    const cells = changedCells(
      clubs,
      known.flatMap((each) => cellsOf(at, each)),
    );
    const question = askFirst(null, filled(clubs, cells), agreed);
    if (question) return question;
    if (cells.length > 0) {
      await port.apply([...writeClubs(clubs, cells), { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }], [clubs], {
        label: `Grips of last time for job ${job}`,
        receiptKey: LAST_FILL_KEY,
      });
    }
    return { done: true, job, clubs: known.length, cells: cells.length };
  });
}

function cellsOf(
  at: (key: string) => number,
  { row, last }: { readonly row: number; readonly last: LastTime },
): TableCell[] {
  const { item, layers, lowerLayers, targetDiameter } = last;
  // Layers and target are one choice: what last time did not have is cleared, or the plan would go by what stands there now.
  const values: readonly (readonly [string, string | number | null])[] = [
    ['newItem', item],
    ['layers', layers ?? null],
    ['lowerLayers', lowerLayers ?? null],
    ['targetDiameter', layers === undefined ? (targetDiameter ?? null) : null],
  ];
  return values.flatMap(([key, value]) => (at(key) < 0 ? [] : [{ row, column: at(key), value }]));
}

/** Cells that hold something else now, a formula among them. */
function filled(clubs: TableSeen, cells: readonly TableCell[]): ReturnType<typeof blockOfCell>[] {
  return cells
    .filter(({ row, column }) => !isBlankCell(clubs.rows[row - 1]?.[column]) || clubs.formulas?.[row - 1]?.[column])
    .map((cell) => blockOfCell(clubs, cell));
}
