/** A person at the keyboard: nothing but keys are pressed, and every stop has to show that it has the focus. */
import type { Page } from 'playwright-core';

declare global {
  interface Window {
    /** The stop before this one, and how it looked while it had the focus. */
    lastStop?: { readonly element: Element; readonly look: string };
  }
}

interface Stop {
  /** What a screen reader calls it, about. */
  readonly name: string;
  /** What is wrong with how the focus came here. */
  readonly faults: readonly string[];
  readonly isSame: boolean;
}

/** Looks at the element with the focus, and back at the one that had it before. */
function lookAtStop(page: Page): Promise<Stop> {
  return page.evaluate(() => {
    const styles = [
      'outline',
      'boxShadow',
      'border',
      'backgroundColor',
      'color',
      'transform',
      'opacity',
      'textDecoration',
    ] as const;
    const lookOf = (element: Element): string =>
      [element, element.parentElement ?? element]
        .flatMap((each) => [undefined, '::before', '::after'].map((part) => getComputedStyle(each, part)))
        .map((style) => styles.map((key) => style[key]).join())
        .join('\n');
    const nameOf = (element: HTMLElement): string => {
      const labels = [...((element as HTMLInputElement).labels ?? [])].map(({ textContent }) => textContent);
      const by = document.getElementById(element.getAttribute('aria-labelledby') ?? '')?.textContent;
      const own =
        element.matches('button, summary, a') && !element.matches('[role=combobox]') ? element.textContent : '';
      return (element.getAttribute('aria-label') ?? by ?? (labels.join(' ') || own) ?? '').trim();
    };
    const now = document.activeElement;
    if (!(now instanceof HTMLElement) || now === document.body) {
      delete window.lastStop;
      return { name: '', faults: [], isSame: false };
    }
    const faults: string[] = [];
    const before = window.lastStop;
    if (before?.element.isConnected && before.element !== now) {
      if (lookOf(before.element) === before.look)
        faults.push(`no focus to be seen on ${nameOf(before.element as HTMLElement)}`);
      const follows = before.element.compareDocumentPosition(now) & Node.DOCUMENT_POSITION_FOLLOWING;
      if (!follows)
        faults.push(`${nameOf(now)} comes after ${nameOf(before.element as HTMLElement)}, and stands before it`);
    }
    const { top, bottom } = now.getBoundingClientRect();
    if (!now.checkVisibility() || bottom < 0 || top > innerHeight)
      faults.push(`${nameOf(now)} has the focus out of sight`);
    if (now.tabIndex > 0) faults.push(`${nameOf(now)} has an order of its own`);
    window.lastStop = { element: now, look: lookOf(now) };
    return { name: nameOf(now), faults, isSame: before?.element === now };
  });
}

/** What Tab comes past from the top of the page to its end. */
export async function wayThrough(page: Page): Promise<readonly Stop[]> {
  const stops: Stop[] = [];
  let rounds = 0;
  for (let presses = 0; presses < 400 && rounds < 2; presses += 1) {
    await page.keyboard.press('Tab');
    const stop = await lookAtStop(page);
    if (stop.name === '') rounds += 1;
    // A date is one field of several stops.
    else if (rounds === 1 && !stop.isSame) stops.push(stop);
  }
  if (rounds < 2) throw new Error('Tab finds no end');
  return stops;
}

const matches = (name: string, wanted: string | RegExp) =>
  typeof wanted === 'string' ? name === wanted : wanted.test(name);

export class Keys {
  constructor(readonly page: Page) {}

  press(...keys: readonly string[]): Promise<void> {
    return keys.reduce((before, key) => before.then(() => this.page.keyboard.press(key)), Promise.resolve());
  }

  /** Tabs on, past the end and from the top again, until something of that name has the focus. */
  async to(wanted: string | RegExp): Promise<void> {
    const past: string[] = [];
    for (let presses = 0; presses < 200; presses += 1) {
      await this.page.keyboard.press('Tab');
      const { name, faults } = await lookAtStop(this.page);
      if (faults.length > 0) throw new Error(faults.join('; '));
      if (name !== '' && matches(name, wanted)) return;
      past.push(name);
    }
    throw new Error(`Tab never comes to ${String(wanted)}, only to ${[...new Set(past)].join(' | ')}`);
  }

  /** Presses a button; where that takes it away, something else has to have the focus. */
  async push(wanted: string | RegExp): Promise<void> {
    await this.to(wanted);
    await this.press('Enter');
  }

  /** Chooses the so-manieth word of a list that opens with the arrow key. */
  async choose(wanted: string | RegExp, down: number): Promise<void> {
    await this.to(wanted);
    await this.press('Enter', ...Array<string>(down).fill('ArrowDown'), 'Enter');
  }

  async type(wanted: string | RegExp, text: string): Promise<void> {
    await this.to(wanted);
    await this.press('ControlOrMeta+A');
    await this.page.keyboard.type(text);
  }

  /** Goes from the tab that is chosen to another by arrows. */
  async tab(name: string): Promise<void> {
    const { page } = this;
    const chosen = () =>
      page.evaluate(() => document.querySelector('[role=tab][aria-selected=true]')?.textContent ?? '');
    await this.to(await chosen());
    for (let presses = 0; presses < 12 && (await chosen()) !== name; presses += 1) await this.press('ArrowRight');
    if ((await chosen()) !== name) throw new Error(`no arrow leads to ${name}`);
  }

  /** What the pane said of the last thing done; its message is closed with Escape, from wherever the keys are. */
  async said(): Promise<string> {
    const status = this.page.getByRole('status', { name: 'What happened' });
    await status.getByRole('button', { name: 'Close this message' }).waitFor();
    await this.here();
    return (await status.textContent()) ?? '';
  }

  /** The name of what has the focus, which must not be lost. */
  async here(): Promise<string> {
    // A screen that is on its way brings its tab along; what is drawn anew has until the next picture to hand the focus on.
    await this.page.waitForFunction(() => !document.querySelector('main [aria-busy=true]'));
    await this.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    const { name } = await lookAtStop(this.page);
    if (name === '') throw new Error('the focus is lost');
    return name;
  }
}
