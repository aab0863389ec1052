/** `npm run build -- --env base=…`: everything that is told by an address is told under the base, a path of it too. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { baseFrom, writePlainFiles } from '../../.config/site.mjs';

const base = baseFrom(['--env', 'base=https://shop.example/tools/setwright/']);
let folder = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-base-'));
  await writePlainFiles(folder, base);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const inFolder = (address: string): string => join(folder, address.slice(base.length + 1));

describe('a build for an address with a path', () => {
  test.each([
    [['--env', 'base=https://a.example/b'], 'https://a.example/b'],
    [['--env=base=https://a.example/b/'], 'https://a.example/b'],
    [['--base=https://a.example'], 'https://a.example'],
    [[], 'https://localhost:3000'],
  ])('%j is understood', (words, wanted) => expect(baseFrom(words)).toBe(wanted));

  test('gives Excel a help page for each function, under the base, and the page is there', () => {
    const { functions }: { functions: { helpUrl: string }[] } = JSON.parse(
      readFileSync(join(folder, 'functions.json'), 'utf8'),
    );
    expect(functions.length).toBeGreaterThan(20);
    for (const { helpUrl } of functions) {
      expect(helpUrl.startsWith(`${base}/help/functions/`)).toBe(true);
      expect(existsSync(inFolder(helpUrl)), helpUrl).toBe(true);
    }
  });

  test('gives the manifest addresses under the base; what webpack does not make is there', () => {
    const manifest = readFileSync(join(folder, 'manifest.xml'), 'utf8');
    const addresses = [...manifest.matchAll(/DefaultValue="(https:[^"]+)"/g)].map(([, address]) => address ?? '');
    expect(addresses.length).toBeGreaterThan(8);
    expect(addresses.filter((address) => !address.startsWith(`${base}/`))).toEqual([]);
    const made = new Set([`${base}/pane.html`, `${base}/functions.js`]);
    expect(addresses.filter((address) => !made.has(address) && !existsSync(inFolder(address)))).toEqual([]);
  });

  test('the help itself names no base: it works wherever it is put, and from a folder', () => {
    const page = readFileSync(join(folder, 'help/functions/SETPLAN.html'), 'utf8');
    expect(page).not.toContain('shop.example');
    const styles = /<link rel="stylesheet" href="([^"]+)"/.exec(page)?.[1] ?? '';
    expect(existsSync(join(folder, 'help/functions', styles))).toBe(true);
  });
});
