import { describe, expect, test } from 'vitest';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { dressBody, dressSheet, HEAD_ROWS } from '../../src/workbook/planSheet';
import type { Cell } from '../../src/workbook/port';

const at = { sheet: 'Plan 7', row: 2, column: 1, rows: HEAD_ROWS + 3, columns: PLAN_COLUMNS.length };

function row(notes: string): Cell[] {
  return PLAN_COLUMNS.map(({ key }) => (key === 'notes' ? notes : null));
}

describe('row heights of a plan', () => {
  const headers: Cell[] = PLAN_COLUMNS.map(({ header }) => header);
  const plan = [headers, row(''), row('Strip and read it. '.repeat(8).trim())];
  const heights = dressBody(at, 2, plan, null).flatMap((change) =>
    change.do === 'format' && change.format.height !== undefined ? [[change.at.row, change.format.height]] : [],
  );

  test('the header row is as high as its longest heading needs; a row without long text is left alone', () => {
    const header = heights.find(([where]) => where === at.row + HEAD_ROWS);
    // "Inertia change (kg·cm²)" breaks into three lines of at most nine letters: 3 × 15 points
    expect(header?.[1]).toBeGreaterThanOrEqual(45);
    expect(heights.some(([where]) => where === at.row + HEAD_ROWS + 1)).toBe(false);
  });

  test('a long note makes its row higher: 151 letters at 46 a line are four lines of 15 points', () => {
    expect(heights).toContainEqual([at.row + HEAD_ROWS + 2, 60]);
  });
});

test('printing takes whole columns of the bench part, so that a club added later is on the paper too', () => {
  const page = dressSheet({ ...at, row: 0, column: 0 }).find((change) => change.do === 'page');
  const bench = PLAN_COLUMNS.filter((column) => column.bench).length;
  expect(page).toMatchObject({
    setup: {
      area: { row: 0, rows: 1_048_576, columns: bench },
      titleRows: { row: HEAD_ROWS, rows: 1 },
      footer: 'Regrip plan',
    },
  });
});

test('the club stays in sight whatever is looked at further right, and the answer stands in the first view', () => {
  const changes = dressSheet({ ...at, row: 0, column: 0 });
  expect(changes).toContainEqual({ do: 'freezeRows', sheet: at.sheet, rows: 0, columns: 1 });
  const answer = PLAN_COLUMNS.findIndex(({ key }) => key === 'verdictAfter');
  const letters = PLAN_COLUMNS.slice(0, answer + 1).reduce((sum, { width }) => sum + width, 0);
  // Pixels, measured on the try-out page 1280 wide: 884 for cells, of which a column takes 9 a letter and 18 around them.
  expect(letters * 9 + (answer + 1) * 18).toBeLessThanOrEqual(884);
});
