/** Reads the Sizes table into a size guide; a row that cannot be used is left out and told. */
import { DEFAULT_SIZE_GUIDE, guideIssue, ok, type Issue, type Result, type SizeGuideRow } from '../core/index';
import { readTable, type Matrix, type Row } from './records';
import { SIZES, columnOf } from './schema';

interface SizesRead {
  readonly guide: readonly SizeGuideRow[];
  readonly problems: readonly Issue[];
}

/**
 * Reads a size guide; the usual one where there is no table or none of its rows can be used.
 *
 * @param matrix header row first
 * @param headerRow row of the sheet that holds the header, from 1
 * @returns rows by hand length, with what is wrong with those left out; `missingColumn` where hand length or diameter has no column
 */
export function readSizes(matrix: Matrix | null | undefined, headerRow?: number): Result<SizesRead> {
  if (!matrix) return ok({ guide: DEFAULT_SIZE_GUIDE, problems: [] });
  const read = readTable(SIZES, matrix, headerRow);
  if (!read.ok) return read;
  const problems = read.value.rows.flatMap(({ issues }) => issues);
  const kept = withoutConflicts(read.value.rows, problems);
  return ok({ guide: kept.length > 0 ? kept : DEFAULT_SIZE_GUIDE, problems });
}

/** Taken from the top of the table, so that of two rows that cannot both be right the first counts. */
function withoutConflicts(rows: readonly Row[], problems: Issue[]): readonly SizeGuideRow[] {
  let guide: readonly SizeGuideRow[] = [];
  for (const { values, sheetRow } of rows) {
    const number = (key: string): number | undefined => {
      const value = values.get(key);
      return typeof value === 'number' ? value : undefined;
    };
    const handInches = number('hand');
    const diameterInches = number('diameter');
    if (handInches === undefined || diameterInches === undefined) continue;
    const longer = [...guide, { handInches, fingerInches: number('finger'), diameterInches }];
    const issue = guideIssue(longer);
    if (issue) problems.push(inTable(issue, sheetRow));
    else guide = longer.sort((one, other) => one.handInches - other.handInches);
  }
  return guide;
}

function inTable(issue: Issue, sheetRow: number): Issue {
  const where = `${SIZES.name} row ${sheetRow}`;
  if (issue.code === 'duplicate') return { ...issue, field: `${where}, ${columnOf(SIZES, 'hand').header}` };
  return { ...issue, field: where, expected: `${issue.expected ?? ''}; the rows above it count` };
}
