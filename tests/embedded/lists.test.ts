import { describe, expect, test } from 'vitest';
import { FUNCTIONS } from '../../src/functions/implementations';
import { functions as metadata } from '../../src/functions/functions.json';
import { connectList } from '../../src/workbook/connect/connectList';
import { asked, beginMatch } from '../../src/pane/view/tools/listsModel';
import { readList } from '../../src/workbook/connect/lists';
import { connecting } from '../../src/workbook/connecting';
import { createEmbeddedPort } from '../../src/workbook/embedded/port';
import { createHeadless } from '../../src/workbook/embedded/spreadsheet';
import { fillPlan } from '../../src/workbook/fillPlan';
import type { Block, Cell } from '../../src/workbook/port';
import { setUp } from '../../src/workbook/setUp';
import { readShop } from '../../src/workbook/shop';
import { HEADINGS_OF_LIST, LIST_ROWS } from '../workbook/connect/inventory';

describe('a live plan over plain cells of the shop’s own, in the embedded spreadsheet', () => {
  test('is calculated from them, by Headings, and follows a change in them', async () => {
    const spreadsheet = await createHeadless({
      sheets: [{ name: 'Lager', cells: [] }],
      functions: { metadata, implementations: FUNCTIONS },
    });
    const bare = createEmbeddedPort(spreadsheet);
    const put = async (sheet: string, row: number, cells: readonly (readonly Cell[])[]) => {
      const at: Block = { sheet, row, column: 0, rows: cells.length, columns: cells[0]?.length ?? 0 };
      const [block] = await bare.read([{ read: 'block', at }]);
      const tables = await bare.read([{ read: 'table', table: sheet }]);
      const looked = [block, ...tables.flatMap((table) => table ?? [])];
      await bare.apply([{ do: 'write', at, cells }], looked, { label: 'typed' });
      await spreadsheet.settled();
    };
    await put('Lager', 2, [HEADINGS_OF_LIST, ...(LIST_ROWS as readonly (readonly Cell[])[])]);
    const at: Block = { sheet: 'Lager', row: 0, column: 0, rows: 6, columns: 8 };
    const read = await readList(bare, { table: null, at });
    const match = read && beginMatch(read, 'Stock');
    if (!match) throw new Error('nothing to match');
    expect(await connectList(bare, asked(match))).toMatchObject({ done: true });
    const port = connecting(bare);
    await setUp(port);
    const clubs = (await port.read([{ read: 'table', table: 'Clubs' }]))[0];
    const headers = clubs?.headers ?? [];
    const row = headers.map((header): Cell => {
      const cells: Record<string, Cell> = {
        Job: '1042',
        Club: '7 iron',
        Kind: 'Iron',
        'New grip': 'FERN-M',
        'Length (in)': 37,
        'Butt (in)': 0.6,
        Reading: 'D2',
        'Club mass (g)': 415,
        'Old grip': 'MOSS-S',
      };
      return cells[header] ?? null;
    });
    await put('Clubs', 1, [row]);
    const end = await fillPlan(port, await readShop(port), {
      scope: { job: '1042' },
      choices: {},
      where: 'planSheet',
      as: 'live',
    });
    expect(end).toMatchObject({ done: true, as: 'live', clubs: 1 });
    await spreadsheet.settled();
    const planned = async (): Promise<string> => {
      const where: Block = { sheet: 'Plan 1042', row: 0, column: 0, rows: 14, columns: 12 };
      const [seen] = await bare.read([{ read: 'block', at: where }]);
      return JSON.stringify(seen.values);
    };
    const before = await planned();
    expect(before).toContain('FERN-M');
    expect(before).not.toMatch(/#[A-Z/0]+[!?]/);
    // a grip of twice the ounces reads otherwise
    const mass = HEADINGS_OF_LIST.indexOf('Wt (oz)');
    const [block] = await bare.read([{ read: 'block', at: { ...at, row: 3, rows: 1, column: mass, columns: 1 } }]);
    await bare.apply([{ do: 'write', at: block.at, cells: [[3.6]] }], [block], { label: 'typed' });
    await spreadsheet.settled();
    expect(await planned()).not.toBe(before);
    spreadsheet.dispose();
  }, 60_000);
});
