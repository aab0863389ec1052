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

  test('what writes, and each further screen, comes when it is needed, in scripts of at most 40 kB', () => {
    const later = scripts.filter((name) => !first.includes(name));
    expect(later.length).toBeGreaterThan(6);
    expect(later.filter((name) => kilobytes(name) > 40)).toEqual([]);
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
  const texts = readdirSync(folder)
    .filter((name) => name.endsWith('.js'))
    .map((name) => [name, readFileSync(join(folder, name), 'utf8')] as const);

  test('carries no large pictures in its scripts', () => {
    const carrying = texts.filter(([, text]) => /data:image\/[a-z]+;base64,[A-Za-z0-9+/=]{5000}/.test(text));
    expect(carrying.map(([name]) => name)).toEqual([]);
  });

  // A part that every workbook file has.
  const knowing = texts.filter(([, text]) => text.includes('[Content_Types].xml'));

  test('what knows the format of workbook files is three scripts of at most 60 kB gzipped, one that writes and two of the worker that reads, and the page begins with none of them', () => {
    expect(knowing).toHaveLength(3);
    for (const [name, text] of knowing) {
      expect(gzipSync(text, { level: 9 }).length / 1000).toBeLessThanOrEqual(60);
      expect(readFileSync(join(site, 'index.html'), 'utf8')).not.toContain(name);
      // Nothing of the spreadsheet or of ours stands in it, so that neither brings it along.
      expect(text).not.toMatch(/univer(?!s)|REGRIP/i);
    }
  });
});
