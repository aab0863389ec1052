import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { WorkbookPort } from '../../src/workbook/port';
import { memoryBench } from '../safety/benches';
import { tapped } from '../safety/tapped';
import { prepare, said, TRIALS } from '../safety/trials';

const root = resolve(import.meta.dirname, '../..');
const source = (path: string): string => readFileSync(resolve(root, path), 'utf8');

/** What a file exports as functions. */
function exported(path: string): string[] {
  return [...source(path).matchAll(/^export (?:async )?function (\w+)/gm)].map(([, name]) => name ?? '');
}

describe('the list of trials', () => {
  test('holds everything that the pane does on a workbook', () => {
    const folder = 'src/pane/view/tools';
    const files = readdirSync(resolve(root, folder)).filter((name) => /Deeds?\.ts$/.test(name));
    const deeds = files.flatMap((name) => exported(`${folder}/${name}`));
    // `act` does whatever deed it is handed.
    const acts = exported('src/pane/acts.ts').filter((name) => name !== 'act');
    expect(deeds.length).toBeGreaterThan(20);
    expect(new Set(TRIALS.map(({ of }) => of))).toEqual(new Set([...acts, ...deeds, 'bringUpToDate']));
  });

  test('comes to every place from which the workbook is written', async () => {
    const folder = 'src/workbook';
    const writes = readdirSync(resolve(root, folder))
      // A port in front of a port writes nothing of its own.
      .filter(
        (name) =>
          name.endsWith('.ts') &&
          name !== 'connecting.ts' &&
          /\.(apply|revert|remember)\(/.test(source(`${folder}/${name}`)),
      )
      .map((name) => name.replace('.ts', ''));
    const met = new Set<string>();
    for (const trial of TRIALS) {
      const bench = await memoryBench();
      await prepare(trial, bench.port());
      await trial.run(noting(bench.port(), met));
      bench.dispose();
    }
    expect(writes.filter((name) => !met.has(name))).toEqual([]);
  });

  test.each(TRIALS)('$name goes through', async (trial) => {
    const bench = await memoryBench();
    await prepare(trial, bench.port());
    const end = await trial.run(bench.port());
    expect(end.kind, said(end)).toBe('done');
    bench.dispose();
  });
});

/** Notes from which files of ours the workbook is written. */
function noting(port: WorkbookPort, met: Set<string>): WorkbookPort {
  return tapped(port, ({ method }, go) => {
    if (method === 'apply' || method === 'revert' || method === 'remember') {
      for (const [, name] of (new Error().stack ?? '').matchAll(/src\/workbook\/(\w+)\.ts/g)) met.add(name ?? '');
    }
    return go();
  });
}
