import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { drained } from '../../src/core/index';
import { PortError } from '../../src/workbook/port';
import { named } from '../../src/workbook/shared/address';
import { keptReceiptSteps } from '../../src/workbook/shared/packed';
import type { Block, BlockSeen, Cell, Change, Put, Receipt, TableSeen, WorkbookPort } from '../../src/workbook/port';

/** What a person does in the workbook, not through the port. */
export interface Person {
  /** Enters a value as such: a text stays that text. */
  type(sheet: string, row: number, column: number, value: Cell): void | Promise<void>;
  /** Enters a formula, `=1+1`. */
  typeFormula(sheet: string, row: number, column: number, formula: string): void | Promise<void>;
  select(at: Block): void | Promise<void>;
  protect(sheet: string): void | Promise<void>;
  merge(at: Block): void | Promise<void>;
  /** Hides rows of a table by a filter. */
  filter(table: string): void | Promise<void>;
  deleteSheet(sheet: string): void | Promise<void>;
}

/** A fresh workbook with one empty sheet. */
export interface Bench {
  readonly port: WorkbookPort;
  readonly person: Person;
  /** The name of the sheet that is there. */
  readonly sheet: string;
  dispose?(): void | Promise<void>;
}

export const block = (sheet: string, row: number, column: number, rows: number, columns: number): Block => ({
  sheet,
  row,
  column,
  rows,
  columns,
});

export const write = (sheet: string, row: number, column: number, cells: readonly (readonly Put[])[]): Change => ({
  do: 'write',
  at: block(sheet, row, column, cells.length, cells[0]?.length ?? 0),
  cells,
});

/** Looks at blocks, as whoever writes has to. */
export function look(port: WorkbookPort, ...blocks: Block[]): Promise<BlockSeen[]> {
  return port.read(blocks.map((at) => ({ read: 'block', at }) as const)) as unknown as Promise<BlockSeen[]>;
}

/** Looks at the written and tabled blocks of changes, then makes the changes. */
export async function make(port: WorkbookPort, changes: readonly Change[], receiptKey?: string): Promise<Receipt> {
  const blocks = changes.flatMap((change) => (change.do === 'write' || change.do === 'table' ? [change.at] : []));
  return port.apply(changes, await look(port, ...blocks), { label: 'Fill', receiptKey });
}

export async function valuesOf(port: WorkbookPort, at: Block): Promise<BlockSeen['values']> {
  const [seen] = await look(port, at);
  return seen?.values ?? [];
}

async function tableOf(port: WorkbookPort, table: string): Promise<TableSeen> {
  const [seen] = await port.read([{ read: 'table', table }]);
  if (!seen) throw new Error(`there is no table ${table}`);
  return seen;
}

async function refusal(work: Promise<unknown>): Promise<PortError> {
  const error: unknown = await work.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  if (!(error instanceof PortError)) throw new Error(`expected a PortError, got ${String(error)}`);
  return error;
}

/** Parts of a format that changes give a block. */
function looksOf(changes: readonly Change[], at: Block): string[] {
  return changes.flatMap((change) => (change.do === 'format' && change.at === at ? Object.keys(change.format) : []));
}

const clubs: readonly (readonly Put[])[] = [
  ['Club', 'Mass (g)', 'Due', 'Done', 'Notes'],
  ['007', 46.5, 45_992, true, '=x'],
  ['+1', -2, 0, false, null],
  ['3-4', 1e-7, 45_992.5, true, 'TRUE'],
];

const makeClubs: readonly Change[] = [
  { do: 'sheet', name: 'Clubs' },
  write('Clubs', 0, 0, clubs),
  { do: 'table', name: 'Clubs', at: block('Clubs', 0, 0, 4, 5) },
];

