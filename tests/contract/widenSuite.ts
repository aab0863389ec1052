import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PortError } from '../../src/workbook/port';
import type { BlockSeen, Cell, Change, TableSeen, WorkbookPort } from '../../src/workbook/port';
import { block, look, make, write } from './structureSuite';
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
const beside = block('Shelf', 1, 3, 3, 2);
const below = block('Shelf', 4, 1, 1, 2);
const wider: Change = { do: 'widen', table: 'shelf', headers: ['Tag', 'Cost'] };
type InTheWay = [string, (person: Bench['person']) => void | Promise<void>, PortError['code'], string];

/** What every port has to do to make a table wider. */
export function widenSuite(name: string, makeBench: () => Bench | Promise<Bench>): void {
  describe(`${name}: making a table wider`, () => {
    let bench: Bench;
    let port: WorkbookPort;
    beforeEach(async () => {
      bench = await makeBench();
      port = bench.port;
      await make(port, shelf);
    });
    afterEach(() => bench.dispose?.());

    async function seen(): Promise<[TableSeen, BlockSeen, BlockSeen]> {
      const [table, right, under] = await port.read([
        { read: 'table', table: 'Shelf' },
        { read: 'block', at: beside },
        { read: 'block', at: below },
      ]);
      if (!table) throw new Error('there is no table Shelf');
      return [table, right, under];
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

    it('puts blank columns at its right end under their headings, and leaves what stands further right', async () => {
      await bench.person.type('Shelf', 1, 5, 'mine');
      await port.apply([wider], await seen(), { label: 'Columns' });
      const [table] = await seen();
      expect(table.at).toEqual(block('Shelf', 1, 1, 3, 4));
      expect(table.headers).toEqual(['Item', 'On hand', 'Tag', 'Cost']);
      expect(table.rows).toEqual([
        ['a', 4, null, null],
        ['b', 5, null, null],
      ]);
      const [further] = await look(port, block('Shelf', 1, 5, 1, 1));
      expect(further?.values).toEqual([['mine']]);
    });

    it('lets the same change write into the new columns, and make the table longer too', async () => {
      const [further] = await look(port, block('Shelf', 4, 1, 1, 4));
      const longer: Change = { do: 'lengthen', table: 'Shelf', rows: 1 };
      const changes = [wider, longer, write('Shelf', 3, 2, [[6, 't', 2] as Cell[], [7, 'u', 3]])];
      await port.apply(changes, [...(await seen()), ...(further ? [further] : [])], { label: 'Columns' });
      expect((await seen())[0].rows.slice(1)).toEqual([
        ['b', 6, 't', 2],
        [null, 7, 'u', 3],
      ]);
    });

    it('is taken back to the width it had', async () => {
      const before = await seen();
      const receipt = await port.apply([wider], before, { label: 'Columns' });
      expect(await port.revert(receipt)).toMatchObject({ left: [], notFound: [] });
      expect(await seen()).toEqual(before);
    });

    it('goes with what the same change wrote into it', async () => {
      const before = await seen();
      const changes = [wider, write('Shelf', 2, 3, [['t', 2] as Cell[]])];
      const receipt = await port.apply(changes, before, { label: 'Columns' });
      expect(await port.revert(receipt)).toMatchObject({ left: [] });
      expect(await seen()).toEqual(before);
      // Asked once more, nothing is left to do, and nothing is said to be in the way.
      expect(await port.revert(receipt)).toMatchObject({ left: [] });
    });

    it('is taken back wherever the table stands by then', async () => {
      const receipt = await port.apply([wider], await seen(), { label: 'Columns' });
      await bench.person.type('Shelf', 2, 1, 'c');
      expect(await port.revert(receipt)).toMatchObject({ left: [] });
      const [table, right] = await seen();
      expect([table.headers, table.rows[0]]).toEqual([
        ['Item', 'On hand'],
        ['c', 4],
      ]);
      expect(right.values.flat().filter((value) => value !== null)).toEqual([]);
    });

    it('stays, and is named, once somebody has written into it', async () => {
      const receipt = await port.apply([wider], await seen(), { label: 'Columns' });
      await bench.person.type('Shelf', 3, 4, 2.5);
      expect((await port.revert(receipt)).left).toEqual(['Shelf!E4']);
      expect((await seen())[0].headers).toEqual(['Item', 'On hand', 'Tag', 'Cost']);
    });

    it('stays, and is named, once somebody has renamed a heading of it', async () => {
      const receipt = await port.apply([wider], await seen(), { label: 'Columns' });
      await bench.person.type('Shelf', 1, 4, 'Price paid');
      expect((await port.revert(receipt)).left).toEqual(['Shelf: Tag, Cost']);
      expect((await seen())[0].headers).toEqual(['Item', 'On hand', 'Tag', 'Price paid']);
    });

    it.each<InTheWay>([
      ['a value', (person) => person.type('Shelf', 3, 4, 'Total'), 'belowTable', 'Shelf!E4'],
      ['a formula', (person) => person.typeFormula('Shelf', 1, 3, '=1+1'), 'belowTable', 'Shelf!D2'],
      ['merged cells', (person) => person.merge(block('Shelf', 2, 3, 2, 1)), 'merged', 'Shelf!D3:D4'],
      ['a filter', (person) => person.filter('Shelf'), 'filtered', 'Shelf'],
      ['protection', (person) => person.protect('Shelf'), 'protected', 'Shelf'],
    ])('is refused for %s', async (_, act, code, cells) => {
      await act(bench.person);
      const error = await refused([wider], await seen());
      expect([error.code, error.cells]).toEqual([code, [cells]]);
    });

    it('is refused where another table stands beside it', async () => {
      await make(port, [
        write('Shelf', 2, 4, [['Way'], ['Lead']] as readonly (readonly Cell[])[]),
        { do: 'table', name: 'Ways', at: block('Shelf', 2, 4, 2, 1) },
      ]);
      const error = await refused([wider], await seen());
      expect([error.code, error.cells]).toEqual(['tableInTheWay', ['Ways']]);
    });

    it('is refused where nobody looked: at the table, beside it or below it', async () => {
      const [table, right, under] = await seen();
      expect((await refused([wider], [right, under])).cells).toEqual(['shelf']);
      expect((await refused([wider], [table, under])).code).toBe('notLookedAt');
      expect((await refused([wider], [table, right])).code).toBe('notLookedAt');
    });

    it('refuses no columns, one without a heading, and a heading that is there', async () => {
      const looked = await seen();
      for (const headers of [[], [''], ['ITEM'], ['A', 'a']]) {
        const change: Change = { do: 'widen', table: 'Shelf', headers };
        await expect(port.apply([change], looked, { label: 'x' })).rejects.toThrow(RangeError);
      }
    });
  });
}
