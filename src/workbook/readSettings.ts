/** Reads the Settings and Tape tables into what the core works with; a bad or blank value falls back to the default and is told. */
import {
  DEFAULT_SETTINGS,
  RANGES,
  fail,
  ok,
  tapeGrams,
  tapeGsm,
  type Issue,
  type Result,
  type ShopSettings,
  type Tape,
} from '../core/index';
import {
  cellNumber,
  duplicates,
  expectation,
  placed,
  readCell,
  readTable,
  type FieldValue,
  type Matrix,
  type Row,
} from './records';
import {
  columnOf,
  NO_AMOUNT,
  SETTING_ROWS,
  SETTINGS,
  TAPE,
  type Column,
  type SettingKey,
  type SettingRow,
} from './schema';

interface SettingsRead {
  readonly settings: ShopSettings;
  readonly problems: readonly Issue[];
}

/** Values by key; a key that stands nowhere keeps its initial value. */
export type Values = Map<SettingKey, FieldValue>;

export function readSettings(
  settings: Matrix | null | undefined,
  tape: Matrix | null | undefined,
  headerRows: { readonly settings?: number | undefined; readonly tape?: number | undefined } = {},
): Result<SettingsRead> {
  const found = settingValues(settings, headerRows.settings);
  if (!found.ok) return found;
  const { values } = found.value;
  const problems = [...found.value.problems];
  const tapedInches = numberOr(values.get('tapedLength'), DEFAULT_SETTINGS.tapedInches);
  const tapes = readTapes(tape, { headerRow: headerRows.tape, tapedInches, problems });
  if (!tapes.ok) return tapes;
  return ok({ settings: settingsFrom(values, tapes.value, problems), problems });
}

/** What Settings says, by key, and what is wrong with it. */
export function settingValues(
  settings: Matrix | null | undefined,
  headerRow?: number,
): Result<{ readonly values: ReadonlyMap<SettingKey, FieldValue>; readonly problems: readonly Issue[] }> {
  const problems: Issue[] = [];
  const values: Values = new Map();
  if (!settings) return ok({ values, problems });
  const read = readTable(SETTINGS, settings, headerRow);
  if (!read.ok) return read;
  const ours = read.value.rows.filter(settingOf); // rows a shop keeps for itself are its own
  problems.push(...duplicates(SETTINGS, ours, 'setting'));
  for (const row of ours) readRow(row, values, problems);
  return ok({ values, problems });
}

function settingOf(row: Row): (SettingRow & { key: SettingKey }) | undefined {
  const name = String(row.values.get('setting') ?? '').toLowerCase();
  return SETTING_ROWS.find((each) => each.name.toLowerCase() === name);
}

function readRow(row: Row, values: Values, problems: Issue[]): void {
  problems.push(...row.issues);
  const setting = settingOf(row);
  const value = row.values.get('value');
  if (!setting || value === undefined || values.has(setting.key)) return;
  const read = readValue(setting, value);
  if (!read.ok) problems.push(placed(read.issue, row.where));
  else if (read.value !== undefined) values.set(setting.key, read.value);
}

/** What a Value cell says. A blank may arrive as 0, so 0 is one, and a setting that may be nothing has a word for it. */
function readValue(setting: SettingRow, value: FieldValue): ReturnType<typeof readCell> {
  if (cellNumber(value) === 0) return ok(undefined);
  const mayBeNone = setting.kind === 'number' && setting.low === 0;
  if (mayBeNone && String(value).trim().toLowerCase() === NO_AMOUNT.toLowerCase()) return ok(0);
  const column: Column = { ...setting, header: setting.name, width: 0, synonyms: [] };
  const read = readCell(column, value);
  if (read.ok || !mayBeNone || read.issue.code === 'ambiguous') return read;
  return fail({ ...read.issue, expected: `${NO_AMOUNT}, or ${expectation(column).replace('0 to', 'up to')}` });
}

interface TapeContext {
  readonly headerRow: number | undefined;
  readonly tapedInches: number;
  readonly problems: Issue[];
}

function readTapes(
  matrix: Matrix | null | undefined,
  context: TapeContext,
): Result<ReadonlyMap<string, Tape> | undefined> {
  const { headerRow, tapedInches, problems } = context;
  if (!matrix) return ok(undefined);
  const read = readTable(TAPE, matrix, headerRow);
  if (!read.ok) return read;
  const tapes = new Map<string, Tape>();
  problems.push(...duplicates(TAPE, read.value.rows, 'tape'));
  for (const row of read.value.rows) {
    problems.push(...row.issues);
    const name = row.values.get('tape');
    if (typeof name !== 'string' || tapes.has(name.toLowerCase())) continue;
    const fallback = row.values.get('use') === 'Two-way' ? DEFAULT_SETTINGS.twoWay : DEFAULT_SETTINGS.buildUp;
    const stripInches = numberOr(row.values.get('strip'), fallback.stripInches);
    tapes.set(name.toLowerCase(), {
      stripInches,
      gsm: weighedGsm(row, stripInches, tapedInches, problems) ?? numberOr(row.values.get('gsm'), fallback.gsm),
      thicknessInches: numberOr(row.values.get('thickness'), fallback.thicknessInches),
    });
  }
  return ok(tapes);
}

