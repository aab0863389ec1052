/** A copy of the workbook as a file. What makes it is large and comes in when it is first asked for. */
import type { Losses } from './save/copy';
import type { Spreadsheet } from './spreadsheet';

/** A copy that can be made. */
export interface Prepared {
  /** What it will not hold as the workbook does. */
  readonly losses: Losses;
  /** The bytes of the .xlsx file. */
  readonly bytes: () => Promise<Uint8Array>;
}

/** Looks through the workbook as it is now. Throws when the part that makes files cannot be loaded. */
export async function prepareCopy(spreadsheet: Spreadsheet): Promise<Prepared> {
  const [{ describeCopy }, { bytesOf }] = await Promise.all([
    import(/* webpackChunkName: "save" */ './save/copy'),
    import(/* webpackChunkName: "save" */ './save/file'),
  ]);
  const { workbook, losses } = await describeCopy(spreadsheet);
  return { losses, bytes: () => bytesOf(workbook) };
}