/** What every port has to do, told by what can be read back through it. */
export function structureSuite(name: string, makeBench: () => Bench | Promise<Bench>): void {
  describe(name, () => {
    let bench: Bench;
    let port: WorkbookPort;
    beforeEach(async () => {
      bench = await makeBench();
      port = bench.port;
    });
    afterEach(() => bench.dispose?.());

    describe('reading', () => {
      it('answers every query in order, whatever exists', async () => {
        const nowhere = block('Nowhere', 2, 1, 2, 3);
        const [sheets, table, seen, place] = await port.read([
          { read: 'sheets' },
          { read: 'table', table: 'Clubs' },
          { read: 'block', at: nowhere },
          { read: 'name', name: 'Plan_1' },
        ]);
        expect(sheets).toEqual([{ name: bench.sheet, protected: false }]);
        expect(table).toBeNull();
        expect(seen.at).toEqual(nowhere);
        expect(seen.sheetExists).toBe(false);
        expect(seen.values).toEqual([
          [null, null, null],
          [null, null, null],
        ]);
        expect(seen.formulas).toEqual(seen.values);
        expect(place).toEqual({ name: 'Plan_1', at: null });
      });

      it('answers no queries with nothing', async () => {
        expect(await port.read([])).toEqual([]);
      });

      it('tells blanks, text, numbers and truth values apart', async () => {
        const { person, sheet } = bench;
        await person.type(sheet, 0, 0, '12');
        await person.type(sheet, 0, 1, 12);
        await person.type(sheet, 0, 2, false);
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 4))).toEqual([['12', 12, false, null]]);
      });

      it('shows formulas where there are some', async () => {
        await bench.person.typeFormula(bench.sheet, 1, 1, '=1+1');
        const [seen] = await look(port, block(bench.sheet, 0, 0, 2, 2));
        expect(seen?.formulas).toEqual([
          [null, null],
          [null, '=1+1'],
        ]);
      });

      it('says what stands in the way of a block', async () => {
        await make(port, makeClubs);
        await bench.person.merge(block('Clubs', 10, 0, 2, 2));
        const [near, far] = await look(port, block('Clubs', 3, 0, 9, 1), block('Clubs', 20, 0, 1, 1));
        expect(near).toMatchObject({ tables: ['Clubs'], merged: [block('Clubs', 10, 0, 2, 2)], protected: false });
        expect(far).toMatchObject({ tables: [], merged: [] });
      });
    });

    describe('what a workbook holds', () => {
      it('tells each sheet’s used cells and tables', async () => {
        await make(port, [
          ...makeClubs,
          { do: 'sheet', name: 'Größen ’n’ more' },
          write('Größen ’n’ more', 4, 2, [['x', 1]]),
        ]);
        const [contents, place] = await port.read([{ read: 'contents' }, { read: 'name', name: 'None' }]);
        const clubsAt = block('Clubs', 0, 0, clubs.length, clubs[0]?.length ?? 0);
        expect(contents).toEqual([
          { name: bench.sheet, used: null, tables: [] },
          { name: 'Clubs', used: clubsAt, tables: [{ name: 'Clubs', at: clubsAt }] },
          { name: 'Größen ’n’ more', used: block('Größen ’n’ more', 0, 0, 5, 4), tables: [] },
        ]);
        expect(place.at).toBeNull();
      });
    });

    describe('sheets and tables', () => {
      it('makes the sheets that are missing and no other', async () => {
        const changes: Change[] = [
          { do: 'sheet', name: bench.sheet },
          { do: 'sheet', name: "Bob's räcke" },
          { do: 'sheet', name: "Bob's räcke" },
          { do: 'sheet', name: 'Check-in 2' },
        ];
        const receipt = await port.apply(changes, await look(port, block("Bob's räcke", 0, 0, 1, 1)), {
          label: 'Sheets',
        });
        const [sheets] = await port.read([{ read: 'sheets' }]);
        expect(sheets.map((sheet) => sheet.name)).toEqual([bench.sheet, "Bob's räcke", 'Check-in 2']);
        expect(receipt.madeSheets).toEqual(["Bob's räcke", 'Check-in 2']);
      });

      it('reads and writes a sheet whose name has an apostrophe and letters beyond English', async () => {
        const sheet = "Bob's räcke";
        await make(port, [{ do: 'sheet', name: sheet }, write(sheet, 3, 2, [['Größe', 1]])]);
        await make(port, [{ do: 'name', name: 'Bobs_place', at: block(sheet, 3, 2, 1, 2) }]);
        expect(await valuesOf(port, block(sheet, 3, 2, 1, 2))).toEqual([['Größe', 1]]);
        const [place] = await port.read([{ read: 'name', name: 'Bobs_place' }]);
        expect(place.at).toEqual(block(sheet, 3, 2, 1, 2));
      });

      it('lays a table and reads back what was put: texts stay texts', async () => {
        const receipt = await make(port, makeClubs);
        const table = await tableOf(port, 'clubs');
        expect(table.name).toBe('Clubs');
        expect(table.at).toEqual(block('Clubs', 0, 0, 4, 5));
        expect(table.headers).toEqual(clubs[0]);
        expect(table.rows).toEqual(clubs.slice(1));
        expect(table).toMatchObject({ protected: false, filtered: false });
        expect(table.formulas).toBeUndefined();
        expect(receipt.madeTables).toEqual(['Clubs']);
      });

      it('gives a table of headers alone one blank row', async () => {
        const at = block('Stock', 0, 0, 2, 2);
        const changes: Change[] = [
          { do: 'sheet', name: 'Stock' },
          write('Stock', 0, 0, [['Item', 'Size']]),
          { do: 'table', name: 'Stock', at: { ...at, rows: 1 } },
        ];
        await port.apply(changes, await look(port, at), { label: 'Set up' });
        const table = await tableOf(port, 'Stock');
        expect(table.at).toEqual(at);
        expect(table.rows).toEqual([[null, null]]);
      });

      it('leaves a table alone that stands there just so', async () => {
        await make(port, makeClubs);
        const table = await tableOf(port, 'Clubs');
        const again: Change = { do: 'table', name: 'Clubs', at: table.at };
        const receipt = await port.apply([again], [table], { label: 'Set up' });
        expect(receipt).toMatchObject({ madeTables: [], written: [], dressed: [] });
        expect(await tableOf(port, 'Clubs')).toEqual(table);
      });

      it('shows the formulas of a table', async () => {
        await make(port, makeClubs);
        await bench.person.typeFormula('Clubs', 2, 1, '=1+1');
        const table = await tableOf(port, 'Clubs');
        expect(table.formulas?.map((line) => line[1])).toEqual([null, '=1+1', null]);
      });

      it.each([
        '007',
        '=x',
        '+1',
        '-1',
        '@x',
        "'quoted",
        "''",
        '#N/A',
        'true',
        ' 12',
        '1/2',
        '12:30',
        '50%',
        'Mar 5',
        '1E5',
        'a,b',
        'two\nlines',
      ])('keeps the text %j', async (text) => {
        await make(port, [write(bench.sheet, 0, 0, [[text]])]);
        const [seen] = await look(port, block(bench.sheet, 0, 0, 1, 1));
        expect(seen?.values).toEqual([[text]]);
        expect(seen?.formulas).toEqual([[null]]);
      });
    });

    describe('writing', () => {
      it('leaves a cell alone for undefined and blanks it for null', async () => {
        const { sheet } = bench;
        await make(port, [write(sheet, 0, 0, [['a', 'b', 'c']])]);
        const receipt = await make(port, [write(sheet, 0, 0, [[undefined, null, 'd']])]);
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 3))).toEqual([['a', null, 'd']]);
        expect(receipt.written).toEqual([
          { at: block(sheet, 0, 0, 1, 3), before: [['a', 'b', 'c']], put: [[{ skip: true }, null, 'd']] },
        ]);
      });

      it('does nothing for a block of nothing but undefined, looked at or not', async () => {
        const receipt = await port.apply([write(bench.sheet, 0, 0, [[undefined], [undefined]])], [], { label: 'None' });
        expect(receipt.written).toEqual([]);
      });

      it('makes changes in their order: what is put later wins', async () => {
        const { sheet } = bench;
        const changes = [write(sheet, 0, 0, [['a', 'b']]), write(sheet, 0, 1, [['c']])];
        const receipt = await make(port, changes);
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 2))).toEqual([['a', 'c']]);
        await port.revert(receipt);
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 2))).toEqual([[null, null]]);
      });

      it('fills 2,000 rows', async () => {
        const rows = Array.from({ length: 2000 }, (_, i): Put[] => [i, `club ${i}`, i % 2 === 0, null, i / 7]);
        await make(port, [{ do: 'sheet', name: 'Plan' }, write('Plan', 1, 0, rows)]);
        expect(await valuesOf(port, block('Plan', 1, 0, 2000, 5))).toEqual(rows);
      });

      it('writes inside a table that was looked at', async () => {
        await make(port, makeClubs);
        const table = await tableOf(port, 'Clubs');
        await port.apply([write('Clubs', 2, 1, [[48]])], [table], { label: 'Mass' });
        expect((await tableOf(port, 'Clubs')).rows[1]?.[1]).toBe(48);
      });

      it('refuses numbers that no cell can hold', async () => {
        const seen = await look(port, block(bench.sheet, 0, 0, 1, 1));
        await expect(port.apply([write(bench.sheet, 0, 0, [[Number.NaN]])], seen, { label: 'x' })).rejects.toThrow(
          /A1.*NaN/,
        );
      });
    });

    describe('refusing before anything is written', () => {
      const before: Change = { do: 'sheet', name: 'Made first' };

      async function expectUntouched(error: PortError, code: PortError['code'], ...cells: string[]): Promise<void> {
        expect(error.code).toBe(code);
        expect(error.cells).toEqual(cells);
        const [sheets] = await port.read([{ read: 'sheets' }]);
        expect(sheets.map((sheet) => sheet.name)).not.toContain('Made first');
      }

      it('cells that nobody looked at', async () => {
        await make(port, [{ do: 'sheet', name: 'Plan' }]);
        const seen = await look(port, block('Plan', 0, 0, 2, 2));
        const error = await refusal(
          port.apply(
            [
              before,
              write('Plan', 0, 1, [
                ['a', 'b'],
                ['c', 'd'],
              ]),
            ],
            seen,
            { label: 'x' },
          ),
        );
        await expectUntouched(error, 'notLookedAt', 'Plan!C1:C2');
      });

      it('cells into which a person typed since they were looked at', async () => {
        await make(port, [write(bench.sheet, 0, 0, [['was']])]);
        const seen = await look(port, block(bench.sheet, 0, 0, 2, 2));
        await bench.person.type(bench.sheet, 1, 1, '=mine');
        const puts = write(bench.sheet, 0, 0, [
          ['a', 'b'],
          ['c', 'd'],
        ]);
        const error = await refusal(port.apply([before, puts], seen, { label: 'x', receiptKey: 'kept' }));
        await expectUntouched(error, 'notLookedAt', named(block(bench.sheet, 1, 1, 1, 1)));
        expect(await valuesOf(port, block(bench.sheet, 0, 0, 2, 2))).toEqual([
          ['was', null],
          [null, '=mine'],
        ]);
        expect(await port.recall('kept')).toBeNull();
      });

      it('but not because a person typed into a cell between those that are written', async () => {
        const seen = await look(port, block(bench.sheet, 0, 0, 2, 3));
        await bench.person.type(bench.sheet, 0, 1, 'mine');
        await bench.person.type(bench.sheet, 1, 2, 'mine too');
        const puts = write(bench.sheet, 0, 0, [
          ['a', undefined, 'c'],
          ['d', null, undefined],
        ]);
        await port.apply([puts], seen, { label: 'x' });
        expect(await valuesOf(port, block(bench.sheet, 0, 0, 2, 3))).toEqual([
          ['a', 'mine', 'c'],
          ['d', null, 'mine too'],
        ]);
      });

      it('a row of a table that another one took the place of', async () => {
        const { sheet, person } = bench;
        await make(port, [
          write(sheet, 0, 0, [
            ['Club', 'New grip'],
            ['Driver', null],
            ['7 iron', null],
          ]),
          { do: 'table', name: 'Rack', at: block(sheet, 0, 0, 3, 2) },
        ]);
        const [table] = await port.read([{ read: 'table', table: 'Rack' }]);
        if (!table) throw new Error('no table');
        // As if sorted: the cells that would be written are blank before and after.
        await person.type(sheet, 1, 0, '7 iron');
        await person.type(sheet, 2, 0, 'Driver');
        const change = write(sheet, 1, 1, [['FERN-M']]);
        const error = await refusal(port.apply([before, change], [table], { label: 'x' }));
        await expectUntouched(error, 'notLookedAt', named(block(sheet, 1, 0, 1, 1)));
        expect(await valuesOf(port, block(sheet, 1, 1, 2, 1))).toEqual([[null], [null]]);
      });

      it('taking back on a sheet that is protected by then', async () => {
        const { sheet } = bench;
        const receipt = await make(port, [write(sheet, 0, 0, [['a']])]);
        await bench.person.protect(sheet);
        await expectUntouched(await refusal(port.revert(receipt)), 'protected', sheet);
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 1))).toEqual([['a']]);
      });

      it('a protected sheet', async () => {
        await make(port, [{ do: 'sheet', name: 'Plan' }]);
        await bench.person.protect('Plan');
        const [sheets] = await port.read([{ read: 'sheets' }]);
        expect(sheets.find((sheet) => sheet.name === 'Plan')?.protected).toBe(true);
        const error = await refusal(make(port, [before, write('Plan', 0, 0, [['a']])]));
        await expectUntouched(error, 'protected', 'Plan');
      });

      it('merged cells', async () => {
        await make(port, [{ do: 'sheet', name: 'Plan' }]);
        await bench.person.merge(block('Plan', 1, 1, 1, 2));
        const error = await refusal(
          make(port, [
            before,
            write('Plan', 0, 0, [
              ['a', 'b'],
              ['c', 'd'],
            ]),
          ]),
        );
        await expectUntouched(error, 'merged', 'Plan!B2:C2');
      });

      it('a filtered table', async () => {
        await make(port, makeClubs);
        await bench.person.filter('Clubs');
        const table = await tableOf(port, 'Clubs');
        expect(table.filtered).toBe(true);
        const error = await refusal(port.apply([before, write('Clubs', 1, 1, [[50]])], [table], { label: 'x' }));
        await expectUntouched(error, 'filtered', 'Clubs');
      });

      it('what crosses the edge of a table', async () => {
        await make(port, makeClubs);
        const [table, seen] = await port.read([
          { read: 'table', table: 'Clubs' },
          { read: 'block', at: block('Clubs', 3, 0, 2, 1) },
        ]);
        const looked = table ? [table, seen] : [];
        const error = await refusal(port.apply([before, write('Clubs', 3, 0, [['a'], ['b']])], looked, { label: 'x' }));
        await expectUntouched(error, 'tableInTheWay', 'Clubs');
      });

      it('what lies near a table whose edge nobody looked at', async () => {
        await make(port, makeClubs);
        const error = await refusal(make(port, [before, write('Clubs', 2, 0, [['a']])]));
        await expectUntouched(error, 'tableInTheWay', 'Clubs');
      });

      it('a table over a table', async () => {
        await make(port, makeClubs);
        const table = await tableOf(port, 'Clubs');
        const at = block('Clubs', 3, 0, 3, 2);
        const looked = [table, ...(await look(port, at))];
        const error = await refusal(port.apply([before, { do: 'table', name: 'Other', at }], looked, { label: 'x' }));
        await expectUntouched(error, 'tableInTheWay', 'Clubs');
      });

      it('a table of a name that another table has', async () => {
        await make(port, makeClubs);
        const at = block('Clubs', 10, 0, 3, 2);
        const error = await refusal(
          make(port, [
            before,
            write('Clubs', 10, 0, [
              ['a', 'b'],
              [1, 2],
              [3, 4],
            ]),
            { do: 'table', name: 'CLUBS', at },
          ]),
        );
        await expectUntouched(error, 'tableInTheWay', 'CLUBS');
      });
    });

    describe('names', () => {
      const place = async (name: string): Promise<Block | null> => (await port.read([{ read: 'name', name }]))[0].at;

      it('are placed, moved, and told in the receipt when new', async () => {
        const { sheet } = bench;
        const first = await make(port, [{ do: 'name', name: 'Plan_J1', at: block(sheet, 0, 0, 3, 2) }]);
        expect(await place('Plan_J1')).toEqual(block(sheet, 0, 0, 3, 2));
        const second = await make(port, [{ do: 'name', name: 'Plan_J1', at: block(sheet, 5, 1, 1, 1) }]);
        expect(await place('plan_j1')).toEqual(block(sheet, 5, 1, 1, 1));
        expect([first.madeNames, second.madeNames]).toEqual([['Plan_J1'], []]);
      });

      it('survive writing over their cells', async () => {
        const { sheet } = bench;
        await make(port, [write(sheet, 0, 0, [['a']]), { do: 'name', name: 'Plan_J1', at: block(sheet, 0, 0, 1, 1) }]);
        await make(port, [write(sheet, 0, 0, [['b']])]);
        expect(await place('Plan_J1')).toEqual(block(sheet, 0, 0, 1, 1));
      });

      it('point nowhere once their cells are gone', async () => {
        await make(port, [
          { do: 'sheet', name: 'Plan' },
          { do: 'name', name: 'Plan_J1', at: block('Plan', 0, 0, 1, 1) },
        ]);
        await bench.person.deleteSheet('Plan');
        expect(await place('Plan_J1')).toBeNull();
      });
    });

    describe('dressing', () => {
      it('shows a cell on request alone, and writes nothing', async () => {
        const { port } = bench;
        const at: Block = { ...block('Plan', 3, 2, 1, 1), sheet: bench.sheet };
        const receipt = await port.apply([{ do: 'show', at }], [], { label: 'Go to' });
        expect(receipt.written).toEqual([]);
        expect((await port.selection()).at).toEqual(at);
      });

      it('tells how wide columns are, where that is asked for', async () => {
        const { port } = bench;
        const at: Block = { sheet: 'Wide', row: 0, column: 1, rows: 2, columns: 3 };
        const looked = await port.read([{ read: 'block', at, widths: true }]);
        expect(looked[0].sheetExists).toBe(false);
        await port.apply(
          [
            { do: 'sheet', name: 'Wide' },
            { do: 'widths', sheet: 'Wide', column: 1, widths: [12, 40] },
          ],
          looked,
          { label: 'Widths' },
        );
        const [seen, plain] = await port.read([
          { read: 'block', at, widths: true },
          { read: 'block', at },
        ]);
        expect(seen.widths).toHaveLength(3);
        expect(seen.widths?.[0]).toBeCloseTo(12, 0);
        expect(seen.widths?.[1]).toBeCloseTo(40, 0);
        expect(plain.widths).toBeUndefined();
      });

      it('takes formats, widths, frozen rows, drop-downs, highlights and a place to show', async () => {
        const at = block('Plan', 0, 0, 4, 3);
        const changes: Change[] = [
          ...makeClubs,
          { do: 'sheet', name: 'Plan' },
          write('Plan', 0, 0, [['Club', 'Verdict', 'Grip']]),
          {
            do: 'format',
            at: { ...at, rows: 1 },
            format: { bold: true, fill: '#DDEBDD', ink: '#102010', wrap: true, rule: '#557755' },
          },
          { do: 'format', at, format: { number: '0.0', italic: false, size: 11, align: 'center', vertical: 'top' } },
          { do: 'widths', sheet: 'Plan', column: 0, widths: [12, 20] },
          { do: 'freezeRows', sheet: 'Plan', rows: 1 },
          { do: 'choices', at: block('Plan', 1, 1, 3, 1), from: ['within', 'out'], hint: 'within or out' },
          {
            do: 'choices',
            at: block('Plan', 1, 2, 3, 1),
            from: { table: 'Clubs', header: 'Mass (g)' },
            hint: 'from Clubs',
          },
          {
            do: 'highlight',
            at,
            rules: [{ column: 1, equals: ['out', '0'], fill: '#FFDDDD', ink: '#660000', bold: true }],
          },
          { do: 'show', at: block('Plan', 1, 0, 1, 1) },
        ];
        const receipt = await make(port, changes);
        expect(await valuesOf(port, block('Plan', 0, 0, 2, 3))).toEqual([
          ['Club', 'Verdict', 'Grip'],
          [null, null, null],
        ]);
        expect(receipt.dressed).toContainEqual({ at, looks: [...looksOf(changes, at), 'highlight'] });
        expect((await port.selection()).at).toEqual(block('Plan', 1, 0, 1, 1));
      });

      it('sets up the page where it can', async () => {
        const setup = {
          landscape: true,
          area: block(bench.sheet, 0, 0, 9, 3),
          titleRows: { row: 0, rows: 1 },
          footer: 'A & B',
        };
        const work = make(port, [{ do: 'page', sheet: bench.sheet, setup }]);
        if (port.capabilities.pageSetup) await expect(work).resolves.toBeDefined();
        else await work.catch((error: unknown) => expect(error).toMatchObject({ code: 'unsupported' }));
      });
    });

    describe('taking back', () => {
      it('restores values, blanks and formulas, and says how many', async () => {
        const { sheet, person } = bench;
        await person.type(sheet, 0, 0, 'mine');
        await person.typeFormula(sheet, 0, 1, '=1+1');
        await person.type(sheet, 1, 0, '007');
        const at = block(sheet, 0, 0, 2, 2);
        const [before] = await look(port, at);
        const receipt = await make(port, [
          write(sheet, 0, 0, [
            ['a', 2],
            ['b', null],
          ]),
        ]);
        expect(await port.revert(receipt)).toEqual({ label: 'Fill', restored: 4, left: [], notFound: [] });
        expect((await look(port, at))[0]).toEqual(before);
      });

      it('leaves and lists what a person changed since', async () => {
        const { sheet, person } = bench;
        const receipt = await make(port, [write(sheet, 4, 1, [['a'], ['b'], ['c'], ['d']])]);
        await person.type(sheet, 5, 1, 'mine');
        await person.typeFormula(sheet, 6, 1, '=1+1');
        const reverted = await port.revert(receipt);
        expect(reverted).toEqual({
          label: 'Fill',
          restored: 2,
          left: [expect.stringMatching(/!B6:B7$/)],
          notFound: [],
        });
        const [seen] = await look(port, block(sheet, 4, 1, 4, 1));
        expect(seen?.values[1]).toEqual(['mine']);
        expect(seen?.formulas).toEqual([[null], [null], ['=1+1'], [null]]);
        expect([seen?.values[0], seen?.values[3]]).toEqual([[null], [null]]);
      });

      it('does no harm when done twice', async () => {
        const { sheet } = bench;
        const receipt = await make(port, [write(sheet, 0, 0, [['a']])]);
        await port.revert(receipt);
        expect(await port.revert(receipt)).toMatchObject({ restored: 1, left: [] });
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 1))).toEqual([[null]]);
      });

      it('takes two changes back one after the other', async () => {
        const { sheet } = bench;
        const first = await make(port, [write(sheet, 0, 0, [['a', 'b']])]);
        const second = await make(port, [write(sheet, 0, 0, [['c', undefined]])]);
        await port.revert(second);
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 2))).toEqual([['a', 'b']]);
        await port.revert(first);
        expect(await valuesOf(port, block(sheet, 0, 0, 1, 2))).toEqual([[null, null]]);
      });

      it('takes away sheets, tables and names of ours', async () => {
        const receipt = await make(port, [
          ...makeClubs,
          { do: 'name', name: 'Clubs_place', at: block('Clubs', 0, 0, 4, 5) },
        ]);
        const reverted = await port.revert(receipt);
        expect(reverted).toEqual({ label: 'Fill', restored: 20, left: [], notFound: [] });
        const [sheets, table, place] = await port.read([
          { read: 'sheets' },
          { read: 'table', table: 'Clubs' },
          { read: 'name', name: 'Clubs_place' },
        ]);
        expect(sheets.map((sheet) => sheet.name)).toEqual([bench.sheet]);
        expect(table).toBeNull();
        expect(place.at).toBeNull();
      });

      it('turns a table back into blank cells on a sheet that was there', async () => {
        const { sheet } = bench;
        const at = block(sheet, 2, 1, 3, 2);
        const receipt = await make(port, [
          write(sheet, 2, 1, [
            ['Item', 'Size'],
            ['a', 1],
            ['b', 2],
          ]),
          { do: 'table', name: 'Stock', at },
        ]);
        expect(receipt.dressed).toEqual([{ at, looks: ['table'] }]);
        await port.revert(receipt);
        const [seen] = await look(port, at);
        expect(seen).toMatchObject({
          tables: [],
          values: [
            [null, null],
            [null, null],
            [null, null],
          ],
        });
      });

      it('keeps a sheet of ours on which a person wrote', async () => {
        const receipt = await make(port, [{ do: 'sheet', name: 'Plan' }, write('Plan', 0, 0, [['a']])]);
        await bench.person.type('Plan', 8, 8, 'mine');
        expect(await port.revert(receipt)).toMatchObject({ restored: 1, left: [] });
        expect(await valuesOf(port, block('Plan', 0, 0, 9, 9))).toEqual(
          Array.from({ length: 9 }, (_, i) =>
            Array.from({ length: 9 }, (_cell, j) => (i === 8 && j === 8 ? 'mine' : null)),
          ),
        );
      });

      it('keeps a table of ours in which a person wrote, with its headers', async () => {
        const receipt = await make(port, makeClubs);
        await bench.person.type('Clubs', 2, 1, 48);
        const reverted = await port.revert(receipt);
        expect(reverted.left).toEqual(['Clubs!B3']);
        const table = await tableOf(port, 'Clubs');
        expect(table.headers).toEqual(clubs[0]);
        expect(table.rows[1]).toEqual([null, 48, null, null, null]);
      });

      it('finds rows of a table by what they are called', async () => {
        await make(port, makeClubs);
        const table = await tableOf(port, 'Clubs');
        const of = { table: 'Clubs', by: ['Club', 'Done'] };
        const change: Change = { do: 'write', at: block('Clubs', 1, 1, 3, 1), cells: [[50], [51], [52]], of };
        const receipt = await port.apply([change], [table], { label: 'Fill' });
        // The first and the second row change places, and the third gets another name.
        const { type } = bench.person;
        for (const [row, name, mass, done] of [
          [1, '+1', 51, false],
          [2, '007', 50, true],
        ] as const) {
          await type('Clubs', row, 0, name);
          await type('Clubs', row, 1, mass);
          await type('Clubs', row, 3, done);
        }
        await type('Clubs', 3, 0, '3-5');
        expect(await port.revert(receipt)).toEqual({
          label: 'Fill',
          restored: 2,
          left: [],
          notFound: ['Clubs: 3-4, true'],
        });
        expect((await tableOf(port, 'Clubs')).rows.map((row) => row[1])).toEqual([-2, 46.5, 52]);
      });

      it('moves a name back, unless it was moved since', async () => {
        const { sheet } = bench;
        const place = async (): Promise<Block | null> => (await port.read([{ read: 'name', name: 'Plan_J1' }]))[0].at;
        const at = block(sheet, 0, 0, 3, 2);
        await make(port, [{ do: 'name', name: 'Plan_J1', at }]);
        const receipt = await make(port, [{ do: 'name', name: 'Plan_J1', at: { ...at, rows: 2 } }]);
        await port.revert(receipt);
        expect(await place()).toEqual(at);
        await make(port, [{ do: 'name', name: 'Plan_J1', at: { ...at, rows: 9 } }]);
        await port.revert(receipt);
        expect(await place()).toEqual({ ...at, rows: 9 });
      });

      it('names the block when its sheet is gone', async () => {
        const receipt = await make(port, [{ do: 'sheet', name: 'Plan' }, write('Plan', 0, 0, [['a', 'b']])]);
        await bench.person.deleteSheet('Plan');
        expect(await port.revert(receipt)).toEqual({ label: 'Fill', restored: 0, left: ['Plan!A1:B1'], notFound: [] });
      });
    });

    describe('calls', () => {
      const call: Put = { call: 'TOPOINTS', args: [{ literal: 'D3' }] };

      it('go in as formulas, are told in the receipt, and are taken back', async () => {
        const { sheet } = bench;
        const receipt = await make(port, [write(sheet, 0, 0, [['Points', call]])]);
        const [seen] = await look(port, block(sheet, 0, 0, 1, 2));
        expect(seen?.formulas).toEqual([[null, '=REGRIP.TOPOINTS("D3")']]);
        expect(receipt.written[0]?.put).toEqual([['Points', { call: 'TOPOINTS' }]]);
        expect(await port.revert(receipt)).toMatchObject({ restored: 2, left: [] });
        expect(await look(port, block(sheet, 0, 0, 1, 2))).toMatchObject([
          { values: [[null, null]], formulas: [[null, null]] },
        ]);
      });

      it('give way to values written over them, and come back', async () => {
        const { sheet } = bench;
        await make(port, [write(sheet, 0, 0, [[call]])]);
        const receipt = await make(port, [write(sheet, 0, 0, [[33]])]);
        expect(await look(port, block(sheet, 0, 0, 1, 1))).toMatchObject([{ values: [[33]], formulas: [[null]] }]);
        await port.revert(receipt);
        expect(await look(port, block(sheet, 0, 0, 1, 1))).toMatchObject([{ formulas: [['=REGRIP.TOPOINTS("D3")']] }]);
      });
    });

    describe('keeping', () => {
      it('recalls what was remembered, and nothing once forgotten', async () => {
        expect(await port.recall('shop')).toBeNull();
        await port.remember('shop', 'tolerance: ½ point, "quoted"');
        expect(await port.recall('shop')).toBe('tolerance: ½ point, "quoted"');
        await port.remember('shop', null);
        await port.remember('shop', null);
        expect(await port.recall('shop')).toBeNull();
      });

      it('remembers as part of a change', async () => {
        await make(port, [{ do: 'remember', key: 'schema', value: '3' }]);
        expect(await port.recall('schema')).toBe('3');
      });

      it('keeps the receipt of the last change, as text that takes it back', async () => {
        const { sheet } = bench;
        const cells: Put[][] = [
          ['a', 'a', null, 1, 1, true, { call: 'TOPOINTS', args: [{ literal: 'D3' }] }, undefined],
        ];
        await bench.person.typeFormula(sheet, 0, 2, '=1+1');
        const receipt = await make(port, [write(sheet, 0, 0, cells)], 'lastFill');
        const kept = drained(keptReceiptSteps((await port.recall('lastFill')) ?? ''));
        expect(kept).toEqual(receipt);
        await port.revert(kept as Receipt);
        const [seen] = await look(port, block(sheet, 0, 0, 1, 8));
        expect(seen?.formulas[0]).toEqual([null, null, '=1+1', null, null, null, null, null]);
      });
    });

    describe('the selection', () => {
      it('is told with the table that holds it whole', async () => {
        await make(port, [...makeClubs, { do: 'show', at: block('Clubs', 1, 0, 2, 1) }]);
        await bench.person.select(block('Clubs', 1, 0, 2, 1));
        expect(await port.selection()).toEqual({ at: block('Clubs', 1, 0, 2, 1), table: 'Clubs' });
        await bench.person.select(block('Clubs', 3, 0, 2, 1));
        expect(await port.selection()).toEqual({ at: block('Clubs', 3, 0, 2, 1), table: null });
        await bench.person.select(block('Clubs', 20, 0, 1, 1));
        expect(await port.selection()).toEqual({ at: block('Clubs', 20, 0, 1, 1), table: null });
      });
    });
  });
}
