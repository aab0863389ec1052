import { describe, expect, test } from 'vitest';
import type { Offer } from '../../src/core/index';
import {
  calibrateShop,
  calibrateShopSteps,
  checkScale,
  readCheckIns,
  type ShopCalibration,
} from '../../src/workbook/calibrateShop';
import type { Seen, TableSeen } from '../../src/workbook/port';
import { readShop, type ShopTables } from '../../src/workbook/shop';
import { takeConstant } from '../../src/workbook/takeConstant';
import { undoLast } from '../../src/workbook/undo';
import { sayScale } from '../../src/words/calibrate';
import { sayConstant } from '../../src/words/constants';
import { demoPort } from '../pane/demoPane';
import type { MemoryPort } from './memoryPort';

const tablesOf = async (port: MemoryPort): Promise<ShopTables> => (await readShop(port)).tables;

function cellOf(port: MemoryPort, table: string, row: number, header: string) {
  const seen = port.tableSeen(table);
  const column = seen?.headers.indexOf(header) ?? -1;
  if (!seen || column < 0) throw new Error(`no ${table}, ${header}`);
  return { sheet: seen.at.sheet, row: seen.at.row + row, column: seen.at.column + column };
}

function type(port: MemoryPort, table: string, row: number, header: string, value: Seen | { formula: string }): void {
  const { sheet, row: down, column } = cellOf(port, table, row, header);
  port.type(sheet, down, column, value);
}

function reads(port: MemoryPort, table: string, row: number, header: string): Seen {
  const { sheet, row: down, column } = cellOf(port, table, row, header);
  return port.shows(sheet, down, column);
}

/** Body row, from 1, whose cell under a heading says so. */
function rowOf(port: MemoryPort, table: string, header: string, value: string): number {
  const seen = port.tableSeen(table);
  return (seen?.rows.findIndex((row) => row[seen.headers.indexOf(header)] === value) ?? -1) + 1;
}

async function offerOf(port: MemoryPort, field: Offer['field'], item?: string): Promise<Offer> {
  const offer = calibrateShop(await tablesOf(port)).found?.offers.find(
    (each) => each.field === field && each.item === item,
  );
  if (!offer) throw new Error(`no offer of ${field}`);
  return offer;
}

describe('what the demo’s check-ins tell', () => {
  test('the truth they were made from lies within each interval: a layer of 1.92 g, a grip that balances at 4.42 in', async () => {
    const port = demoPort();
    const layer = await offerOf(port, 'layerGrams');
    expect(layer).toMatchObject({ now: 1.75, pairs: 11, agrees: false });
    expect(layer.low).toBeLessThan(1.92);
    expect(layer.high).toBeGreaterThan(1.92);
    const balance = await offerOf(port, 'balanceInches', 'OS-S60');
    expect(balance).toMatchObject({ now: 4.2, pairs: 11, agrees: false });
    expect(balance.low).toBeLessThan(4.42);
    expect(balance.high).toBeGreaterThan(4.42);
    expect(balance.errorAfter).toBeLessThan((balance.errorBefore ?? 0) / 2);
    const ratio = await offerOf(port, 'balanceRatio');
    expect(ratio.now).toBe(0.4);
    expect(ratio.suggested).toBeCloseTo(balance.suggested / 10.5, 6);
  });

  test('a club that was not judged, or not measured bare, is left out and counted', async () => {
    const port = demoPort();
    const all = readCheckIns(await tablesOf(port));
    expect([all.finished.length, all.without]).toEqual([11, 0]);
    expect(all.finished[0]).toMatchObject({ club: '5 iron of R-143', item: 'OS-S60', bareGrams: 353.7, layers: 0 });
    const first = rowOf(port, 'Checkin', 'Job', 'R-143');
    type(port, 'Checkin', first, 'Standing', null);
    type(port, 'Checkin', first + 1, 'Bare mass (g)', null);
    const less = readCheckIns(await tablesOf(port));
    expect([less.finished.length, less.without]).toEqual([9, 1]);
  });

  test('of a club that came back the last round counts', async () => {
    const port = demoPort();
    const blank = rowOf(port, 'Checkin', 'Club', 'PW');
    const rows = port.tableSeen('Checkin')?.rows.length ?? 0;
    const again = rows - 5;
    expect(blank).toBeGreaterThan(0);
    for (const [header, value] of Object.entries({
      Job: 'R-143',
      Club: '5 iron',
      Round: 2,
      'Bare reading': 'E0.9',
      'Bare mass (g)': 353.5,
      Reading: 'D1.9',
      'Mass (g)': 405,
      Standing: 'Accepted',
    })) {
      type(port, 'Checkin', again, header, value);
    }
    const { finished } = readCheckIns(await tablesOf(port));
    expect(finished).toHaveLength(11);
    expect(finished.find(({ club }) => club === '5 iron of R-143')).toMatchObject({ bareGrams: 353.5 });
  });

  test('too few say so, none say nothing', async () => {
    const port = demoPort();
    const first = rowOf(port, 'Checkin', 'Job', 'R-143');
    for (let at = 0; at < 8; at += 1) type(port, 'Checkin', first + at, 'Standing', null);
    const few = calibrateShop(await tablesOf(port)).found;
    expect(few?.offers).toEqual([]);
    expect(few?.layer).toMatchObject({ ok: false, issue: { code: 'tooFew' } });
    for (let at = 8; at < 11; at += 1) type(port, 'Checkin', first + at, 'Standing', null);
    expect(calibrateShop(await tablesOf(port)).found).toBeNull();
  });
});

