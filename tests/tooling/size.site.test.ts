import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const site = resolve(import.meta.dirname, '../../dist');
const page = readFileSync(join(site, 'pane.html'), 'utf8');
const scripts = readdirSync(join(site, 'assets/pane')).filter((name) => name.endsWith('.js'));
const kilobytes = (name: string) => gzipSync(readFileSync(join(site, 'assets/pane', name)), { level: 9 }).length / 1000;

describe('the page Excel shows', () => {
  test('its scripts, the ones loaded later too, are at most 200 kB gzipped', () => {
    expect(scripts.length).toBeGreaterThan(0);
    expect(scripts.some((name) => page.includes(name))).toBe(true);
    expect(scripts.reduce((sum, name) => sum + kilobytes(name), 0)).toBeLessThanOrEqual(200);
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
