/** Tables of ours as lists of the shop's own stand for them: such a list may say more than the table keeps itself. */
import type { Column, TableSchema } from '../columns';
import { CLUBS, TABLES } from '../schema';

/**
 * Whose clubs they are. Jobs keeps that for every job, so Clubs has no column for it; a shop's list of clubs often has, and may be the
 * only one that says it. It is read (`customers.ts`) and never written.
 */
const CUSTOMER: Column = {
  key: 'customer',
  header: 'Customer',
  kind: 'text',
  later: true,
  width: 20,
  synonyms: ['client', 'player'],
};

const CLUBS_IN_LISTS: TableSchema = { ...CLUBS, columns: [...CLUBS.columns, CUSTOMER] };

/** In the order of `TABLES`. */
export const LIST_TABLES: readonly TableSchema[] = TABLES.map((schema) => (schema === CLUBS ? CLUBS_IN_LISTS : schema));

/** Under which heading a list of clubs is handed on with whose they are. */
export const CUSTOMER_HEADER = CUSTOMER.header;
