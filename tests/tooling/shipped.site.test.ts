/** What a build puts into dist/: names that change with what is in them, no source maps, whose work is in it. */
import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const site = resolve(import.meta.dirname, '../../dist');
const files = readdirSync(site, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) =>
    join(entry.parentPath, entry.name)
      .slice(site.length + 1)
      .replaceAll('\\', '/'),
  );
const text = (file: string): string => readFileSync(join(site, file), 'utf8');

/** What is asked for by an address that is written down elsewhere: in Excel, in a manifest, in a person's bookmarks. */
const STABLE = [/\.html$/, /^functions\.js(?:on)?$/, /^manifest\.xml$/, /^notices\.txt$/, /^icons\/icon-\d+\.png$/];

describe('the built site', () => {
  test('names every file after what is in it, but for those whose address must stay', () => {
    const others = files.filter((file) => !STABLE.some((stable) => stable.test(file)));
    expect(others.length).toBeGreaterThan(20);
    expect(others.filter((file) => !/^assets\/\w+\/[\w.~-]+\.[0-9a-f]{10}\.\w+$/.test(file))).toEqual([]);
    expect(others.filter((file) => !/\.(?:js|css|woff2?|ttf|png|svg)$/.test(file))).toEqual([]);
  });

  test('holds no source maps, and no way to one', () => {
    expect(files.filter((file) => file.endsWith('.map'))).toEqual([]);
    const pointing = files.filter((file) => /\.(?:js|css)$/.test(file) && /[#@] sourceMappingURL=/.test(text(file)));
    expect(pointing).toEqual([]);
  });

  test('every page has a policy that begins by allowing nothing, and none lets a script be written into the page', () => {
    const pages = files.filter((file) => file.endsWith('.html'));
    expect(pages.length).toBeGreaterThan(40);
    for (const page of pages) {
      const policy = /Content-Security-Policy"\s+content="([^"]+)"/.exec(text(page))?.[1] ?? '';
      expect(policy, page).toMatch(/^default-src 'none';/);
      expect(/script-src([^;]*)/.exec(policy)?.[1] ?? '', page).not.toMatch(/unsafe|data:|\*/);
      // The one exception: the embedded spreadsheet of the try-out page writes its theme into style elements.
      if (page !== 'index.html') expect(policy, page).not.toContain('unsafe');
      expect(text(page), page).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/);
    }
  });

  test('says whose work is in it', () => {
    const notices = text('notices.txt');
    for (const name of [
      'react',
      'react-dom',
      '@fluentui/react-components',
      '@univerjs/core',
      'dinero.js',
      'munkres',
      'hucre',
      'rxjs',
    ])
      expect(notices).toMatch(new RegExp(`^${name.replace('/', '\\/')} [\\d.]+ \\(`, 'm'));
    // A package for development alone has no place in it.
    expect(notices).not.toMatch(/^(?:vitest|webpack|typescript) \d/m);
  });
});
