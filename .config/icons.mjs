// Draws the add-in's icons into manifest/icons/: a grip, tilted, over the point it balances on. Run by hand after a change here:
// node .config/icons.mjs. Nothing is needed but zlib, since a PNG is a header, deflated rows and three checksums.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { crc32, deflateSync } from 'node:zlib';
import { root } from './paths.mjs';

/** 16, 32 and 80 are what Excel demands for a button; 32 and 64 are what it shows in its list of add-ins. */
export const iconSizes = [16, 32, 64, 80];

const ink = [23, 92, 78, 255];
const accent = [214, 108, 32, 255];
const samplesPerSide = 8;

// The drawing lies in a square of side 1, y downwards. The grip runs from butt (thick) to tip (thin).
const butt = { x: 0.1, y: 0.2, radius: 0.135 };
const tip = { x: 0.9, y: 0.5, radius: 0.075 };
const ring = { along: 0.72, halfWidth: 0.035 };
const fulcrum = { x: 0.47, top: 0.53, bottom: 0.95, halfWidth: 0.23 };

/** How far along the grip's axis a point lies (0 butt, 1 tip) and how far from the axis. */
function onGrip(x, y) {
  const [dx, dy] = [tip.x - butt.x, tip.y - butt.y];
  const along = ((x - butt.x) * dx + (y - butt.y) * dy) / (dx * dx + dy * dy);
  const held = Math.min(1, Math.max(0, along));
  const distance = Math.hypot(x - butt.x - held * dx, y - butt.y - held * dy);
  return { along, inside: distance <= butt.radius + held * (tip.radius - butt.radius) };
}

/** The colour at a point of the drawing, or nothing. */
function colourAt(x, y) {
  const { along, inside } = onGrip(x, y);
  if (inside) return Math.abs(along - ring.along) < ring.halfWidth ? undefined : ink;
  const down = (y - fulcrum.top) / (fulcrum.bottom - fulcrum.top);
  const inFulcrum = down >= 0 && down <= 1 && Math.abs(x - fulcrum.x) <= fulcrum.halfWidth * down;
  return inFulcrum ? accent : undefined;
}

/** One pixel as red, green, blue, opacity: the mean of what lies under it. */
function pixel(column, row, size) {
  const sum = [0, 0, 0, 0];
  for (let j = 0; j < samplesPerSide; j++) {
    for (let i = 0; i < samplesPerSide; i++) {
      const x = (column + (i + 0.5) / samplesPerSide) / size;
      const y = (row + (j + 0.5) / samplesPerSide) / size;
      const colour = colourAt(x, y);
      if (colour) colour.forEach((value, channel) => (sum[channel] += value));
    }
  }
  const hits = sum[3] / 255;
  const opacity = hits / samplesPerSide ** 2;
  return hits === 0
    ? [0, 0, 0, 0]
    : [...sum.slice(0, 3).map((value) => Math.round(value / hits)), Math.round(opacity * 255)];
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(data.length, 0);
  frame.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
}

/** The icon of a size in pixels, as a PNG file with opacity. */
export function iconPng(size) {
  const rows = Array.from({ length: size }, (_, row) =>
    Buffer.from([0, ...Array.from({ length: size }, (_unused, column) => pixel(column, row, size)).flat()]),
  );
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const data = deflateSync(Buffer.concat(rows), { level: 9 });
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))]);
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const folder = join(root, 'manifest/icons');
  mkdirSync(folder, { recursive: true });
  iconSizes.forEach((size) => writeFileSync(join(folder, `icon-${size}.png`), iconPng(size)));
}
