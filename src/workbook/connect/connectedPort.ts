/**
 * A workbook in which lists of the shop's own stand for tables of ours: read under our headings and in our units, written back
 * under theirs and in theirs. Whoever works through a port need not know which list is behind a table.
 *
 * What it costs: the table Headings comes along with each read, and where a plain range is connected a read takes a second round
 * trip, since a name has to tell first where its cells are.
 */
import { sayIssue } from '../../words/issues';
import { sayBrokenConnection, sayListGone } from '../../words/connections';
import { asBefore } from '../keeping';
import { atEase } from '../pace';
import { PortError } from '../port';
import type {
  Answers,
  ApplyOptions,
  Argument,
  Block,
  BlockSeen,
  Call,
  Capabilities,
  Change,
  NameSeen,
  Put,
  Query,
  Receipt,
  Reverted,
  RowsOf,
  Selection,
  TableSeen,
  WorkbookPort,
} from '../port';
import { matchHeaders } from '../records';
import { contains, overlap, sameName } from '../shared/address';
import { refuseLengthen, refuseOccupied } from '../shared/lengthen';
import { demandLooked, whatWasThere } from '../shared/looked';
import { columnNames } from '../shared/rows';
import { columnsBeside, refuseWiden } from '../shared/widen';
import { TABLES } from '../schema';
import { HEADINGS } from '../tables/headings';
import { calledOf, placeOf } from './listPlace';
import { placeBelow, rowsGoingOn } from './rowsBelow';
import { placesKey, readConnections, withPlaces, type Connection } from './connections';
import {
  cellForList,
  headingBehind,
  headingRowsOf,
  wordsRowOf,
  knowsColumn,
  isNamed,
  isStandIn,
  standIn,
  standInSteps,
  type ListSeen,
  type StandIn,
} from './standIn';

/** Which argument of a function says under which headings the other tables stand. */
const HEADINGS_AT: Readonly<Record<string, number>> = { SETPLAN: 6, CLUBPLAN: 6, PLACEGRIPS: 7, SETMINUTES: 7 };

const HEADINGS_QUERY = { read: 'table', table: HEADINGS.name } as const;

type Write = Extract<Change, { do: 'write' }>;
type Looked = readonly (BlockSeen | TableSeen)[];

/** The lists as Headings knows them, asked for together with whatever is read. */
interface Known {
  readonly text: string;
  readonly connections: readonly Connection[];
}

/** Plain cells that have a name, and what stands right below them. */
interface NamedCells {
  readonly list: BlockSeen;
  readonly below: BlockSeen | undefined;
}

const NOTHING_KNOWN: Known = { text: '', connections: [] };

export function connectPort(inner: WorkbookPort): WorkbookPort {
  return new ConnectedPort(inner);
}

class ConnectedPort implements WorkbookPort {
  private known: Known = NOTHING_KNOWN;
  /** Lists as they were last read: formulas point at them, and a selection lies in one of them, whatever is looked at. */
  private readonly seen = new Map<string, StandIn>();
  /** The same by the list itself: one that is still as it was is not turned into ours again. */
  private readonly turned = new Map<string, StandIn>();

  constructor(private readonly inner: WorkbookPort) {}

  get capabilities(): Capabilities {
    return this.inner.capabilities;
  }

  async read<const Qs extends readonly Query[]>(queries: Qs): Promise<Answers<Qs>> {
    // Twice at most: what Headings says may differ from what it said before.
    for (let more = 2; more > 0; more -= 1) {
      const { known } = this;
      const asked = queries.map((query) => asListQuery(query, known.connections));
      const answers = await this.inner.read<readonly Query[]>([HEADINGS_QUERY, ...asked.flat()]);
      const now = knownFrom(answers[0] as TableSeen | null);
      this.known = now;
      this.forget();
      if (now.text !== known.text) {
        // What a list was read as goes by what Headings said then.
        this.turned.clear();
        continue;
      }
      return (await this.together(queries, asked, answers.slice(1), now.connections)) as unknown as Answers<Qs>;
    }
    throw new PortError('host', [], 'the table Headings changed again and again');
  }

  async apply(changes: readonly Change[], looked: Looked, options: ApplyOptions): Promise<Receipt> {
    const inLook = looked.filter(isStandIn);
    const others = [...this.seen.values()].filter(({ name }) => !inLook.some((seen) => sameName(seen.name, name)));
    const standIns = [...inLook, ...others];
    if (standIns.length === 0) return this.inner.apply(changes, looked, options);
    const lists = looked.map((seen) => (isStandIn(seen) ? seen.behind : seen));
    return this.inner.apply(behindTheScenes(changes, looked, standIns), lists, options);
  }

