/** Whose clubs they are: what Jobs says; of jobs of which it says nothing, what a list of clubs of the shop's own says. Pure. */
import { CUSTOMER_HEADER } from './connect/listTables';
import { columnsAt, folded } from './headings';
import type { Matrix } from './records';
import { CLUBS } from './schema';

/** What a list of clubs was read for already, by its matrix. */
const READ = new WeakMap<Matrix, ReadonlyMap<string, string>>();
const NONE: ReadonlyMap<string, string> = new Map();

/**
 * Customers by the folded names of jobs, as a list of clubs gives them. A job under which two customers stand has none: nobody may
 * get another's quote.
 */
export function customersOfClubs(clubs: Matrix | null): ReadonlyMap<string, string> {
  if (!clubs) return NONE;
  const known = READ.get(clubs) ?? read(clubs);
  READ.set(clubs, known);
  return known;
}

function read(clubs: Matrix): ReadonlyMap<string, string> {
  const headers = clubs[0] ?? [];
  const job = columnsAt(CLUBS, headers)('job');
  const customer = headers.indexOf(CUSTOMER_HEADER);
  if (job < 0 || customer < 0) return NONE;
  const customers = new Map<string, string>();
  for (const row of clubs.slice(1)) {
    const [key, cell] = [folded(row[job]), row[customer]];
    if (key === '' || folded(cell) === '') continue;
    const name = String(cell).trim();
    const known = customers.get(key);
    customers.set(key, known === undefined || folded(known) === folded(name) ? (known ?? name) : '');
  }
  return customers;
}
