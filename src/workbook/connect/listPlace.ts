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

/** The name of its table; of plain cells the sheet on which they stood, where that was written down. */
export function calledOf(known: Known): string {
  const at = isPlain(known) && known.where !== undefined ? blockOf(known.where) : null;
  return at?.sheet || known.list;
}

/** Where a list stands now. */
export function placeOf(known: Known, { at }: { readonly at: Block }): ListPlace {
  return { table: isPlain(known) ? null : known.list, sheet: at.sheet, row: at.row + 1 };
}
