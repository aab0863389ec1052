/** Sentences about columns that a table or a list lacks, and that are added to it. */
import type { ColumnsAdded } from '../workbook/addColumns';
import type { HeadingsUnwritten } from '../workbook/connect/connectList';
import { listed } from './listed';
import { sayNotDone } from './outcomes';

/** Why nothing can be written down in Headings. */
export function sayHeadingsUnwritten(end: HeadingsUnwritten): string {
  return end.reason === 'sheetInUse'
    ? `A sheet named Headings holds something else (${listed(end.cells)}). Nothing was written; give that sheet another name.`
    : 'A table named Headings has other columns. Nothing was written; give that table another name.';
}

/** What is offered where columns are lacking. */
export const ADD_COLUMNS = {
  text: (list: string, headers: readonly string[]) =>
    `“${list}” has no ${headers.length === 1 ? 'column' : 'columns'} ${listed(headers)}, so nothing was written. ` +
    `${headers.length === 1 ? 'It' : 'They'} can be added at its right end, beside what stands there; or leave that choice as it is.`,
  button: (headers: readonly string[]) => (headers.length === 1 ? `Add ${headers[0]}` : 'Add these columns'),
} as const;

export function sayColumnsAdded(end: ColumnsAdded): string {
  if (!end.done) return 'cells' in end || end.reason === 'otherTable' ? sayHeadingsUnwritten(end) : sayNotDone(end);
  const { list, made, headers } = end;
  const known = headers.filter((header) => !made.includes(header));
  const sentences = [
    ...(made.length > 0 ? [`“${list}” has ${made.length === 1 ? 'a column' : 'columns'} ${listed(made)} now.`] : []),
    ...(known.length > 0
      ? [`${listed(known)} of “${list}” ${known.length === 1 ? 'is' : 'are'} read from now on.`]
      : []),
  ];
  return sentences.join(' ');
}
