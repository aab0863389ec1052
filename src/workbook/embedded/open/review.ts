/** Formulas of an opened file after the first calculation: what does not come out here keeps the value that the file had. */
import type { Worksheet } from '@univerjs/core';
import { IDefinedNamesService, IFunctionService } from '@univerjs/engine-formula';
import { drained } from '../../../core/index';
import { atEase } from '../../pace';
import type { Block, Seen } from '../../port';
import { blockOf, named, sameBlock, sameName } from '../../shared/address';
import { calculated, releaseCalculation, type Calculating } from '../calculation';
import { readCells } from '../cells';
import type { CellFormula, KeptInCell, OpenedFile } from '../opened';
import { openedFile } from '../opened';
import { spillsOn } from '../seeing';
import type { Spreadsheet } from '../spreadsheet';
import { causesAmong } from './causes';
import { givingBack, type Placed } from './giveBack';
import { shownBoth } from './shown';

/** Numbers that differ by less come out the same: programs add in another order. */
const CLOSE = 1e-9;
/** Functions whose results are never the same twice. */
const EVER_NEW = /\b(NOW|TODAY|RAND|RANDBETWEEN|RANDARRAY|CELL|INFO)\s*\(/i;

/** Functions that do not reach all that stands in them, or catch its error. */
const BRANCHES = /\b(IF|IFS|IFERROR|IFNA|CHOOSE|SWITCH|AGGREGATE)\s*\(/i;

/** How often cells that failed are taken for the cause of others that failed. */
const MOST_ROUNDS = 6;

/** Calculates the formulas, and looks through them once that is done. Stopped half way it leaves them as they are by then. */
export async function reviewFormulas(spreadsheet: Spreadsheet, calculating: Calculating = {}): Promise<void> {
  const file = openedFile(spreadsheet);
  if (!file) return;
  let left = await atEase(placedFormulas(spreadsheet, file));
  // Most that fail are known at once.
  const unknown = await atEase(picked(left, (each) => callsUnknown(spreadsheet, each)));
  // Whether one is reached that stands in a branch, or is caught, only its result tells.
  const branching = new Set(unknown.filter(({ formula }) => BRANCHES.test(formula.entered ?? '')));
  const strange = new Set(unknown.filter((each) => !branching.has(each)));
  await atEase(givingBack(spreadsheet, file, [...strange], false));
  left = left.filter((each) => !strange.has(each));
  releaseCalculation(spreadsheet);
  // Highlights may have formulas too.
  if (left.length === 0) spreadsheet.recalculate();
  else await calculated(spreadsheet, () => spreadsheet.recalculate(), left.length, calculating);
  for (let round = 1; round <= MOST_ROUNDS && left.length > 0 && !calculating.signal?.aborted; round++) {
    const spills = spillsBySheet(spreadsheet, left);
    const comes = (each: Placed): boolean =>
      comesOut(spreadsheet, each, spills) &&
      (!branching.has(each) || alike(valueNow(spreadsheet, each), each.kept.value));
    const failed = await atEase(picked(left, (each) => !comes(each)));
    if (failed.length === 0) break;
    // What only fails because of another is calculated again once that one has its value.
    const causes = round < MOST_ROUNDS ? await atEase(causesAmong(failed)) : failed;
    const back = causes.length > 0 ? causes : failed;
    const given = new Set(back);
    left = left.filter((each) => !given.has(each));
    await giveBack(spreadsheet, file, back, left.length, { signal: calculating.signal });
  }
  const otherwise = picked(left, (each) => {
    const now = valueNow(spreadsheet, each);
    return !isError(now) && !alike(now, each.kept.value) && !EVER_NEW.test(each.formula.file);
  });
  for (const each of await atEase(otherwise)) {
    const values = shownBoth(each.kept.value, valueNow(spreadsheet, each), patternOf(spreadsheet, each));
    file.otherwise.push({ at: named(each.at), ...values });
  }
  spreadsheet.forgetUndo();
}

/** So many formulas that fail are taken out one by one; where there are more, all that is left is calculated anew. */
const FEW = 100;

async function giveBack(
  spreadsheet: Spreadsheet,
  file: OpenedFile,
  back: readonly Placed[],
  left: number,
  calculating: Calculating,
): Promise<void> {
  const few = back.length <= FEW;
  const steps = givingBack(spreadsheet, file, back, few);
  if (few) return calculated(spreadsheet, () => drained(steps), left, calculating);
  await atEase(steps);
  await calculated(spreadsheet, () => spreadsheet.recalculate(), left, calculating);
}

/** Formulas that are looked at at a stretch. */
const AT_A_STRETCH = 100;

/** Those that `pick` takes, in steps. */
function* picked(all: readonly Placed[], pick: (each: Placed) => boolean): Generator<void, Placed[]> {
  const found: Placed[] = [];
  for (const [at, each] of all.entries()) {
    if (pick(each)) found.push(each);
    if (at % AT_A_STRETCH === 0) yield;
  }
  return found;
}

function* placedFormulas(spreadsheet: Spreadsheet, file: OpenedFile): Generator<void, Placed[]> {
  const placed: Placed[] = [];
  for (const [sheetId, sheet] of file.sheets) {
    const worksheet = spreadsheet.workbook.getWorkbook().getSheetBySheetId(sheetId);
    if (!worksheet) continue;
    for (const [key, { formula }] of sheet.beside) {
      if (!formula) continue;
      const [row = 0, column = 0] = key.split(',').map(Number);
      const at: Block = { sheet: worksheet.getName(), row, column, rows: 1, columns: 1 };
      const kept = (worksheet.getCellMatrix().getValue(row, column)?.custom as KeptInCell | undefined)?.formula;
      if (formula.entered === null) file.keptValues.push(named(at));
      else if (kept) {
        const wanted = (formula.fills === undefined ? null : blockOf(formula.fills, at.sheet)) ?? at;
        placed.push({ at, formula, kept, wanted, worksheet, sheet });
      }
      if (placed.length % AT_A_STRETCH === 0) yield;
    }
  }
  return placed;
}

function valueNow(spreadsheet: Spreadsheet, { worksheet, at }: Placed): Seen {
  return readCells(spreadsheet, worksheet, at).values[0]?.[0] ?? null;
}

function patternOf(spreadsheet: Spreadsheet, { worksheet, kept }: Placed): string | undefined {
  const styles = spreadsheet.workbook.getWorkbook().getStyles();
  return styles.getStyleByCell(worksheet.getCellRaw(kept.row, kept.column))?.n?.pattern;
}

type Spills = ReadonlyMap<Worksheet, ReadonlyMap<string, Block>>;

function spillsBySheet(spreadsheet: Spreadsheet, all: readonly Placed[]): Spills {
  const sheets = [...new Set(all.map(({ worksheet }) => worksheet))];
  return new Map(
    sheets.map((sheet) => [
      sheet,
      new Map(spillsOn(spreadsheet, sheet).map((block) => [`${block.row},${block.column}`, block])),
    ]),
  );
}

/** Whether a formula calls a function that there is none of here. */
function callsUnknown(spreadsheet: Spreadsheet, { formula }: Placed): boolean {
  const known = spreadsheet.injector.get(IFunctionService);
  // Texts, and sheets in quotes, may hold anything.
  const bare = (formula.entered ?? '').replace(/"(?:[^"]|"")*"|'(?:[^']|'')*'/g, '');
  const called = [...bare.matchAll(/([\p{L}_][\p{L}\p{N}_.]*)\s*\(/gu)].map(([, name = '']) => name.toUpperCase());
  // These two give names to functions of the formula's own, and a defined name may be one.
  if (called.some((name) => name === 'LET' || name === 'LAMBDA')) return false;
  return called.some((name) => !known.hasExecutor(name) && !isDefined(spreadsheet, name));
}

function isDefined(spreadsheet: Spreadsheet, name: string): boolean {
  const all = Object.values(spreadsheet.injector.get(IDefinedNamesService).getDefinedNameMap(spreadsheet.id) ?? {});
  return all.some((each) => sameName(each.name, name));
}

/** Whether a formula has a result, of the size that it had, or the very error that the file had. */
function comesOut(spreadsheet: Spreadsheet, each: Placed, spills: Spills): boolean {
  const { at, kept, wanted, worksheet } = each;
  const spill = spills.get(worksheet)?.get(`${at.row},${at.column}`) ?? at;
  if (!sameBlock(spill, wanted)) return false;
  const now = valueNow(spreadsheet, each);
  return !isError(now) || now.error === kept.value;
}

function isError(value: Seen): value is { readonly error: string } {
  return typeof value === 'object' && value !== null;
}

function alike(now: Seen, before: CellFormula['value']): boolean {
  if (typeof now === 'number' && typeof before === 'number') {
    return Math.abs(now - before) <= CLOSE * Math.max(1, Math.abs(now), Math.abs(before));
  }
  // A blank result is an empty text to some, and a file that was never calculated has none.
  return now === before || before === null || (now === null && before === '');
}
