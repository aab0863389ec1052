import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readSource } from '../../.config/metadata.mjs';

const root = resolve(import.meta.dirname, '../..');
const { functions } = readSource().metadata;
const inSite = (name: string) => readFileSync(join(root, 'dist', name), 'utf8');

describe('the finished site', () => {
  test('ties every ID to its function as the script loads, in the page and in the script of its own', () => {
    const scripts = [/src="(assets\/pane\/[^"]+\.js)"/.exec(inSite('pane.html'))?.[1] ?? '', 'functions.js'];
    for (const script of scripts) {
      const text = inSite(script);
      const tied = [...text.matchAll(/CustomFunctions\.associate\([`'"](\w+)[`'"]/g)].map((match) => match[1]);
      expect(tied).toEqual(functions.map(({ id }) => id));
    }
  });

  test('has help for every function, at the address that Excel is given', () => {
    const { functions: told }: { functions: { id: string; helpUrl: string }[] } = JSON.parse(inSite('functions.json'));
    for (const { id, helpUrl } of told) {
      expect(helpUrl).toMatch(/^https:\/\//);
      const path = new URL(helpUrl).pathname;
      expect(inSite(path.slice(path.indexOf('/help/') + 1))).toContain(`<h1>${id}</h1>`);
    }
  });

  test('the tryout page never asks for the client library', () => {
    expect(inSite('index.html')).not.toContain('office.js');
    expect(inSite('pane.html')).toContain('src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"');
  });
});