describe('many check-ins', () => {
  test('are worked out in steps that can be left off, the tables read once and not once for each job', async () => {
    const port = demoPort();
    const tables = await tablesOf(port);
    // the demo's judged job, closed twelve times over
    const copies = 12;
    const times = (name: 'Clubs' | 'Checkin', often = copies): TableSeen => {
      const table = tables[name];
      if (!table) throw new Error(`no ${name}`);
      const at = table.headers.indexOf('Job');
      const rows = table.rows.filter((row) => row[at] === 'R-143');
      const many = Array.from({ length: often }, (_, copy) =>
        rows.map((row) => row.map((cell, column) => (column === at ? `R-143-${copy}` : cell))),
      );
      return { ...table, rows: many.flat() };
    };
    const clubs = times('Clubs');
    let looked = 0;
    const counted = new Proxy(clubs, {
      get: (target, key) => {
        if (key === 'rows') looked += 1;
        return Reflect.get(target, key) as unknown;
      },
    });
    const steps = calibrateShopSteps({ ...tables, Clubs: counted, Checkin: times('Checkin') });
    let turns = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) turns += 1;
    expect(turns).toBeGreaterThanOrEqual(copies);
    expect(step.value.finished).toHaveLength(6 * copies);
    expect(looked).toBeLessThan(copies);
    const one = calibrateShop({ ...tables, Clubs: times('Clubs', 1), Checkin: times('Checkin', 1) });
    const balanceOf = ({ found }: ShopCalibration) => found?.balance[0]?.found;
    const [once, often] = [balanceOf(one), balanceOf(step.value)];
    expect(often?.ok && often.value.value).toBeCloseTo(once?.ok ? once.value.value : NaN, 6);
  });
});

