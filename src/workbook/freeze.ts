/** Turning a live plan into values that stay as they are. */
import type { FreezeDone } from './outcomes';
import { planFormula, planSpill, rowPrints } from './planOwners';
import { keepPlans, LAST_FILL_KEY, PLANS_BEFORE_KEY, PLANS_KEY } from './planPlaces';
import type { PlanPlace } from './planPlaces';
import { politely } from './polite';
import type { Block, BlockSeen, Put, Seen, WorkbookPort } from './port';
import { contains, named, sameBlock } from './shared/address';
import { isBlankCell, readShop } from './shop';
import type { Shop } from './shop';

const MOST_TRIES = 3;

/** Writes the values that a plan's formula shows over the formula. Taking it back brings the formula back. */
export async function freezePlan(port: WorkbookPort, shop: Shop, place: PlanPlace): Promise<FreezeDone> {
  return politely(async (): Promise<FreezeDone> => {
    let known = shop;
    let block = place.block;
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
      const [name, seen] = await port.read([
        { read: 'name', name: place.name },
        { read: 'block', at: block },
      ]);
      if (!name.at || !seen.sheetExists) return { done: false, reason: 'planGone' };
      const needed = neededBlock(name.at, seen);
      if (contains(block, needed)) return freezeSeen(port, known, place, seen);
      // It moved, or clubs were added since: what is kept of the other plans may be old as well.
      block = needed;
      known = await readShop(port);
    }
    return { done: false, reason: 'planGone' };
  });
}

/** The plan's named block with all that its formula fills. */
function neededBlock(at: Block, seen: BlockSeen): Block {
  const spill = sameBlock(at, seen.at) || contains(seen.at, at) ? planSpill(seen) : null;
  return spill ? around(at, spill) : at;
}

function around(one: Block, other: Block): Block {
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  const rows = Math.max(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.max(one.column + one.columns, other.column + other.columns) - column;
  return { sheet: one.sheet, row, column, rows, columns };
}

async function freezeSeen(port: WorkbookPort, known: Shop, place: PlanPlace, seen: BlockSeen): Promise<FreezeDone> {
  const formula = planFormula(seen);
  if (!formula) return { done: false, reason: 'alreadyValues' };
  const { cell, shows } = formula;
  const spill = planSpill(seen);
  if (!spill || typeof shows === 'object') {
    return { done: false, reason: 'notCalculated', cell: named(cell), error: errorOf(shows) };
  }
  const values = within(seen, spill);
  const entry = { ...place, rowPrints: rowPrints(values) };
  const others = known.plans.filter(({ name }) => name !== place.name);
  await port.apply(
    [
      { do: 'write', at: spill, cells: values.map((row) => row.map(toPut)) },
      { do: 'name', name: place.name, at: seen.at },
      { do: 'remember', key: PLANS_BEFORE_KEY, value: keepPlans(known.plans, known.layout) },
      { do: 'remember', key: PLANS_KEY, value: keepPlans([...others, entry], known.layout) },
    ],
    [seen],
    {
      label: place.job === null ? 'Freeze the plan' : `Freeze the plan of job ${place.job}`,
      receiptKey: LAST_FILL_KEY,
    },
  );
  const cells = values.flat().filter((value) => !isBlankCell(value)).length;
  return { done: true, sheet: spill.sheet, block: spill, cells };
}

function errorOf(shows: Seen): string {
  return typeof shows === 'object' && shows !== null ? shows.error : '';
}

function within(seen: BlockSeen, block: Block): Seen[][] {
  const top = block.row - seen.at.row;
  const left = block.column - seen.at.column;
  return seen.values.slice(top, top + block.rows).map((row) => row.slice(left, left + block.columns));
}

/** A blank needs no value in its place; an error stays to be seen, as text. */
function toPut(value: Seen): Put {
  if (isBlankCell(value)) return undefined;
  return typeof value === 'object' && value !== null ? value.error : value;
}
