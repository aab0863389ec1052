import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const site = resolve(import.meta.dirname, '../../dist');
const page = readFileSync(join(site, 'pane.html'), 'utf8');
const scripts = readdirSync(join(site, 'assets/pane')).filter((name) => name.endsWith('.js'));
const kilobytes = (name: string) => gzipSync(readFileSync(join(site, 'assets/pane', name)), { level: 9 }).length / 1000;

describe('the page Excel shows', () => {
  const sum = (names: readonly string[]) => names.reduce((total, name) => total + kilobytes(name), 0);
  const first = scripts.filter((name) => page.includes(name));

  test('the scripts that it starts with are at most 200 kB gzipped', () => {
    expect(first.length).toBeGreaterThan(0);
    expect(sum(first)).toBeLessThanOrEqual(200);
  });

  test('those of the screens that help choosing come when one is looked at, at most 40 kB', () => {
    const later = scripts.filter((name) => !first.includes(name));
    expect(later.length).toBeGreaterThan(0);
    expect(sum(later)).toBeLessThanOrEqual(40);
  });

  test('holds nothing of the embedded spreadsheet', () => {
    const files = readdirSync(join(site, 'assets/pane')).map((name) => join(site, 'assets/pane', name));
    const holding = [...files, join(site, 'functions.js')].filter((file) =>
      /univer(?!s)/i.test(readFileSync(file, 'utf8')),
    );
    expect(holding).toEqual([]);
  });

  test('takes its styles from files, and its policy allows no inline script or style', () => {
    expect(page).toMatch(/<link [^>]*href="assets\/pane\/[^"]+\.css"/);
    const policy = /Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1] ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|frame-ancestors/);
    const hosts = policy.match(/https?:\/\/[^\s;]+/g);
    expect(hosts).toEqual(['https://appsforoffice.microsoft.com']);
  });
});

describe('the try-out page', () => {
  const folder = join(site, 'assets/tryout');
  const files = readdirSync(folder).filter((name) => name.endsWith('.js'));
  const isSaving = (name: string) => name.startsWith('save.');

  test('what knows the format of workbook files is in a script of its own, which is asked for when a copy is saved', () => {
    // A part of every such file, by the name that the format gives it.
    const knowing = files.filter((name) => readFileSync(join(folder, name), 'utf8').includes('[Content_Types].xml'));
    expect(knowing).toHaveLength(1);
    expect(knowing.every(isSaving)).toBe(true);
    expect(readFileSync(join(site, 'index.html'), 'utf8')).not.toContain('save.');
  });

  test('that script is at most 60 kB gzipped', () => {
    const size = files
      .filter(isSaving)
      .reduce((sum, name) => sum + gzipSync(readFileSync(join(folder, name)), { level: 9 }).length / 1000, 0);
    expect(size).toBeGreaterThan(5);
    expect(size).toBeLessThanOrEqual(60);
  });
});
