import { describe, expect, it } from 'vitest';
import { CAP_THICKNESS, DEFAULT_WAYS, RANGES, TAPE_THICKNESS, TAPED_LENGTH } from '../../src/core/index';
import { planTables } from '../../src/workbook/planTables';
import {
  CLUBS,
  columnOf,
  SETTING_ROWS,
  STARTING_WEIGHTS,
  STOCK,
  TAPE,
  WEIGHTS,
  type TableSchema,
} from '../../src/workbook/schema';

describe('what a new workbook holds is what the core takes by default', () => {
  // settings and tapes: readSettings.test.ts
  it('ways of putting weight on', () => {
    const weights = [WEIGHTS.columns.map(({ header }) => header), ...STARTING_WEIGHTS];
    const planned = planTables({ clubs: [['Club'], ['7 iron']], weights });
    expect(planned.ok && planned.value.input.ways).toEqual(DEFAULT_WAYS);
    expect(planned.ok && planned.value.problems).toEqual([]);
  });
});

describe('what a table accepts', () => {
  it.each<[TableSchema, string, { low: number; high: number }]>([
    [STOCK, 'core', RANGES.coreInches],
    [STOCK, 'mass', RANGES.gripGrams],
    [STOCK, 'length', RANGES.gripLengthInches],
    [STOCK, 'balance', RANGES.gripBalanceInches],
    [CLUBS, 'length', RANGES.clubInches],
    [CLUBS, 'butt', RANGES.buttInches],
    [CLUBS, 'mass', RANGES.clubGrams],
    [CLUBS, 'oldMass', RANGES.gripGrams],
    [CLUBS, 'oldBalance', RANGES.gripBalanceInches],
    [CLUBS, 'layers', RANGES.layers],
    [CLUBS, 'lowerLayers', RANGES.layers],
    [CLUBS, 'oldLayers', RANGES.layers],
    [CLUBS, 'lengthChange', RANGES.addedInches],
    [CLUBS, 'plug', RANGES.plugGrams],
    [TAPE, 'strip', RANGES.stripInches],
    [TAPE, 'gsm', RANGES.gsm],
    [TAPE, 'thickness', TAPE_THICKNESS],
  ])('%#, %s: what the core accepts', (schema, key, { low, high }) => {
    expect(columnOf(schema, key)).toMatchObject({ low, high });
  });

  it.each<[TableSchema, string, { low: number; high: number }]>([
    // 0 is a blank there
    [STOCK, 'cap', RANGES.capInches],
    [CLUBS, 'oldCap', RANGES.capInches],
    // of a grip on its own core, and of a body that can be weighed alone
    [STOCK, 'upperDiameter', RANGES.diameterInches],
    [STOCK, 'lowerDiameter', RANGES.diameterInches],
    [CLUBS, 'targetDiameter', RANGES.diameterInches],
    [CLUBS, 'bareMass', RANGES.bodyGrams],
  ])('%#, %s: nothing that the core would not', (schema, key, range) => {
    const { low = -Infinity, high = Infinity } = columnOf(schema, key);
    expect(low).toBeGreaterThanOrEqual(range.low);
    expect(high).toBeLessThanOrEqual(range.high);
  });

  it('and settings likewise', () => {
    const setting = (key: string) => SETTING_ROWS.find((row) => row.key === key);
    expect(setting('tapedLength')).toMatchObject({ low: TAPED_LENGTH.low, high: TAPED_LENGTH.high });
    expect(setting('cap')).toMatchObject({ low: CAP_THICKNESS.low, high: CAP_THICKNESS.high });
  });
});