  revert(receipt: Receipt): Promise<Reverted> {
    return this.inner.revert(receipt);
  }

  async selection(): Promise<Selection> {
    const selection = await this.inner.selection();
    const table = [...this.seen.values()].find(({ at }) => contains(at, selection.at));
    return table ? { ...selection, table: table.name } : selection;
  }

  recall(key: string): Promise<string | null> {
    return this.inner.recall(key);
  }

  remember(key: string, value: string | null): Promise<void> {
    return this.inner.remember(key, value);
  }

  watch(changed: (sheet: string) => void): () => void {
    return this.inner.watch(changed);
  }

  /** Puts the answers together again: for each query its own, lists seen as the tables they stand for. */
  private async together(
    queries: readonly Query[],
    asked: readonly (readonly Query[])[],
    answers: readonly unknown[],
    connections: readonly Connection[],
  ): Promise<unknown[]> {
    const parts: unknown[][] = [];
    let from = 0;
    for (const { length } of asked) {
      parts.push(answers.slice(from, from + length));
      from += length;
    }
    const named = await this.namedBlocks(parts);
    const seen = queries.map(async (query, at) => {
      const connection = connectionOf(query, connections);
      if (!connection) return parts[at]?.[0];
      const [table, name] = parts[at] as [TableSeen | null, NameSeen];
      const cells = named.get(name.name.toLowerCase());
      return this.seenAs(connection, table ?? cells?.list ?? null, cells?.below);
    });
    return Promise.all(seen);
  }

  /** The cells of named lists and what stands right below them, from one more round trip where there are any. */
  private async namedBlocks(parts: readonly (readonly unknown[])[]): Promise<Map<string, NamedCells>> {
    const places = parts.flatMap((part) => {
      const [table, name] = part as [TableSeen | null, NameSeen?];
      return part.length === 2 && !table && name?.at ? [{ name: name.name.toLowerCase(), at: name.at }] : [];
    });
    if (places.length === 0) return new Map();
    const below = places.flatMap(({ name, at }) => {
      const place = placeBelow(at);
      return place ? [{ name, at: place }] : [];
    });
    const blocks = await this.inner.read([...places, ...below].map(({ at }) => ({ read: 'block', at }) as const));
    const belowBy = new Map(below.map(({ name }, i) => [name, blocks[places.length + i] as BlockSeen]));
    return new Map(places.map(({ name }, i) => [name, { list: blocks[i] as BlockSeen, below: belowBy.get(name) }]));
  }

  /** Lists that Headings no longer names. */
  private forget(): void {
    const named = this.known.connections.map(({ schema }) => schema.name);
    for (const name of [...this.seen.keys()]) if (!named.includes(name)) this.seen.delete(name);
  }

  private async seenAs(connection: Connection, list: ListSeen | null, below?: BlockSeen): Promise<TableSeen> {
    const { schema } = connection;
    if (!list) throw new PortError('connection', [], sayListGone(schema.name, calledOf(connection)));
    const before = this.turned.get(schema.name);
    // A table that is as it was is the same object (`keeping.ts`); of cells that have a name this port tells it.
    const same = isNamed(list) ? await asBefore(before?.behind, list) : list;
    const turned = before?.behind === same ? before : await atEase(standInSteps(connection, same));
    const seen = isStandIn(turned) ? goingOn(turned, below) : turned;
    if (isStandIn(seen)) {
      this.seen.set(schema.name, seen);
      this.turned.set(schema.name, seen);
      return seen;
    }
    // Where its columns stood tells which heading may be the new name of one.
    const placed = standIn(withPlaces(connection, await this.inner.recall(placesKey(schema.name))), list);
    const { broken } = isStandIn(placed) ? seen : placed;
    throw new PortError('connection', [], sayBrokenConnection(schema, placeOf(connection, list), broken));
  }
}

/** The list with how many rows go on below it: the same object where that is as it was. */
function goingOn(seen: StandIn, below: BlockSeen | undefined): StandIn {
  const rows = isNamed(seen.behind) ? rowsGoingOn(seen.behind.values, headingRowsOf(seen) - 1, below) : 0;
  if (rows === (seen.goesOn ?? 0)) return seen;
  const { goesOn: _, ...rest } = seen;
  return rows > 0 ? { ...rest, goesOn: rows } : rest;
}

/** Connections that Headings says; a table that cannot be read is told, since the lists it names would be passed over. */
function knownFrom(headings: TableSeen | null): Known {
  if (!headings || !isOurs(headings)) return NOTHING_KNOWN;
  const matrix = [headings.headers, ...headings.rows];
  const read = readConnections(matrix, headings.at.row + 1);
  if (!read.ok) throw new PortError('connection', [], sayIssue(read.issue));
  return { text: JSON.stringify(matrix), connections: read.value };
}

