// Markdown of the written help pages and of doc comments as HTML: read by `marked`, with the anchors, notes and tables of our pages.
import { Marked } from 'marked';

const entities = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
export const escaped = (text) => String(text).replace(/[&<>"]/g, (sign) => entities[sign]);

/** The name by which a heading can be linked to. */
export const anchorOf = (text) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

/** A reader of pages that lie in a folder from which `up` leads to the site’s root. Text that looks like HTML is text. */
function readerFor(up) {
  return new Marked({
    renderer: {
      heading({ depth, text, tokens }) {
        return `<h${depth} id="${anchorOf(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
      },
      link({ href, tokens }) {
        const to = /^(?:[a-z]+:|#)/.test(href) ? href : up + href;
        return `<a href="${escaped(to)}">${this.parser.parseInline(tokens)}</a>`;
      },
      code: ({ text }) => `<pre tabindex="0"><code>${escaped(text)}</code></pre>\n`,
      codespan: ({ text }) => `<code>${escaped(text)}</code>`,
      html: ({ text }) => escaped(text),
      blockquote({ tokens }) {
        return this.parser.parse(tokens).replaceAll('<p>', '<p class="note">');
      },
      table({ header, rows }) {
        const cellsOf = (cells) => cells.map(({ tokens }) => this.parser.parseInline(tokens));
        return `${htmlTable(cellsOf(header), rows.map(cellsOf))}\n`;
      },
    },
  });
}

/** A line of text with its code, links and emphasis. `up` leads from the page to the site's root. */
export const inline = (text, up = '') => readerFor(up).parseInline(text);

/** A table whose first column names its rows. On a narrow screen each row becomes a block, so every cell carries its heading. */
export function htmlTable(head, rows) {
  const plain = head.map((cell) => cell.replace(/<[^>]+>/g, ''));
  const line = ([first, ...others]) =>
    `<tr><th scope="row">${first}</th>${others.map((cell, i) => `<td data-of="${plain[i + 1]}">${cell}</td>`).join('')}</tr>`;
  return `<table><thead><tr>${head.map((cell) => `<th scope="col">${cell}</th>`).join('')}</tr></thead><tbody>${rows.map(line).join('')}</tbody></table>`;
}

/** A written page: its title (the first line, `# …`) and its body as HTML. */
export function readPage(text, up = '') {
  const [title = '', ...rest] = text.replaceAll('\r\n', '\n').split('\n');
  return { title: title.replace(/^# /, ''), body: readerFor(up).parse(rest.join('\n')).trim() };
}
