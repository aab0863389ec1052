/** The pane's colours, and how they reach the page under a policy that allows no style written into it. */
import {
  createDarkTheme,
  createLightTheme,
  teamsHighContrastTheme,
  webLightTheme,
  type Theme,
} from '@fluentui/react-components';
import { PETROL } from '../workbook/palette';
import type { ThemeName } from './state/hostTheme';

export type { ThemeName };

const font = { fontFamilyBase: webLightTheme.fontFamilyBase, fontFamilyNumeric: webLightTheme.fontFamilyNumeric };

/** What Windows calls the colours of its contrast themes, light ones and dark ones: the library knows one dark theme's own. */
const SYSTEM: Readonly<Record<string, string>> = {
  '#ffffff': 'CanvasText',
  '#1aebff': 'Highlight',
  '#ffff00': 'LinkText',
  '#3ff23f': 'GrayText',
};

/** Black is what something stands on, or the ink on what is highlighted. */
function systemColour([token, value]: readonly [string, string | number]): readonly [string, string | number] {
  if (value === '#000000') return [token, /Foreground/.test(token) ? 'HighlightText' : 'Canvas'];
  return [token, SYSTEM[value] ?? value];
}

export const THEMES: Readonly<Record<ThemeName, Theme>> = {
  light: createLightTheme(PETROL),
  dark: createDarkTheme(PETROL),
  contrast: { ...Object.fromEntries(Object.entries(teamsHighContrastTheme).map(systemColour)), ...font } as Theme,
};

/**
 * Nothing moves for whoever asked for that, the library's own fields, bars and lists included. Transitions are none rather than very
 * short: on every element, a short one of an inherited colour is passed down a level a frame, and text is half drawn for that long.
 */
const STILL =
  '@media (prefers-reduced-motion: reduce) { *, ::before, ::after { animation-duration: 0.01ms !important; animation-iteration-count: 1 !important; transition: none !important } }';

/** A contrast theme gives what a field suggests the colour of what is typed into it: it leans, then. */
const SUGGESTED = '@media (forced-colors: active) { ::placeholder { font-style: italic } }';

let sheet: CSSStyleSheet | undefined;

/** Puts the theme's variables into a constructed style sheet, which a strict policy allows. */
export function wearTheme(name: ThemeName): void {
  const rules = Object.entries(THEMES[name]).map(([token, value]) => `--${token}:${value}`);
  if (!sheet) {
    sheet = new CSSStyleSheet();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }
  sheet.replaceSync(
    `:root, .fui-FluentProvider { ${rules.join(';')}; color-scheme: ${name === 'light' ? 'light' : 'dark'} } ${STILL} ${SUGGESTED}`,
  );
}

/** Gives a page of its own to the pane: it fills the window and scrolls inside. */
export function wearPage(): void {
  const page = new CSSStyleSheet();
  page.replaceSync('html, body, #root { height: 100%; margin: 0 }');
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
}
