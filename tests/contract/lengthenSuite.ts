import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PortError } from '../../src/workbook/port';
import type { Block, BlockSeen, Cell, Change, TableSeen, WorkbookPort } from '../../src/workbook/port';
import { block, make, write } from './structureSuite';
import type { Bench } from './structureSuite';

const shelf: readonly Change[] = [
  { do: 'sheet', name: 'Shelf' },
  write('Shelf', 1, 1, [
    ['Item', 'On hand'],
    ['a', 4],
    ['b', 5],
  ]),
  { do: 'table', name: 'Shelf', at: block('Shelf', 1, 1, 3, 2) },
];
const below = block('Shelf', 4, 1, 3, 2);
type InTheWay = [string, (person: Bench['person']) => void | Promise<void>, PortError['code'], string];
const longer: Change = { do: 'lengthen', table: 'shelf', rows: 3 };

/** What every port has to do to make a table longer. */
export function lengthenSuite(name: string, makeBench: () => Bench | Promise<Bench>): void {
  describe(`${name}: making a table longer`, () => {
    let bench: Bench;
    let port: WorkbookPort;
    beforeEach(async () => {
      bench = await makeBench();
      port = bench.port;
      await make(port, shelf);
    });
    afterEach(() => bench.dispose?.());

    async function seen(at: Block = below): Promise<[TableSeen, BlockSeen]> {
      const [table, cells] = await port.read([
        { read: 'table', table: 'Shelf' },
        { read: 'block', at },
      ]);
      if (!table) throw new Error('there is no table Shelf');
      return [table, cells];
    }

    async function refused(changes: readonly Change[], looked: readonly (TableSeen | BlockSeen)[]): Promise<PortError> {
      const before = await seen();
      const error: unknown = await port.apply(changes, looked, { label: 'x' }).then(
        () => null,
        (thrown: unknown) => thrown,
      );
      if (!(error instanceof PortError)) throw new Error(`expected a PortError, got ${String(error)}`);
      expect(await seen()).toEqual(before);
      return error;
    }

    it('puts blank rows at its end, and leaves what stands further down', async () => {
      await bench.person.type('Shelf', 8, 1, 'mine');
      await port.apply([longer], await seen(), { label: 'Rows' });
      const [table, further] = await seen(block('Shelf', 8, 1, 1, 1));
      expect(table.at).toEqual(block('Shelf', 1, 1, 6, 2));
      expect(table.rows).toEqual([
        ['a', 4],
        ['b', 5],
        [null, null],
        [null, null],
        [null, null],
      ]);
      expect(further.values).toEqual([['mine']]);
    });

    it('lets the same change write into the new rows, over the old edge too', async () => {
      const changes = [
        longer,
        write('Shelf', 3, 1, [
          ['b', 6],
          ['c', 7],
        ]),
      ];
      await port.apply(changes, await seen(), { label: 'Rows' });
      expect((await seen())[0].rows.slice(1, 4)).toEqual([
        ['b', 6],
        ['c', 7],
        [null, null],
      ]);
    });

    it('can be asked for twice in one change', async () => {
      const once: Change = { do: 'lengthen', table: 'Shelf', rows: 1 };
      await port.apply([once, once, write('Shelf', 5, 1, [['d', 1]])], await seen(), { label: 'Rows' });
      const [table] = await seen();
      expect(table.at.rows).toBe(5);
      expect(table.rows[3]).toEqual(['d', 1]);
    });

    it('keeps its blank rows when what was written into them is taken back', async () => {
      const changes = [longer, write('Shelf', 4, 1, [['c', 7]])];
      const receipt = await port.apply(changes, await seen(), { label: 'Rows' });
      expect(await port.revert(receipt)).toMatchObject({ restored: 2, left: [], notFound: [] });
      const [table] = await seen();
      expect(table.at.rows).toBe(6);
      expect(table.rows[2]).toEqual([null, null]);
    });

    it.each<InTheWay>([
      ['a value', (person) => person.type('Shelf', 6, 2, 'Total'), 'belowTable', 'Shelf!C7'],
      ['a formula', (person) => person.typeFormula('Shelf', 5, 1, '=1+1'), 'belowTable', 'Shelf!B6'],
      ['merged cells', (person) => person.merge(block('Shelf', 5, 1, 1, 2)), 'merged', 'Shelf!B6:C6'],
      ['a filter', (person) => person.filter('Shelf'), 'filtered', 'Shelf'],
      ['protection', (person) => person.protect('Shelf'), 'protected', 'Shelf'],
    ])('is refused for %s', async (_, act, code, cells) => {
      await act(bench.person);
      const error = await refused([longer], await seen());
      expect([error.code, error.cells]).toEqual([code, [cells]]);
    });

    it('is refused where another table stands below', async () => {
      await make(port, [
        write('Shelf', 6, 2, [['Way'], ['Lead']] as readonly (readonly Cell[])[]),
        { do: 'table', name: 'Ways', at: block('Shelf', 6, 2, 2, 1) },
      ]);
      const error = await refused([longer], await seen());
      expect([error.code, error.cells]).toEqual(['tableInTheWay', ['Ways']]);
    });

    it('is refused where nobody looked, at the table or below it', async () => {
      const [table, cells] = await seen();
      expect((await refused([longer], [cells])).cells).toEqual(['shelf']);
      const error = await refused([longer], [table]);
      expect([error.code, error.cells]).toEqual(['notLookedAt', ['Shelf!B5:B7', 'Shelf!C5:C7']]);
    });

    it('refuses no rows, or part of one', async () => {
      const looked = await seen();
      for (const rows of [0, -1, 1.5]) {
        await expect(port.apply([{ ...longer, rows } as Change], looked, { label: 'x' })).rejects.toThrow(RangeError);
      }
    });
  });
}
