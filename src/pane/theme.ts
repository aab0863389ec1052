/** The pane's colours, and how they reach the page under a policy that allows no style written into it. */
import {
  createDarkTheme,
  createLightTheme,
  teamsHighContrastTheme,
  webLightTheme,
  type BrandVariants,
  type Theme,
} from '@fluentui/react-components';
import type { ThemeName } from './state/hostTheme';

export type { ThemeName };

/** A grey petrol, 16 steps of even lightness; step 80 on white and step 100 on dark grey pass 4.5 : 1. */
const PETROL: BrandVariants = {
  10: '#001117',
  20: '#002027',
  30: '#002d36',
  40: '#003944',
  50: '#004652',
  60: '#00515e',
  70: '#095b69',
  80: '#196775',
  90: '#38808f',
  100: '#62a8b6',
  110: '#72b4c2',
  120: '#82c0cd',
  130: '#94ccd8',
  140: '#a6d8e3',
  150: '#b9e3ed',
  160: '#cff3fb',
};

const font = { fontFamilyBase: webLightTheme.fontFamilyBase, fontFamilyNumeric: webLightTheme.fontFamilyNumeric };

export const THEMES: Readonly<Record<ThemeName, Theme>> = {
  light: createLightTheme(PETROL),
  dark: createDarkTheme(PETROL),
  contrast: { ...teamsHighContrastTheme, ...font },
};

let sheet: CSSStyleSheet | undefined;

/** Puts the theme's variables into a constructed style sheet, which a strict policy allows. */
export function wearTheme(name: ThemeName): void {
  const rules = Object.entries(THEMES[name]).map(([token, value]) => `--${token}:${value}`);
  if (!sheet) {
    sheet = new CSSStyleSheet();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }
  sheet.replaceSync(
    `:root, .fui-FluentProvider { ${rules.join(';')}; color-scheme: ${name === 'light' ? 'light' : 'dark'} }`,
  );
}

/** Gives a page of its own to the pane: it fills the window and scrolls inside. */
export function wearPage(): void {
  const page = new CSSStyleSheet();
  page.replaceSync('html, body, #root { height: 100%; margin: 0 }');
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
}
