import { describe, expect, test } from 'vitest';
import { nodeIsNewEnough, stampOf, treeAgrees } from '../../.config/ready.mjs';

const lock = {
  packages: {
    '': { version: '1.0.0' },
    '.config/stubs/x': { version: '1.0.0' },
    'node_modules/x': { link: true },
    'node_modules/a': { version: '1.2.3', integrity: 'sha512-a' },
    'node_modules/b-other-platform': { version: '2.0.0', integrity: 'sha512-b', optional: true },
  },
};
const installed = { packages: { ...lock.packages } };

describe('installing on first use', () => {
  test.each([
    ['20.19.0', true],
    ['20.18.3', false],
    ['18.20.0', false],
    ['22.0.0', true],
  ])('Node %s: %s', (version, enough) => expect(nodeIsNewEnough(version)).toBe(enough));

  test('installs again after another lock file, another major version of Node or on another platform, and else not', () => {
    const stamp = stampOf('lock', '20.19.0', 'linux-x64');
    expect(stampOf('lock', '20.20.2', 'linux-x64')).toBe(stamp);
    expect(stampOf('other', '20.19.0', 'linux-x64')).not.toBe(stamp);
    expect(stampOf('lock', '22.1.0', 'linux-x64')).not.toBe(stamp);
    expect(stampOf('lock', '20.19.0', 'win32-x64')).not.toBe(stamp);
  });

  test('takes a tree that npm made from this lock file as it is, with or without packages for other platforms', () => {
    expect(treeAgrees(lock, installed)).toBe(true);
    const { 'node_modules/b-other-platform': _other, ...rest } = installed.packages;
    expect(treeAgrees(lock, { packages: rest })).toBe(true);
  });

  test('sees a package that is missing, changed or left over', () => {
    const { 'node_modules/a': _a, ...without } = installed.packages;
    expect(treeAgrees(lock, { packages: without })).toBe(false);
    const changed = { ...installed.packages, 'node_modules/a': { version: '1.2.4', integrity: 'sha512-c' } };
    expect(treeAgrees(lock, { packages: changed })).toBe(false);
    const leftOver = { ...installed.packages, 'node_modules/c': { version: '1.0.0', integrity: 'sha512-c' } };
    expect(treeAgrees(lock, { packages: leftOver })).toBe(false);
  });
});
