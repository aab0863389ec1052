/** Columns that a table of ours, or a list that stands for it, lacks: put at its right end, under our headings, and known by them from then on. */
import { lookBeside, widthsBeside } from './beside';
import { headingsWith, HEADINGS_QUERIES, type HeadingsUnwritten } from './connect/connectList';
import { headingRows, placesKey, placesText, type Connection } from './connect/connections';
import { isStandIn, NOT_OURS, type StandIn } from './connect/standIn';
import { LIST_TABLES } from './connect/listTables';
import type { ColumnMatch } from './connect/types';
import { folded } from './headings';
import type { NotDone } from './outcomes';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY } from './planPlaces';
import { politely } from './polite';
import type { Change, TableSeen, WorkbookPort } from './port';
import { calledBy } from './records';
import { TABLES, type TableSchema } from './schema';
import { named } from './shared/address';

/** What is to be added: our headings of columns of one of our tables. */
export interface Adding {
  readonly table: string;
  readonly headers: readonly string[];
}

export type ColumnsAdded =
  /** `list`: what people call the table; `made`: headings that were written, the others stood there and stand for ours now */
  | {
      readonly done: true;
      readonly list: string;
      readonly headers: readonly string[];
      readonly made: readonly string[];
    }
  | NotDone
  | HeadingsUnwritten;

/** Adds the columns that are still missing, in our units. Nothing else of the table is touched. */
export async function addColumns(port: WorkbookPort, { table: name, headers }: Adding): Promise<ColumnsAdded> {
  return politely(async (): Promise<ColumnsAdded> => {
    // What a list of clubs says beyond a table of ours is to stay connected.
    const schema = [...LIST_TABLES, ...TABLES].find((each) => each.name === name);
    const [table, ...kept] = await port.read([{ read: 'table', table: name }, ...HEADINGS_QUERIES]);
    if (!schema || !table) return { done: false, reason: 'tableMissing', table: name };
    const list = calledBy(table.headers)?.list ?? name;
    const missing = headers.filter((header) => placeOf(table, header) < 0);
    const made = missing.filter((header) => placeOf(table, `${NOT_OURS}${header}`) < 0);
    if (missing.length === 0) return { done: true, list, headers: [], made: [] };
    const around = made.length > 0 ? await lookBeside(port, table, made.length) : [];
    const known = isStandIn(table) ? withColumns(schema, table, missing, made) : null;
    const written = known && (await headingsWith(port, kept, name, headingRows(known)));
    if (written && 'done' in written) return written;
    const changes: Change[] = [
      ...(made.length > 0 ? [{ do: 'widen', table: name, headers: made } as const] : []),
      ...widthsBeside(table, made, around),
      ...(written?.changes ?? []),
      ...(known ? [{ do: 'remember', key: placesKey(name), value: placesText(known.columns) } as const] : []),
      // No plan is placed here, so taking this back must not touch the places.
      { do: 'remember', key: PLANS_BEFORE_KEY, value: '' },
    ];
    const label = `${missing.length === 1 ? 'Column' : 'Columns'} ${missing.join(', ')} in ${list}`;
    await port.apply(changes, [table, ...around, ...(written?.looked ?? [])], { label, receiptKey: LAST_FILL_KEY });
    return { done: true, list, headers: missing, made };
  });
}

function placeOf({ headers }: TableSeen, header: string): number {
  return headers.findIndex((each) => folded(each) === folded(header));
}

/** The connection of a list with columns that stand there under our headings, and with others that will. */
function withColumns(
  schema: TableSchema,
  list: StandIn,
  missing: readonly string[],
  made: readonly string[],
): Connection {
  const more = missing.flatMap((heading): ColumnMatch[] => {
    const key = schema.columns.find(({ header }) => header === heading)?.key;
    const there = placeOf(list, `${NOT_OURS}${heading}`);
    const position = there < 0 ? list.headers.length + made.indexOf(heading) : there;
    return key === undefined ? [] : [{ key, heading, position, unit: null }];
  });
  const { at } = list.behind;
  const where = named({ ...at, rows: 1, columns: at.columns + made.length });
  return { schema, list: list.connectedTo, where, columns: [...list.matches, ...more] };
}
