import { lstatSync, readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

interface LockEntry {
  name?: string;
  version?: string;
  resolved?: string;
  integrity?: string;
  link?: boolean;
  inBundle?: boolean;
  hasInstallScript?: boolean;
}

const lock: { packages: Record<string, LockEntry> } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
const installed = Object.entries(lock.packages).filter(([path]) => path.includes('node_modules/'));
const names = (entries: [string, LockEntry][]) => entries.map(([path]) => path);

/** The end of a registry's address for a package, `/name/-/name-1.0.0.tgz`: no Git address, no stray archive. */
function isRegistryAddress(path: string, { name, version, resolved }: LockEntry): boolean {
  const fullName = name ?? path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
  const file = `${fullName.split('/').at(-1)}-${version}.tgz`;
  const address = new URL(resolved ?? '');
  return address.protocol === 'https:' && decodeURIComponent(address.pathname).endsWith(`/${fullName}/-/${file}`);
}

function bytesUnder(folder: string): number {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).reduce((sum, entry) => {
    const { size, blocks } = lstatSync(join(entry.parentPath, entry.name));
    return sum + (blocks === undefined ? size : blocks * 512);
  }, 0);
}

describe('the lock file', () => {
  test('holds no package that runs a script when it is installed', () => {
    expect(names(installed.filter(([, entry]) => entry.hasInstallScript))).toEqual([]);
  });

  test('takes every package from a registry, with its checksum, except the empty stand-ins in .config/stubs', () => {
    const links = installed.filter(([, entry]) => entry.link);
    expect(links.every(([, entry]) => entry.resolved?.startsWith('.config/stubs/'))).toBe(true);
    const fetched = installed.filter(([, entry]) => !entry.link && !entry.inBundle);
    expect(fetched.length).toBeGreaterThan(100);
    expect(names(fetched.filter(([, entry]) => !entry.integrity))).toEqual([]);
    const stray = fetched.filter(([path, entry]) => entry.resolved !== undefined && !isRegistryAddress(path, entry));
    expect(names(stray)).toEqual([]);
  });

  // Walking the tree takes seconds, so this is asked for: SETWRIGHT_MEASURE=1 npm test -- tests/tooling/lock.test.ts
  test.runIf(process.env.SETWRIGHT_MEASURE)('makes a node_modules under 750 MB', () => {
    expect(bytesUnder(join(root, 'node_modules')) / 1024 ** 2).toBeLessThan(750);
  });
});
