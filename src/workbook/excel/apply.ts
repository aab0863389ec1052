import { atEase } from '../pace';
import { PortError } from '../port';
import type { ApplyOptions, Change, Receipt } from '../port';
import { named } from '../shared/address';
import type { Looked } from '../shared/looked';
import { isTable } from '../shared/looked';
import { afterResizing } from '../shared/lengthen';
import { receiptSteps } from '../shared/receipt';
import { packSteps } from '../shared/packed';
import { refuseSteps, standsAlready } from '../shared/refuse';
import type { Applying } from './applying';
import { bytesOf, startBatch } from './batch';
import type { Batch } from './batch';
import { makeChange } from './change';
import { refuseChoices } from './dress';
import { didNothing, toPortError } from './errors';
import { ChangedMeanwhile, startGuard } from './guard';
import { inBatch } from './host';
import { placesOf, putBack } from './putBack';
import type { Before, HowFar } from './putBack';
import { followPlaces, NOTHING_MOVED } from './places';
import { askSettings } from './settings';
import { askStanding, holds, placeIn } from './standing';
import type { Stood } from './standing';

/** Makes every change in one round trip, the receipt first; on failure puts everything back and throws. */
export async function applyChanges(applying: Applying): Promise<Receipt> {
  const { host, extras, changes, looked, options } = applying;
  const stood = withLooked(applying.stood, looked);
  await atEase(refuseSteps(changes, looked));
  for (const change of changes) refuseForExcel(change, stood, looked);
  if (!extras.resize) refuseResizing(changes);
  const standing = { ...stood, placeOf: (name: string) => placeIn(stood, name) };
  const receipt = await atEase(receiptSteps(changes, looked, options.label, standing));
  const progress: Progress = {
    before: () => ({ stood: null, settings: null }),
    sent: 0,
    far: { moved: NOTHING_MOVED, parts: [], sizes: new Map() },
  };
  try {
    // Several round trips, if the cells are too many for one, are still one step of undo.
    const together = extras.undoGroup ? { mergeUndoGroup: true } : {};
    await inBatch(host, (context) => sendAll(context, { ...applying, stood }, receipt, progress), together);
  } catch (error) {
    const untouched = progress.sent === 0 || (progress.sent === 1 && didNothing(error));
    if (untouched) throw toPortError(error);
    const before = { ...progress.before(), ...progress.far };
    return putBackSaying(applying, receipt, before, error);
  }
  return receipt;
}

/** Puts back everything, what a person entered meanwhile as they entered it, and says which cells those are, or what we found out ourselves. */
async function putBackSaying(
  applying: Applying,
  receipt: Receipt,
  before: Before & HowFar,
  cause: unknown,
): Promise<never> {
  const cells = cause instanceof ChangedMeanwhile ? cause.cells : [...before.moved.keys()];
  try {
    return await putBack(applying, receipt, before, cause);
  } catch (error) {
    if (!(error instanceof PortError) || error.code !== 'putBack') throw error;
    if (cause instanceof PortError) throw cause;
    throw cells.length > 0 ? new PortError('notLookedAt', cells) : error;
  }
}

/** How far it came. */
interface Progress {
  before: () => Before;
  sent: number;
  far: HowFar;
}

async function sendAll(
  context: Excel.RequestContext,
  { host, changes, looked, options, stood, quiet }: Applying,
  receipt: Receipt,
  progress: Progress,
): Promise<void> {
  const standing = askStanding(context);
  const settings = askSettings(context, settingKeys(changes, options));
  progress.before = () => ({ stood: standing(), settings: settings() });
  const made = new Set<string>();
  const places = followPlaces(
    context,
    () => placesOf(receipt, changes, looked, stood),
    (sheet) => holds(stood.sheets, sheet) || made.has(`sheet ${sheet.toLowerCase()}`),
  );
  const batch = startBatch(context, host, {
    answered: () => guard.demand(),
    looking: (at) => guard.looking(at),
    writing: (at) => guard.again(at),
    leaving: () => {
      places.hold();
      if (batch.sent() === 0 && options.begun) context.workbook.settings.add(options.begun.key, options.begun.value);
    },
    resuming: places.demand,
  });
  const guard = startGuard(batch, stood);
  try {
    await keepReceipt(context, batch, receipt, options);
    quiet.begin(context);
    let seen = looked;
    for (const change of changes) {
      await batch.pause();
      await batch.room(besidesCells(change));
      await guard.look(change, seen);
      await makeChange({ batch, stood, looked: seen, made }, change);
      seen = afterResizing(seen, change);
    }
    quiet.end(context);
    await batch.send();
  } catch (thrown) {
    const error = (await sendRest(batch, thrown)) ?? thrown;
    progress.far = { parts: guard.parts(), sizes: guard.sizes(), moved: await places.find() };
    throw error instanceof ChangedMeanwhile ? error : (guard.salvaged() ?? error);
  } finally {
    progress.sent = batch.sent();
  }
}

