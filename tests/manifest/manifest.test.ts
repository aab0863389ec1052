import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { iconPng, iconSizes } from '../../.config/icons.mjs';
import { manifestXml } from '../../.config/manifest.mjs';
import { checkedBase } from '../../.config/site.mjs';

const root = resolve(import.meta.dirname, '../..');
const base = 'https://shop.example/setwright';
const { version }: { version: string } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const template = readFileSync(join(root, 'manifest/manifest.xml'), 'utf8');
const xml = manifestXml(template, { base, version }).replace(/<!--[\s\S]*?-->/g, '');

const all = (pattern: RegExp) => [...xml.matchAll(pattern)].map((match) => match[1] ?? '');
const only = (pattern: RegExp) => {
  const found = all(pattern);
  expect(found, String(pattern)).toHaveLength(1);
  return found[0] ?? '';
};

/** The resources of one kind, id to value. */
function resources(kind: 'Images' | 'Urls' | 'ShortStrings' | 'LongStrings'): Map<string, string> {
  const [, body = ''] = new RegExp(`<bt:${kind}>([\\s\\S]*?)</bt:${kind}>`).exec(xml) ?? [];
  const entries = [...body.matchAll(/ id="([^"]+)" DefaultValue="([^"]*)"/g)];
  return new Map(entries.map(([, id = '', value = '']) => [id, value]));
}

const images = resources('Images');
const urls = resources('Urls');
const shortStrings = resources('ShortStrings');
const longStrings = resources('LongStrings');
const defined = [images, urls, shortStrings, longStrings].flatMap((kind) => [...kind.keys()]);

/** The part between an element's tags, the element named once. */
const inside = (element: string, attribute = '') =>
  only(new RegExp(`<${element}${attribute ? `[^>]*${attribute}` : ''}[^>]*>([\\s\\S]*?)</${element}>`, 'g'));
const residIn = (text: string) => /resid="([^"]+)"/.exec(text)?.[1] ?? '';

function pngSize(file: string): { width: number; height: number } {
  const data = readFileSync(file);
  expect(data.subarray(1, 4).toString('latin1')).toBe('PNG');
  return { width: data.readUInt32BE(16), height: data.readUInt32BE(20) };
}

