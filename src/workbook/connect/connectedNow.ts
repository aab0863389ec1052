/** What became of the lists that stand for tables of ours: where each stands now, and what of it is not found again. */
import type { Block, BlockSeen, WorkbookPort } from '../port';
import { overlap, sameName } from '../shared/address';
import { placesKey, withPlaces, type Connection } from './connections';
import { placesOfLists, type List } from './lists';
import type { BrokenMatch } from './resolve';
import { placeBelow, rowsGoingOn } from './rowsBelow';
import { brokenIn, headingLines } from './standIn';

export interface Connected {
  readonly connection: Connection;
  /** Null where the list is gone. */
  readonly at: Pick<List, 'table' | 'at'> | null;
  /** Columns that it has no more. */
  readonly broken: readonly BrokenMatch[];
  /** Rows that go on right below plain cells and are not read. */
  readonly goesOn: number;
}

/** Rows that may be headings and units, and so many below them that one can tell what a row is like. */
const HEAD_ROWS = 62;

/** @param lists those that were just seen: a long table is not read again */
export async function connectedNow(
  port: WorkbookPort,
  connections: readonly Connection[],
  lists: readonly List[],
): Promise<Connected[]> {
  const unseen = connections.filter((each) => !shownTable(each, lists)).map(({ list }) => list);
  const places = await placesOfLists(port, unseen);
  const placed = connections.map((connection) => {
    return { connection, at: shownTable(connection, lists) ?? places.get(connection.list) ?? null };
  });
  const heads = placed.flatMap(({ at }) => (at ? [headOf(at.at), ...belowOf(at)] : []));
  const seen = heads.length > 0 ? await port.read(heads.map((at) => ({ read: 'block', at }) as const)) : [];
  let next = 0;
  return Promise.all(
    placed.map(async ({ connection, at }): Promise<Connected> => {
      if (!at) return { connection, at, broken: [], goesOn: 0 };
      const { values } = seen[next++] as BlockSeen;
      const below = belowOf(at).map(() => seen[next++] as BlockSeen)[0];
      const goesOn = below ? rowsGoingOn(values, headingLines(connection, values) - 1, below) : 0;
      const kept = withPlaces(connection, await port.recall(placesKey(connection.schema.name)));
      return { connection, at, broken: brokenIn(kept, values, at.table === null), goesOn };
    }),
  );
}

/** A connected list that a person selected again. */
export interface Again {
  readonly connection: Connection;
  /** With what was selected below it and right of it: it never gets smaller unasked. */
  readonly list: Pick<List, 'table' | 'at'>;
}

/** Which connection a list stands in already, by its cells; undefined where it is new. */
export function connectedAlready(connections: readonly Connected[], selected: Block): Again | undefined {
  for (const { connection, at } of connections) {
    if (!at || overlap(at.at, selected) === null) continue;
    return { connection, list: at.table === null ? { ...at, at: reaching(at.at, selected) } : at };
  }
  return undefined;
}

function reaching(at: Block, to: Block): Block {
  const end = (first: 'row' | 'column', size: 'rows' | 'columns') =>
    Math.max(at[first] + at[size], to[first] + to[size]) - at[first];
  return { ...at, rows: end('row', 'rows'), columns: end('column', 'columns') };
}

function shownTable({ list }: Connection, lists: readonly List[]): List | undefined {
  return lists.find((each) => each.table !== null && sameName(each.table, list));
}

/** Where rows may go on below plain cells; a table grows by itself. */
function belowOf({ table, at }: Pick<List, 'table' | 'at'>): Block[] {
  const below = table === null ? placeBelow(at) : null;
  return below ? [below] : [];
}

function headOf(at: Block): Block {
  return { ...at, rows: Math.min(at.rows, HEAD_ROWS) };
}
