/** Opens the pane on a workbook in memory, in a browser. Nothing is served: the page is answered from here. */
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { rolldown } from 'rolldown';
import { launchOptions, needBrowser } from '../../.config/browser.mjs';
import { root } from '../../.config/paths.mjs';

const address = 'http://pane.test/';
const html =
  '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Setwright</title></head><body><div id="root"></div><script type="module" src="pane.js"></script></body></html>';

async function bundlePane(): Promise<string> {
  const made = await rolldown({
    input: join(root, 'tests/browser/paneOnMemory.tsx'),
    platform: 'browser',
    onLog: () => undefined,
    transform: { define: { 'process.env.NODE_ENV': '"production"' }, jsx: { runtime: 'automatic' } },
  });
  const { output } = await made.generate({ format: 'esm', codeSplitting: false });
  await made.close();
  return output[0].code;
}

export interface PaneOptions {
  readonly content?: 'empty' | 'setUp' | 'demo' | 'foreign' | 'older';
  readonly theme?: 'light' | 'dark' | 'contrast';
  readonly width?: number;
  readonly height?: number;
  readonly forcedColors?: boolean;
  /** How the first look at the workbook goes. */
  readonly look?: 'well' | 'never' | 'fails';
  /** Device pixels for each of the page's: 2 is a zoom of 200 %. */
  readonly zoom?: number;
}

/** What a window is like from its first moment on. */
interface Kind {
  readonly viewport: { readonly width: number; readonly height: number };
  readonly zoom: number;
  readonly forcedColors: boolean;
}

/** One browser for a file of tests; each page has a workbook of its own. */
export class MemoryPanes {
  private browser: Browser | undefined;
  private readonly contexts = new Map<string, Promise<BrowserContext>>();
  private script = '';
  readonly problems: string[] = [];

  async start(): Promise<void> {
    const [script, browser] = await Promise.all([bundlePane(), chromium.launch(launchOptions(needBrowser()))]);
    this.script = script;
    this.browser = browser;
  }

  /** Closes the pages of one test. */
  async clear(): Promise<void> {
    const pages = this.browser?.contexts().flatMap((context) => context.pages()) ?? [];
    await Promise.all(pages.map((page) => page.close()));
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
    look = 'well',
    zoom = 1,
  }: PaneOptions = {}): Promise<Page> {
    const context = await this.contextFor({ viewport: { width, height }, zoom, forcedColors });
    const page = await context.newPage();
    page.setDefaultTimeout(30_000);
    page.on('pageerror', (error) => this.problems.push(String(error)));
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') this.problems.push(message.text());
    });
    await page.goto(`${address}?content=${content}&theme=${theme}&look=${look}`);
    await page.locator('main').waitFor();
    return page;
  }
  /**
   * One for each kind of window. It keeps nothing of a page, since the pane stores nothing in a browser, and the second page in it is there
   * in half the time.
   */
  private contextFor(kind: Kind): Promise<BrowserContext> {
    const key = JSON.stringify(kind);
    const context = this.contexts.get(key) ?? this.makeContext(kind);
    this.contexts.set(key, context);
    return context;
  }

  private async makeContext({ viewport, zoom, forcedColors }: Kind): Promise<BrowserContext> {
    if (!this.browser) throw new Error('start first');
    const context = await this.browser.newContext({
      viewport,
      deviceScaleFactor: zoom,
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
    return context;
  }
}
