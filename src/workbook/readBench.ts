/** From tables to what the bench ticket asks: how the shop works, what is said of single clubs, and minutes. */
import { DEFAULT_HABITS, isLead, type BenchAsk, type BenchHabits, type ClubBench, type Issue } from '../core/index';
import type { TimedWay } from '../core/index';
import { readRates } from './readMoney';
import { settingValues } from './readSettings';
import { readTable, type FieldValue, type Row } from './records';
import { CLUBS, RIBS, WEIGHTS, type SettingKey, type TableSchema } from './schema';
import { matrixOf, type ShopTables } from './shop';
import { TAKE_OFF_CODES } from './takeOffCodes';

const SLIP_CODES: Readonly<Record<string, BenchHabits['activator']>> = {
  Solvent: 'solvent',
  Water: 'water',
  Air: 'air',
};
const SOLVENT_CODES: Readonly<Record<string, BenchHabits['solvent']>> = {
  'Mineral spirits': 'mineralSpirits',
  'Isopropyl alcohol': 'isopropylAlcohol',
};
const RIB_CODES: Readonly<Record<(typeof RIBS)[number], NonNullable<ClubBench['rib']>>> = {
  Under: 'under',
  '5 o’clock': 'five',
  '7 o’clock': 'seven',
  'No rib': 'none',
};
const OFF_CODES: Readonly<Record<string, BenchHabits['salvageWith']>> = { Air: 'air', Solvent: 'solvent' };

/** What the bench is asked with, and what is wrong in the tables it comes from, clubs and settings apart: a plan names those. */
export interface BenchRead {
  readonly ask: BenchAsk;
  readonly problems: readonly Issue[];
}

/** A column or table that an older workbook lacks says nothing, and the shop's usual way counts. */
export function readBench(tables: ShopTables): BenchRead {
  const weights = rowsOf(tables, 'Weights', WEIGHTS);
  const { Rates } = tables;
  const rates = readRates(Rates ? { matrix: matrixOf(Rates), headerRow: Rates.at.row + 1 } : undefined);
  const clubs = rowsOf(tables, 'Clubs', CLUBS);
  const ask: BenchAsk = {
    habits: habitsOf(tables, weights.rows),
    clubs: new Map(clubs.rows.map((row) => [row.row, clubOf(row)])),
    rates: rates.value,
    ways: weights.rows.flatMap(wayOf),
  };
  return { ask, problems: rates.issues };
}

function rowsOf(
  tables: ShopTables,
  name: keyof ShopTables,
  schema: TableSchema,
): { readonly rows: readonly Row[]; readonly problems: readonly Issue[] } {
  const table = tables[name];
  if (!table) return { rows: [], problems: [] };
  const read = readTable(schema, matrixOf(table), table.at.row + 1);
  if (!read.ok) return { rows: [], problems: [read.issue] };
  return { rows: read.value.rows, problems: read.value.rows.flatMap(({ issues }) => issues) };
}

function habitsOf({ Settings }: ShopTables, weights: readonly Row[]): BenchHabits {
  const read = settingValues(Settings && matrixOf(Settings));
  const values: ReadonlyMap<SettingKey, FieldValue> = read.ok ? read.value.values : new Map<SettingKey, FieldValue>();
  const code = <T>(key: SettingKey, codes: Readonly<Record<string, T>>, usual: T): T =>
    codes[String(values.get(key) ?? '')] ?? usual;
  const number = (key: SettingKey, usual: number): number => {
    const value = values.get(key);
    return typeof value === 'number' ? value : usual;
  };
  const usual = DEFAULT_HABITS;
  return {
    activator: code('slipsWith', SLIP_CODES, usual.activator),
    solvent: code('solvent', SOLVENT_CODES, usual.solvent),
    solventMl: number('solventPerGrip', usual.solventMl),
    takeOff: code('takeOff', TAKE_OFF_CODES, usual.takeOff),
    salvageWith: code('offWith', OFF_CODES, usual.salvageWith),
    salvageMl: number('solventOff', usual.salvageMl),
    leadWays: leadWays(weights),
  };
}

/** By Material, and by name where that is blank; undefined without a table of ways, when names alone tell. */
function leadWays(rows: readonly Row[]): string[] | undefined {
  if (rows.length === 0) return undefined;
  return rows.flatMap(({ values }) => {
    const name = String(values.get('way') ?? '');
    const material = values.get('material');
    return material === 'Lead' || (material === undefined && isLead(name, { leadWays: undefined })) ? [name] : [];
  });
}

function clubOf({ values }: Row): ClubBench {
  const lower = (key: string): string | undefined => values.get(key)?.toString().toLowerCase();
  return {
    takeOff: TAKE_OFF_CODES[String(values.get('takeOff') ?? '')],
    ownGrip: values.get('ownGrip') === true,
    logo: lower('logo') as ClubBench['logo'],
    hand: lower('hand') as ClubBench['hand'],
    shaft: lower('shaft') as ClubBench['shaft'],
    rib: RIB_CODES[values.get('rib') as (typeof RIBS)[number]],
    tag: values.get('tag')?.toString(),
    damage: values.get('damage')?.toString(),
  };
}

function wayOf({ values }: Row): TimedWay[] {
  const name = values.get('way');
  return typeof name === 'string' ? [{ name, minutes: numberOf(values.get('minutes')) }] : [];
}

function numberOf(value: FieldValue | undefined): number | undefined {
  return typeof value === 'number' ? value : undefined;
}
