import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type BrowserContext, type Page, chromium } from 'playwright-core';
import { launchOptions, needBrowser } from '../../.config/browser.mjs';

const clientLibrary = 'https://appsforoffice.microsoft.com/lib/1/hosted/';

export interface PageOptions {
  width?: number;
  height?: number;
  dark?: boolean;
  reducedMotion?: boolean;
  /** Windows' contrast themes. */
  forcedColors?: boolean;
  /** Does not wait until every script has come. */
  atOnce?: boolean;
}

export interface OpenPage {
  page: Page;
  /** Errors and warnings on the console, uncaught exceptions, and requests to any other place than the site itself. */
  problems: string[];
  close: () => Promise<void>;
}

/** The address the site under test is served at, ending in a slash. */
export function siteAddress(): string {
  const address = process.env.SETWRIGHT_SITE;
  if (!address)
    throw new Error('The site is not being served: run these tests with --config .config/vitest.config.ts.');
  return address;
}

/** Keeps the page to the site: anything else it asks for is refused and noted. */
async function keepInside(context: BrowserContext, problems: string[]): Promise<void> {
  await context.route('**', (route) => {
    const address = route.request().url();
    if (address.startsWith(siteAddress()) || /^(data|blob):/.test(address)) return route.continue();
    problems.push(`asked for ${address}`);
    return route.abort();
  });
}

/** Office's client library from its npm package, at the address the page takes it from. */
async function serveClientLibrary(context: BrowserContext): Promise<void> {
  const folder = dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/dist/office.js'));
  await context.route(`${clientLibrary}**`, async (route) => {
    const path = new URL(route.request().url()).pathname.slice(new URL(clientLibrary).pathname.length);
    const body = await readFile(join(folder, path)).catch(() => undefined);
    return body === undefined ? route.abort() : route.fulfill({ body, contentType: 'text/javascript' });
  });
}

function noteProblems(page: Page, problems: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') problems.push(message.text());
  });
  page.on('pageerror', (error) => problems.push(String(error)));
}

async function open(path: string, options: PageOptions, prepare?: (context: BrowserContext) => Promise<unknown>) {
  const browser = await chromium.launch(launchOptions(needBrowser()));
  try {
    const context = await browser.newContext({
      viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
      colorScheme: options.dark ? 'dark' : 'light',
      reducedMotion: options.reducedMotion ? 'reduce' : 'no-preference',
      forcedColors: options.forcedColors ? 'active' : 'none',
    });
    const problems: string[] = [];
    await keepInside(context, problems);
    await prepare?.(context);
    const page = await context.newPage();
    noteProblems(page, problems);
    // The spreadsheet is a lot of script: on a busy machine it takes longer than the thirty seconds allowed by default.
    await page.goto(siteAddress() + path, { timeout: 100_000, waitUntil: options.atOnce ? 'commit' : 'load' });
    return { page, problems, close: () => browser.close() };
  } catch (error) {
    await browser.close();
    throw error;
  }
}

/**
 * The page that needs no Excel, in a browser of its own. It has begun to load; wait for what the test needs.
 *
 * @param prepare is run before the page is asked for
 */
export function openTryout(
  options: PageOptions = {},
  prepare?: (context: BrowserContext) => Promise<unknown>,
): Promise<OpenPage> {
  return open('index.html', options, prepare);
}

/** The page Excel shows, in a plain browser: the real client library is there, Excel is not. */
export function openExcelPage(options: PageOptions = {}): Promise<OpenPage> {
  return open('pane.html', { width: 350, ...options }, serveClientLibrary);
}

/** A page of the help. */
export function openHelp(path = 'help.html', options: PageOptions = {}): Promise<OpenPage> {
  return open(path, options);
}
