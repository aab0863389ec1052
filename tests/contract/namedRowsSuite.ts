import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Cell, WorkbookPort } from '../../src/workbook/port';
import { block, look, make, valuesOf, write } from './structureSuite';
import type { Bench } from './structureSuite';

const rack = block('Rack', 1, 1, 5, 3);
const rows: readonly (readonly Cell[])[] = [
  ['', 'points', ''],
  ['Club', 'SW', 'Rack'],
  ['Driver', 'D2', 'a'],
  ['7 iron', 'D3', 'b'],
  ['Putter', null, 'c'],
];

/** What every port has to do with rows of plain cells that have a name. */
export function namedRowsSuite(name: string, makeBench: () => Bench | Promise<Bench>): void {
  describe(`${name}: rows of cells that have a name`, () => {
    let bench: Bench;
    let port: WorkbookPort;
    beforeEach(async () => {
      bench = await makeBench();
      port = bench.port;
      await make(port, [
        { do: 'sheet', name: 'Rack' },
        write('Rack', 1, 1, rows),
        { do: 'name', name: 'Our_Rack', at: rack },
      ]);
    });
    afterEach(() => bench.dispose?.());

    const readings = async () => {
      const seen = await look(port, block('Rack', 3, 2, 2, 1));
      const looked = [...seen, ...(await look(port, rack))];
      const of = { table: 'Our_Rack', by: ['Club'], headingRows: 2 };
      const change = { do: 'write', at: block('Rack', 3, 2, 2, 1), cells: [['D5'], ['D6']], of } as const;
      return port.apply([change], looked, { label: 'Readings' });
    };

    it('are taken back where they stand by then, under the heading that they stood under', async () => {
      const receipt = await readings();
      for (const [row, line] of [rows[4], ['7 iron', 'D6', 'b'], ['Driver', 'D5', 'a']].entries()) {
        for (const [across, value] of (line ?? []).entries()) {
          await bench.person.type('Rack', 3 + row, 1 + across, value ?? null);
        }
      }
      expect(await port.revert(receipt)).toMatchObject({ restored: 2, left: [], notFound: [] });
      expect(await valuesOf(port, block('Rack', 3, 1, 3, 2))).toEqual([
        ['Putter', null],
        ['7 iron', 'D3'],
        ['Driver', 'D2'],
      ]);
    });

    it('are not written once another row took their place, blank as the cells may be', async () => {
      for (const row of [3, 4]) await bench.person.type('Rack', row, 2, null);
      const looked = [...(await look(port, block('Rack', 3, 2, 2, 1))), ...(await look(port, rack))];
      // As if sorted by a person.
      for (const [row, line] of [rows[3], rows[2]].entries()) {
        for (const across of [0, 2]) await bench.person.type('Rack', 3 + row, 1 + across, line?.[across] ?? null);
      }
      const of = { table: 'Our_Rack', by: ['Club'], headingRows: 2 };
      const change = { do: 'write', at: block('Rack', 3, 2, 2, 1), cells: [['D5'], ['D6']], of } as const;
      await expect(port.apply([change], looked, { label: 'Readings' })).rejects.toMatchObject({
        code: 'notLookedAt',
        cells: ['Rack!B4:B5', 'Rack!D4:D5'],
      });
      expect(await valuesOf(port, block('Rack', 3, 2, 2, 1))).toEqual([[null], [null]]);
    });

    it('are left and named by their sheet where they are called otherwise by then', async () => {
      const receipt = await readings();
      await bench.person.type('Rack', 3, 1, 'Big one');
      expect(await port.revert(receipt)).toMatchObject({ restored: 1, notFound: ['Rack: Driver'] });
      expect(await valuesOf(port, block('Rack', 3, 2, 2, 1))).toEqual([['D5'], ['D3']]);
    });

    const twins = async (put: readonly [string, string]) => {
      await bench.person.type('Rack', 4, 1, 'Driver');
      const at = block('Rack', 3, 2, 2, 1);
      const of = { table: 'Our_Rack', by: ['Club'], headingRows: 2 };
      const change = { do: 'write', at, cells: put.map((cell) => [cell]), of } as const;
      const looked = [...(await look(port, at)), ...(await look(port, rack))];
      return port.apply([change], looked, { label: 'Readings' });
    };
    const rackNow = () => valuesOf(port, block('Rack', 3, 1, 3, 2));

    it('and are called the same are told apart by what was put into them', async () => {
      const receipt = await twins(['D5', 'D6']);
      // The last row comes first, so none stands where it was.
      for (const [row, [club, reading]] of [
        ['Putter', null],
        ['Driver', 'D6'],
        ['Driver', 'D5'],
      ].entries()) {
        await bench.person.type('Rack', 3 + row, 1, club ?? null);
        await bench.person.type('Rack', 3 + row, 2, reading ?? null);
      }
      expect(await port.revert(receipt)).toMatchObject({ restored: 2, left: [], notFound: [] });
      expect(await rackNow()).toEqual([
        ['Putter', null],
        ['Driver', 'D3'],
        ['Driver', 'D2'],
      ]);
    });

    it('and are called the same are told apart where something else of them was changed since', async () => {
      await bench.person.type('Rack', 4, 1, 'Driver');
      const at = block('Rack', 3, 2, 2, 2);
      const cells = [
        ['D5', undefined],
        ['D6', 'z'],
      ];
      const of = { table: 'Our_Rack', by: ['Club'], headingRows: 2 };
      const looked = [...(await look(port, at)), ...(await look(port, rack))];
      const receipt = await port.apply([{ do: 'write', at, cells, of }], looked, { label: 'Readings' });
      await bench.person.type('Rack', 3, 3, 'mine');
      expect(await port.revert(receipt)).toMatchObject({ restored: 3, left: [], notFound: [] });
      expect(await valuesOf(port, at)).toEqual([
        ['D2', 'mine'],
        ['D3', 'b'],
      ]);
    });

    it('and are called the same and got the same, but held something else, are left and named', async () => {
      const receipt = await twins(['D5', 'D5']);
      expect(await port.revert(receipt)).toMatchObject({ restored: 0, notFound: ['Rack: Driver'] });
      expect(await rackNow()).toEqual([
        ['Driver', 'D5'],
        ['Driver', 'D5'],
        ['Putter', null],
      ]);
    });

    it('and are called as one that was not written are left and named', async () => {
      const receipt = await readings();
      await bench.person.type('Rack', 5, 1, 'Driver');
      await bench.person.type('Rack', 5, 2, 'D5');
      expect(await port.revert(receipt)).toMatchObject({ restored: 1, notFound: ['Rack: Driver'] });
      expect(await rackNow()).toEqual([
        ['Driver', 'D5'],
        ['7 iron', 'D3'],
        ['Driver', 'D5'],
      ]);
    });
  });
}
