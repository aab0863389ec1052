// Finds a browser of the Chromium family for the browser tests. Nothing is downloaded onto a person's own machine.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { posix } from 'node:path';

const namesOnPath = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];
const macApplications = ['Google Chrome', 'Microsoft Edge', 'Chromium'];
const windowsPlaces = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
  'Chromium\\Application\\chrome.exe',
];

/** Everywhere such a browser is usually found on this kind of machine, best first. */
export function usualPlaces(platform = process.platform, env = process.env) {
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean);
    return windowsPlaces.flatMap((place) => roots.map((start) => `${start}\\${place}`));
  }
  if (platform === 'darwin') return macApplications.map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`);
  const folders = (env.PATH ?? '').split(':').filter(Boolean);
  return namesOnPath.flatMap((name) => folders.map((folder) => posix.join(folder, name)));
}

/** The path of a browser, or nothing. CHROME_PATH goes first. */
export function findBrowser(platform = process.platform, env = process.env, exists = existsSync) {
  const places = [env.CHROME_PATH, ...usualPlaces(platform, env)].filter(Boolean);
  return places.find((place) => exists(place));
}

/** A machine nobody works on: there, and only there, a browser may be installed unasked. */
function isOwnMachine() {
  const inContainer = existsSync('/.dockerenv') || existsSync('/run/.containerenv');
  return !process.env.CI && !inContainer;
}

function installDebianChromium() {
  const mayInstall = !isOwnMachine() && existsSync('/etc/debian_version') && process.getuid?.() === 0;
  if (!mayInstall) return false;
  console.error("Installing Debian's Chromium for the browser tests ...");
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...words) =>
    spawnSync('apt-get', [...words], { stdio: ['ignore', 'ignore', 'inherit'], env }).status === 0;
  return apt('update') && apt('install', '-y', '--no-install-recommends', 'chromium');
}

/** The path of a browser, installed first where that is allowed. Fails with one sentence that says how to get one. */
export function needBrowser() {
  const found = findBrowser();
  if (found) return found;
  if (installDebianChromium()) {
    const installed = findBrowser();
    if (installed) return installed;
  }
  throw new Error(
    'The browser tests need Chrome, Edge or Chromium: install one (on Debian: apt-get install chromium), or name its program in CHROME_PATH.',
  );
}

/** Quiet and offline; the sandbox is given up only where Chromium cannot have one, as root. */
export function launchOptions(executablePath) {
  const asRoot = process.getuid?.() === 0;
  const quiet = [
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--no-first-run',
    '--disable-quic',
  ];
  return { executablePath, headless: true, args: [...quiet, '--disable-gpu', ...(asRoot ? ['--no-sandbox'] : [])] };
}
