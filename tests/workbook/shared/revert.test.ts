/** Plans for taking back a plan of many clubs: what a person changed since is left and named, all of it and nothing else. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BlockSeen, Receipt } from '../../../src/workbook/port';
import { addressOf, sheetInFormula } from '../../../src/workbook/shared/address';
import { planRevert, planRevertSteps } from '../../../src/workbook/shared/revert';
import type { Now } from '../../../src/workbook/shared/revert';

const ROWS = 1000;
const COLUMNS = 50;
const at = { sheet: 'Plan big', row: 2, column: 1, rows: ROWS, columns: COLUMNS };

const put = Array.from({ length: ROWS }, (_, down) =>
  Array.from({ length: COLUMNS }, (_cell, across) => down + across / 8),
);

const receipt: Receipt = {
  label: 'Plan',
  written: [{ at, before: put.map((line) => line.map(() => null)), put }],
  madeSheets: ['Plan big'],
  madeTables: [],
  madeNames: [],
  movedNames: [],
  dressed: [
    { at: { ...at, rows: 1 }, looks: ['bold'] },
    { at: { ...at, row: at.row + 1, rows: ROWS - 1 }, looks: ['number'] },
  ],
};

/** The workbook with some cells of the plan changed since, by their number. */
function nowWith(changed: ReadonlySet<number>): Now {
  const seen: BlockSeen = {
    at,
    values: put.map((line, down) =>
      line.map((value, across) => (changed.has(down * COLUMNS + across) ? 'mine' : value)),
    ),
    formulas: put.map((line) => line.map(() => null)),
    ...{ sheetExists: true, protected: false, merged: [], tables: [] },
  };
  return {
    blocks: [seen],
    widened: [],
    allSheets: ['Plan big', 'Clubs'],
    tables: [],
    sheets: [{ name: 'Plan big', used: seen, tables: [], keep: false }],
    names: [],
    placeOf: () => null,
  };
}

function nameOf(cell: number): string {
  const place = { row: at.row + Math.floor(cell / COLUMNS), column: at.column + (cell % COLUMNS), rows: 1, columns: 1 };
  return `${sheetInFormula(at.sheet)}!${addressOf(place)}`;
}

describe('taking back a plan of a thousand clubs', () => {
  it('that nobody touched takes the sheet away', () => {
    const plan = planRevert(receipt, nowWith(new Set()));
    expect(plan).toMatchObject({ deleteSheets: ['Plan big'], left: [], puts: [], restored: ROWS * COLUMNS });
  });

  it('in which every other row was changed leaves just these cells, the sheet, and looks where none of them is', () => {
    // Every other row, so that no two of them are named together.
    const changed = Array.from({ length: ROWS / 2 }, (_, i) => (2 * i + 1) * COLUMNS + 7);
    const plan = planRevert(receipt, nowWith(new Set(changed)));
    expect(plan.left).toEqual(changed.map(nameOf));
    expect(plan.deleteSheets).toEqual([]);
    expect(plan.restored).toBe(ROWS * COLUMNS - changed.length);
    const [block] = plan.puts;
    const leftAlone = block?.cells.flatMap((line, down) =>
      line.flatMap((cell, across) => (cell === undefined ? [down * COLUMNS + across] : [])),
    );
    expect(leftAlone).toEqual(changed);
    expect(plan.undress).toEqual(receipt.dressed.slice(0, 1));
  });

  it('restores each cell but those that were changed, whichever they are', () => {
    const cells = fc.uniqueArray(fc.integer({ min: 0, max: ROWS * COLUMNS - 1 }), { minLength: 1, maxLength: 300 });
    fc.assert(
      fc.property(cells, (changed) => {
        const { restored, deleteSheets, puts } = planRevert(receipt, nowWith(new Set(changed)));
        expect(restored).toBe(ROWS * COLUMNS - changed.length);
        expect(deleteSheets).toEqual([]);
        const leftAlone = puts[0]?.cells.flat().filter((cell) => cell === undefined).length;
        expect(leftAlone).toBe(changed.length);
      }),
      { numRuns: 5 },
    );
  });

  it('goes in steps of some thousand cells, whether cells were changed or not', () => {
    for (const changed of [new Set<number>(), new Set(Array.from({ length: 5000 }, (_, i) => 3 * i))]) {
      let steps = 0;
      for (const _step of planRevertSteps(receipt, nowWith(changed))) steps += 1;
      // Each cell is looked at twice at least: whether it was changed, and what is to be put.
      expect(steps).toBeGreaterThanOrEqual((2 * ROWS * COLUMNS) / 5000);
    }
  });
});
