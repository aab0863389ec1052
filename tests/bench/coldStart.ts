/**
 * npm run bench -- page: where the cold start of the try-out page goes. Each run has a browser with a fresh profile; where several builds
 * are given they take turns, so that a busy moment hits them alike. Medians are printed; nothing is held to them.
 */
import { gzipSync } from 'node:zlib';
import { chromium, type CDPSession, type Response } from 'playwright-core';
import { launchOptions, needBrowser } from '../../.config/browser.mjs';
import { figures, median, printTable } from './measure';

interface Site {
  readonly name: string;
  readonly address: string;
}

/** Milliseconds from navigation, unless a name says otherwise; null where a build does not say. */
type Figures = Readonly<Record<string, number | null>>;

const sites = JSON.parse(process.env.COLD_START_SITES ?? '[]') as readonly Site[];
const runs = Number(process.env.COLD_START_RUNS ?? 5);
const PATIENCE_MS = 120_000;

/** Watches for the first planned set from inside the page, so that no question from outside is waited for. */
function watchForPlan(): void {
  const watching = new MutationObserver(() => {
    if (!/\d clubs?:/.test(document.querySelector('.pane main')?.textContent ?? '')) return;
    performance.mark('planned');
    watching.disconnect();
  });
  watching.observe(document, { childList: true, subtree: true, characterData: true });
}

async function kilobytes(scripts: readonly Response[]): Promise<number> {
  const bodies = await Promise.all(scripts.map((script) => script.body()));
  return bodies.reduce((bytes, body) => bytes + gzipSync(body, { level: 9 }).length, 0) / 1000;
}

async function processorMs(session: CDPSession): Promise<Record<string, number>> {
  const { metrics } = await session.send('Performance.getMetrics');
  return Object.fromEntries(metrics.map(({ name, value }) => [name, value * 1000]));
}

async function once({ address }: Site): Promise<Figures> {
  const browser = await chromium.launch(launchOptions(needBrowser()));
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    const scripts: Response[] = [];
    page.on('response', (response) => {
      if (response.url().endsWith('.js')) scripts.push(response);
    });
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    await page.addInitScript(watchForPlan);
    await page.goto(`${address}index.html`, { waitUntil: 'commit', timeout: PATIENCE_MS });
    await page.waitForFunction(() => performance.getEntriesByName('planned').length > 0, null, {
      timeout: PATIENCE_MS,
      polling: 50,
    });
    const loaded = scripts.length;
    const spent = await processorMs(session);
    await page.locator('.sheet-waiting').waitFor({ state: 'detached', timeout: PATIENCE_MS });
    const inAll = await processorMs(session);
    const at = await page.evaluate(() => {
      const first = (name: string): number | null => performance.getEntriesByName(name)[0]?.startTime ?? null;
      return {
        'first paint': first('first-paint'),
        'scripts of the pane run': first('scripts'),
        'demo in': first('demo'),
        'set planned in the pane': first('planned'),
        'scripts of the spreadsheet run': first('spreadsheet scripts'),
        'spreadsheet made': first('spreadsheet'),
        'sheet painted': performance.now(),
      };
    });
    return {
      ...at,
      'scripts fetched before the plan, kB gzip': await kilobytes(scripts.slice(0, loaded)),
      'scripts fetched in all, kB gzip': await kilobytes(scripts),
      'main thread busy before the plan, of processor': spent.TaskDuration ?? null,
      'main thread busy before the sheet, of processor': inAll.TaskDuration ?? null,
    };
  } finally {
    await browser.close();
  }
}

function middle(all: readonly Figures[], name: string): string {
  const values = all.flatMap((each) => each[name] ?? []);
  return values.length === 0 ? '' : figures(median(values));
}

const found = new Map<string, Figures[]>(sites.map(({ name }) => [name, []]));
for (let run = 0; run < runs; run += 1) {
  for (const site of sites) found.get(site.name)?.push(await once(site));
}
const names = Object.keys(found.values().next().value?.[0] ?? {});
printTable(
  `The try-out page from navigation, ms unless said otherwise: medians of ${runs} cold starts each`,
  ['', ...sites.map(({ name }) => name)],
  names.map((name) => [name, ...sites.map((site) => middle(found.get(site.name) ?? [], name))]),
);