/** A table of that name with other columns is the shop's own; one that lost a heading or two is ours, and what it lacks is said. */
function isOurs({ headers }: TableSeen): boolean {
  return matchHeaders(HEADINGS, headers).size * 2 >= HEADINGS.columns.length;
}

function connectionOf(query: Query, connections: readonly Connection[]): Connection | undefined {
  if (query.read !== 'table') return undefined;
  return connections.find(({ schema }) => sameName(schema.name, query.table));
}

function asListQuery(query: Query, connections: readonly Connection[]): Query[] {
  const connection = connectionOf(query, connections);
  if (!connection) return [query];
  return [
    { read: 'table', table: connection.list },
    { read: 'name', name: connection.list },
  ];
}

/* ------------------------------------------------------------------ writing */

function behindTheScenes(changes: readonly Change[], looked: Looked, standIns: readonly StandIn[]): Change[] {
  return changes.flatMap((change): Change[] => {
    switch (change.do) {
      case 'write':
        return [writeBehind(change, standIns, changes), ...daysIn(change, standIns)];
      case 'lengthen':
        return [lengthenBehind(change, looked, standIns)];
      case 'widen':
        return widenBehind(change, looked, standIns);
      case 'choices':
        return choicesBehind(change, standIns);
      default:
        return [change];
    }
  });
}

function standInNamed(name: string, standIns: readonly StandIn[]): StandIn | undefined {
  return standIns.find((seen) => sameName(seen.name, name));
}

function writeBehind(write: Write, standIns: readonly StandIn[], changes: readonly Change[]): Change {
  // One list may stand for two tables: a cell is written in the unit of the one that knows its column.
  const over = standIns.filter((each) => overlap(grown(each, changes), write.at) !== null);
  const { row, column } = write.at;
  const cells = write.cells.map((line, down) =>
    line.map((put, across): Put => {
      if (isCall(put)) return callBehind(put, standIns);
      const seen = over.find((each) => knowsColumn(each, column + across));
      return seen ? cellForList(seen, row + down, column + across, put) : put;
    }),
  );
  const { of, ...rest } = write;
  const rows = of ? rowsBehind(of, standIns) : newRowsOf(write.at, cells, over);
  return { ...rest, cells, ...(rows && { of: rows }) };
}

/** Rows put below a plain list are known by all that was put into them. */
function newRowsOf(at: Block, cells: Write['cells'], over: readonly StandIn[]): RowsOf | undefined {
  const [seen] = over;
  if (!seen || !isNamed(seen.behind) || at.row < seen.at.row + 1) return undefined;
  const used = Array.from({ length: at.columns }, (_, across) => across).filter((across) =>
    cells.some((line) => line[across] !== undefined && line[across] !== null && !isCall(line[across])),
  );
  const names = columnNames(seen.behind.values.slice(0, headingRowsOf(seen)));
  const by = used.map((across) => names[at.column + across - seen.at.column] ?? '');
  if (by.length === 0 || by.includes('')) return undefined;
  return { table: seen.connectedTo, by, headingRows: headingRowsOf(seen) };
}

const DAY_FORMAT = 'yyyy-mm-dd';

/**
 * Days put below a plain list, or into a column that held none: where no table brings its formats along, they would show as numbers.
 * Within the list a cell beside other days has their format already.
 */
function daysIn({ at, cells }: Write, standIns: readonly StandIn[]): Change[] {
  return standIns
    .filter(({ behind }) => isNamed(behind))
    .flatMap((seen) => {
      const end = seen.at.row + seen.at.rows;
      return dayColumns(seen).flatMap((position): Change[] => {
        const across = seen.at.column + position - at.column;
        const held = seen.rows.some((row) => typeof row[position] === 'number');
        const rows = cells.flatMap((line, down) => {
          const row = at.row + down;
          return typeof line[across] === 'number' && row > seen.at.row && (row >= end || !held) ? [row] : [];
        });
        const [first, last] = [rows[0], rows.at(-1)];
        if (first === undefined || last === undefined || !sameName(at.sheet, seen.at.sheet)) return [];
        const block = { sheet: at.sheet, row: first, column: at.column + across, rows: last - first + 1, columns: 1 };
        return [{ do: 'format', at: block, format: { number: DAY_FORMAT } }];
      });
    });
}

/** Where the days of a list stand. */
function dayColumns({ name, matches }: StandIn): number[] {
  const columns = TABLES.find((schema) => schema.name === name)?.columns ?? [];
  const days = new Set(columns.filter(({ kind }) => kind === 'date').map(({ key }) => key));
  return matches.filter(({ key }) => days.has(key)).map(({ position }) => position);
}

