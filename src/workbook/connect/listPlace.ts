/** What people are told a list of their own is called: never the name that we gave to its cells. Pure. */
import { blockOf } from '../shared/address';
import { LIST_STEM } from '../shared/limits';
import type { ListPlace } from '../../words/connections';
import type { Block } from '../port';
import type { Connection } from './connections';

type Known = Pick<Connection, 'list' | 'where'>;

/** Whether the list is known by a name of ours: cells without a table. */
function isPlain({ list }: Known): boolean {
  return list.toLowerCase().startsWith(LIST_STEM.toLowerCase());
}

/** What it is called where nobody wrote down where its cells stood. */
const SOME_LIST = 'your list';

/** The name of its table; of plain cells the sheet on which they stood, as far as it was written down. */
export function calledOf(known: Known): string {
  if (!isPlain(known)) return known.list;
  return (known.where !== undefined && blockOf(known.where)?.sheet) || SOME_LIST;
}

/** Where a list stands now. */
export function placeOf(known: Known, { at }: { readonly at: Block }): ListPlace {
  return { table: isPlain(known) ? null : known.list, sheet: at.sheet, row: at.row + 1 };
}
