import { describe, expect, test } from 'vitest';
import { findBrowser, launchOptions, usualPlaces } from '../../.config/browser.mjs';

const only = (place: string) => (path: string) => path === place;

describe('looking for a browser', () => {
  test.each([
    ['linux', { PATH: '/usr/local/bin:/usr/bin' }, '/usr/bin/chromium'],
    ['linux', { PATH: '/usr/bin' }, '/usr/bin/google-chrome'],
    ['darwin', {}, '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge'],
    ['win32', { PROGRAMFILES: 'C:\\Program Files' }, 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'],
    ['win32', { 'PROGRAMFILES(X86)': 'C:\\P86' }, 'C:\\P86\\Microsoft\\Edge\\Application\\msedge.exe'],
  ])('on %s with %j finds %s', (platform, env, place) => expect(findBrowser(platform, env, only(place))).toBe(place));

  test('takes the one named in CHROME_PATH first, and does not invent one that is not there', () => {
    const env = { PATH: '/usr/bin', CHROME_PATH: '/opt/my/chrome' };
    expect(findBrowser('linux', env, () => true)).toBe('/opt/my/chrome');
    expect(findBrowser('linux', env, only('/usr/bin/chromium'))).toBe('/usr/bin/chromium');
    expect(findBrowser('linux', env, () => false)).toBeUndefined();
  });

  test('looks nowhere on a machine that says nothing of its folders', () =>
    expect(usualPlaces('linux', {})).toEqual([]));

  test('starts it quiet, and gives up its sandbox only as root', () => {
    const { args = [] } = launchOptions('/x');
    expect(args).toContain('--disable-background-networking');
    expect(args.includes('--no-sandbox')).toBe(process.getuid?.() === 0);
  });
});