/** The cells of a list, with the rows that these very changes put below it. */
function grown({ at, name }: StandIn, changes: readonly Change[]): Block {
  const more = changes.reduce((rows, change) => {
    return change.do === 'lengthen' && sameName(change.table, name) ? rows + change.rows : rows;
  }, 0);
  return { ...at, rows: at.rows + more };
}

/** Rows of a list, under its own headings; those of plain cells in what their name reaches over. */
function rowsBehind(of: RowsOf, standIns: readonly StandIn[]): RowsOf {
  const seen = standInNamed(of.table, standIns);
  if (!seen) return of;
  if (isNamed(seen.behind)) {
    const headingRows = headingRowsOf(seen);
    const names = columnNames(seen.behind.values.slice(0, headingRows));
    const by = of.by.map((heading) => names[seen.headers.indexOf(heading)] ?? heading);
    return { table: seen.connectedTo, by, headingRows };
  }
  return { table: seen.behind.name, by: of.by.map((heading) => headingBehind(seen, heading)) };
}

function lengthenBehind(
  change: Extract<Change, { do: 'lengthen' }>,
  looked: Looked,
  standIns: readonly StandIn[],
): Change {
  const seen = standInNamed(change.table, standIns);
  if (!seen) return change;
  if (!isNamed(seen.behind)) return { ...change, table: seen.behind.name };
  // A name is moved over rows that nobody refuses: whether they are free is asked here as a table would be asked.
  refuseLengthen(change, looked);
  const { at } = seen.behind;
  return { do: 'name', name: seen.connectedTo, at: { ...at, rows: at.rows + change.rows } };
}

/** A plain range gets its headings written beside it, and its name reaches over them. */
function widenBehind(change: Extract<Change, { do: 'widen' }>, looked: Looked, standIns: readonly StandIn[]): Change[] {
  const seen = standInNamed(change.table, standIns);
  if (!seen) return [change];
  if (!isNamed(seen.behind)) return [{ ...change, table: seen.behind.name }];
  refuseWiden(change, looked);
  const { headers } = change;
  const { at } = seen.behind;
  refuseHeadingsBeside(seen, headers.length, looked);
  // Down to the last row of headings, by which they are found when they are taken back.
  const first = wordsRowOf(seen);
  const rows = seen.at.row - first + 1;
  const beside: Block = { ...columnsBeside(seen, headers.length), row: first, rows };
  const alone = Array.from({ length: rows - 1 }, () => headers.map((): Put => undefined));
  const of: RowsOf = { table: seen.connectedTo, by: [], headingRows: headingRowsOf(seen) };
  return [
    { do: 'write', at: beside, cells: [[...headers], ...alone], of },
    { do: 'name', name: seen.connectedTo, at: { ...at, columns: at.columns + headers.length } },
  ];
}

/** Of two rows of headings the upper one may hold a neighbour's, under which a new column must not come to stand. */
function refuseHeadingsBeside(seen: StandIn, columns: number, looked: Looked): void {
  const rows = headingRowsOf(seen) - 1;
  if (rows === 0) return;
  const upper: Block = { ...columnsBeside({ at: seen.behind.at }, columns), rows };
  demandLooked(upper, whatWasThere(upper, looked));
  refuseOccupied(seen, upper, looked);
}

/** A drop-down can be fed by a table's column, not by that of a range. */
function choicesBehind(change: Extract<Change, { do: 'choices' }>, standIns: readonly StandIn[]): Change[] {
  const { from } = change;
  if (!('table' in from)) return [change];
  const seen = standInNamed(from.table, standIns);
  if (!seen) return [change];
  if (isNamed(seen.behind)) return [];
  return [{ ...change, from: { table: seen.behind.name, header: headingBehind(seen, from.header) } }];
}

function isCall(put: Put): put is Call {
  return typeof put === 'object' && put !== null && 'call' in put;
}

function callBehind({ call, args }: Call, standIns: readonly StandIn[]): Call {
  const behind = args.map((argument): Argument => {
    if (argument === null || !('table' in argument)) return argument;
    const seen = standInNamed(argument.table, standIns);
    if (!seen) return argument;
    // By its name: rows that are added later are in it.
    return isNamed(seen.behind) ? { name: seen.connectedTo } : { table: seen.behind.name };
  });
  const at = HEADINGS_AT[call];
  if (at === undefined || behind.every((argument, i) => argument === args[i])) return { call, args };
  while (behind.length < at) behind.push(null);
  behind[at] = { table: HEADINGS.name };
  return { call, args: behind };
}
