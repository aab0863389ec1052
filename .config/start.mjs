// [PORT=3000] npm start [-- --no-open] [-- --port=3000]: builds what changed, serves it, and shows it in the browser where there is one.
import { existsSync } from 'node:fs';
import { serveSite } from './serve.mjs';
import { buildSite } from './site.mjs';

const words = process.argv.slice(2);
const asked = [...words, `--port=${process.env.PORT ?? ''}`].map((word) => /^--port=(\d+)$/.exec(word)?.[1]);
const wantedPort = Number(asked.find(Boolean) ?? 3000);

/** Nobody sits in front of a build server, a container, a remote shell or a machine without a display. */
function someoneIsThere() {
  const { CI, SSH_CONNECTION, SSH_TTY, DISPLAY, WAYLAND_DISPLAY } = process.env;
  if (words.includes('--no-open') || CI || SSH_CONNECTION || SSH_TTY) return false;
  if (existsSync('/.dockerenv') || existsSync('/run/.containerenv')) return false;
  return process.platform !== 'linux' || Boolean(DISPLAY || WAYLAND_DISPLAY);
}

async function show(address) {
  if (!someoneIsThere()) return;
  try {
    const { default: open } = await import('open');
    const child = await open(address);
    // A browser that cannot be started is no reason to stop serving: the address is on the screen.
    child.on('error', () => undefined);
  } catch {
    // As above.
  }
}

try {
  await buildSite();
  const { address, port } = await serveSite(wantedPort);
  if (port !== wantedPort) console.log(`Port ${wantedPort} is taken, so another is used.`);
  console.log(`Setwright is at ${address} (Ctrl+C ends it).`);
  await show(address);
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
