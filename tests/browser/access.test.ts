/** Every screen of the pane in every state, judged by axe-core and by what WCAG 2.2 asks beyond it. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { ThemeName } from '../../src/pane/state/hostTheme';
import { SCREENS } from '../../src/pane/state/tools';
import { accessFaults, moving, overflow, panesForTests } from './memoryPane';
import { BEFORE, SITUATIONS } from './situations';

const panes = panesForTests();

/** WCAG 2.2, 2.5.8: a target is at least 24 px either way, unless it stands in a line of text. */
function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>(
      'button, summary, select, textarea, input, a[href], [role=tab], [role=combobox], [role=option]',
    );
    return [...all].flatMap((each) => {
      const inSentence = each.matches('.fui-Link') && each.parentElement?.matches('p');
      if (!each.checkVisibility() || inSentence) return [];
      // What is drawn around a field, and the label beside a box to tick, are pressed as well as the field itself.
      const labels = [...((each as HTMLInputElement).labels ?? [])];
      const around = each.matches('input, select, textarea') ? each.parentElement : null;
      const boxes = [each, ...labels, ...(around ? [around] : [])].map((one) => one.getBoundingClientRect());
      const large = boxes.some(({ width, height }) => width >= 23.9 && height >= 23.9);
      return large ? [] : [`${each.outerHTML.slice(0, 120)} ${JSON.stringify(each.getBoundingClientRect())}`];
    });
  });
}

/** Fields that are said to be faulty and do not say what is wrong, and descriptions that lead nowhere. */
function untoldFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const described = (each: Element) =>
      (each.getAttribute('aria-describedby') ?? '')
        .split(' ')
        .filter(Boolean)
        .map((id) => document.getElementById(id));
    const faulty = [...document.querySelectorAll('[aria-invalid=true]')];
    return [
      ...faulty.filter((each) => !described(each).some((text) => text?.textContent?.trim())),
      ...[...document.querySelectorAll('[aria-describedby]')].filter((each) => described(each).includes(null)),
    ].map((each) => each.outerHTML.slice(0, 160));
  });
}

/** Tables without a caption or a heading, drawings without words. */
function unnamed(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const tables = [...document.querySelectorAll('table')].filter(
      (each) => !each.caption?.textContent?.trim() || !each.querySelector('th[scope=col]'),
    );
    const drawings = [...document.querySelectorAll('svg, canvas, img')].filter(
      (each) => !each.closest('[aria-hidden=true]') && !each.closest('[role=img]')?.getAttribute('aria-label'),
    );
    return [...tables, ...drawings].map((each) => each.outerHTML.slice(0, 160));
  });
}

/** WCAG 1.4.12: what a person sets for reading; nothing may be cut off by it. */
const SPACED = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }
  p { margin-bottom: 2em !important }`;

/** Texts that are cut off: a box that hides what does not fit, and does not scroll. A plot has its figures in the table below it. */
function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main *')].flatMap((each) => {
      const { overflowX, overflowY, clip, position } = getComputedStyle(each);
      const hidden = position === 'absolute' && clip !== 'auto';
      if (hidden || !each.textContent?.trim() || each.closest('svg, [aria-hidden=true], [role=img]')) return [];
      const wide = ['hidden', 'clip'].includes(overflowX) && each.scrollWidth > each.clientWidth + 1;
      const high = ['hidden', 'clip'].includes(overflowY) && each.scrollHeight > each.clientHeight + 1;
      return wide || high ? [`${each.tagName} ${each.className} ${each.textContent.slice(0, 60)}`] : [];
    }),
  );
}

type Look = readonly [theme: ThemeName, forced: 'none' | 'active', system: 'light' | 'dark'];
const LOOKS: readonly Look[] = [
  ['light', 'none', 'light'],
  ['dark', 'none', 'dark'],
  ['contrast', 'active', 'light'],
  ['contrast', 'active', 'dark'],
];

/** How a theme is worn changes colours alone: all else is judged in the first one. */
const ABOUT_COLOUR = ['color-contrast', 'link-in-text-block'];

async function faultsIn(page: Page, look: Look): Promise<string[]> {
  const [theme, forcedColors, colorScheme] = look;
  await page.emulateMedia({ forcedColors, colorScheme });
  await page.evaluate((name) => window.sheet.wear(name), theme);
  return accessFaults(page, look === LOOKS[0] ? undefined : ABOUT_COLOUR);
}

/** How many pixels the page is too wide, as a fault. */
const tooWide = async (page: Page) => ((await overflow(page)) > 0 ? [`${await overflow(page)} px too wide`] : []);

/** What is found by one judge after the other, each named. */
async function judged(page: Page): Promise<string[]> {
  const found: string[] = [];
  const note = (judge: string, faults: readonly string[]) => found.push(...faults.map((fault) => `${judge}: ${fault}`));
  for (const look of LOOKS) note(look.join(' '), await faultsIn(page, look));
  note('target too small', await smallTargets(page));
  note('fault not told', await untoldFaults(page));
  note('no words', await unnamed(page));
  note('at 320 px', await tooWide(page));
  note('moves', await moving(page));
  await page.addStyleTag({ content: SPACED });
  note('cut off by spacing', await cutOff(page));
  note('with spacing', await tooWide(page));
  return found;
}

const all = [
  ...BEFORE.map((situation) => ({ screen: 'before', ...situation })),
  ...SCREENS.flatMap((screen) => SITUATIONS[screen].map((situation) => ({ screen, ...situation }))),
];

test('no screen of the pane is left out', () => {
  for (const screen of SCREENS) expect(SITUATIONS[screen].length, screen).toBeGreaterThan(0);
});

test.each(all)(
  '$screen, $name: light, dark and in contrast themes, with words for all that is drawn, at 320 px and with wide spacing',
  async ({ content, look, reach }) => {
    const page = await panes.open({ content, look });
    await reach(page);
    expect(await judged(page)).toEqual([]);
  },
);

test('what is wrong is found at the first look at a page and at every other', async () => {
  const page = await panes.open({ content: 'empty' });
  await page.evaluate(() => {
    document
      .querySelector('main')
      ?.insertAdjacentHTML('beforeend', '<p style="color:#bbb;background:#fff">pale</p><img src="">');
  });
  for (const rules of [undefined, undefined, ABOUT_COLOUR]) {
    const found = (await accessFaults(page, rules)).map((fault) => fault.replace(/:.*/s, ''));
    expect(found).toEqual(rules ? ['color-contrast'] : ['color-contrast', 'image-alt']);
  }
});

test('much enlarged, at 160 px, nothing of the pane is cut off at its right', async () => {
  const page = await panes.open({ width: 160, zoom: 2 });
  await SITUATIONS.plan[0]?.reach(page);
  const lost = await page.evaluate(() => {
    // A table that scrolls in itself cuts nothing off.
    const regions = [...document.querySelectorAll('[role=region][tabindex="0"]')];
    const all = [...document.querySelectorAll('main *')].filter(
      (each) => !regions.some((region) => region !== each && region.contains(each)),
    );
    return Math.round(Math.max(...all.map((each) => each.getBoundingClientRect().right)) - innerWidth);
  });
  expect(lost).toBeLessThanOrEqual(0);
});
