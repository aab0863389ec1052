/** How the cells of a table's column look below its heading. */
import type { CellFormat } from './port';
import type { Column } from './schema';

const DAY = 'yyyy-mm-dd';

/** Kinds of columns whose cells are numbers, and stand at the right of their cells. */
const FIGURES: readonly Column['kind'][] = ['number', 'count', 'money'];

/** A number stands at the right end of its cell and what comes next at the left end of its own: room as wide as a bracket parts them. */
const apart = (format: string): string =>
  format
    .split(';')
    .map((part) => `${part}_)`)
    .join(';');

/** The look of a column's cells; null where they are as any other. Days and readings, all of one width, stand in the middle. */
export function columnLook({ kind, format }: Pick<Column, 'kind' | 'format'>): CellFormat | null {
  if (FIGURES.includes(kind)) return { number: apart(format ?? 'General') };
  const number = format ?? (kind === 'text' ? '@' : undefined);
  if (kind === 'reading' || format === DAY) return { ...(number === undefined ? {} : { number }), align: 'center' };
  return number === undefined ? null : { number };
}
