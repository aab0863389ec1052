/**
 * Text that starts like a formula stays text in every place where text from a person lands, whatever is done with it. The workbook in
 * memory makes nothing of a text; so what it holds is what was put, and the others must hold the same.
 */
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { readXlsx } from 'hucre/xlsx';
import type { Outcome } from '../../src/pane/state/work';
import { describeCopy } from '../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../src/workbook/embedded/save/file';
import { asTyped } from '../../src/workbook/safeCell';
import { unzip } from '../embedded/save/unzip';
import { enter } from '../simulated/entry';
import { embeddedBench, memoryBench, simulatedBench, type EmbeddedBench, type SafetyBench } from './benches';
import { drawn } from './chance';
import { nastyText } from './nastyText';
import { makeShop, PLAIN, type ShopNames } from './shop';
import { said, trialsOf } from './trials';

/** Every name of the shop such a text, each another. */
const names: fc.Arbitrary<ShopNames> = fc
  .uniqueArray(nastyText, { minLength: 7, maxLength: 7, selector: (each) => each.trim().toLowerCase() })
  .map(([job = '', otherJob = '', customer = '', grip = '', otherGrip = '', club = '', note = '']) => {
    return { job, otherJob, customer, grip, otherGrip, club, note };
  });

let bench: EmbeddedBench | undefined;
afterEach(() => bench?.dispose());

/** Does everything in one workbook, one after another. */
async function doAll(on: SafetyBench, shop: ShopNames): Promise<string[]> {
  await makeShop(on.port(), shop);
  const ends: string[] = [];
  for (const trial of trialsOf(shop)) {
    if (trial.empty || trial.calculates || trial.of === 'undo') continue;
    await trial.typed?.(on.port());
    const end: Outcome = await trial.run(on.port());
    ends.push(`${trial.name}: ${end.kind}: ${said(end)}`);
  }
  return ends;
}

const isOurFormula = (entry: string): boolean => entry.startsWith('=REGRIP.SETPLAN(');

/** A formula of ours without the texts in it: what is left are tables, cells and commas. */
function expectHarmless(formula: string): void {
  const bare = formula.replaceAll(/"(?:[^"]|"")*"/g, '');
  expect(bare, formula).toMatch(/^=REGRIP\.SETPLAN\([\w.!$:#[\],&]*\)$/);
}

/** Entries of cells that are no formula of ours. */
function plain(seen: ReturnType<SafetyBench['snapshot']>): string[] {
  return [...seen.cells].flatMap(([at, entry]) => (isOurFormula(entry) ? [] : [`${at} ${entry}`])).sort();
}

async function expectSame(on: SafetyBench, shop: ShopNames, wanted: readonly string[], ends: readonly string[]) {
  expect(await doAll(on, shop)).toEqual(ends);
  const seen = on.snapshot();
  expect(plain(seen)).toEqual(wanted);
  const formulas = [...seen.cells.values()].filter(isOurFormula);
  expect(formulas.length).toBeGreaterThan(0);
  formulas.forEach(expectHarmless);
}

async function expectSaved({ spreadsheet, snapshot }: EmbeddedBench): Promise<void> {
  const bytes = await bytesOf((await describeCopy(spreadsheet)).workbook);
  const sheets = [...unzip(bytes)].filter(([name]) => name.startsWith('xl/worksheets/'));
  expect(sheets.length).toBeGreaterThan(10);
  for (const [name, xml] of sheets) expect(xml, name).not.toMatch(/<f[ >/]/);
  const book = await readXlsx(bytes, { readStyles: true });
  for (const [at, entry] of snapshot().cells) {
    const [, sheet = '', place = ''] = /^(.*)!(\d+,\d+)$/s.exec(at) ?? [];
    if (isOurFormula(entry)) continue;
    const cell = book.sheets.find(({ name }) => name === sheet)?.cells?.get(place);
    const value: unknown = JSON.parse(entry);
    if (typeof value === 'string') expect([at, cell?.type, cell?.value]).toEqual([at, 'string', value]);
  }
}

describe('text that starts like a formula', () => {
  test('stays text through everything, in memory, in Excel’s client and in the embedded spreadsheet, and in a saved copy', async () => {
    await fc.assert(
      fc.asyncProperty(names, async (shop) => {
        const memory = memoryBench();
        const ends = await doAll(memory, shop);
        const wanted = plain(memory.snapshot());
        expect(
          wanted.filter((entry) => entry.includes(JSON.stringify(shop.customer.trim()).slice(1, -1))).length,
        ).toBeGreaterThan(5);
        await expectSame(simulatedBench(), shop, wanted, ends);
        bench = await embeddedBench();
        await expectSame(bench, shop, wanted, ends);
        await expectSaved(bench);
        bench.dispose();
        bench = undefined;
      }),
      drawn(1),
    );
  }, 600_000);

  test('all of it is done in a shop with plain names', async () => {
    const ends = await doAll(memoryBench(), PLAIN);
    expect(ends.filter((end) => !/: done: /.test(end))).toEqual([]);
  });

  test('is kept from becoming one as it is typed into Excel, whatever follows', () => {
    fc.assert(
      fc.property(nastyText, (each) => {
        expect(enter(asTyped(each), 'General')).toEqual({ value: each });
      }),
      drawn(500),
    );
  });
});
