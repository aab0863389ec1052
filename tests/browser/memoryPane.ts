/** Opens the pane on a workbook in memory, in a browser. Nothing is served: the page is answered from here. */
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Page } from 'playwright-core';
import { rolldown } from 'rolldown';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { launchOptions, needBrowser } from '../../.config/browser.mjs';

const here = resolve(fileURLToPath(import.meta.url), '..');
const address = 'http://pane.test/';
const html =
  '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Setwright</title></head><body><div id="root"></div><script type="module" src="pane.js"></script></body></html>';

async function bundlePane(): Promise<string> {
  const made = await rolldown({
    input: join(here, 'paneOnMemory.tsx'),
    platform: 'browser',
    onLog: () => undefined,
    transform: { define: { 'process.env.NODE_ENV': '"production"' }, jsx: { runtime: 'automatic' } },
  });
  const { output } = await made.generate({ format: 'esm', codeSplitting: false });
  await made.close();
  return output[0].code;
}

export interface PaneOptions {
  readonly content?: 'empty' | 'setUp' | 'demo' | 'foreign';
  readonly theme?: 'light' | 'dark' | 'contrast';
  readonly width?: number;
  readonly height?: number;
  readonly forcedColors?: boolean;
}

/** One browser for a file of tests; each page has a workbook of its own. */
export class MemoryPanes {
  private browser: Browser | undefined;
  private script = '';
  readonly problems: string[] = [];

  async start(): Promise<void> {
    const [script, browser] = await Promise.all([bundlePane(), chromium.launch(launchOptions(needBrowser()))]);
    this.script = script;
    this.browser = browser;
  }

  /** Closes the pages of one test. */
  async clear(): Promise<void> {
    await Promise.all(this.browser?.contexts().map((context) => context.close()) ?? []);
  }

  async stop(): Promise<void> {
    await this.browser?.close();
  }

  async open({
    content = 'demo',
    theme = 'light',
    width = 320,
    height = 700,
    forcedColors = false,
  }: PaneOptions = {}): Promise<Page> {
    if (!this.browser) throw new Error('start first');
    const context = await this.browser.newContext({
      viewport: { width, height },
      forcedColors: forcedColors ? 'active' : 'none',
      reducedMotion: 'reduce',
    });
    await context.route('**', (route) => {
      const { pathname } = new URL(route.request().url());
      if (pathname === '/pane.js') return route.fulfill({ contentType: 'text/javascript', body: this.script });
      return pathname === '/'
        ? route.fulfill({ contentType: 'text/html', body: html })
        : route.fulfill({ status: 204 });
    });
    const page = await context.newPage();
    page.setDefaultTimeout(30_000);
    page.on('pageerror', (error) => this.problems.push(String(error)));
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') this.problems.push(message.text());
    });
    await page.goto(`${address}?content=${content}&theme=${theme}`);
    await page.locator('main').waitFor();
    return page;
  }
}

/** What an automatic check of WCAG 2.2 A and AA finds; nothing is left out. */
export async function accessFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html: element, failureSummary }) => `${id}: ${element.slice(0, 160)} ${failureSummary ?? ''}`),
  );
}

/** How many pixels a page is wider than its window, and whether the pane's own column is wider than it can show. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate(() => {
    const column = document.querySelector('main > div');
    const inner = column ? column.scrollWidth - column.clientWidth : 0;
    return Math.max(inner, document.documentElement.scrollWidth - innerWidth);
  });
}

/** Panes for the tests of one file: begun before them, cleared after each, which must leave no message of an error. */
export function panesForTests(): MemoryPanes {
  const panes = new MemoryPanes();
  beforeAll(() => panes.start());
  afterAll(() => panes.stop());
  afterEach(async () => {
    await panes.clear();
    expect(panes.problems.splice(0)).toEqual([]);
  });
  return panes;
}

/** Presses buttons by their names; each answers what the pane then said, and that is put away. */
export function presser(page: Page): (name: string | RegExp) => Promise<string> {
  const status = page.getByRole('status', { name: 'What happened' });
  const close = status.getByRole('button', { name: 'Close this message' });
  return async (name) => {
    await page.getByRole('button', { name, exact: true }).click();
    await close.waitFor();
    const said = (await status.textContent()) ?? '';
    await close.click();
    return said;
  };
}
