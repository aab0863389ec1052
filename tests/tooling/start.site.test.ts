import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join, resolve } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const cleanUp: (() => unknown)[] = [];
afterEach(async () => {
  for (const undo of cleanUp.splice(0)) await undo();
});

/** Starts `npm start`'s script and answers what it has said once it says where it is. */
function start(port: number, by: 'word' | 'environment' = 'word'): Promise<string> {
  const words = [join(root, '.config/start.mjs'), '--no-open', ...(by === 'word' ? [`--port=${port}`] : [])];
  const env = by === 'word' ? process.env : { ...process.env, PORT: String(port) };
  const child: ChildProcess = spawn(process.execPath, words, { env });
  cleanUp.push(() => child.kill());
  return new Promise((resolveSaid, reject) => {
    let said = '';
    child.stdout?.on('data', (data: Buffer) => {
      said += data.toString();
      if (said.includes('Ctrl+C')) resolveSaid(said);
    });
    child.on('exit', (code) => reject(new Error(`ended with ${code}: ${said}`)));
  });
}

const addressIn = (said: string) => /http:\/\/127\.0\.0\.1:\d+\//.exec(said)?.[0] ?? '';

async function takenPort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  cleanUp.push(() => new Promise((done) => server.close(done)));
  await new Promise((done) => server.once('listening', done));
  return (server.address() as AddressInfo).port;
}

describe('npm start', () => {
  test('says where the page is, serves it, and knows what it does not have', async () => {
    const address = addressIn(await start(0));
    const page = await fetch(address);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Setwright');
    expect((await fetch(`${address}nothing-here`)).status).toBe(404);
  });

  test.each(['word', 'environment'] as const)(
    'takes another port where the wanted one is taken, and says so; by %s',
    async (by) => {
      const port = await takenPort();
      const said = await start(port, by);
      expect(said).toContain(`Port ${port} is taken`);
      expect((await fetch(addressIn(said))).status).toBe(200);
    },
  );
});
