/** What tests of the pane on a workbook in memory have in common. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { MemoryPanes } from './onMemory';

export const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Rules whose findings do not count inside some part of the page. */
export interface LeftOut {
  readonly within: string;
  readonly rules: readonly string[];
}

/**
 * What an automatic check of WCAG 2.2 A and AA finds, by all of its rules or by some. One thing is always left out: an open list of
 * choices lies over the page, in no landmark, as Office's own lists do; its field, which is in one, owns it.
 */
export async function accessFaults(page: Page, rules?: string[], besides: readonly LeftOut[] = []): Promise<string[]> {
  const axe = new AxeBuilder({ page });
  const { violations } = await (rules ? axe.withRules(rules) : axe.withTags(TAGS)).analyze();
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
