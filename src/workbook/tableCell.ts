/** One value for one cell of the body: `row` from 1, `column` from 0. */
export interface TableCell {
  readonly row: number;
  readonly column: number;
  readonly value: string | number | null;
}