describe('taking a constant over', () => {
  test('the mass of a layer goes into Tape as what a strip weighs, and is what plans reckon with', async () => {
    const port = demoPort();
    const offer = await offerOf(port, 'layerGrams');
    const row = rowOf(port, 'Tape', 'Tape', 'Build-up tape');
    const end = await takeConstant(port, offer);
    expect(sayConstant(end)).toMatch(
      /^Tape, Build-up tape: Weighed strip \(g\) is 1\.88 now; it was 1\.75\. Plans follow it/,
    );
    expect(reads(port, 'Tape', row, 'Weighed length (in)')).toBe(10.5);
    const after = await offerOf(port, 'layerGrams');
    expect(after.agrees).toBe(true);
    expect(after.now).toBeCloseTo(1.88, 6);
    expect(sayConstant(await takeConstant(port, offer))).toContain('holds that value already');
    await undoLast(port);
    expect(reads(port, 'Tape', row, 'Weighed strip (g)')).toBe(1.75);
  });

  test('a balance point goes into Stock, and the part of the length into Settings', async () => {
    const port = demoPort();
    const row = rowOf(port, 'Stock', 'Item', 'OS-S60');
    const balance = await offerOf(port, 'balanceInches', 'OS-S60');
    expect(await takeConstant(port, balance)).toMatchObject({ done: true, table: 'Stock', was: 4.2, now: 4.41 });
    expect(reads(port, 'Stock', row, 'Balance point (in)')).toBe(4.41);
    expect((await offerOf(port, 'balanceInches', 'OS-S60')).agrees).toBe(true);
    const ratio = await offerOf(port, 'balanceRatio');
    expect(await takeConstant(port, ratio)).toMatchObject({ done: true, table: 'Settings', was: 0.4 });
    expect((await offerOf(port, 'balanceRatio')).now).toBeCloseTo(ratio.suggested, 3);
  });

  test('an older Settings gets the row at its end', async () => {
    const port = demoPort();
    const row = rowOf(port, 'Settings', 'Setting', 'Balance point, part of length');
    const rows = port.tableSeen('Settings')?.rows.length ?? 0;
    type(port, 'Settings', row, 'Setting', 'Something of the shop’s own');
    type(port, 'Settings', row, 'Value', 7);
    const ratio = await offerOf(port, 'balanceRatio');
    expect(await takeConstant(port, ratio)).toMatchObject({ done: true, was: null });
    expect(port.tableSeen('Settings')?.rows).toHaveLength(rows + 1);
    expect(reads(port, 'Settings', row, 'Value')).toBe(7);
    expect((await offerOf(port, 'balanceRatio')).now).toBeCloseTo(ratio.suggested, 3);
  });

  test('what cannot be is not written, whoever offers it: by the value, and by its interval', async () => {
    const port = demoPort();
    const row = rowOf(port, 'Stock', 'Item', 'OS-S60');
    const balance = await offerOf(port, 'balanceInches', 'OS-S60');
    const layer = await offerOf(port, 'layerGrams');
    const ratio = await offerOf(port, 'balanceRatio');
    for (const wrong of [
      { ...balance, suggested: -3, low: -4, high: -2 },
      { ...balance, low: 1.4 },
      { ...layer, suggested: -0.5 },
      { ...layer, high: 8.2 },
      { ...ratio, suggested: 1.2 },
    ]) {
      const end = await takeConstant(port, wrong);
      expect(end).toMatchObject({ done: false, reason: 'impossible' });
      expect(sayConstant(end)).toMatch(
        / does not fit: the check-ins say .* can be\. Look for .* Nothing was written\.$/,
      );
    }
    expect(reads(port, 'Stock', row, 'Balance point (in)')).toBe(4.2);
  });

  test('a formula of the shop’s is asked about, and a row that is gone is said', async () => {
    const port = demoPort();
    const balance = await offerOf(port, 'balanceInches', 'OS-S60');
    const row = rowOf(port, 'Stock', 'Item', 'OS-S60');
    type(port, 'Stock', row, 'Balance point (in)', { formula: '=4.2' });
    const asked = await takeConstant(port, balance);
    expect(asked).toMatchObject({ done: false, reason: 'occupied' });
    expect(sayConstant(await takeConstant(port, { ...balance, item: 'GONE' }))).toContain('Stock has no row GONE');
  });
});

describe('the scale', () => {
  test('that drifts is told from its reference club', async () => {
    const seen = checkScale(await tablesOf(demoPort()));
    expect(seen).toMatchObject({ readings: 6, accepted: 32 });
    expect(seen.check?.ok && seen.check.value).toMatchObject({ verdict: 'recalibrate', readings: 6, days: 6 });
    expect(seen.check?.ok && sayScale(seen.check.value)).toContain('the scale drifted by +0.8 pt');
  });

  test('is not judged without what the club should read, nor from too few readings', async () => {
    const port = demoPort();
    const row = rowOf(port, 'Settings', 'Setting', 'Reference club reads');
    type(port, 'Settings', row, 'Value', null);
    expect(checkScale(await tablesOf(port))).toEqual({ readings: 6, accepted: undefined, check: null });
    type(port, 'Settings', row, 'Value', 'D2');
    type(port, 'Scale', 1, 'Reading', 'later');
    type(port, 'Scale', 2, 'Date', 'May');
    expect(checkScale(await tablesOf(port)).check).toMatchObject({ ok: false, issue: { code: 'tooFew', got: 4 } });
  });

  test('counts by its division', async () => {
    const port = demoPort();
    const row = rowOf(port, 'Settings', 'Setting', 'Scale division');
    type(port, 'Settings', row, 'Value', 5);
    const { check } = checkScale(await tablesOf(port));
    expect(check?.ok && check.value.verdict).toBe('fine');
  });
});
