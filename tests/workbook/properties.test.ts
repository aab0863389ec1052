import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Choices } from '../../src/workbook/choices';
import { fillPlan } from '../../src/workbook/fillPlan';
import type { FillRequest } from '../../src/workbook/outcomes';
import { PLAN_COLUMNS } from '../../src/workbook/planCells';
import { HEAD_ROWS } from '../../src/workbook/planSheet';
import type { Seen } from '../../src/workbook/port';
import { CLUBS } from '../../src/workbook/schema';
import { readShop } from '../../src/workbook/shop';
import { undoLast } from '../../src/workbook/undo';
import type { MemoryPort } from './memoryPort';
import { CLUB_ROWS, workshop } from './workshop';

const CHOICE_COLUMNS = new Set(
  ['newItem', 'layers', 'lowerLayers', 'targetDiameter', 'hold', 'target', 'tolerance', 'weighting'].map((key) =>
    CLUBS.columns.findIndex((column) => column.key === key),
  ),
);

/** A number as a person types it: a spreadsheet tells no more than fifteen digits apart. */
const measure = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((thousandths) => thousandths / 1000);

/** Left out, blanked or given. */
const decision = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null | undefined> =>
  fc.oneof(fc.constant(undefined), fc.constant(null), value);

const choices: fc.Arbitrary<Choices> = fc.record({
  newItem: decision(fc.constantFrom('FERN-M', 'MOSS-S', 'OAK-58', 'NOT-THERE', '=1+1')),
  layers: decision(fc.integer({ min: -1, max: 13 })),
  lowerLayers: decision(fc.integer({ min: 0, max: 4 })),
  targetDiameter: decision(measure(0.5, 2)),
  hold: decision(fc.constantFrom('As it was', 'Target', 'Nothing', 'Whatever')),
  target: decision(fc.oneof(fc.constantFrom('D2', 'E9', 'x'), measure(-80, 80))),
  tolerance: decision(measure(0, 20)),
  weighting: decision(fc.constantFrom('Lead tape', 'Tip plug', 'Magic')),
});

const scope: fc.Arbitrary<FillRequest['scope']> = fc.oneof(
  fc.constantFrom({ job: '1042' }, { job: '1043' }),
  fc.uniqueArray(fc.integer({ min: 1, max: CLUB_ROWS.length }), { minLength: 1 }).map((rows) => ({ rows })),
);

const request: fc.Arbitrary<FillRequest> = fc.record({
  scope,
  choices,
  where: fc.constantFrom('planSheet', 'openSheet'),
  as: fc.constantFrom('live', 'values'),
});

function clubRows(port: MemoryPort): readonly (readonly Seen[])[] {
  return port.tableSeen('Clubs')?.rows ?? [];
}

/** Everything outside Clubs and the plan. */
function elsewhere(port: MemoryPort, planSheet: string): unknown {
  const { filled } = port.content() as { filled: [string, unknown][] };
  return filled.filter(([sheet]) => sheet !== 'Clubs' && sheet !== planSheet);
}

describe('whatever is chosen', () => {
  test('nothing is touched but the choice columns of the clubs concerned and the plan’s own block', async () => {
    await fc.assert(
      fc.asyncProperty(request, async (asked) => {
        const port = await workshop();
        port.selected = { sheet: 'Sheet1', row: 2, column: 1, rows: 1, columns: 1 };
        port.type('Sheet1', 0, 0, 'above');
        const before = clubRows(port);
        const restBefore = port.copy();
        const end = await fillPlan(port, await readShop(port), asked);
        if (!end.done) throw new Error(`not filled: ${end.reason}`);
        const concerned = new Set(
          'rows' in asked.scope ? asked.scope.rows : asked.scope.job === '1042' ? [1, 2, 3] : [4],
        );
        clubRows(port).forEach((row, i) =>
          row.forEach((cell, column) => {
            if (!(concerned.has(i + 1) && CHOICE_COLUMNS.has(column))) expect(cell).toBe(before[i]?.[column]);
          }),
        );
        expect(elsewhere(port, end.sheet)).toEqual(elsewhere(restBefore, end.sheet));
        const { row, column } = end.block;
        const around = port.blockSeen({
          sheet: end.sheet,
          row: 0,
          column: 0,
          rows: row + 40,
          columns: column + PLAN_COLUMNS.length + 3,
        });
        const strays = around.values.flatMap((line, down) =>
          line.flatMap((cell, across) => {
            const inside =
              down >= row &&
              down < row + HEAD_ROWS + 1 + end.clubs &&
              across >= column &&
              across < column + PLAN_COLUMNS.length;
            return cell === null || inside ? [] : [cell];
          }),
        );
        expect(strays).toEqual(end.sheet === 'Sheet1' ? ['above'] : []);
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  test('taking back restores everything, fill by fill', async () => {
    await fc.assert(
      fc.asyncProperty(request, request, async (one, two) => {
        const port = await workshop();
        port.selected = { sheet: 'Sheet1', row: 2, column: 1, rows: 1, columns: 1 };
        const start = port.content();
        await fillPlan(port, await readShop(port), one);
        const first = port.content();
        port.selected = { sheet: 'Sheet1', row: 60, column: 1, rows: 1, columns: 1 };
        const end = await fillPlan(port, await readShop(port), two);
        if (end.done) {
          expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
          // The name of a plan that was rewritten keeps its new size.
          expect(withoutNames(port.content())).toEqual(withoutNames(first));
        } else {
          expect(port.content()).toEqual(first);
          await undoLast(port);
          expect(port.content()).toEqual(start);
        }
      }),
      { numRuns: 40 },
    );
  }, 120_000);

  test('a failure at any step leaves the workbook as it was', async () => {
    await fc.assert(
      fc.asyncProperty(request, fc.integer({ min: 1, max: 110 }), async (asked, step) => {
        const port = await workshop();
        const before = port.everything();
        port.failing = new Set([step]);
        const end = await fillPlan(port, await readShop(port), asked);
        if (end.done) expect(step).toBeGreaterThan(port.asked.length + 1);
        else expect(port.everything()).toEqual(before);
      }),
      { numRuns: 60 },
    );
  }, 120_000);
});

function withoutNames(content: unknown): unknown {
  return { ...(content as object), names: null };
}
