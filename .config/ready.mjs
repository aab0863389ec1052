// Every npm script starts here, so that a fresh clone needs one command. It installs what the lock file names, and only when that
// differs from what is in node_modules. Node's own modules only: nothing else is there yet on the first run.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = resolve(fileURLToPath(import.meta.url), '../..');
const lowestNode = [20, 19];

/** Whether a version such as `20.19.0` is at least the lowest that the tools run on. */
export function nodeIsNewEnough(version) {
  const [major, minor] = version.split('.').map(Number);
  return major > lowestNode[0] || (major === lowestNode[0] && minor >= lowestNode[1]);
}

/** A short text that changes when the lock file, Node's major version or the platform does. */
export function stampOf(lockText, nodeVersion, platform = `${process.platform}-${process.arch}`) {
  const lockHash = createHash('sha256').update(lockText).digest('hex');
  return `${lockHash} node ${nodeVersion.split('.')[0]} ${platform}\n`;
}

/**
 * Whether the tree npm says it installed is the tree the lock file asks for. Packages for other platforms may be missing.
 * True after somebody's own `npm install x`, which would otherwise be followed by a needless second install.
 */
export function treeAgrees(lock, installed) {
  const same = (a, b) => a.version === b.version && a.integrity === b.integrity && Boolean(a.link) === Boolean(b.link);
  const wanted = Object.entries(lock.packages).filter(([path]) => path.includes('node_modules/'));
  const missingOrOther = wanted.some(([path, entry]) => {
    const found = installed.packages[path];
    return found ? !same(entry, found) : !(entry.optional || entry.devOptional);
  });
  const extra = Object.keys(installed.packages).some((path) => !(path in lock.packages));
  return !missingOrOther && !extra;
}

function readJson(path) {
  return JSON.parse(readFileSync(path, 'utf8'));
}

/** `install`, `mark` (right already, only the stamp is missing) or `ready`. */
function whatIsNeeded(lockPath, stampPath, wantedStamp) {
  const installedPath = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(installedPath)) return 'install';
  const stamp = existsSync(stampPath) ? readFileSync(stampPath, 'utf8') : undefined;
  if (stamp === wantedStamp) return 'ready';
  const otherNode = stamp !== undefined && stamp.slice(65) !== wantedStamp.slice(65);
  return !otherNode && treeAgrees(readJson(lockPath), readJson(installedPath)) ? 'mark' : 'install';
}

function install() {
  const flags = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const npm = process.env.npm_execpath;
  // npm's own script, run by this Node, needs no shell and so works the same on Windows.
  const run = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...flags], { cwd: root, stdio: 'inherit' })
    : spawnSync(`npm ${flags.join(' ')}`, { cwd: root, stdio: 'inherit', shell: true });
  return run.status === 0;
}

function main() {
  if (!nodeIsNewEnough(process.versions.node)) {
    console.error(
      `Setwright needs Node ${lowestNode.join('.')} or later, and this is ${process.versions.node}: install a newer one from nodejs.org.`,
    );
    return 1;
  }
  const lockPath = join(root, 'package-lock.json');
  const stampPath = join(root, 'node_modules', '.setwright-ready');
  const wantedStamp = stampOf(readFileSync(lockPath), process.versions.node);
  const need = whatIsNeeded(lockPath, stampPath, wantedStamp);
  if (need === 'ready') return 0;
  if (need === 'install') {
    console.error('Installing what this project needs (about a minute, once) ...');
    if (!install()) {
      console.error('The packages could not be installed: see what npm says above, then run the command again.');
      return 1;
    }
  }
  writeFileSync(stampPath, wantedStamp);
  return 0;
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) process.exitCode = main();
