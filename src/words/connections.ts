/** Sentences about lists of the shop's own that stand for tables of ours, and no longer can. */
import type { BrokenMatch } from '../workbook/connect/resolve';
import type { SaidNames } from '../workbook/connect/saidNames';
import { sayBroken } from './connect';

const HOW = 'Nothing was read or written. The tab Lists connects it again.';

export function sayListGone(table: string, list: string): string {
  return `“${list}”, which stands for ${table}, is not in this workbook any more. ${HOW}`;
}

export function sayBrokenConnection(
  table: string,
  list: string,
  broken: readonly BrokenMatch[],
  names: Pick<SaidNames, 'header'>,
): string {
  const what = broken.map((each) => sayBroken(each, names)).join(' ');
  return `“${list}”, which stands for ${table}, is not as it was. ${what} ${HOW}`;
}
