/** Using what one stripped club taught about its old grip for others that wear the same. */
import type { Lesson } from '../core/index';
import { sameClubs, writeClubs } from './clubCells';
import { columnsAt, folded } from './headings';
import type { InTheWay, LessonDone } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { TableSeen, WorkbookPort } from './port';
import { ALIKE_MASS, CLUBS, columnOf, WEIGHED_MASS } from './schema';
import type { Shop } from './shop';
import { askFirst, changedCells, formulaCells } from './tableCells';
import type { TableCell } from './tableCell';

/**
 * Writes the old grip's mass and balance point, as like the stripped one's, into rows of Clubs (from 1). Rows whose old grip was
 * weighed already keep their own numbers; a formula is replaced only when the person agreed to that very one.
 */
export async function useLesson(
  port: WorkbookPort,
  shop: Shop,
  lesson: Lesson,
  rows: readonly number[],
  agreed: InTheWay | null = null,
): Promise<LessonDone> {
  return politely(async (): Promise<LessonDone> => {
    const [clubs] = await port.read([{ read: 'table', table: CLUBS.name }]);
    if (!clubs) return { done: false, reason: 'tableMissing', table: CLUBS.name };
    const columns = lessonColumns(clubs);
    if (!columns.ok) return { done: false, reason: 'columnMissing', table: CLUBS.name, headers: columns.lacking };
    if (!sameClubs(shop.tables.Clubs, clubs, [...rows, lesson.row])) return { done: false, reason: 'clubsMoved' };
    const weighedAlready = rows.filter((row) => folded(clubs.rows[row - 1]?.[columns.known]) === folded(WEIGHED_MASS));
    const taught = rows.filter((row) => !weighedAlready.includes(row));
    const cells = changedCells(
      clubs,
      taught.flatMap((row) => lessonCells(row, lesson, columns)),
    );
    const question = askFirst(null, formulaCells(clubs, cells), agreed);
    if (question) return question;
    if (cells.length > 0) await write(port, clubs, cells, lesson);
    return { done: true, rows: taught, weighedAlready, cells: cells.length };
  });
}

interface LessonColumns {
  readonly mass: number;
  readonly known: number;
  readonly balance: number;
}

function lessonColumns(
  clubs: TableSeen,
): ({ readonly ok: true } & LessonColumns) | { readonly ok: false; readonly lacking: string[] } {
  const keys = ['oldMass', 'oldMassKnown', 'oldBalance'] as const;
  const [mass = -1, known = -1, balance = -1] = keys.map(columnsAt(CLUBS, clubs.headers));
  const lacking = keys.filter((_, i) => [mass, known, balance][i] === -1);
  if (lacking.length > 0) return { ok: false, lacking: lacking.map((key) => columnOf(CLUBS, key).header) };
  return { ok: true, mass, known, balance };
}

function lessonCells(row: number, lesson: Lesson, columns: LessonColumns): TableCell[] {
  return [
    // A tenth of a gram and a twentieth of an inch are about what a shop's scale and a knife edge tell (common practice, no source).
    { row, column: columns.mass, value: Math.round(lesson.gripGrams * 10) / 10 },
    { row, column: columns.known, value: ALIKE_MASS },
    { row, column: columns.balance, value: Math.round(lesson.balanceInches * 20) / 20 },
  ];
}

async function write(port: WorkbookPort, clubs: TableSeen, cells: readonly TableCell[], lesson: Lesson): Promise<void> {
  await port.apply(
    // No plan is placed here, so taking this back must not touch the places.
    [...writeClubs(clubs, cells), { do: 'remember', key: PLANS_BEFORE_KEY, value: '' }],
    [clubs],
    { label: `Old grip as ${lesson.club} showed it`, receiptKey: LAST_FILL_KEY },
  );
}
