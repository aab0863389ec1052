/** Which cells a page of ours may take, and what is put into each. */
import { drained } from '../core/index';
import { mapSteps } from './pace';
import { pickCells } from './planOwners';
import type { Owner } from './planOwners';
import type { Block, BlockSeen, Put } from './port';

/** Whose each cell of an area is. */
type Owners = readonly (readonly Owner[])[];

/** Cells of the block that hold something of a person's; `area` begins where the block does. */
export function foreignCells(area: BlockSeen, owner: Owners, { rows, columns }: Block): Block[] {
  return pickCells(area, (down, across) => down < rows && across < columns && owner[down]?.[across] === 'person');
}

/**
 * What to put into each cell of the area: the page, and blanks over what is left of an older one. Cells that are blank already,
 * or that only a formula fills, are left alone: there is nothing in them to be replaced, nor to be put back.
 */
export function putOver(owner: Owners, rows: readonly (readonly Put[])[]): Put[][] {
  return drained(putOverSteps(owner, rows));
}

/** {@link putOver} in steps. */
export function putOverSteps(owner: Owners, rows: readonly (readonly Put[])[]): Generator<void, Put[][]> {
  return mapSteps(owner, (line, down) =>
    line.map((whose, across): Put => {
      const put = rows[down]?.[across];
      if (put === undefined) return leftOver(whose);
      return put === null && (whose === 'nobody' || whose === 'filled') ? undefined : put;
    }),
  );
}

/** Outside the new page: what an older one left is blanked, what a person wrote stays. */
function leftOver(whose: Owner): Put {
  return whose === 'ours' || whose === 'formula' ? null : undefined;
}
