/** A small embedded spreadsheet for tests, with invented functions that show what they were handed. */
import type { FunctionMetadata, FunctionOptions, Implementation } from '../../src/workbook/embedded/functions';
import type { SheetSnapshot } from '../../src/workbook/embedded/snapshot';
import type { Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { createHeadless } from '../../src/workbook/embedded/spreadsheet';
import { readCells, worksheetNamed } from '../../src/workbook/embedded/cells';
import { blockOf } from '../../src/workbook/shared/address';
import type { Seen } from '../../src/workbook/port';

export function describeFunction(id: string, parameters: readonly string[]): FunctionMetadata {
  return {
    id,
    name: id,
    description: `What ${id} does.`,
    parameters: parameters.map((name) => ({
      name: name.replace(/[?]|\[\]/g, ''),
      description: `The ${name}.`,
      optional: name.includes('?'),
      type: 'any',
      ...(name.includes('[]') && { dimensionality: 'matrix' }),
    })),
  };
}

export interface TestFunctions extends FunctionOptions {
  readonly functions?: Readonly<Record<string, { readonly takes: readonly string[]; readonly does: Implementation }>>;
}

export async function openSheet(sheets: readonly SheetSnapshot[], given: TestFunctions = {}): Promise<Spreadsheet> {
  const { functions = {}, ...options } = given;
  const spreadsheet = await createHeadless({
    sheets,
    functions: {
      ...options,
      metadata: Object.entries(functions).map(([id, { takes }]) => describeFunction(id, takes)),
      implementations: Object.fromEntries(Object.entries(functions).map(([id, { does }]) => [id, does])),
    },
  });
  await spreadsheet.settled();
  return spreadsheet;
}

/** Values at an address such as `Shop!B2:C3`. */
export function valuesAt(spreadsheet: Spreadsheet, address: string): Seen[][] {
  const at = blockOf(address);
  const worksheet = at && worksheetNamed(spreadsheet, at.sheet);
  if (!at || !worksheet) throw new Error(`no such place: ${address}`);
  return readCells(spreadsheet, worksheet, at).values;
}

export function valueAt(spreadsheet: Spreadsheet, address: string): Seen {
  return valuesAt(spreadsheet, address)[0]?.[0] ?? null;
}

/** Types into a cell the way a person does: the spreadsheet decides what it is. */
export async function type(
  spreadsheet: Spreadsheet,
  sheet: string,
  cell: string,
  entry: string | number,
): Promise<void> {
  const isFormula = typeof entry === 'string' && entry.startsWith('=');
  spreadsheet.workbook
    .getSheetByName(sheet)
    ?.getRange(cell)
    .setValue(isFormula ? { f: entry } : entry);
  await spreadsheet.settled();
}