/**
 * What was put together by the time that something was found to be too long would go with whatever is asked next, unknown to those who put
 * back. Answers what a person did meanwhile: what they entered is to be put back as well.
 */
async function sendRest(batch: Batch, thrown: unknown): Promise<ChangedMeanwhile | null> {
  if (!(thrown instanceof PortError) || batch.sent() === 0) return null;
  try {
    await batch.send();
    return null;
  } catch (second) {
    return second instanceof ChangedMeanwhile ? second : null;
  }
}

/**
 * About how many bytes of a request a change takes beside the cells it writes, measured on the client library: each object on the way
 * to what is set (sheet, range, format, font) is some 190. Hundreds of plans in one go are dressed by tens of thousands of changes.
 */
function besidesCells(change: Change): number {
  switch (change.do) {
    case 'format':
      return 1000 + 120 * Object.keys(change.format).length;
    case 'widths':
      return 800 * change.widths.length;
    case 'highlight':
      return 800 + 2000 * change.rules.length;
    case 'page':
      return 4000;
    case 'sheet':
    case 'name':
      return 600;
    default:
      return 0;
  }
}

/** A receipt longer than this goes ahead of what it is of: the client library puts a request together in one piece. */
const LONG_RECEIPT = 1_000_000;

async function keepReceipt(
  context: Excel.RequestContext,
  batch: Batch,
  receipt: Receipt,
  { receiptKey }: ApplyOptions,
): Promise<void> {
  if (receiptKey === undefined) return;
  const text = await atEase(packSteps(receipt));
  await batch.room(bytesOf(JSON.stringify(text)));
  context.workbook.settings.add(receiptKey, text);
  // No cell is written by then, so these are not two halves of anything.
  if (text.length > LONG_RECEIPT) await batch.sendPart();
}

/** The settings that a change overwrites. */
function settingKeys(changes: readonly Change[], { receiptKey }: ApplyOptions): string[] {
  const remembered = changes.flatMap((change) => (change.do === 'remember' ? [change.key] : []));
  return [...new Set(receiptKey === undefined ? remembered : [...remembered, receiptKey])];
}

/** What stands, set right by what was looked at for this very change. */
function withLooked(stood: Stood, looked: Looked): Stood {
  const missing = looked.flatMap((seen) => (!isTable(seen) && !seen.sheetExists ? [seen.at.sheet] : []));
  const there = looked.flatMap((seen) => (isTable(seen) || seen.sheetExists ? [seen.at.sheet] : []));
  const tables = looked.flatMap((seen) => (isTable(seen) ? [seen.name] : []));
  return {
    ...stood,
    sheets: [...stood.sheets.filter((name) => !holds(missing, name)), ...there],
    tables: [...stood.tables, ...tables],
  };
}

function refuseResizing(changes: readonly Change[]): void {
  for (const change of changes) {
    if (change.do !== 'lengthen' && change.do !== 'widen') continue;
    const what = change.do === 'lengthen' ? 'down for more rows' : `right for ${change.headers.join(', ')}`;
    throw new PortError('unsupported', [change.table], `Drag the corner of ${change.table} ${what}`);
  }
}

function refuseForExcel(change: Change, stood: Stood, looked: Looked): void {
  const sheet = 'at' in change ? change.at.sheet : 'sheet' in change ? change.sheet : null;
  const harmless = change.do === 'show' || change.do === 'name';
  if (sheet !== null && !harmless && holds(stood.protectedSheets, sheet)) throw new PortError('protected', [sheet]);
  if (change.do === 'choices') refuseChoices(change);
  if (change.do === 'table' && !standsAlready(change, looked) && holds(stood.tables, change.name)) {
    throw new PortError('tableInTheWay', [change.name], `${change.name} is not at ${named(change.at)}.`);
  }
}
