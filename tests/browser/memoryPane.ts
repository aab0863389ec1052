/** What tests of the pane on a workbook in memory have in common. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { MemoryPanes } from './onMemory';

declare global {
  interface Window {
    axe?: { run(inside: Document, how: object): Promise<{ violations: Findings }> };
  }
}

export const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Rules whose findings do not count inside some part of the page. */
export interface LeftOut {
  readonly within: string;
  readonly rules: readonly string[];
}

/** Colours half way between two looks are nobody's: judged is what stands when all that moves, and comes to an end, has ended. */
function settled(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const ending = () =>
      document
        .getAnimations()
        .filter(
          ({ playState, effect }) => playState === 'running' && Number.isFinite(effect?.getComputedTiming().endTime),
        );
    await drawn();
    for (let moving = ending(); moving.length > 0; moving = ending()) {
      await Promise.allSettled(moving.map(({ finished }) => finished));
      await drawn();
    }
  });
}

type Findings = Awaited<ReturnType<AxeBuilder['analyze']>>['violations'];

/** What axe-core finds. It stays in a page once it was there: reading it in takes as long as looking at a screen. */
async function violationsOf(page: Page, runOnly: { type: 'rule' | 'tag'; values: string[] }): Promise<Findings> {
  const options = { runOnly, resultTypes: ['violations' as const] };
  const again = await page.evaluate(async (how) => (await window.axe?.run(document, how))?.violations, options);
  // In the page itself: nothing here has frames, whose findings would be put together in a second page.
  return again ?? (await new AxeBuilder({ page }).options(options).setLegacyMode().analyze()).violations;
}

/**
 * What an automatic check of WCAG 2.2 A and AA finds, by all of its rules or by some. One thing is always left out: an open list of
 * choices lies over the page, in no landmark, as Office's own lists do; its field, which is in one, owns it.
 */
export async function accessFaults(page: Page, rules?: string[], besides: readonly LeftOut[] = []): Promise<string[]> {
  await settled(page);
  const violations = await violationsOf(page, rules ? { type: 'rule', values: rules } : { type: 'tag', values: TAGS });
  const found = violations.flatMap(({ id, nodes }) => nodes.map((node) => ({ id, ...node })));
  const outside = [{ within: '[role=listbox]', rules: ['region'] }, ...besides];
  const isLeft = ({ id, target }: (typeof found)[number]) =>
    page.evaluate(
      ([selector, parts]) => parts.some((part) => Boolean(document.querySelector(selector)?.closest(part))),
      [String(target[0]), outside.filter((each) => each.rules.includes(id)).map(({ within }) => within)] as const,
    );
  const left = await Promise.all(found.map(isLeft));
  return found
    .filter((_, at) => !left[at])
    .map(({ id, html: element, failureSummary }) => `${id}: ${element.slice(0, 160)} ${failureSummary ?? ''}`);
}

/** How many pixels a page is wider than its window, and whether the pane's own column is wider than it can show. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate(() => {
    const column = document.querySelector('main > div');
    const inner = column ? column.scrollWidth - column.clientWidth : 0;
    return Math.max(inner, document.documentElement.scrollWidth - innerWidth);
  });
}

/** What moves although the person asked for nothing to. */
export function moving(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const long = (durations: string) =>
      durations.split(', ').some((each) => Number.parseFloat(each) * (each.endsWith('ms') ? 1 : 1000) > 20);
    return [...document.querySelectorAll('body *')].flatMap((each) =>
      [undefined, '::before', '::after'].flatMap((part) => {
        const { transitionDuration, animationDuration, animationName } = getComputedStyle(each, part);
        const moves = long(transitionDuration) || (animationName !== 'none' && long(animationDuration));
        return moves ? [`${each.tagName} ${each.className}`] : [];
      }),
    );
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
