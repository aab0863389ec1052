// Whose work is in what ships: the packages that webpack put into the site, their licences, and a file of notices in dist/.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join, sep } from 'node:path';
import { root } from './paths.mjs';

/** Licences under which others' work may ship with ours: each asks for its notice, none asks for more of us. */
export const allowedLicences = ['0BSD', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'MIT'];

/** The folder of the package that a file belongs to, relative to the project; undefined for a file of ours. */
export function packageFolder(file) {
  const [path = ''] = file.split('?');
  const parts = path.startsWith(root) ? path.slice(root.length + 1).split(sep) : path.split(sep);
  const at = parts.lastIndexOf('node_modules');
  if (at < 0) return undefined;
  return parts.slice(0, at + (parts[at + 1]?.startsWith('@') ? 3 : 2)).join('/');
}

function licenceText(folder) {
  const names = readdirSync(folder).filter((name) => /^(?:licen[cs]e|copying|notice)(?:[.-].*)?$/i.test(name));
  return names.sort().map((name) => readFileSync(join(folder, name), 'utf8').trim());
}

/** A licence by its text, for a package that names none. */
function licenceByText(texts) {
  return texts.some((text) => /^\s*Apache License\s+Version 2\.0/.test(text)) ? 'Apache-2.0' : undefined;
}

/** What a package says of itself: name, version, licence, who made it, and the texts that have to go with it. */
export function readPackage(folder) {
  const full = join(root, folder);
  const told = JSON.parse(readFileSync(join(full, 'package.json'), 'utf8'));
  const texts = licenceText(full);
  const author = typeof told.author === 'string' ? told.author : told.author?.name;
  const licence = typeof told.license === 'string' ? told.license : (told.license?.type ?? licenceByText(texts));
  return { name: told.name, version: told.version, licence: licence?.replace(/^\((.*)\)$/, '$1'), author, texts };
}

/** Whether a licence is among the allowed ones; of several joined by OR, one is enough. */
export const isAllowed = (licence) => (licence ?? '').split(' OR ').some((each) => allowedLicences.includes(each));

/** Packages that must not ship, each with the licence it names. */
export function faultsIn(packages) {
  return packages
    .filter(({ licence }) => !isAllowed(licence))
    .map(({ name, version, licence }) => `${name} ${version}: ${licence ?? 'names no licence'}`);
}

/** The packages of which a build holds something, by folder. Modules that webpack joined are looked into. */
export function bundledFolders(stats) {
  const folders = new Set();
  const visit = (module) => {
    const folder = module.resource ? packageFolder(module.resource) : undefined;
    if (folder && existsSync(join(root, folder, 'package.json'))) folders.add(folder);
    for (const inner of module.modules ?? []) visit(inner);
  };
  for (const { compilation } of stats) for (const module of compilation.modules) visit(module);
  return [...folders].sort();
}

/** The terms of the MIT licence, as they stand in our own, for a package that names them and holds no text. */
function mitTerms() {
  const text = readFileSync(join(root, 'LICENSE'), 'utf8');
  return text.slice(text.indexOf('Permission is hereby granted')).trim();
}

function notice({ name, version, licence, author, texts }) {
  const own =
    texts.length > 0
      ? texts
      : [`Copyright ${author ?? `the authors of ${name}`}`, licence === 'MIT' ? mitTerms() : licence];
  return [`${name} ${version} (${licence})`, ...own].join('\n\n');
}

/** The file of notices; a text that several packages share stands once, below all their names. */
export function noticesText(packages) {
  const byText = new Map();
  for (const each of packages) {
    const [title, ...body] = notice(each).split('\n\n');
    const text = body.join('\n\n');
    byText.set(text, [...(byText.get(text) ?? []), title]);
  }
  const rule = `\n\n${'-'.repeat(80)}\n\n`;
  const head =
    'Setwright is under the MIT licence. Its scripts hold parts of the following packages, each under the licence that stands below its name.';
  return `${[head, ...[...byText].map(([text, titles]) => `${titles.join('\n')}\n\n${text}`)].join(rule)}\n`;
}
