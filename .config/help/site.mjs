// The help site: written pages, and pages made from doc comments, metadata and tables, so that they cannot fall behind these.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { bundle } from '../bundle.mjs';
import { root } from '../paths.mjs';
import { readComments } from './comments.mjs';
import { functionPages } from './functionPages.mjs';
import { helpPage, upFrom } from './layout.mjs';
import { escaped, readPage } from './markdown.mjs';
import { tablePages } from './tablePages.mjs';

const pagesFolder = join(root, '.config/help/pages');

/** Written pages: their source, and where they stand in the site. */
const written = [
  ['start.md', 'help.html'],
  ['work.md', 'help/work.html'],
  ['balance.md', 'help/balance.html'],
  ['cautions.md', 'help/cautions.html'],
  ['install.md', 'help/install.html'],
  ['releases.md', 'help/releases.html'],
];

const tabPath = (screen) => `help/tabs/${screen}.html`;

function writtenPage(file, path) {
  const { title, body } = readPage(readFileSync(join(pagesFolder, file), 'utf8'), upFrom(path));
  return [path, title, body];
}

function tabPages(screens, words) {
  const pages = screens.map((screen) => writtenPage(`tabs/${screen}.md`, tabPath(screen)));
  const lead = (body) => /<p>(.*?)<\/p>/s.exec(body)?.[1] ?? '';
  const items = pages.map(
    ([path, , body], i) =>
      `<li><a href="${path.slice('help/'.length)}">${escaped(words[screens[i]])}</a>: ${lead(body).replaceAll(/<a [^>]*>|<\/a>/g, '')}</li>`,
  );
  const intro = '<p>The pane has two lines of tabs: above, what leads to a plan; below, the work around it.</p>';
  return [['help/tabs.html', 'Tabs of the pane', `${intro}<ul>${items.join('')}</ul>`], ...pages];
}

/** What the pages are made from, read from the sources. */
export async function readFacts() {
  return import(await bundle('.config/help/facts.ts', 'help'));
}

/** Every page of the help: its place in the site, and its text. */
export function helpSite({ metadata, sourceText, facts, version, styles }) {
  const { FUNCTIONS, TABLES, COLUMN_HELP, SETTING_ROWS, SCREENS, SCREEN_WORDS } = facts;
  const pages = [
    ...written.map(([file, path]) => writtenPage(file, path)),
    ...tabPages(SCREENS, SCREEN_WORDS),
    ...functionPages(metadata, new Map(readComments(sourceText)), FUNCTIONS),
    ...tablePages({ tables: TABLES, columnHelp: COLUMN_HELP, settings: SETTING_ROWS }),
  ];
  return new Map(pages.map(([path, title, body]) => [path, helpPage({ path, title, body, styles, version })]));
}