/**
 * Mass per area from the strip that was weighed, where there is one and its size could be read; one that no tape weighs is told.
 * Layer mass ± in Settings holds as before: it is how strips vary, not how well one was weighed.
 */
function weighedGsm(row: Row, stripInches: number, tapedInches: number, problems: Issue[]): number | undefined {
  const grams = row.values.get('weighedStrip');
  if (typeof grams !== 'number' || isUnread(row, 'strip') || isUnread(row, 'weighedLength')) return undefined;
  const length = numberOr(row.values.get('weighedLength'), tapedInches);
  const gsm = tapeGsm(grams, length, stripInches);
  const { low, high } = RANGES.gsm;
  if (gsm >= low && gsm <= high) return gsm;
  const [least, most] = [low, high].map((each) => tapeGrams(length, stripInches, each).toFixed(2));
  problems.push({
    code: 'outOfRange',
    field: `${row.where}, ${columnOf(TAPE, 'weighedStrip').header}`,
    got: grams,
    expected: `${least} to ${most} g, what a strip of ${length} × ${stripInches} in weighs`,
  });
  return undefined;
}

/** Whether a cell holds something that could not be read. */
function isUnread(row: Row, key: string): boolean {
  const { header } = columnOf(TAPE, key);
  return row.issues.some(({ field }) => field.endsWith(`, ${header}`));
}

function settingsFrom(
  values: ReadonlyMap<SettingKey, FieldValue>,
  tapes: ReadonlyMap<string, Tape> | undefined,
  problems: Issue[],
): ShopSettings {
  const number = (key: SettingKey, fallback: number): number => numberOr(values.get(key), fallback);
  const text = (key: SettingKey, fallback: string): string =>
    typeof values.get(key) === 'string' ? String(values.get(key)) : fallback;
  const yes = (key: SettingKey, fallback: boolean): boolean =>
    typeof values.get(key) === 'boolean' ? values.get(key) === true : fallback;
  const tape = (key: 'buildUpTape' | 'twoWayTape', field: string, fallback: Tape): Tape => {
    if (!tapes) return fallback;
    const name = text(key, field);
    const found = tapes.get(name.toLowerCase());
    if (!found)
      problems.push({
        code: 'unknownChoice',
        field: `Settings, ${field}`,
        got: name,
        expected: 'a tape that Tape lists',
      });
    return found ?? fallback;
  };
  const usual = DEFAULT_SETTINGS;
  return {
    tolerancePoints: number('tolerance', usual.tolerancePoints),
    putRight: text('putRight', '') === 'Whenever a step helps' ? 'always' : 'outOfTolerance',
    headWay: text('headWay', usual.headWay),
    buttWay: text('buttWay', usual.buttWay),
    headLimitGrams: number('headLimit', usual.headLimitGrams),
    leastGrams: number('leastWeight', usual.leastGrams),
    tapedInches: number('tapedLength', usual.tapedInches),
    buildUp: tape('buildUpTape', 'Build-up tape', usual.buildUp),
    twoWay: tape('twoWayTape', 'Two-way tape', usual.twoWay),
    twoWayUnderNew: yes('twoWayUnderNew', usual.twoWayUnderNew),
    capInches: number('cap', usual.capInches),
    growth: text('growth', '') === 'Additive' ? 'additive' : 'volume',
    sizeToleranceInches: number('sizeTolerance', usual.sizeToleranceInches),
    mostLayers: number('mostLayers', usual.mostLayers),
    lowerTapeStartInches: number('lowerTapeStart', usual.lowerTapeStartInches),
    oldSpreadGrams: number('oldSpread', usual.oldSpreadGrams),
    newSpreadGrams: number('newSpread', usual.newSpreadGrams),
    gripBalanceRatio: number('gripBalance', usual.gripBalanceRatio),
    balanceSpreadInches: number('balanceSpread', usual.balanceSpreadInches),
    readingSpreadPoints: number('readingSpread', usual.readingSpreadPoints),
    tapeSpread: number('tapeSpread', usual.tapeSpread * 100) / 100,
    competition46: yes('competition46', usual.competition46),
  };
}

function numberOr(value: FieldValue | undefined, fallback: number): number {
  return typeof value === 'number' ? value : fallback;
}
