import { expect, test } from 'vitest';
import { themeFor } from '../../src/pane/state/hostTheme';

test('the theme goes with the host’s, and is light where the host says nothing', () => {
  expect(themeFor(undefined, false)).toBe('light');
  expect(themeFor({}, false)).toBe('light');
  expect(themeFor({ bodyBackgroundColor: '#FFFFFF' }, false)).toBe('light');
  expect(themeFor({ bodyBackgroundColor: '#212121' }, false)).toBe('dark');
  expect(themeFor({ bodyBackgroundColor: '#FFFFFF', isDarkTheme: true }, false)).toBe('dark');
  expect(themeFor({ isDarkTheme: true }, true)).toBe('contrast');
});