describe('the manifest', () => {
  test('has an ID of the right form, and the package’s version with a fourth part', () => {
    expect(only(/<Id>(.*)<\/Id>/g)).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(only(/<Version>(.*)<\/Version>/g)).toBe(`${version}.0`);
  });

  test('fills every place held in the template', () => expect(xml).not.toMatch(/[{}]/));

  test('gives https addresses under the site’s base only', () => {
    const values = all(/DefaultValue="([^"]*:\/\/[^"]*)"/g);
    expect(values.length).toBeGreaterThan(8);
    expect(values.filter((value) => !value.startsWith(`${base}/`))).toEqual([]);
  });

  test('defines every resource once and uses each', () => {
    const used = new Set(all(/resid="([^"]+)"/g));
    expect(new Set(defined).size).toBe(defined.length);
    expect([...used].sort()).toEqual([...defined].sort());
    // 32 characters are the most that Office takes for a resource's ID.
    expect(defined.filter((id) => id.length > 32)).toEqual([]);
  });

  test('keeps its texts within the lengths Office takes', () => {
    const longest = (values: Iterable<string>) => Math.max(...[...values].map((value) => value.length));
    expect(longest(shortStrings.values())).toBeLessThanOrEqual(125);
    expect(longest(longStrings.values())).toBeLessThanOrEqual(250);
    expect(longest([...urls.values(), ...images.values()])).toBeLessThanOrEqual(2048);
    expect(only(/<DisplayName DefaultValue="([^"]*)"/g).length).toBeLessThanOrEqual(125);
    expect(only(/<Description DefaultValue="([^"]*)"/g).length).toBeLessThanOrEqual(250);
  });

  test('asks for a workbook, a shared runtime and custom functions', () => {
    expect(all(/<Host Name="([^"]*)"/g)).toEqual(['Workbook']);
    expect(all(/<Host xsi:type="([^"]*)"/g)).toEqual(['Workbook']);
    const sets = [...xml.matchAll(/<Set Name="([^"]+)" MinVersion="([^"]+)"/g)].map(
      ([, name, least]) => `${name} ${least}`,
    );
    expect(sets.sort()).toEqual(['CustomFunctionsRuntime 1.1', 'SharedRuntime 1.1']);
  });

  test('runs functions and pane in one lasting runtime: the same page everywhere', () => {
    const runtime = only(/(<Runtime [^>]*>)/g);
    expect(runtime).toContain('lifetime="long"');
    const page = residIn(runtime);
    expect(urls.get(page)).toBe(`${base}/pane.html`);
    expect(residIn(inside('Page'))).toBe(page);
    expect(residIn(only(/(<FunctionFile [^>]*>)/g))).toBe(page);
    expect(residIn(inside('Action', 'ShowTaskpane'))).toBe(page);
    expect(inside('Action', 'ShowTaskpane')).toMatch(/<TaskpaneId>.+<\/TaskpaneId>/);
  });

  test('tells Excel where the functions and their metadata are, and their namespace', () => {
    const point = inside('ExtensionPoint', 'xsi:type="CustomFunctions"');
    expect(urls.get(residIn(/<Script>[\s\S]*?<\/Script>/.exec(point)?.[0] ?? ''))).toBe(`${base}/functions.js`);
    expect(urls.get(residIn(/<Metadata>[\s\S]*?<\/Metadata>/.exec(point)?.[0] ?? ''))).toBe(`${base}/functions.json`);
    expect(shortStrings.get(residIn(/<Namespace[^>]*>/.exec(point)?.[0] ?? ''))).toBe('REGRIP');
  });

  test('puts one button on the Home tab', () => {
    expect(all(/<OfficeTab id="([^"]*)"/g)).toEqual(['TabHome']);
    expect(all(/<Control xsi:type="([^"]*)"/g)).toEqual(['Button']);
  });

  test('shows icons that exist, in the sizes Office asks for', () => {
    // Excel demands 16, 32 and 80 for a button; a task pane add-in is listed with 32 and, on fine screens, 64.
    const sized = [...xml.matchAll(/<bt:Image size="(\d+)" resid="([^"]+)"/g)].map(([, size, id]) => [
      Number(size),
      images.get(id ?? ''),
    ]);
    expect(new Set(sized.map(([size]) => size))).toEqual(new Set([16, 32, 64, 80]));
    const listed = [
      [32, only(/<IconUrl DefaultValue="([^"]*)"/g)],
      [64, only(/<HighResolutionIconUrl DefaultValue="([^"]*)"/g)],
    ];
    for (const [size, address] of [...sized, ...listed]) {
      const file = join(root, 'manifest', String(address).slice(base.length));
      expect(existsSync(file), String(address)).toBe(true);
      expect(pngSize(file)).toEqual({ width: size, height: size });
    }
  });
});

describe('the icons', () => {
  test.each(iconSizes)('%i pixels: the file is what the script draws, and there is something on it', (size) => {
    const drawn = iconPng(size);
    const kept = readFileSync(join(root, `manifest/icons/icon-${size}.png`));
    // Compared unpacked, since another Node may pack the same picture otherwise.
    const pixels = (data: Buffer) => inflateSync(data.subarray(41, data.length - 16));
    expect(pixels(kept).equals(pixels(drawn))).toBe(true);
    const covered = pixels(drawn).filter((value, index) => index % (size * 4 + 1) !== 0 && value > 0).length;
    expect(covered).toBeGreaterThan(size * size * 0.5);
  });
});

describe('the address a build is made for', () => {
  test.each([
    ['https://shop.example', 'https://shop.example'],
    ['https://shop.example/a/b/', 'https://shop.example/a/b'],
    ['https://localhost:3000', 'https://localhost:3000'],
  ])('%s', (text, wanted) => expect(checkedBase(text)).toBe(wanted));

  test.each(['shop.example', 'http://shop.example', 'https://shop.example/?a=1', 'https://shop.example/#x', ''])(
    'refuses "%s" with a reason',
    (text) => expect(() => checkedBase(text)).toThrow(/^base is /),
  );
});
