/** A small invented workshop in a memory workbook: three jobs, five clubs, three grips. */
import { planCells } from '../../src/workbook/planCells';
import { planTables } from '../../src/workbook/planTables';
import type { Seen } from '../../src/workbook/port';
import { setUp } from '../../src/workbook/setUp';
import { matrixOf } from '../../src/workbook/shop';
import { MemoryPort } from './memoryPort';
import type { Calculate } from './memoryPort';

/** What SETPLAN fills, computed by the functions that SETPLAN itself calls. */
export const spillPlan: Calculate = (call, port) => {
  const table = (i: number): ReturnType<typeof matrixOf> | null => {
    const arg = call.args[i];
    const seen = arg && 'table' in arg ? port.tableSeen(arg.table) : null;
    return seen && matrixOf(seen);
  };
  const job = call.args[5];
  const planned = planTables({
    clubs: table(0) ?? [],
    stock: table(1),
    settings: table(2),
    weights: table(3),
    tape: table(4),
    job: job && 'literal' in job ? String(job.literal) : null,
  });
  return planned.ok ? planCells(planned.value.plan, planned.value.problems) : { error: '#VALUE!' };
};

export const STOCK_ROWS: readonly Readonly<Record<string, Seen>>[] = [
  {
    Item: 'FERN-M',
    'Core (in)': 0.6,
    'Mass (g)': 52,
    'Upper diameter (in)': 0.94,
    'Length (in)': 10.5,
    'On hand': 20,
  },
  {
    Item: 'MOSS-S',
    'Core (in)': 0.6,
    'Mass (g)': 47,
    'Upper diameter (in)': 0.9,
    'Length (in)': 10.5,
    'On hand': 20,
  },
  {
    Item: 'OAK-58',
    'Core (in)': 0.58,
    'Mass (g)': 61,
    'Upper diameter (in)': 0.92,
    'Length (in)': 10.5,
    'On hand': 3,
  },
];

export const JOB_ROWS: readonly Readonly<Record<string, Seen>>[] = [
  { Job: '1042', Customer: 'Tamsin Orrell', Due: 46000 },
  { Job: '1043', Customer: 'Ivo Brandt' },
];

export const CLUB_ROWS: readonly Readonly<Record<string, Seen>>[] = [
  club('1042', 'Driver', 'Driver', 45.5, 0.6, 'D3', 305),
  club('1042', '7 iron', 'Iron', 37, 0.6, 'D2', 415),
  club('1042', 'Pitching wedge', 'Wedge', 35.5, 0.61, 'D3.5', 445),
  club('1043', '7 iron', 'Iron', 37, 0.58, 'D1', 410),
  club('', 'Old putter', 'Putter', 34, 0.58, 'E1', 520),
];

export function club(
  job: string,
  name: string,
  kind: string,
  length: number,
  butt: number,
  reading: string,
  mass: number,
): Readonly<Record<string, Seen>> {
  return {
    Job: job === '' ? null : job,
    Club: name,
    Kind: kind,
    'New grip': 'FERN-M',
    Layers: 1,
    'Length (in)': length,
    'Butt (in)': butt,
    Reading: reading,
    'Club mass (g)': mass,
    'Old grip': 'MOSS-S',
  };
}

let made: Promise<MemoryPort> | null = null;

/** A fresh copy of the workshop's workbook. */
export async function workshop(): Promise<MemoryPort> {
  made ??= makeWorkshop();
  return (await made).copy();
}

async function makeWorkshop(): Promise<MemoryPort> {
  const port = new MemoryPort();
  await setUp(port);
  port.calculate = spillPlan;
  port.fillTable('Stock', STOCK_ROWS);
  port.fillTable('Jobs', JOB_ROWS);
  port.fillTable('Clubs', CLUB_ROWS);
  return port;
}
