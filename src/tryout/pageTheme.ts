/** Light or dark: what the person's system prefers, until they switch. */
import type { ThemeName } from '../pane/theme';
import { TRYOUT } from './words';

export interface PageTheme {
  readonly now: () => ThemeName;
  /** Whether what is drawn in colours of its own, such as cells, is to be dark: contrast themes are of both kinds. */
  readonly isDark: () => boolean;
  /** Calls back at every change from now on. */
  readonly onChange: (changed: (theme: ThemeName) => void) => void;
}

/** Follows the system and the button; marks the page's root element so that the style sheet can follow. */
export function followTheme(button: HTMLButtonElement): PageTheme {
  const prefersDark = matchMedia('(prefers-color-scheme: dark)');
  const forced = matchMedia('(forced-colors: active)');
  const listeners: ((theme: ThemeName) => void)[] = [];
  let chosen: 'light' | 'dark' | null = null;
  const now = (): ThemeName => {
    if (forced.matches) return 'contrast';
    return chosen ?? (prefersDark.matches ? 'dark' : 'light');
  };
  const show = (): void => {
    const theme = now();
    document.documentElement.dataset['theme'] = theme;
    button.textContent = theme === 'dark' ? TRYOUT.light : TRYOUT.dark;
    button.setAttribute('aria-label', theme === 'dark' ? TRYOUT.toLight : TRYOUT.toDark);
    button.hidden = theme === 'contrast';
    for (const changed of listeners) changed(theme);
  };
  button.addEventListener('click', () => {
    chosen = now() === 'dark' ? 'light' : 'dark';
    show();
  });
  prefersDark.addEventListener('change', show);
  forced.addEventListener('change', show);
  show();
  const isDark = (): boolean => now() === 'dark' || (now() === 'contrast' && prefersDark.matches);
  return { now, isDark, onChange: (changed) => void listeners.push(changed) };
}
