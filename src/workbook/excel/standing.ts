import type { Block, Change, Receipt } from '../port';
import { blockOf, fixed, sameName } from '../shared/address';
import type { Standing } from '../shared/receipt';

/** What stands in the workbook, as far as the last round trip told. */
export interface Stood extends Omit<Standing, 'placeOf'> {
  readonly protectedSheets: readonly string[];
  readonly visibleSheets: readonly string[];
  /** Where each name points, as a formula. */
  readonly nameFormulas: ReadonlyMap<string, string>;
}

/** Asks what stands in the workbook; the answer can be had after the round trip, `null` if the host gave none. */
export function askStanding({ workbook }: Excel.RequestContext): () => Stood | null {
  const sheets = workbook.worksheets.load('items/name,items/visibility,items/protection/protected');
  const tables = workbook.tables.load('items/name');
  const names = workbook.names.load('items/name,items/formula');
  return () => {
    try {
      return {
        sheets: sheets.items.map((sheet) => sheet.name),
        protectedSheets: sheets.items.filter((sheet) => sheet.protection.protected).map((sheet) => sheet.name),
        visibleSheets: sheets.items.filter((sheet) => sheet.visibility === 'Visible').map((sheet) => sheet.name),
        tables: tables.items.map((table) => table.name),
        names: names.items.map((item) => item.name),
        nameFormulas: new Map(names.items.map((item) => [item.name.toLowerCase(), String(item.formula)])),
      };
    } catch {
      // A failed request need not carry answers; then nothing is loaded.
      return null;
    }
  };
}

/** Where a name points. */
export function placeIn({ nameFormulas }: Stood, name: string): Block | null {
  return blockOf(nameFormulas.get(name.toLowerCase()) ?? '');
}

export function holds(names: readonly string[], name: string): boolean {
  return names.some((other) => sameName(other, name));
}

/** What stands after changes that went through. */
export function afterwards(stood: Stood, receipt: Receipt, changes: readonly Change[]): Stood {
  const placed = changes.flatMap((change) => (change.do === 'name' ? [change] : []));
  const formulas = placed.map(({ name, at }) => [name.toLowerCase(), `=${fixed(at)}`] as const);
  return {
    ...stood,
    sheets: [...stood.sheets, ...receipt.madeSheets],
    visibleSheets: [...stood.visibleSheets, ...receipt.madeSheets],
    tables: [...stood.tables, ...receipt.madeTables],
    names: [...stood.names, ...placed.map(({ name }) => name).filter((name) => !holds(stood.names, name))],
    nameFormulas: new Map([...stood.nameFormulas, ...formulas]),
  };
}
