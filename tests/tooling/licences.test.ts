import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  allowedLicences,
  faultsIn,
  isAllowed,
  noticesText,
  packageFolder,
  readPackage,
} from '../../.config/notices.mjs';

const root = resolve(import.meta.dirname, '../..');

interface LockEntry {
  readonly version?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly link?: boolean;
  readonly license?: string;
}

const lock: { packages: Record<string, LockEntry> } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
/** Whatever could get into what ships: all that is not for development alone. */
const shipping = Object.entries(lock.packages).filter(
  ([path, entry]) => path.includes('node_modules/') && !entry.dev && !entry.devOptional && !entry.link,
);

describe('the licences of what may ship', () => {
  test('are all of the few that are allowed, as each package itself says', () => {
    expect(shipping.length).toBeGreaterThan(100);
    expect(faultsIn(shipping.map(([path]) => readPackage(path)))).toEqual([]);
  });

  test('are those of the locked versions: what is installed is what the lock file names', () => {
    const other = shipping.filter(([path, { version }]) => readPackage(path).version !== version).map(([path]) => path);
    expect(other).toEqual([]);
  });

  test('a licence that is not allowed, or none, is named with its package', () => {
    const told = { name: 'a', version: '1.0.0', author: undefined, texts: [] };
    expect(
      faultsIn([
        { ...told, licence: 'AGPL-3.0' },
        { ...told, licence: undefined },
        { ...told, licence: 'MIT' },
      ]),
    ).toEqual(['a 1.0.0: AGPL-3.0', 'a 1.0.0: names no licence']);
    expect(allowedLicences.filter((licence) => /GPL|SSPL|BUSL|CC-BY-NC/.test(licence))).toEqual([]);
    expect(isAllowed('GPL-2.0 OR MIT')).toBe(true);
    expect(isAllowed('MIT AND GPL-2.0')).toBe(false);
  });
});

describe('the file of notices', () => {
  test('gives a shared text once, and terms where a package holds none', () => {
    const told = { version: '1.0.0', licence: 'MIT', author: 'A. Maker' };
    const text = noticesText([
      { ...told, name: 'a', texts: ['Copyright X\n\nTerms'] },
      { ...told, name: 'b', texts: ['Copyright X\n\nTerms'] },
      { ...told, name: 'c', texts: [] },
    ]);
    expect(text).toContain('a 1.0.0 (MIT)\nb 1.0.0 (MIT)\n\nCopyright X\n\nTerms');
    expect(text).toMatch(/c 1\.0\.0 \(MIT\)\n\nCopyright A\. Maker\n\nPermission is hereby granted/);
  });

  test.each([
    [join(root, 'node_modules/react/index.js'), 'node_modules/react'],
    [join(root, 'node_modules/@a/b/node_modules/@c/d/x/y.js?z'), 'node_modules/@a/b/node_modules/@c/d'],
    [join(root, 'src/core/index.ts'), undefined],
  ])('knows whose a file is: %s', (file, folder) => expect(packageFolder(file)).toBe(folder));
});
