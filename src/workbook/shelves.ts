/** What is on the shelves: grips in Stock, tape in Tape, weight in Weights, each with the cell that says how much there is. Pure. */
import { costOfPack } from '../core/index';
import type { Issue, Shelf, Stocked } from '../core/index';
import { columnsAt, folded } from './headings';
import type { TableSeen } from './port';
import { readTable, rowName, type Row } from './records';
import { columnOf, STOCK, TAPE, WEIGHTS, type TableSchema } from './schema';
import { matrixOf, type ShopTables } from './shop';
import { numberOf, textOf } from './shopRows';

/** One thing, and where its count stands. */
export interface Shelved {
  readonly stocked: Stocked;
  /** What Stock calls it; blank where it says nothing more. */
  readonly description: string;
  readonly table: TableSeen;
  /** Body row, from 1, and column of `On hand`; −1 where the table has none. */
  readonly row: number;
  readonly column: number;
  /** Column of what it is called. */
  readonly nameColumn: number;
  /** What is wrong with how much there is. */
  readonly issues: readonly Issue[];
}

interface ShelfTable {
  readonly schema: TableSchema;
  readonly shelf: Shelf;
  /** Columns of what it is called, how much a pack holds, and what that costs. */
  readonly name: string;
  readonly pack: string;
  readonly cost: string;
}

const SHELVES: readonly ShelfTable[] = [
  { schema: STOCK, shelf: 'grip', name: 'item', pack: 'pack', cost: 'cost' },
  { schema: TAPE, shelf: 'tape', name: 'tape', pack: 'roll', cost: 'price' },
  { schema: WEIGHTS, shelf: 'weight', name: 'way', pack: 'pack', cost: 'packCost' },
];

/** Which table a shelf is. */
export function shelfTable(shelf: Shelf): string {
  return SHELVES.find((each) => each.shelf === shelf)?.schema.name ?? '';
}

/** Everything that is kept, in the order of the tables; a row that names nothing is no thing. */
export function readShelves(tables: ShopTables): readonly Shelved[] {
  return SHELVES.flatMap((of) => {
    const table = tables[of.schema.name as 'Stock'];
    if (!table) return [];
    const read = readTable(of.schema, matrixOf(table), table.at.row + 1);
    if (!read.ok) return [];
    const at = columnsAt(of.schema, table.headers);
    const [column, nameColumn] = [at('onHand'), at(of.name)];
    return read.value.rows
      .filter((row) => textOf(row, of.name) !== '')
      .map((row) => ({
        stocked: stockedOf(row, of),
        description: of.shelf === 'grip' ? textOf(row, 'description') : '',
        table,
        row: row.row,
        column,
        nameColumn,
        issues: countIssues(row, of.schema),
      }));
  });
}

function stockedOf(row: Row, { shelf, name, pack: packKey, cost: costKey }: ShelfTable): Stocked {
  const pack = numberOf(row, packKey);
  const cost = numberOf(row, costKey);
  return {
    shelf,
    item: textOf(row, name),
    onHand: numberOf(row, 'onHand'),
    reorderAt: numberOf(row, 'reorderAt'),
    pack,
    // of grips the cost is for one
    packCost: cost !== undefined && shelf === 'grip' ? costOfPack(cost, pack ?? 1) : cost,
    supplier: textOf(row, 'supplier') || undefined,
  };
}

const COUNTS = ['onHand', 'reorderAt', 'pack', 'roll'];

function countIssues({ issues }: Row, schema: TableSchema): Issue[] {
  const headers = schema.columns.filter(({ key }) => COUNTS.includes(key)).map(({ header }) => header);
  return issues.filter(({ field }) => headers.some((header) => field.endsWith(`, ${header}`)));
}

/** Things that are listed twice: which of the two counts is true nobody can say. */
export function listedTwice(shelved: readonly Shelved[]): Issue[] {
  const seen = new Set<string>();
  return shelved.flatMap(({ stocked: { shelf, item }, table, row }) => {
    const key = `${shelf} ${folded(item)}`;
    if (seen.has(key)) {
      const where = rowName(table.name, table.headers, table.at.row + row + 1);
      const field = `${where}, ${columnOf(schemaOf(shelf), nameKey(shelf)).header}`;
      return [{ code: 'duplicate' as const, field, got: item }];
    }
    seen.add(key);
    return [];
  });
}

function schemaOf(shelf: Shelf): TableSchema {
  return SHELVES.find((each) => each.shelf === shelf)?.schema ?? STOCK;
}

function nameKey(shelf: Shelf): string {
  return SHELVES.find((each) => each.shelf === shelf)?.name ?? 'item';
}
