/** Which of our themes goes with what a host says of its own. */

export type ThemeName = 'light' | 'dark' | 'contrast';

/** How a host says which theme it wears. */
export interface HostTheme {
  readonly bodyBackgroundColor?: string;
  readonly isDarkTheme?: boolean;
}

function isDark(colour: string | undefined): boolean {
  const parts = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour ?? '');
  if (!parts) return false;
  const [red, green, blue] = parts.slice(1).map((part) => parseInt(part, 16));
  return 0.2126 * (red ?? 0) + 0.7152 * (green ?? 0) + 0.0722 * (blue ?? 0) < 128;
}

/** Which of our themes goes with the host's; light where the host says nothing, as Excel on the web may. */
export function themeFor(host: HostTheme | undefined, forcedColours: boolean): ThemeName {
  if (forcedColours) return 'contrast';
  return (host?.isDarkTheme ?? isDark(host?.bodyBackgroundColor)) ? 'dark' : 'light';
}
