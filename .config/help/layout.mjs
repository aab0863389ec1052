// What every help page has: head, skip link, the way around, foot.
import { escaped } from './markdown.mjs';

/** No scripts at all; styles and pictures from the site alone. */
export const helpPolicy = "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'";

/** The main pages, in reading order: where they stand in dist/, and what the way around calls them. */
export const mainPages = [
  ['help.html', 'Start'],
  ['help/work.html', 'The work, step by step'],
  ['help/tabs.html', 'Tabs of the pane'],
  ['help/tables.html', 'Tables and columns'],
  ['help/functions.html', 'Worksheet functions'],
  ['help/balance.html', 'How the maths works'],
  ['help/cautions.html', 'Cautions'],
  ['help/install.html', 'Installing'],
  ['help/releases.html', 'Release notes'],
];

/** From a page to the site's root: `../` for each folder. */
export const upFrom = (path) => '../'.repeat(path.split('/').length - 1);

function wayAround(path, up) {
  const links = mainPages.map(([to, words]) => {
    const here =
      to === path
        ? ' aria-current="page"'
        : path.startsWith(to.replace(/\.html$/, '/')) && to !== 'help.html'
          ? ' class="within"'
          : '';
    return `<li><a href="${up}${to}"${here}>${escaped(words)}</a></li>`;
  });
  return `<nav aria-label="Help"><ul>${links.join('')}</ul></nav>`;
}

/** A whole page. `styles` is the style sheet's place in the site. */
export function helpPage({ path, title, body, styles, version }) {
  const up = upFrom(path);
  const name = path === 'help.html' ? 'Setwright help' : `${title} – Setwright help`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${helpPolicy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escaped(name)}</title>
<link rel="icon" href="${up}icons/icon-32.png">
<link rel="stylesheet" href="${up}${styles}">
</head>
<body>
<a class="skip" href="#content">Skip to the text</a>
<header><a href="${up}help.html"><img src="${up}icons/icon-32.png" alt="" width="24" height="24">Setwright help</a></header>
<div class="page">
${wayAround(path, up)}
<main id="content" tabindex="-1">
<h1>${escaped(title)}</h1>
${body}
</main>
</div>
<footer><p>Setwright ${escaped(version)}. <a href="${up}help/releases.html">What is new</a> · <a href="${up}notices.txt">Notices of others’ work</a></p></footer>
</body>
</html>
`;
}
