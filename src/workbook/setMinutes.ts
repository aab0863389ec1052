/** How long a set takes at the bench, by the shop's own minutes in Rates and Weights. */
import { fail, linesFromPlan, minutesOf, ok, type Issue, type Result } from '../core/index';
import { planTables, type TablesIn } from './planTables';
import { readMoney } from './readMoney';
import type { Matrix } from './records';

/**
 * Minutes for everything that a plan does, counted as a quote counts it: quantity × minutes of one, over its lines of work.
 *
 * A work without minutes counts as none: a blank cell and a 0 cannot be told apart everywhere.
 *
 * @returns why the set cannot be planned, what in Rates cannot be read, or which work has no row there
 */
export function setMinutes(tables: TablesIn, rates: Matrix): Result<number> {
  const planned = planTables(tables);
  if (!planned.ok) return planned;
  const read = readMoney({
    clubs: { matrix: tables.clubs },
    weights: { matrix: tables.weights },
    rates: { matrix: rates },
    settings: { matrix: tables.settings },
  });
  const { lines, issues } = linesFromPlan(planned.value.plan, read.rates.value, [], read.ways.value, {
    work: read.work,
  });
  const [wrong] = [...read.rates.issues, ...read.ways.issues, ...issues].flatMap(aboutTime);
  return wrong ? fail(wrong) : ok(minutesOf(lines).minutes);
}

/** What keeps a time from being told; what a thing costs does not. */
function aboutTime(issue: Issue): Issue[] {
  const { code, field } = issue;
  if (code === 'unknownItem' || /^Price of |, (Price|Cost|Tax)$/.test(field)) return [];
  return [code === 'blank' && field.endsWith(' in Rates') ? { ...issue, expected: 'a row with its minutes' } : issue];
}
