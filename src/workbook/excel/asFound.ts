/**
 * Undoing a taking back that came too late or failed half way: everything stands again as it was found. What a person entered where it had
 * been taken back stays, of course, and is named.
 */
import type { Block, BlockSeen } from '../port';
import { blockOf, nameCells, sameBlock } from '../shared/address';
import { isBack, type Place } from '../shared/cellNow';
import { whatWasThere } from '../shared/looked';
import type { BeforeCell } from '../shared/looked';
import { sentOf } from './attempted';
import type { Part } from './attempted';
import { startBatch } from './batch';
import { ChangedMeanwhile, startGuard } from './guard';
import { inBatch } from './host';
import type { ExcelHost } from './host';
import { askAll } from './read';
import { askBlock } from './readBlock';
import { holds } from './standing';
import type { Stood } from './standing';
import { giveTableLooks } from './tableLooks';
import type { TableLooks } from './tableLooks';
import { asIs, rangeOf, writeCells } from './writeCells';

/** Cells that were put, and what had been found in them; `undefined` where nothing was put. */
export interface PutOver {
  readonly at: Block;
  readonly put: readonly (readonly (BeforeCell | undefined)[])[];
  readonly found: readonly (readonly BeforeCell[])[];
}

/** A name that was given up, or moved. */
export interface NameFound {
  readonly name: string;
  /** What it was made to point at; null where it was to go. */
  readonly put: Block | null;
  readonly found: string;
}

/** A table that was given up, or made smaller. */
export interface TableFound {
  readonly name: string;
  /** What it was made to cover; null where it was to go. */
  readonly put: Block | null;
  readonly found: Block;
  readonly looks?: TableLooks;
}

/** What was taken back, each thing as it was put and as it had been found. */
export interface AsFound {
  readonly cells: readonly PutOver[];
  readonly names: readonly NameFound[];
  readonly tables: readonly TableFound[];
  /** What went into a request: nothing else can have been put. */
  readonly parts: readonly Part[];
}

/** How often a person may come in between before it is given up. */
const mostTries = 3;

/** Whether everything stands as it was found, and the cells that are a person's by now. */
export async function putAsFound(host: ExcelHost, taken: AsFound): Promise<readonly string[]> {
  const theirs: Place[] = [];
  let cells: readonly ToPut[] = taken.cells.map((each) => ({ ...each, parts: taken.parts }));
  for (let tries = 1; cells.length + taken.names.length + taken.tables.length > 0; tries += 1) {
    const stands = await lookAgain(host, cells, taken);
    const sorted = cells.map((each, i) => ours(each, stands.blocks[i]));
    theirs.push(...sorted.flatMap((each) => each.theirs));
    const puts = sorted.flatMap(({ put }) => put);
    try {
      await write(host, puts, stands, taken);
      break;
    } catch (error) {
      if (!(error instanceof ChangedMeanwhile) || tries === mostTries) throw error;
      // Cells that a person entered right then were written over unseen: these get back what they entered. Of all others, what went
      // into requests is back by now, but not all of them need have gone.
      theirs.push(...error.found);
      cells = [...cells, ...error.found.map(({ was, ...place }) => ({ ...entered(place, puts, was), parts: null }))];
    }
  }
  return nameCells(distinct(theirs));
}

interface ToPut extends PutOver {
  /** What of it can have been put; null where all of it was. */
  readonly parts: readonly Part[] | null;
}

interface Stands {
  readonly blocks: readonly BlockSeen[];
  readonly stood: Stood;
  /** Where each of the tables stands that were made smaller; null where it is none any more. */
  readonly tables: readonly (Block | null)[];
}

async function lookAgain(host: ExcelHost, cells: readonly PutOver[], { tables }: AsFound): Promise<Stands> {
  const { answer, stood } = await askAll(host, (asking) => {
    const blocks = cells.map(({ at }) => askBlock(asking, at, []));
    const asked = tables.map(({ name, put }) => {
      if (!put) return null;
      const table = asking.context.workbook.tables.getItemOrNullObject(name).load('name');
      return { table, range: table.getRange().load('address') };
    });
    return () => ({
      blocks: blocks.map((block) => block()),
      tables: asked.map((each) => (!each || each.table.isNullObject ? null : blockOf(each.range.address))),
    });
  });
  return { ...answer, stood };
}

