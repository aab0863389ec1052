/**
 * A thousand fills and nothing grows. Here it is a part of them in each workbook; `SETWRIGHT_SOAK=1000` in the environment makes it all
 * of them.
 */
import v8 from 'node:v8';
import vm from 'node:vm';
import { describe, expect, test } from 'vitest';
import { undoLast } from '../../src/workbook/undo';
import { MemoryPort } from '../workbook/memoryPort';
import { embeddedBench, memoryBench, simulatedBench, type SafetyBench } from './benches';
import { makeShop } from './shop';
import { said, trialNamed } from './trials';

const FILLS = ['fill plan', 'compare', 'quote options', 'ticket'].map(trialNamed);
const asked = Number(process.env.SETWRIGHT_SOAK ?? 0);

/** Collects what nobody holds any more. */
v8.setFlagsFromString('--expose-gc');
const collect = vm.runInNewContext('gc') as () => void;

interface Size {
  readonly names: number;
  readonly tables: number;
  readonly sheets: number;
  readonly cells: number;
  readonly settings: number;
  /** Styles, highlights, checks of entries: whatever the host keeps of looks. */
  readonly looks: unknown;
}

function sizeOf(bench: SafetyBench, looks: () => unknown): Size {
  const { names, tables, sheets, cells, settings } = bench.snapshot();
  const characters = [...settings].reduce((sum, [key, value]) => sum + key.length + value.length, 0);
  return {
    names: names.length,
    tables: tables.length,
    sheets: sheets.length,
    cells: cells.size,
    settings: characters,
    looks: looks(),
  };
}

function heapMegabytes(): number {
  collect();
  return process.memoryUsage().heapUsed / 1e6;
}

/** Every page filled twice over, once taken back: five fills, as many as come to `fills`. */
async function soak(bench: SafetyBench, fills: number, looks: () => unknown): Promise<void> {
  await makeShop(bench.port());
  const port = bench.port();
  // What is noted for other tests is no growth of a workbook.
  const noted = port instanceof MemoryPort ? port.asked : [];
  let done = 0;
  const round = async (): Promise<void> => {
    for (const trial of FILLS) {
      const end = await trial.run(port);
      expect(end.kind, said(end)).toBe('done');
      done += 1;
    }
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { left: [] } });
    done += 1;
    noted.length = 0;
  };
  // Ten fills can be taken back, and a round leaves three of them: from the fourth on the list is full.
  for (let warm = 0; warm < 5; warm += 1) await round();
  const size = sizeOf(bench, looks);
  const heap = heapMegabytes();
  while (done < fills) await round();
  expect(sizeOf(bench, looks)).toEqual(size);
  // Generous: what the engines keep for later is no leak, a page of cells a round would be.
  const grown = heapMegabytes() - heap;
  if (asked > 0) console.log(`${bench.host}: ${done} fills, ${grown.toFixed(1)} MB more`);
  expect(grown).toBeLessThan(20 + fills * 0.005);
  bench.dispose();
}

describe('fills in turns leave nothing behind', () => {
  test('in memory', () => {
    const bench = memoryBench();
    return soak(bench, asked || 100, () => 0);
  }, 1_200_000);

  test('in Excel’s client on the simulated workbook', () => {
    const bench = simulatedBench();
    const { book, kept } = bench.simulated;
    const looks = (): unknown => ({
      highlights: book.sheets.map((sheet) => sheet.highlights.length),
      dressings: book.sheets.map((sheet) => sheet.dressings.length),
      // Ranges that the client library never let go of would pile up in Excel, not here.
      kept: kept(),
    });
    return soak(bench, asked || 60, looks);
  }, 1_200_000);

  test('in the embedded spreadsheet', async () => {
    const bench = await embeddedBench();
    const looks = (): unknown => {
      const { styles: kept = {}, resources = [] } = bench.spreadsheet.workbook.save();
      // Identifiers within the rules are of one length. Of a sheet that went, the spreadsheet keeps an empty list of checks.
      const bare = (data: string): string => data.replaceAll(/,?"[\w-]{21}":\[\]/g, '');
      const rules = resources.map(({ name, data }) => [name, bare(data ?? '').length] as const);
      return { styles: Object.keys(kept).length, ...Object.fromEntries(rules) };
    };
    return soak(bench, asked || 60, looks);
  }, 1_200_000);
});
