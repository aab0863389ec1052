/** Live plans that were filled before a list stood for a table: their formula still reads our own table. */
import { fillPlans, type PlansFilled } from '../fillPlans';
import type { NotDone } from '../outcomes';
import type { Stopped } from '../pace';
import { planFormula } from '../planOwners';
import { keptPlans, PLANS_KEY, standing, type PlanPlace } from '../planPlaces';
import { HEAD_ROWS } from '../planSheet';
import type { Block, BlockSeen, NameSeen, Query, TableSeen, WorkbookPort } from '../port';
import { blockOf, overlap, sameName } from '../shared/address';
import type { Shop } from '../shop';
import { HEADINGS } from '../tables/headings';
import { readConnections, type Connection } from './connections';

/** A live plan, and the tables of ours that it reads though lists stand for them. */
export interface PlanBehind {
  readonly place: PlanPlace;
  readonly tables: readonly string[];
}

/**
 * Finds them.
 *
 * @param bare the workbook as it is: behind a connection our own table cannot be seen
 */
export async function plansBehind(
  bare: WorkbookPort,
  connections: readonly Pick<Connection, 'schema'>[],
  plans: readonly PlanPlace[],
): Promise<PlanBehind[]> {
  const names = connections.map(({ schema }) => schema.name);
  if (names.length === 0 || plans.length === 0) return [];
  const heads = plans.map(({ block }) => headOf(block));
  const answers: readonly unknown[] = await bare.read<readonly Query[]>([
    ...heads.map((at) => ({ read: 'block', at }) as const),
    ...names.map((table) => ({ read: 'table', table }) as const),
  ]);
  const own = names.map((_, i) => (answers[plans.length + i] as TableSeen | null)?.at ?? null);
  return plans.flatMap((place, i) => {
    const seen = answers[i] as BlockSeen;
    const formula = formulaIn(seen);
    if (formula === null || place.job === null) return [];
    const tables = names.filter((name, at) => readsTable(formula, name, own[at] ?? null));
    return tables.length > 0 ? [{ place, tables }] : [];
  });
}

/** Live plans that read the list which stands for a table: they show an error once it does so no more. */
export async function plansReading(bare: WorkbookPort, table: string): Promise<readonly PlanPlace[]> {
  const entries = keptPlans(await bare.recall(PLANS_KEY))?.plans ?? [];
  if (entries.length === 0) return [];
  const [headings, ...names] = await bare.read<readonly Query[]>([
    { read: 'table', table: HEADINGS.name },
    ...entries.map(({ name }) => ({ read: 'name', name }) as const),
  ]);
  const seen = headings as TableSeen | null;
  const read = seen && readConnections([seen.headers, ...seen.rows]);
  const list = read?.ok ? read.value.find(({ schema }) => schema.name === table)?.list : undefined;
  const plans = standing(entries, names as readonly NameSeen[]);
  if (list === undefined || plans.length === 0) return [];
  const answers = await bare.read<readonly Query[]>([
    { read: 'table', table: list },
    { read: 'name', name: list },
    ...plans.map(({ block }) => ({ read: 'block', at: headOf(block) }) as const),
  ]);
  const at = (answers[0] as TableSeen | null)?.at ?? (answers[1] as NameSeen).at;
  return plans.filter((_, i) => {
    const formula = formulaIn(answers[i + 2] as BlockSeen);
    return formula !== null && (readsTable(formula, list, at) || namesCells(formula, list));
  });
}

function headOf(block: Block): Block {
  return { ...block, rows: HEAD_ROWS + 1, columns: 1 };
}

function namesCells(formula: string, name: string): boolean {
  return [...formula.matchAll(/[\p{L}_][\p{L}\p{N}_.]*/gu)].some(([word]) => sameName(word, name));
}

function formulaIn(seen: BlockSeen): string | null {
  const cell = planFormula(seen)?.cell;
  return cell ? (seen.formulas[cell.row - seen.at.row]?.[cell.column - seen.at.column] ?? null) : null;
}

/** Cells of a sheet as formulas name them. */
const REFERENCE = /(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?/giu;

/** Whether a formula reads a table, by its name or by the cells where it stands. */
function readsTable(formula: string, name: string, at: Block | null): boolean {
  const structured = [...formula.matchAll(/([\p{L}_][\p{L}\p{N}_.]*)\[/gu)];
  if (structured.some(([, table = '']) => sameName(table, name))) return true;
  const blocks = [...formula.matchAll(REFERENCE)].map(([text]) => blockOf(text));
  return at !== null && blocks.some((block) => block !== null && overlap(block, at) !== null);
}

/** Fills these plans again where they stand, so that they read the lists; one step of Undo for all of them. */
export async function followLists(
  port: WorkbookPort,
  shop: Shop,
  behind: readonly PlanBehind[],
): Promise<PlansFilled | NotDone | Stopped> {
  const over = behind.map(({ place }) => place);
  const jobs = over.map(({ job }) => job ?? '');
  return fillPlans(port, shop, { jobs, over, label: 'Plans that read your lists' });
}
