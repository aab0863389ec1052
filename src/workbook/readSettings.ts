/** Reads the Settings and Tape tables into what the core works with; a bad or blank value falls back to the default and is told. */
import { DEFAULT_SETTINGS, fail, ok, type Issue, type Result, type ShopSettings, type Tape } from '../core/index';
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
import { NO_AMOUNT, SETTING_ROWS, SETTINGS, TAPE, type Column, type SettingKey, type SettingRow } from './schema';

interface SettingsRead {
  readonly settings: ShopSettings;
  readonly problems: readonly Issue[];
}

/** Values by key; a key that stands nowhere keeps its initial value. */
type Values = Map<SettingKey, FieldValue>;

export function readSettings(
  settings: Matrix | null | undefined,
  tape: Matrix | null | undefined,
  headerRows: { readonly settings?: number | undefined; readonly tape?: number | undefined } = {},
): Result<SettingsRead> {
  const problems: Issue[] = [];
  const values: Values = new Map();
  if (settings) {
    const read = readTable(SETTINGS, settings, headerRows.settings);
    if (!read.ok) return read;
    const ours = read.value.rows.filter(settingOf); // rows a shop keeps for itself are its own
    problems.push(...duplicates(SETTINGS, ours, 'setting'));
    for (const row of ours) readRow(row, values, problems);
  }
  const tapes = readTapes(tape, headerRows.tape, problems);
  if (!tapes.ok) return tapes;
  return ok({ settings: settingsFrom(values, tapes.value, problems), problems });
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
  if (!read.ok) problems.push(placed(read.issue, `Settings row ${row.sheetRow}`));
  else if (read.value !== undefined) values.set(setting.key, read.value);
}

/** What a Value cell says. A blank may arrive as 0, so 0 is one, and a setting that may be nothing has a word for it. */
function readValue(setting: SettingRow, value: FieldValue): ReturnType<typeof readCell> {
  if (cellNumber(value) === 0) return ok(undefined);
  const mayBeNone = setting.kind === 'number' && setting.low === 0;
  if (mayBeNone && String(value).trim().toLowerCase() === NO_AMOUNT.toLowerCase()) return ok(0);
  const column: Column = { ...setting, header: setting.name, width: 0, synonyms: [], help: '' };
  const read = readCell(column, value);
  if (read.ok || !mayBeNone) return read;
  return fail({ ...read.issue, expected: `${NO_AMOUNT}, or ${expectation(column).replace('0 to', 'up to')}` });
}

function readTapes(
  matrix: Matrix | null | undefined,
  headerRow: number | undefined,
  problems: Issue[],
): Result<ReadonlyMap<string, Tape> | undefined> {
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
    tapes.set(name.toLowerCase(), {
      stripInches: numberOr(row.values.get('strip'), fallback.stripInches),
      gsm: numberOr(row.values.get('gsm'), fallback.gsm),
      thicknessInches: numberOr(row.values.get('thickness'), fallback.thicknessInches),
    });
  }
  return ok(tapes);
}

function settingsFrom(values: Values, tapes: ReadonlyMap<string, Tape> | undefined, problems: Issue[]): ShopSettings {
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
    lowerTapeStartInches: number('lowerTapeStart', usual.lowerTapeStartInches),
    oldSpreadGrams: number('oldSpread', usual.oldSpreadGrams),
    newSpreadGrams: number('newSpread', usual.newSpreadGrams),
    balanceSpreadInches: number('balanceSpread', usual.balanceSpreadInches),
    readingSpreadPoints: number('readingSpread', usual.readingSpreadPoints),
    tapeSpread: number('tapeSpread', usual.tapeSpread * 100) / 100,
    competition46: yes('competition46', usual.competition46),
  };
}

function numberOr(value: FieldValue | undefined, fallback: number): number {
  return typeof value === 'number' ? value : fallback;
}
