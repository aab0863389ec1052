import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { WriteOptions } from 'hucre/xlsx';
import type { Progress } from '../../../src/core/index';
import { copySteps, describeCopy } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import { parcelsOf, unpacker } from '../../../src/workbook/embedded/save/parcels';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { filledDemo } from './demoBook';
import { unzip } from './unzip';

/** As it goes to a worker: each parcel is copied on its own, as messages are. */
function delivered(workbook: WriteOptions): { parcels: number; workbook: WriteOptions | null } {
  const unpack = unpacker();
  let [parcels, whole]: [number, WriteOptions | null] = [0, null];
  for (const parcel of parcelsOf(workbook)) {
    expect(whole).toBeNull();
    parcels += 1;
    whole = unpack(structuredClone(parcel));
  }
  return { parcels, workbook: whole };
}

describe('a copy of the demo with a plan', () => {
  let spreadsheet: Spreadsheet;
  beforeAll(async () => {
    ({ spreadsheet } = await filledDemo());
  }, 60_000);
  afterAll(() => spreadsheet.dispose());

  test('comes out of the worker as it went in, and the file is the same in every part', async () => {
    const { workbook } = await describeCopy(spreadsheet);
    const { workbook: after } = delivered(workbook);
    expect(after).toEqual(workbook);
    const [here, there] = [await bytesOf(workbook), await bytesOf(after as WriteOptions)].map(unzip);
    expect([...(there ?? [])].filter(([name]) => name !== 'docProps/core.xml')).toEqual(
      [...(here ?? [])].filter(([name]) => name !== 'docProps/core.xml'),
    );
  });

  test('is looked through in steps that tell how far it is', () => {
    const seen: Progress[] = [];
    const steps = copySteps(spreadsheet);
    for (let step = steps.next(); !step.done; step = steps.next()) seen.push(step.value);
    const shares = seen.map(({ done, of }) => done / of);
    expect(shares.length).toBeGreaterThan(20);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...shares)).toBeLessThan(1);
  });
});

test('a sheet of many cells goes in many parcels, its cells in their order', () => {
  const cells = new Map(Array.from({ length: 5001 }, (_, at) => [`${at},0`, { value: at }] as const));
  const workbook: WriteOptions = { sheets: [{ name: 'Few', rows: [] }, { name: 'Many', cells }, { name: 'None' }] };
  const { parcels, workbook: after } = delivered(workbook);
  expect(parcels).toBe(1 + 3 + 1);
  expect([...(after?.sheets[1]?.cells ?? [])]).toEqual([...cells]);
});
