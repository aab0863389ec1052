import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

function calc(...words: string[]) {
  const { stdout, stderr, status } = spawnSync(process.execPath, [join(root, '.config/calc.mjs'), ...words], {
    encoding: 'utf8',
  });
  return { said: stdout.trim(), complained: stderr, status };
}

describe('npm run calc', () => {
  // 50 g of grip and 2 × 1.7613 g of tape (10.5 in × 2 in at 130 g/m²), by hand.
  test('prints a number', () => {
    const { said, status } = calc('GRIPMASS', '50', '2');
    expect(Number(said)).toBeCloseTo(53.5226, 4);
    expect(status).toBe(0);
  });

  // D3: three letters of ten points and three more.
  test('takes text that is no JSON, any case, and the name as a cell has it', () => {
    expect(calc('topoints', 'D3').said).toBe('33');
    expect(calc('REGRIP.TOPOINTS', '"D3"').said).toBe('33');
  });

  test('prints a text as JSON, and takes ranges', () => {
    expect(calc('TOREADING', '39.96').said).toBe('"E0.0"');
    const plan = calc(
      'SETPLAN',
      '[["Club","New grip"],["7 iron","R1"]]',
      '[["Item","Core (in)","Mass (g)"],["R1",0.6,50]]',
    );
    expect(plan.status).toBe(0);
    expect(JSON.parse(plan.said)).toHaveLength(2);
  });

  test('prints a cell error with its reason, and fails', () => {
    const { said, status } = calc('GRIPMASS', 'heavy', '2');
    expect(said).toMatch(/^#VALUE! .*gripGrams/);
    expect(status).toBe(1);
  });

  test('names the functions there are where it is asked for another', () => {
    const { complained, status } = calc('NOSUCH');
    expect(complained).toContain('There is no function NOSUCH.');
    expect(complained).toContain('SETPLAN');
    expect(status).toBe(2);
  });
});