/** What is to be put of a block, since it still holds what we put; what it holds else, if it is not what was found, is a person's. */
function ours({ at, put, found, parts }: ToPut, now: BlockSeen | undefined) {
  const theirs: Place[] = [];
  if (!now?.sheetExists) return { put: [], theirs };
  const sent = parts && sentOf(at, parts);
  const cells = put.map((line, down) =>
    line.map((cell, across): BeforeCell | undefined => {
      if (cell === undefined || (sent && !sent[down]?.[across])) return undefined;
      const place = { sheet: at.sheet, row: at.row + down, column: at.column + across };
      const was = found[down]?.[across] ?? null;
      if (isBack(now, was, place)) return undefined;
      if (isBack(now, cell, place)) return was;
      theirs.push(place);
      return undefined;
    }),
  );
  return { put: cells.some((line) => line.some((cell) => cell !== undefined)) ? [{ at, cells }] : [], theirs };
}

function entered({ sheet, row, column }: Place, puts: readonly Put[], was: BeforeCell): PutOver {
  const at = { sheet, row, column, rows: 1, columns: 1 };
  const over = puts.find((each) => each.cells[row - each.at.row]?.[column - each.at.column] !== undefined);
  return { at, put: [[over?.cells[row - over.at.row]?.[column - over.at.column] ?? null]], found: [[was]] };
}

interface Put {
  readonly at: Block;
  readonly cells: readonly (readonly (BeforeCell | undefined)[])[];
}

async function write(
  host: ExcelHost,
  puts: readonly Put[],
  { blocks, stood, tables }: Stands,
  { names, tables: taken }: AsFound,
): Promise<void> {
  await inBatch(host, async (context) => {
    const batch = startBatch(context, host, {
      answered: () => guard.demand(),
      looking: (at) => guard.looking(at),
      writing: (at) => guard.again(at),
    });
    const guard = startGuard(batch, stood);
    for (const { at, cells } of puts) {
      const asked = cells.map((line) => line.map((cell) => (cell === undefined ? undefined : null)));
      await guard.look({ do: 'write', at, cells: asked }, blocks);
      await writeCells(batch, at, cells, asIs);
    }
    for (const each of names) setName(context, each, stood);
    taken.forEach((each, i) => setTable(context, each, tables[i] ?? null, stood));
    await batch.send();
  });
}

function setName(context: Excel.RequestContext, { name, put, found }: NameFound, stood: Stood): void {
  const { names } = context.workbook;
  const now = stood.nameFormulas.get(name.toLowerCase());
  const at = blockOf(found);
  if (now === undefined && put === null) {
    // By then it may have stood for a formula of a person's.
    if (!at) names.add(name, found);
    else if (holds(stood.sheets, at.sheet)) names.add(name, rangeOf(context, at));
  } else if (now !== undefined && put !== null && isAt(now, put)) names.getItem(name).formula = found;
}

/** However Excel writes it. */
function isAt(formula: string, at: Block): boolean {
  const now = blockOf(formula);
  return now !== null && sameBlock(now, at);
}

function setTable(
  context: Excel.RequestContext,
  { name, put, found, looks }: TableFound,
  now: Block | null,
  stood: Stood,
): void {
  const { tables } = context.workbook;
  if (put === null) {
    if (holds(stood.tables, name) || !holds(stood.sheets, found.sheet)) return;
    const table = tables.add(rangeOf(context, found), true);
    table.name = name;
    if (looks) giveTableLooks(table, looks);
  } else if (now !== null && sameBlock(now, put)) tables.getItem(name).resize(rangeOf(context, found));
}

/** Cells as they were found, of a block that was put over. */
export function foundIn(at: Block, seen: readonly BlockSeen[]): BeforeCell[][] {
  return whatWasThere(at, seen).map((line) => line.map((cell) => cell ?? null));
}

function distinct(places: readonly Place[]): Place[] {
  return [...new Map(places.map((place) => [`${place.row} ${place.column} ${place.sheet}`, place])).values()];
}
