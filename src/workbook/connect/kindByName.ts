/** The kind of a club by what it is called, where a list has no heading that says it. Pure. */
import { clubsCalled } from '../clubNames';
import type { TableSchema } from '../columns';
import type { Told } from '../records';
import { CLUBS } from '../schema';
import type { ColumnMatch } from './types';

/** Names of clubs repeat from bag to bag. */
const KINDS = new Map<string, string | undefined>();
const MOST_KEPT = 500;

/** The kind that a name says, as Intake reads it; undefined where it says none, or several. */
export function kindCalled(name: string): string | undefined {
  if (KINDS.has(name)) return KINDS.get(name);
  if (KINDS.size >= MOST_KEPT) KINDS.clear();
  const [kind, ...more] = new Set(clubsCalled(name.trim().replace(/\s+/g, ' '))?.map((club) => club.kind));
  const only = more.length === 0 ? kind : undefined;
  KINDS.set(name, only);
  return only;
}

const KIND_BY_NAME: Told = { key: 'kind', by: 'club', tell: kindCalled };

/** What a list tells although no heading of it says so. */
export function toldIn(schema: TableSchema, matches: readonly Pick<ColumnMatch, 'key'>[]): Told | undefined {
  if (schema.name !== CLUBS.name || matches.some(({ key }) => key === KIND_BY_NAME.key)) return undefined;
  return KIND_BY_NAME;
}
