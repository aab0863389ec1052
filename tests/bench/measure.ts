/** Measuring with a machine that does other things too: warm up, take turns, believe the median. */

export interface Subject {
  readonly name: string;
  readonly run: () => unknown;
}

const WARM_UP = 5;
const ROUNDS = 15;

/** Median milliseconds of each, all taking turns so that a busy moment hits them alike. */
export function medians(subjects: readonly Subject[], rounds = ROUNDS): Map<string, number> {
  const times = new Map(subjects.map(({ name }) => [name, [] as number[]]));
  for (let round = -WARM_UP; round < rounds; round += 1) {
    for (const { name, run } of subjects) {
      collectGarbage();
      const start = performance.now();
      run();
      const passed = performance.now() - start;
      if (round >= 0) times.get(name)?.push(passed);
    }
  }
  return new Map([...times].map(([name, each]) => [name, median(each)]));
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? NaN;
  return sorted.length % 2 ? upper : ((sorted[middle - 1] ?? NaN) + upper) / 2;
}

/** What one subject leaves behind is not to be swept up at another's cost. */
export function collectGarbage(): void {
  (globalThis as { gc?: () => void }).gc?.();
}

/** Three figures are as many as a measurement earns. */
export function figures(value: number): string {
  return value >= 100 ? String(Math.round(value)) : String(Number(value.toPrecision(3)));
}

export function printTable(title: string, headers: readonly string[], rows: readonly (readonly string[])[]): void {
  const widths = headers.map((header, at) => Math.max(header.length, ...rows.map((row) => (row[at] ?? '').length)));
  const line = (cells: readonly string[]): string =>
    cells.map((cell, at) => (at === 0 ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0))).join('  ');
  console.log(`\n${title}\n${line(headers)}`);
  for (const row of rows) console.log(line(row));
}
