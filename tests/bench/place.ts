/** Placing weighed grips: the whole of it against the plan of as many clubs, and the assignment alone. */
import { placeGrips, planSet, type PlanInput, type WeighedGrip } from '../../src/core/index';
import { assign } from '../../src/workbook/assignment';
import { planTables } from '../../src/workbook/planTables';
import { clubTable, stockTable } from './clubs';
import { figures, medians, printTable } from './measure';

const COUNTS = [13, 200];

/** So many clubs that all get one item, and as many grips of it in tenths of a gram. */
function weighedSet(count: number): { input: PlanInput; weighed: WeighedGrip[] } {
  const read = planTables({ clubs: clubTable(count), stock: stockTable() });
  if (!read.ok) throw new Error(read.issue.code);
  const clubs = read.value.input.clubs.map((club) => ({ ...club, newItem: 'G-12' }));
  const weighed = clubs.map((_, at) => ({ number: at + 1, grams: 48 + ((at * 7919) % 50) / 10 }));
  return { input: { ...read.value.input, clubs }, weighed };
}

export function benchPlace(): void {
  const rows = COUNTS.flatMap((count) => {
    const { input, weighed } = weighedSet(count);
    const costs = input.clubs.map((_, club) => weighed.map(({ grams }) => (grams - 46 - ((club * 31) % 97) / 10) ** 2));
    const placed = placeGrips(input, weighed, assign);
    if (!placed.ok) throw new Error(placed.issue.code);
    const times = medians([
      { name: 'planSet', run: () => planSet(input) },
      { name: 'assignment alone', run: () => assign(costs) },
      { name: 'placeGrips', run: () => placeGrips(input, weighed, assign) },
    ]);
    const plan = times.get('planSet') ?? NaN;
    return [...times].map(([name, ms]) => [`${count} on ${count}, ${name}`, figures(ms), `× ${figures(ms / plan)}`]);
  });
  printTable('Weighed grips on clubs, one item', ['', 'ms', 'to planSet of as many clubs'], rows);
}
