/** Words about the version a workbook is of: what a newer Setwright would add, what it added, and why an older one keeps its hands off. */
import type { Addition } from '../workbook/layoutSteps';
import type { UpToDateDone } from '../workbook/upToDate';
import { listed } from './listed';
import { sayBlocked } from './outcomes';
import { sayPortError } from './portErrors';

export const UP_TO_DATE = {
  title: 'Set up by an earlier version',
  about:
    'Everything works that worked before; what came later needs these. They are added at the right end of each table and at the foot of Settings. Nothing that stands there is touched, and Undo last fill takes it back.',
  button: 'Bring this workbook up to date',
  doing: 'Bringing the workbook up to date…',
  done: 'The workbook is up to date',
  partly: 'Up to date, but for what was in the way',
  failed: 'The workbook was not brought up to date',
  newer: 'This workbook is newer than this add-in',
  newerText: (layout: number, known: number) =>
    `A newer Setwright set it up (tables of layout ${layout}; this one knows up to ${known}). It is read as far as it is understood, and nothing is written to it. Update the add-in, then open the workbook again.`,
} as const;

/** What would be added, a line for each table. */
export function sayAdditions({ tables, columns, settings }: Addition): string[] {
  const names = settings.map(({ name }) => name);
  return [
    ...columns.map(({ schema, columns: more }) => `${schema.name}: ${more.map(({ header }) => header).join(', ')}`),
    ...(names.length > 0 ? [`Settings: ${names.join(', ')}`] : []),
    ...(tables.length > 0 ? [`New tables: ${tables.map(({ name }) => name).join(', ')}`] : []),
  ];
}

/** How it ended. */
export function sayUpToDate(end: UpToDateDone): string {
  if (!end.done) return sayPortError(end.error);
  const { made, added, left, blocked } = end;
  const makes = made.length > 0 ? [`Made ${listed(made)}.`] : [];
  const adds = added.map(({ table, headers }) => `Added to ${table}: ${listed(headers)}.`);
  const lefts = left.map(({ table, error }) => `${table} was left as it is. ${sayPortError(error)}`);
  const nothing = makes.length + adds.length + lefts.length + blocked.length === 0 ? ['Nothing was lacking.'] : [];
  return [...nothing, ...makes, ...adds, ...lefts, ...blocked.map(sayBlocked)].join(' ');
}
