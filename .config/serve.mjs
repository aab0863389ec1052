import { createServer } from 'node:http';
import sirv from 'sirv';
import { distFolder } from './paths.mjs';

function listen(server, port) {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve(server.address().port);
    });
  });
}

/** Serves dist/ (or another build's folder) on this machine alone; where the port is taken, on another. */
export async function serveSite(port = 0, folder = distFolder) {
  // Read into memory at the start, so that a build under way cannot be served half done.
  const files = sirv(folder, { etag: true });
  const server = createServer((request, response) =>
    files(request, response, () => {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' });
      response.end('There is no such page here.\n');
    }),
  );
  const taken = await listen(server, port).catch(async (error) => {
    if (error.code !== 'EADDRINUSE' && error.code !== 'EACCES') throw error;
    return listen(server, 0);
  });
  const close = () =>
    new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  return { address: `http://127.0.0.1:${taken}/`, port: taken, close };
}
